package fettle.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** What improve writes, as a whole, about a build small enough to work out by hand. */
class ImproveTest {

    private static final String FOLDER = "src/test/resources/fettle/improve";
    private static final String EXPECTED = "src/test/resources/fettle/improved";

    private record Answer(int code, String out, String err) {}

    /** A build that says nothing of what it is for, what it may cost and what is worn. */
    private static final String BARE = """
            build:
              id: bare
              platform: heron
              patch: "1"
              access: novice
              parts: { hand: plain-grip, hand/pad: cork, front: rail-short, front/top: lamp-hook }
            """;

    private static Answer improve(String... more) {
        return run(FOLDER + "/builds/first.yaml", "", more);
    }

    private static Answer run(String build, String in, String... more) {
        return of(FOLDER, build, in, more);
    }

    private static Answer of(String catalog, String build, String in, String... more) {
        List<String> arguments = new ArrayList<>(List.of("improve", catalog, build));
        arguments.addAll(List.of(more));
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        ByteArrayOutputStream err = new ByteArrayOutputStream();
        int code = Main.run(arguments.toArray(String[]::new), new ByteArrayInputStream(in.getBytes(StandardCharsets.UTF_8)), new PrintStream(out, true, StandardCharsets.UTF_8),
                new PrintStream(err, true, StandardCharsets.UTF_8));
        return new Answer(code, out.toString(StandardCharsets.UTF_8), err.toString(StandardCharsets.UTF_8));
    }

    private static void assertWritten(String file, Answer answer) throws IOException {
        assertEquals("", answer.err());
        assertEquals(Files.readString(Path.of(EXPECTED, file)), answer.out());
        assertEquals(0, answer.code());
    }

    @Test
    void the_notes_tell_what_to_do_first_and_what_the_best_build_is() throws IOException {
        assertWritten("first.txt", improve("--steps", "2"));
    }

    @Test
    void the_figures_stand_in_the_json() throws IOException {
        assertWritten("first.json", improve("--format", "json"));
    }

    @Test
    void demands_that_conflict_are_named_and_no_others() throws IOException {
        assertWritten("too-little-money.txt", improve("--keep", "front/top", "--budget", "20"));
    }

    @Test
    void a_value_that_only_one_of_the_builds_has_is_told() {
        String gained = "rules/build/cheap-gain/cases/glare-where-there-was-none";
        Answer more = of(gained, gained + "/builds/first.yaml", "");
        assertTrue(more.out().contains("+2 grip; but glare 3 where there was none\n"), more.out());
        String lost = "rules/build/better-part/cases/glare-gone";
        Answer less = of(lost, lost + "/builds/first.yaml", "");
        assertTrue(less.out().contains("no glare any more, +1 grip\n"), less.out());
    }

    @Test
    void findings_are_those_of_the_build_as_it_is_asked_for() {
        String written = BARE + """
                  lens: hold
                  budget: 100
                  outfit: gloves
                """;
        String[] report = {"--format", "json", "--fail-on", "note"};
        Answer asked = run("-", BARE, "--format", "json", "--fail-on", "note", "--lens", "hold", "--budget", "100", "--outfit", "gloves");
        assertEquals(run("-", written, report), asked);
        assertTrue(asked.out().contains("\"better-part\""), asked.out());
        assertEquals(1, asked.code());
    }

    @Test
    void a_budget_that_is_asked_for_is_the_one_to_be_over() {
        Answer over = improve("--budget", "20", "--fail-on", "warning");
        assertTrue(over.out().contains("(over-budget)"), over.out());
        assertEquals(1, over.code());
        assertEquals(0, improve("--budget", "60", "--fail-on", "warning").code());
        Answer mended = run("-", BARE + "  lens: hold\n  budget: 20\n", "--budget", "60", "--fail-on", "warning");
        assertEquals(0, mended.code(), mended.out());
    }

    @Test
    void what_is_asked_for_must_be_there() {
        assertEquals("fettle improve: the catalog has no lens holt; did you mean hold?\n", improve("--lens", "holt").err());
        assertEquals("fettle improve: the build has nothing at front/tip, so there is nothing to keep there\n", improve("--keep", "front/tip").err());
        assertEquals(2, improve("--outfit", "nothing-like-it").code());
    }

    private static String several(String ids, String... more) {
        List<String> arguments = new ArrayList<>(List.of("improve", FOLDER, "-"));
        arguments.addAll(List.of(more));
        String builds = String.join(", ", List.of(ids.split(" ")).stream().map(id -> "{ id: " + id + ", platform: carbine, parts: {} }").toList());
        return Ran.reading("builds: [" + builds + "]\n", arguments.toArray(String[]::new)).err();
    }

    @Test
    void of_several_builds_one_is_to_be_named_and_where_an_id_does_not_tell_them_apart_to_be_renamed() {
        String alike = "fettle improve: 2 builds have the id first; give each its own, so that it can be told which is meant\n";
        assertEquals("fettle improve: there are several builds; name one with --build: first, second\n", several("first second"));
        assertEquals("fettle improve: there are several builds; name one with --build: first, second\n", several("first second first"));
        assertEquals(alike, several("first second first", "--build", "first"));
        assertEquals(alike, several("first first"));
    }

    @Test
    void what_moves_up_in_a_list_is_told_with_the_swap_and_with_the_step() {
        String folder = "rules/build/better-part/cases/out-of-a-list";
        Ran ran = Ran.fettle("improve", folder, folder + "/builds/first.yaml", "--steps", "1");
        String moves = "parts behind it move up: write what is at deck:1/plate at deck:0/plate";
        assertEquals(2, ran.out().split(moves, -1).length - 1, ran.out());
        String json = Ran.fettle("improve", folder, folder + "/builds/first.yaml", "--format", "json").out().replaceAll("\\s+", " ");
        assertTrue(json.contains("\"movedUp\" : [ { \"from\" : \"deck:1/plate\", \"to\" : \"deck:0/plate\" } ]"), json);
    }

    @Test
    void an_amount_that_is_none_is_refused() {
        for (String[] said : new String[][] {{"--budget", "1e999999999"}, {"--budget", "9,5"}, {"--budget", "-5"}, {"--steps", "-1"}, {"--steps", "12345678901"}, {"--time-limit", "soon"}}) {
            Answer answer = improve(said);
            assertEquals(2, answer.code(), said[1]);
            assertTrue(answer.err().contains("expected ") && answer.err().contains("not '" + said[1] + "'"), answer.err());
        }
    }
}
