package fettle.judgement;

import fettle.space.Folded;
import fettle.space.Landscape;
import fettle.space.Undecided;
import java.util.SortedMap;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;

/**
 * The platforms of whose valid builds too little is known to compare anything on them.
 *
 * @param platforms by id, why that is so
 * @param parts what they lead to, of which nothing can be said that is to hold everywhere
 */
record Obscure(SortedMap<String, Undecided> platforms, SortedSet<String> parts) {

    static Obscure of(Landscape landscape) {
        SortedMap<String, Undecided> platforms = new TreeMap<>();
        SortedSet<String> parts = new TreeSet<>();
        for (Folded folded : landscape.folded().values()) {
            folded.undecided().ifPresent(why -> {
                platforms.put(folded.platform(), why);
                parts.addAll(landscape.reachable(folded.platform()));
            });
        }
        return new Obscure(platforms, parts);
    }

    /** Whether some such platform may hold both. */
    boolean both(String one, String other) {
        return parts.contains(one) && parts.contains(other);
    }
}
