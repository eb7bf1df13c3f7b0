package fettle.judgement;

import fettle.catalog.Build;
import fettle.catalog.CatalogHead;
import java.util.Optional;

/** The patch that a build was written for, beside the catalog's. */
public record BuildPatch(Build build, String patch, CatalogHead head) {

    /** The patch that the catalog describes. */
    public String current() {
        return head.patch();
    }

    /** The catalog's patch, where that is the later one. */
    public Optional<String> passed() {
        return Optional.of(current()).filter(now -> Patches.compare(now, patch) >= 0);
    }

    /** The build's patch, where the catalog is behind it. */
    public Optional<String> ahead() {
        return Optional.of(patch).filter(written -> Patches.compare(current(), written) < 0);
    }
}
