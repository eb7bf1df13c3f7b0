package fettle.space.patch;

import java.util.List;

/**
 * An id that a build uses and that probably changed with the patch.
 *
 * @param written the id in the build
 * @param other the id that the other catalog has for it
 * @param old whether the build is written with the old id
 * @param paths where, in order; empty for the platform
 */
public record RenamedUse(String written, String other, boolean old, List<String> paths) {

    public RenamedUse {
        paths = List.copyOf(paths);
    }
}
