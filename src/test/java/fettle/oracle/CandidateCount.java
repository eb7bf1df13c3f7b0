package fettle.oracle;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalLong;

/** How many candidates a platform has, reckoned without writing them out, so that what is too large to try is passed over quickly. */
final class CandidateCount {
  private final Entries entries;
  private final int most;

  private CandidateCount(Entries entries, int most) {
    this.entries = entries;
    this.most = most;
  }

  /** The number of {@link Candidates}; empty where there, or at a step on the way there, would be more than {@code most} alternatives. */
  static OptionalLong of(Entries entries, String platform, int most) {
    try {
      return OptionalLong.of(new CandidateCount(entries, most).fillings(entries.platform(platform).orElseThrow(), List.of()));
    } catch (TooManyBuilds tooMany) {
      return OptionalLong.empty();
    }
  }

  /** The slots of a host are filled independently of each other. */
  private long fillings(PartEntry host, List<String> above) {
    long fillings = 1;
    for (SlotEntry slot : host.slots()) {
      fillings = bounded(fillings * choices(slot, above));
    }
    return fillings;
  }

  /** Multisets of assemblies, by how many there are in them and by their length. */
  private long choices(SlotEntry slot, List<String> above) {
    int length = slot.units().orElse(0);
    List<long[]> byNumber = new ArrayList<>();
    byNumber.add(new long[length + 1]);
    byNumber.get(0)[0] = 1;
    for (PartEntry part : entries.parts()) {
      if (Validity.fits(part, slot) && !above.contains(part.id())) {
        List<String> path = new ArrayList<>(above);
        path.add(part.id());
        add(byNumber, slot, fillings(part, path), slot.units().isPresent() ? part.span() : 0);
      }
    }
    return total(byNumber) - (slot.required() ? 1 : 0);
  }

  /** Lets any number of a part's assemblies join each multiset, one at most where the slot doesn't repeat. */
  private void add(List<long[]> byNumber, SlotEntry slot, long assemblies, int span) {
    List<long[]> before = byNumber.stream().map(long[]::clone).toList();
    long ways = 1;
    for (int copies = 1; assemblies > 0 && copies <= (slot.repeats() ? slot.most() : 1); copies++) {
      // One more of a multiset of n things: n + copies - 1 over copies.
      ways = ways * (assemblies + copies - 1) / copies;
      boolean any = false;
      for (int number = 0; number < before.size() && number + copies <= slot.most(); number++) {
        long[] from = before.get(number);
        for (int taken = 0; taken + copies * span < from.length; taken++) {
          if (from[taken] > 0) {
            if (byNumber.size() == number + copies) {
              byNumber.add(new long[from.length]);
            }
            byNumber.get(number + copies)[taken + copies * span] += bounded(from[taken] * bounded(ways));
            any = true;
          }
        }
      }
      total(byNumber);
      if (!any) {
        return;
      }
    }
  }

  private long total(List<long[]> byNumber) {
    long total = 0;
    for (long[] byLength : byNumber) {
      for (long count : byLength) {
        total = bounded(total + count);
      }
    }
    return total;
  }

  private long bounded(long count) {
    if (count > most) {
      throw new TooManyBuilds();
    }
    return count;
  }
}
