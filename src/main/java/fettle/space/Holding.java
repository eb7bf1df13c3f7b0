package fettle.space;

import fettle.catalog.SlotId;
import fettle.relation.Agreement;
import fettle.relation.Room;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.HashMap;
import java.util.HashSet;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** A platform on which only some of the causes hold: looks for a build that respects those and perhaps no others. */
final class Holding {

    private final Setting setting;
    private final List<Pattern> patterns = new ArrayList<>();
    private final List<Agreement> agreements = new ArrayList<>();
    private final Map<SlotId, List<Room>> rooms = new HashMap<>();
    private final Set<String> housed = new HashSet<>();
    private final Set<String> once = new HashSet<>();
    private boolean reached;

    /** The causes that hold. */
    Holding(Setting setting, Iterable<Cause> causes) {
        this(setting, causes, List.of());
    }

    /** The causes that hold, and further patterns. */
    Holding(Setting setting, Iterable<Cause> causes, List<Pattern> further) {
        this.setting = setting;
        patterns.addAll(further);
        for (Cause cause : causes) {
            if (cause instanceof Cause.Asked asked) {
                patterns.add(needed(new int[] {setting.terrain().number(asked.part())}, Numbers.NONE));
            } else if (cause instanceof Cause.AskedSlot asked) {
                patterns.add(needed(Numbers.NONE, new int[] {setting.members().slot(asked.slot())}));
            } else if (cause instanceof Cause.Only only) {
                housed.add(only.part());
            } else if (cause instanceof Cause.Unreached) {
                reached = true;
            } else if (cause instanceof Cause.Space space) {
                rooms.computeIfAbsent(space.room().slot(), unused -> new ArrayList<>()).add(space.room());
            } else if (cause instanceof Cause.Rule rule) {
                patterns.add(setting.pattern(rule.clause()));
            } else if (cause instanceof Cause.Values values) {
                agreements.add(values.agreement());
            } else if (cause instanceof Cause.Nesting nesting) {
                once.add(nesting.noReentry().part());
            }
        }
    }

    private static Pattern needed(int[] hosts, int[] slots) {
        return new Pattern(List.of(), true, Things.of(hosts, slots), false, false);
    }

    /**
     * A build that respects the causes, of few parts; empty-handed ({@code null}) where there is none. Parts that stand by themselves are in the slot
     * {@link Setting#loose()}.
     */
    Specimen build() {
        Terrain loosened = loosened();
        Monitors monitors = Monitors.of(patterns, agreements, loosened, setting.bounds(), setting.shapes());
        Circuit thin = Circuit.thin();
        int root = new Fold(new Ground(loosened, monitors), thin, setting.bounds(), true).platform(setting.platform());
        return root == Circuit.NONE ? null : Specimen.of(thin, root);
    }

    /** The terrain with no more limits than hold, without what could make no difference to them. */
    private Terrain loosened() {
        Terrain terrain = setting.terrain();
        BitSet seen = new BitSet();
        BitSet seenSlots = new BitSet();
        for (Pattern pattern : patterns) {
            pattern.when().forEach(things -> note(things, seen, seenSlots));
            note(pattern.need(), seen, seenSlots);
        }
        agreements.forEach(agreement -> seen.set(terrain.number(agreement.part())));

        Capacity[] room = new Capacity[terrain.slots().size() + 1];
        Arrays.fill(room, Capacity.FREE);
        BitSet filled = new BitSet();
        for (int slot : setting.slots()) {
            room[slot] = Capacity.of(rooms.getOrDefault(terrain.slots().get(slot), List.of()));
            filled.set(slot, room[slot].filled());
        }
        BitSet useful = setting.carrying(seen, seenSlots);
        int[][] candidates = new int[terrain.slots().size() + 1][];
        Arrays.fill(candidates, Numbers.NONE);
        int[][] slotsOf = new int[terrain.hosts().size()][];
        Arrays.fill(slotsOf, Numbers.NONE);
        Map<int[], int[]> usefulOnly = new IdentityHashMap<>();
        setting.hosts().forEach(host -> {
            List<Integer> kept = new ArrayList<>();
            for (int slot : terrain.slotsOf()[host]) {
                int[] all = terrain.candidates()[slot];
                candidates[slot] = filled.get(slot) || seenSlots.get(slot)
                        ? all : usefulOnly.computeIfAbsent(all, unused -> Arrays.stream(all).filter(useful::get).toArray());
                if (filled.get(slot) || candidates[slot].length > 0) {
                    kept.add(slot);
                }
            }
            slotsOf[host] = kept.stream().mapToInt(Integer::intValue).toArray();
        });
        int loose = setting.loose();
        candidates[loose] = useful.stream().filter(part -> setting.reachable(part) ? !housed.contains(terrain.hosts().get(part)) : !reached).toArray();
        if (candidates[loose].length > 0) {
            int[] slots = slotsOf[setting.platform()];
            slotsOf[setting.platform()] = Arrays.copyOf(slots, slots.length + 1);
            slotsOf[setting.platform()][slots.length] = loose;
        }
        List<SlotId> names = new ArrayList<>(terrain.slots());
        names.add(new SlotId(terrain.hosts().get(setting.platform()), ""));
        int[] owner = Arrays.copyOf(terrain.owner(), names.size());
        owner[loose] = setting.platform();
        int[] turns = new int[terrain.parts()];
        for (int part = 0; part < turns.length; part++) {
            boolean bound = terrain.turns()[part] == Terrain.ENDLESS || once.contains(terrain.hosts().get(part));
            turns[part] = bound ? terrain.turns()[part] : 1 + terrain.turns()[part];
        }
        return new Terrain(terrain.parts(), terrain.hosts(), terrain.numbers(), slotsOf, names, owner, candidates, room, terrain.span(), turns);
    }

    private static void note(Things things, BitSet hosts, BitSet slots) {
        things.hosts().forEach(hosts::set);
        things.slots().forEach(slots::set);
    }
}
