package fettle.space;

import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;

/**
 * The classes of what can be in a slot that is being filled, by how many parts there are and how many notches they take.
 *
 * @param most how many parts at most; where any number may be, only whether there are any is known
 * @param notches how many notches at most
 * @param cells by what is used, the classes
 */
record Row(int most, int notches, Map<Used, Classes> cells) {

    /** Parts and notches used. */
    record Used(int parts, int notches) implements Comparable<Used> {
        @Override
        public int compareTo(Used other) {
            return parts != other.parts ? Integer.compare(parts, other.parts) : Integer.compare(notches, other.notches);
        }
    }

    /** Nothing in the slot. */
    static Row empty(int most, int notches) {
        return new Row(most, notches, new TreeMap<>(Map.of(new Used(0, 0), Classes.EMPTY)));
    }

    /** What is used in the end; {@code null} where there is no room. */
    private Used sum(Used used, Used more) {
        long parts = (long) used.parts + more.parts;
        long taken = (long) used.notches + more.notches;
        if (parts > most || taken > notches) {
            return null;
        }
        return new Used((int) Math.min(most == Capacity.ANY ? 1 : most, parts), (int) taken);
    }

    /**
     * What is in either row, together, as far as there is room.
     *
     * @param lens the view of what is left after that
     */
    Row times(Row other, Lens lens, Combining combining) {
        Map<Used, Gathering> next = new TreeMap<>();
        cells.forEach((used, here) -> other.cells.forEach((more, there) -> {
            Used then = sum(used, more);
            if (then != null) {
                combining.both(here, there, lens, next.computeIfAbsent(then, unused -> combining.gathering()));
            }
        }));
        Map<Used, Classes> product = new TreeMap<>();
        next.forEach((used, gathered) -> {
            if (gathered.size() > 0) {
                product.put(used, gathered.classes());
            }
        });
        return new Row(most, notches, product);
    }

    /** Everything with at least one part and no more notches than these. */
    Stream<Classes> filled(int within) {
        return cells.entrySet().stream().filter(cell -> cell.getKey().parts > 0 && cell.getKey().notches <= within).map(Map.Entry::getValue);
    }
}
