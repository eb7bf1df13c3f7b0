package fettle.space.patch;

/**
 * A part that stays where it is and is written at another path.
 *
 * @param from the path before, as builds write it
 * @param to the path from then on
 */
public record PathMove(String from, String to) {}
