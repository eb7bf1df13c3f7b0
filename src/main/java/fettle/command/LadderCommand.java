package fettle.command;

import fettle.catalog.Access;
import fettle.catalog.Catalog;
import fettle.catalog.Lens;
import fettle.catalog.SlotId;
import fettle.engine.RuleBase;
import fettle.judgement.CatalogReading;
import fettle.judgement.CatalogSurvey;
import fettle.judgement.Finding;
import fettle.relation.Relations;
import fettle.space.Landscape;
import fettle.space.Space;
import fettle.space.worth.Climb;
import fettle.space.worth.Ladder;
import fettle.view.LadderJson;
import fettle.view.LadderText;
import fettle.view.Report;
import fettle.view.Wording;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.ParseResult;

/** {@code ladder CATALOG}: what a slot offers for its price. */
final class LadderCommand implements Command {

    static final String PURPOSE = "Sorts what a slot can hold by cost and benefit: the rungs worth climbing, with the price of each step, and the waste between them."
            + " Where assemblies of several parts come to the same cost and benefit, they share a rung and its step price, and are all told.";

    private static final String LENS = "--lens";
    private static final String SLOT = "--slot";

    @Override
    public CommandSpec spec() {
        CommandSpec spec = Options.command("ladder", PURPOSE, "fettle ladder catalog/marrowdyke --platform gannet --slot gannet/hand --lens quick",
                "fettle ladder catalog/marrowdyke --platform gannet --slot pell-tube-ten/collar --lens settled --access newcomer");
        spec.addPositional(Options.catalog());
        spec.addOption(required(Options.PLATFORM, "ID", "the platform to build on"));
        spec.addOption(required(SLOT, "HOST/SLOT", "the slot: the id of a part, or of the platform, and the slot's id there"));
        spec.addOption(required(LENS, "ID", "what to build for; of its weights, a ladder counts those of sums and percents alone"));
        spec.addOption(Options.access());
        Options.addReporting(spec, "error", Format.TEXT, Format.JSON);
        return spec;
    }

    private static OptionSpec required(String name, String label, String description) {
        return OptionSpec.builder(name).paramLabel(label).type(String.class).required(true).description(description).build();
    }

    @Override
    public int run(ParseResult said, Streams streams) {
        Settings settings = Settings.of(said, streams);
        RuleBase rules = settings.preparedRules();
        Path directory = said.matchedPositionalValue(0, Path.of(""));
        CatalogReading reading = Intake.catalog(rules, directory);
        Catalog catalog = reading.catalog();
        String platform = Intake.platform(catalog, said.matchedOptionValue(Options.PLATFORM, "")).id();
        SlotId slot = slot(reading.relations(), platform, said.matchedOptionValue(SLOT, ""));
        Space space = Space.of(reading.relations());
        if (!slot.host().equals(platform) && !space.leadsTo(platform, List.of(slot.host()))) {
            throw new NotChecked(slot + " is no slot on " + platform + ": " + (catalog.platforms().containsKey(slot.host())
                    ? slot.host() + " is another platform" : "no chain of fits leads from there to " + slot.host()));
        }
        Lens lens = lens(catalog, said.matchedOptionValue(LENS, ""));
        Optional<Access> access = settings.accessIn(catalog);
        streams.progress().doing("sorting what " + slot + " can hold");
        Landscape landscape = space.landscape(List.of(platform));
        landscape.folded().get(platform).undecided().ifPresent(undecided -> {
            throw new NotChecked("the ladder is not decided: " + undecided.why() + (undecided.at().isEmpty() ? "" : " That is so at " + undecided.at() + "."));
        });
        Ladder ladder = new Climb(landscape, platform, lens, access).of(slot);
        List<Finding> findings = new CatalogSurvey(rules).general(reading);
        Report report = new Report("ladder", catalog.head(), findings);
        Wording wording = new Wording(rules.index(), catalog);
        Delivery delivery = new Delivery(settings.output(), streams);
        if (settings.format() == Format.JSON) {
            delivery.write(out -> new LadderJson(wording, catalog, Version.text()).write(report, ladder, out));
        } else {
            delivery.text(new LadderText(wording, catalog, settings.style()).of(report, ladder, settings.access()));
        }
        Caution.tell(rules, reading, directory, settings, streams);
        return settings.exitCode(findings);
    }

    private static SlotId slot(Relations relations, String platform, String named) {
        int cut = named.indexOf('/');
        if (cut < 0) {
            boolean onPlatform = relations.slots(platform).stream().anyMatch(slot -> slot.slot().equals(named));
            throw new NotChecked("'" + named + "' names no slot; write the host's id, a slash, and the slot's id" + (onPlatform ? ", as in " + platform + "/" + named : ""));
        }
        String host = named.substring(0, cut);
        SlotId slot = new SlotId(host, named.substring(cut + 1));
        Catalog catalog = relations.catalog();
        if (!catalog.parts().containsKey(host) && !catalog.platforms().containsKey(host)) {
            List<String> hosts = new ArrayList<>(catalog.parts().keySet());
            hosts.addAll(catalog.platforms().keySet());
            throw new NotChecked("the catalog has no part or platform " + host + NotChecked.meant(host, hosts));
        }
        if (relations.slot(slot).isEmpty()) {
            List<String> known = relations.slots(host).stream().map(SlotId::slot).toList();
            String meant = NotChecked.meant(slot.slot(), known);
            throw new NotChecked(known.isEmpty()
                    ? host + " has no slots"
                    : host + " has no slot " + slot.slot() + (meant.isEmpty() ? "; its" : meant + " Its") + " slots are " + String.join(", ", known));
        }
        return slot;
    }

    private static Lens lens(Catalog catalog, String id) {
        return Optional.ofNullable(catalog.lenses().get(id))
                .orElseThrow(() -> new NotChecked("the catalog has no lens " + id + NotChecked.meant(id, catalog.lenses().keySet())));
    }
}
