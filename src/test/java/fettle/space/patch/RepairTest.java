package fettle.space.patch;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fettle.catalog.Build;
import fettle.oracle.Assembly;
import fettle.oracle.BuildText;
import fettle.oracle.Entries;
import fettle.oracle.NearestRepair;
import fettle.oracle.Oracle;
import fettle.oracle.RandomPatches;
import fettle.oracle.Space;
import fettle.space.BuildCheck;
import fettle.space.BuildResult;
import fettle.space.Exact;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Assume;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.junit.jupiter.api.Test;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;

/** The nearest repair of a broken build, against a search through all valid builds, and worked by hand. */
class RepairTest {

    private static final JsonMapper JSON = new JsonMapper();
    private static final int ENOUGH = 200_000;

    @Provide
    Arbitrary<RandomPatches.Patch> patches() {
        return RandomPatches.patches(500);
    }

    @Property(tries = 300)
    void no_valid_build_is_nearer_than_the_repair_and_none_so_near_is_more_like_it_or_as_like_and_easier_to_be_had(@ForAll("patches") RandomPatches.Patch patch) {
        Sides sides = Sides.of(patch.old(), patch.now());
        Entries before = Entries.of(patch.old());
        for (JsonNode written : patch.builds()) {
            JsonNode build = withoutNotches(written);
            Build read = Sides.builds(List.of(build)).get(0);
            BuildResult old = new BuildCheck(sides.old()).check(read);
            BuildCheck check = new BuildCheck(sides.now());
            if (old.valid() && !check.check(read).valid()) {
                Optional<Space> space = Space.of(Entries.of(patch.now()), read.platform().id(), 3_000);
                Assume.that(space.isPresent());
                RepairOutcome outcome = new Repairs(sides.old().catalog(), sides.now(), check, Map.of(), List.of(), ENOUGH).nearest(read, old.placement().orElseThrow());
                Optional<NearestRepair> expected = NearestRepair.of(before, space.get(), build);
                if (expected.isEmpty()) {
                    assertTrue(!(outcome instanceof RepairOutcome.Found), () -> "found " + outcome);
                } else if (expected.get().changes() > Repairs.MOST_CHANGES) {
                    assertEquals(new RepairOutcome.CutShort(Repairs.MOST_CHANGES + 1), outcome);
                } else {
                    Repair repair = assertInstanceOf(RepairOutcome.Found.class, outcome, outcome::toString).repair();
                    assertEquals(expected.get().changes(), repair.steps().size());
                    assertEquals(expected.get().builds(), repair.others() + 1);
                    JsonNode repaired = repaired(Entries.of(patch.now()), build, repair);
                    assertEquals(expected.get().likeness(), NearestRepair.likeness(before, build, Entries.of(patch.now()), repaired));
                    assertEquals(expected.get().outlay(), NearestRepair.outlay(Entries.of(patch.now()), repaired));
                    assertEquals(NearestRepair.cost(Entries.of(patch.now()), repaired).map(Exact::text), repair.cost().map(Exact::text));
                    assertEquals(List.of(), Oracle.valid(patch.now(), repaired));
                }
            }
        }
    }

    @Property(tries = 300)
    void the_repair_that_keeps_every_part_is_the_nearest_that_does_and_is_told_only_where_the_nearest_of_all_does_not(@ForAll("patches") RandomPatches.Patch patch) {
        Sides sides = Sides.of(patch.old(), patch.now());
        Entries before = Entries.of(patch.old());
        Entries after = Entries.of(patch.now());
        for (JsonNode written : patch.builds()) {
            JsonNode build = withoutNotches(written);
            Build read = Sides.builds(List.of(build)).get(0);
            BuildResult old = new BuildCheck(sides.old()).check(read);
            BuildCheck check = new BuildCheck(sides.now());
            if (old.valid() && !check.check(read).valid()) {
                Optional<Space> space = Space.of(after, read.platform().id(), 3_000);
                Assume.that(space.isPresent());
                Repairs repairs = new Repairs(sides.old().catalog(), sides.now(), check, Map.of(), List.of(), ENOUGH);
                if (repairs.nearest(read, old.placement().orElseThrow()) instanceof RepairOutcome.Found found) {
                    int out = NearestRepair.likeness(before, build, after, repaired(after, build, found.repair())).out();
                    Optional<Integer> expected = NearestRepair.keeping(before, space.get(), build).map(NearestRepair::changes)
                            .filter(changes -> out > 0 && changes <= found.repair().steps().size() + 1);
                    Optional<Repair> keeping = repairs.keeping(read, old.placement().orElseThrow(), found.repair());
                    assertEquals(expected, keeping.map(repair -> repair.steps().size()));
                    keeping.ifPresent(repair -> assertEquals(0, NearestRepair.likeness(before, build, after, repaired(after, build, repair)).out()));
                }
            }
        }
    }

    private static JsonNode withoutNotches(JsonNode build) {
        JsonNode copy = build.deepCopy();
        for (JsonNode held : copy.path("parts")) {
            if (held instanceof ArrayNode list) {
                for (int i = 0; i < list.size(); i++) {
                    if (list.get(i).isObject()) {
                        list.set(i, list.get(i).get("part"));
                    }
                }
            }
        }
        return copy;
    }

    /** The build with the steps taken, written as the new catalog asks for. */
    private static JsonNode repaired(Entries now, JsonNode build, Repair repair) {
        SortedMap<String, String> seats = new TreeMap<>();
        build.path("parts").properties().forEach(entry -> {
            if (entry.getValue() instanceof ArrayNode list) {
                for (int i = 0; i < list.size(); i++) {
                    seats.put(seat(entry.getKey() + ":" + i), list.get(i).asString());
                }
            } else {
                seats.put(seat(entry.getKey()), entry.getValue().asString());
            }
        });
        for (PathChange step : repair.steps()) {
            step.to().ifPresentOrElse(part -> seats.put(seat(step.path()), part), () -> seats.remove(seat(step.path())));
        }
        ObjectNode written = (ObjectNode) build.deepCopy();
        written.set("parts", BuildText.parts(now, assembly(build.path("platform").asString(), "", seats)));
        return written;
    }

    /** A path with a position in every slot. */
    private static String seat(String path) {
        return String.join("/", List.of(path.split("/")).stream().map(slot -> slot.contains(":") ? slot : slot + ":0").toList());
    }

    private static Assembly assembly(String part, String prefix, SortedMap<String, String> seats) {
        Map<String, List<Assembly>> slots = new TreeMap<>();
        seats.forEach((seat, held) -> {
            if (seat.startsWith(prefix) && seat.indexOf('/', prefix.length()) < 0) {
                slots.computeIfAbsent(seat.substring(prefix.length(), seat.lastIndexOf(':')), unused -> new ArrayList<>())
                        .add(assembly(held, seat + "/", seats));
            }
        });
        return Assembly.of(part, slots);
    }

    private static final String CATALOG = """
            catalog: { id: quay, patch: "1", released: 2031-01-01, currency: crown }
            currencies: [{ id: crown, rate: 1 }]
            kinds: [{ id: sight, role: true }, { id: riser }, { id: lamp }]
            mounts: [{ id: rail }, { id: dovetail }, { id: clamp }]
            platforms:
              - id: carbine
                slots: [{ id: top, mounts: [%s], units: 6, most: 3, required: true }]
            parts:
              - { id: mote, kind: sight, mounts: [dovetail], span: 2 }
              - { id: speck, kind: sight, mounts: [rail], span: 2 }
              - { id: plate, kind: riser, mounts: [rail], slots: [{ id: seat, mounts: [dovetail] }], span: %s }
              - { id: torch, kind: lamp, mounts: [rail], span: 3%s }
            vendors: [{ id: stall, tiers: 0 }]
            offers:
              - { part: mote, vendor: stall, price: 50 }
              - { part: speck, vendor: stall, price: 70 }
              - { part: plate, vendor: stall, price: 5 }
              - { part: torch, vendor: stall, price: 20 }
            """;

    private static String catalog(String mounts, int plate, String torch) {
        return CATALOG.formatted(mounts, plate, torch);
    }

    private static List<String> steps(Repair repair) {
        return repair.steps().stream().map(step -> step.path() + ": " + step.from().orElse("-") + " > " + step.to().orElse("-")).toList();
    }

    private static Repair nearest(BuildShift shift) {
        return assertInstanceOf(RepairOutcome.Found.class, shift.repair().orElseThrow()).repair();
    }

    @Test
    void a_part_that_lost_its_mount_is_exchanged_where_something_must_be_there_and_hung_on_an_adapter_where_it_is_to_stay() {
        BuildShift shift = Sides.of(catalog("rail, dovetail", 2, ""), catalog("rail", 2, ""))
                .shift("{ id: b, platform: carbine, parts: { top: [mote] } }");
        assertEquals(List.of("top:0: mote > speck"), steps(nearest(shift)));
        assertEquals("70", Exact.text(nearest(shift).cost().orElseThrow()));
        assertEquals(2, nearest(shift).others());
        assertEquals(List.of("top:0: mote > plate", "top:0/seat: - > mote"), steps(shift.keeping().orElseThrow()));
        assertEquals("55", Exact.text(shift.keeping().orElseThrow().cost().orElseThrow()));
    }

    @Test
    void a_part_that_a_build_has_twice_is_kept_only_where_both_are() {
        BuildShift shift = Sides.of(catalog("rail, dovetail", 2, ""), catalog("rail", 2, ""))
                .shift("{ id: b, platform: carbine, parts: { top: [plate, mote], 'top:0/seat': mote } }");
        assertEquals(List.of("top:1: mote > speck"), steps(nearest(shift)));
        assertEquals(Optional.empty(), shift.keeping());
    }

    @Test
    void a_part_that_grew_is_moved_off_its_notch_where_it_can_stay() {
        BuildShift shift = Sides.of(catalog("rail", 1, ""), catalog("rail", 2, ""))
                .shift("{ id: b, platform: carbine, parts: { top: [{ part: plate, at: 2 }, { part: speck, at: 3 }] } }");
        assertEquals(List.of("top:1: speck > speck"), steps(nearest(shift)));
        assertTrue(nearest(shift).steps().get(0).moved());
        assertEquals(0, nearest(shift).others());
        assertEquals(Optional.empty(), shift.keeping());
    }

    @Test
    void a_new_need_is_met_by_a_part_that_serves_rather_than_that_the_needy_part_goes() {
        BuildShift shift = Sides.of(catalog("rail", 1, ""), catalog("rail", 1, ", needs: [[\"kind:sight\"]]"))
                .shift("{ id: b, platform: carbine, parts: { top: [torch] } }");
        assertEquals(List.of("top:1: - > speck"), steps(nearest(shift)));
        assertEquals(Optional.empty(), shift.keeping());
    }

    private static final String STOCKS = """
            catalog: { id: quay, patch: "1", released: 2031-01-01, currency: crown }
            currencies: [{ id: crown, rate: 1 }]
            kinds: [{ id: stock }, { id: charm }]
            mounts: [{ id: tube }, { id: cord }]
            platforms:
              - id: carbine
                slots: [{ id: tail, mounts: [tube], required: true }, { id: ring, mounts: [cord] }]
            parts:
              - { id: ash, kind: stock, mounts: [tube] }
              - { id: beech, kind: stock, mounts: [tube] }
              - { id: cedar, kind: stock, mounts: [tube] }
              - { id: medal, kind: charm, mounts: [cord] }%s
            vendors: [{ id: stall, tiers: 0 }]
            offers:
              - { part: beech, vendor: stall, price: 9 }
              - { part: cedar, vendor: stall, price: 5 }
            """;

    private static Repair restocked(String build) {
        return nearest(Sides.of(STOCKS.formatted("\n  - { id: elder, kind: stock, mounts: [tube] }"), STOCKS.formatted("")).shift(build));
    }

    @Test
    void what_a_build_has_that_nobody_sells_has_no_part_in_which_repair_is_taken() {
        Repair repair = restocked("{ id: b, platform: carbine, parts: { tail: elder, ring: medal } }");
        assertEquals(List.of("tail: elder > cedar"), steps(repair));
        assertEquals(Optional.empty(), repair.cost());
    }

    @Test
    void what_is_owned_need_not_be_sold_to_be_put_in() {
        assertEquals(List.of("tail: elder > ash"), steps(restocked("{ id: b, platform: carbine, owned: [ash], parts: { tail: elder, ring: medal } }")));
        assertEquals(List.of("tail: elder > beech"), steps(restocked("{ id: b, platform: carbine, owned: [beech], parts: { tail: elder, ring: medal } }")));
    }

    @Test
    void a_build_whose_platform_is_gone_has_no_repair() {
        String old = catalog("rail", 1, "");
        BuildShift shift = Sides.of(old, old.replace("id: carbine", "id: pistol").replace("units: 6, most: 3", "units: 4, most: 1"))
                .shift("{ id: b, platform: carbine, parts: { top: [torch] } }");
        assertEquals(Verdict.BROKEN, shift.verdict());
        assertInstanceOf(RepairOutcome.None.class, shift.repair().orElseThrow());
    }

    @Test
    void a_renamed_platform_and_part_are_followed() {
        String old = catalog("rail", 1, "");
        BuildShift shift = Sides.of(old, old.replace("carbine", "carbine-ii").replace("id: torch", "id: torches").replace("part: torch", "part: torches"))
                .shift("{ id: b, platform: carbine, parts: { top: [torch] } }");
        assertEquals(List.of("platform: carbine > carbine-ii", "top:0: torch > torches"), steps(nearest(shift)));
        assertEquals(List.of("carbine carbine-ii true []", "torch torches true [top]"),
                shift.renamed().stream().map(use -> use.written() + " " + use.other() + " " + use.old() + " " + use.paths()).toList());
    }

    @Test
    void a_search_that_takes_too_much_work_says_so_and_from_how_many_changes_on() {
        Sides sides = Sides.of(catalog("rail, dovetail", 2, ""), catalog("rail", 2, ""));
        Build build = Sides.builds(List.of(JSON.readTree("{\"id\": \"b\", \"platform\": \"carbine\", \"parts\": {\"top\": [\"mote\"]}}"))).get(0);
        BuildResult before = new BuildCheck(sides.old()).check(build);
        BuildCheck check = new BuildCheck(sides.now());
        RepairOutcome outcome = new Repairs(sides.old().catalog(), sides.now(), check, Map.of(), List.of(), 2).nearest(build, before.placement().orElseThrow());
        assertEquals(new RepairOutcome.CutShort(1), outcome);
    }
}
