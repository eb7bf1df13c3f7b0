package fettle.command;

import fettle.catalog.Access;
import fettle.catalog.Catalog;
import fettle.engine.RuleBase;
import fettle.judgement.CatalogReading;
import fettle.judgement.Finding;
import fettle.judgement.Lint;
import fettle.view.ExplainView;
import fettle.view.IdSort;
import fettle.view.JsonView;
import fettle.view.Report;
import fettle.view.Wording;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.PositionalParamSpec;
import picocli.CommandLine.ParseResult;

/** {@code explain CATALOG ID}: all that is known of one thing in a catalog. */
final class ExplainCommand implements Command {

    static final String PURPOSE = "Tells all that is known of a part: where it fits and through what, what it clashes with and why, what it carries,"
            + " where it is bought. Other ids are explained as well.";

    @Override
    public CommandSpec spec() {
        CommandSpec spec = Options.command(
                "explain", PURPOSE, "fettle explain catalog/marrowdyke lissel-mote", "fettle explain catalog/marrowdyke gannet/top",
                "fettle explain catalog/marrowdyke pell-gas-post --access newcomer");
        spec.addPositional(Options.catalog());
        spec.addPositional(PositionalParamSpec.builder().index("1").paramLabel("ID").type(String.class).required(true)
                .description("an id, or host/slot; with part:, kind:, mount: or the like before it where several things share it").build());
        spec.addOption(Options.access());
        spec.addOption(Options.format(Format.TEXT, Format.JSON));
        spec.addOption(Options.output());
        spec.addOption(Options.rules());
        spec.addOption(Options.color());
        return spec;
    }

    @Override
    public int run(ParseResult said, Streams streams) {
        Settings settings = Settings.of(said, streams);
        RuleBase rules = settings.preparedRules();
        CatalogReading reading = Intake.catalog(rules, said.matchedPositionalValue(0, Path.of("")));
        Catalog catalog = reading.catalog();
        String name = said.matchedPositionalValue(1, "");
        List<IdSort.Named> named = IdSort.named(catalog, name);
        if (named.isEmpty()) {
            throw new NotChecked("the catalog has nothing of the name " + name + NotChecked.meant(name, IdSort.known(catalog)));
        }
        Optional<Access> access = settings.accessIn(catalog);
        List<Finding> findings = new Lint(rules).findings(reading).stream()
                .filter(finding -> named.stream().anyMatch(each -> concerns(finding.subject(), each)))
                .toList();
        Wording wording = new Wording(rules.index(), catalog);
        Delivery delivery = new Delivery(settings.output(), streams);
        if (settings.format() == Format.JSON) {
            Report report = new Report("explain", catalog.head(), findings);
            delivery.write(out -> new JsonView(wording, Version.text()).report(report, out));
        } else {
            delivery.text(new ExplainView(wording, reading.relations(), settings.style()).text(named, findings, access));
        }
        return ExitCode.FINE;
    }

    /** A finding on a slot or an offer of a part is about the part too. */
    private static boolean concerns(String subject, IdSort.Named named) {
        return subject.equals(named.toString())
                || subject.startsWith("slot:" + named.id() + "/")
                || subject.startsWith("offer:" + named.id() + "@");
    }
}
