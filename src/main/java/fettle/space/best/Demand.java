package fettle.space.best;

import fettle.catalog.Limit;

/** One of the things asked of a best build. */
public sealed interface Demand extends Comparable<Demand> {

    /** To cost no more than the budget. */
    record WithinBudget() implements Demand {}

    /** To be made of parts that are owned or can be bought. */
    record Obtainable() implements Demand {}

    /** To keep a limit. */
    record Keeping(Limit limit) implements Demand {}

    /** To keep the part at a path. */
    record Leaving(String path) implements Demand {}

    /** What it is about, for an order. */
    default String key() {
        if (this instanceof Keeping keeping) {
            return "limit " + keeping.limit().id();
        }
        return this instanceof Leaving leaving ? "path " + leaving.path() : this instanceof WithinBudget ? "budget" : "access";
    }

    @Override
    default int compareTo(Demand other) {
        return key().compareTo(other.key());
    }
}
