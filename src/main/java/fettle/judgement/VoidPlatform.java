package fettle.judgement;

import fettle.catalog.Part;
import fettle.space.Cause;
import java.util.List;
import java.util.Optional;

/**
 * A platform that has no valid build.
 *
 * @param because why, none of which can be left out; empty where it was not looked for
 */
public record VoidPlatform(Part platform, List<Cause> because) {

    public VoidPlatform {
        because = List.copyOf(because);
    }

    /** How to ask for the reasons, where they were not looked for. */
    public Optional<String> ask() {
        return because.isEmpty() ? Optional.of(platform.id() + " --platform " + platform.id()) : Optional.empty();
    }
}
