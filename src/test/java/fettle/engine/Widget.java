package fettle.engine;

import java.math.BigDecimal;
import java.util.List;

/**
 * A fact for the tests of the engine.
 *
 * <p>A record, as all facts are.
 */
public record Widget(String id, String kind, BigDecimal mass, List<String> tags) {
}
