package fettle.judgement;

import fettle.catalog.NameForm;
import fettle.document.Nearest;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * All ids that a mention of one sort may use.
 *
 * @param others the ids that are taken by things of another sort, which share one space of ids with these: platforms beside parts, and parts beside platforms
 * @param other what those are, such as {@code a platform}
 * @param misnamed by an id that is mentioned and is not there, what was probably meant to have it
 */
public record KnownNames(String space, Set<String> names, Set<String> others, String other, Map<String, Misnamed> misnamed) {

    /** The names nearest to a wrong one that the schema takes, best first; empty where none is near. */
    public Optional<List<String>> near(String wrong) {
        return Optional.of(Nearest.names(wrong, names.stream().filter(name -> NameForm.fits(space, name)).toList())).filter(found -> !found.isEmpty());
    }

    /** The name that stands before a colon with no space behind it, which YAML takes for one word with what follows. */
    public Optional<String> stuck(String wrong) {
        return Optional.of(wrong.substring(0, Math.max(0, wrong.indexOf(':')))).filter(names::contains);
    }

    /** What was probably meant to have this id: several mention it, or the other's own can't be one. */
    public Optional<Misnamed> misnamed(String wrong) {
        return Optional.ofNullable(misnamed.get(wrong));
    }

    /** The same, where its own id is one. */
    public Optional<Misnamed> otherwiseNamed(String wrong) {
        return misnamed(wrong).filter(Misnamed::fit);
    }

    /** The same, where its own id can't be one. */
    public Optional<Misnamed> unfit(String wrong) {
        return misnamed(wrong).filter(entry -> !entry.fit());
    }

    /** What has this id, where something of another sort has it. */
    public Optional<String> taken(String wrong) {
        return Optional.of(other).filter(unused -> others.contains(wrong));
    }
}
