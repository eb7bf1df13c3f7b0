package fettle.space.worth;

import fettle.space.Bare;
import fettle.space.Circuit;
import fettle.space.Contents;
import fettle.space.Landscape;
import fettle.space.Terrain;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** What assemblies are compared by, with what is worked out about the circuit once for all sites. */
final class Arena {

    private static final long STEPS_FOR_MANY = 40_000_000;

    private final Landscape landscape;
    private final Measure measure;
    private final Meter quick;
    private final Meter thorough;
    private final Bare bare;
    private final Ideals ideals;
    private final Fronts fronts;
    private final Meter fronting;
    private final Meter forMany = new Meter(STEPS_FOR_MANY);
    private final Fronts broad;
    private final Lifting lifting;
    private final Smallest smallest;
    private long patience = Contest.STEPS;
    private final Survivors survivors = new Survivors();
    private final Map<List<Integer>, Optional<Cluster>> choices = new HashMap<>();
    private final Map<Contents, Verdicts> verdicts = new IdentityHashMap<>();

    /**
     * For a measure.
     *
     * @param quick counts the steps of what is tried first, for all decisions together
     * @param thorough counts those of what is tried where that does not settle it
     */
    Arena(Landscape landscape, Measure measure, Meter quick, Meter thorough) {
        this.quick = quick;
        this.thorough = thorough;
        this.landscape = landscape;
        this.measure = measure;
        this.bare = new Bare(landscape.circuit());
        this.ideals = new Ideals(bare, measure);
        this.fronts = new Fronts(bare, measure, Fronts.Bounds.NARROW, new Meter(Long.MAX_VALUE));
        this.fronting = new Meter(Contest.STEPS, Optional.of(thorough));
        this.broad = new Fronts(bare, measure, Fronts.Bounds.BROAD, fronting);
        this.lifting = new Lifting(landscape.circuit(), bare);
        this.smallest = new Smallest(landscape.circuit(), this);
    }

    Circuit circuit() {
        return landscape.circuit();
    }

    Terrain terrain() {
        return landscape.terrain();
    }

    Measure measure() {
        return measure;
    }

    /** What a node is without slots. */
    int bare(int node) {
        return bare.of(node);
    }

    /** By shape of slots and what is in them, what is needed of it; see {@link Lots}. */
    Map<List<Integer>, Optional<Cluster>> choices() {
        return choices;
    }

    Fronts fronts() {
        return fronts;
    }

    /** Starts counting anew what large fronts may take. */
    void allowFronts(long steps) {
        fronting.allow(steps, thorough);
    }

    /** Starts counting anew what large fronts may take that are made so that many heads can be gone through. */
    void allowFrontsForMany(long steps) {
        fronting.allow(steps, forMany);
    }

    /** Fronts that may be large. */
    Fronts broadFronts() {
        return broad;
    }

    /** The choice out of a node that a point of its front stands for. */
    Pick pick(int node, Point point) {
        return lifting.pick(node, point);
    }

    /** How parts stand in slots with these contents; found when first asked for. */
    Verdicts verdicts(Contents contents) {
        return verdicts.computeIfAbsent(contents, unused -> new Verdicts(contents, this));
    }

    /** The best that the assemblies of a node bring; empty-handed ({@code null}) where none takes part. */
    Yield ideal(int node) {
        return ideals.of(node);
    }

    /** The assembly of a node with the fewest parts that takes part. */
    Pick smallest(int node) {
        return smallest.of(node);
    }

    /** How many parts that assembly has. */
    int fewestParts(int node) {
        return smallest.size(node);
    }

    /** What a choice brings; empty-handed ({@code null}) where it takes no part. */
    Yield broughtBy(Pick pick) {
        if (pick instanceof Pick.Headed headed) {
            return sum(measure.ofPart(headed.part()), broughtBy(headed.on()));
        }
        if (pick instanceof Pick.InSlot inSlot) {
            return broughtBy(inSlot.held());
        }
        if (pick instanceof Pick.Both both) {
            return sum(broughtBy(both.one()), broughtBy(both.other()));
        }
        return measure.ofNothing();
    }

    private Yield sum(Yield one, Yield other) {
        return one == null || other == null ? null : measure.both(one, other);
    }

    /** What was hard to find to be undominated. */
    Survivors memory() {
        return survivors;
    }

    /** How many steps going through one head slot by slot may take. */
    long patience() {
        return patience;
    }

    /** Whether all heads have to be quick, so that each has its turn. */
    boolean hurried() {
        return patience < Contest.STEPS;
    }

    void patience(long steps) {
        patience = steps;
    }

    /**
     * Goes on with what little work does not settle.
     *
     * @param steps that all heads may take together beside those that are spent
     * @param patience how many of them going through one head slot by slot may take
     */
    void goOn(long steps, long patience) {
        thorough.allowMore(steps);
        patience(patience);
    }

    /** Counts the steps of all quick attempts together. */
    Meter quick() {
        return quick;
    }

    /** Counts the steps of all thorough attempts together. */
    Meter thorough() {
        return thorough;
    }

    /** Counts the steps of one quick attempt, and those of all together. */
    Meter meter(long most) {
        return new Meter(most, Optional.of(quick));
    }

    /** A search by fronts. */
    Search search(Meter meter) {
        return new Search(circuit(), measure, ideals, Optional.of(fronts), lifting, meter);
    }

    /** A search that looks at every assembly by itself. */
    Search plainSearch(Meter meter) {
        return new Search(circuit(), measure, ideals, Optional.empty(), lifting, meter);
    }
}
