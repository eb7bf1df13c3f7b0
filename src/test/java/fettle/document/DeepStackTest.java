package fettle.document;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CountDownLatch;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/** Work on deep stacks. */
@Timeout(60)
class DeepStackTest {

    @Test
    void it_recurses_a_million_steps() {
        assertEquals(1_000_000, DeepStack.call(() -> depth(1_000_000)));
    }

    private static int depth(int steps) {
        return steps == 0 ? 0 : 1 + depth(steps - 1);
    }

    @Test
    void what_becomes_of_each_stands_in_order() {
        List<Integer> inputs = IntStream.range(0, 1_000).boxed().toList();
        assertEquals(inputs.stream().map(i -> i * i).toList(), DeepStack.each(inputs, i -> i * i));
    }

    @Test
    void what_work_throws_reaches_the_caller() {
        assertThrows(ArithmeticException.class, () -> DeepStack.call(() -> 1 / depth(0)));
        assertThrows(ArithmeticException.class, () -> DeepStack.each(List.of(1, 0), i -> 1 / i));
    }

    @Test
    void an_interrupt_reaches_the_work_and_what_it_makes_of_it_is_the_result() throws Exception {
        CountDownLatch begun = new CountDownLatch(1);
        CompletableFuture<String> result = new CompletableFuture<>();
        CompletableFuture<Boolean> still = new CompletableFuture<>();
        Thread caller = new Thread(() -> {
            result.complete(DeepStack.call(() -> {
                begun.countDown();
                try {
                    new CountDownLatch(1).await();
                    return "not woken";
                } catch (InterruptedException woken) {
                    return "woken";
                }
            }));
            still.complete(Thread.currentThread().isInterrupted());
        });
        caller.start();
        begun.await();
        caller.interrupt();
        assertEquals("woken", result.get());
        assertTrue(still.get());
    }
}
