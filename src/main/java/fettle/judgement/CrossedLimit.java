package fettle.judgement;

import fettle.space.Fraction;
import fettle.space.LimitMargin;
import fettle.space.patch.LimitCrossing;
import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;

/** A limit that a patch took a build across, as patch rules match it. */
public record CrossedLimit(PatchedBuild build, LimitCrossing crossing) {

    /** The limit's id. */
    public String limit() {
        return crossing.limit().id();
    }

    /** Whether the build exceeds it now. */
    public boolean outward() {
        return crossing.outward();
    }

    /** Its id, where the build kept it before; empty where there was no such limit. */
    public Optional<String> kept() {
        return Optional.of(limit()).filter(unused -> !crossing.added());
    }

    /** Its id, where there was no such limit before. */
    public Optional<String> added() {
        return Optional.of(limit()).filter(unused -> crossing.added());
    }

    /** What the differences behind it are of, such as {@code x} for an entry that came or went, and {@code x.atMost}; empty where they cannot be told. */
    public Optional<List<String>> through() {
        return PatchedBuild.through(crossing.blame());
    }

    /** {@code error} or {@code warning}, as the limit says. */
    public String severity() {
        return crossing.limit().severity();
    }

    /** The total that counts. */
    public Optional<BigDecimal> value() {
        return margin().value();
    }

    /** The bound that it is held against. */
    public Optional<Fraction> threshold() {
        return margin().threshold();
    }

    /** On which side of the bound a build must be: {@code at least} or {@code at most}. */
    public String side() {
        return margin().limit().side().words();
    }

    private LimitMargin margin() {
        return crossing.after();
    }
}
