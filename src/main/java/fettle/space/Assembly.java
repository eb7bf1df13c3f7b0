package fettle.space;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.Set;

/**
 * A part and, by slot, the assemblies on it. Slots that hold nothing are left out; assemblies in one slot are in a fixed order.
 *
 * @param several the slots that can hold several parts
 */
public record Assembly(String part, SortedMap<String, List<Assembly>> slots, Set<String> several) implements Comparable<Assembly> {

    private static final Comparator<Assembly> BY_SIZE = Comparator.comparingInt(assembly -> assembly.parts().size());

    public Assembly {
        SortedMap<String, List<Assembly>> filled = new TreeMap<>();
        slots.forEach((slot, held) -> {
            if (!held.isEmpty()) {
                filled.put(slot, held.stream().sorted(Comparator.comparing(Assembly::toString)).toList());
            }
        });
        slots = Collections.unmodifiableSortedMap(filled);
        several = Collections.unmodifiableSet(new TreeSet<>(several));
    }

    /** Every part in it, each occurrence by itself, its head first. */
    public List<String> parts() {
        List<String> parts = new ArrayList<>(List.of(part));
        slots.values().forEach(held -> held.forEach(assembly -> parts.addAll(assembly.parts())));
        return parts;
    }

    /** The parts by path, as build files write paths; the head's path is empty. */
    public SortedMap<String, String> paths() {
        SortedMap<String, String> paths = new TreeMap<>();
        paths.put("", part);
        slots.forEach((slot, held) -> {
            for (int i = 0; i < held.size(); i++) {
                String path = several.contains(slot) ? slot + ":" + i : slot;
                held.get(i).paths().forEach((below, part) -> paths.put(below.isEmpty() ? path : path + "/" + below, part));
            }
        });
        return paths;
    }

    /** These in the order of {@link #compareTo}, for which each is looked at but once. */
    public static List<Assembly> smallestFirst(Collection<Assembly> assemblies) {
        record Sized(Assembly assembly, int size, String text) {}
        return assemblies.stream().map(each -> new Sized(each, each.parts().size(), each.toString()))
                .sorted(Comparator.comparingInt(Sized::size).thenComparing(Sized::text)).map(Sized::assembly).toList();
    }

    /** The smaller first, then by text. */
    @Override
    public int compareTo(Assembly other) {
        int bySize = BY_SIZE.compare(this, other);
        return bySize != 0 ? bySize : toString().compareTo(other.toString());
    }

    /** For example {@code mount{top=[sight]}}. */
    @Override
    public String toString() {
        StringBuilder text = new StringBuilder(part);
        if (!slots.isEmpty()) {
            String comma = "{";
            for (var slot : slots.entrySet()) {
                text.append(comma).append(slot.getKey()).append('=').append(slot.getValue());
                comma = "; ";
            }
            text.append('}');
        }
        return text.toString();
    }

    // Written out, as in SlotId.
    @Override
    public boolean equals(Object other) {
        return other instanceof Assembly that && part.equals(that.part) && slots.equals(that.slots) && several.equals(that.several);
    }

    @Override
    public int hashCode() {
        return 31 * (31 * part.hashCode() + slots.hashCode()) + several.hashCode();
    }
}
