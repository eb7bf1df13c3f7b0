package fettle.space.best;

import fettle.catalog.BuildEntry;
import fettle.catalog.Catalog;
import fettle.catalog.Part;
import fettle.space.Totals;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.TreeSet;

/** Shares a change between two builds out among the places where they differ. */
public final class Shares {

    private Shares() {}

    /** The shares of the outermost paths at which the builds hold different parts, each with all that hangs there. */
    public static List<Share> of(Weighing weighing, Part platform, boolean loaded, Map<String, String> before, Map<String, String> after) {
        Catalog catalog = weighing.catalog();
        SortedMap<String, String> now = new TreeMap<>(before);
        List<Share> shares = new ArrayList<>();
        for (String path : differing(before, after)) {
            SortedMap<String, BigDecimal> was = totals(catalog, platform, loaded, now);
            SortedMap<String, String> from = below(path, now);
            SortedMap<String, String> to = below(path, new TreeMap<>(after));
            now.keySet().removeIf(each -> at(path, each));
            after.forEach((each, part) -> {
                if (at(path, each)) {
                    now.put(each, part);
                }
            });
            SortedMap<String, BigDecimal> is = totals(catalog, platform, loaded, now);
            shares.add(new Share(path, from, to, difference(was, is), weighing.benefit(is).subtract(weighing.benefit(was))));
        }
        return List.copyOf(shares);
    }

    /** The same where the one build also has something that could not be placed, which counted for nothing: the other has something there instead, or nothing. */
    static List<Share> of(List<Share> shares, List<BuildEntry> unplaced) {
        SortedMap<String, Share> byPath = new TreeMap<>();
        shares.forEach(share -> byPath.put(share.path(), share));
        unplaced.stream().sorted(Comparator.comparing(BuildEntry::path)).forEach(entry -> {
            String numbered = entry.path() + ":" + entry.position();
            String path = entry.position() > 0 || byPath.containsKey(numbered) ? numbered : entry.path();
            Share share = byPath.values().stream().filter(each -> each.path().equals(path) || at(each.path(), path) && each.from().containsKey("")).findFirst()
                    .orElseGet(() -> new Share(path, new TreeMap<>(), new TreeMap<>(), new TreeMap<>(), BigDecimal.ZERO));
            SortedMap<String, String> from = new TreeMap<>(share.from());
            from.put(path.equals(share.path()) ? "" : path.substring(share.path().length() + 1), entry.part());
            byPath.put(share.path(), new Share(share.path(), from, share.to(), share.totals(), share.benefit()));
        });
        return List.copyOf(byPath.values());
    }

    private static List<String> differing(Map<String, String> before, Map<String, String> after) {
        TreeSet<String> paths = new TreeSet<>(before.keySet());
        paths.addAll(after.keySet());
        List<String> outermost = new ArrayList<>();
        for (String path : paths) {
            boolean differs = !Optional.ofNullable(before.get(path)).equals(Optional.ofNullable(after.get(path)));
            if (differs && outermost.stream().noneMatch(outer -> at(outer, path))) {
                outermost.add(path);
            }
        }
        return outermost;
    }

    private static boolean at(String path, String each) {
        return each.equals(path) || each.startsWith(path + "/");
    }

    private static SortedMap<String, String> below(String path, SortedMap<String, String> parts) {
        SortedMap<String, String> below = new TreeMap<>();
        parts.forEach((each, part) -> {
            if (at(path, each)) {
                below.put(each.equals(path) ? "" : each.substring(path.length() + 1), part);
            }
        });
        return below;
    }

    private static SortedMap<String, BigDecimal> totals(Catalog catalog, Part platform, boolean loaded, Map<String, String> parts) {
        return Totals.of(catalog, platform, parts.values().stream().map(part -> catalog.parts().get(part)).toList(), loaded, Optional.empty());
    }

    /** What a total that is only in one of the two differs by is not told. */
    public static SortedMap<String, BigDecimal> difference(Map<String, BigDecimal> before, Map<String, BigDecimal> after) {
        SortedMap<String, BigDecimal> difference = new TreeMap<>();
        after.forEach((attribute, total) -> {
            if (before.containsKey(attribute) && total.compareTo(before.get(attribute)) != 0) {
                difference.put(attribute, total.subtract(before.get(attribute)));
            }
        });
        return difference;
    }
}
