package fettle.space.worth;

/**
 * How a part stands to the others in one slot of one platform.
 *
 * @param worseThanEmpty whether each of its assemblies is dominated by the empty choice, cost ignored
 */
public record PartWorth(Verdict ignoringCost, Verdict withCost, boolean worseThanEmpty) {}
