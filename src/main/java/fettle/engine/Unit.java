package fettle.engine;

import java.util.Arrays;
import java.util.Optional;

/**
 * The two sorts of rules, each loaded and run by itself.
 *
 * <p>A set of rules that run together. A rule file belongs to the unit whose package it declares; which globals the rules
 * call is theirs to declare.
 */
public enum Unit {
    /** Rules that derive relations from catalog facts. */
    RELATION("fettle.rules.relation"),
    /** Rules that judge results into findings. */
    JUDGEMENT("fettle.rules.judgement");

    private final String packageName;

    Unit(String packageName) {
        this.packageName = packageName;
    }

    /** The package that a rule file of this unit declares. */
    public String packageName() {
        return packageName;
    }

    static Optional<Unit> ofPackage(String name) {
        return Arrays.stream(values()).filter(unit -> unit.packageName.equals(name)).findFirst();
    }
}
