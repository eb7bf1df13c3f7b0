package fettle.space;

import java.util.List;

/** A chain of fits as a reason: the parts from the slot outward. */
public record Chain(List<Chains.Link> links) implements Computed {

    public Chain {
        links = List.copyOf(links);
    }
}
