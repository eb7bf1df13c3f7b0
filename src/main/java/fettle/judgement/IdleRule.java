package fettle.judgement;

import fettle.catalog.Fact;
import fettle.document.Origin;
import java.util.List;

/**
 * A rule of a catalog that rules nothing out.
 *
 * @param subject what it is about: the part that states it, or {@code zone:x}, {@code trait:x}, {@code constraint:x}
 * @param origin where it stands
 * @param sort {@code exclusion}, {@code block}, {@code zone}, {@code trait} or {@code constraint}
 * @param name what it names
 * @param why why nothing is ruled out, in words that follow a colon
 * @param because the entries that state it
 */
public record IdleRule(String subject, Origin origin, String sort, String name, String why, List<Fact> because) {

    public IdleRule {
        because = List.copyOf(because);
    }

    /** It in words that follow "the". */
    public String what() {
        return switch (sort) {
            case "exclusion" -> "exclusion of " + name;
            case "block" -> "block on slots tagged " + name;
            default -> sort + " " + name;
        };
    }
}
