package fettle.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A witness is told for no more than what it shows. */
class SurveyWitnessTest {

    @TempDir
    Path catalog;

    private String surveyed(String... prices) throws IOException {
        StringBuilder text = new StringBuilder("""
                catalog: { id: three-knobs, patch: "1", released: 2026-01-01, currency: shell }
                attributes: [{ id: lift, better: higher, combine: sum }]
                mounts: [{ id: peg }]
                currencies: [{ id: shell, rate: 1 }]
                vendors: [{ id: stall, tiers: 0 }]
                platforms: [{ id: hull, slots: [{ id: top, mounts: [peg], required: true }] }]
                parts:
                  - { id: low, mounts: [peg], stats: { lift: 1 } }
                  - { id: mid, mounts: [peg], stats: { lift: 1 } }
                  - { id: high, mounts: [peg], stats: { lift: 3 } }
                offers:
                """);
        for (String price : prices) {
            text.append("  - { part: ").append(price.split(" ")[0]).append(", vendor: stall, price: ").append(price.split(" ")[1]).append(" }\n");
        }
        Files.writeString(catalog.resolve("catalog.yaml"), text);
        String json = Ran.fettle("survey", catalog.toString(), "--format", "json").out();
        assertEquals(json.contains("forItsPrice"), Ran.fettle("survey", catalog.toString()).out().contains("low is outdone by high, whatever it costs"));
        return Ran.fettle("survey", catalog.toString()).out();
    }

    @Test
    void one_witness_serves_both_ways_where_it_is_no_dearer() throws IOException {
        String told = surveyed("low 10", "mid 20", "high 10");
        assertTrue(told.contains("low is outdone by high, for its price too: +2 lift (in hull/top)"), told);
    }

    @Test
    void a_dearer_one_leaves_the_price_to_another() throws IOException {
        String told = surveyed("low 10", "mid 5", "high 50");
        assertTrue(told.contains("low is outdone by high, whatever it costs: +2 lift and 40 dearer (in hull/top)"), told);
        assertTrue(told.contains("low is outdone by mid, for its price: 5 cheaper (in hull/top)"), told);
    }

    @Test
    void so_does_one_that_nobody_sells() throws IOException {
        String told = surveyed("low 10", "mid 5");
        assertTrue(told.contains("low is outdone by high, whatever it costs: +2 lift (in hull/top)"), told);
        assertTrue(told.contains("low is outdone by mid, for its price: 5 cheaper (in hull/top)"), told);
    }
}
