package fettle.document;

import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;

/** Finds the known names that a wrong name was most probably meant to be. */
public final class Nearest {
    private static final int MOST_OFFERED = 3;

    /** Letters of the shortest piece of a word in which one of them counts for a slip. */
    private static final int SLIPPED = 4;

    /** Names longer than this were not meant for names, and comparing them would take long. */
    static final int LONGEST = 200;

    private Nearest() {}

    /**
     * Returns the known names nearest to the wrong one: best first, at most 3, none where nothing is near. Of equally near
     * names those of the same length come first, since letters are swapped more often than added, then alphabetical order
     * decides, so that the order of {@code known} does not matter.
     */
    public static List<String> names(String wrong, Collection<String> known) {
        if (wrong.length() > LONGEST) {
            return List.of();
        }
        // The distance is never less than the lengths differ by.
        List<String> alike = known.stream()
                .filter(name -> name.length() <= LONGEST && Math.abs(folded(name).length() - folded(wrong).length()) <= allowance(wrong, name)).toList();
        return guesses(wrong, alike).filter(guess -> guess.distance() <= allowance(wrong, guess.name())).limit(MOST_OFFERED).map(Guess::name).toList();
    }

    /** Names in the same order, however near they are. */
    static List<String> ordered(String wrong, Collection<String> names) {
        return guesses(wrong, names).map(Guess::name).toList();
    }

    private record Guess(String name, int distance) {}

    private static Stream<Guess> guesses(String wrong, Collection<String> known) {
        return known.stream()
                .distinct()
                .filter(name -> !name.equals(wrong))
                .map(name -> new Guess(name, distance(folded(wrong), folded(name))))
                .sorted(Comparator.comparingInt(Guess::distance)
                        .thenComparingInt(guess -> Math.abs(guess.name().length() - wrong.length()))
                        .thenComparing(Guess::name));
    }

    /** The word as one piece, without case. */
    static String joined(String word) {
        return folded(word).replaceAll("[-.]", "");
    }

    /**
     * Whether one word can be the other with a slip of the pen: the same but for case and the marks that join words, or but for one letter, or two in the wrong
     * order, in a piece of at least 4. Pieces that are shorter, and figures, are what words of a kind are told apart by: {@code type-a} is no slip of {@code type-b}.
     */
    public static boolean slip(String one, String other) {
        if (joined(one).equals(joined(other))) {
            return !one.equals(other);
        }
        String[] pieces = folded(one).split("[-.]");
        String[] others = folded(other).split("[-.]");
        if (pieces.length != others.length) {
            return false;
        }
        int slips = 0;
        for (int i = 0; i < pieces.length; i++) {
            if (!pieces[i].equals(others[i])) {
                boolean slight = Math.min(pieces[i].length(), others[i].length()) >= SLIPPED && distance(pieces[i], others[i]) == 1
                        && figures(pieces[i]).equals(figures(others[i]));
                slips += slight ? 1 : 2;
            }
        }
        return slips == 1;
    }

    private static String figures(String piece) {
        return piece.replaceAll("[^0-9]", "");
    }

    /** A third of the longer name may differ, at least one letter: {@code grp} is near {@code grip}, not near {@code kick}. */
    private static int allowance(String wrong, String name) {
        return Math.max(1, Math.max(wrong.length(), name.length()) / 3);
    }

    /** Case, and the mark that joins words, are slips that say nothing about which name was meant. */
    private static String folded(String name) {
        return name.toLowerCase(Locale.ROOT).replace('_', '-').replace(' ', '-');
    }

    /** Damerau-Levenshtein distance in which no piece is edited twice: insert, drop, change a letter, or swap two neighbours. */
    static int distance(String from, String to) {
        int[] beforeLast = new int[to.length() + 1];
        int[] last = new int[to.length() + 1];
        int[] row = new int[to.length() + 1];
        for (int j = 0; j <= to.length(); j++) {
            last[j] = j;
        }
        for (int i = 1; i <= from.length(); i++) {
            row[0] = i;
            for (int j = 1; j <= to.length(); j++) {
                int change = from.charAt(i - 1) == to.charAt(j - 1) ? 0 : 1;
                row[j] = Math.min(Math.min(last[j] + 1, row[j - 1] + 1), last[j - 1] + change);
                if (i > 1 && j > 1 && from.charAt(i - 1) == to.charAt(j - 2) && from.charAt(i - 2) == to.charAt(j - 1)) {
                    row[j] = Math.min(row[j], beforeLast[j - 2] + 1);
                }
            }
            int[] spare = beforeLast;
            beforeLast = last;
            last = row;
            row = spare;
        }
        return last[to.length()];
    }
}
