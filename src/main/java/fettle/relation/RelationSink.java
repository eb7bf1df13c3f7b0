package fettle.relation;

import fettle.catalog.Fact;
import fettle.catalog.Slot;
import fettle.catalog.SlotId;
import java.util.Collection;
import java.util.List;

/**
 * What relation rules call. Each call states one relation; saying the same twice is saying it once.
 *
 * <p>Every method takes the name of the rule that speaks, which becomes the name of the finding that a build draws by breaking the relation.
 */
public interface RelationSink {

    /** All slots of a shape fit all parts of a shape. */
    void fits(String rule, int slotShape, int partShape, String by);

    /** One slot fits one part. */
    void fits(String rule, SlotId slot, String part, String by);

    /** One slot never fits one part, whatever else is said. */
    void bars(String rule, SlotId slot, String part, Fact because);

    /** Parts that would fit all slots of a shape are kept out by a name. */
    void refuses(String rule, int slotShape, int partShape, String name);

    /** All slots of a shape turn parts of a shape away by a name, whether or not these would fit otherwise. */
    void rejects(String rule, int slotShape, int partShape, String name);

    /** The slot holds at most so many parts. */
    void holds(String rule, Slot slot, int most);

    /** The spans of the slot's parts sum to at most so many notches. */
    void length(String rule, Slot slot, int notches);

    /** Stated first notches are kept, inside so many notches. */
    void places(String rule, Slot slot, int notches);

    /** The slot holds no part twice. */
    void distinct(String rule, Slot slot);

    /** The slot holds at least one part. */
    void filled(String rule, Slot slot);

    /** The part takes so many notches of a slot that is measured; 1 where nothing is said. */
    void span(String part, int notches);

    /** The part may not stand below itself. */
    void noReentry(String rule, String part);

    /** A part (or the platform, for groups) belongs to a term of sort NAME or GROUP. */
    void member(Term term, String part, Fact because);

    /** A slot, when in use, belongs to a term of sort SLOT. */
    void member(Term term, SlotId slot, Fact because);

    /** These together need one of those; see {@link Clause}. */
    void clause(String rule, List<Term> when, List<Term> need, boolean apart, List<? extends Fact> because);

    /** A part narrows a trait to these values. */
    void agreement(String rule, String trait, String part, Collection<String> values, Fact because);
}
