package fettle.space;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.Deque;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;

/** One build, as parts in slots of others. */
final class Specimen {

    /** Stands for the platform where the number of a placed part is expected. */
    static final int PLATFORM = -1;

    /**
     * A placed part.
     *
     * @param host the number of the placed part that bears the slot, or {@link #PLATFORM}
     * @param slot the slot's number in the terrain
     */
    record Placed(int part, int host, int slot) {}

    private final List<Placed> placed = new ArrayList<>();

    private record Open(int node, int host, int slot) {}

    /** The build that a node of a thin circuit stands for. Works without recursion, since parts may be stacked high. */
    static Specimen of(Circuit thin, int root) {
        Specimen specimen = new Specimen();
        Deque<Open> open = new ArrayDeque<>();
        open.push(new Open(root, PLATFORM, -1));
        while (!open.isEmpty()) {
            Open next = open.pop();
            int first = thin.first(next.node);
            int second = thin.second(next.node);
            switch (thin.kind(next.node)) {
                case ONE -> { }
                case PART -> {
                    specimen.placed.add(new Placed(first, next.host, next.slot));
                    open.push(new Open(second, specimen.placed.size() - 1, -1));
                }
                case SLOT -> open.push(new Open(second, next.host, first));
                case BOTH -> {
                    open.push(new Open(first, next.host, next.slot));
                    open.push(new Open(second, next.host, next.slot));
                }
                case SEVERAL -> {
                    for (int i = 0; i < second; i++) {
                        open.push(new Open(first, next.host, next.slot));
                    }
                }
                case EITHER -> throw new IllegalStateException("a thin circuit has no sums");
            }
        }
        return specimen;
    }

    List<Placed> placed() {
        return placed;
    }

    /** The numbers of the placed parts directly in a slot of a host. */
    List<Integer> in(int host, int slot) {
        List<Integer> found = new ArrayList<>();
        for (int i = 0; i < placed.size(); i++) {
            if (placed.get(i).host == host && placed.get(i).slot == slot) {
                found.add(i);
            }
        }
        return found;
    }

    /** The part at each path; slots that can hold several name a position, in the order of the parts' ids. */
    SortedMap<String, String> paths(Terrain terrain) {
        SortedMap<String, String> paths = new TreeMap<>();
        String[] path = new String[placed.size()];
        for (int i = 0; i < placed.size(); i++) {
            Placed part = placed.get(i);
            List<Integer> neighbours = new ArrayList<>(in(part.host, part.slot));
            neighbours.sort(Comparator.comparing(other -> placed.get(other).part));
            String prefix = part.host == PLATFORM ? "" : path[part.host] + "/";
            String position = terrain.room()[part.slot].most() > 1 ? ":" + neighbours.indexOf(i) : "";
            path[i] = prefix + terrain.slots().get(part.slot).slot() + position;
            paths.put(path[i], terrain.hosts().get(part.part));
        }
        return paths;
    }
}
