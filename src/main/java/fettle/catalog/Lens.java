package fettle.catalog;

import fettle.document.Origin;

import java.math.BigDecimal;
import java.util.List;
import java.util.Map;
import java.util.Objects;

/** What a player builds for: a weight above 0 by attribute. */
public record Lens(String id, String label, Map<String, BigDecimal> weights, Origin origin) implements Fact {

    /** What it weighs of these attributes and a value ladder does not, sorted by id. */
    public List<Attribute> leftOut(Map<String, Attribute> attributes) {
        return weights.keySet().stream().sorted().map(attributes::get).filter(Objects::nonNull).filter(attribute -> !attribute.addsUp()).toList();
    }
}
