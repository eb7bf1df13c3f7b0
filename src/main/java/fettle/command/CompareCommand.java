package fettle.command;

import fettle.document.DocumentSet;
import fettle.document.RevisionFolder;
import fettle.document.RevisionUnreadable;
import fettle.engine.RuleBase;
import fettle.judgement.CatalogReading;
import fettle.judgement.Comparison;
import fettle.judgement.PatchReview;
import fettle.space.patch.Advice;
import fettle.view.ComparisonJson;
import fettle.view.ComparisonText;
import fettle.view.Report;
import fettle.view.SarifView;
import fettle.view.Wording;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionException;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.Model.PositionalParamSpec;
import picocli.CommandLine.ParseResult;

/** {@code compare OLD NEW}: what a patch changed and what it broke. */
final class CompareCommand implements Command {

    static final String PURPOSE = "Tells what a patch changed in a catalog, and what that does to builds: which broke and how to mend them, which shifted.";

    private static final String BUILDS = "--builds";
    private static final String ADVICE = "--advice";

    @Override
    public CommandSpec spec() {
        CommandSpec spec = Options.command(
                "compare", PURPOSE, "fettle compare catalog/marrowdyke catalog/marrowdyke-next --builds catalog/marrowdyke-next/builds",
                "fettle compare catalog/marrowdyke catalog/marrowdyke-next --advice all",
                "fettle compare HEAD~1:catalog/marrowdyke catalog/marrowdyke --format json");
        spec.addPositional(side("0", "OLD", "the catalog before: a directory, or REVISION:PATH for one in a git revision"));
        spec.addPositional(side("1", "NEW", "the catalog after, likewise"));
        spec.addOption(OptionSpec.builder(BUILDS).paramLabel("PATH").type(List.class).auxiliaryTypes(Path.class)
                .description("builds to check against both: a file, a directory, or - for standard input; may be given several times").build());
        spec.addOption(OptionSpec.builder(ADVICE).paramLabel("builds|all|none").type(String.class).defaultValue("builds")
                .description("for which parts to tell whether they became outclassed, or ceased to be: those that the builds use, or all (default: builds)")
                .converters(new OneOf(List.of("builds", "all", "none"))).build());
        Options.addReporting(spec, "error", Format.TEXT, Format.JSON, Format.SARIF);
        return spec;
    }

    private static PositionalParamSpec side(String index, String label, String description) {
        return PositionalParamSpec.builder().index(index).paramLabel(label).type(String.class).required(true).description(description).build();
    }

    @Override
    public int run(ParseResult said, Streams streams) {
        Settings settings = Settings.of(said, streams);
        RuleBase rules = settings.preparedRules();
        String before = said.matchedPositionalValue(0, "");
        String after = said.matchedPositionalValue(1, "");
        if (before.isEmpty() || after.isEmpty()) {
            throw EmptyPaths.refused(before.isEmpty() ? "OLD" : "NEW");
        }
        CompletableFuture<CatalogReading> reading = CompletableFuture.supplyAsync(() -> read(rules, before, after));
        CatalogReading now = read(rules, after, before);
        CatalogReading old = joined(reading);
        List<Path> paths = said.matchedOptionValue(BUILDS, List.of());
        DocumentSet builds = paths.isEmpty() ? new DocumentSet(List.of()) : Intake.builds(paths, streams.in());
        streams.progress().doing("comparing");
        Advice.Scope scope = Advice.Scope.valueOf(said.matchedOptionValue(ADVICE, "builds").toUpperCase(Locale.ROOT));
        Comparison comparison = new PatchReview(rules, scope).compare(old, now, builds);
        if (!paths.isEmpty() && comparison.builds().isEmpty()) {
            throw new NotChecked("no build could be read, so there is nothing to check");
        }

        Report report = new Report("compare", now.catalog().head(), comparison.findings());
        Wording wording = new Wording(rules.index(), now.catalog());
        Delivery delivery = new Delivery(settings.output(), streams);
        switch (settings.format()) {
            case TEXT -> delivery.text(new ComparisonText(wording, settings.style()).of(report, comparison));
            case JSON -> delivery.write(out -> new ComparisonJson(wording, Version.text()).write(report, comparison, out));
            case SARIF -> delivery.write(out -> new SarifView(wording, rules.index(), Version.text()).report(report, out));
        }
        return settings.exitCode(comparison.findings());
    }

    /** Reads one side; a revision is looked for in the repository of the current directory, or else in that of the other side. */
    private static CatalogReading read(RuleBase rules, String side, String other) {
        CatalogReading reading = RevisionFolder.isNamed(side)
                ? Intake.catalog(rules, revision(side, other), side)
                : Intake.catalog(rules, Path.of(side));
        if (reading.catalog().platforms().isEmpty() && reading.catalog().parts().isEmpty()) {
            throw new NotChecked("no part and no platform could be read from " + side + ", so there is nothing to compare");
        }
        return reading;
    }

    private static DocumentSet revision(String side, String other) {
        List<Path> places = new ArrayList<>(List.of(Path.of("")));
        if (!RevisionFolder.isNamed(other)) {
            places.add(Path.of(other));
        }
        try {
            return RevisionFolder.find(side, places).catalog();
        } catch (RevisionUnreadable unreadable) {
            throw new NotChecked(unreadable.getMessage());
        }
    }

    private static CatalogReading joined(CompletableFuture<CatalogReading> reading) {
        try {
            return reading.join();
        } catch (CompletionException failed) {
            if (failed.getCause() instanceof RuntimeException cause) {
                throw cause;
            }
            throw failed;
        }
    }
}
