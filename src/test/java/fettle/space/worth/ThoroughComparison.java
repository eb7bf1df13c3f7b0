package fettle.space.worth;

import fettle.space.Landscape;
import java.util.Optional;

/** A comparison that tries nothing quickly, so that small catalogs come to what is meant for large ones. */
public final class ThoroughComparison {

    private ThoroughComparison() {}

    public static Comparison of(Landscape landscape) {
        return new Comparison(landscape, Optional.empty(), 0, Long.MAX_VALUE);
    }
}
