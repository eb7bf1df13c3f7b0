package fettle.judgement;

import fettle.document.Origin;
import fettle.space.Undecided;
import java.util.List;

/**
 * What could not be decided with the work that the program allows itself.
 *
 * @param subject what it is about, such as {@code platform:x}
 * @param origin where that stands
 * @param question what is left open, in words that follow "whether" and that what it is {@code about} follows
 */
public record LeftOpen(String subject, Origin origin, String question, List<String> about, Undecided undecided) {

    public LeftOpen {
        about = List.copyOf(about);
    }

    /** What took the work; the subject where that is not known. */
    public String at() {
        return undecided.at().isEmpty() ? subject : undecided.at();
    }
}
