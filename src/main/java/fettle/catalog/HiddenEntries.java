package fettle.catalog;

import fettle.document.Document;
import fettle.document.DocumentProblem;
import fettle.document.Nearest;
import fettle.document.Node;
import fettle.document.SchemaProblem;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * Finds documents that hold entries, or slots, mounts and tags of hosts, which can't be read as what others name: where the document itself can't be read, under a misspelt
 * section, in no list, without an id, for a slot with one that can be none, or for an offer without a price or a barter.
 */
public final class HiddenEntries {

    private static final List<String> ID = List.of("id");
    /** The steps to an entry, the empty one before the first slash included: a section, and a place in it. */
    private static final int ENTRY = 3;

    private static final Set<String> OTHERS = Set.of("$schema", "label", "note", "catalog");

    private static final String SLOTS = "slots";
    /** What others name, or hang on, in a part or platform. */
    private static final Set<String> OF_HOSTS = Set.of(SLOTS, "mounts", "tags");

    private static final Set<String> OF_SLOTS = Set.of("mounts", "accepts", "tags");

    private HiddenEntries() {}

    /** Whether slots, mounts or tags stand under a misspelt name. */
    public static boolean by(SchemaProblem problem) {
        return problem.meant().filter(OF_HOSTS::contains).isPresent();
    }

    /** Whether a document holds such. */
    public static boolean in(Document document) {
        return document.cutShort() || document.problems().stream().anyMatch(HiddenEntries::by) || inRoot(document);
    }

    /** Whether something was left out that may be an entry, and not a piece of one, or of what a catalog says of itself. */
    private static boolean by(DocumentProblem problem) {
        String[] steps = problem.origin().pointer().split("/");
        return steps.length <= ENTRY && (steps.length < 2 || !OTHERS.contains(steps[1]));
    }

    private static boolean inRoot(Document document) {
        return document.root().filter(Node.Obj.class::isInstance).map(root -> ((Node.Obj) root).members()).orElse(Map.of()).entrySet().stream()
                .anyMatch(member -> inSection(member.getKey(), member.getValue().value()));
    }

    private static boolean inSection(String name, Node value) {
        List<String> keys = Sections.KNOWN_BY.get(name);
        if (keys == null) {
            return !OTHERS.contains(name) && !Nearest.names(name, Sections.KNOWN_BY.keySet()).isEmpty();
        }
        boolean hosts = name.equals("parts") || name.equals("platforms");
        return !keys.isEmpty() && (inList(value, keys, hosts) || name.equals("offers") && unpriced(value));
    }

    private static boolean inList(Node value, List<String> keys, boolean hosts) {
        return !(value instanceof Node.Arr list)
                || list.items().stream().anyMatch(item -> !(item instanceof Node.Obj entry) || !keys.stream().allMatch(key -> named(entry, key)) || hosts && inHost(entry));
    }

    /** Whether an offer has nothing that it could be had for, so that it is no offer. */
    private static boolean unpriced(Node offers) {
        return offers instanceof Node.Arr list && list.items().stream().flatMap(offer -> Fields.of(offer).stream())
                .anyMatch(offer -> offer.amount("price").isEmpty() && offer.bartered("barter").isEmpty());
    }

    private static boolean inHost(Node.Obj host) {
        return host.members().entrySet().stream().filter(member -> OF_HOSTS.contains(member.getKey())).anyMatch(member -> {
            Node value = member.getValue().value();
            return member.getKey().equals(SLOTS) ? inList(value, ID, false) || inSlots(value) || misnamed(value) : !(value instanceof Node.Arr) || Fields.lacking(value);
        });
    }

    private static boolean inSlots(Node slots) {
        return Fields.items(slots).stream().flatMap(slot -> Fields.of(slot).stream())
                .anyMatch(slot -> OF_SLOTS.stream().flatMap(name -> slot.value(name).stream()).anyMatch(Fields::lacking));
    }

    /** Whether a slot has an id that can be none, so that it can't be named: whoever means it names it otherwise. */
    private static boolean misnamed(Node slots) {
        return Fields.items(slots).stream().flatMap(slot -> Fields.of(slot).stream()).flatMap(slot -> slot.text("id").stream()).anyMatch(id -> !NameForm.id(id));
    }

    private static boolean named(Node.Obj entry, String name) {
        return new Fields(entry).word(name).isPresent();
    }
}
