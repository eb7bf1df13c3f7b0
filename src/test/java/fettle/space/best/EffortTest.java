package fettle.space.best;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Duration;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicLong;
import org.junit.jupiter.api.Test;

/** How time is kept and shared out. */
class EffortTest {

    @Test
    void a_share_is_an_equal_part_of_what_is_left() {
        AtomicLong clock = new AtomicLong(7);
        Effort effort = Effort.of(Duration.ofNanos(100), clock::get);
        clock.addAndGet(40);
        Effort share = effort.share(3);
        assertEquals(Optional.of(Duration.ofNanos(20)), share.allowed());
        clock.addAndGet(21);
        assertTrue(spent(share));
        assertFalse(spent(effort));
        assertEquals(Optional.of(Duration.ofNanos(39)), effort.share(1).allowed());
        clock.addAndGet(1_000);
        assertEquals(Optional.of(Duration.ZERO), effort.share(2).allowed());
    }

    @Test
    void as_long_as_it_takes_is_shared_out_likewise() {
        assertEquals(Optional.empty(), Effort.unbounded().share(5).allowed());
        assertFalse(spent(Effort.unbounded().share(5)));
    }

    private static boolean spent(Effort effort) {
        effort.lookNext();
        return effort.spent();
    }
}
