package fettle.space;

import fettle.relation.Relations;
import fettle.relation.Room;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;

/**
 * Finds a valid build that has what is asked, or the causes that rule it out, of which none can be left out.
 *
 * <p>It starts from what is asked and looks for a build that respects no more than that; then adds the causes which that build breaks, and looks again, until a build
 * breaks none or there is none left. The few causes that it took are then left out one by one, and those that prove needless stay out. Each look is a fold over
 * nothing but what those causes touch, so that it stays quick and exact where a propositional encoding would have to unroll every chain of parts.
 */
final class Reasoning {

    private final Setting setting;
    private final Inspection inspection;
    private final Telling telling;

    Reasoning(Relations relations, Setting setting) {
        this.setting = setting;
        this.inspection = new Inspection(relations, setting);
        this.telling = new Telling(relations, setting);
    }

    /**
     * The answer.
     *
     * @throws TooLarge where the bounds are exceeded
     */
    Together answer(List<Cause> asked) {
        String platform = setting.terrain().hosts().get(setting.platform());
        Set<Cause> held = new LinkedHashSet<>(asked);
        while (true) {
            Specimen specimen = new Holding(setting, held).build();
            if (specimen == null) {
                return new Together.Impossible(platform, telling.inOrder(irreducible(held), asked));
            }
            List<Cause> broken = inspection.broken(specimen);
            if (broken.isEmpty()) {
                return new Together.Possible(platform, specimen.paths(setting.terrain()));
            }
            if (!held.addAll(broken)) {
                throw new IllegalStateException("a build breaks what it was made to respect: " + broken);
            }
        }
    }

    /** What stays impossible, without any cause that is not needed for that. What is asked is the last to be given up. */
    private List<Cause> irreducible(Set<Cause> impossible) {
        List<Cause> needed = new ArrayList<>(impossible);
        List<Cause> tried = new ArrayList<>(impossible);
        tried.sort(Comparator.comparing(Reasoning::readiness));
        for (Cause cause : tried) {
            needed.remove(cause);
            if (new Holding(setting, needed).build() != null) {
                needed.add(cause);
            }
        }
        return needed;
    }

    /** How soon a cause is tried to be left out: far-fetched ones first. */
    private static int readiness(Cause cause) {
        if (cause instanceof Cause.Nesting) {
            return 0;
        } else if (cause instanceof Cause.Space space) {
            return space.room() instanceof Room.Distinct ? 1 : space.room() instanceof Room.Filled ? 4 : 2;
        } else if (cause instanceof Cause.Rule || cause instanceof Cause.Values) {
            return 3;
        } else if (cause instanceof Cause.Only || cause instanceof Cause.Unreached) {
            return 5;
        }
        return 6;
    }
}
