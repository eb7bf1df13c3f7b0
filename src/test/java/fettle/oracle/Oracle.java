package fettle.oracle;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import tools.jackson.databind.JsonNode;

/** The brute force: answers that follow meaning.md word for word, from nothing but the JSON of a catalog and of builds. */
public final class Oracle {
  private Oracle() {}

  /**
   * Every breach of "Valid build" in a build file's build; empty where it is valid. Where something could not be resolved, the
   * breaches of the remaining clauses are those of what could.
   */
  public static List<Violation> valid(JsonNode catalog, JsonNode build) {
    Entries entries = Entries.of(catalog);
    WrittenBuild written = WrittenBuild.read(entries, build);
    List<Violation> violations = new ArrayList<>(written.unresolved());
    written.root().ifPresent(root -> violations.addAll(Validity.violations(entries, root)));
    return List.copyOf(violations);
  }

  /** The totals of a build, "as the build says loaded, no outfit" (commands.md); of what could be resolved. */
  public static SortedMap<String, BigDecimal> totals(JsonNode catalog, JsonNode build) {
    Entries entries = Entries.of(catalog);
    return WrittenBuild.read(entries, build)
        .root()
        .map(root -> Totals.of(entries, root, Fields.flag(build, "loaded", true), Optional.empty()))
        .orElse(new TreeMap<>());
  }

  /** What a build costs under its access profile, its owned parts being free; empty where a part is unobtainable. */
  public static Optional<BigDecimal> cost(JsonNode catalog, JsonNode build) {
    Entries entries = Entries.of(catalog);
    Costs costs =
        Costs.of(entries, Fields.named(build, "access"), new HashSet<>(Fields.texts(build, "owned")));
    return WrittenBuild.read(entries, build).root().flatMap(costs::ofBuild);
  }

  /** The limits that have a value in a build, with its outfit worn. The others hold. */
  public static List<Margin> limits(JsonNode catalog, JsonNode build) {
    Entries entries = Entries.of(catalog);
    return WrittenBuild.read(entries, build).root().stream()
        .flatMap(
            root ->
                entries.section("limits").stream()
                    .flatMap(limit -> Margin.of(entries, limit, root, Fields.named(build, "outfit")).stream()))
        .toList();
  }
}
