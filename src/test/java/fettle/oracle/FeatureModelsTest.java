package fettle.oracle;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import tools.jackson.databind.JsonNode;

/**
 * The brute force counts as many builds as published feature models have products. Source of the figures: the tests of flamapy
 * bdd_metamodel, which give 14 products for the mobile phone, calls and screen in each, and 25 for the pizzas with complex
 * constraints.
 */
class FeatureModelsTest {

  private static Survey survey(String model, String platform) throws IOException {
    try (InputStream in = FeatureModelsTest.class.getResourceAsStream("/fettle/models/" + model + ".json")) {
      JsonNode catalog = JsonText.read(new String(in.readAllBytes(), StandardCharsets.UTF_8));
      return new Survey(Space.of(Entries.of(catalog), platform, 10_000).orElseThrow());
    }
  }

  @Test
  void mobile_phone_has_14_products_with_calls_and_screen_in_each() throws IOException {
    Survey survey = survey("mobile-phone", "mobile-phone");
    assertEquals(14, survey.count());
    assertEquals(new TreeSet<>(Set.of("calls", "screen")), survey.essentialParts());
    assertEquals(new TreeSet<>(), survey.deadParts());
  }

  @Test
  void pizzas_complex_has_25_products() throws IOException {
    Survey survey = survey("pizzas-complex", "pizza");
    assertEquals(25, survey.count());
    assertEquals(new TreeSet<>(Set.of("dough", "size", "topping")), survey.essentialParts());
    assertEquals(new TreeSet<>(), survey.deadParts());
  }
}
