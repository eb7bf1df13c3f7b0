package fettle.space;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.function.ToIntFunction;
import java.util.stream.Collectors;

/**
 * Lays parts on a measured slot: those with a stated first notch stay there, the others must fit into the runs that remain free.
 */
final class Notches {

    /** What keeps the first of these parts from its place. */
    record Problem(List<Occurrence> parts, String what) {}

    private final int length;
    private final List<Occurrence> fixed;
    private final List<Occurrence> free;
    private final ToIntFunction<Occurrence> span;

    Notches(int length, List<Occurrence> held, ToIntFunction<Occurrence> span) {
        this.length = length;
        this.span = span;
        this.fixed = held.stream().filter(part -> part.at().isPresent()).sorted(Comparator.comparingInt(part -> part.at().getAsInt())).toList();
        this.free = held.stream().filter(part -> part.at().isEmpty()).sorted(Comparator.comparingInt(span).reversed()).toList();
    }

    List<Problem> problems() {
        List<Problem> problems = new ArrayList<>();
        for (int i = 0; i < fixed.size(); i++) {
            Occurrence part = fixed.get(i);
            if (first(part) < 0 || last(part) >= length) {
                problems.add(new Problem(List.of(part), "it would take " + taken(part) + ", and the slot has notches 0 to " + (length - 1)));
            }
            for (Occurrence before : fixed.subList(0, i)) {
                if (first(part) <= last(before)) {
                    problems.add(new Problem(
                            List.of(part, before), "it would take " + taken(part) + ", and " + before.part() + " at " + before.path() + " takes " + taken(before)));
                }
            }
        }
        if (problems.isEmpty() && !free.isEmpty() && !fits(runs(), 0)) {
            List<Occurrence> parts = new ArrayList<>(free);
            parts.addAll(fixed);
            problems.add(new Problem(parts, "the runs left free measure " + measured(runs())));
        }
        return problems;
    }

    private static String measured(int[] runs) {
        String all = Arrays.stream(runs).mapToObj(Integer::toString).collect(Collectors.joining(" and "));
        return all + (all.equals("1") ? " notch" : " notches");
    }

    private int first(Occurrence part) {
        return part.at().getAsInt();
    }

    private int last(Occurrence part) {
        return first(part) + span.applyAsInt(part) - 1;
    }

    private String taken(Occurrence part) {
        return first(part) == last(part) ? "notch " + first(part) : "notches " + first(part) + " to " + last(part);
    }

    /** The lengths of the runs between the fixed parts. */
    private int[] runs() {
        List<Integer> runs = new ArrayList<>();
        int next = 0;
        for (Occurrence part : fixed) {
            runs.add(first(part) - next);
            next = last(part) + 1;
        }
        runs.add(length - next);
        return runs.stream().mapToInt(Integer::intValue).filter(run -> run > 0).toArray();
    }

    /** Whether the free parts from {@code index} on, longest first, can be packed into runs of these lengths; equal runs are tried once. */
    private boolean fits(int[] runs, int index) {
        if (index == free.size()) {
            return true;
        }
        int needed = span.applyAsInt(free.get(index));
        if (needed == 1) {
            return Arrays.stream(runs).sum() >= free.size() - index;
        }
        for (int i = 0; i < runs.length; i++) {
            int run = runs[i];
            if (run >= needed && Arrays.stream(runs, 0, i).noneMatch(earlier -> earlier == run)) {
                runs[i] -= needed;
                if (fits(runs, index + 1)) {
                    runs[i] += needed;
                    return true;
                }
                runs[i] += needed;
            }
        }
        return false;
    }
}
