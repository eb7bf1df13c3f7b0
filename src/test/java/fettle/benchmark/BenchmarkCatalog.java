package fettle.benchmark;

import fettle.document.Document;
import fettle.document.Documents;
import java.io.IOException;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.SplittableRandom;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/**
 * A made-up catalog of any size, always the same for the same seed: families of platforms with their own barrels, guards, stocks and magazines, and what all
 * of them share: muzzle devices with thread adapters, sights on rings and risers, lamps, grips and feet on measured rails.
 *
 * <p>Each section becomes a document, as a maintainer would keep them. A part has figures in what parts of its sort are bought for, and what is better in most of them
 * is dearer, give or take a half. In a dense catalog any part has figures in any attribute, in no relation to each other or the price, and rails hold more: no game is like that,
 * but nothing is harder to compare.
 */
public final class BenchmarkCatalog {

    /** How large a catalog is. Parts are spread over the sorts in fixed shares; the number comes out within a few of what is asked for. */
    public record Size(int parts, int platforms, int families, int builds, boolean dense) {

        /** What most is timed on. */
        public static final Size LARGE = new Size(5_000, 120, 12, 200, false);

        /** The same, dense. */
        public static final Size DENSE = new Size(5_000, 120, 12, 200, true);

        /** The dense one where {@code fettle.dense} says so. */
        static Size asked() {
            return Boolean.getBoolean("fettle.dense") ? DENSE : LARGE;
        }
    }

    /** What parts of a sort have in an attribute: from that of the poorest to that of the best, in halves, and the share of parts that have it. */
    private record Range(String attribute, int poorest, int best, double share) {}

    private static final JsonMapper JSON = JsonMapper.builder().build();
    private static final String[] GAS = {"short", "middle", "long"};
    private static final int THREADS = 6;
    private static final int BORES = 8;
    private static final int FEET = 4;
    private static final Map<String, List<Range>> RANGES = Map.ofEntries(
            entry("barrel", new Range("grip", -4, 12, 0.9), new Range("mass", 2_800, 1_000, 1), new Range("kick", 4, -12, 0.8), new Range("spread", 20, -20, 0.8)),
            entry("gas-block", new Range("grip", -2, 2, 0.5), new Range("mass", 180, 40, 1)),
            entry("guard", new Range("grip", 2, 16, 0.9), new Range("mass", 1_000, 300, 1), new Range("kick", 0, -8, 0.5), new Range("heat", 8, -8, 0.4)),
            entry("brake", new Range("kick", -4, -28, 0.95), new Range("mass", 400, 100, 1), new Range("grip", -6, 2, 0.6), new Range("noise", 10, 0, 0.5)),
            entry("silencer", new Range("noise", -30, -60, 1), new Range("mass", 1_400, 500, 1), new Range("grip", -24, -4, 0.95), new Range("kick", -2, -24, 0.9)),
            entry("thread-adapter", new Range("mass", 160, 60, 1), new Range("grip", -2, 0, 0.4)),
            entry("stock", new Range("grip", 4, 28, 1), new Range("mass", 1_800, 400, 1), new Range("kick", -12, -44, 1)),
            entry("tube", new Range("grip", 0, 6, 0.6), new Range("mass", 400, 160, 1)),
            entry("pad", new Range("kick", -2, -12, 1), new Range("mass", 160, 40, 1)),
            entry("handle", new Range("grip", 4, 24, 1), new Range("mass", 320, 80, 1), new Range("kick", 0, -6, 0.4)),
            entry("magazine", new Range("grip", -12, 0, 0.8), new Range("mass", 800, 120, 1)),
            entry("loop", new Range("grip", 0, 4, 1), new Range("mass", 40, 10, 1)),
            entry("bolt", new Range("mass", 400, 160, 1), new Range("kick", 4, -6, 0.5)),
            entry("sight", new Range("grip", -8, 2, 0.9), new Range("mass", 1_200, 120, 1)),
            entry("cap", new Range("mass", 40, 10, 1)),
            entry("riser", new Range("mass", 320, 80, 1), new Range("grip", -2, 1, 0.5)),
            entry("iron", new Range("mass", 120, 40, 1), new Range("grip", -2, 1, 0.5)),
            entry("lamp", new Range("mass", 400, 80, 1), new Range("grip", -4, 2, 0.6)),
            entry("grip", new Range("grip", 6, 20, 1), new Range("mass", 320, 60, 1), new Range("kick", 0, -8, 0.9)),
            entry("feet", new Range("sway", -10, -50, 1), new Range("mass", 1_000, 400, 1), new Range("grip", -6, 4, 0.7)),
            entry("cover", new Range("mass", 120, 20, 1), new Range("heat", 0, -8, 0.6)),
            entry("key-rail", new Range("mass", 120, 40, 1)),
            entry("trinket", new Range("mass", 100, 10, 1)));

    private final Size size;
    private final SplittableRandom random;
    private final Map<String, List<Map<String, Object>>> documents = new LinkedHashMap<>();
    private final Map<String, List<String>> bySort = new LinkedHashMap<>();
    private final Map<String, Double> qualities = new HashMap<>();
    private final List<Map<String, Object>> platforms = new ArrayList<>();

    private BenchmarkCatalog(Size size, long seed) {
        this.size = size;
        this.random = new SplittableRandom(seed);
    }

    /** Makes a catalog up. */
    public static BenchmarkCatalog of(Size size, long seed) {
        BenchmarkCatalog catalog = new BenchmarkCatalog(size, seed);
        catalog.makeUp();
        return catalog;
    }

    /** The documents by file name, each a JSON text. */
    public Map<String, String> texts() {
        Map<String, String> texts = new LinkedHashMap<>();
        texts.put("catalog.json", JSON.writeValueAsString(head()));
        documents.forEach((sort, parts) -> texts.put("parts-" + sort + ".json", JSON.writeValueAsString(Map.of("parts", parts))));
        texts.put("platforms.json", JSON.writeValueAsString(Map.of("platforms", platforms)));
        texts.put("offers.json", JSON.writeValueAsString(Map.of("offers", offers())));
        return texts;
    }

    /** The documents of some texts by file name, as if they had been read from files. */
    public static List<Document> documents(Map<String, String> texts) {
        return texts.entrySet().stream().map(text -> Documents.content(text.getKey(), text.getValue().getBytes(StandardCharsets.UTF_8))).toList();
    }

    /** Writes the documents, and the builds in a folder of their own. */
    public void write(Path directory) throws IOException {
        Files.createDirectories(directory.resolve("builds"));
        for (Map.Entry<String, String> text : texts().entrySet()) {
            Files.writeString(directory.resolve(text.getKey()), text.getValue());
        }
        Files.writeString(directory.resolve("builds/builds.json"), JSON.writeValueAsString(Map.of("builds", builds())));
    }

    private Map<String, Object> head() {
        Map<String, Object> head = new LinkedHashMap<>();
        head.put("catalog", Map.of("id", "long-yard", "patch", "7.2", "released", "2031-04-01", "currency", "scrip"));
        head.put("currencies", List.of(Map.of("id", "scrip", "rate", 1), Map.of("id", "chit", "rate", 110)));
        head.put("attributes", List.of(
                attribute("grip", "higher", "sum"), attribute("mass", "lower", "sum"), attribute("kick", "lower", "percent"), attribute("sway", "lower", "percent"),
                attribute("spread", "lower", "product"), attribute("view", "higher", "max"), attribute("noise", "lower", "sum"), attribute("heat", "lower", "sum")));
        List<Map<String, Object>> kinds = new ArrayList<>();
        bySort.keySet().forEach(sort -> kinds.add(Map.of("id", sort, "role", List.of("sight", "lamp", "magazine").contains(sort))));
        head.put("kinds", kinds);
        List<Map<String, Object>> mounts = new ArrayList<>();
        for (int family = 0; family < size.families; family++) {
            for (String sort : List.of("barrel", "guard", "stock", "well", "bolt")) {
                mounts.add(Map.of("id", sort + "-" + family));
            }
        }
        for (String[] group : new String[][] {numbered("thread", THREADS), numbered("gas-seat", 3), numbered("foot", FEET), numbered("collar", 4), {"tube", "top-rail",
                "side-rail", "low-rail", "handle", "key"}}) {
            Arrays.stream(group).forEach(mount -> mounts.add(Map.of("id", mount)));
        }
        head.put("mounts", mounts);
        head.put("zones", List.of(Map.of("id", "main-sight"), Map.of("id", "off-hand"), Map.of("id", "feet"), Map.of("id", "front-post"), Map.of("id", "switch")));
        head.put("traits", List.of(Map.of("id", "bore"), Map.of("id", "gas")));
        head.put("vendors", List.of(Map.of("id", "bazaar", "tiers", 0), Map.of("id", "harbour", "tiers", 4), Map.of("id", "smith", "tiers", 4), Map.of("id", "depot", "tiers", 3)));
        head.put("goods", List.of(Map.of("id", "copper", "value", 90), Map.of("id", "resin", "value", 240)));
        head.put("access", List.of(
                Map.of("id", "newcomer", "vendors", Map.of("bazaar", 0, "harbour", 1, "smith", 1)),
                Map.of("id", "regular", "vendors", Map.of("bazaar", 0, "harbour", 3, "smith", 2, "depot", 1))));
        head.put("outfits", List.of(Map.of("id", "harness", "effects", Map.of("grip", -8)), Map.of("id", "plate", "effects", Map.of("grip", -20, "sway", 5))));
        head.put("limits", List.of(
                Map.of("id", "carry", "attribute", "mass", "atMost", Map.of("by", "grip", "points", List.of(List.of(30, 3500), List.of(60, 6000)))),
                Map.of("id", "steady", "attribute", "kick", "atMost", 320, "near", 10)));
        head.put("lenses", List.of(Map.of("id", "control", "weights", Map.of("grip", 2, "kick", 1)), Map.of("id", "light", "weights", Map.of("grip", 1, "mass", decimal(1, 2)))));
        head.put("constraints", List.of(
                Map.of("id", "hot-and-quiet", "when", List.of("tag:vented", "kind:silencer"), "need", List.of("tag:heat-shield"), "because", "a vented guard lets the heat of a silencer out"),
                Map.of("id", "one-lamp-style", "when", List.of("tag:infrared", "tag:white"), "need", List.of("tag:combined"), "because", "two lamps need a common switch"),
                Map.of("id", "feet-and-hook", "when", List.of("kind:feet", "tag:hook"), "need", List.of(), "because", "the hook folds into the feet")));
        return head;
    }

    private static Map<String, Object> attribute(String id, String better, String combine) {
        return Map.of("id", id, "unit", "pt", "better", better, "combine", combine, "decimals", 2, "shown", 0, "material", decimal(5, 1));
    }

    private static String[] numbered(String name, int count) {
        String[] names = new String[count];
        Arrays.setAll(names, i -> name + "-" + i);
        return names;
    }

    private static BigDecimal decimal(long digits, int places) {
        return BigDecimal.valueOf(digits, places);
    }

    private int share(double share) {
        return (int) Math.round(size.parts * share);
    }

    private static Map.Entry<String, List<Range>> entry(String sort, Range... ranges) {
        return Map.entry(sort, List.of(ranges));
    }

    /** How many parts a rail holds: one, or a few where the catalog is dense. */
    private int most(int dense) {
        return size.dense ? dense : 1;
    }

    private int upTo(int bound) {
        return random.nextInt(bound);
    }

    private boolean chance(double share) {
        return random.nextDouble() < share;
    }

    private void makeUp() {
        barrels();
        many("gas-block", 0.03, part -> {
            int length = upTo(3);
            part.mounts("gas-seat-" + upTo(3)).trait("gas", GAS[length]);
            if (chance(0.4)) {
                part.claims("front-post");
            } else if (chance(0.3)) {
                part.slot("post", Map.of("accepts", List.of("tag:post")));
            }
        });
        guards();
        many("brake", 0.08, part -> {
            part.mounts("thread-" + upTo(THREADS)).trait("bore", bores(1 + upTo(3)));
            if (chance(0.4)) {
                part.slot("collar", Map.of("mounts", List.of("collar-" + upTo(4))));
            }
        });
        many("silencer", 0.05, part -> {
            part.mounts(chance(0.6) ? "collar-" + upTo(4) : "thread-" + upTo(THREADS)).trait("bore", bores(2 + upTo(3)));
            if (chance(0.2)) {
                part.tags("heat-shield");
            }
        });
        // Adapters lead from a narrow thread to a wider one; one in eight leads back, so that there are circles.
        many("thread-adapter", 0.01, part -> {
            int narrow = upTo(THREADS - 1);
            int wide = narrow + 1 + upTo(THREADS - 1 - narrow);
            boolean back = narrow < 2 && wide == narrow + 1 && chance(0.5);
            part.mounts("thread-" + (back ? wide : narrow)).slot("muzzle", Map.of("mounts", List.of("thread-" + (back ? narrow : wide))));
        });
        many("stock", 0.08, part -> {
            part.mounts(chance(0.5) ? "tube" : "stock-" + upTo(size.families));
            if (chance(0.2)) {
                part.slot("pad", Map.of("accepts", List.of("kind:pad")));
            }
            if (chance(0.1)) {
                part.tags("hook");
            }
        });
        many("tube", 0.015, part -> part.mounts("stock-" + upTo(size.families)).slot("end", Map.of("mounts", List.of("tube"), "required", chance(0.5))));
        many("pad", 0.02, part -> { });
        many("handle", 0.06, part -> part.mounts("handle"));
        many("magazine", 0.07, part -> {
            part.mounts("well-" + upTo(size.families)).trait("bore", bores(1)).loaded("mass", decimal(50 + upTo(600), 0));
            if (chance(0.1)) {
                part.slot("loop", Map.of("accepts", List.of("kind:loop")));
            }
        });
        many("loop", 0.004, part -> { });
        many("bolt", 0.06, part -> part.mounts("bolt-" + upTo(size.families)));
        sights();
        many("lamp", 0.07, part -> {
            part.mounts("side-rail", chance(0.3) ? "low-rail" : "side-rail").span(1 + upTo(3)).tags(List.of("white", "infrared", "laser", "combined").get(upTo(4)));
            if (chance(0.25)) {
                part.claims("switch");
            }
        });
        many("grip", 0.06, part -> part.mounts(chance(0.8) ? "low-rail" : "key").span(1 + upTo(2)).claims("off-hand"));
        many("feet", 0.01, part -> part.mounts("low-rail").span(2 + upTo(2)).claims("feet").blocks("low-front"));
        many("cover", 0.012, part -> part.mounts("side-rail", "low-rail").span(1 + upTo(3)));
        many("key-rail", 0.012, part -> {
            String rail = chance(0.5) ? "side-rail" : "low-rail";
            part.mounts("key").slot("rail", Map.of("mounts", List.of(rail), "units", 3 + upTo(4), "most", most(1 + upTo(2))));
        });
        many("trinket", Math.max(0, 1 - bySort.values().stream().mapToInt(List::size).sum() / (double) size.parts), part -> part.mounts("key"));
        quirks();
        platforms();
    }

    private void barrels() {
        many("barrel", 0.09, part -> {
            int family = upTo(size.families);
            int bore = family % BORES;
            part.mounts("barrel-" + family).trait("bore", "bore-" + (chance(0.8) ? bore : (bore + 1) % BORES));
            part.slot("muzzle", Map.of("mounts", List.of("thread-" + (family + upTo(2)) % THREADS)));
            if (family % 3 != 0) {
                part.slot("gas", Map.of("mounts", List.of("gas-seat-" + family % 3), "required", true));
            } else {
                part.trait("gas", GAS[upTo(3)]);
            }
        });
    }

    private void guards() {
        many("guard", 0.11, part -> {
            int family = upTo(size.families);
            part.mounts("guard-" + family);
            if (chance(0.6)) {
                List<String> lengths = new ArrayList<>(List.of(GAS));
                lengths.remove(upTo(3));
                part.trait("gas", lengths.toArray(String[]::new));
            }
            if (chance(0.3)) {
                part.tags("vented");
            }
            if (chance(0.7)) {
                part.slot("top", Map.of("mounts", List.of("top-rail"), "units", 4 + upTo(6), "most", most(2)));
            }
            for (String side : List.of("left", "right")) {
                if (chance(0.7)) {
                    part.slot(side, Map.of("mounts", List.of(chance(0.7) ? "side-rail" : "key"), "units", 4 + upTo(4), "most", most(1 + upTo(2))));
                }
            }
            if (chance(0.85)) {
                part.slot("low", Map.of("mounts", List.of(chance(0.7) ? "low-rail" : "key"), "units", 6 + upTo(6), "most", most(2 + upTo(2)), "tags", List.of("low-front")));
            }
        });
    }

    private void sights() {
        many("sight", 0.09, part -> {
            part.stat("view", decimal(1 + upTo(60), 0));
            if (chance(0.5)) {
                part.mounts("top-rail").span(1 + upTo(3));
            } else {
                part.mounts("foot-" + upTo(FEET));
            }
            if (chance(0.6)) {
                part.claims("main-sight");
            }
            if (chance(0.08)) {
                part.slot("cap", Map.of("accepts", List.of("kind:cap")));
            }
        });
        many("cap", 0.006, part -> { });
        many("riser", 0.025, part -> {
            part.mounts("top-rail").span(2 + upTo(3));
            part.slot("seat", Map.of("mounts", List.of("foot-" + upTo(FEET)), "required", chance(0.7)));
            if (chance(0.15)) {
                part.slot("side", Map.of("mounts", List.of("side-rail"), "units", 3));
            }
        });
        many("iron", 0.02, part -> {
            part.mounts("top-rail");
            if (chance(0.5)) {
                part.tags("post").needs("tag:notch");
            } else {
                part.tags("notch");
            }
        });
    }

    /** A few parts get in the way of one another, each in its own manner. */
    private void quirks() {
        List<String> guards = bySort.get("guard");
        List<String> sights = bySort.get("sight");
        for (List<Map<String, Object>> parts : documents.values()) {
            for (Map<String, Object> part : parts) {
                String kind = (String) part.get("kind");
                if (kind.equals("brake") && chance(0.04) || kind.equals("lamp") && chance(0.03)) {
                    part.put("excludes", List.of(guards.get(upTo(guards.size()))));
                } else if (kind.equals("guard") && chance(0.08)) {
                    part.put("excludes", List.of(sights.get(upTo(sights.size())), chance(0.5) ? "kind:feet" : sights.get(upTo(sights.size()))));
                } else if (kind.equals("stock") && chance(0.03)) {
                    part.put("needs", List.of(List.of("kind:handle")));
                }
            }
        }
    }

    private void platforms() {
        for (int i = 0; i < size.platforms; i++) {
            int family = i % size.families;
            Part part = new Part("frame-" + i);
            part.stat("grip", decimal(30 + upTo(30), 0)).stat("mass", decimal(1500 + upTo(2500), 0)).stat("kick", decimal(150 + upTo(300), 0))
                    .stat("sway", decimal(20 + upTo(50), 0)).stat("spread", decimal(100 + upTo(400), 2));
            part.slot("barrel", Map.of("mounts", List.of("barrel-" + family), "required", true));
            part.slot("guard", Map.of("mounts", List.of("guard-" + family)));
            part.slot("stock", Map.of("mounts", List.of("stock-" + family)));
            part.slot("handle", Map.of("mounts", List.of("handle"), "required", chance(0.5)));
            part.slot("magazine", Map.of("mounts", List.of("well-" + family), "required", true));
            part.slot("bolt", Map.of("mounts", List.of("bolt-" + family), "required", true));
            part.slot("top", Map.of("mounts", List.of("top-rail"), "units", 8 + upTo(6), "most", most(3)));
            if (chance(0.3)) {
                part.trait("bore", "bore-" + family % BORES, "bore-" + (family + 1) % BORES);
            }
            platforms.add(part.entry);
        }
    }

    private String[] bores(int count) {
        int from = upTo(BORES);
        String[] bores = new String[count];
        Arrays.setAll(bores, i -> "bore-" + (from + i) % BORES);
        return bores;
    }

    private interface Shaping {
        void shape(Part part);
    }

    private void many(String sort, double share, Shaping shaping) {
        List<Map<String, Object>> entries = new ArrayList<>();
        List<String> ids = new ArrayList<>();
        for (int i = 0; i < share(share); i++) {
            Part part = new Part(sort + "-" + i);
            part.entry.put("kind", sort);
            if (size.dense) {
                scatter(part);
            } else {
                qualities.put(sort + "-" + i, random.nextDouble());
                RANGES.get(sort).forEach(range -> give(part, range, qualities.get(part.entry.get("id"))));
            }
            shaping.shape(part);
            entries.add(part.entry);
            ids.add(sort + "-" + i);
        }
        documents.put(sort, entries);
        bySort.put(sort, ids);
    }

    private void scatter(Part part) {
        for (String attribute : List.of("grip", "mass", "kick", "sway", "spread", "noise", "heat")) {
            if (attribute.equals("mass") || chance(0.35)) {
                part.stat(attribute, attribute.equals("mass") ? decimal(5 + upTo(700), 0) : decimal(upTo(33) - 16L, 1 + upTo(2)));
            }
        }
    }

    private void give(Part part, Range range, double quality) {
        if (chance(range.share)) {
            double halves = range.poorest + (range.best - range.poorest) * (quality + random.nextDouble()) / 2;
            part.stat(range.attribute, decimal(Math.round(halves) * 5, 1));
        }
    }

    /** How dear a part is, of so much at most. */
    private int price(String id, Random prices, int most) {
        return size.dense ? prices.nextInt(most) : (int) (most * qualities.get(id) * (1 + prices.nextDouble()) / 2);
    }

    private List<Map<String, Object>> offers() {
        List<Map<String, Object>> offers = new ArrayList<>();
        Random prices = new Random(size.parts);
        bySort.values().forEach(ids -> ids.forEach(id -> {
            offers.add(offer(id, "bazaar", Map.of("price", 500 + price(id, prices, 60_000))));
            if (prices.nextInt(3) > 0) {
                offers.add(offer(id, "harbour", Map.of("tier", 1 + prices.nextInt(4), "price", 400 + price(id, prices, 40_000))));
            }
            if (prices.nextInt(5) == 0) {
                offers.add(offer(id, "smith", Map.of("tier", 1 + prices.nextInt(4), "barter", List.of(Map.of("good", "copper", "count", 1 + prices.nextInt(40))))));
            }
        }));
        return offers;
    }

    private static Map<String, Object> offer(String part, String vendor, Map<String, Object> more) {
        Map<String, Object> offer = new LinkedHashMap<>(Map.of("part", part, "vendor", vendor, "seen", "2031-04-02"));
        offer.putAll(more);
        return offer;
    }

    /** Builds put together slot by slot from what shares a mount; some of them break a rule. */
    private List<Map<String, Object>> builds() {
        List<JsonNode> parts = documents.values().stream().flatMap(List::stream).<JsonNode>map(JSON::valueToTree).toList();
        List<Map<String, Object>> builds = new ArrayList<>();
        for (int i = 0; i < size.builds; i++) {
            Map<String, Object> platform = platforms.get(i % platforms.size());
            Map<String, Object> placed = new LinkedHashMap<>();
            place(JSON.valueToTree(platform), "", placed, 0, parts);
            builds.add(Map.of("id", "build-" + i, "platform", platform.get("id"), "patch", "7.2", "lens", "control", "access", "regular", "parts", placed));
        }
        return builds;
    }

    private void place(JsonNode host, String prefix, Map<String, Object> placed, int depth, List<JsonNode> parts) {
        for (JsonNode slot : host.path("slots")) {
            Set<JsonNode> mounts = Set.copyOf(slot.path("mounts").valueStream().toList());
            List<JsonNode> fitting = parts.stream().filter(part -> part.path("mounts").valueStream().anyMatch(mounts::contains)).toList();
            boolean wanted = slot.path("required").asBoolean(false) || depth == 0 && chance(0.8) || chance(0.3);
            if (!fitting.isEmpty() && wanted && depth < 4) {
                JsonNode part = fitting.get(upTo(fitting.size()));
                boolean several = slot.has("units");
                String path = prefix + slot.path("id").asString();
                String id = part.path("id").asString();
                placed.put(path, several ? List.of(id) : id);
                place(part, path + (several ? ":0/" : "/"), placed, depth + 1, parts);
            }
        }
    }

    /** An entry being written. */
    private static final class Part {

        private final Map<String, Object> entry = new LinkedHashMap<>();
        private final Map<String, Map<String, Object>> inner = new HashMap<>();
        private final List<Object> slots = new ArrayList<>();

        Part(String id) {
            entry.put("id", id);
        }

        Part mounts(String... mounts) {
            entry.put("mounts", Arrays.stream(mounts).distinct().toList());
            return this;
        }

        Part tags(String... tags) {
            entry.put("tags", List.of(tags));
            return this;
        }

        Part claims(String zone) {
            entry.put("claims", List.of(zone));
            return this;
        }

        Part blocks(String tag) {
            entry.put("blocks", List.of(tag));
            return this;
        }

        Part needs(String selector) {
            entry.put("needs", List.of(List.of(selector)));
            return this;
        }

        Part span(int notches) {
            entry.put("span", notches);
            return this;
        }

        Part trait(String trait, String... values) {
            into("traits").put(trait, List.of(values));
            return this;
        }

        Part stat(String attribute, BigDecimal value) {
            into("stats").put(attribute, value);
            return this;
        }

        Part loaded(String attribute, BigDecimal value) {
            into("loaded").put(attribute, value);
            return this;
        }

        Part slot(String id, Map<String, Object> more) {
            Map<String, Object> slot = new LinkedHashMap<>(Map.of("id", id));
            slot.putAll(more);
            slots.add(slot);
            entry.putIfAbsent("slots", slots);
            return this;
        }

        private Map<String, Object> into(String property) {
            Map<String, Object> members = inner.computeIfAbsent(property, unused -> new LinkedHashMap<>());
            entry.putIfAbsent(property, members);
            return members;
        }
    }
}
