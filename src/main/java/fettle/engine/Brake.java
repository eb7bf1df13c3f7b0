package fettle.engine;

import java.util.Optional;
import org.kie.api.runtime.KieSession;
import org.kie.api.runtime.rule.AgendaFilter;
import org.kie.api.runtime.rule.Match;

/** Lets rules fire until they have fired so often, or added so many facts, that they seem to have no end. */
final class Brake implements AgendaFilter {

    /** How often rules may fire in any run, and how many times more for each fact: enough for a rule that takes all parts of a large catalog two by two. */
    private static final long FIRED = 1_000_000;
    private static final long FIRED_A_FACT = 400;
    /** How many facts rules may add in any run, and how many more for each that was given. */
    private static final long ADDED = 200_000;
    private static final long ADDED_A_FACT = 40;

    private final KieSession session;
    private final long facts;
    private final long mostFired;
    private final long mostAdded;
    private long fired;
    private String last = "";
    private Optional<String> why = Optional.empty();

    /** For a session that holds all facts that are given. */
    Brake(KieSession session) {
        this.session = session;
        this.facts = session.getFactCount();
        this.mostFired = FIRED + FIRED_A_FACT * facts;
        this.mostAdded = ADDED + ADDED_A_FACT * facts;
    }

    @Override
    public boolean accept(Match match) {
        if (fired == mostFired) {
            return stop("rules fired " + mostFired + " times");
        }
        if (session.getFactCount() - facts > mostAdded) {
            return stop("rules added more than " + mostAdded + " facts");
        }
        fired++;
        last = match.getRule().getName();
        return true;
    }

    private boolean stop(String so) {
        why = Optional.of(so);
        session.halt();
        return false;
    }

    /** The rule that fired last. */
    String last() {
        return last;
    }

    /** Why rules were stopped, if they were. */
    Optional<String> why() {
        return why;
    }
}
