package fettle.judgement;

import fettle.catalog.Part;
import fettle.engine.RuleBase;
import fettle.space.Space;
import fettle.space.Survey;
import java.util.Collection;
import java.util.List;
import java.util.SortedMap;

/** Surveys platforms of a catalog: what holds of all their valid builds. */
public final class CatalogSurvey {

    /**
     * What was found.
     *
     * @param general findings on the catalog's documents
     * @param platforms by the platforms' ids
     */
    public record Outcome(List<Finding> general, List<PlatformSurvey> platforms) {

        public Outcome {
            general = List.copyOf(general);
            platforms = List.copyOf(platforms);
        }
    }

    private final Judge judge;

    public CatalogSurvey(RuleBase rules) {
        this.judge = new Judge(rules);
    }

    /** Surveys these platforms of the catalog. */
    public Outcome survey(CatalogReading reading, Collection<Part> platforms) {
        SortedMap<String, Survey> surveys = Space.of(reading.relations()).survey(platforms.stream().map(Part::id).toList());
        List<PlatformSurvey> told = surveys.values().stream()
                .map(survey -> new PlatformSurvey(reading.catalog().platforms().get(survey.platform()), survey))
                .toList();
        return new Outcome(judge.judge(reading.documentFacts(), reading.places()), told);
    }
}
