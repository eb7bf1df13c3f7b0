package fettle.command;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Swaps that a build with something out of the common about it is advised to make. */
class SwapAdviceTest {

    private static final String CATALOG = """
            catalog: { id: quay, patch: "1", released: 2031-03-01, currency: crown }
            currencies: [{ id: crown, rate: 1 }]
            attributes:
              - { id: grip, unit: points, better: higher, combine: sum, decimals: 1, shown: 1 }
              - { id: tint, unit: shades, better: none, combine: sum, decimals: 1, shown: 1 }
            kinds: [{ id: thing }, { id: lamp, role: true }]
            mounts: [{ id: peg }, { id: clip }, { id: slide }]
            platforms:
              - id: heron
                stats: { grip: 10 }
                slots: [{ id: hand, mounts: [peg] }, { id: ring, mounts: [clip] }, { id: rail, mounts: [slide], units: 4 }]
            parts:
              - { id: plain, kind: thing, mounts: [peg], stats: { grip: 1 } }
              - { id: sure, kind: thing, mounts: [peg], stats: { grip: 4 } }
              - { id: relic, kind: thing, mounts: [clip], stats: { grip: 1 } }
              - { id: bead, kind: thing, mounts: [slide], stats: { grip: 1 } }
              - { id: knob, kind: thing, mounts: [slide], stats: { grip: 1.5 } }
              - { id: dull, kind: thing, mounts: [clip], stats: { tint: 1 } }
              - { id: vivid, kind: thing, mounts: [clip], stats: { tint: 9 } }
              - { id: collar, kind: thing, mounts: [clip], stats: { grip: -3 }, slots: [{ id: inner, mounts: [clip], rejects: [collar] }] }
              - { id: torch, kind: lamp, mounts: [peg] }
              - { id: lantern, kind: lamp, mounts: [clip] }
              - { id: plank, kind: thing, mounts: [slide], span: 3, stats: { grip: 8 } }
            vendors: [{ id: harbour, tiers: 0 }]
            offers:
              - { part: plain, vendor: harbour, price: 5 }
              - { part: sure, vendor: harbour, price: 5 }
              - { part: bead, vendor: harbour, price: 5 }
              - { part: collar, vendor: harbour, price: 5 }
              - { part: dull, vendor: harbour, price: 5 }
              - { part: vivid, vendor: harbour, price: 5 }
              - { part: knob, vendor: harbour, price: 7 }
              - { part: plank, vendor: harbour, price: 5 }
            lenses: [{ id: hold, weights: { grip: 1 } }, { id: show, weights: { tint: 1 } }, { id: odd, weights: { grip: 0.000000000001, tint: 10000000000 } }]
            """;

    @TempDir
    private Path folder;

    @BeforeEach
    void write() throws IOException {
        Files.writeString(Files.createDirectory(folder.resolve("quay")).resolve("catalog.yaml"), CATALOG);
    }

    /** What a command says of a build with these properties. */
    private String said(String command, String build, String... more) throws IOException {
        Path file = Files.writeString(folder.resolve("b.yaml"), "build: { id: b, platform: heron, patch: \"1\", lens: hold, " + build + " }\n");
        List<String> words = new ArrayList<>(List.of(command, folder.resolve("quay").toString(), file.toString()));
        words.addAll(List.of(more));
        Ran ran = Ran.fettle(words.toArray(String[]::new));
        return ran.out() + ran.err();
    }

    private static void assertHas(String part, String whole) {
        assertTrue(whole.contains(part), whole);
    }

    private static void assertLacks(String part, String whole) {
        assertFalse(whole.contains(part), whole);
    }

    @Test
    void a_part_that_nobody_sells_leaves_a_budget_to_the_others() throws IOException {
        String parts = "parts: { hand: plain, ring: relic, rail: [plank] }";
        String rich = said("improve", "budget: 100, " + parts);
        assertHas("first  hand: sure for plain: +3, for 5 crown", rich);
        assertHas("no open offer sells relic, which counts as nothing", rich);
        assertHas("at hand, sure betters plain: grip 3 better", said("validate", "budget: 100, " + parts));
        // Two parts of 5 are in the build; a third doesn't fit the budget, and a bargain does.
        assertHas("rail:1: knob for nothing", said("improve", "budget: 17, " + parts));
        assertLacks("rail:1: knob for nothing", said("improve", "budget: 16, " + parts));
        assertHas("hand: sure for plain", said("improve", "budget: 1, " + parts));
    }

    @Test
    void a_swap_that_only_the_stated_notches_stand_in_the_way_of_is_told_with_those_to_leave_out() throws IOException {
        String notched = said("improve", "parts: { hand: sure, rail: [{ part: bead, at: 1 }, { part: knob, at: 2 }] }", "--steps", "1");
        assertHas("first  rail:0: plank for bead: +7, for 5 crown", notched);
        assertHas("leave out `at` at rail:0 and rail:1", notched);
        assertLacks("no single swap", notched);
        assertHas("step 1  rail:0: plank: +7, for 5 crown\n           leave out `at` at rail:0 and rail:1", notched);
        // The three notches from 0 on are free for it, and those from 3 on aren't there.
        String ends = said("validate", "parts: { hand: sure, rail: [{ part: bead, at: 0 }, { part: knob, at: 3 }] }");
        assertHas("try  Put in plank; buy plank from harbour.\n         With that, leave out `at` at rail:1:", ends);
        assertLacks("`at` at rail:0", ends);
        assertLacks("error", said("validate", "parts: { hand: sure, rail: [{ part: bead, at: 0 }, plank] }"));
    }

    @Test
    void the_best_build_is_told_with_the_stated_notches_that_stand_in_its_way() throws IOException {
        String json = said("improve", "parts: { hand: sure, rail: [{ part: bead, at: 1 }, { part: knob, at: 2 }] }", "--format", "json");
        String best = json.substring(json.indexOf("\"best\""));
        assertHas("\"notchesDropped\" : [ \"rail:0\", \"rail:1\" ]", best);
        String roomy = said("improve", "parts: { hand: sure, rail: [{ part: bead, at: 0 }, { part: knob, at: 3 }] }", "--format", "json");
        assertHas("\"notchesDropped\" : [ ]", roomy.substring(roomy.indexOf("\"best\"")));
    }

    @Test
    void where_the_time_is_over_the_best_met_is_told_and_not_that_there_is_none() throws IOException {
        String able = said("improve", "parts: { hand: plain, rail: [plank, knob] }", "--time-limit", "0");
        assertHas("best  +3 in all, for 5 crown; the best found in time, and none can be more than", able);
        String cut = "Not proved: the search was cut short after 0 s; --time-limit gives the seconds in which\n           to go on.";
        assertHas(cut, able);
        assertLacks("Not proved", said("improve", "parts: { hand: plain, rail: [plank, knob] }"));
        String kept = said("improve", "parts: { hand: plain, rail: [plank, knob] }", "--time-limit", "0", "--keep", "hand");
        assertHas("best  the build as it is; no better one was found in time", kept);
        assertHas(cut, kept);
        String json = said("improve", "parts: { hand: sure, rail: [plank, knob] }", "--time-limit", "0", "--format", "json");
        String best = json.substring(json.indexOf("\"best\""));
        assertHas("\"hand\" : \"sure\"", best);
        assertHas("\"proved\" : false", best);
    }

    @Test
    void the_best_is_not_sought_without_end_where_no_time_is_said() {
        String help = Ran.fettle("improve", "--help").out().replaceAll("\\s+", " ");
        assertHas("stop the search for the best build then, and tell how far off it can be (default: 30)", help);
    }

    @Test
    void where_the_time_is_over_and_nothing_met_does_all_that_is_asked_that_is_not_known() throws IOException {
        String beyond = "budget: 4, parts: { hand: plain, rail: [plank, knob] }";
        String text = said("improve", beyond, "--time-limit", "0");
        assertHas("best  not known, nor whether any build does all that is asked", text);
        assertHas("the time was over before a build was found that does", text);
        assertHas("cut short after 0 s", text);
        assertHas("\"undecided\" : true", said("improve", beyond, "--time-limit", "0", "--format", "json"));
        assertHas("best  no build does all that is asked", said("improve", beyond, "--keep", "hand"));
        assertHas("\"undecided\" : false", said("improve", beyond, "--keep", "hand", "--format", "json"));
    }

    @Test
    void what_a_lens_weighs_gains_something_that_matters_though_neither_direction_is_better_by_itself() throws IOException {
        String parts = "parts: { hand: sure, ring: dull, rail: [plank, knob] }";
        String shown = said("improve", parts, "--lens", "show", "--steps", "1");
        assertHas("first  ring: vivid for dull: +8, for 5 crown\n           +8 tint\n", shown);
        assertLacks("skip", shown);
        assertHas("at ring, vivid betters dull: tint 8 better and nothing worse", shown);
        assertHas("no single swap that can be paid for gains anything that matters", said("improve", parts, "--lens", "hold"));
    }

    @Test
    void a_part_that_the_build_has_serves_elsewhere_in_it_though_nobody_sells_it() throws IOException {
        String parts = "parts: { hand: sure, ring: collar, ring/inner: relic, rail: [plank, knob] }";
        String told = "warning  at ring, relic betters collar with relic: grip 3 better and nothing worse, for 0 crown";
        assertHas(told, said("validate", parts));
        assertHas(told, said("validate", "owned: [relic], " + parts));
        assertHas("try  Put in relic: nothing has to be bought.", said("validate", parts));
        assertHas("first  ring: relic for collar with relic: +3, for nothing\n           +3 grip\n\n", said("improve", parts));
    }

    @Test
    void a_build_with_several_faults_is_told_that_no_single_swap_mends_them() throws IOException {
        assertHas("first  no single swap makes the build valid\n", said("improve", "parts: { hand: relic, rail: [bead, bead] }"));
        assertHas("first  rail:0: plank for bead: +7", said("improve", "parts: { hand: plain, rail: [bead, bead] }"));
        assertHas("first  no single swap that makes the build valid and can be paid for gains anything that matters\n",
                said("improve", "budget: 1, parts: { hand: relic }", "--lens", "show"));
    }

    @Test
    void what_the_catalog_does_not_have_is_what_a_swap_takes_out() throws IOException {
        String told = said("improve", "parts: { hand: plainn, ring: relic }");
        assertHas("first  hand: sure for plainn: +4, for 5 crown", told);
        assertLacks("rail:0: plank for nothing: +8, for 5", told);
        assertHas("\n           hand: sure for plainn: +4\n", told.substring(told.indexOf("  best")));
        assertHas("first  rail:1: knob for beadd: +1.5", said("improve", "parts: { hand: sure, rail: [plank, beadd] }"));
        assertHas("no single swap makes the build valid", said("improve", "parts: { hand: plainn, ring: relicc }"));
        assertHas("hand: nothing for plainn: 0", said("improve", "budget: 0, parts: { hand: plainn }"));
        assertHas("the catalog has no part plainn, which the build has at hand, so it can't be kept",
                said("improve", "parts: { hand: plainn }", "--keep", "hand"));
    }

    @Test
    void weights_too_far_apart_are_named_where_the_best_build_can_not_be_told_for_them() throws IOException {
        String odd = said("improve", "parts: { hand: plain, ring: dull }", "--lens", "odd").replaceAll("\\s+", " ");
        assertHas("best not known The lens's weights are too far apart to be summed exactly, from 0.000000000001 for grip to 10000000000 for tint; bring them nearer", odd);
        assertLacks("no build does all that is asked", odd);
        assertHas("\"undecided\" : true", said("improve", "parts: { hand: plain, ring: dull }", "--lens", "odd", "--format", "json"));
    }

    @Test
    void a_swap_that_leaves_a_role_to_another_part_says_so() throws IOException {
        String two = said("improve", "parts: { hand: torch, ring: lantern, rail: [plank, knob] }");
        assertHas("first  hand: sure for torch: +4, for 5 crown\n           +4 grip\n           sure 5 crown from harbour\n"
                + "           takes out what serves here as lamp, of which the build has another\n", two);
        assertHas("\"rolesElsewhere\" : [ \"lamp\" ]", said("improve", "parts: { hand: torch, ring: lantern, rail: [plank, knob] }", "--format", "json"));
        // The only one is not given up at all.
        assertHas("first  no single swap", said("improve", "parts: { hand: torch, ring: relic, rail: [plank, knob] }"));
        assertLacks("serves here as", said("improve", "parts: { hand: plain, ring: lantern, rail: [plank, knob] }"));
    }

    /** More parts for the hand, one of which has these slots. */
    private void spar(String slots) throws IOException {
        Files.writeString(folder.resolve("quay").resolve("more.yaml"), """
                mounts: [{ id: cleat }]
                parts:
                  - { id: spar, kind: thing, mounts: [peg], slots: [%s] }
                  - { id: kelp, kind: thing, mounts: [cleat], blocks: [shade], stats: { grip: 20 } }
                  - { id: moth, kind: thing, mounts: [cleat], stats: { grip: 1 } }
                offers: [{ part: spar, vendor: harbour, price: 1 }, { part: kelp, vendor: harbour, price: 2 }, { part: moth, vendor: harbour, price: 1 }]
                """.formatted(slots));
    }

    @Test
    void a_remedy_tells_where_each_part_goes_that_could_go_elsewhere() throws IOException {
        spar("{ id: low, mounts: [cleat], required: true }, { id: high, tags: [shade], mounts: [cleat], required: true }");
        assertHas("Put in spar with kelp at hand/high and moth at hand/low; buy", said("validate", "parts: { hand: plain }"));
        assertHas("\"parts\" : {\n        \"\" : \"spar\",\n        \"high\" : \"kelp\",\n        \"low\" : \"moth\"\n      },",
                said("validate", "parts: { hand: plain }", "--format", "json"));
        assertLacks("error", said("validate", "parts: { hand: spar, hand/high: kelp, hand/low: moth }"));
        assertHas("(blocked-slot)", said("validate", "parts: { hand: spar, hand/low: kelp, hand/high: moth }"));
    }

    @Test
    void a_remedy_tells_the_position_in_a_slot_that_holds_several() throws IOException {
        spar("{ id: rack, tags: [shade], mounts: [cleat], most: 2 }");
        assertHas("Put in spar with kelp at hand/rack:0 and moth at hand/rack:1; buy", said("validate", "parts: { hand: plain }"));
        assertLacks("error", said("validate", "parts: { hand: spar, hand/rack: [kelp, moth] }"));
    }

    @Test
    void a_remedy_leaves_unsaid_where_the_only_part_goes_in_the_only_slot() throws IOException {
        spar("{ id: low, mounts: [cleat] }");
        assertHas("Put in spar with kelp; buy", said("validate", "parts: { hand: plain }"));
        spar("{ id: low, mounts: [cleat] }, { id: high, mounts: [clip] }");
        assertHas("Put in spar with kelp at hand/low; buy", said("validate", "parts: { hand: plain }"));
    }
}
