package fettle.space.patch;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.junit.jupiter.api.Test;

/** Which limits a patch is said to take a build across, where limits come, go or change their ids. */
class LimitCrossingTest {

    private static final String CATALOG = """
            catalog: { id: quay, patch: "1", released: 2031-01-01, currency: crown }
            currencies: [{ id: crown, rate: 1 }]
            attributes:
              - { id: length, unit: cm, better: none, combine: sum, decimals: 0, shown: 0 }
              - { id: grip, unit: points, better: higher, combine: sum, decimals: 0, shown: 0 }
            kinds: [{ id: barrel }]
            mounts: [{ id: throat }]
            platforms: [{ id: carbine, stats: { length: 40, grip: 5 }, slots: [{ id: barrel, mounts: [throat] }] }]
            parts: [{ id: pipe, kind: barrel, mounts: [throat], stats: { length: %s } }]
            limits: [%s]
            """;

    private static String catalog(int length, String limits) {
        return CATALOG.formatted(length, limits);
    }

    private static BuildShift shift(String old, String now) {
        return Sides.of(old, now).shift("{ id: b, platform: carbine, parts: { barrel: pipe } }");
    }

    private static List<String> crossed(BuildShift shift) {
        return shift.crossings().stream()
                .map(crossing -> crossing.limit().id() + (crossing.added() ? " new" : "") + (crossing.outward() ? " outward" : " inward")
                        + crossing.blame().stream().map(change -> " " + change.entry().subject() + " " + change.what()).toList())
                .toList();
    }

    @Test
    void a_new_limit_that_is_not_kept_is_told_as_new_whatever_else_changed() {
        assertEquals(List.of("locker new outward[ limit:locker ]"), crossed(shift(catalog(60, ""), catalog(60, "{ id: locker, attribute: length, atMost: 90 }"))));
        assertEquals(List.of("locker new outward[ limit:locker ]"), crossed(shift(catalog(40, ""), catalog(60, "{ id: locker, attribute: length, atMost: 90 }"))));
    }

    @Test
    void a_limit_that_is_gone_is_not_crossed() {
        BuildShift shift = shift(catalog(60, "{ id: locker, attribute: length, atMost: 90 }"), catalog(60, ""));
        assertEquals(List.of(), crossed(shift));
        assertEquals(Verdict.UNCHANGED, shift.verdict());
    }

    @Test
    void a_limit_that_goes_by_another_id_is_the_same() {
        String table = "{ id: %s, label: %s, attribute: length, atMost: { by: grip, points: [[0, %s], [10, 90]] } }";
        String old = table.formatted("locker", "Locker", "80") + ", { id: shelf, attribute: length, atMost: 90 }";
        String now = table.formatted("boat-locker", "The boat's locker", "80.0") + ", { id: plank, attribute: length, atMost: 90.0 }";
        assertEquals(List.of(), crossed(shift(catalog(60, old), catalog(60, now))));
        assertEquals(List.of("boat-locker outward[ part:pipe stats.length]", "plank outward[ part:pipe stats.length]"), crossed(shift(catalog(40, old), catalog(60, now))));
        assertEquals(List.of("boat-locker inward[ part:pipe stats.length]", "plank inward[ part:pipe stats.length]"), crossed(shift(catalog(60, old), catalog(40, now))));
    }

    @Test
    void a_limit_that_asks_for_something_else_is_another() {
        String old = "{ id: locker, attribute: length, atMost: 90 }";
        for (String other : List.of("attribute: length, atMost: 89", "attribute: length, atMost: 90, loaded: false", "attribute: length, atLeast: 200", "attribute: grip, atMost: 4")) {
            assertEquals(List.of("berth new outward[ limit:berth ]"), crossed(shift(catalog(60, old), catalog(60, "{ id: berth, " + other + " }"))), other);
        }
    }
}
