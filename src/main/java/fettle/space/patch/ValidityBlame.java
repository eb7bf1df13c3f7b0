package fettle.space.patch;

import fettle.catalog.Build;
import fettle.catalog.Catalog;
import fettle.catalog.Constraint;
import fettle.relation.Relations;
import fettle.space.BuildCheck;
import fettle.space.BuildResult;
import fettle.space.Change;
import fettle.space.EntryName;
import fettle.space.Placement;
import fettle.space.Unresolved;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Function;

/**
 * Finds which differences broke or mended a build: the rules are asked again about the build's own parts, with some of the differences undone (or,
 * for a mended build, made). A single difference that does it is looked for first, so that the answer is the smallest where one suffices.
 */
final class ValidityBlame {

    /** Properties that no rule on what fits and what clashes has use for come last, and prices not at all. */
    private static final Set<String> UNLIKELY = Set.of("stats", "loaded", "label", "factory");

    private final CatalogChanges changes;
    private final Function<Catalog, Relations> derive;
    private final List<EntryName> constraints;

    ValidityBlame(CatalogChanges changes, Function<Catalog, Relations> derive) {
        this.changes = changes;
        this.derive = derive;
        Set<EntryName> names = new TreeSet<>(changes.old().entries().keySet());
        names.addAll(changes.now().entries().keySet());
        this.constraints = names.stream().filter(name -> name.section().equals("constraints")).toList();
    }

    /** The differences without which a build that broke would be valid, or which made a build valid; empty where they cannot be told. */
    List<Change> of(Build build, BuildResult before, BuildResult after) {
        boolean broken = before.valid();
        Mixture mixture = broken ? Mixture.undoing(changes) : Mixture.making(changes);
        List<EntryName> entries = entries(build);
        List<Change> suspects = suspects(entries, broken ? after : before);
        for (Change suspect : suspects) {
            if (valid(build, mixture.catalog(entries, Set.of(suspect)))) {
                return List.of(suspect);
            }
        }
        if (!valid(build, mixture.catalog(entries, new HashSet<>(suspects)))) {
            return List.of();
        }
        List<Change> unlikelyFirst = new ArrayList<>(suspects);
        java.util.Collections.reverse(unlikelyFirst);
        return Needed.of(unlikelyFirst, taken -> valid(build, mixture.catalog(entries, taken))).stream().sorted().toList();
    }

    private List<EntryName> entries(Build build) {
        Set<EntryName> entries = new TreeSet<>(constraints);
        entries.add(EntryName.platform(build.platform().id()));
        build.parts().forEach(entry -> entries.add(EntryName.part(entry.part())));
        return List.copyOf(entries);
    }

    private boolean valid(Build build, Catalog catalog) {
        if (!catalog.platforms().containsKey(build.platform().id())) {
            return false;
        }
        Relations relations = derive.apply(catalog);
        Placement placement = Placement.of(relations, build.platform().id(), build.parts());
        return placement.unresolved().isEmpty() && new BuildCheck(relations).violations(placement).isEmpty();
    }

    /** All differences that touch the build, those in what is wrong with it first. */
    private List<Change> suspects(List<EntryName> entries, BuildResult invalid) {
        Set<EntryName> wrong = wrong(invalid);
        List<Change> suspects = new ArrayList<>();
        entries.forEach(entry -> changes.of(entry).stream().filter(change -> !change.property().equals(WrittenCatalog.OFFERS)).forEach(suspects::add));
        suspects.sort(Comparator.comparing((Change change) -> UNLIKELY.contains(change.property()))
                .thenComparing(change -> !wrong.contains(change.entry()))
                .thenComparing(Comparator.naturalOrder()));
        return suspects;
    }

    private static Set<EntryName> wrong(BuildResult invalid) {
        Set<EntryName> wrong = new HashSet<>();
        Optional<Placement> placement = invalid.placement();
        placement.ifPresent(placed -> {
            placed.unresolved().forEach(unresolved -> {
                wrong.add(EntryName.part(unresolved.entry().part()));
                if (unresolved instanceof Unresolved.NoSuchSlot noSlot) {
                    host(noSlot.host(), wrong);
                }
            });
            invalid.violations().forEach(violation -> {
                violation.parts().forEach(part -> host(part == Placement.PLATFORM ? placed.platform() : placed.parts().get(part).part(), wrong));
                violation.slots().forEach(slot -> host(placed.slots().get(slot).slot().host(), wrong));
                violation.because().stream().filter(Constraint.class::isInstance).map(Constraint.class::cast)
                        .forEach(constraint -> wrong.add(new EntryName("constraints", constraint.id())));
            });
        });
        return wrong;
    }

    private static void host(String id, Set<EntryName> names) {
        names.add(EntryName.part(id));
        names.add(EntryName.platform(id));
    }
}
