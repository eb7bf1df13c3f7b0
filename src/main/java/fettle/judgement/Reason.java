package fettle.judgement;

import fettle.catalog.Fact;
import fettle.document.Origin;
import fettle.space.Computed;
import java.util.Optional;

/** One fact that a finding rests on: stated in a document, or computed from relations. */
public sealed interface Reason {

    /** Something a document states. */
    record Stated(Fact fact) implements Reason {}

    /** Something that was computed. */
    record Derived(Computed result) implements Reason {}

    /** Where it stands, where it stands anywhere. */
    default Optional<Origin> origin() {
        return this instanceof Stated stated ? Optional.of(stated.fact().origin()) : ((Derived) this).result().origin();
    }
}
