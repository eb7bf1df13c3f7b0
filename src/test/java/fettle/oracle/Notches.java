package fettle.oracle;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Whether parts have places on a slot measured in units, by trying every place for each. */
final class Notches {
  private Notches() {}

  /**
   * "Parts with {@code at} take the notches {@code at} … {@code at}+span−1, all inside the slot and none twice, and the parts
   * without {@code at} fit into the free runs that remain."
   *
   * @param spans the length of each part
   * @param ats the first notch of each part, where it is given
   */
  static boolean hold(int units, List<Integer> spans, List<Optional<Integer>> ats) {
    boolean[] taken = new boolean[units];
    List<Integer> free = new ArrayList<>();
    for (int part = 0; part < spans.size(); part++) {
      int span = spans.get(part);
      Optional<Integer> at = ats.get(part);
      if (at.isEmpty()) {
        free.add(span);
      } else if (!take(taken, at.get(), span)) {
        return false;
      }
    }
    return fit(taken, free, 0);
  }

  private static boolean fit(boolean[] taken, List<Integer> spans, int next) {
    if (next == spans.size()) {
      return true;
    }
    for (int at = 0; at < taken.length; at++) {
      boolean[] tried = taken.clone();
      if (take(tried, at, spans.get(next)) && fit(tried, spans, next + 1)) {
        return true;
      }
    }
    return false;
  }

  private static boolean take(boolean[] taken, int at, int span) {
    for (int notch = at; notch < at + span; notch++) {
      if (notch < 0 || notch >= taken.length || taken[notch]) {
        return false;
      }
      taken[notch] = true;
    }
    return true;
  }
}
