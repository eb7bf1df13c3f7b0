package fettle.relation;

/** Slots of one shape turn parts of another away for a name. */
public record Refusal(int slots, int parts, String name) {}
