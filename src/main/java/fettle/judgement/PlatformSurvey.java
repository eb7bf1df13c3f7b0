package fettle.judgement;

import fettle.catalog.Part;
import fettle.space.Survey;

/** One platform with what holds of all its valid builds. */
public record PlatformSurvey(Part platform, Survey survey) {}
