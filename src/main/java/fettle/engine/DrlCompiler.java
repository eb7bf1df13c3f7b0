package fettle.engine;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import org.drools.compiler.kie.builder.impl.InternalKieModule;
import org.drools.model.codegen.ExecutableModelProject;
import org.kie.api.KieServices;
import org.kie.api.builder.KieBuilder;
import org.kie.api.builder.KieFileSystem;
import org.kie.api.builder.Message;
import org.kie.api.builder.ReleaseId;
import org.kie.api.io.ResourceType;

/**
 * Turns DRL files into classes with the engine's own builder and its executable model.
 *
 * <p>The one place that compiles. The project type must be named: the bare {@code buildAll()} looks for a compiler that is
 * not there. Each build has a release id of its own, so that the engine's repository never answers with an older one.
 */
final class DrlCompiler {
    private static final String FOLDER = "src/main/resources/";

    private DrlCompiler() {
    }

    /** Compiles rules whose facts and globals {@code facts} can load, or throws {@link RuleErrors}. */
    static CompiledRules compile(RuleFolders rules, String digest, ClassLoader facts) {
        KieServices services = KieServices.get();
        ReleaseId release = services.newReleaseId("fettle", "rules", digest);
        KieFileSystem files = services.newKieFileSystem();
        files.generateAndWritePomXML(release);
        Map<String, DrlFile> byName = new LinkedHashMap<>();
        for (DrlFile file : rules.files()) {
            String name = "r" + byName.size() + "/rules.drl";
            byName.put(name, file);
            files.write(services.getResources().newByteArrayResource(file.text().getBytes(StandardCharsets.UTF_8))
                    .setResourceType(ResourceType.DRL).setSourcePath(FOLDER + name));
        }
        try {
            KieBuilder builder = services.newKieBuilder(files, facts).buildAll(ExecutableModelProject.class);
            List<Message> errors = builder.getResults().getMessages(Message.Level.ERROR);
            if (!errors.isEmpty()) {
                throw new RuleErrors(ErrorPlaces.of(errors, byName));
            }
            InternalKieModule module = (InternalKieModule) builder.getKieModule();
            SortedMap<String, byte[]> classes = classes(module);
            return new CompiledRules(classes, new RuleIndex(digest, models(classes), rules.infos()));
        } finally {
            services.getRepository().removeKieModule(release);
        }
    }

    private static SortedMap<String, byte[]> classes(InternalKieModule module) {
        SortedMap<String, byte[]> classes = new TreeMap<>();
        for (String file : module.getFileNames()) {
            // The project model class serves only the container that is not used here.
            if (file.endsWith(".class") && !file.startsWith("org/drools/project/model/")) {
                classes.put(file, module.getBytes(file));
            }
        }
        return classes;
    }

    private static Map<Unit, List<String>> models(SortedMap<String, byte[]> classes) {
        Map<Unit, List<String>> models = new EnumMap<>(Unit.class);
        for (String file : classes.keySet()) {
            String name = file.substring(0, file.length() - ".class".length()).replace('/', '.');
            int dot = name.lastIndexOf('.');
            if (dot > 0 && name.substring(dot + 1).matches("Rules[0-9A-F]{32}")) {
                Unit.ofPackage(name.substring(0, dot))
                        .ifPresent(unit -> models.computeIfAbsent(unit, key -> new ArrayList<>()).add(name));
            }
        }
        return models;
    }
}
