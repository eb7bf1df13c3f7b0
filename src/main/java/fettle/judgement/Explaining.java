package fettle.judgement;

import fettle.catalog.Catalog;
import fettle.catalog.SlotId;
import fettle.space.Cause;
import fettle.space.Space;
import fettle.space.Together;
import java.util.List;
import java.util.function.Supplier;

/** Asks why things are in no valid build, of the less of them the larger the catalog is; for what is waived nobody asks. */
final class Explaining {

    /** How many things are explained in any catalog. */
    private static final int FEWEST = 12;

    /** Each takes a search of its own, which takes the longer the more parts there are: of so many parts in all, whatever their number. */
    private static final int PARTS = 30_000;

    private final Space space;
    private final Waivers waivers;
    private final Scope scope;
    private final int most;
    private int asked;

    /** One for the things of which something is wanted. */
    Explaining(Space space, Catalog catalog, Scope scope) {
        this.scope = scope;
        this.space = space;
        this.waivers = new Waivers(catalog);
        this.most = Math.max(FEWEST, PARTS / Math.max(1, catalog.parts().size()));
    }

    /** Why a platform is void; nothing where that was not asked. */
    List<Cause> platform(String platform, String subject) {
        return why("void-platform", subject, () -> space.together(platform, List.of()));
    }

    /** Why a part is dead on a platform; nothing where that was not asked. */
    List<Cause> part(String platform, String part, String subject) {
        return why("dead-part", subject, () -> space.together(platform, List.of(part)));
    }

    /** Why a slot is dead on a platform; nothing where that was not asked. */
    List<Cause> slot(String platform, SlotId slot) {
        return why("dead-slot", "slot:" + slot, () -> space.inUse(platform, slot));
    }

    private List<Cause> why(String rule, String subject, Supplier<Together> answer) {
        if (asked >= most || !scope.takes(subject) || waivers.accept(rule, subject)) {
            return List.of();
        }
        asked++;
        return answer.get() instanceof Together.Impossible impossible ? impossible.because() : List.of();
    }
}
