package fettle.judgement;

/** A mentioned id that names something. */
public record Known(String space, String id) {}
