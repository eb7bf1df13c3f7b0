package fettle.space.patch;

import fettle.catalog.Constraint;
import fettle.space.BuildResult;
import fettle.space.Change;
import fettle.space.EntryName;
import fettle.space.Placement;
import fettle.space.Unresolved;
import fettle.space.Violation;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.regex.Pattern;

/** What is wrong with a build, as the entries and slots that it rests on. */
final class Trouble {

    private static final Pattern POSITION = Pattern.compile(":[0-9]*$");

    private final Set<EntryName> entries = new HashSet<>();
    private final Set<List<String>> slots = new HashSet<>();
    private final boolean none;

    private Trouble(boolean none) {
        this.none = none;
    }

    /** That of a build whose platform is not there: it rests on nothing in particular. */
    static Trouble ofAll() {
        return new Trouble(false);
    }

    /** That of a build as it was judged. */
    static Trouble of(BuildResult result) {
        return result.placement().map(placed -> of(placed, result.violations())).orElseGet(Trouble::ofAll);
    }

    /** That of a build that is laid out like this and breaks these relations. */
    static Trouble of(Placement placed, List<Violation> violations) {
        Trouble trouble = new Trouble(placed.unresolved().isEmpty() && violations.isEmpty());
        trouble.note(placed, violations);
        return trouble;
    }

    private void note(Placement placed, List<Violation> violations) {
        placed.unresolved().forEach(unresolved -> {
            host(unresolved.entry().part());
            if (unresolved instanceof Unresolved.NoSuchSlot lost) {
                slots.add(List.of(lost.host(), POSITION.matcher(lost.slot()).replaceFirst("")));
            }
        });
        violations.forEach(violation -> {
            violation.parts().forEach(part -> host(part == Placement.PLATFORM ? placed.platform() : placed.parts().get(part).part()));
            violation.slots().stream().map(slot -> placed.slots().get(slot).slot()).forEach(slot -> slots.add(List.of(slot.host(), slot.slot())));
            violation.because().stream().filter(Constraint.class::isInstance).map(Constraint.class::cast)
                    .forEach(constraint -> entries.add(new EntryName("constraints", constraint.id())));
        });
    }

    private void host(String id) {
        entries.add(EntryName.part(id));
        entries.add(EntryName.platform(id));
    }

    /** Whether there is nothing wrong. */
    boolean none() {
        return none;
    }

    /** Whether a difference is in what the trouble rests on: of a part in it, what it says of itself, and of a slot in it, what its host says of that slot. */
    boolean restsOn(Change change) {
        if (change.property().equals("slots") && change.path().size() > 1) {
            return slots.contains(List.of(change.entry().id(), change.path().get(1)));
        }
        return entries.contains(change.entry()) || change.whole() && slots.stream().anyMatch(slot -> slot.get(0).equals(change.entry().id()));
    }
}
