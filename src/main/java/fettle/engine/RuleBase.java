package fettle.engine;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedSet;
import java.util.TreeSet;
import org.drools.core.impl.RuleBaseFactory;
import org.drools.model.Model;
import org.drools.modelcompiler.constraints.ConstraintEvaluationException;
import org.drools.modelcompiler.KieBaseBuilder;
import org.kie.api.KieBase;
import org.kie.api.KieBaseConfiguration;
import org.kie.api.runtime.KieSession;
import org.kie.api.runtime.rule.ConsequenceException;

/**
 * Loads compiled rules and runs them over facts.
 *
 * <p>The rules of the program, with or without a user's own. Each unit is loaded on first use: its generated model classes
 * are named by the index and instantiated, and a knowledge base is built from them. No container, no scan of the class
 * path, no compiler; a container would also need the engine's XML reader. Measured with 30 rules a unit and an archive of
 * loaded classes, in processor time on a busy machine where an empty program took 140 ms: the index 70 ms, the first unit
 * 220 ms, the second 50 ms; without the archive more than twice as much. A stateless session only wraps a stateful one, and
 * a sequential one would forbid rules to insert what they conclude, so neither is used.
 *
 * <p>Objects of this class may be shared between threads.
 */
public final class RuleBase {
    private final List<LoadableRules> sources;
    private final RuleIndex index;
    private final Map<Unit, LoadedUnit> units = new EnumMap<>(Unit.class);

    RuleBase(List<LoadableRules> sources) {
        this.sources = List.copyOf(sources);
        this.index = RuleIndex.merged(sources.stream().map(LoadableRules::index).toList());
        for (Unit unit : Unit.values()) {
            units.put(unit, new LoadedUnit(unit));
        }
    }

    /** The rules that the program was built with. */
    public static RuleBase builtIn() {
        return BuiltIn.get();
    }

    /**
     * The built-in rules, and those below a directory that the user named, compiled on first use and then kept in the
     * user's cache. Throws {@link RuleErrors} where they have faults or take a name that is already used.
     */
    public static RuleBase withExtra(Optional<Path> directory) {
        return directory.map(path -> withExtra(path, RuleCache.ofUser())).orElseGet(RuleBase::builtIn);
    }

    static RuleBase withExtra(Path directory, RuleCache cache) {
        LoadableRules builtIn = builtInSource();
        return new RuleBase(List.of(builtIn, ExtraRules.load(directory, cache, builtIn)));
    }

    /** What is known of all these rules. */
    public RuleIndex index() {
        return index;
    }

    /** Begins to load the built-in rules in the background, as {@link #prepare} does, before it is even known what they will judge. */
    public static void prepareBuiltIn() {
        inBackground(() -> builtIn().load(List.of(Unit.values())));
    }

    /**
     * Begins to load these units in the background, in this order, while the caller reads what they will judge. A fault
     * is told to whoever runs the unit.
     */
    public void prepare(Unit... wanted) {
        inBackground(() -> load(List.of(wanted)));
    }

    private static void inBackground(Runnable load) {
        Thread loading = new Thread(load, "rules");
        // Whoever runs the unit tries again, meets the same fault, and tells it.
        loading.setUncaughtExceptionHandler((thread, fault) -> {});
        loading.setDaemon(true);
        loading.start();
    }

    private void load(List<Unit> wanted) {
        wanted.forEach(unit -> units.get(unit).get());
    }

    /**
     * Runs a unit's rules over facts until nothing is left to do. Each global must be one that the unit's packages
     * declare. Matches come in no promised order. Throws {@link RulesUnfit} where there are no rules to run, {@link RuleFault} where one breaks off.
     */
    public void run(Unit unit, Map<String, ?> globals, Iterable<?> facts) {
        KieSession session = base(unit).newKieSession();
        try {
            globals.forEach(session::setGlobal);
            facts.forEach(session::insert);
            fire(session, unit);
        } catch (ConsequenceException broken) {
            String name = broken.getRule().getName();
            throw RuleFault.of(name, given(unit, name), broken.getCause() == null ? broken : broken.getCause());
        } catch (ConstraintEvaluationException | StackOverflowError broken) {
            if (sources.size() == 1) {
                throw broken;
            }
            // The program's own rules compare properties of facts and nothing more, and nest nothing.
            throw RuleFault.ofOneGiven(broken);
        } finally {
            session.dispose();
        }
    }

    /** The program's own rules come to an end, since they add nothing to the facts; one that the user named may not. */
    private void fire(KieSession session, Unit unit) {
        if (sources.size() == 1) {
            session.fireAllRules();
            return;
        }
        Brake brake = new Brake(session);
        session.fireAllRules(brake);
        brake.why().ifPresent(so -> {
            throw RuleFault.endless(brake.last(), given(unit, brake.last()), so);
        });
    }

    private boolean given(Unit unit, String rule) {
        return sources.stream().skip(1).anyMatch(source -> source.index().drlRules(unit).contains(rule));
    }

    /** A unit's knowledge base, loaded once. */
    KieBase base(Unit unit) {
        return units.get(unit).get();
    }

    private KieBase load(Unit unit) {
        List<Model> models = new ArrayList<>();
        for (LoadableRules source : sources) {
            source.index().models().getOrDefault(unit, List.of()).forEach(name -> models.add(model(name, source)));
        }
        requireAll(unit, models);
        KieBaseConfiguration settings = RuleBaseFactory.newKnowledgeBaseConfiguration();
        return KieBaseBuilder.createKieBaseFromModel(models, settings);
    }

    private static Model model(String name, LoadableRules source) {
        try {
            return (Model) Class.forName(name, true, source.loader()).getDeclaredConstructor().newInstance();
        } catch (ReflectiveOperationException | LinkageError absent) {
            throw new RulesUnfit("The compiled rules in " + name + " cannot be loaded: " + absent, absent);
        }
    }

    private void requireAll(Unit unit, List<Model> models) {
        SortedSet<String> found = new TreeSet<>();
        models.forEach(model -> model.getRules().forEach(rule -> found.add(rule.getName())));
        SortedSet<String> named = index.drlRules(unit);
        if (found.isEmpty()) {
            throw new RulesUnfit("There are no " + unit.packageName() + " rules; nothing can be checked without.");
        }
        if (!found.equals(named)) {
            SortedSet<String> missing = new TreeSet<>(named);
            missing.removeAll(found);
            SortedSet<String> unknown = new TreeSet<>(found);
            unknown.removeAll(named);
            throw new RulesUnfit("The loaded " + unit.packageName() + " rules are not those of the index: missing "
                    + missing + ", not in the index " + unknown + ".");
        }
    }

    private static LoadableRules builtInSource() {
        return new LoadableRules(RuleIndex.builtIn(), RuleBase.class.getClassLoader());
    }

    /** Loads once, whichever thread asks first. */
    private final class LoadedUnit {
        private final Unit unit;
        private Optional<KieBase> base = Optional.empty();

        LoadedUnit(Unit unit) {
            this.unit = unit;
        }

        synchronized KieBase get() {
            if (base.isEmpty()) {
                base = Optional.of(load(unit));
            }
            return base.get();
        }
    }

    /** Made on first use, and only then; where that fails, whoever asks next is told as well. */
    private static final class BuiltIn {
        private static Optional<RuleBase> base = Optional.empty();

        static synchronized RuleBase get() {
            if (base.isEmpty()) {
                base = Optional.of(new RuleBase(List.of(builtInSource())));
            }
            return base.get();
        }
    }
}
