package fettle.engine;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;

/**
 * How much a finding matters.
 *
 * <p>From grave to slight, in the order in which people want to see them.
 */
public enum Severity {
    /** Something is impossible or broken. */
    ERROR,
    /** Something is very likely not meant. */
    WARNING,
    /** Something worth knowing. */
    NOTE;

    /** The word used in rules, on the command line and in output: {@code error}, {@code warning} or {@code note}. */
    public String word() {
        return name().toLowerCase(Locale.ROOT);
    }

    /** The severity that a word names, if it names one. */
    public static Optional<Severity> ofWord(String word) {
        return Arrays.stream(values()).filter(severity -> severity.word().equals(word)).findFirst();
    }
}
