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

    // Written out, since linking what would be generated takes a while in each run, and every run asks for this.
    @Override
    public boolean equals(Object other) {
        return other instanceof Told that && fact.equals(that.fact) && where.equals(that.where) && premises.equals(that.premises);
    }

    @Override
    public int hashCode() {
        return 31 * fact.hashCode() + where.hashCode();
    }
}
