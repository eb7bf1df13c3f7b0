package fettle.space.worth;

import fettle.space.Bare;
import fettle.space.Contents;
import fettle.space.Stand;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;

/**
 * The stands that may hold a rung or a choice that none betters. Where two parts of one role can carry the very same things, and the one costs no more, brings no less and
 * differs in one, it betters the other with whatever both carry; so that nothing needs to be known of what that is.
 */
final class Contenders {

    /** What may be carried, as a node of the circuit without slots, and the role of the part that carries it. */
    private record Load(int carried, long role) {
        // Written out, as in SlotId.
        @Override
        public boolean equals(Object other) {
            return other instanceof Load that && carried == that.carried && role == that.role;
        }

        @Override
        public int hashCode() {
            return 31 * carried + Long.hashCode(role);
        }
    }

    private final Bare bare;
    private final RoleSets roles;
    private final Worths worths;
    private final Meter meter;
    private final Map<Contents, Map<Integer, List<Stand>>> byHead = new IdentityHashMap<>();
    private final Map<Contents, List<Stand>> all = new IdentityHashMap<>();

    Contenders(Bare bare, RoleSets roles, Worths worths, Meter meter) {
        this.bare = bare;
        this.roles = roles;
        this.worths = worths;
        this.meter = meter;
    }

    /** Those of all that a slot can hold. */
    List<Stand> of(Contents contents) {
        return all.computeIfAbsent(contents, this::found);
    }

    /** Those that a part heads. */
    List<Stand> of(Place place) {
        return byHead.computeIfAbsent(place.contents(), contents -> {
            Map<Integer, List<Stand>> heads = new HashMap<>();
            of(contents).forEach(stand -> heads.computeIfAbsent(stand.head(), unused -> new ArrayList<>()).add(stand));
            return heads;
        }).getOrDefault(place.head(), List.of());
    }

    private List<Stand> found(Contents contents) {
        Map<Load, Curve> best = new HashMap<>();
        List<Stand> sold = contents.stands().stream().filter(stand -> worths.sold(stand.head())).toList();
        for (Stand stand : sold) {
            Curve here = Curve.point(worths.cost(stand.head()), worths.benefit(stand.head()));
            Curve front = best.merge(load(stand), here, (one, other) -> one.or(other, Curve.Keep.ALL));
            meter.spend(1L + front.size());
        }
        return sold.stream().filter(stand -> best.get(load(stand)).holds(worths.cost(stand.head()), worths.benefit(stand.head()))).toList();
    }

    private Load load(Stand stand) {
        return new Load(bare.circuit().second(bare.of(stand.node())), roles.of(stand.head()));
    }
}
