package fettle.space;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** The strongly connected components of a graph, each before those that lead to it. Works without recursion, so that long chains are no trouble. */
final class Components {

    private final int[] of;
    private final List<int[]> members = new ArrayList<>();

    /**
     * Finds the components among all nodes.
     *
     * @param edges by node, the nodes that it leads to
     */
    Components(int[][] edges) {
        int nodes = edges.length;
        of = new int[nodes];
        Arrays.fill(of, -1);
        int[] index = new int[nodes];
        int[] low = new int[nodes];
        int[] at = new int[nodes];
        int[] path = new int[nodes];
        int[] open = new int[nodes];
        boolean[] onOpen = new boolean[nodes];
        int opened = 0;
        int counter = 0;
        for (int start = 0; start < nodes; start++) {
            if (index[start] != 0) {
                continue;
            }
            int depth = 0;
            path[depth++] = start;
            index[start] = low[start] = ++counter;
            open[opened++] = start;
            onOpen[start] = true;
            while (depth > 0) {
                int node = path[depth - 1];
                if (at[node] < edges[node].length) {
                    int next = edges[node][at[node]++];
                    if (index[next] == 0) {
                        index[next] = low[next] = ++counter;
                        open[opened++] = next;
                        onOpen[next] = true;
                        path[depth++] = next;
                    } else if (onOpen[next]) {
                        low[node] = Math.min(low[node], index[next]);
                    }
                    continue;
                }
                depth--;
                if (depth > 0) {
                    low[path[depth - 1]] = Math.min(low[path[depth - 1]], low[node]);
                }
                if (low[node] == index[node]) {
                    int from = opened;
                    do {
                        from--;
                        onOpen[open[from]] = false;
                        of[open[from]] = members.size();
                    } while (open[from] != node);
                    members.add(Arrays.copyOfRange(open, from, opened));
                    opened = from;
                }
            }
        }
    }

    int count() {
        return members.size();
    }

    int of(int node) {
        return of[node];
    }

    int[] members(int component) {
        return members.get(component);
    }
}
