package fettle.judgement;

import fettle.catalog.Access;
import fettle.catalog.Catalog;
import java.util.ArrayList;
import java.util.List;

/** An access profile opens a vendor up to a tier. */
public record AccessTier(Access access, String vendor, int tier) {

    static List<AccessTier> of(Catalog catalog) {
        List<AccessTier> tiers = new ArrayList<>();
        catalog.access().values().forEach(access -> access.vendors().forEach((vendor, tier) -> tiers.add(new AccessTier(access, vendor, tier))));
        return tiers;
    }

    /** Where the profile names the vendor. */
    public String steps() {
        return "vendors/" + vendor;
    }
}
