package fettle.command;

/** What the program tells the shell. */
final class ExitCode {

    /** Checked, nothing at or above the fail level. */
    static final int FINE = 0;

    /** Checked, with findings at or above the fail level. */
    static final int FINDINGS = 1;

    /** Could not check: bad usage, or input that leaves nothing to check. */
    static final int NOT_CHECKED = 2;

    /** A fault in Fettle itself. */
    static final int FAULT = 70;

    private ExitCode() {}
}
