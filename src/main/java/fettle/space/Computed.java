package fettle.space;

/** A result computed from relations, as a reason for a finding; closed, so that every one can be put into words in one place. */
public sealed interface Computed permits Chain, Violation {}
