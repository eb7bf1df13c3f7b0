package fettle.judgement;

import fettle.catalog.Access;
import fettle.catalog.Build;
import fettle.catalog.BuildReader;
import fettle.catalog.Entry;
import fettle.document.DeepStack;
import fettle.document.Document;
import fettle.document.DocumentSet;
import fettle.document.Places;
import fettle.document.SchemaProblem;
import fettle.document.Schemas;
import fettle.engine.RuleBase;
import fettle.space.BuildCheck;
import fettle.space.BuildResult;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import java.util.function.Supplier;
import java.util.function.UnaryOperator;
import java.util.stream.Stream;

/** Checks builds against a catalog: what is impossible in them, and what they come to. */
public final class Validation {

    /**
     * What was found.
     *
     * @param general findings on documents, the catalog's and the builds', and the catalog's errors that bear on the builds
     * @param builds in the order of their files, then as written there
     */
    public record Outcome(List<Finding> general, List<BuildReview> builds) {}

    private final Judge judge;
    private final Schemas schemas = new Schemas();

    public Validation(RuleBase rules) {
        this.judge = new Judge(rules);
    }

    /** Checks every build of these documents, bought under {@code access} where that is given, whatever profile the build itself names. */
    public Outcome validate(CatalogReading reading, DocumentSet documents, Optional<Access> access) {
        return validate(reading, documents, build -> true, written -> access.map(profile -> written.boughtAs(profile.id())).orElse(written));
    }

    /**
     * Checks those builds that are wanted, and of the others their documents alone.
     *
     * @param asked what a wanted build is to be checked as, given what is written
     */
    public Outcome validate(CatalogReading reading, DocumentSet documents, Predicate<Build> wanted, UnaryOperator<Build> asked) {
        Supplier<List<Finding>> stated = DeepStack.begin(() -> new StatedErrors(judge).of(reading));
        BuildCheck check = new BuildCheck(reading.relations());
        Places places = new Places(Stream.concat(reading.documents().documents().stream(), documents.documents().stream()).toList());
        BuildJudgement judgement = new BuildJudgement(judge, reading, places);
        List<Object> general = new ArrayList<>(reading.documentFacts());
        documents.problems().forEach(general::add);
        Waivers waivers = new Waivers(reading.catalog());
        List<Entry> entries = new ArrayList<>();
        List<BuildReview> reviews = new ArrayList<>();
        for (Document document : documents.documents()) {
            List<SchemaProblem> problems = schemas.checkBuild(document);
            Set<SchemaProblem> needless = new HashSet<>();
            for (Build written : BuildReader.read(document)) {
                entries.add(written.entry());
                if (!wanted.test(written)) {
                    continue;
                }
                BuildResult result = check.check(asked.apply(written));
                OneSlip slip = new OneSlip(problems, judgement.findings(result, check));
                needless.addAll(slip.needless());
                reviews.add(new BuildReview(document.file(), result, waivers.applied(slip.kept())));
            }
            problems.stream().filter(problem -> !needless.contains(problem)).forEach(general::add);
        }
        general.addAll(entries);
        general.addAll(SharedId.of(entries));
        List<Finding> found = new ArrayList<>(judge.judge(general, places));
        Bearing bearing = Bearing.on(reviews.stream().map(review -> review.result().build()).toList());
        stated.get().stream().filter(finding -> bearing.has(finding.subject())).forEach(found::add);
        return new Outcome(waivers.applied(Judge.sorted(found)), List.copyOf(reviews));
    }
}
