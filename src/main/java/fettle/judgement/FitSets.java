package fettle.judgement;

import fettle.catalog.SlotId;
import fettle.space.patch.FitShift;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;

/** Fits in as few sets as parts with the very same slots, or slots with the very same parts, come to: in each set every part is meant in every slot. */
public record FitSets(List<Together> sets) {

    /** Some parts, each of them in each of some slots. */
    public record Together(List<String> parts, List<String> slots) {

        public Together {
            parts = List.copyOf(parts);
            slots = List.copyOf(slots);
        }
    }

    public FitSets {
        sets = List.copyOf(sets);
    }

    static FitSets of(Collection<FitShift> fits) {
        Map<String, SortedSet<String>> slotsOf = new HashMap<>();
        Map<String, SortedSet<String>> partsOf = new HashMap<>();
        for (FitShift fit : fits) {
            SlotId slot = fit.slot();
            slotsOf.computeIfAbsent(fit.part(), unused -> new TreeSet<>()).add(slot.toString());
            partsOf.computeIfAbsent(slot.toString(), unused -> new TreeSet<>()).add(fit.part());
        }
        Map<List<String>, List<String>> partsBySlots = alike(slotsOf);
        Map<List<String>, List<String>> slotsByParts = alike(partsOf);
        List<Together> sets = new ArrayList<>();
        if (partsBySlots.size() <= slotsByParts.size()) {
            partsBySlots.forEach((slots, parts) -> sets.add(new Together(parts, slots)));
        } else {
            slotsByParts.forEach((parts, slots) -> sets.add(new Together(parts, slots)));
        }
        sets.sort(Comparator.comparing((Together set) -> set.parts.get(0)).thenComparing(set -> set.slots.get(0)));
        return new FitSets(sets);
    }

    /** What has the same others, by these. */
    private static Map<List<String>, List<String>> alike(Map<String, SortedSet<String>> others) {
        Map<List<String>, List<String>> alike = new HashMap<>();
        new TreeMap<>(others).forEach((one, its) -> alike.computeIfAbsent(List.copyOf(its), unused -> new ArrayList<>()).add(one));
        return alike;
    }
}
