package fettle.catalog;

import fettle.document.Origin;
import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;

/** A build as written in a build file. */
public record Build(
        String id,
        String label,
        Located platform,
        Optional<String> patch,
        List<BuildEntry> parts,
        boolean loaded,
        Optional<Located> outfit,
        Optional<Located> access,
        List<Located> owned,
        Optional<BigDecimal> budget,
        Optional<Located> lens,
        Origin origin)
        implements Fact {

    /** An id mentioned by the build, and where. */
    public record Located(String id, Origin origin) {

        /** Whether anything is named; what is written may be empty. */
        public boolean named() {
            return !id.isBlank();
        }
    }

    /** The same build, bought under another access profile. */
    public Build boughtAs(String profile) {
        return new Build(id, label, platform, patch, parts, loaded, outfit, Optional.of(new Located(profile, origin)), owned, budget, lens, origin);
    }

    /** It as what an id stands for, which no other build may have. */
    public Entry entry() {
        return new Entry("builds", "builds", id, origin);
    }

    /** How findings name it. */
    public String subject() {
        return "build:" + id;
    }
}
