package fettle.judgement;

import fettle.catalog.Part;
import fettle.space.Cause;
import java.util.List;
import java.util.Optional;

/**
 * A part that is reached on some platforms and in no valid build of them, for a cause of its own: not just for want of a host or a slot, which is told of those.
 *
 * @param platforms where it is dead, in order; void platforms are left aside
 * @param others the other platforms that lead to it
 * @param carried parts that are dead there because nothing else carries them
 * @param because why it is so on the first of the platforms, none of which can be left out; empty where it was not looked for
 */
public record DeadPart(Part part, List<String> platforms, List<String> others, List<String> carried, List<Cause> because) {

    public DeadPart {
        platforms = List.copyOf(platforms);
        others = List.copyOf(others);
        carried = List.copyOf(carried);
        because = List.copyOf(because);
    }

    /** How to ask for the reasons, where they were not looked for. */
    public Optional<String> ask() {
        return because.isEmpty() ? Optional.of(part.id() + " --platform " + platforms.get(0)) : Optional.empty();
    }

    /** Whether it is dead on every platform that leads to it. */
    public boolean everywhere() {
        return others.isEmpty();
    }

    /** What it drags along; empty where nothing. */
    public Optional<List<String>> dragged() {
        return Optional.of(carried).filter(parts -> !parts.isEmpty());
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
