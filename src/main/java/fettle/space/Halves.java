package fettle.space;

import java.util.Arrays;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/**
 * Two lots of platforms that share as little work as may be, so that each can be folded by itself: platforms whose slots fit the same parts stay together.
 * There are two lots on every machine, since how much work a lot saves its platforms can decide whether it is too much.
 */
final class Halves {

    private Halves() {}

    /** Each platform in one of two lots, neither of them empty; one lot where there is but one platform. */
    static List<List<String>> of(Terrain terrain, Collection<String> platforms) {
        List<String> ordered = platforms.stream().distinct()
                .sorted(Comparator.<String, int[]>comparing(platform -> fitting(terrain, platform), Arrays::compare).thenComparing(Comparator.naturalOrder()))
                .toList();
        int middle = ordered.size() / 2;
        return Stream.of(ordered.subList(0, middle), ordered.subList(middle, ordered.size())).filter(lot -> !lot.isEmpty()).toList();
    }

    /** The parts that fit the platform's slots, slot by slot. */
    private static int[] fitting(Terrain terrain, String platform) {
        return IntStream.of(terrain.slotsOf()[terrain.number(platform)]).flatMap(slot -> IntStream.of(terrain.candidates()[slot])).toArray();
    }
}
