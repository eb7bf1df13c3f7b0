package fettle.space;

import fettle.catalog.BuildEntry;
import fettle.catalog.SlotId;
import fettle.document.Origin;
import fettle.relation.Relations;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;

/** Finds the chains of adapters that take a part to where a build has put it in vain, and break nothing else there. */
public final class Detours {

    /** How many chains are tried on a build. */
    private static final int MOST_TRIED = 40;

    private static final Origin NOWHERE = Origin.startOf("");

    private final Relations relations;
    private final Chains chains;

    public Detours(Relations relations) {
        this.relations = relations;
        this.chains = new Chains(relations);
    }

    /** The shortest chains for the part of a violation of fit, at most {@code most} of them; none where each of them would clash with what else is in the build. */
    public List<Chain> of(BuildCheck check, Placement placement, List<Violation> broken, Violation misfit, int most) {
        int part = misfit.parts().get(0);
        SlotId slot = placement.slots().get(misfit.slots().get(0)).slot();
        List<Sign> before = broken.stream().map(violation -> Sign.of(placement, violation)).toList();
        return chains.shortest(slot, placement.parts().get(part).part(), MOST_TRIED).stream()
                .filter(chain -> harmless(check, Placement.of(relations, placement.platform(), entries(placement, part, chain)), before))
                .limit(most)
                .map(Chain::new)
                .toList();
    }

    /** A violation by what breaks what, wherever that stands. */
    private record Sign(String rule, List<String> parts) {

        static Sign of(Placement placement, Violation violation) {
            return new Sign(violation.rule(), violation.parts().stream()
                    .map(part -> part == Placement.PLATFORM ? placement.platform() : placement.parts().get(part).part()).sorted().toList());
        }
    }

    private static boolean harmless(BuildCheck check, Placement tried, List<Sign> before) {
        List<Sign> more = new ArrayList<>();
        check.violations(tried).stream().filter(violation -> !mendedByAdding(violation)).forEach(violation -> more.add(Sign.of(tried, violation)));
        before.forEach(more::remove);
        return more.isEmpty();
    }

    /** Whether a violation is of something that lacks, as a required slot that is empty does, or a need. */
    private static boolean mendedByAdding(Violation violation) {
        return violation.parts().isEmpty() || violation.data().get("serving") instanceof List<?> serving && !serving.isEmpty();
    }

    /** The build with the chain put in for the part, which stays with all that is on it at the chain's end. */
    private static List<BuildEntry> entries(Placement placement, int moved, List<Chains.Link> chain) {
        List<BuildEntry> entries = new ArrayList<>();
        List<String> seats = new ArrayList<>();
        for (Occurrence part : placement.parts()) {
            int host = placement.hostOf(part);
            String path = (host == Placement.PLATFORM ? "" : seats.get(host) + "/") + placement.slotOf(part).slot().slot();
            int position = part.entry().position();
            OptionalInt at = part.at();
            if (part.index() == moved) {
                for (int link = 1; link < chain.size(); link++) {
                    entries.add(new BuildEntry(path, position, chain.get(link - 1).part(), at, NOWHERE, NOWHERE));
                    path = path + ":" + position + "/" + chain.get(link).slot().slot();
                    position = 0;
                    at = OptionalInt.empty();
                }
            }
            entries.add(new BuildEntry(path, position, part.part(), at, NOWHERE, NOWHERE));
            seats.add(path + ":" + position);
        }
        return entries;
    }
}
