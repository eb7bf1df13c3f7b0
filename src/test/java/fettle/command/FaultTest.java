package fettle.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

class FaultTest {

    @Test
    void where_memory_is_too_little_more_is_asked_for_than_there_was() {
        assertEquals(2, Fault.enough(64L << 20));
        assertEquals(4, Fault.enough(2L << 30));
        assertEquals(12, Fault.enough((6L << 30) - 1));
        String told = Fault.told(new OutOfMemoryError());
        assertTrue(told.contains("-Xmx" + Fault.enough(Runtime.getRuntime().maxMemory()) + "g"), told);
    }
}
