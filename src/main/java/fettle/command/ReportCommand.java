package fettle.command;

import fettle.catalog.Catalog;
import fettle.engine.RuleBase;
import fettle.judgement.CatalogReading;
import fettle.space.Landscape;
import fettle.space.Space;
import fettle.view.HtmlView;
import fettle.view.Report;
import fettle.view.Wording;
import java.nio.file.Path;
import java.util.List;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.ParseResult;

/** {@code report CATALOG -o FILE}: a catalog and builds of it on one HTML page. */
final class ReportCommand implements Command {

    static final String PURPOSE = "Writes one HTML page on a catalog and builds of it, which needs no network and no other file.";

    @Override
    public CommandSpec spec() {
        CommandSpec spec = Options.command(
                "report", PURPOSE, "fettle report catalog/marrowdyke --builds catalog/marrowdyke/builds -o marrowdyke.html");
        spec.addPositional(Options.catalog());
        spec.addOption(Options.builds());
        spec.addOption(Options.access());
        spec.addOption(OptionSpec.builder(Options.output()).description("write the page there; it has to be named").build());
        spec.addOption(Options.failOn("never"));
        spec.addOption(Options.rules());
        spec.addOption(Options.progress());
        return spec;
    }

    @Override
    public int run(ParseResult said, Streams streams) {
        Settings settings = Settings.of(said, streams);
        if (settings.output().isEmpty()) {
            throw new NotChecked("a report goes into a file; name it with -o FILE");
        }
        RuleBase rules = settings.preparedRules();
        Checkup checkup = Checkup.of(settings, rules, said.matchedPositionalValue(0, Path.of("")), said.matchedOptionValue(Options.BUILDS, List.of()), streams);
        if (checkup.holdsNothing()) {
            throw new NotChecked("no part and no platform could be read from the catalog, so there is nothing to report");
        }
        CatalogReading reading = checkup.reading();
        Catalog catalog = reading.catalog();
        streams.progress().doing("drawing the page");
        Report report = new Report("report", catalog.head(), checkup.findings());
        HtmlView view = new HtmlView(new Wording(rules.index(), catalog), rules.index(), Version.text());
        Landscape landscape = Space.of(reading.relations()).landscape(List.copyOf(catalog.platforms().keySet()));
        new Delivery(settings.output(), streams).write(out -> view.report(report, landscape, settings.accessIn(catalog), checkup.builds(), out));
        return settings.exitCode(report.findings());
    }
}
