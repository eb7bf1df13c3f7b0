package fettle.space.best;

import fettle.catalog.BuildEntry;
import java.util.List;
import java.util.SortedMap;

/** A chain to be tried in a place of a build, and the whole assembly that it comes to. Each is itself alone. */
final class SwapTrial {

    /** A part of the chain, with the path at which it stands. */
    record Link(String part, String path) {}

    /** What is carried over from what hung on the old assembly: entries, and their old paths. */
    record Carried(List<BuildEntry> entries, List<String> paths) {}

    private final SwapPlace place;
    private final List<Link> links;
    private final List<BuildEntry> chain;
    private final Carried carried;
    private final List<String> lost;
    private final List<BuildEntry> assembly;
    private final SortedMap<String, String> to;

    SwapTrial(SwapPlace place, List<Link> links, List<BuildEntry> chain, Carried carried, List<String> lost, List<BuildEntry> assembly, SortedMap<String, String> to) {
        this.place = place;
        this.links = links;
        this.chain = chain;
        this.carried = carried;
        this.lost = lost;
        this.assembly = assembly;
        this.to = to;
    }

    SwapPlace place() {
        return place;
    }

    /** The parts of the chain, the head first; none where the place is left empty. */
    List<Link> links() {
        return links;
    }

    /** The same as entries of a build. */
    List<BuildEntry> chain() {
        return chain;
    }

    Carried carried() {
        return carried;
    }

    /** The old paths of what falls off. */
    List<String> lost() {
        return lost;
    }

    /** The chain, what is carried over, and what they require. */
    List<BuildEntry> assembly() {
        return assembly;
    }

    /** The same by path within the place. */
    SortedMap<String, String> to() {
        return to;
    }
}
