package fettle.space.patch;

import java.util.Locale;

/** What a patch did to a build. */
public enum Verdict {
    /** Valid before, and not after. */
    BROKEN,
    /** Not valid before, and valid after. */
    MENDED,
    /** As valid as before, but with another total, another cost, or a limit on whose other side it now is. */
    SHIFTED,
    /** None of these. */
    UNCHANGED;

    /** As written in reports. */
    public String word() {
        return name().toLowerCase(Locale.ROOT);
    }
}
