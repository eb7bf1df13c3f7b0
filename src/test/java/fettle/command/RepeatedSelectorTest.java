package fettle.command;

import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

/** A constraint that gives a selector twice says no more by it than once, since one part meets both. */
class RepeatedSelectorTest {

    private static final String TWICE = "rules/space/dead-part/cases/selector-given-twice";

    @Test
    void what_meets_it_alone_is_told_to_stand_in_no_build() {
        String words = Ran.fettle("explain", TWICE, "big-drum").out().replaceAll("\\s+", " ");
        assertTrue(words.contains("can stand in no build: Two drums strike each other."), words);
        assertTrue(!words.contains("no two of") && !words.contains("but there is none"), words);
    }
}
