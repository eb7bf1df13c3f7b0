package fettle.oracle;

import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** All valid builds of one platform, each once, found by trying every candidate. */
public final class Space {
  private final Entries entries;
  private final String platform;
  private final Set<Assembly> builds;

  private Space(Entries entries, String platform, Set<Assembly> builds) {
    this.entries = entries;
    this.platform = platform;
    this.builds = builds;
  }

  /**
   * Enumerates the platform.
   *
   * @param most how many candidates to try at most; empty is returned where there are more
   */
  public static Optional<Space> of(Entries entries, String platform, int most) {
    if (!small(entries, platform, most)) {
      return Optional.empty();
    }
    Set<Assembly> valid = new LinkedHashSet<>();
    Candidates.of(entries, platform).stream()
        .filter(candidate -> Validity.violations(entries, candidate).isEmpty())
        .sorted(Comparator.comparing(Assembly::text))
        .forEach(valid::add);
    return Optional.of(new Space(entries, platform, valid));
  }

  /** Whether there are no more candidates than these to try; quickly told, since none is tried. */
  public static boolean small(Entries entries, String platform, int most) {
    return CandidateCount.of(entries, platform, most).isPresent();
  }

  Entries entries() {
    return entries;
  }

  public String platform() {
    return platform;
  }

  /** The valid builds in their canonical form, sorted by their text. */
  public List<Assembly> builds() {
    return List.copyOf(builds);
  }

  /** Whether a build, in its canonical form, is one of the valid ones. */
  public boolean has(Assembly canonical) {
    return builds.contains(canonical);
  }
}
