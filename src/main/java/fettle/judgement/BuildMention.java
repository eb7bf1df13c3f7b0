package fettle.judgement;

import fettle.catalog.Build;
import fettle.catalog.BuildEntry;
import fettle.catalog.Reference;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** A build mentions something of the catalog by id. */
public record BuildMention(Build build, Reference reference) {

    /** All mentions by a build. */
    public static List<BuildMention> of(Build build) {
        List<BuildMention> mentions = new ArrayList<>();
        add(mentions, build, "platforms", List.of(build.platform()));
        add(mentions, build, "outfits", optional(build.outfit()));
        add(mentions, build, "access", optional(build.access()));
        add(mentions, build, "lenses", optional(build.lens()));
        add(mentions, build, "parts", build.owned());
        for (BuildEntry entry : build.parts()) {
            if (entry.named()) {
                mentions.add(new BuildMention(build, new Reference(build.subject(), "parts", entry.part(), entry.origin())));
            }
        }
        return mentions;
    }

    private static List<Build.Located> optional(Optional<Build.Located> named) {
        return named.map(List::of).orElse(List.of());
    }

    private static void add(List<BuildMention> mentions, Build build, String space, List<Build.Located> named) {
        named.forEach(each -> mentions.add(new BuildMention(build, new Reference(build.subject(), space, each.id(), each.origin()))));
    }

    /** What sort of thing is meant. */
    public String space() {
        return reference.space();
    }

    /** The id as written. */
    public String id() {
        return reference.id();
    }
}
