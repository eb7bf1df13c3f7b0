package fettle.judgement;

import fettle.catalog.Build;
import fettle.catalog.BuildEntry;
import fettle.catalog.Reference;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** A build mentions something of the catalog by id. */
public record BuildMention(Build build, Reference reference) {

    /** All mentions by a build; what names nothing is told by the check against the schema. */
    public static List<BuildMention> of(Build build) {
        List<BuildMention> mentions = new ArrayList<>();
        add(mentions, build, "platforms", List.of(build.platform()));
        add(mentions, build, "outfits", optional(build.outfit()));
        add(mentions, build, "access", optional(build.access()));
        add(mentions, build, "lenses", optional(build.lens()));
        add(mentions, build, "parts", build.owned());
        for (BuildEntry entry : build.parts()) {
            if (entry.named()) {
                mentions.add(new BuildMention(build, new Reference(build.subject(), "parts", entry.part(), false, entry.origin())));
            }
        }
        return mentions;
    }

    private static List<Build.Located> optional(Optional<Build.Located> named) {
        return named.map(List::of).orElse(List.of());
    }

    private static void add(List<BuildMention> mentions, Build build, String space, List<Build.Located> named) {
        named.stream().filter(Build.Located::named).forEach(each -> mentions.add(new BuildMention(build, new Reference(build.subject(), space, each.id(), false, each.origin()))));
    }

    /** What sort of thing is meant. */
    public String space() {
        return reference.space();
    }

    /** What another of could be named instead, or none, such as {@code lens}; empty for the platform and placed parts, which make the build what it is. */
    public Optional<String> optional() {
        return switch (space()) {
            case "access" -> Optional.of("access profile");
            case "lenses" -> Optional.of("lens");
            case "outfits" -> Optional.of("outfit");
            case "parts" -> Optional.of("part").filter(unused -> owned());
            default -> Optional.empty();
        };
    }

    /** Where it could be left out. */
    public String place() {
        return owned() ? "`owned`" : "the build";
    }

    private boolean owned() {
        return build.owned().stream().anyMatch(part -> part.origin().equals(reference.origin()));
    }

    /** The id as written. */
    public String id() {
        return reference.id();
    }
}
