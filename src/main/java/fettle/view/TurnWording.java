package fettle.view;

import fettle.space.Exact;
import fettle.space.best.Mainstay;
import fettle.space.best.Turn;
import java.math.BigDecimal;
import java.util.Optional;

/** Tells by how much a total differs, or what it is where there is none on the other side; and what keeps one from differing. */
final class TurnWording {

    private TurnWording() {}

    static String of(Turn turn) {
        Optional<BigDecimal> size = turn.size();
        return size.map(Exact::text).orElseGet(() -> turn.before().isEmpty()
                ? Exact.text(turn.after().orElseThrow()) + " (where there was none)"
                : Exact.text(turn.before().orElseThrow()) + " (which would be gone)");
    }

    /** What follows "as long as". */
    static String of(Mainstay mainstay) {
        String parts = Phrases.or(Phrases.each(mainstay.parts().entrySet(), part -> part.getValue() + " at " + part.getKey()));
        return parts + " keeps " + mainstay.attribute().id() + " at " + Exact.text(mainstay.total());
    }
}
