package fettle.judgement;

import fettle.catalog.Access;
import fettle.catalog.Part;
import fettle.engine.RuleBase;
import fettle.space.Landscape;
import fettle.space.Space;
import fettle.space.Survey;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.Set;
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

    /** Surveys these platforms of the catalog; costs are those under an access profile, of all offers where none is named. */
    public Outcome survey(CatalogReading reading, Collection<Part> platforms, Optional<Access> access) {
        Space space = Space.of(reading.relations());
        Landscape landscape = space.landscape(platforms.stream().map(Part::id).toList());
        SortedMap<String, Survey> surveys = space.survey(landscape);
        Set<String> used = landscape.platforms();
        fettle.space.worth.Comparison worth = new fettle.space.worth.Comparison(landscape, access);
        List<PlatformSurvey> told = surveys.values().stream()
                .map(survey -> new PlatformSurvey(
                        reading.catalog().platforms().get(survey.platform()), survey,
                        used.contains(survey.platform()) ? worth.platform(survey.platform()) : List.of()))
                .toList();
        return new Outcome(general(reading), told);
    }

    /** The findings on the catalog's documents alone. */
    public List<Finding> general(CatalogReading reading) {
        return judge.judge(reading.documentFacts(), reading.places());
    }
}
