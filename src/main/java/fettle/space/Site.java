package fettle.space;

import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;

/** A slot of a host on one platform, with what valid builds hold in it and what may be swapped there. */
public final class Site implements Swaps {

    private final Plot plot;
    private final Watches watches;
    private final Contents contents;
    private final int slot;
    private final List<Integer> uses;
    private final Map<Long, Boolean> safe = new ConcurrentHashMap<>();

    Site(Plot plot, Watches watches, Contents contents, int slot, List<Integer> uses) {
        this.plot = plot;
        this.watches = watches;
        this.contents = contents;
        this.slot = slot;
        this.uses = uses;
    }

    /** The slot's number. */
    public int slot() {
        return slot;
    }

    /** What valid builds hold in the slot. */
    public Contents contents() {
        return contents;
    }

    @Override
    public boolean safe(Stand from, Stand to) {
        return switch (contents.known(from, to)) {
            case SAFE -> true;
            case UNSAFE -> false;
            case DEPENDS -> {
                long key = key(from, to);
                Boolean known = safe.get(key);
                if (known == null) {
                    synchronized (watches) {
                        known = decide(from, to);
                    }
                    safe.put(key, known);
                }
                yield known;
            }
        };
    }

    /** In a slot of one, all of a class are alike. Classes are numbered by themselves, and must not be taken for nodes of the same number. */
    private long key(Stand from, Stand to) {
        int[] one = contents.classesOf(from);
        int[] other = contents.classesOf(to);
        boolean byClass = !contents.several() && one.length == 1 && other.length == 1;
        return byClass ? KeyOfTwo.of(~one[0], ~other[0]) : KeyOfTwo.of(from.node(), to.node());
    }

    private boolean decide(Stand from, Stand to) {
        for (int monitor : contents.open(from, to)) {
            Watch watch = watches.of(monitor);
            // All assemblies of a stand are alike, so that one of their states will do.
            int brought = watch.filling().of(watch.filling().get(watch.within(slot, to.node()))[0]);
            if (watch.breaks(watch.closed(slot, watch.filling().sums(plot.around(monitor, slot, from.node()), brought)), StateSets.ZERO)) {
                return false;
            }
        }
        return true;
    }

    @Override
    public boolean safeToEmpty(Stand from) {
        return switch (contents.knownToEmpty(from)) {
            case SAFE -> true;
            case UNSAFE -> false;
            case DEPENDS -> {
                synchronized (watches) {
                    yield decideToEmpty(from);
                }
            }
        };
    }

    private boolean decideToEmpty(Stand from) {
        for (int monitor : contents.openToEmpty(from)) {
            for (int i : contents.classesOf(from)) {
                if (watches.of(monitor).breaks(plot.outside(monitor, uses.get(i)), StateSets.ZERO)) {
                    return false;
                }
            }
        }
        return true;
    }

    @Override
    public boolean safe(Stand from, Rehung to) {
        synchronized (watches) {
            if (!contents.roomFor(from, to.head())) {
                return false;
            }
            for (int monitor : contents.open(from, to)) {
                Watch watch = watches.of(monitor);
                int all = watch.filling().sums(plot.around(monitor, slot, from.node()), watch.madeOf(slot, to));
                if (watch.breaks(watch.closed(slot, all), StateSets.ZERO)) {
                    return false;
                }
            }
            return true;
        }
    }
}
