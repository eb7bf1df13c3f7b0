package fettle.judgement;

import fettle.catalog.Build;
import fettle.catalog.Fact;
import fettle.catalog.FactList;
import fettle.document.Origin;
import fettle.space.best.Mainstay;
import fettle.space.best.Prospect;
import fettle.space.worth.Standing;
import java.math.BigDecimal;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * How the assembly in one place of a build stands among all that give a valid build there, by what they would cost and what the lens gains.
 *
 * @param from what is there
 * @param standing where it stands
 * @param below the nearest rung that costs less
 * @param above the nearest rung that costs more
 */
public record Midway(Build build, String path, Origin place, SortedMap<String, String> from, Standing standing, Rung below, Rung above, Evidence evidence) {

    /**
     * A rung beside it.
     *
     * @param money by how much it costs less or more, never negative
     * @param points by how much the lens makes less or more of it
     */
    record Rung(Prospect swap, BigDecimal money, BigDecimal points) {}

    /** What is there, in words. */
    public String assembly() {
        return Assemblies.words(from);
    }

    /** What costs less, in words. */
    public String cheaper() {
        return Assemblies.words(below.swap().to());
    }

    /** The same with where each part goes. */
    public String cheaperPut() {
        return evidence.put(below.swap());
    }

    /** The same by path within the place, where the head's own is empty. */
    public SortedMap<String, String> cheaperParts() {
        return below.swap().to();
    }

    /** What would be saved with it. */
    public BigDecimal saved() {
        return below.money();
    }

    /** What it gives less by the lens. */
    public BigDecimal forgone() {
        return below.points();
    }

    /** By part, vendor and tier, what must be bought for it. */
    public List<String> cheaperSources() {
        return Evidence.sources(below.swap());
    }

    /** By attribute, what elsewhere in the build keeps totals that are part of what it gives. */
    public Optional<SortedMap<String, Mainstay>> cheaperHeld() {
        return Optional.of(held(below)).filter(held -> !held.isEmpty());
    }

    /** What costs more, in words. */
    public String dearer() {
        return Assemblies.words(above.swap().to());
    }

    /** The same with where each part goes. */
    public String dearerPut() {
        return evidence.put(above.swap());
    }

    /** The same by path within the place, where the head's own is empty. */
    public SortedMap<String, String> dearerParts() {
        return above.swap().to();
    }

    /** What it would cost besides. */
    public BigDecimal besides() {
        return above.money();
    }

    /** What it gives more by the lens. */
    public BigDecimal gained() {
        return above.points();
    }

    /** By part, vendor and tier, what must be bought for it. */
    public List<String> dearerSources() {
        return Evidence.sources(above.swap());
    }

    /** By attribute, what elsewhere in the build keeps totals that are part of what it gives. */
    public Optional<SortedMap<String, Mainstay>> dearerHeld() {
        return Optional.of(held(above)).filter(held -> !held.isEmpty());
    }

    /** Of the totals that the lens weighs alone, since nothing is said of the others. */
    private SortedMap<String, Mainstay> held(Rung rung) {
        SortedMap<String, Mainstay> held = new TreeMap<>(evidence.held(rung.swap()));
        held.keySet().retainAll(evidence.weighed());
        return held;
    }

    /** What is stated that shows it. */
    public List<Fact> because() {
        List<Collection<String>> assemblies = List.of(from.values(), below.swap().to().values(), above.swap().to().values());
        FactList facts = new FactList().addAll(evidence.terms());
        assemblies.forEach(assembly -> facts.addAll(evidence.prices(assembly)));
        return facts.addAll(evidence.figures(evidence.weighed(), assemblies)).addAll(evidence.holding(below.swap(), held(below)))
                .addAll(evidence.holding(above.swap(), held(above))).list();
    }
}
