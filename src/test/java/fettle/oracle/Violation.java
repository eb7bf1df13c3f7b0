package fettle.oracle;

import java.util.List;

/**
 * One breach of "Valid build".
 *
 * @param clause the number of the clause in meaning.md, 1 to 9; {@link #STRUCTURE} where the build names what is not there
 * @param paths where in the build: parts, or the slot for clauses that speak of a slot; the platform is the empty path
 * @param what in a few words, for people who read a failed test
 */
public record Violation(int clause, List<String> paths, String what) {
  /** The build file names a platform, a part, a slot or a position that does not exist. */
  public static final int STRUCTURE = 0;
}
