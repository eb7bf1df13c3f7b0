package fettle.space;

import fettle.document.Origin;
import java.util.Optional;

/**
 * That a build was judged in the catalog before a patch as if it named something by the id that this probably had there.
 *
 * @param written the id in the build
 * @param former the id in the old catalog
 * @param origin where the build first writes it
 */
public record FormerName(String written, String former, Optional<Origin> origin) implements Computed {}
