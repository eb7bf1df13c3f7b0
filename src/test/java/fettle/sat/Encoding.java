package fettle.sat;

import fettle.catalog.SlotId;
import fettle.relation.Agreement;
import fettle.relation.Clause;
import fettle.relation.Relations;
import fettle.relation.SlotRoom;
import fettle.relation.Term;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Collections;
import java.util.Deque;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.TreeSet;

/**
 * The valid builds of one platform as clauses, written from the definition of a valid build: each occurrence that a part can have, in each slot of each occurrence
 * of its hosts, is a variable, and each model is a build.
 *
 * <p>Nothing is shared between occurrences and nothing is left out, so that this has no idea in common with the fold. It is as large as all chains of fits together.
 */
public final class Encoding {

    /** An occurrence of a part, or without a host the platform. */
    private record Occurrence(int variable, String id, String path, Occurrence host) {
        boolean isBelow(String part) {
            for (Occurrence one = this; one.host != null; one = one.host) {
                if (one.id.equals(part)) {
                    return true;
                }
            }
            return false;
        }
    }

    /** A slot of one occurrence, with the variables of what can be in it. */
    private record Place(List<Integer> held) {}

    /**
     * Something that can stand in a slot.
     *
     * @param variable whether it does
     */
    public record Standing(int variable, String part) {}

    /**
     * A slot that can be there, with all that can stand in it.
     *
     * @param host the variable of what bears it
     * @param path the slots that lead there from the platform, itself among them
     * @param most how many of them at most
     */
    public record Spot(int host, String path, int most, boolean filled, List<Standing> held) {}

    /** There are more occurrences than were allowed. */
    public static final class TooLarge extends RuntimeException {
        private static final long serialVersionUID = 1;
    }

    private final Relations relations;
    private final String platform;
    private final int most;
    private final Clauses clauses = new Clauses();
    private final SortedMap<String, List<Integer>> occurrences = new TreeMap<>();
    private final SortedMap<SlotId, List<Place>> places = new TreeMap<>();
    private final Map<Integer, Place> placeOf = new HashMap<>();
    private final List<Spot> spots = new ArrayList<>();
    private final Map<Set<Term>, List<Integer>> parts = new HashMap<>();
    private final Map<Set<Term>, Integer> any = new HashMap<>();
    private final Map<Set<Term>, Integer> twice = new HashMap<>();
    private int size;

    private Encoding(Relations relations, String platform, int most) {
        this.relations = relations;
        this.platform = platform;
        this.most = most;
        occurrences.put(platform, List.of(Clauses.ALWAYS));
    }

    /**
     * Writes a platform's builds down.
     *
     * @param most how many occurrences at most
     * @throws TooLarge where there are more
     * @throws UnsupportedOperationException where a slot may hold the same part twice and that part has slots itself, or a relation has a form that no rule gives it
     */
    public static Encoding of(Relations relations, String platform, int most) {
        Encoding encoding = new Encoding(relations, platform, most);
        encoding.unroll();
        relations.clauses().forEach(encoding::add);
        encoding.agree();
        return encoding;
    }

    /** The platform whose builds these are. */
    public String platform() {
        return platform;
    }

    /** The clauses. A variable that is no occurrence is defined by others, so that there is one model for each build. */
    public List<int[]> clauses() {
        return Collections.unmodifiableList(clauses.all());
    }

    /** Variables are numbered from 1. */
    public int variables() {
        return clauses.variables();
    }

    /** How many occurrences parts can have. */
    public int occurrences() {
        return size;
    }

    /** The variables of the occurrences of each part that has any. */
    public SortedMap<String, List<Integer>> placed() {
        SortedMap<String, List<Integer>> placed = new TreeMap<>(occurrences);
        placed.remove(platform);
        return placed;
    }

    /** The variables of what can be in each slot that can be there, on any occurrence of its host. */
    public SortedMap<SlotId, List<Integer>> used() {
        SortedMap<SlotId, List<Integer>> used = new TreeMap<>();
        places.forEach((slot, all) -> used.put(slot, all.stream().flatMap(place -> place.held.stream()).toList()));
        return used;
    }

    /** Every slot that can be there, each after the one in which its host stands. */
    public List<Spot> spots() {
        return Collections.unmodifiableList(spots);
    }

    private void unroll() {
        Deque<Occurrence> open = new ArrayDeque<>(List.of(new Occurrence(Clauses.ALWAYS, platform, "", null)));
        while (!open.isEmpty()) {
            Occurrence host = open.pop();
            for (SlotId slot : relations.slots(host.id)) {
                fill(host, slot).forEach(open::push);
            }
        }
    }

    /** What can be in one slot of one occurrence, with what the slot asks of it. */
    private List<Occurrence> fill(Occurrence host, SlotId slot) {
        SlotRoom room = relations.room(slot);
        int notches = room.notches().orElse(Integer.MAX_VALUE);
        List<Occurrence> found = new ArrayList<>();
        List<Integer> held = new ArrayList<>();
        List<Integer> spans = new ArrayList<>();
        Place place = new Place(held);
        String path = host.path.isEmpty() ? slot.slot() : host.path + "/" + slot.slot();
        for (String part : relations.candidates(slot)) {
            if (relations.noReentry(part).isPresent() && host.isBelow(part)) {
                continue;
            }
            int span = relations.span(part);
            int copies = room.distinct() ? 1 : Math.max(1, Math.min(room.most(), notches / span));
            if (copies > 1 && (copies > most || !relations.slots(part).isEmpty())) {
                throw new UnsupportedOperationException(copies + " times " + part + " in " + slot);
            }
            for (int copy = 0; copy < copies; copy++) {
                if (++size > most) {
                    throw new TooLarge();
                }
                int variable = clauses.fresh();
                clauses.add(-variable, host.variable);
                // Which of several copies it is makes no difference.
                if (copy > 0) {
                    clauses.add(-variable, held.get(held.size() - 1));
                }
                held.add(variable);
                spans.add(span);
                placeOf.put(variable, place);
                occurrences.computeIfAbsent(part, unused -> new ArrayList<>()).add(variable);
                found.add(new Occurrence(variable, part, path, host));
            }
        }
        places.computeIfAbsent(slot, unused -> new ArrayList<>()).add(place);
        spots.add(new Spot(host.variable, path, Math.min(room.most(), notches), room.filled(),
                found.stream().map(each -> new Standing(each.variable, each.id)).toList()));
        if (room.filled()) {
            clauses.add(literals(List.of(-host.variable), held));
        }
        if (room.most() == 1) {
            clauses.apart(held);
        } else if (room.most() < Math.min(held.size(), notches)) {
            // Each part takes at least a notch, so that as many parts as notches are no limit of their own.
            clauses.atMost(held, Collections.nCopies(held.size(), 1), room.most());
        }
        room.notches().ifPresent(bound -> clauses.atMost(held, spans, bound));
        return found;
    }

    private void add(Clause clause) {
        List<Term> when = clause.when();
        Set<Term> need = Set.copyOf(clause.need());
        if (!clause.apart()) {
            together(when, 0, List.of(), need);
        } else if (when.size() == 1 && when.get(0).sort() == Term.Sort.PART && !has(need, Term.Sort.SLOT)) {
            parts(Set.of(when.get(0))).forEach(part -> needs(part, need));
        } else if (when.size() == 2 && need.isEmpty() && when.get(0).equals(when.get(1)) && when.get(0).sort() == Term.Sort.GROUP) {
            clauses.apart(parts(Set.of(when.get(0))));
        } else if (when.size() == 2 && need.isEmpty() && when.get(0).sort() == Term.Sort.PART) {
            parts(Set.of(when.get(0))).forEach(part -> clashes(part, Set.of(when.get(1))));
        } else {
            throw new UnsupportedOperationException(clause.toString());
        }
    }

    private static boolean has(Collection<Term> terms, Term.Sort sort) {
        return terms.stream().anyMatch(term -> term.sort() == sort);
    }

    /** If each of some sets is met by something, perhaps the same, so is the need. */
    private void together(List<Term> when, int from, List<Integer> met, Set<Term> need) {
        if (from == when.size()) {
            clauses.add(literals(met, few(need)));
            return;
        }
        for (int literal : few(Set.of(when.get(from)))) {
            List<Integer> more = new ArrayList<>(met);
            more.add(-literal);
            together(when, from + 1, more, need);
        }
    }

    /** Another part is one of these. */
    private void needs(int part, Set<Term> need) {
        List<Integer> all = parts(need);
        if (all.size() <= Clauses.SPELT_OUT) {
            clauses.add(literals(List.of(-part), all.stream().filter(other -> other != part).toList()));
        } else {
            clauses.add(-part, all.contains(part) ? twice(need) : any(need));
        }
    }

    /** No other part is one of these, and no slot but the part's own that is one of these holds anything. */
    private void clashes(int part, Set<Term> terms) {
        List<Integer> all = parts(terms);
        if (all.size() <= Clauses.SPELT_OUT || has(terms, Term.Sort.SLOT)) {
            Place own = has(terms, Term.Sort.SLOT) ? placeOf.get(part) : null;
            all.stream().filter(other -> other != part && (own == null || placeOf.get(other) != own)).forEach(other -> clauses.add(-part, -other));
        } else {
            clauses.add(-part, all.contains(part) ? -twice(terms) : -any(terms));
        }
    }

    private int any(Set<Term> terms) {
        return any.computeIfAbsent(terms, unused -> clauses.any(parts(terms)));
    }

    private int twice(Set<Term> terms) {
        return twice.computeIfAbsent(terms, unused -> clauses.twice(parts(terms)));
    }

    /** These, or where they are many a variable that stands for them. */
    private List<Integer> few(Set<Term> terms) {
        List<Integer> all = parts(terms);
        return all.size() <= Clauses.SPELT_OUT ? all : List.of(any(terms));
    }

    /** The occurrences that meet one of the terms; of slots, whatever makes them a slot in use. */
    private List<Integer> parts(Set<Term> terms) {
        return parts.computeIfAbsent(terms, unused -> {
            Set<Integer> found = new LinkedHashSet<>();
            for (Term term : terms) {
                if (term.sort() == Term.Sort.SLOT) {
                    relations.slots(term).keySet().forEach(slot -> places.getOrDefault(slot, List.of()).forEach(place -> found.addAll(place.held)));
                } else if (term.sort() == Term.Sort.PART) {
                    found.addAll(occurrences.getOrDefault(term.key(), List.of()));
                } else {
                    relations.members(term).keySet().forEach(part -> found.addAll(occurrences.getOrDefault(part, List.of())));
                }
            }
            return List.copyOf(found);
        });
    }

    /** Of each trait, all that is placed leaves one value at least. */
    private void agree() {
        Map<String, List<Agreement>> byTrait = new TreeMap<>();
        relations.agreements().forEach(agreement -> byTrait.computeIfAbsent(agreement.trait(), unused -> new ArrayList<>()).add(agreement));
        byTrait.values().forEach(agreements -> {
            Set<String> values = new TreeSet<>(Set.of("none that is declared"));
            agreements.forEach(agreement -> values.addAll(agreement.values()));
            List<Integer> left = new ArrayList<>();
            for (String value : values) {
                List<Integer> without = new ArrayList<>();
                agreements.stream().filter(agreement -> !agreement.values().contains(value))
                        .forEach(agreement -> without.addAll(occurrences.getOrDefault(agreement.part(), List.of())));
                left.add(-clauses.any(without));
            }
            clauses.add(literals(left, List.of()));
        });
    }

    private static int[] literals(List<Integer> some, List<Integer> more) {
        int[] all = new int[some.size() + more.size()];
        for (int i = 0; i < all.length; i++) {
            all[i] = i < some.size() ? some.get(i) : more.get(i - some.size());
        }
        return all;
    }
}
