package fettle.document;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Checks what JSON Schema cannot say: that the points of a limit's threshold stand in order of rising x. */
final class RisingPoints {
    private RisingPoints() {}

    static List<SchemaProblem> check(Node root) {
        List<SchemaProblem> problems = new ArrayList<>();
        if (NodePaths.member(root, "limits").orElse(root) instanceof Node.Arr limits) {
            for (Node limit : limits.items()) {
                for (String bound : List.of("atLeast", "atMost")) {
                    NodePaths.member(limit, bound).flatMap(threshold -> NodePaths.member(threshold, "points"))
                            .ifPresent(points -> checkPoints(points, problems));
                }
            }
        }
        return problems;
    }

    private static void checkPoints(Node points, List<SchemaProblem> problems) {
        Optional<BigDecimal> last = Optional.empty();
        List<Node> items = points instanceof Node.Arr list ? list.items() : List.of();
        for (Node point : items) {
            if (!(point instanceof Node.Arr pair) || pair.items().size() != 2 || !(pair.items().get(0) instanceof Node.Num x)) {
                return;
            }
            if (last.isPresent() && x.value().compareTo(last.get()) <= 0) {
                problems.add(new SchemaProblem(x.origin(), "an x above " + last.get().toPlainString() + ", as x rises from point to point",
                        Words.describe(x), Optional.empty()));
            }
            last = Optional.of(x.value());
        }
    }
}
