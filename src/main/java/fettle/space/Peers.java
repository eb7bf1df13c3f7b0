package fettle.space;

import fettle.catalog.Catalog;
import fettle.catalog.Part;
import fettle.catalog.Stat;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Stream;

/**
 * What figures are compared with each other: those of one attribute on the parts of one kind, plain and loaded ones apart. All platforms are
 * peers.
 *
 * @param group how the parts are called: {@code parts of kind x} or {@code platforms}
 * @param members all parts of the group
 * @param stats the figures of those that have one, the least first, equal ones by part
 */
record Peers(String group, String attribute, boolean loaded, List<Part> members, List<Stat> stats) {

    private static final Comparator<Stat> LEAST_FIRST = Comparator.comparing(Stat::value).thenComparing(Stat::part);

    /** All groups of the catalog that state something. */
    static List<Peers> of(Catalog catalog) {
        SortedMap<String, List<Part>> kinds = new TreeMap<>();
        catalog.parts().values().forEach(part -> part.kind().ifPresent(kind -> kinds.computeIfAbsent(kind, unused -> new ArrayList<>()).add(part)));
        List<Peers> groups = new ArrayList<>();
        kinds.forEach((kind, members) -> add(groups, "parts of kind " + kind, members));
        add(groups, "platforms", catalog.platforms().values());
        return groups;
    }

    private static void add(List<Peers> groups, String group, Collection<Part> members) {
        for (boolean loaded : new boolean[] {false, true}) {
            SortedSet<String> attributes = new TreeSet<>();
            members.forEach(part -> attributes.addAll(stats(part, loaded).keySet()));
            for (String attribute : attributes) {
                List<Stat> stats = members.stream().flatMap(part -> Stream.ofNullable(stats(part, loaded).get(attribute))).sorted(LEAST_FIRST).toList();
                groups.add(new Peers(group, attribute, loaded, List.copyOf(members), stats));
            }
        }
    }

    private static Map<String, Stat> stats(Part part, boolean loaded) {
        return loaded ? part.loaded() : part.stats();
    }

    /** The members that state no such figure. */
    List<Part> silent() {
        return members.stream().filter(part -> !stats(part, loaded).containsKey(attribute)).toList();
    }

    /** The middle figure, or the mean of the two in the middle. */
    BigDecimal median() {
        return median(stats.stream().map(Stat::value).toList());
    }

    /** The median of the distances from the median. */
    BigDecimal spread() {
        BigDecimal median = median();
        return median(stats.stream().map(stat -> stat.value().subtract(median).abs()).sorted().toList());
    }

    private static BigDecimal median(List<BigDecimal> sorted) {
        int half = sorted.size() / 2;
        return sorted.size() % 2 == 1 ? sorted.get(half) : sorted.get(half - 1).add(sorted.get(half)).multiply(new BigDecimal("0.5"));
    }
}
