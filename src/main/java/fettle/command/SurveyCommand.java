package fettle.command;

import fettle.catalog.Access;
import fettle.catalog.Catalog;
import fettle.catalog.Part;
import fettle.engine.RuleBase;
import fettle.judgement.CatalogReading;
import fettle.judgement.CatalogSurvey;
import fettle.space.Prices;
import fettle.space.worth.Gains;
import fettle.view.JsonView;
import fettle.view.Report;
import fettle.view.TextView;
import fettle.view.Wording;
import java.nio.file.Path;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParseResult;

/** {@code survey CATALOG}: what holds of all valid builds of each platform. */
final class SurveyCommand implements Command {

    static final String PURPOSE = "Tells of each platform how many valid builds it has, which parts are in none or in all of them, and how far its figures reach.";

    @Override
    public CommandSpec spec() {
        CommandSpec spec = Options.command(
                "survey", PURPOSE, "fettle survey catalog/marrowdyke --platform gannet", "fettle survey catalog/marrowdyke --format json");
        spec.addPositional(Options.catalog());
        spec.addOption(Options.platform("survey this platform alone"));
        spec.addOption(Options.access());
        Options.addReporting(spec, "error", Format.TEXT, Format.JSON);
        return spec;
    }

    @Override
    public int run(ParseResult said, Streams streams) {
        Settings settings = Settings.of(said, streams);
        RuleBase rules = settings.preparedRules();
        Path directory = said.matchedPositionalValue(0, Path.of(""));
        CatalogReading reading = Intake.catalog(rules, directory);
        Catalog catalog = reading.catalog();
        Optional<Access> access = settings.accessIn(catalog);
        Collection<Part> platforms = Optional.<String>ofNullable(said.matchedOptionValue(Options.PLATFORM, null))
                .<Collection<Part>>map(id -> List.of(Intake.platform(catalog, id)))
                .orElseGet(catalog.platforms()::values);
        streams.progress().doing("surveying " + (platforms.size() == 1 ? "a platform" : platforms.size() + " platforms"));
        CatalogSurvey.Outcome outcome = new CatalogSurvey(rules).survey(reading, platforms, access);
        Report report = new Report("survey", catalog.head(), outcome.general());
        Wording wording = new Wording(rules.index(), catalog);
        Gains gains = new Gains(catalog, new Prices(catalog, access));
        Delivery delivery = new Delivery(settings.output(), streams);
        if (settings.format() == Format.JSON) {
            delivery.write(out -> new JsonView(wording, Version.text()).survey(report, outcome.platforms(), gains, out));
        } else {
            delivery.text(new TextView(wording, settings.style()).survey(report, reading, outcome.platforms(), gains));
        }
        if (platforms.isEmpty()) {
            throw new NotChecked("no platform could be read from the catalog, so there is nothing to survey");
        }
        Caution.tell(rules, reading, directory, settings, streams);
        return settings.exitCode(outcome.general());
    }
}
