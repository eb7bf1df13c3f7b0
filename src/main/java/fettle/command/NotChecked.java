package fettle.command;

import fettle.document.Nearest;
import java.util.Collection;
import java.util.List;

/** Thrown where there is nothing that could be checked; the message tells a person why, and what to do. */
final class NotChecked extends RuntimeException {

    private static final long serialVersionUID = 1L;

    NotChecked(String message) {
        super(message);
    }

    /** The end of a sentence on a wrong name, which asks after the nearest that there are. */
    static String meant(String name, Collection<String> known) {
        List<String> near = Nearest.names(name, known);
        return near.isEmpty() ? "" : "; did you mean " + String.join(" or ", near) + "?";
    }
}
