package fettle.space;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.io.InputStream;
import java.math.BigInteger;
import java.nio.charset.StandardCharsets;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;

/**
 * Published feature models have as many builds as they have products. Sources of the figures: the tests of flamapy bdd_metamodel (mobile phone 14, calls and
 * screen in each; pizzas 25); Halin et al., "Test them all, is it worth it?", Empirical Software Engineering 24 (2019), doi 10.1007/s10664-018-9635-4 (26,256).
 */
class PublishedCountsTest {

    private static Survey.Known survey(String model, String platform) throws IOException {
        try (InputStream in = PublishedCountsTest.class.getResourceAsStream("/fettle/models/" + model + ".json")) {
            return Catalogs.survey(new String(in.readAllBytes(), StandardCharsets.UTF_8), platform);
        }
    }

    @Test
    void a_mobile_phone_has_14_products_with_calls_and_screen_in_each() throws IOException {
        Survey.Known phone = survey("mobile-phone", "mobile-phone");
        assertEquals(BigInteger.valueOf(14), phone.count());
        assertEquals(new TreeSet<>(Set.of("calls", "screen")), phone.essential());
        assertEquals(new TreeSet<>(), phone.dead());
    }

    @Test
    void there_are_25_pizzas() throws IOException {
        assertEquals(BigInteger.valueOf(25), survey("pizzas-complex", "pizza").count());
    }

    @Test
    void a_generator_of_web_applications_has_26256_products() throws IOException {
        assertEquals(BigInteger.valueOf(26_256), survey("jhipster", "jhipster").count());
    }
}
