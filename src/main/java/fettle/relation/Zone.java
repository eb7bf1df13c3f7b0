package fettle.relation;

/** A zone that some part or platform claims, declared or not. */
public record Zone(String id) {}
