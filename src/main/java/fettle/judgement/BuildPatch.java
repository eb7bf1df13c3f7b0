package fettle.judgement;

import fettle.catalog.Build;
import fettle.catalog.CatalogHead;

/** The patch that a build was written for, beside the catalog's. */
public record BuildPatch(Build build, String patch, CatalogHead head) {

    /** The patch that the catalog describes. */
    public String current() {
        return head.patch();
    }
}
