package fettle;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.domain.JavaCodeUnit;
import com.tngtech.archunit.core.domain.JavaField;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** The rooms stack one way, and what they compute is exact. */
class ArchitectureTest {

    /** From the documents to the commands: each may use those before it. */
    private static final List<String> ROOMS = List.of("document", "catalog", "relation", "space", "judgement", "view", "editor", "command");

    /** The one class that knows of logging, in order to silence it: the library behind it would write to a stream that an editor shows. */
    private static final String SILENCER = "fettle.command.LanguageServerCommand";

    /** What the view reads from the engine: names and texts of rules, and never the rules' power to decide. */
    private static final Set<String> METADATA = Set.of("fettle.engine.RuleIndex", "fettle.engine.RuleInfo", "fettle.engine.Severity");

    private static final Set<String> INEXACT = Set.of("double", "float", "java.lang.Double", "java.lang.Float");

    private static JavaClasses classes;

    @BeforeAll
    static void import_the_program() {
        classes = new ClassFileImporter().withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS).importPackages("fettle");
        for (String room : ROOMS) {
            assertTrue(in(room).count() > 0, "no class of the room " + room + " was looked at");
        }
        assertTrue(in("engine").count() > 0, "no class of the engine was looked at");
        assertTrue(in("rules").count() > 0, "no compiled rule was looked at");
    }

    private static Stream<JavaClass> in(String room) {
        return classes.stream().filter(type -> belongs(type, room));
    }

    private static boolean belongs(JavaClass type, String room) {
        String name = type.getPackageName();
        return name.equals("fettle." + room) || name.startsWith("fettle." + room + ".");
    }

    /** The uses of unwanted classes by those of a room, as sentences. */
    private static Set<String> uses(String room, Predicate<JavaClass> unwanted) {
        return in(room).flatMap(type -> type.getDirectDependenciesFromSelf().stream())
                .filter(use -> unwanted.test(use.getTargetClass().getBaseComponentType()))
                .map(use -> use.getOriginClass().getFullName() + " uses " + use.getTargetClass().getFullName())
                .collect(Collectors.toCollection(TreeSet::new));
    }

    @Test
    void no_room_uses_one_downstream() {
        for (int i = 0; i < ROOMS.size(); i++) {
            List<String> downstream = ROOMS.subList(i + 1, ROOMS.size());
            assertEquals(Set.of(), uses(ROOMS.get(i), type -> downstream.stream().anyMatch(room -> belongs(type, room))));
        }
    }

    @Test
    void the_engine_uses_no_room() {
        assertEquals(Set.of(), uses("engine", type -> ROOMS.stream().anyMatch(room -> belongs(type, room))));
    }

    @Test
    void rules_are_run_by_relation_and_judgement_and_handed_out_by_commands_alone() {
        for (String room : List.of("document", "catalog", "space")) {
            assertEquals(Set.of(), uses(room, type -> belongs(type, "engine")));
        }
        assertEquals(Set.of(), uses("view", type -> belongs(type, "engine") && !METADATA.contains(type.getName())));
    }

    @Test
    void rules_know_nothing_of_views_and_commands() {
        assertEquals(Set.of(), uses("rules", type -> belongs(type, "view") || belongs(type, "command")));
    }

    @Test
    void nothing_logs() {
        for (String room : Stream.concat(ROOMS.stream(), Stream.of("engine")).toList()) {
            assertEquals(Set.of(),
                    uses(room, type -> type.getPackageName().startsWith("java.util.logging") || type.getPackageName().startsWith("org.slf4j")).stream()
                            .filter(use -> !use.startsWith(SILENCER)).collect(Collectors.toSet()));
        }
    }

    @Test
    void only_the_starting_point_ends_the_process() {
        Set<String> callers = classes.stream()
                .flatMap(type -> type.getMethodCallsFromSelf().stream())
                .filter(call -> call.getTarget().getName().matches("exit|halt") && call.getTargetOwner().getName().matches("java.lang.(System|Runtime)"))
                .map(call -> call.getOrigin().getFullName())
                .collect(Collectors.toCollection(TreeSet::new));
        callers.removeIf(caller -> caller.startsWith("fettle.engine.RuleCompiler."));
        assertEquals(Set.of("fettle.command.Main.main([Ljava.lang.String;)"), callers);
    }

    @Test
    void figures_are_exact_from_reading_to_judgement() {
        List<String> inexact = new ArrayList<>();
        int looked = 0;
        for (String room : List.of("catalog", "relation", "space", "judgement")) {
            for (JavaClass type : in(room).toList()) {
                for (JavaField field : type.getFields()) {
                    looked++;
                    if (INEXACT.contains(field.getRawType().getBaseComponentType().getName())) {
                        inexact.add(field.getFullName());
                    }
                }
                for (JavaCodeUnit unit : type.getCodeUnits()) {
                    looked++;
                    boolean takes = unit.getRawParameterTypes().stream().anyMatch(taken -> INEXACT.contains(taken.getBaseComponentType().getName()));
                    if (takes || INEXACT.contains(unit.getRawReturnType().getBaseComponentType().getName())) {
                        inexact.add(unit.getFullName());
                    }
                }
            }
        }
        assertTrue(looked > 100, "only " + looked + " fields and methods were looked at");
        assertEquals(List.of(), inexact);
    }
}
