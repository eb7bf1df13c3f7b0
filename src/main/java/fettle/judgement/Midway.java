package fettle.judgement;

import fettle.catalog.Build;
import fettle.document.Origin;
import fettle.space.worth.Standing;
import java.math.BigDecimal;

/**
 * How the assembly in one place of a build stands among all that give a valid build there, by what they would cost and what the lens gains.
 *
 * @param assembly what is there
 * @param standing where it stands
 * @param cheaper the nearest rung that costs less, with what would be saved
 * @param dearer the nearest rung that costs more, with what it would cost besides
 */
public record Midway(
        Build build, String path, Origin place, String assembly, Standing standing, String cheaper, BigDecimal saved, String dearer, BigDecimal besides) {}
