package fettle.judgement;

/** How much a finding matters, the gravest first. */
public enum Severity {
    ERROR,
    WARNING,
    NOTE;

    /** As written in rules, catalogs and output. */
    public String word() {
        return name().toLowerCase(java.util.Locale.ROOT);
    }

    /**
     * Reads {@code error}, {@code warning} or {@code note}.
     *
     * @throws IllegalArgumentException for any other word
     */
    public static Severity of(String word) {
        return valueOf(word.toUpperCase(java.util.Locale.ROOT));
    }
}
