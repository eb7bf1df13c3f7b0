package fettle.judgement;

import fettle.document.Nearest;
import java.util.Collection;
import java.util.List;

/** Finds the subjects of findings that the subject of a waiver was most probably meant to be. */
final class NearSubjects {

    private static final int MOST_OFFERED = 3;

    private NearSubjects() {}

    /**
     * The subjects of the same id, whatever sort of thing they are; or else those of the same sort with nearly that id, best first. A first word that two ids share, such as
     * a maker's name, makes them no more alike.
     */
    static List<String> of(String wrong, Collection<String> subjects) {
        String id = id(wrong);
        List<String> same = subjects.stream().filter(subject -> !subject.equals(wrong) && id(subject).equals(id)).sorted().limit(MOST_OFFERED).toList();
        if (!same.isEmpty()) {
            return same;
        }
        String sort = sort(wrong);
        List<String> alike = subjects.stream().filter(subject -> sort(subject).equals(sort)).map(NearSubjects::id).filter(other -> alike(id, other)).toList();
        return Nearest.names(id, alike).stream().map(sort::concat).toList();
    }

    private static boolean alike(String one, String other) {
        int word = firstWord(one);
        boolean shared = word > 0 && word == firstWord(other) && one.regionMatches(0, other, 0, word);
        return !shared || !Nearest.names(one.substring(word), List.of(other.substring(word))).isEmpty();
    }

    /** Where the rest begins; 0 where there is one word only. */
    private static int firstWord(String id) {
        for (int i = 0; i < id.length(); i++) {
            if ("-_./".indexOf(id.charAt(i)) >= 0) {
                return i + 1;
            }
        }
        return 0;
    }

    /** What stands before the id, with its colon; nothing where it is left out. */
    private static String sort(String subject) {
        return subject.substring(0, subject.indexOf(':') + 1);
    }

    private static String id(String subject) {
        return subject.substring(subject.indexOf(':') + 1);
    }
}
