package fettle.catalog;

import java.util.Comparator;

/** Names a slot: the part or platform that bears it, and the slot's id there. */
public record SlotId(String host, String slot) implements Comparable<SlotId> {

    private static final Comparator<SlotId> ORDER = Comparator.comparing(SlotId::host).thenComparing(SlotId::slot);

    @Override
    public int compareTo(SlotId other) {
        return ORDER.compare(this, other);
    }

    // Written out, since linking what would be generated takes a while in each run, and every run asks for this.
    @Override
    public boolean equals(Object other) {
        return other instanceof SlotId that && slot.equals(that.slot) && host.equals(that.host);
    }

    @Override
    public int hashCode() {
        return 31 * host.hashCode() + slot.hashCode();
    }

    /** As written in reports: {@code host/slot}. */
    @Override
    public String toString() {
        return host + "/" + slot;
    }
}
