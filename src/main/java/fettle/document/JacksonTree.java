package fettle.document;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.util.Map;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;

/** Turns located nodes into the nodes that the schema validator takes. Built by hand: setting up an object mapper costs more than a whole check. */
final class JacksonTree {
    private static final JsonNodeFactory NODES = JsonNodeFactory.instance;
    private static final BigDecimal LEAST_INT = BigDecimal.valueOf(Integer.MIN_VALUE);
    private static final BigDecimal GREATEST_INT = BigDecimal.valueOf(Integer.MAX_VALUE);

    private JacksonTree() {}

    static JsonNode of(Node node) {
        if (node instanceof Node.Obj object) {
            ObjectNode result = NODES.objectNode();
            for (Map.Entry<String, Node.Member> member : object.members().entrySet()) {
                result.set(member.getKey(), of(member.getValue().value()));
            }
            return result;
        } else if (node instanceof Node.Arr list) {
            ArrayNode result = NODES.arrayNode(list.items().size());
            list.items().forEach(item -> result.add(of(item)));
            return result;
        } else if (node instanceof Node.Text text) {
            return NODES.stringNode(text.value());
        } else if (node instanceof Node.Num number) {
            return of(number.value());
        } else if (node instanceof Node.Bool bool) {
            return NODES.booleanNode(bool.value());
        }
        return NODES.nullNode();
    }

    /** A whole number is one however it is written: 2.0 and 2e0 are 2. */
    private static JsonNode of(BigDecimal value) {
        if (value.signum() != 0 && value.stripTrailingZeros().scale() > 0) {
            return NODES.numberNode(value);
        }
        BigInteger whole = value.toBigIntegerExact();
        boolean small = value.compareTo(LEAST_INT) >= 0 && value.compareTo(GREATEST_INT) <= 0;
        return small ? NODES.numberNode(whole.intValueExact()) : NODES.numberNode(whole);
    }
}
