package fettle.space.worth;

import fettle.catalog.Lens;
import fettle.catalog.SlotId;
import fettle.space.Assembly;
import fettle.space.Fraction;
import java.math.BigDecimal;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.SortedMap;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;

/**
 * What a slot offers for its price.
 *
 * @param groups by the roles that assemblies serve, in the order of the roles' names
 * @param standing by part that can be bought and placed there, where its best assembly stands
 */
public record Ladder(String platform, SlotId slot, Lens lens, List<Group> groups, SortedMap<String, Standing> standing) {

    public Ladder {
        groups = List.copyOf(groups);
        standing = Collections.unmodifiableSortedMap(new TreeMap<>(standing));
    }

    /** The groups, those that serve the fewest roles first. */
    public List<Group> simplestFirst() {
        return groups.stream().sorted(Comparator.comparingInt((Group group) -> group.roles().size()).thenComparing(group -> group.roles().toString())).toList();
    }

    /**
     * Assemblies that serve the same roles.
     *
     * @param rungs cheapest first, one for each cost
     * @param others for each part that heads no rung here, the cheapest of its assemblies that stand best; cheapest first
     */
    public record Group(SortedSet<String> roles, List<Rung> rungs, List<Other> others) {

        public Group {
            roles = Collections.unmodifiableSortedSet(new TreeSet<>(roles));
            rungs = List.copyOf(rungs);
            others = List.copyOf(others);
        }
    }

    /**
     * An assembly with its figures.
     *
     * @param assembly empty for the empty choice
     * @param cost in base currency
     * @param benefit the lens's weights times what it contributes, higher being better
     */
    public record Offer(Optional<Assembly> assembly, BigDecimal cost, BigDecimal benefit) {

        /** The parts by path; none for the empty choice. */
        public SortedMap<String, String> paths() {
            return assembly.map(Assembly::paths).orElseGet(Collections::emptySortedMap);
        }
    }

    /**
     * A place on the hull.
     *
     * @param offer an assembly there
     * @param alike for each other part that heads an assembly of the same cost and benefit, the one of fewest parts, by head
     * @param step extra cost over extra benefit from the rung below; empty on the first
     */
    public record Rung(Offer offer, List<Offer> alike, Optional<Fraction> step) {

        public Rung {
            alike = List.copyOf(alike);
        }
    }

    /** An assembly off the hull. */
    public record Other(Offer offer, Standing standing) {}
}
