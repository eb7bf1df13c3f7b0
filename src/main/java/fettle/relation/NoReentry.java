package fettle.relation;

/** A part that may not stand below another occurrence of itself. */
public record NoReentry(String rule, String part) {}
