package fettle.view;

import fettle.document.Origin;
import java.util.List;
import java.util.Optional;

/**
 * A reason put into words.
 *
 * @param fact one sentence, without a full stop
 * @param where where a document says so; empty for what was computed
 * @param premises what it follows from
 */
public record Told(String fact, Optional<Origin> where, List<Told> premises) {

    public Told {
        premises = List.copyOf(premises);
    }
}
