package fettle.space;

/**
 * Assemblies that stand in a slot with the same part as their head and with the same to look at from outside.
 *
 * @param node the circuit's node that stands for them
 * @param head the number of the part that heads them
 */
public record Stand(int node, int head) {}
