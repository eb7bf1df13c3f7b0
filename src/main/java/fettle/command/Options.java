package fettle.command;

import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.Model.PositionalParamSpec;

/** The options that commands share. */
final class Options {

    static final String ACCESS = "--access";
    static final String BUILDS = "--builds";
    static final String COLOR = "--color";
    static final String FAIL_ON = "--fail-on";
    static final String FORMAT = "--format";
    static final String OUTPUT = "--output";
    static final String PLATFORM = "--platform";
    static final String PROGRESS = "--progress";
    static final String QUIET = "--quiet";
    static final String RULES = "--rules";

    /** Columns of a line of help. */
    static final int WIDTH = 100;

    private Options() {}

    /** A command's bare specification, with {@code --help}. */
    static CommandSpec command(String name, String purpose, String... example) {
        CommandSpec spec = CommandSpec.create().name(name).interpolateVariables(false);
        spec.addOption(OptionSpec.builder("-h", "--help").usageHelp(true).description("show this help and exit").build());
        spec.usageMessage().description(purpose).width(WIDTH).sortOptions(false);
        spec.usageMessage().synopsisHeading("usage: ").descriptionHeading("\n").parameterListHeading("\n").optionListHeading("\n");
        if (example.length > 0) {
            spec.usageMessage().footerHeading("\nfor example:\n").footer(Arrays.stream(example).flatMap(Options::lines).toArray(String[]::new));
        }
        return spec;
    }

    /** An example as a shell takes it, in two lines where it is too long for one. */
    private static Stream<String> lines(String example) {
        int cut = example.lastIndexOf(" --", WIDTH - 6);
        return example.length() <= WIDTH - 4 || cut < 0
                ? Stream.of("  " + example)
                : Stream.of("  " + example.substring(0, cut) + " \\", "     " + example.substring(cut));
    }

    /** What every command has that reports findings: in what form, where to, when to fail, by which rules, and how it looks. */
    static void addReporting(CommandSpec spec, String usualFailOn, Format... offered) {
        spec.addOption(format(offered));
        spec.addOption(output());
        spec.addOption(failOn(usualFailOn));
        spec.addOption(rules());
        spec.addOption(color());
        spec.addOption(quiet());
        spec.addOption(progress());
    }

    static PositionalParamSpec catalog() {
        return PositionalParamSpec.builder().index("0").paramLabel("CATALOG").type(Path.class).required(true)
                .description("the catalog's directory").build();
    }

    static OptionSpec builds() {
        return OptionSpec.builder(BUILDS).paramLabel("PATH").type(List.class).auxiliaryTypes(Path.class).arity("1")
                .description("a build file or a directory of them; may be said more than once").build();
    }

    static OptionSpec access() {
        return OptionSpec.builder(ACCESS).paramLabel("ID").type(String.class)
                .description("what the player may buy: an access profile of the catalog").build();
    }

    static OptionSpec platform(String what) {
        return OptionSpec.builder(PLATFORM).paramLabel("ID").type(String.class).description(what).build();
    }

    static OptionSpec platforms(String what) {
        return OptionSpec.builder(PLATFORM).paramLabel("ID").type(String[].class).arity("1").description(what).build();
    }

    static OptionSpec format(Format... offered) {
        List<String> words = Arrays.stream(offered).map(Options::word).toList();
        return OptionSpec.builder(FORMAT).paramLabel(String.join("|", words)).type(String.class).defaultValue("text")
                .description("the form of the output (default: text)")
                .converters(new OneOf(words)).build();
    }

    static OptionSpec output() {
        return OptionSpec.builder("-o", OUTPUT).paramLabel("FILE").type(Path.class).description("write there instead of to standard output").build();
    }

    static OptionSpec failOn(String usual) {
        return OptionSpec.builder(FAIL_ON).paramLabel("error|warning|note|never").type(String.class).defaultValue(usual)
                .description("end with 1 where a finding is at least this grave (default: " + usual + ")")
                .converters(new OneOf(List.of("error", "warning", "note", "never"))).build();
    }

    static OptionSpec rules() {
        return OptionSpec.builder(RULES).paramLabel("DIR").type(Path.class)
                .description("use the rule files below DIR too; they are code, so name only what you trust").build();
    }

    static OptionSpec color() {
        return OptionSpec.builder(COLOR).paramLabel("auto|always|never").type(String.class).defaultValue("auto")
                .description("colour the text (default: auto, on a terminal unless NO_COLOR is set)")
                .converters(new OneOf(List.of("auto", "always", "never"))).build();
    }

    static OptionSpec progress() {
        return OptionSpec.builder(PROGRESS).description("tell on standard error what is being done, even where it is no terminal").build();
    }

    private static OptionSpec quiet() {
        return OptionSpec.builder("-q", QUIET).description("tell only what fails, without a summary").build();
    }

    static String word(Format format) {
        return format.name().toLowerCase(Locale.ROOT);
    }
}
