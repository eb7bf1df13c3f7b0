package fettle.view;

import fettle.catalog.CatalogHead;
import fettle.judgement.Finding;
import java.util.List;
import java.util.Optional;

/**
 * What every command that checks something has to report.
 *
 * @param command the command's name
 * @param catalog empty where the catalog doesn't say who it is
 * @param findings in the order in which they are shown, each once
 */
public record Report(String command, Optional<CatalogHead> catalog, List<Finding> findings) {

    public Report {
        findings = List.copyOf(findings);
    }

    /** The findings by severity. */
    public Tally tally() {
        return Tally.of(findings);
    }
}
