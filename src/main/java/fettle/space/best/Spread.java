package fettle.space.best;

import java.math.BigDecimal;
import java.util.Optional;

/**
 * Between what values a figure that does not add up can lie, over a set of assemblies.
 *
 * @param valueless whether one of them may bring no value
 * @param least among those that bring one; empty where none does
 * @param greatest likewise
 */
record Spread(boolean valueless, Optional<BigDecimal> least, Optional<BigDecimal> greatest) {

    static final Spread NOTHING = new Spread(true, Optional.empty(), Optional.empty());

    static Spread at(BigDecimal value) {
        return new Spread(false, Optional.of(value), Optional.of(value));
    }

    static Spread between(BigDecimal one, BigDecimal other) {
        return new Spread(false, Optional.of(one.min(other)), Optional.of(one.max(other)));
    }

    boolean empty() {
        return least.isEmpty();
    }

    /** Of the union of two sets. */
    Spread or(Spread other) {
        if (empty() || other.empty()) {
            Spread some = empty() ? other : this;
            return new Spread(valueless || other.valueless, some.least, some.greatest);
        }
        return new Spread(
                valueless || other.valueless, Optional.of(least.get().min(other.least.get())), Optional.of(greatest.get().max(other.greatest.get())));
    }

    /** Of products of two that both have a value. */
    Spread times(Spread other) {
        BigDecimal p = least.orElseThrow().multiply(other.least.orElseThrow());
        BigDecimal q = least.get().multiply(other.greatest.orElseThrow());
        BigDecimal r = greatest.orElseThrow().multiply(other.least.get());
        BigDecimal s = greatest.get().multiply(other.greatest.get());
        return between(p.min(q).min(r.min(s)), p.max(q).max(r.max(s)));
    }

    /** The same times a number, which may be negative. */
    Spread scaled(BigDecimal factor) {
        return empty() ? this : new Spread(valueless, Optional.of(least.get().multiply(factor).min(greatest.get().multiply(factor))),
                Optional.of(least.get().multiply(factor).max(greatest.get().multiply(factor))));
    }

    /** Of the maximum, or minimum, of one from each of two sets. */
    Spread peak(Spread other, boolean lowest) {
        if (this == NOTHING) {
            return other;
        }
        if (other == NOTHING) {
            return this;
        }
        Spread peaks = empty() || other.empty() ? NOTHING : lowest
                ? new Spread(false, Optional.of(least.get().min(other.least.get())), Optional.of(greatest.get().min(other.greatest.get())))
                : new Spread(false, Optional.of(least.get().max(other.least.get())), Optional.of(greatest.get().max(other.greatest.get())));
        Spread all = new Spread(false, peaks.least, peaks.greatest);
        if (other.valueless) {
            all = all.or(new Spread(false, least, greatest));
        }
        if (valueless) {
            all = all.or(new Spread(false, other.least, other.greatest));
        }
        return new Spread(valueless && other.valueless, all.least, all.greatest);
    }
}
