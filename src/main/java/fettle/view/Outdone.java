package fettle.view;

import fettle.space.worth.Gains;
import fettle.space.worth.PartWorth;
import fettle.space.worth.Verdict;
import java.util.Optional;

/**
 * By what a part is outdone in a slot.
 *
 * @param by one witness that shows it each way in which the part is outdone, where there is one; else one that shows it as far as cost is ignored
 * @param forItsPrice one that shows it with cost counted, where the other doesn't
 */
record Outdone(Verdict.Dominated by, Optional<Verdict.Dominated> forItsPrice) {

    /** Empty where a part is not outdone, or not known to be. */
    static Optional<Outdone> of(PartWorth worth, Gains gains) {
        if (worth.ignoringCost() instanceof Verdict.Dominated free && worth.withCost() instanceof Verdict.Dominated priced && gains.dearer(free)) {
            boolean both = gains.of(priced).stream().anyMatch(gain -> gain.column().attribute().isPresent());
            return Optional.of(both ? new Outdone(priced, Optional.empty()) : new Outdone(free, Optional.of(priced)));
        }
        return worth.dominated().map(dominated -> new Outdone(dominated, Optional.empty()));
    }
}
