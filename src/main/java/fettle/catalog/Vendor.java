package fettle.catalog;

import fettle.document.Origin;

/** A seller; {@code tiers} counts its standing tiers, 0 for an open market, {@link #UNREAD} where their number is not written as it has to be. */
public record Vendor(String id, String label, int tiers, Origin origin) implements Fact {

    /** More tiers than anyone can have, so that none that is named counts as one too many. */
    public static final int UNREAD = Integer.MAX_VALUE;
    /** The most tiers that a vendor can have, as the schema has it. */
    static final int MOST_TIERS = 1_000;

    /** Whether it is known how many standing tiers there are. */
    public boolean counted() {
        return tiers != UNREAD;
    }
}
