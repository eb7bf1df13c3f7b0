package fettle.space.best;

import fettle.catalog.BuildEntry;
import fettle.document.Origin;
import fettle.relation.Relations;
import fettle.space.Placement;
import fettle.space.SlotUse;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.Function;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A part, or a platform, with all that hangs on it.
 *
 * @param slots what is in each slot that holds something
 * @param numbered those of the slots whose parts are told apart by their position
 */
public record Arrangement(String part, SortedMap<String, List<Arrangement>> slots, Set<String> numbered) {

    private static final Pattern POSITION = Pattern.compile(":(\\d{1,9})$");

    /** Lists of text, the first difference deciding; a list that ends where the other goes on is the smaller. */
    static final Comparator<List<String>> LISTS = (one, other) -> {
        for (int i = 0; i < Math.min(one.size(), other.size()); i++) {
            int order = one.get(i).compareTo(other.get(i));
            if (order != 0) {
                return order;
            }
        }
        return Integer.compare(one.size(), other.size());
    };

    public Arrangement {
        slots = Collections.unmodifiableSortedMap(new TreeMap<>(slots));
        numbered = Set.copyOf(numbered);
    }

    /** A placement, its parts in no order. */
    public static Arrangement of(Relations relations, Placement placement) {
        return of(relations, placement, Placement.PLATFORM, placement.platform());
    }

    private static Arrangement of(Relations relations, Placement placement, int owner, String part) {
        SortedMap<String, List<Arrangement>> slots = new TreeMap<>();
        Set<String> numbered = new TreeSet<>();
        for (SlotUse use : placement.slots()) {
            if (use.owner() == owner && !use.occupants().isEmpty()) {
                slots.put(use.slot().slot(), use.occupants().stream()
                        .map(each -> of(relations, placement, each, placement.parts().get(each).part())).toList());
                if (relations.room(use.slot()).most() > 1) {
                    numbered.add(use.slot().slot());
                }
            }
        }
        return new Arrangement(part, slots, numbered);
    }

    /** The part at each path below the platform or part; positions follow the order of what the parts and all on them are. */
    public SortedMap<String, String> paths() {
        SortedMap<String, String> paths = new TreeMap<>();
        slots.forEach((slot, held) -> {
            List<Arrangement> sorted = held.stream().sorted(Comparator.comparing(Arrangement::sortKey, LISTS)).toList();
            for (int i = 0; i < sorted.size(); i++) {
                String path = numbered.contains(slot) ? slot + ":" + i : slot;
                paths.put(path, sorted.get(i).part);
                sorted.get(i).paths().forEach((inner, part) -> paths.put(path + "/" + inner, part));
            }
        });
        return paths;
    }

    /**
     * The part at each path, where positions are those of another arrangement: what stands there too stands where it does there, and the rest where that leaves room. Of
     * itself it has the positions of its lists.
     */
    SortedMap<String, String> pathsBeside(Arrangement other) {
        SortedMap<String, String> paths = new TreeMap<>();
        slots.forEach((slot, held) -> {
            List<Arrangement> theirs = other.slots.getOrDefault(slot, List.of());
            positions(held, theirs).forEach((position, each) -> {
                String path = numbered.contains(slot) ? slot + ":" + position : slot;
                paths.put(path, each.part);
                each.pathsBeside(position < theirs.size() ? theirs.get(position) : each).forEach((inner, part) -> paths.put(path + "/" + inner, part));
            });
        });
        return paths;
    }

    private static SortedMap<Integer, Arrangement> positions(List<Arrangement> held, List<Arrangement> theirs) {
        List<Arrangement> left = new ArrayList<>(held);
        SortedMap<Integer, Arrangement> positions = new TreeMap<>();
        place(left, theirs, positions, Arrangement::sortKey);
        place(left, theirs, positions, each -> List.of(each.part));
        int free = 0;
        for (Arrangement each : left) {
            while (positions.containsKey(free)) {
                free++;
            }
            positions.put(free, each);
        }
        return positions;
    }

    /** Places what is alike where it stands in the other list. */
    private static void place(List<Arrangement> left, List<Arrangement> theirs, SortedMap<Integer, Arrangement> positions, Function<Arrangement, List<String>> key) {
        for (int i = 0; i < theirs.size(); i++) {
            List<String> wanted = key.apply(theirs.get(i));
            Optional<Arrangement> alike = positions.containsKey(i) ? Optional.empty() : left.stream().filter(each -> key.apply(each).equals(wanted)).findFirst();
            if (alike.isPresent()) {
                left.remove(alike.get());
                positions.put(i, alike.get());
            }
        }
    }

    /** The sorted list of path=part. */
    List<String> list() {
        return paths().entrySet().stream().map(entry -> entry.getKey() + "=" + entry.getValue()).sorted().toList();
    }

    private List<String> sortKey() {
        List<String> key = new ArrayList<>(List.of("=" + part));
        key.addAll(list());
        return key;
    }

    /** The parts placed, each occurrence by itself; the head is not among them. */
    public List<String> placed() {
        List<String> placed = new ArrayList<>();
        slots.values().forEach(held -> held.forEach(each -> {
            placed.add(each.part);
            placed.addAll(each.placed());
        }));
        return placed;
    }

    /** The arrangement as entries of a build, all standing at one place. */
    public List<BuildEntry> entries(Origin origin) {
        return entries(paths(), path -> OptionalInt.empty(), origin);
    }

    /** Parts at paths as entries of a build, with these notches by path. */
    static List<BuildEntry> entries(SortedMap<String, String> parts, Function<String, OptionalInt> notches, Origin origin) {
        List<BuildEntry> entries = new ArrayList<>();
        for (Map.Entry<String, String> placed : parts.entrySet()) {
            String path = placed.getKey();
            // A slot whose id is malformed may have a colon in it that no position follows.
            Matcher position = POSITION.matcher(path);
            boolean listed = position.find();
            String slot = listed ? path.substring(0, position.start()) : path;
            entries.add(new BuildEntry(slot, listed ? Integer.parseInt(position.group(1)) : 0, placed.getValue(), notches.apply(path), origin, origin));
        }
        return List.copyOf(entries);
    }

}
