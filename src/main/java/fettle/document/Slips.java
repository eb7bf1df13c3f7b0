package fettle.document;

import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * Finds the words of which another can be a slip, without comparing it with each. Two words that are one letter apart, or have two neighbours swapped, are the same
 * with one letter left out of each, or of one of them, so that words are looked up by what is left of them then.
 */
public final class Slips {

    private final Map<String, List<String>> byRest = new HashMap<>();

    /** Prepares the words to be looked up. */
    public Slips(Collection<String> words) {
        for (String word : words) {
            for (String rest : rests(word)) {
                byRest.computeIfAbsent(rest, unused -> new ArrayList<>(1)).add(word);
            }
        }
    }

    /** The words of which one can be a slip, as {@link Nearest#slip} has it, nearest first. */
    public List<String> of(String word) {
        Set<String> found = new HashSet<>();
        for (String rest : rests(word)) {
            byRest.getOrDefault(rest, List.of()).stream().filter(other -> Nearest.slip(word, other)).forEach(found::add);
        }
        return found.size() < 2 ? List.copyOf(found) : Nearest.ordered(word, found);
    }

    /** The word in one piece, and what is left of that without each of its letters; nothing of what is too long to be a name. */
    private static Set<String> rests(String word) {
        if (word.length() > Nearest.LONGEST) {
            return Set.of();
        }
        String joined = Nearest.joined(word);
        Set<String> rests = new HashSet<>();
        rests.add(joined);
        for (int i = 0; i < joined.length(); i++) {
            rests.add(joined.substring(0, i) + joined.substring(i + 1));
        }
        return rests;
    }
}
