package fettle.command;

import fettle.catalog.Access;
import fettle.catalog.Catalog;
import fettle.document.DocumentSet;
import fettle.engine.RuleBase;
import fettle.judgement.BuildReview;
import fettle.judgement.CatalogReading;
import fettle.judgement.Finding;
import fettle.judgement.Judge;
import fettle.judgement.Lint;
import fettle.judgement.Validation;
import fettle.space.Landscape;
import fettle.space.Space;
import fettle.view.HtmlView;
import fettle.view.Report;
import fettle.view.Wording;
import java.nio.file.Path;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.ParseResult;

/** {@code report CATALOG -o FILE}: a catalog and builds of it on one HTML page. */
final class ReportCommand implements Command {

    static final String PURPOSE = "Writes one HTML page on a catalog and builds of it, which needs no network and no other file.";

    private static final String BUILDS = "--builds";

    @Override
    public CommandSpec spec() {
        CommandSpec spec = Options.command(
                "report", PURPOSE, "fettle report catalog/marrowdyke --builds catalog/marrowdyke/builds -o marrowdyke.html");
        spec.addPositional(Options.catalog());
        spec.addOption(OptionSpec.builder(BUILDS).paramLabel("PATH").type(List.class).auxiliaryTypes(Path.class).arity("1")
                .description("a build file or a directory of them; may be said more than once").build());
        spec.addOption(Options.access());
        spec.addOption(Options.output());
        spec.addOption(Options.failOn("never"));
        spec.addOption(Options.rules());
        return spec;
    }

    @Override
    public int run(ParseResult said, Streams streams) {
        Settings settings = Settings.of(said, streams);
        if (settings.output().isEmpty()) {
            throw new NotChecked("a report goes into a file; name it with -o FILE");
        }
        RuleBase rules = settings.preparedRules();
        CatalogReading reading = Intake.catalog(rules, said.matchedPositionalValue(0, Path.of("")));
        Catalog catalog = reading.catalog();
        if (catalog.platforms().isEmpty() && catalog.parts().isEmpty()) {
            throw new NotChecked("no part and no platform could be read from the catalog, so there is nothing to report");
        }
        DocumentSet documents = Intake.builds(said.matchedOptionValue(BUILDS, List.of()), streams.in());
        Set<Finding> findings = new LinkedHashSet<>(new Lint(rules).findings(reading));
        Optional<Access> access = settings.accessIn(catalog);
        Validation.Outcome outcome = new Validation(rules).validate(reading, documents, access);
        findings.addAll(outcome.general());
        List<BuildReview> builds = outcome.builds();
        builds.forEach(build -> findings.addAll(build.findings()));
        Report report = new Report("report", catalog.head(), findings.stream().sorted(Judge.ORDER).toList());
        HtmlView view = new HtmlView(new Wording(rules.index(), catalog), rules.index(), Version.text());
        Landscape landscape = Space.of(reading.relations()).landscape(List.copyOf(catalog.platforms().keySet()));
        new Delivery(settings.output(), streams).write(out -> view.report(report, landscape, access, builds, out));
        return settings.exitCode(report.findings());
    }
}
