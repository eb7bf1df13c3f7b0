package fettle.space;

import fettle.catalog.Fact;
import fettle.relation.Relations;
import fettle.relation.Room;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.Collectors;

/** Checks the list of parts in one slot against what the slot asks of it. */
record RoomCheck(Relations relations) {

    List<Violation> check(Placement placement, SlotUse use) {
        if (use.occupants().isEmpty() && !relations.room(use.slot()).filled()) {
            return List.of();
        }
        List<Occurrence> held = new ArrayList<>();
        use.occupants().forEach(index -> held.add(placement.parts().get(index)));
        List<Violation> found = new ArrayList<>();
        for (Room rule : relations.room(use.slot()).rules()) {
            check(rule, use, held, found);
        }
        return found;
    }

    private void check(Room rule, SlotUse use, List<Occurrence> held, List<Violation> found) {
        if (rule instanceof Room.Holds holds && held.size() > holds.most()) {
            found.add(violation(rule, use, held, Map.of("room", parts(holds.most()), "held", parts(held.size()), "counted", use.slot().toString())));
        } else if (rule instanceof Room.Length length && span(held) > length.notches()) {
            found.add(violation(rule, use, held, Map.of(
                    "room", notches(length.notches()), "held", "parts that take " + notches(span(held)) + spans(held), "measured", use.slot().toString())));
        } else if (rule instanceof Room.Filled && held.isEmpty()) {
            found.add(violation(rule, use, held, Map.of()));
        } else if (rule instanceof Room.Distinct && held.size() > 1) {
            Map<String, List<Occurrence>> byPart = new TreeMap<>();
            held.forEach(part -> byPart.computeIfAbsent(part.part(), unused -> new ArrayList<>()).add(part));
            byPart.forEach((part, same) -> {
                if (same.size() > 1) {
                    found.add(violation(rule, use, same, Map.of("part", part, "held", same.size())));
                }
            });
        } else if (rule instanceof Room.Places places && held.stream().anyMatch(part -> part.at().isPresent()) && span(held) <= places.notches()) {
            new Notches(places.notches(), held, this::span).problems()
                    .forEach(problem -> found.add(violation(rule, use, problem.parts(), Map.of(
                            "part", problem.parts().get(0).part(), "path", problem.parts().get(0).path(), "problem", problem.what()))));
        }
    }

    private static String parts(int count) {
        return count == 1 ? "1 part" : count + " parts";
    }

    private static String notches(int count) {
        return count == 1 ? "1 notch" : count + " notches";
    }

    /** How long each is, where there are several. */
    private String spans(List<Occurrence> parts) {
        return parts.size() < 2 ? "" : parts.stream().map(part -> part.part() + " " + span(part)).collect(Collectors.joining(", ", " (", ")"));
    }

    private int span(List<Occurrence> parts) {
        int sum = 0;
        for (Occurrence part : parts) {
            sum += span(part);
        }
        return sum;
    }

    private int span(Occurrence part) {
        return relations.span(part.part());
    }

    private static Violation violation(Room rule, SlotUse use, List<Occurrence> parts, Map<String, Object> values) {
        SortedMap<String, Object> data = new TreeMap<>(Map.of("slot", use.slot().toString(), "path", use.path()));
        data.putAll(values);
        List<Fact> because = new ArrayList<>(List.of(rule.because()));
        parts.forEach(part -> because.add(part.entry()));
        return new Violation(rule.rule(), parts.stream().map(Occurrence::index).toList(), List.of(use.index()), because, data);
    }
}
