package fettle.space.best;

import java.util.ArrayList;
import java.util.List;
import java.util.SortedMap;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;

/**
 * That the total of a column lies between two others, both allowed.
 *
 * @param least in whole units, what the platform brings included
 * @param greatest in whole units, likewise
 */
record Within(int column, long least, long greatest) {

    private static final int MOST_CASES = 16;

    boolean possible(long from, long to) {
        return from <= greatest && to >= least;
    }

    /**
     * The cases in which each bound that follows a total is one straight line, which together are all; where they would be many, the one case of whatever total.
     *
     * @param least by column, the least total of any build
     * @param greatest by column, the greatest
     */
    static List<List<Within>> cases(List<Gauge> gauges, long[] least, long[] greatest) {
        SortedMap<Integer, SortedSet<Long>> bends = new TreeMap<>();
        for (Gauge gauge : gauges) {
            if (gauge.table().isPresent() && gauge.by().orElseThrow() instanceof Quantity.Added by) {
                SortedSet<Long> known = bends.computeIfAbsent(by.column(), unused -> new TreeSet<>());
                for (long bend : gauge.table().get().x()) {
                    if (bend > least[by.column()] && bend < greatest[by.column()]) {
                        known.add(bend);
                    }
                }
            }
        }
        List<List<Within>> cases = List.of(List.of());
        for (int column : bends.keySet()) {
            if (!bends.get(column).isEmpty()) {
                cases = each(cases, between(column, bends.get(column), least[column], greatest[column]));
            }
        }
        return cases.size() > MOST_CASES ? List.of(List.of()) : cases;
    }

    private static List<Within> between(int column, SortedSet<Long> bends, long least, long greatest) {
        List<Within> pieces = new ArrayList<>();
        long from = least;
        for (long bend : bends) {
            pieces.add(new Within(column, from, bend));
            from = bend;
        }
        pieces.add(new Within(column, from, greatest));
        return pieces;
    }

    private static List<List<Within>> each(List<List<Within>> cases, List<Within> pieces) {
        List<List<Within>> all = new ArrayList<>();
        for (List<Within> each : cases) {
            for (Within piece : pieces) {
                List<Within> more = new ArrayList<>(each);
                more.add(piece);
                all.add(more);
            }
            if (all.size() > MOST_CASES) {
                break;
            }
        }
        return all;
    }
}
