package fettle.space.patch;

import static org.junit.jupiter.api.Assertions.assertEquals;

import fettle.space.Change;
import fettle.space.Exact;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Builds that already name renamed parts and platforms by their new ids are compared with what these were before. */
class FormerIdsTest {

    private static final String OLD = """
            catalog: { id: quay, patch: "1", released: 2031-01-01, currency: crown }
            currencies: [{ id: crown, rate: 1 }]
            attributes: [{ id: mass, unit: kg, better: lower, combine: sum, decimals: 1, shown: 1 }]
            kinds: [{ id: tube }, { id: lens }]
            mounts: [{ id: throat }, { id: ring }]
            platforms:
              - { id: spyglass, stats: { mass: 2 }, tags: [brass], slots: [{ id: tube, accepts: [short-tube], required: true }] }
            parts:
              - { id: short-tube, kind: tube, mounts: [throat], stats: { mass: 0.5 }, span: 2, claims: [barrel], tags: [drawn], slots: [{ id: eye, mounts: [ring] }], excludes: [eye-glass] }
              - { id: eye-lens, kind: lens, mounts: [ring], stats: { mass: 0.1 }, tags: [ground] }
              - { id: eye-glass, kind: lens, mounts: [ring], stats: { mass: 0.2 }, tags: [cast, thick] }
            vendors: [{ id: stall, tiers: 0 }]
            offers: [{ part: short-tube, vendor: stall, price: 40 }, { part: eye-lens, vendor: stall, price: 10 }, { part: eye-glass, vendor: stall, price: 8 }]
            """;
    private static final String NEW = OLD.replace("patch: \"1\"", "patch: \"2\"").replace("short-tube", "short-tubes");

    private static final String MIGRATED = "{ id: b, platform: spyglass, parts: { tube: short-tubes, tube/eye: eye-lens } }";

    private static List<String> words(List<Change> changes) {
        return changes.stream().map(Sides::line).toList();
    }

    private static List<String> moved(BuildShift shift) {
        return shift.figures().stream()
                .map(figure -> (figure.cost() ? "cost" : figure.figure()) + figure.from().map(from -> " " + Exact.text(from)).orElse(" -")
                        + figure.to().map(to -> " " + Exact.text(to)).orElse(" -") + " " + words(figure.blame()))
                .toList();
    }

    private static List<String> formerly(BuildShift shift) {
        return shift.formerNames().stream().map(name -> name.written() + " was " + name.former()).toList();
    }

    private static List<String> steps(BuildShift shift) {
        RepairOutcome.Found found = (RepairOutcome.Found) shift.repair().orElseThrow();
        return found.repair().steps().stream().map(step -> step.path() + ": " + step.from().orElse("-") + " > " + step.to().orElse("-")).toList();
    }

    @Test
    void a_build_that_was_only_moved_to_new_ids_is_unchanged() {
        BuildShift shift = Sides.of(OLD, NEW).shift(MIGRATED);
        assertEquals(Verdict.UNCHANGED, shift.verdict());
        assertEquals(List.of(), moved(shift));
        assertEquals(List.of("short-tubes was short-tube"), formerly(shift));
    }

    @Test
    void what_else_was_done_to_a_renamed_part_is_to_blame_for_what_it_moved() {
        BuildShift shift = Sides.of(OLD, NEW.replace("mass: 0.5", "mass: 0.7").replace("price: 40", "price: 44")).shift(MIGRATED);
        assertEquals(Verdict.SHIFTED, shift.verdict());
        assertEquals(
                List.of("mass 2.6 2.8 [part:short-tubes stats.mass: 0.5 -> 0.7]", "cost 50 54 [part:short-tubes offers.stall.price: 40 -> 44]"), moved(shift));
    }

    @Test
    void what_is_owned_by_its_new_id_cost_nothing_before() {
        BuildShift shift = Sides.of(OLD, NEW.replace("price: 10", "price: 11"))
                .shift("{ id: b, platform: spyglass, owned: [short-tubes], parts: { tube: short-tubes, tube/eye: eye-lens } }");
        assertEquals(List.of("cost 10 11 [part:eye-lens offers.stall.price: 10 -> 11]"), moved(shift));
    }

    @Test
    void a_build_with_new_ids_that_is_not_valid_now_broke() {
        BuildShift shift = Sides.of(OLD, NEW.replace("excludes: [eye-glass]", "excludes: [eye-glass, eye-lens]")).shift(MIGRATED);
        assertEquals(Verdict.BROKEN, shift.verdict());
        assertEquals(List.of("part:short-tubes excludes: eye-glass -> eye-glass, eye-lens"), words(shift.blame()));
        assertEquals(List.of("tube/eye: eye-lens > -"), steps(shift));
    }

    @Test
    void a_build_with_new_ids_that_was_not_valid_by_the_old_ones_is_mended_by_what_else_was_done() {
        BuildShift shift = Sides.of(OLD, NEW.replace(", excludes: [eye-glass]", "")).shift(MIGRATED.replace("eye-lens", "eye-glass"));
        assertEquals(Verdict.MENDED, shift.verdict());
        assertEquals(List.of("part:short-tubes excludes: eye-glass -> -"), words(shift.blame()));
    }

    @Test
    void a_build_that_names_one_part_by_its_new_id_and_another_by_its_old_one_broke_by_that() {
        BuildShift shift = Sides.of(OLD, NEW.replace("eye-lens", "eye-lenses")).shift(MIGRATED);
        assertEquals(Verdict.BROKEN, shift.verdict());
        assertEquals(List.of("part:eye-lens: there -> -"), words(shift.blame()));
        assertEquals(List.of("tube/eye: eye-lens > eye-lenses"), steps(shift));
        assertEquals(List.of("short-tubes was short-tube"), formerly(shift));
    }

    @Test
    void a_platform_that_is_named_by_its_new_id_is_compared_likewise() {
        BuildShift shift = Sides.of(OLD, OLD.replace("id: spyglass", "id: spyglasses").replace("mass: 0.5", "mass: 0.6"))
                .shift("{ id: b, platform: spyglasses, parts: { tube: short-tube } }");
        assertEquals(List.of("mass 2.5 2.6 [part:short-tube stats.mass: 0.5 -> 0.6]"), moved(shift));
        assertEquals(List.of("spyglasses was spyglass"), formerly(shift));
    }
}
