package fettle.command;

import fettle.engine.RuleBase;
import fettle.judgement.CatalogReading;
import fettle.judgement.StatedErrors;
import fettle.view.TextView;
import java.nio.file.Path;

/** Says beside an answer that the catalog has errors which the answer may rest on. */
final class Caution {

    private Caution() {}

    /** Says so, unless only what fails is wanted, or there are none but those that the answer itself tells of. */
    static void tell(RuleBase rules, CatalogReading reading, Path directory, Settings settings, Streams streams) {
        long errors = settings.quiet() ? 0 : new StatedErrors(rules).of(reading).stream().filter(finding -> finding.waived().isEmpty()).count();
        if (errors > 0) {
            streams.err().println("fettle: the catalog has " + errors + (errors == 1 ? " error" : " errors") + " by which this may be wrong; see fettle lint "
                    + TextView.harmless(directory.toString()));
            streams.err().flush();
        }
    }
}
