package fettle.sat;

import fettle.catalog.SlotId;
import java.math.BigInteger;
import java.util.ArrayList;
import java.util.List;
import java.util.SortedMap;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;
import org.logicng.backbones.Backbone;
import org.logicng.backbones.BackboneType;
import org.logicng.datastructures.Tristate;
import org.logicng.formulas.Formula;
import org.logicng.formulas.FormulaFactory;
import org.logicng.formulas.Literal;
import org.logicng.formulas.Variable;
import org.logicng.knowledgecompilation.bdds.orderings.VariableOrdering;
import org.logicng.modelcounting.ModelCounter;
import org.logicng.solvers.MiniSat;
import org.logicng.solvers.functions.BackboneFunction;

/** What a library for propositional logic says of a platform's encoded builds. */
public final class Solver {

    private final Encoding encoding;
    private final FormulaFactory factory = new FormulaFactory();
    private final SortedMap<Integer, Variable> variables = new TreeMap<>();
    private final SortedMap<String, Variable> placed;
    private final SortedMap<SlotId, Variable> used;
    private final MiniSat solver;

    public Solver(Encoding encoding) {
        this.encoding = encoding;
        for (int i = 1; i <= encoding.variables(); i++) {
            variables.put(i, factory.variable("v" + i));
        }
        this.solver = MiniSat.miniSat(factory);
        encoding.clauses().forEach(clause -> solver.add(formula(clause)));
        this.placed = any("part ", encoding.placed());
        this.used = any("slot ", encoding.used());
    }

    /** Variables, not counted among the builds', for any of several occurrences. */
    private <T> SortedMap<T, Variable> any(String sort, SortedMap<T, List<Integer>> occurrences) {
        SortedMap<T, Variable> named = new TreeMap<>();
        occurrences.forEach((name, some) -> {
            Variable variable = factory.variable(sort + name);
            named.put(name, variable);
            List<Literal> one = new ArrayList<>(List.of(variable.negate()));
            for (int occurrence : some) {
                one.add(literal(occurrence));
                solver.add(factory.clause(literal(-occurrence), variable));
            }
            solver.add(factory.clause(one));
        });
        return named;
    }

    private Formula formula(int[] clause) {
        Literal[] literals = new Literal[clause.length];
        for (int i = 0; i < clause.length; i++) {
            literals[i] = literal(clause[i]);
        }
        return factory.clause(literals);
    }

    private Literal literal(int number) {
        return number > 0 ? variables.get(number) : variables.get(-number).negate();
    }

    /**
     * The number of builds.
     *
     * @param expected what others make of it: the library's counter is wrong about one random catalog in many thousands, so that another number is counted once more by a
     *     decision diagram, which is slower
     */
    public BigInteger count(BigInteger expected) {
        List<Formula> clauses = encoding.clauses().stream().map(this::formula).toList();
        try {
            BigInteger count = ModelCounter.count(clauses, new TreeSet<>(variables.values()));
            return count.equals(expected) ? count : byDiagram(clauses);
        } catch (AssertionError own) {
            // With few sets of clauses, about one random catalog in thousands, an assertion within the counter fails.
            return byDiagram(clauses);
        }
    }

    private BigInteger byDiagram(List<Formula> clauses) {
        Formula all = factory.and(clauses);
        return all.bdd(VariableOrdering.FORCE).modelCount().shiftLeft(variables.size() - all.variables().size());
    }

    /** Whether there is a build. */
    public boolean possible() {
        return solver.sat() == Tristate.TRUE;
    }

    /** Whether there is a build with a part. */
    public boolean possible(String part) {
        return solver.sat(placed.get(part)) == Tristate.TRUE;
    }

    /** The parts that are in each build; of none, no part. */
    public SortedSet<String> inAll() {
        return named(placed, true);
    }

    /** The parts that have occurrences, but are in no build. */
    public SortedSet<String> inNone() {
        return named(placed, false);
    }

    /** The slots that no build uses. */
    public SortedSet<SlotId> unused() {
        return named(used, false);
    }

    private <T> SortedSet<T> named(SortedMap<T, Variable> sought, boolean always) {
        Backbone backbone = solver.execute(BackboneFunction.builder().variables(sought.values()).type(BackboneType.POSITIVE_AND_NEGATIVE).build());
        SortedSet<T> found = new TreeSet<>();
        sought.forEach((name, variable) -> {
            if (backbone.isSat() ? backbone.getCompleteBackbone().contains(always ? variable : variable.negate()) : !always) {
                found.add(name);
            }
        });
        return found;
    }
}
