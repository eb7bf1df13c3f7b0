package fettle.judgement;

import fettle.catalog.Part;
import fettle.space.BetweenRungs;
import java.util.List;

/**
 * A part that for some lenses lies between the rungs of the value ladder in every slot in which it can be bought and used.
 *
 * @param lenses their ids, in order
 * @param because for each lens where it lies, at least one
 */
public record MiddlePart(Part part, List<String> lenses, List<BetweenRungs> because) {

    public MiddlePart {
        lenses = List.copyOf(lenses);
        because = List.copyOf(because);
    }

    /** The slots in which it can be bought and used, in order. */
    public List<String> slots() {
        return because.stream().flatMap(each -> each.slots().stream()).map(Object::toString).distinct().sorted().toList();
    }

    /** Its assembly in the first of them. */
    public String shown() {
        return words(because.get(0).shown());
    }

    /** The rung below that. */
    public String lower() {
        return words(because.get(0).lower());
    }

    /** The rung above that. */
    public String upper() {
        return words(because.get(0).upper());
    }

    private static String words(BetweenRungs.Offer offer) {
        return Assemblies.words(offer.assembly());
    }
}
