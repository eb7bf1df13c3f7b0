package fettle.view;

import fettle.engine.Severity;
import java.util.Optional;

/**
 * How text output is to look.
 *
 * @param colour whether a colour terminal reads it
 * @param quiet where given, only findings at least this severe are told, and no summary; an empty level tells no finding
 */
public record TextStyle(boolean colour, Optional<Quiet> quiet) {

    /** What is still told when all else is kept quiet. */
    public record Quiet(Optional<Severity> level) {

        boolean tells(Severity severity) {
            return level.map(lowest -> severity.compareTo(lowest) <= 0).orElse(false);
        }
    }

    /** Everything, without colour. */
    public static final TextStyle FULL = new TextStyle(false, Optional.empty());

    boolean tells(Severity severity) {
        return quiet.map(said -> said.tells(severity)).orElse(true);
    }
}
