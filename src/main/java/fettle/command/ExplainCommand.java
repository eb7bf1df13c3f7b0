package fettle.command;

import fettle.catalog.Access;
import fettle.catalog.Catalog;
import fettle.catalog.Part;
import fettle.catalog.SlotId;
import fettle.engine.RuleBase;
import fettle.judgement.CatalogReading;
import fettle.judgement.CatalogSurvey;
import fettle.judgement.Coexistence;
import fettle.judgement.Finding;
import fettle.judgement.Judge;
import fettle.judgement.Lint;
import fettle.judgement.Scope;
import fettle.judgement.Standings;
import fettle.space.Prices;
import fettle.space.worth.Gains;
import fettle.space.worth.Placings;
import fettle.view.CoexistenceText;
import fettle.view.ExplainView;
import fettle.view.IdSort;
import fettle.view.JsonView;
import fettle.view.Report;
import fettle.view.Wording;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.PositionalParamSpec;
import picocli.CommandLine.ParseResult;

/** {@code explain CATALOG ID…}: all that is known of one thing in a catalog, or whether several parts can be together. */
final class ExplainCommand implements Command {

    static final String PURPOSE = "Tells all that is known of a part: where it fits and through what, what it clashes with and why, what it carries,"
            + " how it stands to others in each slot, where it is bought. Other ids are explained as well."
            + " Of several parts it tells whether they can be together: with a build that shows it, or with reasons none of which can be left out.";

    @Override
    public CommandSpec spec() {
        CommandSpec spec = Options.command(
                "explain", PURPOSE, "fettle explain catalog/marrowdyke lissel-mote", "fettle explain catalog/marrowdyke gannet/top",
                "fettle explain catalog/marrowdyke pell-gas-post --access newcomer",
                "fettle explain catalog/marrowdyke lissel-mote pell-gas-post --platform gannet");
        spec.addPositional(Options.catalog());
        spec.addPositional(PositionalParamSpec.builder().index("1..*").arity("1..*").paramLabel("ID").type(String[].class).required(true)
                .description("an id, or host/slot; with part:, kind:, mount: or the like before it where several things share it; or several parts").build());
        spec.addOption(Options.platforms("tell whether it can be in a valid build of this platform; may be given again"));
        spec.addOption(Options.access());
        spec.addOption(Options.format(Format.TEXT, Format.JSON));
        spec.addOption(Options.output());
        spec.addOption(Options.failOn("error"));
        spec.addOption(Options.rules());
        spec.addOption(Options.progress());
        spec.addOption(Options.color());
        return spec;
    }

    @Override
    public int run(ParseResult said, Streams streams) {
        Settings settings = Settings.of(said, streams);
        RuleBase rules = settings.preparedRules();
        Path directory = said.matchedPositionalValue(0, Path.of(""));
        CatalogReading reading = Intake.catalog(rules, directory);
        Catalog catalog = reading.catalog();
        List<String> names = List.of(said.matchedPositionalValue(1, new String[0]));
        List<Part> platforms = Arrays.stream(said.matchedOptionValue(Options.PLATFORM, new String[0])).distinct().map(id -> Intake.platform(catalog, id)).toList();
        if (names.size() > 1) {
            int exit = together(settings, streams, rules, reading, names, platforms);
            Caution.tell(rules, reading, directory, settings, streams);
            return exit;
        }
        String name = names.get(0);
        List<IdSort.Named> named = IdSort.named(catalog, name);
        if (named.isEmpty()) {
            throw new NotChecked("the catalog has nothing of the name " + name + NotChecked.meant(name, IdSort.known(catalog)) + unread(reading));
        }
        Optional<Access> access = settings.accessIn(catalog);
        streams.progress().doing("judging the catalog");
        Standings standings = new Standings(reading.relations());
        Scope scope = Scope.of(named.stream().map(IdSort.Named::toString).toList());
        Lint lint = new Lint(rules);
        // Somebody's own rules may find something on one thing by what holds of others.
        List<Finding> findings = settings.rules().isPresent()
                ? lint.findings(reading).stream().filter(finding -> scope.takes(finding.subject())).toList() : lint.on(scope, reading, standings);
        List<Finding> general = new CatalogSurvey(rules).general(reading);
        List<Coexistence> asked = platforms.isEmpty() ? List.of() : asked(reading, named, name, platforms);
        Optional<String> part = named.stream().filter(each -> each.sort() == IdSort.PART).map(IdSort.Named::id).filter(catalog.parts()::containsKey).findFirst();
        Placings placings = part.map(id -> standings.of(id, access)).orElse(Placings.NONE);
        Wording wording = new Wording(rules.index(), catalog);
        Delivery delivery = new Delivery(settings.output(), streams);
        if (settings.format() == Format.JSON) {
            Report report = new Report("explain", catalog.head(), Judge.sorted(Stream.concat(general.stream(), findings.stream()).toList()));
            Gains gains = new Gains(catalog, new Prices(catalog, access));
            JsonView view = new JsonView(wording, Version.text());
            delivery.write(out -> {
                if (part.isPresent()) {
                    view.explain(report, asked, placings, gains, out);
                } else {
                    view.explain(report, asked, out);
                }
            });
        } else {
            delivery.text(new ExplainView(wording, reading.relations(), settings.style()).text(general, named, findings, access, asked, placings));
        }
        Caution.tell(rules, reading, directory, settings, streams);
        return settings.exitCode(general);
    }

    /** Whether several parts can be together on each platform that was named, or else on each that leads to all of them. */
    private static int together(Settings settings, Streams streams, RuleBase rules, CatalogReading reading, List<String> names, List<Part> named) {
        Catalog catalog = reading.catalog();
        if (settings.accessIn(catalog).isPresent()) {
            throw new NotChecked("what the player may buy has no part in whether parts can be together; leave --access out, or name one part alone");
        }
        List<String> parts = names.stream().map(name -> part(reading, name)).distinct().toList();
        List<Part> platforms = named.isEmpty() ? Coexistence.platformsFor(reading.relations(), parts) : named;
        if (platforms.isEmpty()) {
            throw new NotChecked("the catalog has no platform, so nothing can be together on one");
        }
        List<Coexistence> asked = Coexistence.ofParts(reading.relations(), platforms, parts);
        Wording wording = new Wording(rules.index(), catalog);
        Delivery delivery = new Delivery(settings.output(), streams);
        List<Finding> general = new CatalogSurvey(rules).general(reading);
        if (settings.format() == Format.JSON) {
            Report report = new Report("explain", catalog.head(), general);
            delivery.write(out -> new JsonView(wording, Version.text()).explain(report, asked, out));
        } else {
            delivery.text(new CoexistenceText(wording).text(catalog, general, asked, settings.style()));
        }
        return settings.exitCode(general);
    }

    /** Says where something may stand that seems not to be there. */
    private static String unread(CatalogReading reading) {
        List<String> files = reading.unread();
        return files.isEmpty() ? "" : "; it may stand in " + String.join(", ", files) + ", which could not be read whole: fettle lint tells why";
    }

    /** The part of a name, which may have {@code part:} before it. */
    private static String part(CatalogReading reading, String name) {
        Catalog catalog = reading.catalog();
        String id = name.startsWith("part:") ? name.substring("part:".length()) : name;
        if (catalog.parts().containsKey(id)) {
            return id;
        }
        if (catalog.platforms().containsKey(id)) {
            throw new NotChecked(id + " is a platform, and only parts can be asked about together; name the platform with --platform " + id);
        }
        if (!IdSort.named(catalog, name).isEmpty()) {
            throw new NotChecked(name + " is no part, and only parts can be asked about together; name " + name + " alone to have it explained");
        }
        throw new NotChecked("the catalog has no part " + name + NotChecked.meant(id, catalog.parts().keySet()) + unread(reading));
    }

    /** Whether one thing can be on platforms; a platform itself is asked whether it has a valid build. */
    private static List<Coexistence> asked(CatalogReading reading, List<IdSort.Named> named, String name, List<Part> platforms) {
        for (IdSort.Named each : named) {
            if (each.sort() == IdSort.PART && reading.catalog().parts().containsKey(each.id())) {
                return Coexistence.ofParts(reading.relations(), platforms, List.of(each.id()));
            } else if (each.sort() == IdSort.PLATFORM && platforms.stream().allMatch(platform -> platform.id().equals(each.id()))) {
                return Coexistence.ofParts(reading.relations(), platforms, List.of());
            } else if (each.sort() == IdSort.SLOT) {
                SlotId slot = new SlotId(each.id().substring(0, each.id().indexOf('/')), each.id().substring(each.id().indexOf('/') + 1));
                return Coexistence.ofSlot(reading.relations(), platforms, slot);
            }
        }
        throw new NotChecked("--platform asks whether a part or a slot can be used on a platform, and " + name + " is neither; leave --platform out");
    }
}
