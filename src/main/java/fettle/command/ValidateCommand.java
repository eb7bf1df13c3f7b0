package fettle.command;

import fettle.document.DocumentSet;
import fettle.engine.RuleBase;
import fettle.judgement.BuildReview;
import fettle.judgement.CatalogReading;
import fettle.judgement.Finding;
import fettle.judgement.Judge;
import fettle.judgement.Validation;
import fettle.view.JsonView;
import fettle.view.Report;
import fettle.view.SarifView;
import fettle.view.TextView;
import fettle.view.Wording;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.PositionalParamSpec;
import picocli.CommandLine.ParseResult;

/** {@code validate CATALOG BUILD…}: whether builds are possible, and what they come to. */
final class ValidateCommand implements Command {

    static final String PURPOSE = "Tells whether builds are possible, what they come to in totals, cost and limits, and which swaps would serve better.";

    @Override
    public CommandSpec spec() {
        CommandSpec spec = Options.command(
                "validate", PURPOSE, "fettle validate catalog/marrowdyke catalog/marrowdyke/builds",
                "fettle validate catalog/marrowdyke catalog/marrowdyke/builds/coot-drum.yaml --format json");
        spec.addPositional(Options.catalog());
        spec.addPositional(PositionalParamSpec.builder().index("1..*").arity("1..*").paramLabel("BUILD").type(List.class).auxiliaryTypes(Path.class)
                .required(true).description("a build file, a directory of them, or - for standard input").build());
        spec.addOption(Options.access());
        Options.addReporting(spec, "error", Format.TEXT, Format.JSON, Format.SARIF);
        return spec;
    }

    @Override
    public int run(ParseResult said, Streams streams) {
        Settings settings = Settings.of(said, streams);
        RuleBase rules = settings.preparedRules();
        CatalogReading reading = Intake.catalog(rules, said.matchedPositionalValue(0, Path.of("")));
        DocumentSet documents = Intake.builds(said.matchedPositionalValue(1, List.of()), streams.in());
        streams.progress().doing("checking builds");
        Validation.Outcome outcome = new Validation(rules).validate(reading, documents, settings.accessIn(reading.catalog()));
        List<BuildReview> builds = outcome.builds();
        Report report = new Report("validate", reading.catalog().head(), all(outcome));
        Wording wording = new Wording(rules.index(), reading.catalog());
        Delivery delivery = new Delivery(settings.output(), streams);
        switch (settings.format()) {
            case TEXT -> delivery.text(new TextView(wording, settings.style()).validate(report, reading, outcome.general(), builds));
            case JSON -> delivery.write(out -> new JsonView(wording, Version.text()).validate(report, builds, out));
            case SARIF -> delivery.write(out -> new SarifView(wording, rules.index(), Version.text()).report(report, out));
        }
        if (builds.isEmpty()) {
            throw new NotChecked("no build could be read, so there is nothing to check");
        }
        // A build that isn't valid fails even where no rule has anything to say on why.
        boolean broken = settings.failOn().isPresent() && builds.stream().anyMatch(build -> !build.result().valid());
        return broken ? ExitCode.FINDINGS : settings.exitCode(report.findings());
    }

    private static List<Finding> all(Validation.Outcome outcome) {
        return Judge.sorted(Stream.concat(outcome.general().stream(), outcome.builds().stream().flatMap(build -> build.findings().stream())).toList());
    }
}
