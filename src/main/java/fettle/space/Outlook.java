package fettle.space;

import java.util.Arrays;
import java.util.IdentityHashMap;
import java.util.Map;

/**
 * What may be placed on a platform outside of each of its nodes: the events that the rest of a build can add to what a host or shape holds, as far as
 * they concern monitors that something in it touches.
 */
final class Outlook {

    private final Ground ground;
    private final Monitors monitors;
    private final int[] nodes;
    private final int[][] outside;
    private final int[] base;
    private final int[] counts;
    private final Map<int[], Integer> longest = new IdentityHashMap<>();

    Outlook(Ground ground, int platform) {
        this.ground = ground;
        this.monitors = ground.monitors();
        this.nodes = ground.reachable(platform);
        this.outside = new int[ground.nodes()][];
        this.base = base(platform);
        this.counts = new int[monitors.events()];
        for (int node : nodes) {
            outside[node] = Numbers.NONE;
            if (!ground.isHost(node) && ground.room(node).measured()) {
                longest.merge(ground.next(node), ground.room(node).notches(), Math::max);
            }
        }
        for (int i = 0; i < nodes.length;) {
            int end = i;
            while (end < nodes.length && ground.components().of(nodes[end]) == ground.components().of(nodes[i])) {
                end++;
            }
            boolean again = true;
            while (again) {
                again = false;
                for (int j = i; j < end; j++) {
                    boolean changed = ground.isHost(nodes[j]) ? spreadHost(nodes[j]) : spreadShape(nodes[j]);
                    again |= changed && ground.circular(nodes[j]);
                }
            }
            i = end;
        }
    }

    private int[] base(int platform) {
        int[] states = new int[monitors.count()];
        for (int event : monitors.own(platform)) {
            int monitor = monitors.monitorOf(event);
            states[monitor] = monitors.monoid(monitor).add(states[monitor], monitors.generatorOf(event));
        }
        return states;
    }

    /** What a slot of a host sees: what the host sees, the host itself, and its other slots. */
    private boolean spreadHost(int host) {
        int[] slots = ground.terrain().slotsOf()[host];
        int[] around = ground.terrain().isPart(host) ? Numbers.union(outside[host], Numbers.distinct(monitors.own(host))) : Numbers.NONE;
        count(around, 1);
        for (int slot : slots) {
            count(ground.inside(ground.nodeOf(slot)), 1);
        }
        boolean changed = false;
        for (int slot : slots) {
            int shape = ground.nodeOf(slot);
            count(ground.inside(shape), -1);
            changed |= add(shape);
            count(ground.inside(shape), 1);
        }
        count(around, -1);
        for (int slot : slots) {
            count(ground.inside(ground.nodeOf(slot)), -1);
        }
        return changed;
    }

    /** What a part in a slot sees: what the slot sees, the slot in use, and the other parts in it. */
    private boolean spreadShape(int shape) {
        int[] candidates = ground.next(shape);
        int[] around = Numbers.union(outside[shape], ground.joint(shape));
        count(around, 1);
        boolean crowd = ground.room(shape).most() > 1;
        boolean twice = !ground.room(shape).distinct();
        if (crowd) {
            for (int part : candidates) {
                count(ground.inside(part), 1);
            }
        }
        boolean changed = false;
        for (int part : candidates) {
            if (ground.insideMonitors(part).length > 0) {
                count(ground.inside(part), crowd && !twice ? -1 : 0);
                changed |= add(part);
                count(ground.inside(part), crowd && !twice ? 1 : 0);
            }
        }
        count(around, -1);
        if (crowd) {
            for (int part : candidates) {
                count(ground.inside(part), -1);
            }
        }
        return changed;
    }

    private void count(int[] events, int times) {
        if (times != 0) {
            for (int event : events) {
                counts[event] += times;
            }
        }
    }

    /** Adds to a node's outlook the counted events of monitors that it touches. */
    private boolean add(int node) {
        int[] seen = new int[16];
        int length = 0;
        for (int monitor : ground.insideMonitors(node)) {
            for (int event = monitors.firstEvent(monitor); event < monitors.firstEvent(monitor + 1); event++) {
                if (counts[event] > 0) {
                    if (length == seen.length) {
                        seen = Arrays.copyOf(seen, 2 * length);
                    }
                    seen[length++] = event;
                }
            }
        }
        int[] before = outside[node];
        outside[node] = Numbers.union(before, Arrays.copyOf(seen, length));
        return outside[node].length != before.length;
    }

    /** Hosts and shapes that can be reached from the platform. */
    int[] nodes() {
        return nodes;
    }

    int[] outside(int node) {
        return outside[node];
    }

    /** The notches of the longest slot on this platform that takes the same parts as a shape, which is measured itself. */
    int longest(int shape) {
        return longest.get(ground.next(shape));
    }

    /** By monitor, the state that the platform itself brings. */
    int[] base() {
        return base;
    }
}
