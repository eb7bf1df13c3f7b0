package fettle.space.best;

import fettle.space.BuildResult;
import fettle.space.Fraction;
import fettle.space.Occurrence;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.Function;

/**
 * Seeks the swaps to make one after the other, each of which gains something, is sound and keeps to the budget. Taking what gains most each time can spend on one swap what two
 * others would have made more of; so several beginnings are followed, those that gain most and those that gain most for their price. What comes out may
 * still not be the best there is.
 */
final class Upgrading {

    /** How many beginnings are followed for their gain, and how many for their gain against the price. */
    private static final int FOLLOWED = 3;

    private static final Comparator<Begun> MOST_GAINED = Comparator.comparing(Begun::gain).reversed().thenComparing(Begun::price);

    private final BuildResult before;
    private final Function<BuildResult, Swaps.Found> swaps;

    /**
     * For a build.
     *
     * @param swaps finds the single swaps of what it becomes
     */
    Upgrading(BuildResult before, Function<BuildResult, Swaps.Found> swaps) {
        this.before = before;
        this.swaps = swaps;
    }

    /** Swaps made so far, what they gain and what is to be paid for them in all. */
    private record Begun(List<Swap> swaps, BigDecimal gain, BigDecimal price) {

        Begun and(Swap next) {
            List<Swap> all = new ArrayList<>(swaps);
            all.add(next);
            return new Begun(all, gain.add(next.gain()), price.add(next.price()));
        }

        /** What is free gains most for its price. */
        Fraction returns() {
            return Fraction.of(gain).over(Fraction.of(price.max(BigDecimal.valueOf(1, 2))));
        }

        /** The parts of the build that it comes to, by path. */
        Map<String, String> parts() {
            Map<String, String> parts = new TreeMap<>();
            for (Occurrence part : swaps.get(swaps.size() - 1).after().placement().orElseThrow().parts()) {
                parts.put(part.path(), part.part());
            }
            return parts;
        }
    }

    /** At most so many swaps; fewer where nothing more is gained. */
    List<Swap> steps(Swaps.Found first, int most) {
        Begun best = new Begun(List.of(), BigDecimal.ZERO, BigDecimal.ZERO);
        List<Begun> open = List.of(best);
        for (int i = 0; i < most && !open.isEmpty(); i++) {
            List<Begun> further = new ArrayList<>();
            for (Begun begun : open) {
                Swaps.Found found = begun.swaps().isEmpty() ? first : swaps.apply(begun.swaps().get(begun.swaps().size() - 1).after());
                found.swaps().stream().filter(swap -> swap.gain().signum() > 0 && swap.sound() && Improvement.affordable(before, swap.after()))
                        .map(begun::and).forEach(further::add);
            }
            further.sort(MOST_GAINED);
            best = further.isEmpty() || MOST_GAINED.compare(best, further.get(0)) <= 0 ? best : further.get(0);
            open = i + 1 < most ? followed(further) : List.of();
        }
        return best.swaps();
    }

    /** Those to go on from; of several that come to the same build the cheapest. */
    private static List<Begun> followed(List<Begun> begun) {
        Map<Map<String, String>, Begun> different = new LinkedHashMap<>();
        take(begun, different);
        List<Begun> byReturns = new ArrayList<>(begun);
        byReturns.sort(Comparator.comparing(Begun::returns).reversed().thenComparing(MOST_GAINED));
        take(byReturns, different);
        return List.copyOf(different.values());
    }

    private static void take(List<Begun> begun, Map<Map<String, String>, Begun> into) {
        int room = into.size() + FOLLOWED;
        for (Begun each : begun) {
            if (into.size() == room) {
                return;
            }
            into.putIfAbsent(each.parts(), each);
        }
    }
}
