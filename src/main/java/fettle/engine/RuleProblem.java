package fettle.engine;

import java.util.Comparator;

/**
 * One fault in a rule file or page, with its place.
 *
 * <p>What is wrong with a rule.
 *
 * @param file   as shown to people, forward slashes
 * @param line   counted from 1; 0 where the fault is with the file as a whole
 * @param column counted from 1; 0 where only the line is known
 * @param text   what is wrong and what to do, one sentence
 */
public record RuleProblem(String file, int line, int column, String text) implements Comparable<RuleProblem> {
    private static final Comparator<RuleProblem> ORDER = Comparator.comparing(RuleProblem::file)
            .thenComparingInt(RuleProblem::line).thenComparingInt(RuleProblem::column).thenComparing(RuleProblem::text);

    static RuleProblem of(String file, String text) {
        return new RuleProblem(file, 0, 0, text);
    }

    @Override
    public int compareTo(RuleProblem other) {
        return ORDER.compare(this, other);
    }

    /** {@code file:line:column: text}, without the numbers that are not known. */
    @Override
    public String toString() {
        StringBuilder shown = new StringBuilder(file);
        if (line > 0) {
            shown.append(':').append(line);
            if (column > 0) {
                shown.append(':').append(column);
            }
        }
        return shown.append(": ").append(text).toString();
    }
}
