package fettle.judgement;

import java.math.BigInteger;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Orders the names of game versions: runs of digits by their number, all else by its letters, so that 1.10 comes after 1.9. */
final class Patches {

    private static final Pattern RUN = Pattern.compile("\\d+|\\D+");

    private Patches() {}

    static int compare(String one, String other) {
        Matcher left = RUN.matcher(one);
        Matcher right = RUN.matcher(other);
        while (true) {
            boolean more = left.find();
            boolean otherMore = right.find();
            if (!more || !otherMore) {
                return Boolean.compare(more, otherMore);
            }
            int compared = compareRuns(left.group(), right.group());
            if (compared != 0) {
                return compared;
            }
        }
    }

    private static int compareRuns(String one, String other) {
        boolean numbers = Character.isDigit(one.charAt(0)) && Character.isDigit(other.charAt(0));
        return numbers ? new BigInteger(one).compareTo(new BigInteger(other)) : one.compareTo(other);
    }
}
