package fettle.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Values that the schema refuses are told as that and break no command, and nothing is reckoned with them. */
class MalformedValuesTest {

    private static final String CATALOG = """
            catalog: { id: quay, patch: "1.0", released: 2031-03-01, currency: crown }
            currencies: [{ id: crown, rate: 1 }, { id: pearl, rate: 40 }]
            attributes: [{ id: kick, unit: "%", better: lower, combine: sum, decimals: 1 }, { id: mass, unit: kg, better: lower, combine: sum, decimals: 1 }]
            kinds: [{ id: brake }]
            mounts: [{ id: thread }]
            vendors: [{ id: stalls, tiers: 0 }]
            lenses: [{ id: calm, weights: { kick: 1 } }]
            limits: [{ id: heavy, attribute: mass, atMost: { by: kick, points: [[1, 3], [2, 4]] } }]
            platforms: [{ id: carbine, stats: { kick: 40, mass: 2 }, slots: [{ id: muzzle, mounts: [thread], most: 2 }] }]
            parts:
              - { id: long-brake, kind: brake, mounts: [thread], stats: { kick: -5, mass: 0.3 }, slots: [{ id: collar, mounts: [thread] }] }
              - { id: short-brake, kind: brake, mounts: [thread], stats: { kick: -3, mass: 0.1 } }
            offers:
              - { part: long-brake, vendor: stalls, price: 500, seen: 2031-03-02 }
              - { part: short-brake, vendor: stalls, price: 3, currency: pearl, seen: 2031-03-02 }
            """;

    private static final String BUILD = """
            build: { id: mine, platform: carbine, patch: "1.0", lens: calm, parts: { muzzle: [long-brake], "muzzle:0/collar": short-brake } }
            """;

    @TempDir
    private Path folder;

    private Path write(String name, String catalog) throws IOException {
        Path directory = Files.createDirectories(folder.resolve(name));
        Files.writeString(directory.resolve("catalog.yaml"), catalog);
        Files.writeString(Files.createDirectories(directory.resolve("builds")).resolve("mine.yaml"), BUILD);
        return directory;
    }

    private void told(String expected, String from, String to) throws IOException {
        assertTrue(CATALOG.contains(from), from);
        String sound = write("sound", CATALOG).toString();
        String broken = write("broken", CATALOG.replace(from, to)).toString();
        String builds = folder.resolve("broken/builds").toString();
        for (List<String> command : List.of(
                List.of("lint", broken), List.of("validate", broken, builds), List.of("survey", broken), List.of("improve", broken, builds), List.of("explain", broken, "short-brake"),
                List.of("compare", sound, broken, "--builds", builds), List.of("report", broken, "--builds", builds, "-o", folder.resolve("page.html").toString()))) {
            Ran ran = Ran.fettle(command.toArray(String[]::new));
            assertTrue(ran.exit() == ExitCode.FINE || ran.exit() == ExitCode.FINDINGS, command + ": " + ran.err());
        }
        assertTrue(Ran.fettle("lint", broken).out().replaceAll("\\s+", " ").contains(expected), Ran.fettle("lint", broken).out());
        assertTrue(Ran.fettle("compare", broken, sound).exit() != ExitCode.FAULT);
    }

    @Test
    void a_table_whose_x_does_not_rise_is_no_bound() throws IOException {
        told("expected an x above 1", "[[1, 3], [2, 4]]", "[[1, 3], [1, 4]]");
        told("expected an x above 2", "[[1, 3], [2, 4]]", "[[2, 0.1], [1, 4]]");
        assertTrue(Ran.fettle("validate", folder.resolve("sound").toString(), folder.resolve("broken/builds").toString()).out().contains("heavy"));
        assertEquals(false, Ran.fettle("validate", folder.resolve("broken").toString(), folder.resolve("broken/builds").toString()).out().contains("heavy"));
    }

    @Test
    void a_vendor_that_is_no_text_makes_no_offer() throws IOException {
        told("found the number 7", "{ part: long-brake, vendor: stalls,", "{ part: long-brake, vendor: 7,");
    }

    @Test
    void a_slot_with_a_colon_in_its_id_is_no_position() throws IOException {
        told("expected an id", "{ id: collar,", "{ id: \"a:b\",");
        told("expected an id", "{ id: collar,", "{ id: \"a:99999999999\",");
    }

    @Test
    void more_parts_than_a_slot_can_hold_are_not_counted_one_by_one() throws IOException {
        told("expected a whole number from 1 to 10000", "most: 2", "most: 1000000, repeats: true");
    }

    @Test
    void money_that_is_worth_nothing_makes_nothing_free() throws IOException {
        told("expected a number above 0", "rate: 40", "rate: 0");
        assertEquals(false, Ran.fettle("lint", folder.resolve("broken").toString()).out().contains("cheaper"));
    }
}
