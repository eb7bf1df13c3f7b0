package fettle.judgement;

import fettle.space.BetweenRungs;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;

/**
 * Slots in which something holds of a part, and the platforms on which it does where it holds not on all on which the part stands there.
 *
 * @param onAll slots of which it holds on all these platforms, in order
 * @param onSome of each other slot the platforms on which it holds
 */
public record SlotsOnPlatforms(List<String> onAll, SortedMap<String, SortedSet<String>> onSome) {

    /** By the number of slots, then by that of platforms. */
    static final Comparator<SlotsOnPlatforms> WIDEST_FIRST = Comparator.comparing((SlotsOnPlatforms where) -> -where.slots().size())
            .thenComparing(where -> -where.onAll.size())
            .thenComparing(where -> -where.onSome.values().stream().mapToInt(SortedSet::size).sum());

    private static final int MOST_SLOTS = 12;
    private static final int MOST_PLATFORMS = 3;
    private static final int MOST_GROUPS = 3;

    public SlotsOnPlatforms {
        onAll = List.copyOf(onAll);
        onSome = Collections.unmodifiableSortedMap(new TreeMap<>(onSome));
    }

    /** Those in which a part lies between two rungs. */
    public static SlotsOnPlatforms of(BetweenRungs between) {
        SortedMap<String, SortedSet<String>> onSome = new TreeMap<>();
        between.divided().forEach(slot -> onSome.put(slot.toString(), between.platforms().get(slot)));
        return new SlotsOnPlatforms(between.slots().stream().filter(slot -> !between.divided().contains(slot)).map(Object::toString).toList(), onSome);
    }

    /** All the slots, in order. */
    public List<String> slots() {
        SortedSet<String> slots = new TreeSet<>(onAll);
        slots.addAll(onSome.keySet());
        return List.copyOf(slots);
    }

    /** What follows "in" in a sentence: {@code a/top and b/top, and in c/top on torch}. */
    public String words() {
        return words(" and ", ", and in ");
    }

    /** The same inside a list: {@code a/top, b/top, in c/top on torch}. */
    String listed() {
        return words(", ", ", in ");
    }

    private String words(String last, String further) {
        List<String> told = new ArrayList<>();
        if (!onAll.isEmpty()) {
            told.add(joined(onAll, MOST_SLOTS, MOST_SLOTS - 1, last, " more"));
        }
        Map<SortedSet<String>, List<String>> alike = new LinkedHashMap<>();
        onSome.forEach((slot, platforms) -> alike.computeIfAbsent(platforms, unused -> new ArrayList<>()).add(slot));
        List<Map.Entry<SortedSet<String>, List<String>>> groups = alike.entrySet().stream()
                .sorted(Comparator.comparing(group -> -group.getValue().size())).toList();
        int named = groups.size() > MOST_GROUPS ? MOST_GROUPS - 1 : groups.size();
        groups.subList(0, named).forEach(group -> told.add(joined(group.getValue(), MOST_SLOTS, MOST_SLOTS - 1, last, " more")
                + " on " + joined(List.copyOf(group.getKey()), MOST_PLATFORMS, MOST_PLATFORMS - 1, " and ", " more platforms")));
        if (named < groups.size()) {
            told.add(groups.stream().skip(named).mapToInt(group -> group.getValue().size()).sum() + " more on some platforms");
        }
        return String.join(further, told);
    }

    private static String joined(List<String> items, int most, int first, String last, String more) {
        if (items.size() > most) {
            return String.join(", ", items.subList(0, first)) + " and " + (items.size() - first) + more;
        }
        int end = items.size() - 1;
        return end == 0 ? items.get(0) : String.join(", ", items.subList(0, end)) + last + items.get(end);
    }
}
