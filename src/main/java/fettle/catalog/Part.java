package fettle.catalog;

import fettle.document.Origin;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * A part, or a platform (a part without mounts at the root of builds).
 *
 * @param kind empty only for a platform that names none
 * @param span notches taken on a slot measured in units, at least 1
 * @param factory the build a platform comes with; empty for parts
 */
public record Part(
        String id,
        String label,
        boolean platform,
        Optional<String> kind,
        List<HasMount> mounts,
        Map<String, Stat> stats,
        Map<String, Stat> loaded,
        List<Slot> slots,
        int span,
        List<HasName> names,
        List<DeclaresTrait> traits,
        List<ClaimsZone> claims,
        List<BlocksTag> blocks,
        List<Excludes> excludes,
        List<Needs> needs,
        List<BuildEntry> factory,
        Origin origin)
        implements Fact {

    /** Whether it has slots. */
    public boolean bearing() {
        return !slots.isEmpty();
    }

    /** Whether its id is one that offers and others can name. */
    public boolean nameable() {
        return NameForm.id(id);
    }

    /** How findings name it: {@code part:x} or {@code platform:x}. */
    public String subject() {
        return (platform ? "platform:" : "part:") + id;
    }
}
