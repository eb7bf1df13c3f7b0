package fettle.command;

import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParseResult;

/** One command of the program. */
interface Command {

    /** Its options and parameters, and what its help says. */
    CommandSpec spec();

    /** Whether it runs rules, so that they may as well be loaded while its arguments are read. */
    default boolean judges() {
        return true;
    }

    /** Does the work and returns an exit code; throws {@link NotChecked} where there is nothing to check. */
    int run(ParseResult said, Streams streams);
}
