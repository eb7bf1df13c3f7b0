package fettle.space.best;

import java.util.Arrays;
import java.util.BitSet;

/** Adds numbers up over a plan, node by node, taking of alternatives the greatest or the least. */
final class Values {

    /** What a placed part brings, by its node. */
    interface OfPart {
        long at(int node);
    }

    private final Plan plan;
    private final BitSet live;

    /** Over the nodes that a root is made of. */
    Values(Plan plan, int root) {
        this.plan = plan;
        this.live = below(plan, root);
    }

    BitSet live() {
        return live;
    }

    private static BitSet below(Plan plan, int root) {
        BitSet live = new BitSet();
        live.set(root);
        live.set(Plan.ONE);
        for (int node = root; node > 0; node = live.previousSetBit(node - 1)) {
            switch (plan.kind(node)) {
                case ONE -> { }
                case PART, SLOT -> live.set(plan.second(node));
                case BOTH -> {
                    live.set(plan.first(node));
                    live.set(plan.second(node));
                }
                case EITHER -> Arrays.stream(plan.alternatives(node)).forEach(live::set);
            }
        }
        return live;
    }

    long[] greatest(OfPart ofPart) {
        long[] values = new long[live.length()];
        for (int node = live.nextSetBit(0); node >= 0; node = live.nextSetBit(node + 1)) {
            values[node] = switch (plan.kind(node)) {
                case ONE -> 0;
                case PART -> ofPart.at(node) + values[plan.second(node)];
                case SLOT -> values[plan.second(node)];
                case BOTH -> values[plan.first(node)] + values[plan.second(node)];
                case EITHER -> {
                    long best = Long.MIN_VALUE;
                    for (int alternative : plan.alternatives(node)) {
                        best = Math.max(best, values[alternative]);
                    }
                    yield best;
                }
            };
        }
        return values;
    }

    long[] least(OfPart ofPart) {
        long[] values = greatest(node -> -ofPart.at(node));
        for (int i = 0; i < values.length; i++) {
            values[i] = -values[i];
        }
        return values;
    }

    /**
     * The most that sizes of what parts bring can sum to.
     *
     * @throws TooMany where sums might leave the numbers that are counted with
     */
    long size(String name, OfPart ofPart, int root) {
        long[] sizes = new long[live.length()];
        for (int node = live.nextSetBit(0); node >= 0; node = live.nextSetBit(node + 1)) {
            sizes[node] = Math.min(Column.MOST, switch (plan.kind(node)) {
                case ONE -> 0;
                case PART -> Math.abs(ofPart.at(node)) + sizes[plan.second(node)];
                case SLOT -> sizes[plan.second(node)];
                case BOTH -> sizes[plan.first(node)] + sizes[plan.second(node)];
                case EITHER -> Arrays.stream(plan.alternatives(node)).mapToLong(alternative -> sizes[alternative]).max().orElse(0);
            });
        }
        if (sizes[root] == Column.MOST) {
            throw new TooMany(name, Column.MOST);
        }
        return sizes[root];
    }
}
