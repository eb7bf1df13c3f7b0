package fettle.oracle;

import static fettle.oracle.Sketch.decimals;
import static fettle.oracle.Sketch.each;
import static fettle.oracle.Sketch.list;
import static fettle.oracle.Sketch.no;
import static fettle.oracle.Sketch.object;
import static fettle.oracle.Sketch.set;
import static fettle.oracle.Sketch.texts;
import static fettle.oracle.Sketch.whole;
import static fettle.oracle.Sketch.yes;

import java.math.BigDecimal;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Function;
import java.util.stream.IntStream;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.Tuple;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;

/**
 * Random small catalogs that use every feature of the format: one or two platforms, three to nine parts of which up to three have
 * slots. All references name something. They shrink by leaving out
 * parts, properties and entries.
 */
public final class RandomCatalogs {
  private static final String[] MOUNTS = {"pin", "clip", "screw"};
  private static final String[] KINDS = {"plain", "trim", "sight", "lamp"};
  private static final String[] TAGS = {"red", "wide", "odd"};
  private static final String[] SLOT_TAGS = {"high", "low"};
  private static final String[] ZONES = {"over", "under"};
  private static final String[] TRAITS = {"bore", "height"};
  private static final String[] VALUES = {"v1", "v2", "v3"};

  private static final int[] GRADES = {1, 2, 4, 5, 8, 9, 11, 12, 15};
  private static final int[] PRICES = {2, 3, 8, 9, 10, 16, 17, 25, 26};

  private final List<String> parts;
  private final int hosts;

  private RandomCatalogs(int parts, int hosts) {
    this.parts = IntStream.range(0, parts).mapToObj(i -> "p" + i).toList();
    this.hosts = hosts;
  }

  /** One merged catalog, as one object with all sections. */
  public static Arbitrary<JsonNode> catalogs() {
    return ReducibleDocument.reducible(Combinators.combine(
            Arbitraries.integers().between(3, 9),
            Arbitraries.frequency(Tuple.of(1, 0), Tuple.of(3, 1), Tuple.of(3, 2), Tuple.of(1, 3)))
        .as(RandomCatalogs::new)
        .flatMap(RandomCatalogs::catalog)
        .flatMap(RandomCatalogs::shaped)
        .withoutEdgeCases());
  }

  /** Twins and price ranges hardly come about by chance. */
  private static Arbitrary<JsonNode> shaped(JsonNode catalog) {
    return Arbitraries.frequencyOf(
        Tuple.of(6, Arbitraries.just(catalog)),
        Tuple.of(2, Arbitraries.create(() -> withTwin(catalog))),
        Tuple.of(2, Arbitraries.create(() -> withGrades(catalog))));
  }

  /** The last part becomes a copy of the one before. */
  private static JsonNode withTwin(JsonNode catalog) {
    ObjectNode whole = (ObjectNode) catalog.deepCopy();
    ArrayNode parts = (ArrayNode) whole.get("parts");
    int last = parts.size() - 1;
    String id = Fields.text(parts.get(last), "id");
    parts.set(last, ((ObjectNode) parts.get(last - 1).deepCopy()).put("id", id));
    return whole;
  }

  /** Each part is dearer and better than the one before, not always at the same price for more. */
  private static JsonNode withGrades(JsonNode catalog) {
    ObjectNode whole = (ObjectNode) catalog.deepCopy();
    ArrayNode offers = whole.putArray("offers");
    for (int i = 0; i < whole.get("parts").size(); i++) {
      ObjectNode part = (ObjectNode) whole.get("parts").get(i);
      part.putObject("stats").put("grip", GRADES[i]);
      offers.addObject().put("part", Fields.text(part, "id")).put("vendor", "market").put("price", PRICES[i]);
    }
    return whole;
  }

  private Arbitrary<JsonNode> catalog() {
    return object()
        .always("catalog", object()
            .always("id", "random").always("patch", "1.0").always("released", "2031-01-01").always("currency", "scrip").sketched())
        .always("attributes", attributes())
        .always("mounts", Arbitraries.just(Sketch.entries(new TreeSet<>(Set.of(MOUNTS)))))
        .always("kinds", kinds())
        .always("zones", Arbitraries.just(Sketch.entries(new TreeSet<>(Set.of(ZONES)))))
        .always("traits", Arbitraries.just(Sketch.entries(new TreeSet<>(Set.of(TRAITS)))))
        .always("platforms", platforms())
        .always("parts", each(parts.stream().map(this::part).toList()))
        .maybe("constraints", 50, numbered("c", 1, 2, this::constraint))
        .always("currencies", each(List.of(currency("scrip", "1"), currency("token", "1.005", "2.5", "0.35"))))
        .always("vendors", each(List.of(vendor("market", "0"), vendor("smith", "2"), vendor("harbour", "3"))))
        .always("goods", each(List.of(good("bolt", "0.335", "1", "7"), good("wire", "2", "0.01"))))
        .always("offers", list(offer(), parts.size(), 3 * parts.size()))
        .always("access", numbered("a", 1, 2, RandomCatalogs::access))
        .always("outfits", numbered("o", 1, 2, RandomCatalogs::outfit))
        .maybe("limits", 60, numbered("l", 1, 2, RandomCatalogs::limit))
        .always("lenses", numbered("lens", 1, 2, RandomCatalogs::lens))
        .sketched();
  }

  private static Arbitrary<JsonNode> attributes() {
    return each(
        List.of(
            attribute("grip", "sum"), attribute("kick", "percent"), attribute("hush", "product"), attribute("reach", "max"),
            attribute("calm", "min")));
  }

  private static Arbitrary<JsonNode> attribute(String id, String combine) {
    return object()
        .always("id", id)
        .always("unit", "points")
        .always("better", Arbitraries.frequency(Tuple.of(4, "higher"), Tuple.of(4, "lower"), Tuple.of(2, "none")).map(Sketch::text))
        .always("combine", combine)
        .always("decimals", whole(1, 3))
        .always("shown", whole(0, 1))
        .maybe("material", 50, decimals("0", "0.5", "1"))
        .sketched();
  }

  private static Arbitrary<JsonNode> kinds() {
    return each(List.of(kind("plain", no()), kind("trim", no()), kind("sight", yes()), kind("lamp", yes())));
  }

  private static Arbitrary<JsonNode> kind(String id, Arbitrary<JsonNode> role) {
    return object().always("id", id).always("role", role).sketched();
  }

  private Arbitrary<JsonNode> platforms() {
    return Arbitraries.frequencyOf(
        Tuple.of(3, each(List.of(platform("frame")))), Tuple.of(2, each(List.of(platform("frame"), platform("carriage")))));
  }

  private Arbitrary<JsonNode> platform(String id) {
    Arbitrary<JsonNode> bases =
        object()
            .always("kick", decimals("100", "2.5", "-1"))
            .always("hush", decimals("10", "0.5", "-2"))
            .maybe("grip", 60, decimals("10", "0", "-3.5"))
            .maybe("reach", 40, decimals("1", "0"))
            .maybe("calm", 40, decimals("2", "0.5"))
            .sketched();
    Sketch platform =
        object()
            .always("id", id)
            .always("stats", bases)
            .maybe("loaded", 5, object().always("grip", decimals("1")).sketched())
            .always("slots", slots(1, 3, 4));
    Arbitrary<JsonNode> sketched = clashes(platform, 8).maybe("factory-part", 20, texts(parts)).sketched();
    return sketched.map(RandomCatalogs::withFactory);
  }

  /** The factory build puts its part into the first slot, written as that slot asks for. */
  private static JsonNode withFactory(JsonNode platform) {
    ObjectNode whole = (ObjectNode) platform.deepCopy();
    JsonNode part = whole.remove("factory-part");
    if (part != null) {
      JsonNode first = whole.path("slots").path(0);
      boolean several = SlotEntry.of(first).most() > 1;
      whole.putObject("factory").set(first.path("id").stringValue(), several ? Sketch.NODES.arrayNode().add(part) : part);
    }
    return whole;
  }

  private Arbitrary<JsonNode> part(String id) {
    Sketch part =
        object()
            .always("id", id)
            // Mostly without a role, so that the groups that are compared are not too small.
            .always("kind", Arbitraries.frequencyOf(Tuple.of(3, texts("plain", "trim")), Tuple.of(1, texts("sight", "lamp"))))
            .maybe("mounts", 85, set(texts(MOUNTS), 1, 2))
            .maybe("stats", 85, stats(50))
            .maybe("loaded", 15, stats(25))
            .maybe("span", 30, whole(1, 3));
    if (parts.indexOf(id) < hosts) {
      part.always("slots", Arbitraries.frequencyOf(Tuple.of(3, slots(1, 1, 2)), Tuple.of(1, slots(2, 2, 2))));
    }
    return clashes(part, 11).sketched();
  }

  private static Arbitrary<JsonNode> stats(int chance) {
    return object()
        .maybe("grip", chance + 20, decimals("0", "0.5", "1", "-1", "1.5", "2", "-2", "4", "7"))
        .maybe("kick", chance, decimals("0", "-2.5", "5", "-5", "-120"))
        .maybe("hush", chance, decimals("0", "10", "-20", "-100", "-150"))
        .maybe("reach", chance, decimals("0", "1", "1.5", "-2", "3"))
        .maybe("calm", chance, decimals("0", "1", "1.5", "-2", "3"))
        .sketched();
  }

  /** What parts and platforms have in common: tags, and all that can clash. */
  private Sketch clashes(Sketch entry, int chance) {
    return entry
        .maybe("tags", 40, set(texts(TAGS), 1, 2))
        .maybe("traits", 3 * chance, object()
            .maybe(TRAITS[0], 75, values())
            .maybe(TRAITS[1], 30, values())
            .sketched())
        .maybe("claims", chance + 5, set(texts(ZONES), 1, 2))
        .maybe("blocks", chance, set(texts(SLOT_TAGS), 1, 2))
        .maybe("excludes", chance, set(selector(), 1, 2))
        .maybe("needs", chance, list(set(selector(), 1, 3), 1, 2));
  }

  private static Arbitrary<JsonNode> values() {
    return Arbitraries.frequencyOf(Tuple.of(30, set(texts(VALUES), 1, 2)), Tuple.of(1, set(texts(VALUES), 0, 0)));
  }

  private Arbitrary<JsonNode> selector() {
    return Arbitraries.frequencyOf(
        Tuple.of(4, texts(parts)),
        Tuple.of(2, Arbitraries.of(KINDS).map(kind -> Sketch.text("kind:" + kind))),
        Tuple.of(2, Arbitraries.of(TAGS).map(tag -> Sketch.text("tag:" + tag))));
  }

  private Arbitrary<JsonNode> slots(int least, int most, int units) {
    return numbered("s", least, most, id -> slot(id, units, 5 * units));
  }

  private Arbitrary<JsonNode> slot(String id, int units, int chance) {
    return object()
        .always("id", id)
        .maybe("mounts", 90, set(texts(MOUNTS), 1, 2))
        .maybe("accepts", 25, set(selector(), 1, 2))
        .maybe("rejects", 15, set(selector(), 1, 2))
        .maybe("required", 15, yes())
        .maybe("tags", 40, set(texts(SLOT_TAGS), 1, 2))
        .maybe("units", chance, whole(1, units))
        .maybe("most", chance, whole(1, Math.min(units, 3)))
        .maybe("repeats", 25, yes())
        .sketched();
  }

  private Arbitrary<JsonNode> constraint(String id) {
    return object()
        .always("id", id)
        .always("when", set(selector(), 1, 2))
        .maybe("need", 70, set(selector(), 0, 2))
        .always("because", "it was found to be so")
        .sketched();
  }

  private static Arbitrary<JsonNode> currency(String id, String... rates) {
    return object().always("id", id).always("rate", decimals(rates)).sketched();
  }

  private static Arbitrary<JsonNode> vendor(String id, String tiers) {
    return object().always("id", id).always("tiers", decimals(tiers)).sketched();
  }

  private static Arbitrary<JsonNode> good(String id, String... values) {
    return object().always("id", id).always("value", decimals(values)).sketched();
  }

  private Arbitrary<JsonNode> offer() {
    return Arbitraries.oneOf(
            priced(object().always("part", texts(parts)).always("vendor", "market")),
            priced(object().always("part", texts(parts)).always("vendor", "smith").always("tier", whole(1, 2))),
            bartered(object().always("part", texts(parts)).always("vendor", "market")),
            bartered(object().always("part", texts(parts)).always("vendor", "harbour").always("tier", whole(1, 3))));
  }

  private static Arbitrary<JsonNode> priced(Sketch offer) {
    return offer
        .always("price", decimals("1", "2", "2.5", "3", "5", "0.99", "12"))
        .maybe("currency", 40, texts("scrip", "token"))
        .maybe("seen", 30, texts("2031-02-03", "2030-11-30"))
        .sketched();
  }

  private static Arbitrary<JsonNode> bartered(Sketch offer) {
    Arbitrary<JsonNode> item = object().always("good", texts("bolt", "wire")).always("count", whole(1, 3)).sketched();
    return offer.always("barter", list(item, 1, 2)).sketched();
  }

  private static Arbitrary<JsonNode> access(String id) {
    Arbitrary<JsonNode> vendors =
        object()
            .maybe("market", 70, whole(0, 0))
            .maybe("smith", 70, whole(0, 2))
            .maybe("harbour", 60, whole(0, 3))
            .sketched();
    return object().always("id", id).always("vendors", vendors).sketched();
  }

  private static Arbitrary<JsonNode> outfit(String id) {
    Arbitrary<JsonNode> effect = decimals("-10", "12.5", "-100", "-120", "50");
    return object().always("id", id).always("effects", onAttributes(35, effect)).sketched();
  }

  private static Arbitrary<JsonNode> lens(String id) {
    return object().always("id", id).always("weights", onAttributes(50, decimals("1", "0.5", "2", "0.1"))).sketched();
  }

  private static Arbitrary<JsonNode> onAttributes(int chance, Arbitrary<JsonNode> value) {
    return object()
        .always("grip", value)
        .maybe("kick", chance, value)
        .maybe("hush", chance, value)
        .maybe("reach", chance, value)
        .maybe("calm", chance, value)
        .sketched();
  }

  private static Arbitrary<JsonNode> limit(String id) {
    return Arbitraries.of("atMost", "atLeast")
        .flatMap(
            bound -> {
              // Mostly loose, so that most platforms have a build within their limits.
              String[] loose = bound.equals("atMost") ? new String[] {"100", "12", "3"} : new String[] {"-100", "-4", "0.5"};
              return object()
                    .always("id", id)
                    .always("attribute", texts("grip", "kick", "hush", "reach", "calm"))
                    .always(bound, Arbitraries.oneOf(threshold(loose), table(loose)))
                    .maybe("loaded", 30, no())
                    .maybe("near", 30, decimals("0.5", "2"))
                    .maybe("severity", 30, texts("error", "warning"))
                    .sketched();
            });
  }

  private static Arbitrary<JsonNode> threshold(String[] loose) {
    return Arbitraries.frequencyOf(Tuple.of(3, decimals(loose)), Tuple.of(1, decimals("0", "1", "2.5", "10", "-2")));
  }

  private static Arbitrary<JsonNode> table(String[] loose) {
    Arbitrary<JsonNode> points =
        Combinators.combine(
                Arbitraries.of("-3", "0", "1", "2.5", "7", "100").set().ofMinSize(1).ofMaxSize(3),
                threshold(loose).list().ofSize(3))
            .as(RandomCatalogs::points);
    return object().always("by", texts("grip", "kick", "hush", "reach", "calm")).always("points", points).sketched();
  }

  private static JsonNode points(Set<String> xs, List<JsonNode> ys) {
    ArrayNode points = Sketch.NODES.arrayNode();
    xs.stream()
        .map(BigDecimal::new)
        .sorted()
        .forEach(x -> points.add(Sketch.NODES.arrayNode().add(Sketch.NODES.numberNode(x)).add(ys.get(points.size()))));
    return points;
  }

  /** As many entries as asked for, their ids numbered from 0. */
  private static Arbitrary<JsonNode> numbered(
      String prefix, int least, int most, Function<String, Arbitrary<JsonNode>> entry) {
    return Arbitraries.integers()
        .between(least, most)
        .flatMap(count -> each(IntStream.range(0, count).mapToObj(i -> entry.apply(prefix + i)).toList()));
  }
}
