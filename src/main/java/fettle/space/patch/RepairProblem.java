package fettle.space.patch;

import fettle.space.Occurrence;
import fettle.space.Placement;
import fettle.space.SlotUse;
import fettle.space.Unresolved;
import fettle.space.Violation;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Optional;
import java.util.Set;
import java.util.List;
import java.util.TreeSet;

/**
 * Something that keeps an arrangement from being valid, and what could put it right.
 *
 * @param seats it stays as long as none of these seats is given another part, or emptied, or filled
 * @param serving unless one of these parts is put in, anywhere
 */
record RepairProblem(Set<String> seats, Set<String> serving) {

    /** Everything wrong with an arrangement laid out as a placement. */
    static List<RepairProblem> of(Arrangement arrangement, Placement placement, List<Violation> violations) {
        List<RepairProblem> problems = new ArrayList<>();
        placement.unresolved().forEach(unresolved -> problems.add(of(arrangement, unresolved)));
        violations.forEach(violation -> problems.add(of(placement, violation)));
        return problems;
    }

    /** A part that is to be kept and sits nowhere. */
    static RepairProblem lost(String part) {
        return new RepairProblem(Set.of(), Set.of(part));
    }

    /** Whether something put in elsewhere could help. */
    boolean open() {
        return !serving.isEmpty();
    }

    private static RepairProblem of(Arrangement arrangement, Unresolved unresolved) {
        Set<String> seats = new TreeSet<>();
        seats.add(Arrangement.seat(unresolved.entry()));
        if (unresolved instanceof Unresolved.NoSuchSlot) {
            Optional<String> host = Arrangement.above(Arrangement.seat(unresolved.entry()));
            while (host.isPresent() && arrangement.at(host.get()).isEmpty()) {
                host = Arrangement.above(host.get());
            }
            host.ifPresent(seats::add);
        } else if (unresolved instanceof Unresolved.NothingThere nothing) {
            seats.add(nothing.through());
        }
        return new RepairProblem(seats, Set.of());
    }

    private static RepairProblem of(Placement placement, Violation violation) {
        Set<String> seats = new TreeSet<>();
        violation.parts().stream().filter(part -> part != Placement.PLATFORM).forEach(part -> seats.add(seat(placement.parts().get(part))));
        for (int index : violation.slots()) {
            SlotUse slot = placement.slots().get(index);
            String owner = slot.owner() == Placement.PLATFORM ? "" : seat(placement.parts().get(slot.owner()));
            if (!owner.isEmpty()) {
                seats.add(owner);
            }
            slot.occupants().forEach(part -> seats.add(seat(placement.parts().get(part))));
            if (slot.occupants().isEmpty()) {
                seats.add((owner.isEmpty() ? "" : owner + "/") + slot.slot().slot() + ":0");
            }
        }
        Set<String> serving = new TreeSet<>();
        if (violation.data().get("serving") instanceof Collection<?> parts) {
            parts.forEach(part -> serving.add(part.toString()));
        }
        return new RepairProblem(seats, serving);
    }

    private static String seat(Occurrence part) {
        return Arrangement.seat(part.entry());
    }
}
