package fettle.command;

import fettle.catalog.Access;
import fettle.catalog.Catalog;
import fettle.engine.RuleBase;
import fettle.engine.Severity;
import fettle.engine.Unit;
import fettle.judgement.Finding;
import fettle.view.TextStyle;
import java.nio.file.Path;
import java.util.Collection;
import java.util.Locale;
import java.util.Optional;
import picocli.CommandLine.ParseResult;

/**
 * What the shared options say.
 *
 * @param failOn the least severity that fails; empty for never
 */
record Settings(Format format, Optional<Path> output, Optional<Severity> failOn, Optional<Path> rules, Optional<String> access, boolean colour, boolean quiet) {

    static Settings of(ParseResult said, Streams streams) {
        if (said.hasMatchedOption(Options.PROGRESS)) {
            streams.progress().insist();
        }
        streams.progress().doing("reading");
        Optional<Path> output = value(said, Options.OUTPUT);
        String colour = said.matchedOptionValue(Options.COLOR, "auto");
        return new Settings(
                Format.valueOf(Settings.<String>value(said, Options.FORMAT).orElse("text").toUpperCase(Locale.ROOT)),
                output,
                Settings.<String>value(said, Options.FAIL_ON).flatMap(Severity::ofWord),
                value(said, Options.RULES),
                value(said, Options.ACCESS),
                colour.equals("always") || colour.equals("auto") && streams.terminal() && output.isEmpty(),
                said.hasMatchedOption(Options.QUIET));
    }

    /** What was said of an option, or its default; empty where the command has no such option. */
    private static <T> Optional<T> value(ParseResult said, String option) {
        return Optional.ofNullable(said.commandSpec().findOption(option)).flatMap(found -> Optional.ofNullable(found.getValue()));
    }

    /** All rules to be used. */
    RuleBase ruleBase() {
        return RuleBase.withExtra(rules);
    }

    /** The same, being loaded while the caller reads what they are to judge. */
    RuleBase preparedRules() {
        RuleBase base = ruleBase();
        base.prepare(Unit.RELATION, Unit.JUDGEMENT);
        return base;
    }

    /** The access profile that was named, as the catalog has it. */
    Optional<Access> accessIn(Catalog catalog) {
        return access.map(id -> Optional.ofNullable(catalog.access().get(id))
                .orElseThrow(() -> new NotChecked("the catalog has no access profile " + id + NotChecked.meant(id, catalog.access().keySet()))));
    }

    TextStyle style() {
        return new TextStyle(colour, quiet ? Optional.of(new TextStyle.Quiet(failOn)) : Optional.empty());
    }

    /** 1 where a finding that isn't waived is grave enough to fail. */
    int exitCode(Collection<Finding> findings) {
        boolean fails = findings.stream()
                .filter(finding -> finding.waived().isEmpty())
                .anyMatch(finding -> failOn.map(level -> finding.severity().compareTo(level) <= 0).orElse(false));
        return fails ? ExitCode.FINDINGS : ExitCode.FINE;
    }
}
