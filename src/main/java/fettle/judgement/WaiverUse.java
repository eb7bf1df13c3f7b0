package fettle.judgement;

import fettle.catalog.Waiver;
import java.util.List;
import java.util.Optional;

/**
 * What became of a waiver when its catalog was judged.
 *
 * @param judged whether findings of its rule are drawn on a catalog by itself, and not only on builds or patches, and nothing unread keeps one on its subject from it
 * @param vain whether its rule tells what a patch changes, which no waiver accepts
 * @param used whether a finding of its rule and subject was drawn
 * @param elsewhere whether findings of its rule have its subject among the places to look at, but are about others
 * @param expired whether the catalog has reached the patch that ends it
 * @param patch the patch that the catalog describes
 * @param near of the subjects of findings of its rule that no waiver accepts, those told elsewhere of its own, or nearest to it; empty where none is near, or its own is among them
 * @param covered where none is near, the same of those that another waiver accepts; empty where none is near either
 * @param copied an earlier waiver in force that accepts the same, if there is one
 * @param doubt the documents of which something that the finding may hang on could not be read; empty where there are none
 */
public record WaiverUse(
        Waiver waiver, boolean judged, boolean vain, boolean used, boolean elsewhere, boolean expired, String patch, Optional<List<String>> near, Optional<List<String>> covered,
        List<Waiver> copied, Optional<List<String>> doubt) {

    /** Whether its subject has a blank at one of its ends, which no subject of a finding has. */
    public boolean blank() {
        return !waiver.subject().equals(waiver.subject().strip());
    }
}
