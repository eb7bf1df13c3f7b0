package fettle.space.patch;

import fettle.catalog.Build;
import fettle.catalog.Catalog;
import fettle.relation.Relations;
import fettle.space.BuildCheck;
import fettle.space.BuildResult;
import fettle.space.Change;
import fettle.space.EntryName;
import fettle.space.Placement;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
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

    /**
     * The differences without which a build that broke would be valid, or which made a build valid; empty where they cannot be told. They are looked for
     * where the trouble is: a part that was moved to another mount together with its slot has nothing to do with what is wrong elsewhere, though
     * undoing one without the other would be wrong too.
     */
    List<Change> of(Build build, BuildResult before, BuildResult after) {
        boolean broken = before.valid();
        Mixture mixture = broken ? Mixture.undoing(changes) : Mixture.making(changes);
        List<EntryName> entries = entries(build);
        Trouble trouble = Trouble.of(broken ? after : before);
        List<Change> suspects = suspects(entries, trouble);
        Function<Set<Change>, Trouble> left = taken -> trouble(build, mixture.catalog(entries, taken));
        for (Change suspect : suspects) {
            if (left.apply(Set.of(suspect)).none()) {
                return List.of(suspect);
            }
        }
        List<Change> enough = near(suspects, trouble, left);
        if (enough.isEmpty()) {
            enough = suspects;
        }
        if (!left.apply(new HashSet<>(enough)).none()) {
            return List.of();
        }
        List<Change> unlikelyFirst = new ArrayList<>(enough);
        Collections.reverse(unlikelyFirst);
        return Needed.of(unlikelyFirst, taken -> left.apply(taken).none()).stream().sorted().toList();
    }

    /** Those that the trouble rests on, with those that the trouble rests on which is left then, and so on until none is left; empty where that leads nowhere. */
    private static List<Change> near(List<Change> suspects, Trouble trouble, Function<Set<Change>, Trouble> left) {
        Set<Change> taken = new HashSet<>();
        Trouble now = trouble;
        while (!now.none()) {
            Trouble rest = now;
            if (!taken.addAll(suspects.stream().filter(rest::restsOn).toList())) {
                return List.of();
            }
            now = left.apply(taken);
        }
        return suspects.stream().filter(taken::contains).toList();
    }

    private List<EntryName> entries(Build build) {
        Set<EntryName> entries = new TreeSet<>(constraints);
        entries.add(EntryName.platform(build.platform().id()));
        build.parts().forEach(entry -> entries.add(EntryName.part(entry.part())));
        return List.copyOf(entries);
    }

    private Trouble trouble(Build build, Catalog catalog) {
        if (!catalog.platforms().containsKey(build.platform().id())) {
            return Trouble.ofAll();
        }
        Relations relations = derive.apply(catalog);
        Placement placement = Placement.of(relations, build.platform().id(), build.parts());
        return Trouble.of(placement, new BuildCheck(relations).violations(placement));
    }

    /** All differences that touch the build, those first that the trouble rests on. */
    private List<Change> suspects(List<EntryName> entries, Trouble trouble) {
        List<Change> suspects = new ArrayList<>();
        entries.forEach(entry -> changes.of(entry).stream().filter(change -> !change.property().equals(WrittenCatalog.OFFERS)).forEach(suspects::add));
        suspects.sort(Comparator.comparing((Change change) -> UNLIKELY.contains(change.property()))
                .thenComparing(change -> !trouble.restsOn(change))
                .thenComparing(Comparator.naturalOrder()));
        return suspects;
    }
}
