package fettle.space.patch;

import fettle.space.worth.Verdict;
import java.util.Comparator;

/**
 * A part whose standing in a slot is another than before: dominated now and not then, or the other way round.
 *
 * @param host the part, or the platform, that bears the slot
 * @param newly whether it is dominated now
 * @param verdict by what it is dominated, or was
 */
public record AdviceShift(String platform, String host, String slot, String part, boolean newly, Verdict.Dominated verdict) implements Comparable<AdviceShift> {

    private static final Comparator<AdviceShift> ORDER = Comparator.comparing(AdviceShift::newly).reversed()
            .thenComparing(AdviceShift::platform)
            .thenComparing(AdviceShift::host)
            .thenComparing(AdviceShift::slot)
            .thenComparing(AdviceShift::part);

    @Override
    public int compareTo(AdviceShift other) {
        return ORDER.compare(this, other);
    }
}
