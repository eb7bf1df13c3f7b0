package fettle.command;

import picocli.AutoComplete;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParseResult;

/** {@code completion}: a script with which bash and zsh complete commands and options. */
final class CompletionCommand implements Command {

    static final String PURPOSE = "Prints a script with which bash and zsh complete commands and options.";

    @Override
    public CommandSpec spec() {
        return Options.command("completion", PURPOSE, "source <(fettle completion)");
    }

    @Override
    public boolean judges() {
        return false;
    }

    @Override
    public int run(ParseResult said, Streams streams) {
        streams.out().print(AutoComplete.bash("fettle", Main.root()));
        return ExitCode.FINE;
    }
}
