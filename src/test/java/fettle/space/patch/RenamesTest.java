package fettle.space.patch;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.junit.jupiter.api.Test;

/** What is taken for renamed, where the part or platform was changed besides. */
class RenamesTest {

    private static List<String> renamed(String old, String now) {
        return Sides.of(catalog(old), catalog(now)).changes().renames().stream().map(rename -> rename.from().id() + " > " + rename.to().id()).toList();
    }

    private static String catalog(String parts) {
        return "catalog: { id: quay, patch: \"1\", released: 2031-01-01, currency: crown }\nparts:\n" + parts.indent(2);
    }

    private static String hood(String id, String mounts, int burn) {
        return "- { id: %s, kind: hood, mounts: [%s], stats: { glow: -1, burn: %d, mass: 0.1 } }\n".formatted(id, mounts, burn);
    }

    @Test
    void a_part_of_nearly_the_same_id_and_the_same_mounts_is_renamed_and_reworked() {
        assertEquals(List.of("hood-plain > hood-plane"), renamed(hood("hood-plain", "collar", 12), hood("hood-plane", "collar", 13)));
    }

    @Test
    void a_part_of_another_kind_or_with_other_mounts_is_another() {
        assertEquals(List.of(), renamed(hood("hood-plain", "collar", 12), hood("hood-plane", "collar, bayonet", 12)));
        assertEquals(List.of(), renamed(hood("hood-plain", "collar", 12), hood("hood-plane", "collar", 12).replace("kind: hood", "kind: cap")));
    }

    @Test
    void a_part_of_nearly_the_same_id_of_which_most_is_different_is_another() {
        assertEquals(List.of(), renamed(hood("hood-plain", "collar", 12), hood("hood-plane", "collar", 13).replace("0.1", "0.3")));
    }

    @Test
    void the_same_label_tells_more_than_an_id() {
        String old = "- { id: bat, label: Bat sail, kind: sail, mounts: [mast], stats: { pull: 16, drag: -2 } }";
        String now = "- { id: night-wing, label: Bat sail, kind: sail, mounts: [mast], stats: { pull: 11, drag: 3 } }";
        assertEquals(List.of("bat > night-wing"), renamed(old, now));
        assertEquals(List.of(), renamed(old.replace("label: Bat sail, ", ""), now.replace("label: Bat sail, ", "")));
    }

    @Test
    void a_figure_in_the_id_tells_parts_of_a_series_apart() {
        assertEquals(List.of(), renamed(hood("hood-mark-1", "collar", 12), hood("hood-mark-2", "collar", 13)));
    }

    @Test
    void nothing_is_guessed_where_there_are_two_that_it_could_be() {
        String old = hood("hood-plain", "collar", 12);
        assertEquals(List.of(), renamed(old, hood("hood-plane", "collar", 13) + hood("hood-plaid", "collar", 14)));
        assertEquals(List.of(), renamed(hood("hood-plane", "collar", 13) + hood("hood-plaid", "collar", 14), old));
    }

    @Test
    void twins_that_were_both_renamed_are_told_apart_by_their_labels() {
        String old = "- { id: felt, label: Felt pad, kind: pad, mounts: [butt], stats: { soft: 2 } }\n- { id: cork, label: Cork pad, kind: pad, mounts: [butt], stats: { soft: 2 } }\n";
        String now = old.replace("id: felt", "id: wool").replace("id: cork", "id: bark");
        assertEquals(List.of("cork > bark", "felt > wool"), renamed(old, now));
        assertEquals(List.of(), renamed(old.replaceAll("label: \\w+ pad, ", ""), now.replaceAll("label: \\w+ pad, ", "")));
    }

    @Test
    void what_was_only_renamed_is_no_candidate_for_what_was_reworked() {
        String plain = hood("hood-plain", "collar", 12).replace("glow: -1", "glow: -1, soot: 1, wear: 2, hum: 3");
        String plaid = plain.replace("hood-plain", "hood-plaid").replace("burn: 12", "burn: 20").replace("mass: 0.1", "mass: 0.5");
        assertEquals(List.of("hood-plain > hood-plains"), renamed(plain + plaid, plain.replace("hood-plain", "hood-plains")));
        assertEquals(List.of("hood-plaid > hood-plains"), renamed(plaid, plain.replace("hood-plain", "hood-plains")));
    }

    @Test
    void a_platform_with_the_same_slots_is_renamed_and_reworked() {
        String platform = "platforms: [{ id: %s, stats: { glow: 1, mass: %d }, tags: [low], slots: [{ id: %s, mounts: [screw] }] }]\n";
        for (String slot : List.of("burner", "flask")) {
            List<String> found = Sides.of(catalog("").replace("parts:\n", platform.formatted("lantern", 1, "burner")), catalog("").replace("parts:\n", platform.formatted("lanterne", 2, slot)))
                    .changes().renames().stream().map(rename -> rename.from().id() + " > " + rename.to().id()).toList();
            assertEquals(slot.equals("burner") ? List.of("lantern > lanterne") : List.of(), found);
        }
    }
}
