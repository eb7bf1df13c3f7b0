package fettle.command;

import java.io.PrintStream;
import java.util.function.LongSupplier;

/** Tells someone who waits at a terminal what is being done, on one line of standard error that is wiped in the end. */
final class Progress {

    /** How long a person is not told anything, in milliseconds: what is over by then needs no word. */
    static final long PATIENCE = 2_000;

    private static final long BEAT = 500;

    private final PrintStream err;
    private final LongSupplier clock;
    private final long began;
    private boolean shown;
    private String doing = "starting";
    private int written;
    private boolean over;

    /**
     * @param clock the time in milliseconds, from any point
     * @param shown whether someone waits there who wants to know
     */
    Progress(PrintStream err, LongSupplier clock, boolean shown) {
        this.err = err;
        this.clock = clock;
        this.began = clock.getAsLong();
        this.shown = shown;
    }

    /** Progress that tells of itself beside the work, where someone waits. */
    static Progress beating(PrintStream err, boolean shown) {
        Progress progress = new Progress(err, () -> System.nanoTime() / 1_000_000, shown);
        Thread heart = new Thread(progress::beat, "progress");
        heart.setDaemon(true);
        heart.start();
        return progress;
    }

    private void beat() {
        try {
            while (tell()) {
                Thread.sleep(BEAT);
            }
        } catch (InterruptedException ended) {
            Thread.currentThread().interrupt();
        }
    }

    /** Has it told even where nobody seems to wait. */
    synchronized void insist() {
        shown = true;
    }

    /** Names what is begun now, in words that follow on "fettle is". */
    synchronized void doing(String what) {
        doing = what;
    }

    /** Tells what is being done, if it has taken long; false once all is over. */
    synchronized boolean tell() {
        long waited = clock.getAsLong() - began;
        if (!over && shown && waited >= PATIENCE) {
            String line = "fettle is " + doing + ", " + waited / 1_000 + " s";
            err.print("\r" + line + " ".repeat(Math.max(0, written - line.length())));
            err.flush();
            written = line.length();
        }
        return !over;
    }

    /** Wipes what was told, before anything else is written; nothing more is told. */
    synchronized void end() {
        over = true;
        if (written > 0) {
            err.print("\r" + " ".repeat(written) + "\r");
            err.flush();
            written = 0;
        }
    }
}
