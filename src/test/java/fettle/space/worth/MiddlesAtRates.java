package fettle.space.worth;

import fettle.space.Landscape;
import java.util.Optional;

/** Parts between rungs, sought by looking at all sets of roles together, so that small catalogs come to what is meant for many sets. */
public final class MiddlesAtRates {

    private MiddlesAtRates() {}

    public static Middles of(Landscape landscape) {
        return new Middles(landscape, Optional.empty(), 0);
    }
}
