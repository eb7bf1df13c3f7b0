package fettle.judgement;

import fettle.catalog.BuildEntry;
import fettle.catalog.SectionNoun;
import fettle.space.BuildResult;
import fettle.space.Change;
import fettle.space.Exact;
import fettle.space.FormerName;
import fettle.space.PathMove;
import fettle.space.Unresolved;
import fettle.space.Violation;
import fettle.space.patch.BuildShift;
import fettle.space.patch.FigureShift;
import fettle.space.patch.LimitCrossing;
import fettle.space.patch.PathChange;
import fettle.space.patch.RenamedUse;
import fettle.space.patch.Repair;
import fettle.space.patch.RepairOutcome;
import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * A build with what a patch did to it, as patch rules match it.
 *
 * @param file the file that it stands in
 */
public record PatchedBuild(String file, BuildShift shift) {

    /** The build's id. */
    public String id() {
        return shift.build().id();
    }

    /** How findings name it. */
    public String subject() {
        return shift.build().subject();
    }

    /** Whether it broke, as far as can be told. */
    public boolean broken() {
        return shift.broken() && !unjudged();
    }

    /** Whether it shifted, as far as can be told. */
    public boolean shifted() {
        return shift.shifted() && !unjudged();
    }

    /** Whether it rests on something that may stand in what could not be read of the new catalog. */
    public boolean unjudged() {
        return !shift.unread().isEmpty();
    }

    /** What seems gone so, such as {@code part x}. */
    public List<String> hidden() {
        return shift.unread().stream().map(change -> SectionNoun.of(change.entry().section()) + " " + change.entry().id()).toList();
    }

    /** What is wrong with it now, apart from names that lead nowhere. */
    public List<Violation> violations() {
        return shift.after().violations();
    }

    /** The entries of it that name what there is no longer. */
    public List<BuildEntry> unresolved() {
        return shift.after().placement().map(placement -> placement.unresolved().stream().map(Unresolved::entry).toList()).orElse(List.of());
    }

    /** Every difference that is to blame for its breaking, or for what moved. */
    public List<Change> blame() {
        Stream<Change> moving = Stream.concat(
                shift.figures().stream().flatMap(figure -> figure.blame().stream()), shift.crossings().stream().flatMap(crossing -> crossing.blame().stream()));
        return shift.shifted() ? moving.distinct().sorted().toList() : shift.blame();
    }

    /** What the differences behind its breaking are of, such as {@code x} for an entry that came or went, and {@code x.mounts}; empty where they cannot be told. */
    public Optional<List<String>> through() {
        return through(shift.blame());
    }

    /** What differences are of, named likewise. */
    static Optional<List<String>> through(List<Change> blame) {
        List<String> through = blame.stream().map(change -> change.entry().id() + (change.whole() ? "" : "." + change.what())).distinct().toList();
        return Optional.of(through).filter(names -> !names.isEmpty());
    }

    /** What moved: figures, such as {@code kick from 52 to 54.5}, where what has no value is {@code none} and a cost that isn't known {@code unknown}, and limits. */
    public List<String> moved() {
        Stream<String> figures = shift.figures().stream()
                .map(figure -> name(figure) + " from " + value(figure, figure.from(), shift.before()) + " to " + value(figure, figure.to(), shift.after()));
        return Stream.concat(figures, limits().stream()).toList();
    }

    private static String value(FigureShift figure, Optional<BigDecimal> value, BuildResult side) {
        return value.map(Exact::text).orElse(figure.cost() && !side.priced() ? "unknown" : "none");
    }

    /** The limits that were crossed, either way, and the new ones that it exceeds. */
    public List<String> limits() {
        return shift.crossings().stream().map(PatchedBuild::limit).toList();
    }

    private static String limit(LimitCrossing crossing) {
        String name = "limit " + crossing.limit().id();
        return crossing.added() ? "new " + name + " not kept" : name + (crossing.outward() ? " no longer kept" : " now kept");
    }

    private static String name(FigureShift figure) {
        return figure.cost() ? "cost" : figure.figure();
    }

    /** The ids that probably changed, such as {@code old-id, now new-id} or {@code slot old-id of host, now new-id}; empty where there are none. */
    public Optional<List<String>> renamed() {
        Stream<String> entries = shift.renamed().stream().filter(RenamedUse::old).map(use -> use.written() + ", now " + use.other());
        Stream<String> slots = shift.renamedSlots().stream().map(slot -> "slot " + slot.from() + " of " + slot.host().id() + ", now " + slot.to());
        return Optional.of(Stream.concat(entries, slots).toList()).filter(names -> !names.isEmpty());
    }

    /** What it names by ids that came with the patch, for which it was judged by the old ones before. */
    public List<FormerName> formerNames() {
        return shift.formerNames();
    }

    /** The steps of the nearest repair; empty where none was found. */
    public Optional<List<String>> repair() {
        return nearest().map(PatchedBuild::steps).filter(steps -> !steps.isEmpty());
    }

    /** What is written at another path first in the nearest repair, as slots go by other ids, such as {@code what is at rail at top-rail}; empty where nothing is. */
    public Optional<List<String>> rewritten() {
        return nearest().flatMap(repair -> moves(repair.rewritten()));
    }

    /** What the repaired build costs. */
    public Optional<BigDecimal> repairCost() {
        return nearest().flatMap(Repair::cost);
    }

    /** The limits that the repaired build doesn't keep, and the build kept before the patch; empty where there are none. */
    public Optional<List<String>> repairOutside() {
        Set<String> exceeded = shift.before().limits().stream().filter(margin -> !margin.holds()).map(margin -> margin.limit().id()).collect(Collectors.toSet());
        return nearest().map(repair -> repair.outside().stream().filter(limit -> !exceeded.contains(limit)).toList()).filter(limits -> !limits.isEmpty());
    }

    /** What is written at another path once it is repaired, such as {@code what is at deck:2/jaw at deck:1/jaw}; empty where nothing is. */
    public Optional<List<String>> repairMoves() {
        return nearest().flatMap(repair -> moves(repair.movedUp()));
    }

    private static Optional<List<String>> moves(List<PathMove> moves) {
        return Optional.of(moves.stream().map(PathMove::words).toList()).filter(told -> !told.isEmpty());
    }

    /** How many other repairs change as few paths. */
    public Optional<Integer> others() {
        return nearest().map(Repair::others);
    }

    /** The steps of the nearest repair that keeps every part there still is, where the nearest one does not. */
    public Optional<List<String>> keeping() {
        return shift.keeping().map(PatchedBuild::steps);
    }

    /** What is written at another path first in that repair; empty where nothing is. */
    public Optional<List<String>> keepingRewritten() {
        return shift.keeping().flatMap(repair -> moves(repair.rewritten()));
    }

    /** What is written at another path once it is repaired so; empty where nothing is. */
    public Optional<List<String>> keepingMoves() {
        return shift.keeping().flatMap(repair -> moves(repair.movedUp()));
    }

    /** How many paths any repair changes at least, where none was found with the work allowed. */
    public Optional<Integer> atLeast() {
        return shift.repair().flatMap(outcome -> outcome instanceof RepairOutcome.CutShort cut ? Optional.of(cut.atLeast()) : Optional.empty());
    }

    /** The platform, where no build of it is valid any more. */
    public Optional<String> unbuildable() {
        return shift.repair().flatMap(outcome -> outcome instanceof RepairOutcome.None none ? none.unbuildable() : Optional.empty());
    }

    private Optional<Repair> nearest() {
        return shift.repair().flatMap(outcome -> outcome instanceof RepairOutcome.Found found ? Optional.of(found.repair()) : Optional.empty());
    }

    private static List<String> steps(Repair repair) {
        return repair.steps().stream().map(PatchedBuild::step).toList();
    }

    private static String step(PathChange step) {
        return step.moved()
                ? step.path() + " to " + step.to().orElseThrow() + " without a stated notch"
                : step.path() + " from " + step.from().orElse("nothing") + " to " + step.to().orElse("nothing");
    }
}
