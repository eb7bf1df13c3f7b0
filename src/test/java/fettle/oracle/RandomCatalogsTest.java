package fettle.oracle;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.networknt.schema.Schema;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.EdgeCasesMode;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.statistics.Statistics;
import net.jqwik.api.statistics.StatisticsReport;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;

/** The random catalogs and builds are what they are said to be, and the parts of the brute force agree with each other on them. */
class RandomCatalogsTest {
  private static final int MOST = 600;

  @Provide
  Arbitrary<JsonNode> catalogs() {
    return RandomCatalogs.catalogs();
  }

  @Provide
  Arbitrary<Scene> scenes() {
    return Scene.scenes(MOST);
  }

  @Provide
  Arbitrary<RandomBuilds.Review> reviews() {
    return RandomBuilds.reviews(MOST);
  }

  private static Schema schema(String name) {
    try {
      return SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
          .getSchema(Files.readString(Path.of("schema", name)));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static final Schema CATALOG = schema("catalog.schema.json");
  private static final Schema BUILD = schema("build.schema.json");

  @Property(tries = 100, edgeCases = EdgeCasesMode.NONE)
  void catalogs_and_builds_keep_to_the_schemas(@ForAll("reviews") RandomBuilds.Review review) {
    ObjectNode file = Sketch.NODES.objectNode().set("build", review.build());
    assertEquals(List.of(), CATALOG.validate(review.catalog()));
    assertEquals(List.of(), BUILD.validate(file));
  }

  @Property(tries = 40, edgeCases = EdgeCasesMode.NONE)
  void what_is_left_of_a_document_is_shorter_and_keeps_to_the_schemas(@ForAll("reviews") RandomBuilds.Review review) {
    JsonNode document = RandomBuilds.document(review.catalog(), review.build());
    List<JsonNode> reduced = Reductions.of(document).toList();
    assertTrue(reduced.size() >= 3, "at least each part can go");
    for (JsonNode less : reduced) {
      ObjectNode file = Sketch.NODES.objectNode().set("build", less.get("build"));
      assertEquals(List.of(), CATALOG.validate(less.get("catalog")));
      assertEquals(List.of(), BUILD.validate(file));
      assertTrue(less.toString().length() < document.toString().length());
    }
  }

  // A fixed seed, here and below, where what is judged is the mixture and not the program: chance must not fail it.
  @Property(tries = 200, edgeCases = EdgeCasesMode.NONE, seed = "1")
  @StatisticsReport(StatisticsReport.StatisticsReportMode.OFF)
  void catalogs_show_every_feature_and_few_are_too_large(@ForAll("catalogs") JsonNode catalog) {
    Set<String> features = new TreeSet<>();
    catalog.properties().forEach(section -> collectNames(section.getKey(), section.getValue(), features));
    for (String feature :
        List.of(
            "parts.mounts", "parts.accepts", "parts.rejects", "parts.required", "parts.units", "parts.most", "parts.repeats",
            "parts.span", "parts.tags", "parts.traits", "parts.claims", "parts.blocks", "parts.excludes", "parts.needs",
            "parts.loaded", "platforms.units", "platforms.most", "platforms.repeats", "platforms.required", "platforms.traits",
            "platforms.claims", "platforms.blocks", "platforms.excludes", "platforms.needs", "platforms.factory",
            "platforms.loaded", "constraints.need", "offers.barter", "offers.currency", "offers.tier", "limits.atMost",
            "limits.atLeast", "limits.by", "limits.loaded", "access.market", "access.smith", "outfits.grip", "lenses.kick")) {
      Statistics.label(feature)
          .collect(features.contains(feature))
          .coverage(coverage -> coverage.check(true).percentage(percent -> percent > 3));
    }
    Statistics.label("enumerable")
        .collect(Scene.of(catalog, MOST).isPresent())
        .coverage(coverage -> coverage.check(true).percentage(percent -> percent > 70));
  }

  @Property(tries = 300, edgeCases = EdgeCasesMode.NONE)
  void candidates_are_as_many_as_was_reckoned(@ForAll("catalogs") JsonNode catalog) {
    Entries entries = Entries.of(catalog);
    for (String platform : entries.platformIds()) {
      CandidateCount.of(entries, platform, MOST)
          .ifPresent(
              count -> {
                assertEquals(count, Candidates.of(entries, platform).size());
                assertEquals(OptionalLong.of(count), CandidateCount.of(entries, platform, MOST + 1));
              });
    }
  }

  private static void collectNames(String section, JsonNode node, Set<String> names) {
    node.properties().forEach(property -> names.add(section + "." + property.getKey()));
    node.forEach(child -> collectNames(section, child, names));
  }

  @Property(tries = 200, edgeCases = EdgeCasesMode.NONE)
  void a_build_is_valid_exactly_when_the_enumeration_has_it(@ForAll("reviews") RandomBuilds.Review review) {
    List<Violation> violations = Oracle.valid(review.catalog(), review.build());
    WrittenBuild written = WrittenBuild.read(review.scene().entries(), review.build());
    Assembly root = written.root().orElseThrow();
    Space space =
        review.scene().spaces().stream().filter(one -> one.platform().equals(root.part())).findFirst().orElseThrow();
    boolean listed = written.unresolved().isEmpty() && space.has(root.canonical());
    if (violations.isEmpty()) {
      assertTrue(listed, "valid, but not listed");
    } else if (listed) {
      // The same parts may be valid elsewhere on a rail; nothing else can be wrong with a build that is listed.
      assertTrue(review.build().toString().contains("\"at\""), () -> "listed, but " + violations);
      assertTrue(violations.stream().allMatch(violation -> violation.clause() == 3), violations::toString);
    }
  }

  @Property(tries = 200, edgeCases = EdgeCasesMode.NONE, seed = "2")
  @StatisticsReport(StatisticsReport.StatisticsReportMode.OFF)
  void builds_breach_every_clause_and_many_are_valid(@ForAll("reviews") RandomBuilds.Review review) {
    List<Violation> violations = Oracle.valid(review.catalog(), review.build());
    Statistics.label("valid")
        .collect(violations.isEmpty())
        .coverage(
            coverage -> {
              coverage.check(true).percentage(percent -> percent > 30);
              coverage.check(false).percentage(percent -> percent > 30);
            });
    for (int clause = 0; clause <= 9; clause++) {
      int each = clause;
      Statistics.label("clause " + clause)
          .collect(violations.stream().anyMatch(violation -> violation.clause() == each))
          .coverage(coverage -> coverage.check(true).percentage(percent -> percent > 1.5));
    }
  }

  @Property(tries = 60, edgeCases = EdgeCasesMode.NONE)
  void a_written_build_reads_back_as_itself(@ForAll("scenes") Scene scene) {
    for (Space space : scene.spaces()) {
      for (Assembly build : space.builds()) {
        WrittenBuild written =
            WrittenBuild.read(scene.entries(), space.platform(), BuildText.parts(scene.entries(), build));
        assertEquals(List.of(), written.unresolved());
        assertEquals(build, written.root().orElseThrow());
      }
    }
  }

  @Property(tries = 100, edgeCases = EdgeCasesMode.NONE)
  void one_more_exclusion_never_adds_a_build(@ForAll("scenes") Scene scene) {
    ObjectNode stricter = (ObjectNode) scene.catalog().deepCopy();
    ObjectNode last = (ObjectNode) stricter.get("parts").get(stricter.get("parts").size() - 1);
    last.set("excludes", ((ArrayNode) last.path("excludes").asArrayOpt().orElseGet(Sketch.NODES::arrayNode)).add("p0"));
    List<Space> fewer = Scene.of(stricter, MOST).orElseThrow().spaces();
    for (int i = 0; i < fewer.size(); i++) {
      assertTrue(scene.spaces().get(i).builds().containsAll(fewer.get(i).builds()));
    }
  }

  @Property(tries = 60, edgeCases = EdgeCasesMode.NONE)
  void dominance_is_a_strict_order(@ForAll("scenes") Scene scene) {
    for (Space space : scene.spaces()) {
      for (Worth.Site site : Worth.sites(space)) {
        Dominance dominance = Dominance.ignoringCost(space, site.host(), site.slot());
        for (Choice a : dominance.choices()) {
          for (Choice w : dominance.witnesses(a)) {
            assertEquals(Set.of(), dominance.witnesses(w).stream().filter(a::equals).collect(Collectors.toSet()));
            assertTrue(dominance.witnesses(a).containsAll(dominance.witnesses(w)));
          }
        }
      }
    }
  }

  @Property(tries = 100, edgeCases = EdgeCasesMode.NONE, seed = "3")
  @StatisticsReport(StatisticsReport.StatisticsReportMode.OFF)
  void verdicts_of_every_kind_come_up(@ForAll("scenes") Scene scene) {
    Set<String> verdicts = new TreeSet<>();
    for (Space space : scene.spaces()) {
      Survey survey = new Survey(space);
      note(verdicts, "void", survey.isVoid());
      note(verdicts, "dead part", !survey.deadParts().isEmpty());
      note(verdicts, "dead slot", !survey.deadSlots().isEmpty());
      note(verdicts, "essential part", !survey.essentialParts().isEmpty());
      note(verdicts, "best build", BestBuild.of(space, Demands.lens("lens0")).isPresent());
      for (Worth.Site site : Worth.sites(space)) {
        Dominance ignoring = Dominance.ignoringCost(space, site.host(), site.slot());
        Dominance costing = Dominance.withCost(space, site.host(), site.slot(), Optional.empty());
        note(verdicts, "dominated ignoring cost", !ignoring.dominated().isEmpty());
        note(verdicts, "dominated with cost", !costing.dominated().isEmpty());
        note(verdicts, "worse than empty", !ignoring.worseThanEmpty().isEmpty());
        note(verdicts, "twins", !ignoring.twins().isEmpty());
        new Ladder(space, site.host(), site.slot(), "lens0", Optional.empty())
            .standings().values().forEach(standing -> verdicts.add(standing.toString()));
      }
    }
    note(verdicts, "never worth using", !Worth.neverWorthUsing(scene.spaces()).isEmpty());
    for (String verdict :
        List.of(
            "void", "dead part", "dead slot", "essential part", "best build", "dominated ignoring cost", "dominated with cost",
            "worse than empty", "twins", "never worth using", "RUNG", "BETWEEN", "DOMINATED")) {
      Statistics.label(verdict)
          .collect(verdicts.contains(verdict))
          .coverage(coverage -> coverage.check(true).percentage(percent -> percent > 3));
    }
  }

  private static void note(Set<String> verdicts, String verdict, boolean given) {
    if (given) {
      verdicts.add(verdict);
    }
  }
}
