package fettle.judgement;

import fettle.catalog.Fact;
import fettle.catalog.FactList;
import fettle.catalog.Part;
import fettle.space.worth.Gain;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;

/**
 * A part that is dominated in some slots of some platforms, cost ignored or counted.
 *
 * @param everywhere whether that is so, cost ignored, wherever a valid build can hold it
 * @param worseThanEmpty whether leaving its place empty outdoes it wherever a valid build can hold it
 * @param anyhow where it is dominated, cost ignored
 * @param anyPrice those of them where what dominates it mounts as directly as it does
 * @param behindAdapter those where it is a part of its kind that stands on an adapter
 * @param forPrice where it is dominated only when cost counts
 */
public record OutdonePart(Part part, boolean everywhere, boolean worseThanEmpty, Places anyhow, Places anyPrice, Places behindAdapter, Places forPrice) {

    /** The part, where what outdoes it in most of these slots is an empty slot. */
    public Optional<String> burden(Places places) {
        return places.most().empty ? Optional.of(part.id()) : Optional.empty();
    }

    /** What the part has on it, as it is compared in most of these slots, in words; empty where that is nothing. */
    public Optional<String> laden(Places places) {
        String bare = part.id() + Assemblies.WITH;
        return Optional.of(places.most().shown()).filter(shown -> shown.startsWith(bare)).map(shown -> shown.substring(bare.length()));
    }

    /**
     * Slots in which a part is outdone by the same.
     *
     * @param where the slots, and on which platforms that is so
     * @param shown the part's smallest assembly there
     * @param by what outdoes that
     * @param empty whether that is an empty slot
     * @param gains what that gains, attribute by attribute
     * @param because the figures and prices in which the two differ, as far as they are stated
     */
    public record Place(SlotsOnPlatforms where, String shown, String by, boolean empty, List<Gain> gains, List<Fact> because) {

        public Place {
            gains = List.copyOf(gains);
            because = List.copyOf(because);
        }

        /** What outdoes it, where that has figures of its own to be checked. */
        public Optional<String> rival() {
            return empty ? Optional.empty() : Optional.of(by);
        }

        /** The same as a finding's data has it; platforms are told of the slots in which it doesn't hold on all. */
        private Map<String, Object> data() {
            Map<String, Object> data = new TreeMap<>(Map.of("slots", where.slots(), "shown", shown, "by", by, "gains", gains));
            if (!where.onSome().isEmpty()) {
                data.put("platforms", where.onSome());
            }
            return data;
        }
    }

    /** All slots in which a part is outdone in one way, by what outdoes it there; first what does so in most. */
    public record Places(List<Place> by) {

        private static final int TOLD = 2;

        public Places {
            by = List.copyOf(by);
        }

        public boolean some() {
            return !by.isEmpty();
        }

        /** What outdoes it in most of the slots. */
        public Place most() {
            return by.get(0);
        }

        /** All the slots, in order. */
        public List<String> slots() {
            Set<String> slots = new TreeSet<>();
            by.forEach(place -> slots.addAll(place.where.slots()));
            return List.copyOf(slots);
        }

        /** What outdoes it where the first doesn't, in words. */
        public List<String> elsewhere() {
            return told(by.subList(1, by.size()));
        }

        /** What outdoes it and where, in words. */
        public List<String> told() {
            return told(by);
        }

        private static List<String> told(List<Place> places) {
            int shown = places.size() == TOLD + 1 ? TOLD + 1 : TOLD;
            List<String> told = new ArrayList<>();
            places.stream().limit(shown).forEach(place -> told.add(place.by + " in " + place.where.listed()));
            if (places.size() > shown) {
                told.add(others(places.subList(shown, places.size()), places.subList(0, shown)));
            }
            return told;
        }

        private static String others(List<Place> others, List<Place> told) {
            Set<String> slots = new TreeSet<>();
            others.forEach(place -> slots.addAll(place.where.slots()));
            told.forEach(place -> place.where.slots().forEach(slots::remove));
            return slots.isEmpty() ? "others there on other platforms" : "others in " + slots.size() + (slots.size() == 1 ? " more slot" : " more slots");
        }

        /** Each of them as a finding's data has it. */
        public List<Map<String, Object>> witnesses() {
            return by.stream().map(Place::data).toList();
        }

        /** All that is stated of what differs. */
        public List<Fact> because() {
            FactList facts = new FactList();
            by.forEach(place -> facts.addAll(place.because));
            return facts.list();
        }
    }
}
