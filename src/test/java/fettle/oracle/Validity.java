package fettle.oracle;

import fettle.oracle.Layout.Occurrence;
import fettle.oracle.Layout.Spot;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import tools.jackson.databind.JsonNode;

/** "Valid build" of meaning.md, clause by clause and word for word. */
final class Validity {
  private final Entries entries;
  private final Layout build;
  private final List<Violation> violations = new ArrayList<>();

  private Validity(Entries entries, Assembly build) {
    this.entries = entries;
    this.build = Layout.of(entries, build);
  }

  static List<Violation> violations(Entries entries, Assembly build) {
    Validity check = new Validity(entries, build);
    check.fit();
    check.notInItself();
    check.room();
    check.exclusion();
    check.zones();
    check.blocks();
    check.needs();
    check.agreement();
    check.constraints();
    return List.copyOf(check.violations);
  }

  /**
   * 1. "Each part fits its slot: (it shares a mount with the slot, or a selector in {@code accepts} matches it) and no selector
   * in {@code rejects} matches it."
   */
  static boolean fits(PartEntry part, SlotEntry slot) {
    boolean sharesMount = part.mounts().stream().anyMatch(slot.mounts()::contains);
    return (sharesMount || part.matchesAny(slot.accepts())) && !part.matchesAny(slot.rejects());
  }

  private void fit() {
    for (Spot spot : build.spots()) {
      for (Occurrence part : in(spot)) {
        if (!fits(part.entry(), spot.slot())) {
          breach(1, part.entry().id() + " does not fit " + spot.path(), part.path());
        }
      }
    }
  }

  /** 2. "No part stands above another occurrence of itself on one path from the platform." */
  private void notInItself() {
    for (Occurrence part : build.placed()) {
      if (part.above().contains(part.entry().id())) {
        breach(2, part.entry().id() + " stands above itself", part.path());
      }
    }
  }

  private void room() {
    build.spots().forEach(this::room);
  }

  private void room(Spot spot) {
    SlotEntry slot = spot.slot();
    List<Occurrence> held = in(spot);
    List<Integer> spans = held.stream().map(part -> part.entry().span()).toList();

    // 3. "A slot holds at most `most` parts;
    if (held.size() > slot.most()) {
      breach(3, held.size() + " parts where at most " + slot.most() + " may be", spot.path());
    }
    // the spans sum to at most `units` where that is given;
    int length = spans.stream().mapToInt(Integer::intValue).sum();
    if (slot.units().isPresent() && length > slot.units().getAsInt()) {
      breach(3, "spans of " + length + " on " + slot.units().getAsInt() + " units", spot.path());
    }
    // no part stands twice directly in a slot unless it `repeats`;
    Set<String> seen = new HashSet<>();
    for (Occurrence part : held) {
      if (!seen.add(part.entry().id()) && !slot.repeats()) {
        breach(3, part.entry().id() + " stands twice in a slot that does not repeat", part.path());
      }
    }
    // a `required` slot holds at least one.
    if (slot.required() && held.isEmpty()) {
      breach(3, "nothing in a required slot", spot.path());
    }
    // Where `at` is given, parts take the notches `at` … `at`+span−1, all inside the slot and none twice, and the parts without
    // `at` fit into the free runs that remain." A slot without units has no notches (format.md: span is "notches taken on a slot
    // measured in units").
    boolean anyAt = spot.held().stream().anyMatch(part -> part.at().isPresent());
    if (slot.units().isPresent() && anyAt
        && !Notches.hold(slot.units().getAsInt(), spans, spot.held().stream().map(Assembly::at).toList())) {
      breach(3, "the parts have no such places on the slot", spot.path());
    }
  }

  /**
   * 4. "No placed part has an {@code excludes} selector that matches another placed part (another occurrence, itself included
   * only if placed twice). A platform's {@code excludes} matches any placed part."
   */
  private void exclusion() {
    for (Occurrence one : build.all()) {
      for (Occurrence other : build.placed()) {
        if (other != one && other.entry().matchesAny(one.entry().excludes())) {
          breach(4, one.entry().id() + " excludes " + other.entry().id(), one.path(), other.path());
        }
      }
    }
  }

  /** 5. "No zone is claimed by two placed parts." The platform's claims count as those of a placed part. */
  private void zones() {
    List<Occurrence> all = build.all();
    for (int i = 0; i < all.size(); i++) {
      for (int j = i + 1; j < all.size(); j++) {
        Occurrence one = all.get(i);
        Occurrence other = all.get(j);
        if (one.entry().claims().stream().anyMatch(other.entry().claims()::contains)) {
          breach(5, one.entry().id() + " and " + other.entry().id() + " claim one zone", one.path(), other.path());
        }
      }
    }
  }

  /**
   * 6. "No slot that holds a part bears a tag that a placed part {@code blocks}, unless it is the slot in which that part itself
   * sits."
   */
  private void blocks() {
    for (Spot spot : build.spots()) {
      for (Occurrence blocker : build.all()) {
        boolean blocked = spot.slot().tags().stream().anyMatch(blocker.entry().blocks()::contains);
        if (!spot.held().isEmpty() && blocked && !blocker.slotPath().equals(spot.path())) {
          breach(6, blocker.entry().id() + " blocks " + spot.path(), blocker.path(), spot.path());
        }
      }
    }
  }

  /** 7. "For each group in a placed part's {@code needs}, another placed part matches one of its selectors." */
  private void needs() {
    for (Occurrence one : build.all()) {
      for (List<String> group : one.entry().needs()) {
        if (build.placed().stream().noneMatch(other -> other != one && other.entry().matchesAny(group))) {
          breach(7, one.entry().id() + " needs one of " + group, one.path());
        }
      }
    }
  }

  /** 8. "For each trait, the value lists of all placed parts that declare it share at least one value." */
  private void agreement() {
    List<String> traits =
        build.all().stream().flatMap(part -> part.entry().traits().keySet().stream()).distinct().toList();
    for (String trait : traits) {
      List<Occurrence> declaring =
          build.all().stream().filter(part -> part.entry().traits().containsKey(trait)).toList();
      Stream<String> candidates = declaring.get(0).entry().traits().get(trait).stream();
      if (candidates.noneMatch(
          value -> declaring.stream().allMatch(part -> part.entry().traits().get(trait).contains(value)))) {
        breach(8, "no agreement on " + trait, declaring.stream().map(Occurrence::path).toArray(String[]::new));
      }
    }
  }

  /**
   * 9. "For each constraint: if each selector in {@code when} matches some placed part, then some placed part matches a selector
   * in {@code need}. ({@code need} empty: the combination is forbidden. One part may match several selectors.)"
   */
  private void constraints() {
    for (JsonNode constraint : entries.section("constraints")) {
      List<String> when = Fields.texts(constraint, "when");
      List<String> need = Fields.texts(constraint, "need");
      boolean applies =
          when.stream().allMatch(selector -> build.placed().stream().anyMatch(part -> part.entry().matches(selector)));
      boolean met = build.placed().stream().anyMatch(part -> part.entry().matchesAny(need));
      if (applies && !met) {
        breach(9, "constraint " + Fields.text(constraint, "id"));
      }
    }
  }

  private List<Occurrence> in(Spot spot) {
    return build.placed().stream().filter(part -> part.slotPath().equals(spot.path())).toList();
  }

  private void breach(int clause, String what, String... paths) {
    violations.add(new Violation(clause, List.of(paths), what));
  }
}
