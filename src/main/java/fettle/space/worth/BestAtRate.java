package fettle.space.worth;

import fettle.space.Bare;
import fettle.space.Circuit;
import fettle.space.Stand;
import java.util.Arrays;
import java.util.List;

/**
 * The choices out of each node of the circuit without slots that come to most by one rate, one for each set of roles. Among those that come to as much it is the cheapest, or
 * where cost alone counts the best. That is far less than all that is worth its price by some rate, and shows as much of most of them.
 */
final class BestAtRate {

    private static final long NONE = Long.MIN_VALUE;

    /** The best for each of some sets of roles, by their places in a list. */
    static final class Best {

        private final long[] weighed;
        /** What tells those apart that come to as much, see {@link Rate#besides}: what each costs and brings follows from the two. */
        private final long[] besides;
        private int turn;

        Best(int size) {
            this(new long[size], new long[size]);
            clear();
        }

        private void clear() {
            Arrays.fill(weighed, NONE);
        }

        private Best(long[] weighed, long[] besides) {
            this.weighed = weighed;
            this.besides = besides;
        }

        Best copy() {
            return new Best(weighed.clone(), besides.clone());
        }

        boolean none(int at) {
            return weighed[at] == NONE;
        }

        /** What it comes to. */
        long weighed(int at) {
            return weighed[at];
        }

        long besides(int at) {
            return besides[at];
        }

        void put(int at, long come, long beside) {
            if (come > weighed[at] || come == weighed[at] && beside < besides[at]) {
                weighed[at] = come;
                besides[at] = beside;
            }
        }
    }

    /** For what is worked out of nodes. Whoever comes next works out its own in the same room, one after the other. */
    static final class Room {

        private final ByNode<Best> known = new ByNode<>();
        private int turns;
    }

    private final Bare bare;
    private final Circuit circuit;
    private final RoleSets roles;
    private final Worths worths;
    private final Meter meter;
    private final Room room;
    /** What is of an earlier turn is worked out again. */
    private int turn;
    private Rate rate;

    /**
     * For one lens.
     *
     * @param room used for the same sets of roles only
     */
    BestAtRate(Bare bare, RoleSets roles, Worths worths, Meter meter, Room room) {
        this.bare = bare;
        this.circuit = bare.circuit();
        this.roles = roles;
        this.worths = worths;
        this.meter = meter;
        this.room = room;
    }

    /** This, from now on by another rate. */
    BestAtRate by(Rate other) {
        if (!other.equals(rate)) {
            rate = other;
            turn = ++room.turns;
        }
        return this;
    }

    /** Adds the assemblies of some stands to the best for some sets. */
    void add(List<Stand> stands, RoleList sets, Best best) {
        for (Stand stand : stands) {
            int node = bare.of(stand.node());
            either(best, sets, roles.below(node), of(node));
        }
    }

    private Best of(int node) {
        Best best = room.known.get(node);
        if (best == null) {
            best = new Best(roles.below(node).size());
            room.known.put(node, best);
        } else if (best.turn == turn) {
            return best;
        } else {
            best.clear();
        }
        if (best.weighed.length > 0) {
            work(node, roles.below(node), best);
        }
        // Only now, since work may be broken off.
        best.turn = turn;
        return best;
    }

    private void work(int node, RoleList list, Best best) {
        int first = circuit.first(node);
        int second = circuit.second(node);
        switch (circuit.kind(node)) {
            case ONE -> best.put(0, 0, 0);
            case PART -> on(best, list, first, second);
            case SLOT -> throw new IllegalStateException("there are no slots");
            case BOTH -> both(best, of(first), of(second), roles.madeBy(node));
            case SEVERAL -> several(best, list, second, roles.below(first), of(first));
            case EITHER -> {
                for (int i = 0; i < circuit.width(node); i++) {
                    int alternative = circuit.alternative(node, i);
                    either(best, list, roles.below(alternative), of(alternative));
                }
            }
        }
    }

    private void on(Best best, RoleList list, int part, int below) {
        long role = roles.of(part);
        long cost = worths.cost(part);
        long benefit = worths.benefit(part);
        long weighed = rate.weighed(cost, benefit);
        long besides = rate.besides(cost, benefit);
        RoleList carried = roles.below(below);
        Best on = of(below);
        meter.spend(1L + carried.size());
        for (int i = 0; i < carried.size(); i++) {
            best.put(list.place(carried.set(i) | role), Math.addExact(on.weighed[i], weighed), Math.addExact(on.besides[i], besides));
        }
    }

    private void both(Best best, Best one, Best other, int[] made) {
        meter.spend(1L + made.length);
        long[] most = best.weighed;
        long[] others = other.weighed;
        int next = 0;
        for (int i = 0; i < one.weighed.length; i++) {
            long first = one.weighed[i];
            for (int j = 0; j < others.length; j++) {
                int at = made[next++];
                long second = others[j];
                long weighed = first + second;
                // Most fall short, and are not worth a call; one that is too long to be written has the other sign than both.
                if (weighed >= most[at] || ((first ^ weighed) & (second ^ weighed)) < 0) {
                    best.put(at, Math.addExact(first, second), Math.addExact(one.besides[i], other.besides[j]));
                }
            }
        }
    }

    /** What fewer copies serve all of them serve too, since the same choice may come again. */
    private void several(Best best, RoleList list, int copies, RoleList each, Best one) {
        Best all = new Best(list.size());
        either(all, list, each, one);
        for (int i = 1; i < copies; i++) {
            Best more = new Best(list.size());
            meter.spend(1L + (long) list.size() * each.size());
            for (int some = 0; some < list.size(); some++) {
                for (int at = 0; at < each.size() && !all.none(some); at++) {
                    more.put(list.place(list.set(some) | each.set(at)), Math.addExact(all.weighed[some], one.weighed[at]),
                            Math.addExact(all.besides[some], one.besides[at]));
                }
            }
            all = more;
        }
        either(best, list, list, all);
    }

    private void either(Best best, RoleList list, RoleList some, Best one) {
        meter.spend(1L + some.size());
        for (int i = 0; i < some.size(); i++) {
            int at = list == some ? i : list.place(some.set(i));
            if (at >= 0 && one.weighed[i] >= best.weighed[at]) {
                best.put(at, one.weighed[i], one.besides[i]);
            }
        }
    }
}
