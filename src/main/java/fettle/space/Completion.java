package fettle.space;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import java.util.function.Predicate;

/**
 * Fills what must be filled in a trial in every way that breaks nothing for good, so long as there is patience: changing one thing at a time finds no way where several
 * choices hang on each other. The slot with the fewest choices left is filled first.
 */
final class Completion {

    private static final int NOWHERE = Integer.MIN_VALUE;

    private final Terrain terrain;
    private final Breaches breaches;
    private final Trials trials;
    private final Trials.Patience patience;
    private final BitSet spared;
    private final Predicate<Trial> suits;
    private boolean open;

    /**
     * For trials on one platform.
     *
     * @param patience bounds how often a choice is tried
     * @param spared relations that may be broken
     * @param suits whether a trial in which all is filled is what is sought
     */
    Completion(Terrain terrain, Breaches breaches, Trials trials, Trials.Patience patience, BitSet spared, Predicate<Trial> suits) {
        this.terrain = terrain;
        this.breaches = breaches;
        this.trials = trials;
        this.patience = patience;
        this.spared = spared;
        this.suits = suits;
    }

    /** Whether a way was found that suits; the trial is then filled so, and as it was otherwise. */
    boolean of(Trial trial) {
        int bearer = NOWHERE;
        int fewestIn = NOWHERE;
        List<Integer> fewest = List.of();
        for (int placed = Trial.ROOT; placed < trial.size(); placed++) {
            for (int slot : trials.demanding(trial.number(placed))) {
                if (trial.in(placed, slot) < 0) {
                    List<Integer> choices = choices(trial, placed, slot);
                    if (choices.isEmpty()) {
                        return false;
                    }
                    if (bearer == NOWHERE || choices.size() < fewest.size()) {
                        bearer = placed;
                        fewestIn = slot;
                        fewest = choices;
                    }
                }
            }
        }
        if (bearer == NOWHERE) {
            boolean found = suits.test(trial);
            // What it lacks may be put where nothing must be.
            open |= !found;
            return found;
        }
        int size = trial.size();
        for (int part : fewest) {
            trials.placed(trial, bearer, fewestIn, part);
            if (of(trial)) {
                return true;
            }
            trial.shrink(size);
        }
        return false;
    }

    /** Whether there may be a way that suits though none was found. */
    boolean open() {
        return open || patience.tries <= 0;
    }

    /** What may be put into a slot for now; none once patience is spent. */
    private List<Integer> choices(Trial trial, int bearer, int slot) {
        int size = trial.size();
        open |= trials.full(trial);
        List<Integer> choices = new ArrayList<>();
        for (int part : terrain.candidates()[slot]) {
            if (!trials.hollow(part) && patience.tries > 0 && trials.placed(trial, bearer, slot, part)) {
                patience.tries--;
                if (!breaches.forGood(trial, spared)) {
                    choices.add(part);
                }
                trial.shrink(size);
            }
        }
        return choices;
    }
}
