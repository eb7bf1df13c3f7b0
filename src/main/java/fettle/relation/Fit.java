package fettle.relation;

/**
 * One way in which a part fits a slot.
 *
 * @param rule the rule that found it
 * @param by the mount or the name they have in common
 */
public record Fit(String rule, String by) implements Comparable<Fit> {

    @Override
    public int compareTo(Fit other) {
        int byRule = rule.compareTo(other.rule);
        return byRule != 0 ? byRule : by.compareTo(other.by);
    }
}
