package fettle.space.best;

import java.time.Duration;
import java.util.Optional;
import java.util.function.LongSupplier;

/** How long a search may go on. */
public final class Effort {

    private static final int BETWEEN_LOOKS = 64;

    private final LongSupplier nanoseconds;
    private final Optional<Duration> allowed;
    private final long started;
    private int untilLook;
    private boolean over;

    private Effort(Optional<Duration> allowed, LongSupplier nanoseconds) {
        this.allowed = allowed;
        this.nanoseconds = nanoseconds;
        this.started = nanoseconds.getAsLong();
    }

    /** As long as it takes. */
    public static Effort unbounded() {
        return new Effort(Optional.empty(), () -> 0);
    }

    /** So long from now on. */
    public static Effort of(Duration allowed) {
        return new Effort(Optional.of(allowed), System::nanoTime);
    }

    /** So long by another clock. */
    static Effort of(Duration allowed, LongSupplier nanoseconds) {
        return new Effort(Optional.of(allowed), nanoseconds);
    }

    /** An equal part of the time that is left, among so many. */
    Effort share(int among) {
        return new Effort(allowed.map(all -> Duration.ofNanos(Math.max(0, all.toNanos() - (nanoseconds.getAsLong() - started)) / among)), nanoseconds);
    }

    /** How long it may go on in all; empty where as long as it takes. */
    Optional<Duration> allowed() {
        return allowed;
    }

    /** Whether there is a time at which it is over. */
    boolean bounded() {
        return allowed.isPresent();
    }

    /** Whether the time is over; the clock is looked at now and then. */
    boolean spent() {
        if (over || allowed.isEmpty() || --untilLook > 0) {
            return over;
        }
        untilLook = BETWEEN_LOOKS;
        over = nanoseconds.getAsLong() - started >= allowed.get().toNanos();
        return over;
    }

    /** Has the clock looked at when next asked. */
    void lookNext() {
        untilLook = 0;
    }
}
