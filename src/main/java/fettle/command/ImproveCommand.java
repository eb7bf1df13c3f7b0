package fettle.command;

import fettle.catalog.Build;
import fettle.catalog.BuildReader;
import fettle.catalog.Catalog;
import fettle.catalog.Lens;
import fettle.document.DocumentSet;
import fettle.document.Origin;
import fettle.engine.RuleBase;
import fettle.judgement.BuildReview;
import fettle.judgement.CatalogReading;
import fettle.judgement.Finding;
import fettle.judgement.Judge;
import fettle.judgement.Validation;
import fettle.space.best.Effort;
import fettle.space.best.Improvement;
import fettle.space.best.Improving;
import fettle.space.best.NothingKept;
import fettle.view.ImprovementJson;
import fettle.view.ImprovementText;
import fettle.view.ImprovementWording;
import fettle.view.Report;
import fettle.view.Wording;
import java.math.BigDecimal;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.Model.PositionalParamSpec;
import picocli.CommandLine.ParseResult;

/** {@code improve CATALOG BUILD}: what to swap in a build, and the best build there is. */
final class ImproveCommand implements Command {

    static final String PURPOSE = "Tells what to swap in a build for a lens, what that costs, and the best build there is, proved.";

    private static final String LENS = "--lens";
    private static final String BUDGET = "--budget";
    private static final String OUTFIT = "--outfit";
    private static final String KEEP = "--keep";
    private static final String STEPS = "--steps";
    private static final String TIME_LIMIT = "--time-limit";
    private static final String BUILD = "--build";
    /** How long the best build is sought where nothing else is said. */
    private static final int SECONDS = 30;

    @Override
    public CommandSpec spec() {
        CommandSpec spec = Options.command(
                "improve", PURPOSE, "fettle improve catalog/marrowdyke catalog/marrowdyke/builds/gannet-first-ebb.yaml",
                "fettle improve catalog/marrowdyke catalog/marrowdyke/builds/coot-drum.yaml --lens quick --budget 30000 --keep barrel --steps 3");
        spec.addPositional(Options.catalog());
        spec.addPositional(PositionalParamSpec.builder().index("1").paramLabel("BUILD").type(Path.class).required(true)
                .description("a build file, or - for standard input").build());
        spec.addOption(option(BUILD, "ID", "the build to look at, where the file holds several").build());
        spec.addOption(option(LENS, "ID", "what to build for (default: as the build says)").build());
        spec.addOption(option(BUDGET, "AMOUNT", "what the whole may cost (default: as the build says)").type(BigDecimal.class).converters(Amounts::money).build());
        spec.addOption(Options.access());
        spec.addOption(option(OUTFIT, "ID", "what is worn (default: as the build says)").build());
        spec.addOption(OptionSpec.builder(KEEP).paramLabel("PATH").type(List.class).auxiliaryTypes(String.class)
                .description("keep the part at this path in the best build; may be given several times").build());
        spec.addOption(option(STEPS, "N", "show N swaps to make one after the other, sought for what they gain together").type(Integer.class).converters(Amounts::count).build());
        spec.addOption(option(TIME_LIMIT, "SECONDS", "stop the search for the best build then, and tell how far off it can be (default: " + SECONDS + "); where given, try sequences of --steps until then").type(Integer.class).converters(Amounts::count).build());
        Options.addReporting(spec, "error", Format.TEXT, Format.JSON);
        return spec;
    }

    private static OptionSpec.Builder option(String name, String label, String description) {
        return OptionSpec.builder(name).paramLabel(label).type(String.class).description(description);
    }

    @Override
    public int run(ParseResult said, Streams streams) {
        Settings settings = Settings.of(said, streams);
        RuleBase rules = settings.preparedRules();
        CatalogReading reading = Intake.catalog(rules, said.matchedPositionalValue(0, Path.of("")));
        DocumentSet documents = Intake.builds(List.of(said.matchedPositionalValue(1, Path.of(""))), streams.in());
        String id = chosen(documents, said);
        Catalog catalog = reading.catalog();
        Validation.Outcome outcome = new Validation(rules).validate(reading, documents, written -> written.id().equals(id), written -> asked(catalog, written, said, settings));
        BuildReview review = outcome.builds().get(0);
        Build build = review.result().build();
        Lens lens = lens(catalog, build);
        if (!catalog.platforms().containsKey(build.platform().id())) {
            throw new NotChecked("the catalog has no platform " + build.platform().id() + NotChecked.meant(build.platform().id(), catalog.platforms().keySet()));
        }
        Set<String> keep = new TreeSet<>(said.matchedOptionValue(KEEP, List.<String>of()));
        streams.progress().doing("looking for better builds");
        Improvement improvement;
        try {
            // The time that is taken where none is said must not change what steps are told.
            Optional<Effort> asked = Optional.ofNullable(said.<Integer>matchedOptionValue(TIME_LIMIT, null)).map(seconds -> Effort.of(Duration.ofSeconds(seconds)));
            improvement = new Improving(reading.relations()).of(build, lens, keep, said.matchedOptionValue(STEPS, 0),
                    asked.orElseGet(() -> Effort.of(Duration.ofSeconds(SECONDS))), asked.orElseGet(Effort::unbounded));
        } catch (NothingKept nothing) {
            throw notKept(catalog, build, nothing.paths());
        }
        List<Finding> findings = Judge.sorted(Stream.concat(outcome.general().stream(), review.findings().stream()).toList());
        Report report = new Report("improve", catalog.head(), findings);
        Wording wording = new Wording(rules.index(), catalog);
        Delivery delivery = new Delivery(settings.output(), streams);
        if (settings.format() == Format.JSON) {
            delivery.write(out -> new ImprovementJson(wording, new ImprovementWording(catalog), Version.text()).write(report, improvement, out));
        } else {
            delivery.text(new ImprovementText(wording, catalog, settings.style()).of(improvement, findings));
        }
        return settings.exitCode(findings);
    }

    private static NotChecked notKept(Catalog catalog, Build build, Set<String> paths) {
        return build.parts().stream().filter(entry -> entry.named() && !catalog.parts().containsKey(entry.part()))
                .filter(entry -> paths.contains(entry.path()) || paths.contains(entry.path() + ":" + entry.position())).findFirst()
                .map(entry -> new NotChecked("the catalog has no part " + entry.part() + ", which the build has at " + entry.path() + ", so it can't be kept"))
                .orElseGet(() -> new NotChecked("the build has nothing at " + String.join(", ", paths) + ", so there is nothing to keep there"));
    }

    /** The id of the build to look at, which only one bears. */
    private static String chosen(DocumentSet documents, ParseResult said) {
        String id = said.matchedOptionValue(BUILD, "");
        List<String> known = documents.documents().stream().flatMap(document -> BuildReader.read(document).stream()).map(Build::id).toList();
        List<String> matching = known.stream().filter(each -> id.isEmpty() || each.equals(id)).toList();
        if (matching.isEmpty()) {
            throw new NotChecked(known.isEmpty() ? "no build could be read, so there is nothing to improve" : "there is no build " + id + NotChecked.meant(id, known));
        }
        if (matching.size() > 1) {
            List<String> different = matching.stream().distinct().toList();
            throw new NotChecked(different.size() > 1 ? "there are several builds; name one with --build: " + String.join(", ", different)
                    : matching.size() + " builds have the id " + different.get(0) + "; give each its own, so that it can be told which is meant");
        }
        return matching.get(0);
    }

    /** The build as the command line asks for it: what it says stands in the place of what is written. */
    private static Build asked(Catalog catalog, Build build, ParseResult said, Settings settings) {
        Optional<BigDecimal> budget = Optional.ofNullable(said.<BigDecimal>matchedOptionValue(BUDGET, null));
        return new Build(build.id(), build.label(), build.platform(), build.patch(), build.parts(), build.loaded(),
                known(catalog.outfits(), "outfit", Optional.ofNullable(said.<String>matchedOptionValue(OUTFIT, null)), build.outfit(), build.origin()),
                known(catalog.access(), "access profile", settings.access(), build.access(), build.origin()),
                build.owned(), budget.or(build::budget),
                known(catalog.lenses(), "lens", Optional.ofNullable(said.<String>matchedOptionValue(LENS, null)), build.lens(), build.origin()), build.origin());
    }

    private static Optional<Build.Located> known(
            Map<String, ?> entries, String sort, Optional<String> said, Optional<Build.Located> written, Origin origin) {
        Optional<Build.Located> wanted = said.map(id -> new Build.Located(id, origin)).or(() -> written);
        wanted.filter(id -> !entries.containsKey(id.id())).ifPresent(id -> {
            throw new NotChecked("the catalog has no " + sort + " " + id.id() + NotChecked.meant(id.id(), entries.keySet()));
        });
        return wanted;
    }

    private static Lens lens(Catalog catalog, Build build) {
        return build.lens().map(lens -> catalog.lenses().get(lens.id())).orElseThrow(() -> new NotChecked(catalog.lenses().isEmpty()
                ? "the catalog has no lens, so there is nothing to build for"
                : "the build names no lens; name one with --lens: " + String.join(", ", catalog.lenses().keySet())));
    }
}
