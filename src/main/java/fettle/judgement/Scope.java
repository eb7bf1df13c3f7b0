package fettle.judgement;

import java.util.Collection;
import java.util.Optional;
import java.util.Set;

/**
 * What findings are wanted on: everything in a catalog, or some things of it, so that less need be worked out.
 *
 * @param subjects the things as findings name them; empty where everything is wanted
 */
public record Scope(Optional<Set<String>> subjects) {

    /** Everything. */
    public static final Scope ALL = new Scope(Optional.empty());

    public Scope {
        subjects = subjects.map(Set::copyOf);
    }

    /** These things, such as {@code part:x}. */
    public static Scope of(Collection<String> subjects) {
        return new Scope(Optional.of(Set.copyOf(subjects)));
    }

    /** Whether something is in it; a slot or an offer of a part or platform is where that is. */
    public boolean takes(String subject) {
        return subjects.isEmpty() || subjects.get().stream().anyMatch(each -> concerns(subject, each));
    }

    private static boolean concerns(String subject, String thing) {
        String id = thing.substring(thing.indexOf(':') + 1);
        boolean host = thing.startsWith("part:") || thing.startsWith("platform:");
        return subject.equals(thing) || host && (subject.startsWith("slot:" + id + "/") || subject.startsWith("offer:" + id + "@"));
    }

    /** Whether something of a sort is in it. */
    boolean takesAny(String sort) {
        return subjects.isEmpty() || subjects.get().stream().anyMatch(each -> each.startsWith(sort + ":"));
    }
}
