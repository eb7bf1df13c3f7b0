package fettle.space.patch;

import java.util.Comparator;
import java.util.Optional;

/**
 * A step of a repair: what is to sit at a path instead.
 *
 * @param path as builds write it; {@link #PLATFORM} for the platform
 * @param from empty where nothing sat there
 * @param to empty where nothing is to sit there
 * @param renamed whether {@code to} is the id that {@code from} probably goes by now
 */
public record PathChange(String path, Optional<String> from, Optional<String> to, boolean renamed) implements Comparable<PathChange> {

    /** Stands for the platform in place of a path. */
    public static final String PLATFORM = "platform";

    private static final Comparator<PathChange> ORDER =
            Comparator.comparing(PathChange::path).thenComparing(change -> change.to().orElse("")).thenComparing(change -> change.from().orElse(""));

    /** Whether the same part stays, without the first notch that the build gives it. */
    public boolean moved() {
        return from.isPresent() && from.equals(to);
    }

    @Override
    public int compareTo(PathChange other) {
        return ORDER.compare(this, other);
    }
}
