package fettle.space;

import fettle.catalog.Fact;
import fettle.catalog.SlotId;
import fettle.relation.Agreement;
import fettle.relation.Fit;
import fettle.relation.NoReentry;
import fettle.relation.Relations;
import fettle.relation.Room;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;

/** Holds a build that respects some causes against all relations, and says which it breaks, as causes. */
final class Inspection {

    private final Relations relations;
    private final Setting setting;
    private final Terrain terrain;

    Inspection(Relations relations, Setting setting) {
        this.relations = relations;
        this.setting = setting;
        this.terrain = setting.terrain();
    }

    /** The causes that a build does not respect; none where it is valid. */
    List<Cause> broken(Specimen specimen) {
        Set<Cause> found = new LinkedHashSet<>();
        Map<Integer, Map<Integer, List<Integer>>> held = new HashMap<>();
        for (int i = 0; i < specimen.placed().size(); i++) {
            Specimen.Placed part = specimen.placed().get(i);
            if (part.slot() == setting.loose()) {
                found.add(setting.reachable(part.part()) ? only(part.part()) : Cause.Unreached.ANY);
            } else {
                held.computeIfAbsent(part.host(), unused -> new TreeMap<>()).computeIfAbsent(part.slot(), unused -> new ArrayList<>()).add(part.part());
            }
            nesting(specimen, part).ifPresent(found::add);
        }
        for (int host = Specimen.PLATFORM; host < specimen.placed().size(); host++) {
            Map<Integer, List<Integer>> contents = held.getOrDefault(host, Map.of());
            int part = host == Specimen.PLATFORM ? setting.platform() : specimen.placed().get(host).part();
            if (part == setting.platform() || setting.reachable(part)) {
                for (int slot : terrain.slotsOf()[part]) {
                    room(slot, contents.getOrDefault(slot, List.of()), found);
                }
            }
        }
        PatternCheck check = new PatternCheck(setting.platform(), specimen);
        relations.clauses().stream().filter(clause -> check.breaks(setting.pattern(clause))).forEach(clause -> found.add(new Cause.Rule(clause, clause.because())));
        agreements(specimen, found);
        return List.copyOf(found);
    }

    private Cause only(int part) {
        String id = terrain.hosts().get(part);
        List<SlotId> places = Arrays.stream(setting.takers(part)).mapToObj(terrain.slots()::get).sorted().toList();
        Set<Fact> because = new LinkedHashSet<>();
        for (SlotId place : places) {
            Optional<Fit> way = relations.ways(place, id).stream().findFirst();
            way.ifPresent(fit -> because.addAll(relations.because(place, id, fit)));
        }
        return new Cause.Only(id, places, List.copyOf(because));
    }

    private Optional<Cause> nesting(Specimen specimen, Specimen.Placed part) {
        String id = terrain.hosts().get(part.part());
        Optional<NoReentry> bar = relations.noReentry(id);
        if (bar.isPresent()) {
            for (int above = part.host(); above != Specimen.PLATFORM; above = specimen.placed().get(above).host()) {
                if (specimen.placed().get(above).part() == part.part()) {
                    return Optional.of(new Cause.Nesting(bar.get(), List.of(relations.catalog().parts().get(id))));
                }
            }
        }
        return Optional.empty();
    }

    private void room(int slot, List<Integer> contents, Set<Cause> found) {
        for (Room rule : relations.room(terrain.slots().get(slot)).rules()) {
            Capacity room = Capacity.of(List.of(rule));
            int spans = contents.stream().mapToInt(part -> terrain.span()[part]).sum();
            boolean twice = new HashSet<>(contents).size() < contents.size();
            if (contents.size() > room.most() || spans > room.notches() || twice && room.distinct() || contents.isEmpty() && room.filled()) {
                List<String> candidates = room.filled() ? relations.candidates(terrain.slots().get(slot)) : List.of();
                found.add(new Cause.Space(rule, candidates));
            }
        }
    }

    /** Of those that have no value in common, as many as it takes. */
    private void agreements(Specimen specimen, Set<Cause> found) {
        Set<String> placed = new HashSet<>();
        placed.add(terrain.hosts().get(setting.platform()));
        specimen.placed().forEach(part -> placed.add(terrain.hosts().get(part.part())));
        Map<String, List<Agreement>> byTrait = new LinkedHashMap<>();
        relations.agreements().stream().filter(agreement -> placed.contains(agreement.part()))
                .forEach(agreement -> byTrait.computeIfAbsent(agreement.trait(), unused -> new ArrayList<>()).add(agreement));
        byTrait.values().forEach(agreements -> {
            List<Agreement> enough = new ArrayList<>(agreements);
            if (!agree(enough)) {
                for (Agreement agreement : agreements) {
                    enough.remove(agreement);
                    if (agree(enough)) {
                        enough.add(agreement);
                    }
                }
                enough.sort(Comparator.comparing(Agreement::part));
                enough.forEach(agreement -> found.add(new Cause.Values(agreement)));
            }
        });
    }

    private static boolean agree(List<Agreement> agreements) {
        if (agreements.isEmpty()) {
            return true;
        }
        Set<String> values = new HashSet<>(agreements.get(0).values());
        agreements.forEach(agreement -> values.retainAll(agreement.values()));
        return !values.isEmpty();
    }
}
