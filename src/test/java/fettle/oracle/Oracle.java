package fettle.oracle;

import java.util.ArrayList;
import java.util.List;
import tools.jackson.databind.JsonNode;

/** The brute force: answers that follow meaning.md word for word, from nothing but the JSON of a catalog and of builds. */
public final class Oracle {
  private Oracle() {}

  /**
   * Every breach of "Valid build" in a build file's build; empty where it is valid. Where something could not be resolved, the
   * breaches of the remaining clauses are those of what could.
   */
  public static List<Violation> valid(JsonNode catalog, JsonNode build) {
    Entries entries = Entries.of(catalog);
    WrittenBuild written = WrittenBuild.read(entries, build);
    List<Violation> violations = new ArrayList<>(written.unresolved());
    written.root().ifPresent(root -> violations.addAll(Validity.violations(entries, root)));
    return List.copyOf(violations);
  }
}
