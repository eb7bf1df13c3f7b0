package fettle.judgement;

import fettle.catalog.Build;
import fettle.catalog.Fact;
import fettle.catalog.FactList;
import fettle.document.Origin;
import fettle.space.ClosedList;
import fettle.space.Fraction;
import fettle.space.PathMove;
import fettle.space.best.Mainstay;
import fettle.space.best.Prospect;
import fettle.space.best.Swap;
import fettle.space.best.Turn;
import java.math.BigDecimal;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.function.BooleanSupplier;
import java.util.stream.Stream;

/**
 * What another assembly in one place of a build would do, as rules judge it.
 *
 * @param swap what it would be
 * @param bears tells whether it gives a valid build, keeps all role kinds of what is there, takes the build past no limit and keeps to the budget, which is found out when asked
 * @param place where the place is written
 * @param better by attribute, what gets better
 * @param worse by attribute, what gets worse
 * @param worth what the assembly there would cost to buy; empty where it is unobtainable
 * @param whole what the other would cost to buy as a whole, without what the build has and nobody sells
 * @param step what a point of the lens costs by it; empty where the lens gains nothing
 * @param going what a point of the lens usually costs; empty where nothing on offer tells
 * @param rank from 0, the place's alternatives by what the lens gains, then by price
 * @param thrift from 0, the place's alternatives by what they would cost as a whole, then by rank
 * @param currency in which prices are told
 * @param evidence tells what is stated that shows it
 */
public record Alternative(
        Build build, Prospect swap, BooleanSupplier bears, Origin place, SortedMap<String, Turn> better, SortedMap<String, Turn> worse,
        Optional<BigDecimal> worth, BigDecimal whole, Optional<Fraction> step, Optional<Fraction> going, int rank, int thrift, String currency,
        Evidence evidence) {

    public Alternative {
        better = Collections.unmodifiableSortedMap(new TreeMap<>(better));
        worse = Collections.unmodifiableSortedMap(new TreeMap<>(worse));
    }

    public String path() {
        return swap.path();
    }

    /** Whether it gives a valid build, serves as before, takes the build past no limit and keeps to the budget. Rules ask this last, since finding it out takes longest. */
    public boolean feasible() {
        return bears.getAsBoolean();
    }

    /** Whether no total gets worse. */
    public boolean faultless() {
        return worse.isEmpty();
    }

    /** Whether something gets better by at least what matters. */
    public boolean material() {
        return better.values().stream().anyMatch(Turn::matters);
    }

    /** Whether something gets worse by at least what matters. */
    public boolean harmful() {
        return worse.values().stream().anyMatch(Turn::matters);
    }

    /** Whether what must be bought costs no more than what is there would, or nothing. */
    public boolean evenly() {
        return swap.price().signum() == 0 || worth.map(cost -> swap.price().compareTo(cost) <= 0).orElse(false);
    }

    /** Whether a point of the lens costs less than it usually does. */
    public boolean bargain() {
        return step.isPresent() && going.isPresent() && step.get().compareTo(going.get()) < 0;
    }

    /** Whether a point of the lens costs no more than it usually does. */
    public boolean fair() {
        return step.isPresent() && going.isPresent() && step.get().compareTo(going.get()) <= 0;
    }

    /** Whether it would cost less as a whole than what is there. */
    public boolean thrifty() {
        return worth.map(cost -> whole.compareTo(cost) < 0).orElse(false);
    }

    public BigDecimal price() {
        return swap.price();
    }

    /** What would be saved by buying it in place of what is there. */
    public BigDecimal saved() {
        return worth.orElse(whole).subtract(whole);
    }

    /** What is there, in words. */
    public String from() {
        return Assemblies.words(swap.from());
    }

    /** What would be there, in words. */
    public String to() {
        return Assemblies.words(swap.to());
    }

    /** What would be there, by path within the place, where the head's own is empty. */
    public SortedMap<String, String> parts() {
        return swap.to();
    }

    /** What would be put there, in words that say where each part goes, where that is bought; {@code null} otherwise, so that what hangs on it is left unsaid. */
    public String bought() {
        return swap.to().isEmpty() || sources().isEmpty() ? null : evidence.put(swap);
    }

    /** The same where nothing has to be bought. */
    public String had() {
        return swap.to().isEmpty() || !sources().isEmpty() ? null : evidence.put(swap);
    }

    /** What would be taken out with nothing in its place, in words; {@code null} where something takes it. */
    public String removed() {
        return swap.to().isEmpty() ? from() : null;
    }

    /** The paths at which a stated notch must be left out then, or nothing. Only for what is feasible. */
    public Optional<List<String>> notchesDropped() {
        return swap.tried().map(Swap::notchesDropped).filter(paths -> !paths.isEmpty());
    }

    /** What is to be written at another path then, since parts behind one that is taken out of a list move up; or nothing. */
    public Optional<List<String>> movedUp() {
        return Optional.of(swap.to().isEmpty() ? ClosedList.moves(build, swap.path()) : List.<PathMove>of()).filter(moves -> !moves.isEmpty())
                .map(moves -> moves.stream().map(PathMove::words).toList());
    }

    /** By attribute, what elsewhere in the build keeps totals that would be worse by it alone; or nothing. */
    public Optional<SortedMap<String, Mainstay>> held() {
        return Optional.of(evidence.held(swap)).filter(held -> !held.isEmpty());
    }

    /** Where what must be bought is cheapest. */
    public List<Fact> offers() {
        return evidence.bought(swap);
    }

    /** The same by part, vendor and tier. */
    public List<String> sources() {
        return Evidence.sources(swap);
    }

    /** What is stated that shows what those parts cost that are there and would not be. */
    public List<Fact> worthShown() {
        return evidence.prices(swap.from().values().stream().filter(part -> !swap.to().containsValue(part)).toList());
    }

    /** The figures that show what gets better and worse, and what is kept by what. */
    public List<Fact> figures() {
        return new FactList().addAll(evidence.figures(Stream.concat(better.keySet().stream(), worse.keySet().stream()).sorted().toList(),
                List.of(swap.from().values(), swap.to().values()))).addAll(evidence.holding(swap, evidence.held(swap))).list();
    }

    /** By what the lens gains. */
    public List<Fact> terms() {
        return evidence.terms();
    }
}
