package fettle.judgement;

import fettle.catalog.Part;
import fettle.space.Survey;
import fettle.space.worth.SlotWorth;
import java.util.List;

/**
 * One platform with what holds of all its valid builds.
 *
 * @param slots how parts stand to each other in each slot that valid builds use
 */
public record PlatformSurvey(Part platform, Survey survey, List<SlotWorth> slots) {

    public PlatformSurvey {
        slots = List.copyOf(slots);
    }
}
