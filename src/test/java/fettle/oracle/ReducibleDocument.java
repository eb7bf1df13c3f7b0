package fettle.oracle;

import java.util.stream.Stream;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.RandomGenerator;
import net.jqwik.api.Shrinkable;
import net.jqwik.api.ShrinkingDistance;
import tools.jackson.databind.JsonNode;

/** A random document that shrinks by leaving things out, however it was put together. */
record ReducibleDocument(JsonNode value) implements Shrinkable<JsonNode> {
  private static final int USUAL_TRIES = 1000;

  /** The same documents, shrinking by what {@link Reductions} leaves out instead of by the way they were made. */
  static Arbitrary<JsonNode> reducible(Arbitrary<JsonNode> documents) {
    RandomGenerator<JsonNode> generator = documents.generator(USUAL_TRIES);
    return Arbitraries.fromGenerator(random -> new ReducibleDocument(generator.next(random).value()));
  }

  @Override
  public Stream<Shrinkable<JsonNode>> shrink() {
    return Reductions.of(value).map(ReducibleDocument::new);
  }

  @Override
  public ShrinkingDistance distance() {
    return ShrinkingDistance.of(value.toString().length());
  }
}
