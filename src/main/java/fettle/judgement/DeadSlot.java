package fettle.judgement;

import fettle.catalog.Slot;
import fettle.space.Cause;
import java.util.List;
import java.util.Optional;

/**
 * A slot that something fits and that holds a part in no valid build of some platforms, though what bears it is used there.
 *
 * @param platforms where it is dead, in order; void platforms are left aside
 * @param others the other platforms that lead to it
 * @param dead parts that are dead there because no other slot takes them
 * @param because why it is so on the first of the platforms, none of which can be left out; empty where it was not looked for
 */
public record DeadSlot(Slot slot, List<String> platforms, List<String> others, List<String> dead, List<Cause> because) {

    public DeadSlot {
        platforms = List.copyOf(platforms);
        others = List.copyOf(others);
        dead = List.copyOf(dead);
        because = List.copyOf(because);
    }

    /** How to ask for the reasons, where they were not looked for. */
    public Optional<String> ask() {
        return because.isEmpty() ? Optional.of(slot.id() + " --platform " + platforms.get(0)) : Optional.empty();
    }

    /** Whether it is dead on every platform that leads to it. */
    public boolean everywhere() {
        return others.isEmpty();
    }

    /** What is dead with it; empty where nothing. */
    public Optional<List<String>> dragged() {
        return Optional.of(dead).filter(parts -> !parts.isEmpty());
    }

    /** Where it is dead: the platforms, or all that lead to it. */
    public Object scope() {
        return everywhere() ? "any platform that leads to it" : platforms;
    }

    /** The other platforms; empty where there are none. */
    public Optional<List<String>> elsewhere() {
        return Optional.of(others).filter(some -> !some.isEmpty());
    }
}
