package fettle.space.worth;

import fettle.space.Circuit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;

/** Looks in a node of the circuit for an assembly that is as good as asked in every column, by depth first, leaving out what cannot become so. */
final class Search {

    /** How much is asked for. */
    enum Asked {
        /** At least as good in every column. */
        AS_GOOD,
        /** Better in one besides. */
        BETTER
    }

    private final Circuit circuit;
    private final Measure measure;
    private final Ideals ideals;
    private final Optional<Fronts> fronts;
    private final Lifting lifting;
    private final Meter meter;

    /**
     * A search.
     *
     * @param fronts used in place of all choices, where every assembly is as acceptable as another
     * @param lifting puts their points back into slots
     */
    Search(Circuit circuit, Measure measure, Ideals ideals, Optional<Fronts> fronts, Lifting lifting, Meter meter) {
        this.circuit = circuit;
        this.measure = measure;
        this.ideals = ideals;
        this.fronts = fronts;
        this.lifting = lifting;
        this.meter = meter;
    }

    /** What is still to be chosen: a node, the best that it can bring, and what is chosen after it. */
    private final class Open {

        private final int node;
        private final Yield own;
        private final Open next;
        private Yield best;

        Open(int node, Yield own, Open next) {
            this.node = node;
            this.own = own;
            this.next = next;
        }

        /** The best that it and all after it can bring; worked out only where it is asked for, since most of what is tried goes no further. */
        Yield best() {
            if (best == null) {
                best = next == null ? own : measure.both(own, next.best());
            }
            return best;
        }
    }

    /** An assembly of a node that is as good as asked beside what is there already. */
    Optional<Pick> find(int node, Yield beside, Yield target, Asked asked, int mostParts, Predicate<Pick> accepted) {
        Yield best = ideals.of(node);
        if (best == null) {
            return Optional.empty();
        }
        Attempt attempt = new Attempt(node, target, asked, accepted);
        return attempt.from(new Open(node, best, null), beside, mostParts) ? Optional.of(attempt.found) : Optional.empty();
    }

    private final class Attempt {

        private final int start;
        private final Yield target;
        private final Asked asked;
        private final Predicate<Pick> accepted;
        /** The choices made, in the order in which they were come to. */
        private final List<Object> choices = new ArrayList<>();
        private final Yield[] three = new Yield[3];
        private int replayed;
        private Pick found;

        Attempt(int start, Yield target, Asked asked, Predicate<Pick> accepted) {
            this.start = start;
            this.target = target;
            this.asked = asked;
            this.accepted = accepted;
        }

        private boolean enough(Measure.Order order) {
            return order == Measure.Order.BETTER || order == Measure.Order.EVEN && asked == Asked.AS_GOOD;
        }

        /** Whether enough can come of what is brought and all that is open. */
        private boolean enough(Yield brought, Open open) {
            if (open.next == null || open.best != null) {
                return enough(measure.compareBoth(brought, open.best(), target));
            }
            three[0] = brought;
            three[1] = open.own;
            three[2] = open.next.best();
            return enough(measure.compareAll(three, target));
        }

        private boolean from(Open open, Yield brought, int partsLeft) {
            meter.spend(1);
            if (open == null) {
                if (!enough(measure.compare(brought, target))) {
                    return false;
                }
                replayed = 0;
                found = replay(start);
                return accepted.test(found);
            }
            if (!enough(brought, open)) {
                return false;
            }
            int node = open.node;
            Optional<List<Point>> front = fronts.flatMap(all -> all.of(node));
            if (front.isPresent()) {
                Yield others = open.next == null ? brought : measure.both(brought, open.next.best());
                for (Point point : front.get()) {
                    if (point.parts() > partsLeft) {
                        continue;
                    }
                    if (!enough(measure.compareBoth(others, point.yield(), target))) {
                        meter.spend(1);
                    } else if (chose(point, open.next, measure.both(brought, point.yield()), partsLeft - point.parts())) {
                        return true;
                    }
                }
                return false;
            }
            int first = circuit.first(node);
            int second = circuit.second(node);
            return switch (circuit.kind(node)) {
                case ONE -> from(open.next, brought, partsLeft);
                case SLOT -> from(before(second, open.next), brought, partsLeft);
                case PART -> partsLeft > 0 && from(before(second, open.next), measure.both(brought, measure.ofPart(first)), partsLeft - 1);
                case BOTH -> from(before(first, before(second, open.next)), brought, partsLeft);
                case SEVERAL -> {
                    Open all = open.next;
                    for (int i = 0; i < second; i++) {
                        all = before(first, all);
                    }
                    yield from(all, brought, partsLeft);
                }
                case EITHER -> {
                    for (int i = 0; i < circuit.width(node); i++) {
                        int alternative = circuit.alternative(node, i);
                        if (ideals.of(alternative) != null && chose(i, before(alternative, open.next), brought, partsLeft)) {
                            yield true;
                        }
                    }
                    yield false;
                }
            };
        }

        private boolean chose(Object choice, Open next, Yield brought, int partsLeft) {
            choices.add(choice);
            if (from(next, brought, partsLeft)) {
                return true;
            }
            choices.remove(choices.size() - 1);
            return false;
        }

        private Open before(int node, Open next) {
            return new Open(node, ideals.of(node), next);
        }

        /** Puts together what was chosen, going the same way again. */
        private Pick replay(int node) {
            if (fronts.flatMap(all -> all.of(node)).isPresent()) {
                return lifting.pick(node, (Point) choices.get(replayed++));
            }
            int first = circuit.first(node);
            int second = circuit.second(node);
            return switch (circuit.kind(node)) {
                case ONE -> Pick.NOTHING;
                case SLOT -> new Pick.InSlot(first, replay(second));
                case PART -> new Pick.Headed(first, replay(second));
                case BOTH -> {
                    Pick one = replay(first);
                    yield Pick.both(one, replay(second));
                }
                case SEVERAL -> {
                    Pick all = replay(first);
                    for (int i = 1; i < second; i++) {
                        all = Pick.both(all, replay(first));
                    }
                    yield all;
                }
                case EITHER -> replay(circuit.alternative(node, (Integer) choices.get(replayed++)));
            };
        }
    }
}
