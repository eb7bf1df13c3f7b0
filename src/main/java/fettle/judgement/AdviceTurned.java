package fettle.judgement;

import fettle.catalog.Attribute;
import fettle.catalog.Part;
import fettle.space.Assembly;
import fettle.space.Change;
import fettle.space.EntryName;
import fettle.space.patch.AdviceShift;
import fettle.space.patch.CatalogChanges;
import fettle.space.worth.Gain;
import fettle.space.worth.Gains;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Stream;

/**
 * A part with the slots in which it became dominated, or ceased to be, as patch rules match it.
 *
 * @param part as it is now
 * @param newly whether it is dominated now
 * @param slots in order
 * @param platforms those on which that is so, in order
 * @param shown its smallest assembly in the first of the slots
 * @param by what outdoes that, or did
 * @param standing what of it nothing outdid before, or outdoes now, where that is another assembly and the patch
 *     changed nothing about what is shown
 * @param gains what that gains, or gained, attribute by attribute
 * @param changes what the patch did to it, to what is shown, and to how those figures are compared in which the two differ
 */
public record AdviceTurned(
        Part part, boolean newly, List<String> slots, List<String> platforms, String shown, String by, Optional<String> standing, List<Gain> gains, List<Change> changes) {

    private static final int MOST_CHANGES = 12;

    /** What says how figures of an attribute are compared. */
    private static final Set<String> MEASURING = Set.of("better", "combine");

    public AdviceTurned {
        slots = List.copyOf(slots);
        platforms = List.copyOf(platforms);
        gains = List.copyOf(gains);
        changes = List.copyOf(changes);
    }

    /** One for each part and way. */
    static List<AdviceTurned> of(List<AdviceShift> shifts, Map<String, Part> parts, Gains then, Gains now, CatalogChanges changes) {
        SortedMap<String, List<AdviceShift>> byPart = new TreeMap<>();
        shifts.forEach(shift -> byPart.computeIfAbsent(shift.part() + (shift.newly() ? "+" : "-"), unused -> new ArrayList<>()).add(shift));
        List<AdviceTurned> turned = new ArrayList<>();
        byPart.values().forEach(some -> {
            AdviceShift first = some.get(0);
            Optional<Assembly> shown = Optional.of(first.verdict().shown());
            Optional<Assembly> by = first.verdict().by();
            List<Gain> gains = (first.newly() ? now : then).of(shown, by);
            List<Change> about = about(shown, by, gains, changes);
            turned.add(new AdviceTurned(
                    parts.get(first.part()), first.newly(), some.stream().map(shift -> shift.host() + "/" + shift.slot()).distinct().sorted().toList(),
                    some.stream().map(AdviceShift::platform).distinct().sorted().toList(), Assemblies.words(shown), Assemblies.words(by),
                    first.standing().filter(standing -> about.isEmpty() && !standing.equals(first.verdict().shown())).map(standing -> Assemblies.words(Optional.of(standing))),
                    gains, about));
        });
        return turned;
    }

    private static List<Change> about(Optional<Assembly> shown, Optional<Assembly> by, List<Gain> gains, CatalogChanges changes) {
        SortedSet<String> parts = new TreeSet<>();
        shown.ifPresent(assembly -> parts.addAll(assembly.parts()));
        by.ifPresent(assembly -> parts.addAll(assembly.parts()));
        Stream<Change> measures = gains.stream().flatMap(gain -> gain.column().attribute().stream()).map(Attribute::id).distinct()
                .flatMap(attribute -> changes.of(new EntryName("attributes", attribute)).stream()).filter(change -> MEASURING.contains(change.property()));
        return Stream.concat(measures, parts.stream().flatMap(part -> changes.of(EntryName.part(part)).stream())).limit(MOST_CHANGES).toList();
    }
}
