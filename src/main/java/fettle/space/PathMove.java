package fettle.space;

/**
 * A part that stays where it is and is written at another path.
 *
 * @param from the path before, as builds write it
 * @param to the path from then on
 */
public record PathMove(String from, String to) {

    /** In words, such as {@code what is at deck:2/jaw at deck:1/jaw}, which is to be written. */
    public String words() {
        return "what is at " + from + " at " + to;
    }
}
