package fettle.document;

import java.util.List;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.FutureTask;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.Function;
import java.util.function.Supplier;
import java.util.stream.IntStream;

/**
 * Threads on which work may recurse as deep as documents nest: parts on parts may go down for thousands of steps, which is more than the stack that a thread has by
 * itself. Of the room that is set aside, only what is used costs memory.
 */
public final class DeepStack {

    private static final long BYTES = 512L << 20;

    private DeepStack() {}

    /** A thread with such a stack, not yet started, that keeps no program from ending. */
    public static Thread thread(Runnable work, String name) {
        Thread thread = new Thread(null, work, name, BYTES);
        thread.setDaemon(true);
        return thread;
    }

    /** Does work on such a stack and waits for it. What it throws is thrown here; who is interrupted while waiting passes that on to the work. */
    public static <T> T call(Supplier<T> work) {
        return begin(work).get();
    }

    /** Begins work on such a stack. Whoever asks for what becomes of it waits for that, as by {@link #call}. */
    public static <T> Supplier<T> begin(Supplier<T> work) {
        FutureTask<T> task = new FutureTask<>(work::get);
        Thread thread = thread(task, "work");
        thread.start();
        return () -> result(task, List.of(thread));
    }

    /** What becomes of each of these, in their order, on as many such stacks as there are processors. */
    public static <T, R> List<R> each(List<T> inputs, Function<? super T, ? extends R> work) {
        List<FutureTask<R>> tasks = inputs.stream().map(input -> new FutureTask<R>(() -> work.apply(input))).toList();
        AtomicInteger next = new AtomicInteger();
        Runnable some = () -> {
            for (int i = next.getAndIncrement(); i < tasks.size(); i = next.getAndIncrement()) {
                tasks.get(i).run();
            }
        };
        int workers = Math.min(inputs.size(), Runtime.getRuntime().availableProcessors());
        List<Thread> threads = IntStream.range(0, workers).mapToObj(worker -> thread(some, "work")).toList();
        threads.forEach(Thread::start);
        return tasks.stream().map(task -> result(task, threads)).toList();
    }

    private static <T> T result(FutureTask<T> task, List<Thread> workers) {
        boolean interrupted = false;
        try {
            while (true) {
                try {
                    return task.get();
                } catch (InterruptedException toPassOn) {
                    // The work decides what an interrupt ends; leaving it behind would let it run beside whatever comes next.
                    interrupted = true;
                    workers.forEach(Thread::interrupt);
                }
            }
        } catch (ExecutionException failed) {
            if (failed.getCause() instanceof Error error) {
                throw error;
            }
            // Work can throw nothing that would have to be declared.
            throw (RuntimeException) failed.getCause();
        } finally {
            if (interrupted) {
                Thread.currentThread().interrupt();
            }
        }
    }
}
