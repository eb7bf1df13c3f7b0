package fettle.relation;

/** Slots of one shape and parts of another have a mount or a name in common. */
public record Attachment(int slots, int parts, String by) {}
