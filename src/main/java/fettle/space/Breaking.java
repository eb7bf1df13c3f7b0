package fettle.space;

import fettle.catalog.SlotId;
import fettle.relation.Clause;
import fettle.relation.Relations;
import fettle.relation.Room;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import java.util.Set;
import java.util.stream.Stream;

/**
 * Finds out on which platform some build breaks one clause and keeps every other relation.
 *
 * <p>It starts from a build that breaks the clause and need keep nothing, and looks again with the causes which that one does not respect, until a build respects all
 * or there is none left. Each look is a fold over nothing but what those causes touch. What one clause of a rule came upon mostly matters to the next, which
 * starts with it.
 */
final class Breaking {

    /** Past so many causes a look takes longer than coming upon the few that matter. */
    private static final int MOST_LEARNT = 250;

    private final Relations relations;
    private final Terrain terrain;
    private final Takers takers;
    private final TermMembers members;
    private final Bounds bounds;
    private final Map<Object, Monoid> shapes = new HashMap<>();
    private final Map<Integer, Setting> settings = new HashMap<>();
    private String rule = "";
    private final Set<Cause> learnt = new LinkedHashSet<>();

    Breaking(Relations relations, Terrain terrain, TermMembers members, Bounds bounds) {
        this.relations = relations;
        this.terrain = terrain;
        this.takers = new Takers(terrain);
        this.members = members;
        this.bounds = bounds;
    }

    /**
     * Whether there is one.
     *
     * @param platforms the numbers of the platforms on which to look
     * @param spared clauses that need not be kept, the one to be broken among them
     * @param sparedTraits traits that need not be agreed on
     * @return a platform on which there is one; empty where there is none
     * @throws TooLarge where the bounds are exceeded
     */
    OptionalInt possible(List<Integer> platforms, Clause clause, Set<Clause> spared, Set<String> sparedTraits) {
        if (!clause.rule().equals(rule) || learnt.size() > MOST_LEARNT) {
            learnt.clear();
            rule = clause.rule();
        }
        Set<Cause> held = new LinkedHashSet<>(learnt.stream().filter(cause -> !spares(cause, spared, sparedTraits)).toList());
        try {
            return possible(platforms, clause, held, spared, sparedTraits);
        } catch (TooLarge tooLarge) {
            if (learnt.isEmpty()) {
                throw tooLarge;
            }
            learnt.clear();
            held.clear();
            return possible(platforms, clause, held, spared, sparedTraits);
        } finally {
            learnt.addAll(held);
        }
    }

    private OptionalInt possible(List<Integer> platforms, Clause clause, Set<Cause> held, Set<Clause> spared, Set<String> sparedTraits) {
        // Causes hold on every platform; those of slots of one platform are taken over to slots of the same name.
        Set<Object> impossible = new HashSet<>();
        for (int platform : platforms) {
            Setting setting = settings.computeIfAbsent(platform, unused -> new Setting(terrain, takers, members, bounds, shapes, platform));
            takeOver(platform, held);
            if (impossible.contains(outline(platform, clause, held))) {
                continue;
            }
            if (possible(setting, clause, held, spared, sparedTraits)) {
                return OptionalInt.of(platform);
            }
            impossible.add(outline(platform, clause, held));
        }
        return OptionalInt.empty();
    }

    private boolean possible(Setting setting, Clause clause, Set<Cause> held, Set<Clause> spared, Set<String> sparedTraits) {
        List<Pattern> wanted = List.of(setting.pattern(clause).turned());
        Inspection inspection = new Inspection(relations, setting);
        while (true) {
            Specimen specimen = new Holding(setting, held, wanted).build();
            if (specimen == null) {
                return false;
            }
            List<Cause> broken = inspection.broken(specimen).stream().filter(cause -> !spares(cause, spared, sparedTraits)).toList();
            if (broken.isEmpty()) {
                return true;
            }
            if (!held.addAll(broken)) {
                throw new IllegalStateException("a build breaks what it was made to respect: " + broken);
            }
        }
    }

    private void takeOver(int platform, Set<Cause> held) {
        Set<String> names = new HashSet<>();
        for (Cause cause : held) {
            if (cause instanceof Cause.Space space && !terrain.isPart(terrain.number(space.room().slot().host()))) {
                names.add(space.room().slot().slot());
            }
        }
        for (int slot : terrain.slotsOf()[platform]) {
            if (names.contains(terrain.slots().get(slot).slot())) {
                relations.room(terrain.slots().get(slot)).rules().forEach(rule -> held.add(new Cause.Space(rule, List.of())));
            }
        }
    }

    /** All by which a platform differs from another as far as certain causes tell; no build is possible on either of two alike, or some on both. */
    private Object outline(int platform, Clause clause, Set<Cause> held) {
        List<Clause> clauses = new ArrayList<>(List.of(clause));
        List<Object> agreed = new ArrayList<>();
        Map<SlotId, List<Room>> rooms = new HashMap<>();
        for (Cause cause : held) {
            if (cause instanceof Cause.Rule rule) {
                clauses.add(rule.clause());
            } else if (cause instanceof Cause.Values values && values.agreement().part().equals(terrain.hosts().get(platform))) {
                agreed.add(List.of(values.agreement().trait(), Set.copyOf(values.agreement().values())));
            } else if (cause instanceof Cause.Space space) {
                rooms.computeIfAbsent(space.room().slot(), unused -> new ArrayList<>()).add(space.room());
            }
        }
        Map<Object, Integer> slots = new HashMap<>();
        for (int slot : terrain.slotsOf()[platform]) {
            Object seen = clauses.stream().map(each -> seen(each, false, slot)).toList();
            slots.merge(List.of(new Same(terrain.candidates()[slot]), Capacity.of(rooms.getOrDefault(terrain.slots().get(slot), List.of())), seen), 1, Integer::sum);
        }
        return List.of(slots, clauses.stream().map(each -> seen(each, true, platform)).toList(), Set.copyOf(agreed));
    }

    /** Which terms of a clause a platform or slot meets. */
    private List<Boolean> seen(Clause clause, boolean host, int number) {
        return Stream.concat(clause.when().stream(), clause.need().stream())
                .map(term -> Arrays.stream(host ? members.hosts(term) : members.slots(term)).anyMatch(other -> other == number)).toList();
    }

    /** One array, and no other that holds the same. */
    private record Same(int[] array) {
        @Override
        public boolean equals(Object other) {
            return other instanceof Same same && array == same.array;
        }

        @Override
        public int hashCode() {
            return System.identityHashCode(array);
        }
    }

    private static boolean spares(Cause cause, Set<Clause> clauses, Set<String> traits) {
        return cause instanceof Cause.Rule rule && clauses.contains(rule.clause()) || cause instanceof Cause.Values values && traits.contains(values.agreement().trait());
    }
}
