package fettle.space.worth;

import fettle.space.Circuit;
import fettle.space.Landscape;
import fettle.space.Terrain;
import java.util.Optional;

/** What assemblies are compared by, with what is worked out about the circuit once for all sites. */
final class Arena {

    private final Landscape landscape;
    private final Measure measure;
    private final Meter whole;
    private final Ideals ideals;
    private final Fronts fronts;
    private final Smallest smallest;

    Arena(Landscape landscape, Measure measure, Meter whole) {
        this.whole = whole;
        this.landscape = landscape;
        this.measure = measure;
        this.ideals = new Ideals(landscape.circuit(), measure);
        this.fronts = new Fronts(landscape.circuit(), measure);
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

    Fronts fronts() {
        return fronts;
    }

    /** The best that the assemblies of a node bring; empty-handed ({@code null}) where none takes part. */
    Yield ideal(int node) {
        return ideals.of(node);
    }

    /** The assembly of a node with the fewest parts that takes part. */
    Pick smallest(int node) {
        return smallest.of(node);
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

    /** Counts the steps of one decision, and those of all together. */
    Meter meter(long most) {
        return new Meter(most, Optional.of(whole));
    }

    /** A search by fronts. */
    Search search(Meter meter) {
        return new Search(circuit(), measure, ideals, Optional.of(fronts), meter);
    }

    /** A search that looks at every assembly by itself. */
    Search plainSearch(Meter meter) {
        return new Search(circuit(), measure, ideals, Optional.empty(), meter);
    }
}
