package fettle.space;

import fettle.relation.Clause;
import fettle.relation.Term;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import java.util.Optional;

/**
 * Tells of a clause about parts that have one place each, if any, whether a build can break it and keep all else, by going through all that must be filled besides. What
 * need not be filled can only break more, so that nothing is missed by leaving it empty.
 */
final class OnePlace {

    /** In how many ways parts may meet the conditions, and how many builds may be tried for all clauses on all platforms. */
    private static final int MOST_WAYS = 64;
    private static final int MOST_TRIED = 20_000;

    private final Terrain terrain;
    private final TermMembers members;
    private final Trials.Patience patience = new Trials.Patience(MOST_TRIED);

    OnePlace(Terrain terrain, TermMembers members) {
        this.terrain = terrain;
        this.members = members;
    }

    /**
     * Whether a build of a platform can; empty where that isn't told.
     *
     * @param without relations that need not be kept, the clause among them
     */
    Optional<Boolean> breaks(Trials trials, Clause clause, BitSet without) {
        if (!clause.need().isEmpty()) {
            return Optional.empty();
        }
        List<List<Trials.Place>> ways = List.of(List.of());
        for (Term term : clause.when()) {
            Optional<List<Trials.Place>> places = places(trials, term);
            if (places.isEmpty() || (long) ways.size() * places.get().size() > MOST_WAYS) {
                return Optional.empty();
            }
            ways = ways.stream().flatMap(way -> places.get().stream().filter(place -> !clause.apart() || !way.contains(place)).map(place -> {
                List<Trials.Place> longer = new ArrayList<>(way);
                longer.add(place);
                return longer;
            })).toList();
        }
        boolean told = true;
        for (List<Trials.Place> way : ways) {
            Optional<Boolean> found = trials.alone(way, without, patience);
            if (found.orElse(false)) {
                return found;
            }
            told &= found.isPresent();
        }
        return told ? Optional.of(false) : Optional.empty();
    }

    /** Where whatever meets a term stands, if anywhere; empty where something may stand in several places. */
    private Optional<List<Trials.Place>> places(Trials trials, Term term) {
        if (members.slots(term).length > 0) {
            return Optional.empty();
        }
        List<Trials.Place> places = new ArrayList<>();
        for (int host : members.hosts(term)) {
            if (host == trials.platform() && term.sort() != Term.Sort.NAME) {
                places.add(Trials.Place.PLATFORM);
            } else if (terrain.isPart(host) && trials.reaches(host)) {
                if (!trials.once(host, room -> room.most() <= 1)) {
                    return Optional.empty();
                }
                places.add(new Trials.Place(trials.places(host).get(0), host));
            }
        }
        return Optional.of(places);
    }
}
