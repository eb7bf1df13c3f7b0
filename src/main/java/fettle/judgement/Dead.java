package fettle.judgement;

import fettle.catalog.SlotId;
import fettle.relation.Relations;
import fettle.space.Vitals;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Deque;
import java.util.List;
import java.util.SortedMap;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;

/**
 * Gathers what is dead on each platform by the part or slot that is the cause: what is dead only because everything that could carry it is dead, or because the
 * only slots for it are, is told with that and not by itself.
 */
final class Dead {

    private final Relations relations;
    private final Collection<Vitals> platforms;
    private final Explaining explaining;
    private final SortedMap<String, Causes> parts = new TreeMap<>();
    private final SortedMap<SlotId, Causes> slots = new TreeMap<>();

    /** Where one thing is dead by itself, and what is dead with it. */
    private static final class Causes {
        private final List<String> platforms = new ArrayList<>();
        private final SortedSet<String> with = new TreeSet<>();
    }

    Dead(Relations relations, Collection<Vitals> platforms, Explaining explaining) {
        this.explaining = explaining;
        this.relations = relations;
        this.platforms = platforms.stream().filter(vitals -> !vitals.empty()).toList();
        this.platforms.forEach(vitals -> new OnPlatform(vitals).gather());
    }

    List<DeadPart> parts() {
        List<DeadPart> found = new ArrayList<>();
        parts.forEach((id, causes) -> found.add(new DeadPart(
                relations.catalog().parts().get(id), causes.platforms,
                platforms.stream().filter(vitals -> vitals.reachable().contains(id) && !vitals.dead().contains(id)).map(Vitals::platform).toList(),
                List.copyOf(causes.with), explaining.part(causes.platforms.get(0), id, relations.catalog().parts().get(id).subject()))));
        return found;
    }

    List<DeadSlot> slots() {
        List<DeadSlot> found = new ArrayList<>();
        slots.forEach((id, causes) -> found.add(new DeadSlot(
                relations.slot(id).orElseThrow(), causes.platforms,
                platforms.stream().filter(vitals -> leadsTo(vitals, id.host()) && !vitals.deadSlots().contains(id)).map(Vitals::platform).toList(),
                List.copyOf(causes.with), explaining.slot(causes.platforms.get(0), id))));
        return found;
    }

    private static boolean leadsTo(Vitals vitals, String host) {
        return vitals.platform().equals(host) || vitals.reachable().contains(host);
    }

    private final class OnPlatform {

        private final Vitals vitals;
        private final SortedMap<String, List<SlotId>> homes = new TreeMap<>();
        private final SortedSet<SlotId> causing = new TreeSet<>();

        OnPlatform(Vitals vitals) {
            this.vitals = vitals;
        }

        private boolean alive(String host) {
            return vitals.platform().equals(host) || vitals.reachable().contains(host) && !vitals.dead().contains(host);
        }

        void gather() {
            List<String> hosts = new ArrayList<>(List.of(vitals.platform()));
            vitals.reachable().stream().filter(this::alive).forEach(hosts::add);
            for (String host : hosts) {
                for (SlotId slot : relations.slots(host)) {
                    List<String> fitting = relations.candidates(slot);
                    fitting.stream().filter(vitals.dead()::contains).forEach(part -> homes.computeIfAbsent(part, unused -> new ArrayList<>()).add(slot));
                    boolean told = fitting.isEmpty() || fitting.size() == 1 && vitals.dead().contains(fitting.get(0));
                    if (vitals.deadSlots().contains(slot) && !told) {
                        causing.add(slot);
                        slots.computeIfAbsent(slot, unused -> new Causes()).platforms.add(vitals.platform());
                    }
                }
            }
            homes.forEach((part, places) -> {
                if (causing.containsAll(places)) {
                    places.forEach(slot -> slots.get(slot).with.addAll(carried(part, true)));
                } else {
                    Causes causes = parts.computeIfAbsent(part, unused -> new Causes());
                    causes.platforms.add(vitals.platform());
                    causes.with.addAll(carried(part, false));
                }
            });
        }

        /** The parts that are dead and have no living host, down from a dead one. */
        private SortedSet<String> carried(String part, boolean itself) {
            SortedSet<String> found = new TreeSet<>();
            Deque<String> open = new ArrayDeque<>(List.of(part));
            while (!open.isEmpty()) {
                for (SlotId slot : relations.slots(open.pop())) {
                    relations.candidates(slot).stream().filter(each -> vitals.dead().contains(each) && !homes.containsKey(each) && found.add(each)).forEach(open::push);
                }
            }
            if (itself) {
                found.add(part);
            }
            return found;
        }
    }
}
