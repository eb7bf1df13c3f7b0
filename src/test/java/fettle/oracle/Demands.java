package fettle.oracle;

import java.math.BigDecimal;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import tools.jackson.databind.JsonNode;

/**
 * What the best build is sought for.
 *
 * @param before the build to start from, its parts in the order in which they are written
 * @param keep paths of that build
 */
public record Demands(
    String lens,
    Optional<BigDecimal> budget,
    Optional<String> access,
    Optional<String> outfit,
    Set<String> owned,
    boolean loaded,
    Optional<Assembly> before,
    Set<String> keep) {

  /** Seeks for a lens and nothing else. */
  public static Demands lens(String lens) {
    return new Demands(
        lens, Optional.empty(), Optional.empty(), Optional.empty(), Set.of(), true, Optional.empty(), Set.of());
  }

  /** What a build file's build asks for, for the lens that it names or else the one given. */
  public static Demands of(Entries entries, JsonNode build, String otherwise, Set<String> keep) {
    return new Demands(
        build.path("lens").asString(otherwise),
        build.path("budget").decimalValueOpt(),
        Fields.named(build, "access"),
        Fields.named(build, "outfit"),
        new TreeSet<>(Fields.texts(build, "owned")),
        Fields.flag(build, "loaded", true),
        WrittenBuild.read(entries, build).root(),
        keep);
  }
}
