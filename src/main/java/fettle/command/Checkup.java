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
import java.nio.file.Path;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * A catalog and builds of it, all checked in one go.
 *
 * @param findings those on the catalog and those on the builds, in order, each once
 */
record Checkup(CatalogReading reading, List<Finding> findings, List<BuildReview> builds) {

    static Checkup of(Settings settings, RuleBase rules, Path directory, List<Path> paths, Streams streams) {
        CatalogReading reading = Intake.catalog(rules, directory);
        DocumentSet documents = Intake.builds(paths, streams.in());
        Optional<Access> access = settings.accessIn(reading.catalog());
        streams.progress().doing("judging the catalog");
        Set<Finding> findings = new LinkedHashSet<>(new Lint(rules).findings(reading));
        streams.progress().doing("checking builds");
        Validation.Outcome outcome = new Validation(rules).validate(reading, documents, access);
        findings.addAll(outcome.general());
        outcome.builds().forEach(build -> findings.addAll(build.findings()));
        return new Checkup(reading, findings.stream().sorted(Judge.ORDER).toList(), outcome.builds());
    }

    /** Whether so little could be read that the findings mean nothing. */
    boolean holdsNothing() {
        Catalog catalog = reading.catalog();
        return catalog.platforms().isEmpty() && catalog.parts().isEmpty();
    }
}
