package fettle.command;

import fettle.document.DeepStack;
import fettle.document.Nearest;
import fettle.engine.RuleBase;
import fettle.engine.RuleErrors;
import fettle.engine.RuleFault;
import java.io.BufferedOutputStream;
import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Supplier;
import picocli.CommandLine;
import picocli.CommandLine.Help.Ansi;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.ParseResult;
import picocli.CommandLine.UnmatchedArgumentException;

/** Where the program starts: finds the command, runs it, and turns whatever happens into an exit code and a plain sentence. */
public final class Main {

    private static final String PROGRAM = "fettle";
    private static final int BUFFER = 1 << 16;

    private static final Map<String, Supplier<Command>> COMMANDS = commands();

    private Main() {}

    private static Map<String, Supplier<Command>> commands() {
        Map<String, Supplier<Command>> commands = new LinkedHashMap<>();
        commands.put("lint", LintCommand::new);
        commands.put("validate", ValidateCommand::new);
        commands.put("survey", SurveyCommand::new);
        commands.put("explain", ExplainCommand::new);
        commands.put("ladder", LadderCommand::new);
        commands.put("improve", ImproveCommand::new);
        commands.put("compare", CompareCommand::new);
        commands.put("report", ReportCommand::new);
        commands.put("rules", RulesCommand::new);
        commands.put("watch", WatchCommand::new);
        commands.put("language-server", LanguageServerCommand::new);
        commands.put("start", StartCommand::new);
        commands.put("completion", CompletionCommand::new);
        return commands;
    }

    /** Runs a command and ends the process with its exit code. */
    public static void main(String[] arguments) {
        WatchedOutput watched = new WatchedOutput(new FileOutputStream(FileDescriptor.out));
        PrintStream out = stream(watched);
        PrintStream err = stream(new FileOutputStream(FileDescriptor.err));
        int code = run(arguments, new Streams(System.in, out, err, Terminal.shown(), Progress.beating(err, Terminal.attended())));
        out.flush();
        if (watched.failure().isPresent()) {
            err.println(PROGRAM + ": cannot write to standard output: " + watched.failure().get());
            code = ExitCode.NOT_CHECKED;
        }
        err.flush();
        System.exit(code);
    }

    private static PrintStream stream(OutputStream out) {
        return new PrintStream(new BufferedOutputStream(out, BUFFER), false, StandardCharsets.UTF_8);
    }

    /** Runs a command and returns its exit code: 0 checked, 1 findings that fail, 2 could not check, 70 a fault in the program. */
    public static int run(String[] arguments, InputStream in, PrintStream out, PrintStream err) {
        return run(arguments, new Streams(in, out, err, false));
    }

    static int run(String[] arguments, Streams streams) {
        String command = PROGRAM;
        try {
            if (arguments.length == 0) {
                root().usage(streams.err(), Ansi.OFF);
                return ExitCode.NOT_CHECKED;
            }
            Supplier<Command> found = COMMANDS.get(arguments[0]);
            if (found == null) {
                return aside(arguments, streams);
            }
            command = PROGRAM + " " + arguments[0];
            return run(found.get(), List.of(arguments).subList(1, arguments.length), streams);
        } catch (ParameterException wrong) {
            say(streams, command, told(wrong, command) + "\nSee " + command + " --help.");
            return ExitCode.NOT_CHECKED;
        } catch (NotChecked | RuleErrors wrong) {
            say(streams, command, wrong.getMessage());
            return ExitCode.NOT_CHECKED;
        } catch (RuleFault broken) {
            say(streams, command, broken.given() ? broken.getMessage() + ". Mend it, or leave out --rules." : Fault.told(broken));
            return broken.given() ? ExitCode.NOT_CHECKED : ExitCode.FAULT;
        } catch (RuntimeException | Error fault) {
            say(streams, command, Fault.told(fault));
            return ExitCode.FAULT;
        } finally {
            streams.progress().end();
            streams.out().flush();
            streams.err().flush();
        }
    }

    private static int run(Command command, List<String> arguments, Streams streams) {
        if (command.judges() && arguments.stream().noneMatch(argument -> argument.startsWith(Options.RULES))) {
            RuleBase.prepareBuiltIn();
        }
        CommandSpec spec = command.spec();
        spec.name("fettle " + spec.name());
        CommandLine line = line(spec);
        ParseResult said = line.parseArgs(arguments.toArray(String[]::new));
        if (said.isUsageHelpRequested()) {
            line.usage(streams.out(), Ansi.OFF);
            return ExitCode.FINE;
        }
        EmptyPaths.refuse(said);
        Overwriting.refuse(said);
        return DeepStack.call(() -> command.run(said, streams));
    }

    /** What is no command: {@code --help}, {@code --version}, or a slip. */
    private static int aside(String[] arguments, Streams streams) {
        CommandLine line = root();
        ParseResult said = line.parseArgs(arguments);
        if (said.isVersionHelpRequested()) {
            streams.out().println("fettle " + Version.text());
        } else {
            line.usage(streams.out(), Ansi.OFF);
        }
        return ExitCode.FINE;
    }

    static CommandLine root() {
        CommandSpec spec = Options.command("fettle", "Checks parts catalogs and builds of games with moddable gear. It concerns game data only,"
                + " and says nothing about real equipment.", "fettle lint catalog/marrowdyke", "fettle validate catalog/marrowdyke catalog/marrowdyke/builds");
        spec.addOption(OptionSpec.builder("-V", "--version").versionHelp(true).description("show the version and exit").build());
        spec.usageMessage().commandListHeading("\n").synopsisSubcommandLabel("COMMAND");
        COMMANDS.forEach((name, command) -> spec.addSubcommand(name, command.get().spec()));
        return line(spec);
    }

    private static CommandLine line(CommandSpec spec) {
        return new CommandLine(spec).setExpandAtFiles(false).setUsageHelpWidth(Options.WIDTH);
    }

    private static String told(ParameterException wrong, String command) {
        if (wrong instanceof UnmatchedArgumentException unmatched) {
            String first = unmatched.getUnmatched().get(0);
            String what = first.startsWith("-") ? "there is no option " + first : command.equals(PROGRAM) ? "there is no command " + first : first + " is one argument too many";
            List<String> near = near(first, unmatched.getCommandLine().getCommandSpec(), command);
            return what + (near.isEmpty() ? "" : "; did you mean " + String.join(" or ", near) + "?");
        }
        return wrong.getMessage();
    }

    /** The options, or commands, that were probably meant; of an option with a value only its name counts. */
    private static List<String> near(String word, CommandSpec spec, String command) {
        if (word.startsWith("--")) {
            return Nearest.names(word.replaceFirst("=.*", ""), spec.optionsMap().keySet());
        }
        return command.equals(PROGRAM) && !word.startsWith("-") ? Nearest.names(word, COMMANDS.keySet()) : List.of();
    }

    private static void say(Streams streams, String command, String sentence) {
        streams.progress().end();
        streams.out().flush();
        streams.err().println(command + ": " + fettle.view.TextView.harmless(sentence));
    }
}
