package fettle.space.patch;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fettle.oracle.Fittings;
import fettle.oracle.JsonText;
import fettle.oracle.Oracle;
import fettle.oracle.RandomPatches;
import fettle.oracle.RandomPatches.Patch;
import fettle.space.BuildResult;
import fettle.space.Change;
import fettle.space.Exact;
import fettle.space.FormerName;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.junit.jupiter.api.Test;
import tools.jackson.databind.JsonNode;

/** What holds of every comparison, and the brute force that every figure in it must agree with. */
class PatchLawsTest {

    @Provide
    Arbitrary<Patch> patches() {
        return RandomPatches.patches(500);
    }

    @Property(tries = 40)
    void a_catalog_compared_with_itself_shows_nothing(@ForAll("patches") Patch patch) {
        Sides same = Sides.of(patch.old(), patch.old());
        assertEquals(List.of(), same.lines());
        assertEquals(List.of(), same.changes().renames());
        assertEquals(List.of(), same.lost());
        assertEquals(List.of(), same.gained());
        assertEquals(List.of(), SourceLosses.of(same.old().catalog(), same.now().catalog(), same.changes()));
        for (BuildShift shift : same.shifts(patch.builds())) {
            assertEquals(Verdict.UNCHANGED, shift.verdict());
            assertEquals(List.of(), shift.figures());
            assertEquals(List.of(), shift.crossings());
        }
    }

    @Property(tries = 100)
    void swapping_the_catalogs_swaps_everything(@ForAll("patches") Patch patch) {
        Sides forth = Sides.of(patch.old(), patch.now());
        Sides back = Sides.of(patch.now(), patch.old());
        assertEquals(withoutOffers(forth.changes().all().stream().map(Change::reversed).toList()), withoutOffers(back.changes().all()));
        assertEquals(
                forth.changes().renames().stream().map(rename -> rename.to() + " " + rename.from()).sorted().toList(),
                back.changes().renames().stream().map(rename -> rename.from() + " " + rename.to()).sorted().toList());
        assertEquals(fits(forth.lost()), fits(back.gained()));
        assertEquals(fits(forth.gained()), fits(back.lost()));
        List<BuildShift> ahead = forth.shifts(patch.builds());
        List<BuildShift> behind = back.shifts(patch.builds());
        for (int i = 0; i < ahead.size(); i++) {
            if (!ahead.get(i).renamed().isEmpty()) {
                // Old ids are gone as they stand, and new ones are taken for the old: that is not the same both ways.
                continue;
            }
            assertEquals(swapped(ahead.get(i).verdict()), behind.get(i).verdict());
            assertEquals(
                    ahead.get(i).figures().stream().map(figure -> figure.figure() + figure.to() + figure.from()).toList(),
                    behind.get(i).figures().stream().map(figure -> figure.figure() + figure.from() + figure.to()).toList());
            assertEquals(
                    ahead.get(i).crossings().stream().filter(crossing -> !crossing.added()).map(crossing -> crossing.limit().id() + crossing.outward()).toList(),
                    behind.get(i).crossings().stream().filter(crossing -> !crossing.added()).map(crossing -> crossing.limit().id() + !crossing.outward()).toList());
        }
    }

    /** Offers that moved to another tier are named by the old one, which is another one on the way back. */
    private static List<String> withoutOffers(Collection<Change> changes) {
        return changes.stream().filter(change -> !change.property().equals("offers")).map(Sides::line).toList();
    }

    private static Verdict swapped(Verdict verdict) {
        return switch (verdict) {
            case BROKEN -> Verdict.MENDED;
            case MENDED -> Verdict.BROKEN;
            case SHIFTED, UNCHANGED -> verdict;
        };
    }

    private static SortedSet<String> fits(List<FitGroup> groups) {
        SortedSet<String> fits = new TreeSet<>();
        groups.forEach(group -> group.fits().forEach(fit -> assertTrue(fits.add(fit.slot() + " " + fit.part()), () -> fit + " has two causes")));
        return fits;
    }

    @Property(tries = 100)
    void fits_lost_and_gained_are_those_of_one_side_alone_and_each_has_a_cause(@ForAll("patches") Patch patch) {
        Sides sides = Sides.of(patch.old(), patch.now());
        SortedSet<String> lost = Fittings.of(patch.old());
        SortedSet<String> gained = Fittings.of(patch.now());
        lost.removeAll(Fittings.of(patch.now()));
        gained.removeAll(Fittings.of(patch.old()));
        assertEquals(lost, fits(sides.lost()));
        assertEquals(gained, fits(sides.gained()));
        List<FitGroup> groups = new ArrayList<>(sides.lost());
        groups.addAll(sides.gained());
        groups.forEach(group -> assertFalse(group.causes().isEmpty(), () -> group + " has no cause"));
    }

    @Property(tries = 100)
    void builds_are_judged_on_both_sides_as_by_the_brute_force(@ForAll("patches") Patch patch) {
        Sides sides = Sides.of(patch.old(), patch.now());
        List<BuildShift> shifts = sides.shifts(patch.builds());
        for (int i = 0; i < shifts.size(); i++) {
            JsonNode build = patch.builds().get(i);
            JsonNode former = formerly(build, shifts.get(i));
            agrees(patch.old(), former, shifts.get(i).before());
            agrees(patch.now(), build, shifts.get(i).after());
            assertEquals(verdict(patch, former, build, shifts.get(i)), shifts.get(i).verdict());
        }
    }

    /** The build with the ids that what it names had before. */
    private static JsonNode formerly(JsonNode build, BuildShift shift) {
        String text = build.toString();
        for (FormerName name : shift.formerNames()) {
            text = text.replace('"' + name.written() + '"', '"' + name.former() + '"');
        }
        return JsonText.read(text);
    }

    private static void agrees(JsonNode catalog, JsonNode build, BuildResult result) {
        assertEquals(Oracle.valid(catalog, build).isEmpty(), result.valid());
        if (result.placement().map(placement -> placement.unresolved().isEmpty()).orElse(false)) {
            assertEquals(plain(Oracle.totals(catalog, build)), plain(result.totals()));
            assertEquals(Oracle.cost(catalog, build).map(Exact::text), result.cost().map(Exact::text));
        }
    }

    private static Verdict verdict(Patch patch, JsonNode former, JsonNode build, BuildShift shift) {
        boolean before = Oracle.valid(patch.old(), former).isEmpty();
        boolean after = Oracle.valid(patch.now(), build).isEmpty();
        if (before != after) {
            return before ? Verdict.BROKEN : Verdict.MENDED;
        }
        boolean moved = !plain(shift.before().totals()).equals(plain(shift.after().totals()))
                || !shift.before().cost().map(Exact::text).equals(shift.after().cost().map(Exact::text))
                || !shift.crossings().isEmpty();
        return moved ? Verdict.SHIFTED : Verdict.UNCHANGED;
    }

    private static Map<String, String> plain(Map<String, BigDecimal> figures) {
        Map<String, String> plain = new TreeMap<>();
        figures.forEach((id, value) -> plain.put(id, Exact.text(value)));
        return plain;
    }

    @Property(tries = 150)
    void without_the_differences_to_blame_a_broken_build_is_valid_and_with_any_of_them_it_is_not(@ForAll("patches") Patch patch) {
        Sides sides = Sides.of(patch.old(), patch.now());
        List<BuildShift> shifts = sides.shifts(patch.builds());
        for (int i = 0; i < shifts.size(); i++) {
            JsonNode build = patch.builds().get(i);
            BuildShift shift = shifts.get(i);
            if (!shift.formerNames().isEmpty()) {
                continue;
            }
            if (shift.verdict() == Verdict.BROKEN) {
                blamed(shift.blame(), taken -> Undone.in(patch.now(), patch.old(), taken), build);
            } else if (shift.verdict() == Verdict.MENDED) {
                blamed(shift.blame(), taken -> Undone.in(patch.old(), patch.now(), taken), build);
            }
        }
    }

    /** Without the trait the platform agrees with everything, and with a trait of no value with nothing. */
    @Test
    void a_trait_that_is_given_no_value_is_to_blame_for_a_build_that_it_breaks() {
        String common = "{'catalog':{'id':'c','patch':'1.0','released':'2031-01-01','currency':'scrip'},'traits':[{'id':'bore'}],'platforms':[{'id':'frame'%s}]}";
        JsonNode old = JsonText.read(common.formatted("").replace('\'', '"'));
        JsonNode now = JsonText.read(common.formatted(",'traits':{'bore':[]}").replace('\'', '"'));
        JsonNode build = JsonText.read("{'id':'b','platform':'frame','patch':'1.0','parts':{}}".replace('\'', '"'));
        BuildShift shift = Sides.of(old, now).shifts(List.of(build)).get(0);
        assertEquals(Verdict.BROKEN, shift.verdict());
        blamed(shift.blame(), taken -> Undone.in(now, old, taken), build);
    }

    /** Of the two differences that make a slot longer only one is needed; with that one alone the slot holds one part, which the build calls the first. */
    @Test
    void a_slot_that_holds_one_part_between_two_patches_still_leads_to_what_is_on_that_part() {
        String common = "{'catalog':{'id':'c','patch':'1.0','released':'2031-01-01','currency':'scrip'},"
                + "'platforms':[{'id':'frame','slots':[{'id':'rail','accepts':['riser'],%s}]}],"
                + "'parts':[{'id':'riser','kind':'k','span':3,'slots':[{'id':'top','accepts':['lamp']}]}%s]}";
        JsonNode old = JsonText.read(common.formatted("'units':2", "").replace('\'', '"'));
        JsonNode now = JsonText.read(common.formatted("'most':2", ",{'id':'lamp','kind':'k'}").replace('\'', '"'));
        JsonNode build = JsonText.read("{'id':'b','platform':'frame','patch':'1.0','parts':{'rail':['riser'],'rail:0/top':'lamp'}}".replace('\'', '"'));
        BuildShift shift = Sides.of(old, now).shifts(List.of(build)).get(0);
        assertEquals(Verdict.MENDED, shift.verdict());
        blamed(shift.blame(), taken -> Undone.in(old, now, taken), build);
    }

    private interface Mixing {
        JsonNode of(List<Change> taken);
    }

    private static void blamed(List<Change> blame, Mixing mixing, JsonNode build) {
        assertFalse(blame.isEmpty(), "nothing is to blame");
        assertEquals(List.of(), Oracle.valid(mixing.of(blame), build), () -> "with " + blame);
        for (Change change : blame) {
            List<Change> others = new ArrayList<>(blame);
            others.remove(change);
            assertNotEquals(List.of(), Oracle.valid(mixing.of(others), build), () -> "could be left out: " + change);
        }
    }

    @Property(tries = 100)
    void without_the_differences_to_blame_a_total_is_as_before_and_with_any_of_them_it_is_not(@ForAll("patches") Patch patch) {
        Sides sides = Sides.of(patch.old(), patch.now());
        List<BuildShift> shifts = sides.shifts(patch.builds());
        for (int i = 0; i < shifts.size(); i++) {
            JsonNode build = patch.builds().get(i);
            boolean resolved = shifts.get(i).formerNames().isEmpty() && shifts.get(i).before().placement().orElseThrow().unresolved().isEmpty()
                    && shifts.get(i).after().placement().orElseThrow().unresolved().isEmpty();
            for (FigureShift figure : resolved ? shifts.get(i).figures() : List.<FigureShift>of()) {
                if (!figure.cost()) {
                    assertEquals(text(figure.from()), total(patch, figure.blame(), build, figure.figure()));
                    for (Change change : figure.blame()) {
                        List<Change> others = new ArrayList<>(figure.blame());
                        others.remove(change);
                        assertNotEquals(text(figure.from()), total(patch, others, build, figure.figure()), () -> "could be left out: " + change);
                    }
                }
            }
        }
    }

    private static String total(Patch patch, List<Change> undone, JsonNode build, String attribute) {
        JsonNode mixed = Undone.in(patch.now(), patch.old(), undone);
        return text(Optional.ofNullable(Oracle.totals(mixed, build).get(attribute)));
    }

    private static String text(Optional<BigDecimal> value) {
        return value.map(Exact::text).orElse("none");
    }
}
