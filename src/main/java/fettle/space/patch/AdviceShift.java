package fettle.space.patch;

import fettle.space.Assembly;
import fettle.space.worth.Verdict;
import java.util.Comparator;
import java.util.Optional;

/**
 * A part whose standing in a slot is another than before: dominated now and not then, or the other way round.
 *
 * @param host the part, or the platform, that bears the slot
 * @param newly whether it is dominated now
 * @param verdict by what it is dominated, or was
 * @param standing an assembly that it heads and that nothing dominated, or dominates now; empty where none was bought or is
 */
public record AdviceShift(String platform, String host, String slot, String part, boolean newly, Verdict.Dominated verdict, Optional<Assembly> standing) implements Comparable<AdviceShift> {

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
