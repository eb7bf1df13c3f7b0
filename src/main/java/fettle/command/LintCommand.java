package fettle.command;

import fettle.catalog.Catalog;
import fettle.engine.RuleBase;
import fettle.judgement.CatalogReading;
import fettle.judgement.Finding;
import fettle.judgement.Lint;
import fettle.view.JsonView;
import fettle.view.Report;
import fettle.view.SarifView;
import fettle.view.TextView;
import fettle.view.Wording;
import java.nio.file.Path;
import java.util.List;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParseResult;

/** {@code lint CATALOG}: everything wrong or doubtful in a catalog. */
final class LintCommand implements Command {

    static final String PURPOSE = "Finds everything wrong or doubtful in a catalog.";

    @Override
    public CommandSpec spec() {
        CommandSpec spec = Options.command("lint", PURPOSE, "fettle lint catalog/marrowdyke", "fettle lint catalog/marrowdyke-hasty --fail-on error --format json");
        spec.addPositional(Options.catalog());
        Options.addReporting(spec, "warning", Format.TEXT, Format.JSON, Format.SARIF);
        return spec;
    }

    @Override
    public int run(ParseResult said, Streams streams) {
        Settings settings = Settings.of(said, streams);
        RuleBase rules = settings.preparedRules();
        CatalogReading reading = Intake.catalog(rules, said.matchedPositionalValue(0, Path.of("")));
        streams.progress().doing("judging the catalog");
        List<Finding> findings = new Lint(rules).findings(reading);
        Report report = new Report("lint", reading.catalog().head(), findings);
        Wording wording = new Wording(rules.index(), reading.catalog());
        Delivery delivery = new Delivery(settings.output(), streams);
        switch (settings.format()) {
            case TEXT -> delivery.text(new TextView(wording, settings.style()).lint(report, reading));
            case JSON -> delivery.write(out -> new JsonView(wording, Version.text()).report(report, out));
            case SARIF -> delivery.write(out -> new SarifView(wording, rules.index(), Version.text()).report(report, out));
        }
        Catalog catalog = reading.catalog();
        if (catalog.platforms().isEmpty() && catalog.parts().isEmpty()) {
            throw new NotChecked("no part and no platform could be read from the catalog, so there is nothing to check");
        }
        return settings.exitCode(findings);
    }
}
