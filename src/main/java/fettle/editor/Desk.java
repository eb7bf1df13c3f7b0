package fettle.editor;

import fettle.judgement.CatalogReading;
import fettle.judgement.Finding;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.atomic.AtomicLong;
import org.eclipse.lsp4j.Diagnostic;

/** One catalog while it is edited: what was last read of it, what was found in it, and what the editor was told. */
final class Desk {

    /**
     * A finding as the editor shows it.
     *
     * @param lines the text that it was found in
     */
    record Shown(Finding finding, Diagnostic diagnostic, Lines lines) {}

    /** All findings on a reading, those that take a look at all builds apart. */
    record Checked(CatalogReading reading, List<Finding> quick, List<Finding> slow) {}

    private final Path home;
    private final AtomicLong changes = new AtomicLong();
    private volatile Optional<CatalogReading> reading = Optional.empty();
    private volatile Optional<Checked> checked = Optional.empty();
    private volatile Map<Path, List<Shown>> shown = Map.of();
    private volatile Set<Path> marked = Set.of();
    private volatile Set<Path> held = Set.of();
    private final Drafts drafts = new Drafts();
    private volatile Map<Path, Unfinished> unfinished = Map.of();
    private volatile long begun = System.nanoTime();

    Desk(Path home) {
        this.home = home;
    }

    /** The catalog's folder. */
    Path home() {
        return home;
    }

    /** Notes a change, and gives it a number. */
    long change() {
        return changes.incrementAndGet();
    }

    /** Whether nothing changed after that change. */
    boolean rests(long change) {
        return changes.get() == change;
    }

    /** The catalog as it was last read; empty before the first time. */
    Optional<CatalogReading> reading() {
        return reading;
    }

    /**
     * Notes what was read.
     *
     * @param standing the texts for which what they held before stands in
     */
    void read(CatalogReading fresh, Map<Path, Unfinished> standing) {
        reading = Optional.of(fresh);
        unfinished = Map.copyOf(standing);
    }

    /** What its documents held when they could last be read. */
    Drafts drafts() {
        return drafts;
    }

    /** A text for which what it held before stood in when the catalog was last read. */
    Optional<Unfinished> unfinished(Path file) {
        return Optional.ofNullable(unfinished.get(file));
    }

    /** The last check that was done in full. */
    Optional<Checked> checked() {
        return checked;
    }

    void check(Checked fresh) {
        checked = Optional.of(fresh);
    }

    /** The open files that were its when it was last checked. */
    Set<Path> held() {
        return held;
    }

    void hold(Set<Path> fresh) {
        held = Set.copyOf(fresh);
    }

    /** The files in which the editor was told that something was found, and not yet that there is nothing. */
    Set<Path> marked() {
        return marked;
    }

    void mark(Set<Path> fresh) {
        marked = Set.copyOf(fresh);
    }

    /** What was found last, by file. */
    Map<Path, List<Shown>> shown() {
        return shown;
    }

    void show(Map<Path, List<Shown>> fresh) {
        shown = fresh;
    }

    /** Notes that a check begins. */
    void begin() {
        begun = System.nanoTime();
    }

    /** Whether the last check began longer ago than so many nanoseconds. */
    boolean waits(long longest) {
        return System.nanoTime() - begun > longest;
    }
}
