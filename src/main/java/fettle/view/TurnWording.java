package fettle.view;

import fettle.space.Exact;
import fettle.space.best.Turn;
import java.math.BigDecimal;
import java.util.Optional;

/** Tells by how much a total differs, or what it is where there is none on the other side. */
final class TurnWording {

    private TurnWording() {}

    static String of(Turn turn) {
        Optional<BigDecimal> size = turn.size();
        return size.map(Exact::text).orElseGet(() -> turn.before().isEmpty()
                ? Exact.text(turn.after().orElseThrow()) + " (where there was none)"
                : Exact.text(turn.before().orElseThrow()) + " (which would be gone)");
    }
}
