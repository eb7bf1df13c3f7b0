package fettle.space.patch;

import fettle.catalog.SlotId;
import fettle.relation.Relations;
import fettle.space.BuildCheck;
import fettle.space.Placement;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;

/**
 * Finds all valid arrangements that differ from one in the fewest seats: first those that differ in one, then in two, and so on.
 *
 * <p>No arrangement is missed. A valid one differs from any invalid one on the way to it in a seat on which the fault rests (see
 * {@link RepairProblem}), or in a seat that bears such a seat, or in the outermost seat of a branch in which it puts a part that serves. So it is
 * enough to take one fault and try every part in those seats. A branch is given up only when its faults rest on more seats, no two on the
 * same, than may still be changed.
 */
final class RepairSearch {

    /** Ends a search that has taken all the work it may. */
    private static final class Exhausted extends RuntimeException {
        private static final long serialVersionUID = 1L;

        Exhausted() {
            super("", null, false, false);
        }
    }

    private final Relations relations;
    private final BuildCheck check;
    private final String platform;
    private final Arrangement start;
    private final Map<String, Integer> kept;
    private final int most;
    private final int mostChanges;

    private final List<Arrangement> found = new ArrayList<>();
    private final Set<Arrangement> tried = new HashSet<>();
    private final Map<Set<String>, Map<String, Boolean>> leads = new HashMap<>();
    private int work;
    private boolean deeper;

    /**
     * @param kept how often each part must be in the outcome; empty where none must
     * @param most how many arrangements may be looked at
     * @param mostChanges in how many seats an outcome may differ
     */
    RepairSearch(Relations relations, BuildCheck check, String platform, Arrangement start, Map<String, Integer> kept, int most, int mostChanges) {
        this.relations = relations;
        this.check = check;
        this.platform = platform;
        this.start = start;
        this.kept = kept;
        this.most = most;
        this.mostChanges = mostChanges;
    }

    /**
     * What was found.
     *
     * @param arrangements all that differ in the fewest seats; none where there are none, or the work did not suffice
     * @param changes in how many seats; where none were found, none differs in fewer
     * @param finished whether the work sufficed
     */
    record Outcome(List<Arrangement> arrangements, int changes, boolean finished) {

        boolean found() {
            return !arrangements.isEmpty();
        }
    }

    Outcome search() {
        for (int changes = 0; changes <= mostChanges; changes++) {
            found.clear();
            tried.clear();
            deeper = false;
            try {
                explore(start, Set.of(), changes);
            } catch (Exhausted bound) {
                return new Outcome(List.of(), changes, false);
            }
            if (!found.isEmpty() || !deeper) {
                return new Outcome(List.copyOf(found), changes, true);
            }
        }
        return new Outcome(List.of(), mostChanges + 1, false);
    }

    private void explore(Arrangement now, Set<String> changed, int left) {
        if (!tried.add(now)) {
            return;
        }
        if (++work > most) {
            throw new Exhausted();
        }
        List<RepairProblem> problems = problems(now);
        if (problems.isEmpty()) {
            found.add(now);
            return;
        }
        List<RepairProblem> closed = problems.stream().filter(problem -> !problem.open()).toList();
        if (closed.stream().anyMatch(problem -> changed.containsAll(problem.seats()))) {
            return;
        }
        if (atLeast(now, closed, changed) > left) {
            deeper = true;
            return;
        }
        RepairProblem chosen = chosen(problems, changed);
        Set<String> seats = new TreeSet<>(chosen.seats());
        if (left == 1) {
            closed.forEach(problem -> seats.retainAll(problem.seats()));
            deeper |= seats.size() < chosen.seats().size();
        }
        seats.removeAll(changed);
        seats.forEach(seat -> fill(now, changed, left, seat, true));
        if (left > 1) {
            bearers(seats, now, changed).forEach(seat -> fill(now, changed, left, seat, false));
        } else {
            deeper = true;
        }
        if (chosen.open()) {
            serve(now, changed, left, chosen.serving());
        }
    }

    private List<RepairProblem> problems(Arrangement now) {
        Placement placement = Placement.of(relations, platform, now.entries(Map.of()));
        List<RepairProblem> problems = new ArrayList<>(RepairProblem.of(now, placement, check.violations(placement)));
        lost(now).forEach(part -> problems.add(RepairProblem.lost(part)));
        return problems;
    }

    /** The parts to be kept that are not there, each as often as it is missing. */
    private List<String> lost(Arrangement now) {
        Map<String, Integer> missing = new TreeMap<>(kept);
        now.seats().values().forEach(held -> missing.computeIfPresent(held, (part, count) -> count - 1));
        List<String> lost = new ArrayList<>();
        missing.forEach((part, count) -> {
            for (int i = 0; i < count; i++) {
                lost.add(part);
            }
        });
        return lost;
    }

    /** In how many seats at least the rest of the way must differ. */
    private int atLeast(Arrangement now, List<RepairProblem> closed, Set<String> changed) {
        Set<String> taken = new HashSet<>(changed);
        int apart = 0;
        for (RepairProblem problem : closed) {
            Set<String> rest = new HashSet<>(problem.seats());
            rest.removeAll(changed);
            if (rest.stream().noneMatch(taken::contains)) {
                taken.addAll(rest);
                apart++;
            }
        }
        return Math.max(Math.max(apart, kept.isEmpty() ? 0 : lost(now).size()), 1);
    }

    /** The fault that rests on the fewest seats; one that something put in elsewhere could mend only where there is no other. */
    private static RepairProblem chosen(List<RepairProblem> problems, Set<String> changed) {
        RepairProblem best = problems.get(0);
        long fewest = Long.MAX_VALUE;
        for (RepairProblem problem : problems) {
            long seats = problem.seats().stream().filter(seat -> !changed.contains(seat)).count() + (problem.open() ? Integer.MAX_VALUE : 0L);
            if (seats < fewest) {
                best = problem;
                fewest = seats;
            }
        }
        return best;
    }

    /** The seats that bear these, further in: another part there may take what does not fit now. */
    private static Set<String> bearers(Set<String> seats, Arrangement now, Set<String> changed) {
        Set<String> bearers = new TreeSet<>();
        for (String seat : seats) {
            for (Optional<String> above = Arrangement.above(seat); above.isPresent(); above = Arrangement.above(above.get())) {
                if (!seats.contains(above.get()) && !changed.contains(above.get()) && now.at(above.get()).isPresent()) {
                    bearers.add(above.get());
                }
            }
        }
        return bearers;
    }

    /** Tries everything else in a seat: each part that fits there, and, where that makes sense, nothing. */
    private void fill(Arrangement now, Set<String> changed, int left, String seat, boolean empty) {
        Optional<String> held = now.at(seat);
        if (empty && held.isPresent()) {
            go(now, changed, left, seat, Optional.empty());
        }
        for (String part : fitting(now, seat)) {
            if (!held.equals(Optional.of(part))) {
                go(now, changed, left, seat, Optional.of(part));
            }
        }
    }

    private void go(Arrangement now, Set<String> changed, int left, String seat, Optional<String> part) {
        Set<String> more = new HashSet<>(changed);
        more.add(seat);
        explore(now.with(seat, part), more, left - 1);
    }

    private List<String> fitting(Arrangement now, String seat) {
        Optional<String> above = Arrangement.above(seat);
        Optional<String> host = above.isEmpty() ? Optional.of(platform) : now.at(above.get());
        return host.map(part -> new SlotId(part, Arrangement.slot(seat)))
                .filter(slot -> relations.slot(slot).isPresent())
                .map(relations::candidates)
                .orElse(List.of());
    }

    /** Tries every part that serves, or that can carry one, in every seat that is taken or open. */
    private void serve(Arrangement now, Set<String> changed, int left, Set<String> serving) {
        deeper = true;
        for (String seat : seatsToFill(now)) {
            if (changed.contains(seat)) {
                continue;
            }
            Optional<String> held = now.at(seat);
            for (String part : fitting(now, seat)) {
                if (!held.equals(Optional.of(part)) && (serving.contains(part) || leads(part, serving, left - 1))) {
                    go(now, changed, left, seat, Optional.of(part));
                }
            }
        }
    }

    /** The seats taken, and one more in each slot that holds fewer parts than it may. */
    private Set<String> seatsToFill(Arrangement now) {
        Set<String> seats = new TreeSet<>(now.seats().keySet());
        Map<String, String> hosts = new LinkedHashMap<>();
        hosts.put("", platform);
        now.seats().forEach((seat, part) -> hosts.put(seat + "/", part));
        hosts.forEach((prefix, part) -> {
            for (SlotId slot : relations.slots(part)) {
                int position = 0;
                int held = 0;
                for (String seat : now.seats().keySet()) {
                    held += seat.startsWith(prefix + slot.slot() + ":") && seat.indexOf('/', prefix.length()) < 0 ? 1 : 0;
                }
                String open = prefix + slot.slot() + ":";
                while (now.at(open + position).isPresent() || start.at(open + position).isPresent()) {
                    position++;
                }
                if (held < relations.room(slot).most()) {
                    seats.add(open + position);
                }
            }
        });
        return seats;
    }

    /** Whether a part can carry one that serves with at most so many parts more. */
    private boolean leads(String part, Set<String> serving, int more) {
        if (more < 1 || relations.slots(part).isEmpty()) {
            return false;
        }
        Map<String, Boolean> known = leads.computeIfAbsent(serving, unused -> new HashMap<>());
        Boolean leadsOn = known.get(part + " " + more);
        if (leadsOn == null) {
            leadsOn = false;
            known.put(part + " " + more, false);
            for (SlotId slot : relations.slots(part)) {
                for (String next : relations.candidates(slot)) {
                    if (serving.contains(next) || leads(next, serving, more - 1)) {
                        leadsOn = true;
                        break;
                    }
                }
            }
            known.put(part + " " + more, leadsOn);
        }
        return leadsOn;
    }
}
