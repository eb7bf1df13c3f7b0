package fettle.judgement;

import fettle.space.Change;
import fettle.space.EntryName;
import fettle.space.patch.FitGroup;
import fettle.space.patch.FitShift;
import java.util.List;
import java.util.Optional;

/** Fits lost or gained for one cause, as patch rules match them. */
public record FitsTurned(FitGroup group) {

    private static final int MOST_CAUSES = 12;

    /** Whether they were lost. */
    public boolean lost() {
        return group.lost();
    }

    /** Whether a part, a host or a slot as a whole came or went with them. */
    public boolean entries() {
        return group.entries();
    }

    /** How many fits. */
    public int count() {
        return group.fits().size();
    }

    /** How many, in words. */
    public String counted() {
        return (count() == 1 ? "1 fit is " : count() + " fits are ") + (lost() ? "lost" : "gained");
    }

    /** The one entry that was changed, or else what the fits went by. */
    public String subject() {
        List<EntryName> entries = group.causes().stream().map(Change::entry).distinct().toList();
        return entries.size() == 1 ? entries.get(0).subject() : "fits:" + String.join("+", group.by());
    }

    /** Which parts in which slots. */
    public FitSets sets() {
        return FitSets.of(group.fits());
    }

    /** The same, where it takes several sets to tell. */
    public Optional<FitSets> several() {
        return Optional.of(sets()).filter(found -> found.sets().size() > 1);
    }

    /** The parts, where all of them are meant in all of the slots. */
    public Optional<List<String>> all() {
        return several().isPresent() ? Optional.empty() : Optional.of(parts());
    }

    /** The parts, each once. */
    public List<String> parts() {
        return group.fits().stream().map(FitShift::part).distinct().sorted().toList();
    }

    /** The slots, each once. */
    public List<String> slots() {
        return group.fits().stream().map(fit -> fit.slot().toString()).distinct().sorted().toList();
    }

    /** The differences that did it; where one thing was done to many entries, the first of them. */
    public List<Change> causes() {
        return group.causes().subList(0, Math.min(MOST_CAUSES, group.causes().size()));
    }
}
