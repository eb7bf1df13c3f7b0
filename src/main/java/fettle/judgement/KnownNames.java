package fettle.judgement;

import fettle.catalog.NameForm;
import fettle.catalog.Reference;
import fettle.catalog.SectionNoun;
import fettle.catalog.Selector;
import fettle.document.Nearest;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;

/**
 * All ids that a mention of one sort may use.
 *
 * @param others the ids that are taken by things of another sort, which share one space of ids with these: platforms beside parts, and parts beside platforms
 * @param other what those are, such as {@code a platform}
 * @param misnamed by an id that is mentioned and is not there, what was probably meant to have it
 * @param renamed by an id that a patch took away, the one that it probably goes by now; empty where no patch is looked at
 * @param selectable by the other sorts of things that a selector can name, what there is of them
 */
public record KnownNames(
        String space, Set<String> names, Set<String> others, String other, Map<String, Misnamed> misnamed, Map<String, String> renamed, SortedMap<String, Set<String>> selectable) {

    /** What this id probably is since a patch, as it is written where the old one stands; empty where it was not renamed. */
    public Optional<String> renamed(Reference wrong) {
        return Optional.ofNullable(renamed.get(wrong.id())).map(wrong::writing);
    }

    /** The names nearest to a wrong one that the schema takes, best first, as they are written where it stands; empty where none is near. */
    public Optional<List<String>> near(Reference wrong) {
        return Optional.of(Nearest.names(wrong.id(), names.stream().filter(name -> NameForm.fits(space, name) && !name.equals(renamed.get(wrong.id()))).toList()).stream().map(wrong::writing).toList()).filter(found -> !found.isEmpty());
    }

    /** The selectors that name something by exactly this id, which is only of another sort; empty where there are none, or no selector stands there. */
    public Optional<List<String>> selectors(Reference wrong) {
        return Optional.of(sections(wrong).stream().map(section -> Selector.naming(section, wrong.id())).toList()).filter(found -> !found.isEmpty());
    }

    /** What those name, such as {@code a kind}. */
    public Optional<List<String>> sorts(Reference wrong) {
        return Optional.of(sections(wrong).stream().map(section -> "a " + SectionNoun.of(section)).toList()).filter(found -> !found.isEmpty());
    }

    private List<String> sections(Reference wrong) {
        return wrong.selecting() ? selectable.keySet().stream().filter(section -> selectable.get(section).contains(wrong.id())).toList() : List.of();
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

    /** Whether a new one could have this id. */
    public boolean takes(String wrong) {
        return NameForm.fits(space, wrong);
    }

    /** What has this id, where something of another sort has it. */
    public Optional<String> taken(String wrong) {
        return Optional.of(other).filter(unused -> others.contains(wrong));
    }
}
