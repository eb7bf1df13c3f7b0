package fettle.space.patch;

import fettle.catalog.Build;
import fettle.catalog.BuildEntry;
import fettle.document.Origin;
import fettle.space.FormerName;
import fettle.space.Occurrence;
import fettle.space.Placement;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;

/** Reads builds that name renamed parts and platforms by their new ids as the old catalog knows them, so that there is a before to compare with. */
final class FormerIds {

    private final Map<String, String> formerly = new HashMap<>();

    FormerIds(Collection<Rename> renames) {
        renames.forEach(rename -> formerly.put(rename.to().id(), rename.from().id()));
    }

    /** The id that the old catalog has for what goes by this one now; the same id where nothing was renamed to it. */
    String of(String id) {
        return formerly.getOrDefault(id, id);
    }

    /** Whether something was probably renamed to this id. */
    boolean has(String id) {
        return formerly.containsKey(id);
    }

    /** Whether a build names anything by a new id. */
    boolean in(Build build) {
        return Stream.concat(Stream.concat(Stream.of(build.platform()), build.owned().stream()).map(Build.Located::id), build.parts().stream().map(BuildEntry::part))
                .anyMatch(this::has);
    }

    /** The same build with old ids in place of the new ones, all of it standing where it stood. */
    Build build(Build build) {
        List<BuildEntry> parts = build.parts().stream()
                .map(entry -> new BuildEntry(entry.path(), entry.position(), of(entry.part()), entry.at(), entry.pathOrigin(), entry.origin())).toList();
        return new Build(
                build.id(), build.label(), located(build.platform()), build.patch(), parts, build.loaded(), build.outfit(), build.access(),
                build.owned().stream().map(this::located).toList(), build.budget(), build.lens(), build.origin());
    }

    private Build.Located located(Build.Located named) {
        return new Build.Located(of(named.id()), named.origin());
    }

    /** How such a build was placed, with the ids that it is written with. */
    static Placement asWritten(Build build, Placement placement) {
        Map<Origin, String> written = new HashMap<>();
        build.parts().forEach(entry -> written.put(entry.origin(), entry.part()));
        List<Occurrence> parts = placement.parts().stream().map(part -> new Occurrence(
                part.index(), written.getOrDefault(part.entry().origin(), part.part()), part.use(), part.path(), part.at(), part.entry())).toList();
        return new Placement(build.platform().id(), parts, placement.slots(), placement.unresolved());
    }

    /** What a build names by a new id, each once, in the order in which it is written. */
    List<FormerName> names(Build build) {
        Map<String, Origin> written = new LinkedHashMap<>();
        written.put(build.platform().id(), build.platform().origin());
        build.parts().forEach(entry -> written.putIfAbsent(entry.part(), entry.origin()));
        List<FormerName> names = new ArrayList<>();
        written.forEach((id, origin) -> {
            if (has(id)) {
                names.add(new FormerName(id, of(id), Optional.of(origin)));
            }
        });
        return names;
    }
}
