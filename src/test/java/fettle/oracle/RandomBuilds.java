package fettle.oracle;

import static fettle.oracle.Sketch.decimals;
import static fettle.oracle.Sketch.no;
import static fettle.oracle.Sketch.object;
import static fettle.oracle.Sketch.set;
import static fettle.oracle.Sketch.texts;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.Tuple;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ObjectNode;

/** Random builds for a catalog, as a build file has them: valid ones, ones a single change away, and any at all. */
public final class RandomBuilds {
  private static final int DEEP = 3;

  private final Scene scene;
  private final Entries entries;

  private RandomBuilds(Scene scene) {
    this.scene = scene;
    this.entries = scene.entries();
  }

  /** A catalog and a build for it. */
  public record Review(Scene scene, JsonNode build) {
    public JsonNode catalog() {
      return scene.catalog();
    }

    @Override
    public String toString() {
      return build + " for " + scene;
    }
  }

  /** A random catalog and any kind of build for it. */
  public static Arbitrary<Review> reviews(int most) {
    Arbitrary<JsonNode> documents =
        Scene.scenes(most).flatMap(scene -> builds(scene).map(build -> document(scene.catalog(), build)));
    return ReducibleDocument.reducible(documents)
        .map(document -> Scene.of(document.get("catalog"), most).map(scene -> new Review(scene, document.get("build"))))
        .filter(Optional::isPresent)
        .map(Optional::get);
  }

  /** The two in one, as {@link Reductions} takes them. */
  static JsonNode document(JsonNode catalog, JsonNode build) {
    ObjectNode document = Sketch.NODES.objectNode();
    document.set("catalog", catalog);
    document.set("build", build);
    return document;
  }

  /** Builds of all kinds. */
  public static Arbitrary<JsonNode> builds(Scene scene) {
    RandomBuilds random = new RandomBuilds(scene);
    Arbitrary<Assembly> stray = random.anyAtAll();
    if (random.valid().isEmpty()) {
      return random.written(stray);
    }
    Arbitrary<Assembly> valid = random.laidOut();
    return random.written(Arbitraries.frequencyOf(Tuple.of(2, valid), Tuple.of(3, random.oneChange(valid)), Tuple.of(4, stray)));
  }

  /** Valid builds, some of their parts with {@code at}; empty where no platform has one. */
  public static Optional<Arbitrary<JsonNode>> validBuilds(Scene scene) {
    RandomBuilds random = new RandomBuilds(scene);
    return random.valid().isEmpty()
        ? Optional.empty()
        : Optional.of(
            random
                .laidOut()
                .map(build -> random.written(build, Sketch.NODES.objectNode(), Optional.empty(), Optional.empty(), Optional.empty())));
  }

  private List<Assembly> valid() {
    return scene.spaces().stream().flatMap(space -> space.builds().stream()).toList();
  }

  private Arbitrary<Assembly> laidOut() {
    return Combinators.combine(Arbitraries.of(valid()), seeds())
        .as((build, seed) -> BuildText.laidOut(entries, build, new Random(seed)));
  }

  private Arbitrary<Assembly> oneChange(Arbitrary<Assembly> builds) {
    return Combinators.combine(builds, seeds())
        .as((build, seed) -> new Mutation(entries, new Random(seed)).of(build));
  }

  private Arbitrary<Assembly> anyAtAll() {
    return Combinators.combine(Arbitraries.of(entries.platformIds()), seeds())
        .as((platform, seed) -> filled(platform, new Random(seed), 0));
  }

  private static Arbitrary<Long> seeds() {
    return Arbitraries.longs().between(0, 1_000_000);
  }

  /** Fills slots mostly with what fits them, mostly not beyond what they hold. */
  private Assembly filled(String host, Random random, int depth) {
    Assembly assembly = Assembly.bare(host);
    for (SlotEntry slot : entries.host(host).slots()) {
      int count = random.nextInt(20) == 0 ? 2 : Math.min(random.nextInt(4), Math.min(slot.most(), 3));
      List<Assembly> held = new ArrayList<>();
      for (int i = 0; i < count && depth < DEEP; i++) {
        List<PartEntry> fitting = entries.parts().stream().filter(part -> Validity.fits(part, slot)).toList();
        List<PartEntry> pool = fitting.isEmpty() || random.nextInt(25) == 0 ? entries.parts() : fitting;
        Assembly part = filled(pool.get(random.nextInt(pool.size())).id(), random, depth + 1);
        boolean told = slot.units().isPresent() && slot.most() > 1 && random.nextInt(3) == 0;
        held.add(told ? new Assembly(part.part(), Optional.of(random.nextInt(slot.units().getAsInt())), part.slots()) : part);
      }
      assembly = assembly.with(slot.id(), held);
    }
    return assembly;
  }

  private Arbitrary<JsonNode> written(Arbitrary<Assembly> builds) {
    Arbitrary<JsonNode> rest =
        object()
            .maybe("loaded", 30, no())
            .maybe("outfit", 40, ids("outfits"))
            .maybe("access", 50, ids("access"))
            .maybe("owned", 40, set(texts(entries.partIds()), 1, 3))
            .maybe("budget", 30, decimals("5", "10", "0", "2.75", "30"))
            .maybe("lens", 50, ids("lenses"))
            .sketched();
    Arbitrary<Optional<JsonNode>> stray = object().always("nowhere", texts("p0")).sketched().optional(0.02);
    Arbitrary<Optional<JsonNode>> unknown = object().always("s0", texts("p-unknown")).sketched().optional(0.02);
    return Combinators.combine(builds, rest, stray, unknown, seeds().optional(0.1)).as(this::written).withoutEdgeCases();
  }

  private Arbitrary<JsonNode> ids(String section) {
    return texts(entries.section(section).stream().map(entry -> Fields.text(entry, "id")).toList());
  }

  /** The build with what else it says, with paths that lead nowhere or hold an unknown part, where there are any, and some loosely written. */
  private JsonNode written(
      Assembly build, JsonNode rest, Optional<JsonNode> stray, Optional<JsonNode> unknown, Optional<Long> loosely) {
    ObjectNode written = Sketch.NODES.objectNode().put("id", "random").put("platform", build.part()).put("patch", "1.0");
    ObjectNode parts = BuildText.parts(entries, build);
    stray.ifPresent(path -> parts.setAll((ObjectNode) path));
    unknown.ifPresent(path -> parts.setAll((ObjectNode) path));
    written.set("parts", loosely.map(seed -> LoosePaths.of(parts, new Random(seed))).orElse(parts));
    rest.properties().forEach(property -> written.set(property.getKey(), property.getValue()));
    return written;
  }
}
