package fettle.space.worth;

import java.util.Locale;

/** Where an assembly stands among those that serve the same roles, the best first. */
public enum Standing {
    /** On the upper concave hull of cost and benefit. */
    RUNG,
    /** Not dominated, but below the hull: a mix of two others gives more benefit for the same cost. */
    BETWEEN,
    /** Another costs no more and brings no less, and differs in one. */
    DOMINATED;

    /** As written in output. */
    public String word() {
        return name().toLowerCase(Locale.ROOT);
    }
}
