package fettle.space;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/** Makes up small catalogs in which every feature of the format turns up, often in odd company. */
public final class RandomCatalog {

    private static final List<String> KINDS = List.of("frame", "rail", "glass");
    private static final List<String> TAGS = List.of("t", "u");
    private static final List<String> MOUNTS = List.of("m", "n");
    private static final List<String> ZONES = List.of("z", "y");
    private static final List<String> SLOT_TAGS = List.of("low", "high");
    private static final List<String> TRAITS = List.of("bore", "gas");
    private static final List<String> VALUES = List.of("a", "b", "c");
    private static final List<String> ATTRIBUTES = List.of("grip", "kick", "pace", "top", "floor");

    private final Random random;
    private final List<String> parts;

    private RandomCatalog(Random random, int parts) {
        this.random = random;
        this.parts = IntStream.range(0, parts).mapToObj(i -> "p" + i).toList();
    }

    static String json(Random random) {
        return json(random, 2 + random.nextInt(6));
    }

    public static String json(Random random, int parts) {
        return new RandomCatalog(random, parts).catalog();
    }

    private String catalog() {
        List<String> platforms = IntStream.range(0, 1 + random.nextInt(2)).mapToObj(i -> host("f" + i, true)).toList();
        List<String> entries = parts.stream().map(id -> host(id, false)).toList();
        List<String> constraints = several(3, 0.3, () -> "{" + String.join(", ", text("id", "c" + random.nextInt(1_000_000)),
                list("when", selectors(1 + random.nextInt(2))), list("need", random.nextBoolean() ? selectors(1 + random.nextInt(2)) : List.of())) + "}");
        return """
                {"catalog": {"id": "made-up", "patch": "1", "released": "2031-01-01", "currency": "scrip"},
                 "currencies": [{"id": "scrip", "rate": 1}],
                 "attributes": [
                  {"id": "grip", "unit": "pt", "better": "higher", "combine": "sum", "decimals": 1, "shown": 0},
                  {"id": "kick", "unit": "pt", "better": "lower", "combine": "percent", "decimals": 1, "shown": 0},
                  {"id": "pace", "unit": "pt", "better": "higher", "combine": "product", "decimals": 1, "shown": 0},
                  {"id": "top", "unit": "pt", "better": "higher", "combine": "max", "decimals": 1, "shown": 0},
                  {"id": "floor", "unit": "pt", "better": "lower", "combine": "min", "decimals": 1, "shown": 0}],
                 "kinds": [{"id": "frame"}, {"id": "rail"}, {"id": "glass", "role": true}],
                 "mounts": [{"id": "m"}, {"id": "n"}],
                 "zones": [{"id": "z"}, {"id": "y"}],
                 "traits": [{"id": "bore"}, {"id": "gas"}],
                 "platforms": [%s],
                 "parts": [%s],
                 "constraints": [%s]}
                """.formatted(String.join(",\n  ", platforms), String.join(",\n  ", entries), String.join(",\n  ", constraints));
    }

    private String host(String id, boolean platform) {
        List<String> said = new ArrayList<>();
        said.add(text("id", id));
        if (!platform) {
            said.add(text("kind", one(KINDS)));
            said.add(list("mounts", some(MOUNTS, 0.5)));
            said.add(list("tags", some(TAGS, 0.4)));
            if (random.nextInt(3) == 0) {
                said.add("\"span\": " + (1 + random.nextInt(3)));
            }
        }
        said.add("\"slots\": [" + slots(platform) + "]");
        said.add(figures(platform));
        if (chance(0.3)) {
            said.add("\"traits\": {" + some(TRAITS, 0.6).stream().map(trait -> list(trait, atLeastOne(VALUES))).collect(Collectors.joining(", ")) + "}");
        }
        if (chance(0.2)) {
            said.add(list("claims", some(ZONES, 0.6)));
        }
        if (chance(0.2)) {
            said.add(list("blocks", some(SLOT_TAGS, 0.6)));
        }
        if (chance(0.2)) {
            said.add(list("excludes", selectors(1)));
        }
        if (chance(0.2)) {
            said.add("\"needs\": [" + several(2, 0.7, () -> array(selectors(1 + random.nextInt(2)))).stream().collect(Collectors.joining(", ")) + "]");
        }
        return "{" + String.join(", ", said) + "}";
    }

    private String slots(boolean platform) {
        int count = platform ? 1 + random.nextInt(3) : random.nextInt(4) < 2 ? 0 : 1 + random.nextInt(2);
        return IntStream.range(0, count).mapToObj(this::slot).collect(Collectors.joining(", "));
    }

    private String slot(int number) {
        List<String> said = new ArrayList<>();
        said.add(text("id", "s" + number));
        said.add(list("mounts", some(MOUNTS, 0.4)));
        said.add(list("accepts", selectors(random.nextInt(3))));
        if (chance(0.2)) {
            said.add(list("rejects", selectors(1)));
        }
        if (chance(0.3)) {
            said.add("\"required\": true");
        }
        said.add(list("tags", some(SLOT_TAGS, 0.3)));
        if (chance(0.3)) {
            said.add("\"units\": " + (1 + random.nextInt(4)));
        }
        if (chance(0.25)) {
            said.add("\"most\": " + (1 + random.nextInt(3)));
        }
        if (chance(0.2)) {
            said.add("\"repeats\": true");
        }
        return "{" + String.join(", ", said) + "}";
    }

    private String figures(boolean platform) {
        List<String> stats = ATTRIBUTES.stream()
                .filter(attribute -> platform && (attribute.equals("kick") || attribute.equals("pace")) || chance(0.4))
                .map(attribute -> "\"" + attribute + "\": " + (random.nextInt(platform ? 60 : 400) - (platform ? 20 : 250)) / 2.0)
                .toList();
        return "\"stats\": {" + String.join(", ", stats) + "}";
    }

    private List<String> selectors(int count) {
        return IntStream.range(0, count).mapToObj(i -> switch (random.nextInt(4)) {
            case 0 -> "kind:" + one(KINDS);
            case 1 -> "tag:" + one(TAGS);
            default -> one(parts);
        }).distinct().toList();
    }

    private boolean chance(double share) {
        return random.nextDouble() < share;
    }

    private <T> T one(List<T> of) {
        return of.get(random.nextInt(of.size()));
    }

    private <T> List<T> some(List<T> of, double share) {
        return of.stream().filter(unused -> chance(share)).toList();
    }

    private <T> List<T> atLeastOne(List<T> of) {
        List<T> some = some(of, 0.5);
        return some.isEmpty() ? List.of(one(of)) : some;
    }

    private List<String> several(int most, double share, Supplier<String> each) {
        return IntStream.range(0, most).filter(unused -> chance(share)).mapToObj(unused -> each.get()).toList();
    }

    private static String text(String name, String value) {
        return "\"" + name + "\": \"" + value + "\"";
    }

    private static String list(String name, List<String> values) {
        return "\"" + name + "\": " + array(values);
    }

    private static String array(List<String> values) {
        return "[" + values.stream().map(value -> "\"" + value + "\"").collect(Collectors.joining(", ")) + "]";
    }
}
