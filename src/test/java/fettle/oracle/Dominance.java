package fettle.oracle;

import java.math.BigDecimal;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;

/** "Dominated" of meaning.md for one (platform, H, S), by trying every choice against every other. */
public final class Dominance {
  private final Entries entries;
  private final SlotPlaces places;
  private final List<Choice> choices;
  private final Optional<Costs> costs;
  private final Map<Choice, Map<Contributions.Aspect, Optional<BigDecimal>>> contributions = new LinkedHashMap<>();

  private Dominance(Space space, String host, String slot, Optional<Costs> costs) {
    this.entries = space.entries();
    this.places = new SlotPlaces(space, host, slot);
    this.costs = costs;
    this.choices = places.placeable().stream().filter(this::takesPart).toList();
    for (Choice choice : choices) {
      Map<Contributions.Aspect, Optional<BigDecimal>> brought = new LinkedHashMap<>();
      for (Contributions.Aspect aspect : Contributions.aspects(entries)) {
        brought.put(aspect, Contributions.of(entries, choice, aspect));
      }
      contributions.put(choice, brought);
    }
  }

  /** "That is dominance ignoring cost." */
  public static Dominance ignoringCost(Space space, String host, String slot) {
    return new Dominance(space, host, slot, Optional.empty());
  }

  /** "With cost, the assembly's cost (lower is better) is one more attribute". Every offer is open where no access is named. */
  public static Dominance withCost(Space space, String host, String slot, Optional<String> access) {
    return new Dominance(space, host, slot, Optional.of(Costs.of(space.entries(), access, Set.of())));
  }

  /** "assemblies with an unobtainable part take no part in it, on either side" */
  private boolean takesPart(Choice choice) {
    return costs.isEmpty() || costs.get().ofAll(choice.parts()).isPresent();
  }

  /** The placeable (with cost: and obtainable) choices, in the order of their texts. */
  public List<Choice> choices() {
    return choices;
  }

  /** "Assembly W dominates assembly A there". */
  public boolean dominates(Choice w, Choice a) {
    // 2. "W has every role kind that A has;"
    if (!w.roles(entries).containsAll(a.roles(entries))) {
      return false;
    }
    // 3. "for each attribute other than `better: none`, W's contribution is at least as good as A's, and for at least one it is
    // better."
    boolean better = false;
    for (Contributions.Aspect aspect : contributions.get(a).keySet()) {
      if (!aspect.attribute().better().equals("none")) {
        int worse = aspect.compare(contributions.get(w).get(aspect), contributions.get(a).get(aspect));
        if (worse > 0) {
          return false;
        }
        better |= worse < 0;
      }
    }
    if (costs.isPresent()) {
      int worse = costs.get().ofAll(w.parts()).get().compareTo(costs.get().ofAll(a.parts()).get());
      if (worse > 0) {
        return false;
      }
      better |= worse < 0;
    }
    // 1. "for every valid build with A in S of an occurrence of H, putting W in place of that A gives a valid build;"
    return better && places.keepsEveryBuildValid(a, w);
  }

  /** The parts that head at least one of the choices. */
  public SortedSet<String> heads() {
    return choices.stream().flatMap(choice -> choice.head().stream()).collect(Collectors.toCollection(TreeSet::new));
  }

  /** All W that dominate A there. */
  public Set<Choice> witnesses(Choice a) {
    return choices.stream().filter(w -> dominates(w, a)).collect(Collectors.toCollection(LinkedHashSet::new));
  }

  /**
   * "A part P is dominated in (H, S) when it heads at least one placeable (with cost: and obtainable) assembly there and each of
   * these is dominated by an assembly not headed by P." For each such P, each assembly that it heads with every such witness.
   */
  public SortedMap<String, Map<Choice, Set<Choice>>> dominated() {
    SortedMap<String, Map<Choice, Set<Choice>>> dominated = new TreeMap<>();
    for (String part : heads()) {
      Map<Choice, Set<Choice>> witnesses = new LinkedHashMap<>();
      for (Choice a : headedBy(part)) {
        Set<Choice> others = witnesses(a);
        others.removeIf(w -> w.head().equals(Optional.of(part)));
        witnesses.put(a, others);
      }
      if (witnesses.values().stream().noneMatch(Set::isEmpty)) {
        dominated.put(part, witnesses);
      }
    }
    return dominated;
  }

  /** "It is worse than empty when each is dominated by the empty choice." */
  public SortedSet<String> worseThanEmpty() {
    SortedSet<String> worse = heads();
    worse.removeIf(
        part -> !choices.contains(Choice.EMPTY) || !headedBy(part).stream().allMatch(a -> dominates(Choice.EMPTY, a)));
    return worse;
  }

  /**
   * "Two parts without slots are twins in (H, S) when swapping either for the other keeps every valid build valid, their roles
   * and all their contributions are equal." Each pair of placeable parts once, the smaller id first.
   */
  public Set<List<String>> twins() {
    List<Choice> bare = choices.stream().filter(this::withoutSlots).toList();
    Set<List<String>> twins = new LinkedHashSet<>();
    for (Choice one : bare) {
      for (Choice other : bare) {
        if (one.head().get().compareTo(other.head().get()) < 0
            && one.roles(entries).equals(other.roles(entries))
            && contributions.get(one).equals(contributions.get(other))
            && places.keepsEveryBuildValid(one, other)
            && places.keepsEveryBuildValid(other, one)) {
          twins.add(List.of(one.head().get(), other.head().get()));
        }
      }
    }
    return twins;
  }

  private boolean withoutSlots(Choice choice) {
    return choice.head().isPresent() && entries.part(choice.head().get()).orElseThrow().slots().isEmpty();
  }

  private List<Choice> headedBy(String part) {
    return choices.stream().filter(choice -> choice.head().equals(Optional.of(part))).toList();
  }
}
