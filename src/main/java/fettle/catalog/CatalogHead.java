package fettle.catalog;

import fettle.document.Origin;
import java.util.Optional;

/** The {@code catalog} object: which catalog this is and which game version it describes. Dates are ISO text. */
public record CatalogHead(String id, String patch, String released, String currency, Optional<String> vocabulary, Origin origin) implements Fact {

    /** How findings name it. */
    public String subject() {
        return "catalog:" + id;
    }
}
