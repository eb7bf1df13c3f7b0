package fettle.space;

/** Of two offers of a part, the one that asks for more costs more. */
public record Undercut(PricedOffer dear, PricedOffer easy) {

    /** The easier one's place among the part's offers, the cheapest being 0. */
    public int rank() {
        return easy.rank();
    }
}
