package fettle.editor;

import fettle.document.DeepStack;
import fettle.document.Document;
import fettle.document.DocumentSet;
import fettle.document.Documents;
import fettle.document.Node;
import fettle.document.Origin;
import fettle.engine.RuleBase;
import fettle.judgement.CatalogReading;
import fettle.judgement.Finding;
import fettle.judgement.Lint;
import fettle.judgement.Validation;
import java.io.IOException;
import java.io.InputStream;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicLong;
import java.util.function.Function;
import java.util.function.Predicate;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import org.eclipse.lsp4j.Diagnostic;
import org.eclipse.lsp4j.Location;
import org.eclipse.lsp4j.MessageParams;
import org.eclipse.lsp4j.MessageType;
import org.eclipse.lsp4j.PublishDiagnosticsParams;
import org.eclipse.lsp4j.services.LanguageClient;

/** All that a server knows while an editor is connected: the open documents, their catalogs, and what was found in them. */
final class Session {

    /** How long no key must be pressed before a check begins, in milliseconds. */
    private static final long PAUSE = 150;
    /** How long someone who types without a pause waits for a check, in nanoseconds. */
    private static final long LONGEST_WAIT = 1_000_000_000;

    private final RuleBase rules;
    private final Optional<Path> named;
    private final Function<Throwable, String> told;
    private final Map<Path, OpenText> open = new ConcurrentHashMap<>();
    private final Map<Path, Desk> desks = new ConcurrentHashMap<>();
    private final ScheduledExecutorService checks = Executors.newSingleThreadScheduledExecutor(Session::quiet);
    private final ExecutorService thorough = Executors.newSingleThreadExecutor(Session::quiet);
    private final ExecutorService answers = Executors.newSingleThreadExecutor(Session::quiet);
    private final AtomicLong moves = new AtomicLong();
    private volatile Homes homes;
    private volatile boolean plain;
    private volatile Optional<LanguageClient> client = Optional.empty();

    /**
     * @param named the catalog that was named when the server was started
     * @param told puts a fault of the program into one sentence
     */
    Session(RuleBase rules, Optional<Path> named, Function<Throwable, String> told) {
        this.rules = rules;
        this.named = named;
        this.told = told;
        this.homes = new Homes(named, List.of(), open);
    }

    private static Thread quiet(Runnable work) {
        return DeepStack.thread(work, "editor");
    }

    void connect(LanguageClient editor) {
        client = Optional.of(editor);
    }

    RuleBase rules() {
        return rules;
    }

    /** Whether the editor shows bare text only, and no Markdown. */
    boolean plain() {
        return plain;
    }

    void greet(List<Path> folders, boolean bare) {
        plain = bare;
        homes = new Homes(named, folders, open);
    }

    void end() {
        checks.shutdownNow();
        thorough.shutdownNow();
        answers.shutdown();
    }

    /** Works an answer out beside the reading of further messages. */
    <T> CompletableFuture<T> answer(Supplier<T> work) {
        return CompletableFuture.supplyAsync(work, answers);
    }

    /** The file of a URI; empty for what is no file. */
    static Optional<Path> file(String uri) {
        try {
            URI parsed = URI.create(uri);
            return "file".equals(parsed.getScheme()) ? Optional.of(Path.of(parsed).toAbsolutePath().normalize()) : Optional.empty();
        } catch (IllegalArgumentException | java.nio.file.FileSystemNotFoundException strange) {
            return Optional.empty();
        }
    }

    Optional<OpenText> open(String uri) {
        return file(uri).map(open::get);
    }

    void open(OpenText text) {
        open.put(text.file(), text);
        changed(text.file());
    }

    void close(String uri) {
        file(uri).ifPresent(path -> {
            open.remove(path);
            changed(path);
        });
    }

    /** The catalog that a file belongs to. */
    Optional<Desk> desk(Path file) {
        return homes.of(file).map(home -> desks.computeIfAbsent(home, Desk::new));
    }

    /** What a document of this name holds. */
    static boolean holdsBuilds(Desk desk, Path file) {
        return Homes.holdsBuilds(desk.home(), file);
    }

    /** Checks the catalog of a file again, as soon as no further change follows. */
    void changed(Path file) {
        desk(file).ifPresent(this::changed);
        moved();
    }

    void changedAll() {
        desks.values().forEach(this::changed);
        moved();
    }

    /** With a change a catalog may begin or end, and documents come to belong to it or to another. */
    private void moved() {
        long move = moves.incrementAndGet();
        checks.schedule(() -> guarded(() -> {
            if (moves.get() == move) {
                seat();
            }
        }), PAUSE, TimeUnit.MILLISECONDS);
    }

    private void seat() {
        Map<Path, Desk> now = new LinkedHashMap<>();
        open.keySet().forEach(file -> desk(file).ifPresent(desk -> now.put(file, desk)));
        for (Desk desk : List.copyOf(desks.values())) {
            Set<Path> held = now.keySet().stream().filter(file -> now.get(file).equals(desk)).collect(Collectors.toSet());
            if (!homes.holds(desk.home())) {
                desks.remove(desk.home());
                desk.change();
                leave(desk, file -> true);
            } else if (!held.equals(desk.held())) {
                leave(desk, file -> open.containsKey(file) && !now.containsKey(file));
                check(desk, desk.change());
            }
        }
    }

    /** Tells the editor that there is nothing to say any more of documents that are no part of a catalog now. */
    private synchronized void leave(Desk desk, Predicate<Path> left) {
        Map<Boolean, Set<Path>> marked = desk.marked().stream().collect(Collectors.partitioningBy(left, Collectors.toSet()));
        marked.get(true).forEach(file -> client.ifPresent(editor -> editor.publishDiagnostics(new PublishDiagnosticsParams(uri(file), List.of()))));
        desk.mark(marked.get(false));
    }

    private void changed(Desk desk) {
        long change = desk.change();
        checks.schedule(() -> guarded(() -> {
            if (desk.rests(change) || desk.waits(LONGEST_WAIT)) {
                check(desk, change);
            }
        }), PAUSE, TimeUnit.MILLISECONDS);
    }

    private void guarded(Runnable work) {
        try {
            work.run();
        } catch (RuntimeException | StackOverflowError | OutOfMemoryError fault) {
            client.ifPresent(editor -> editor.logMessage(new MessageParams(MessageType.Error, told.apply(fault))));
        }
    }

    /** The documents of builds in the catalog's folder of them and those that are open, as the editor holds them. */
    List<Document> builds(Desk desk) {
        Map<String, Document> builds = new TreeMap<>();
        Path folder = desk.home().resolve("builds");
        if (Files.isDirectory(folder)) {
            Documents.builds(List.of(folder), InputStream.nullInputStream()).documents().forEach(document -> builds.put(document.file(), document));
        }
        for (OpenText text : open.values()) {
            if (holdsBuilds(desk, text.file()) && desk(text.file()).filter(desk::equals).isPresent()) {
                builds.put(shown(text.file()), text.read());
            }
        }
        return List.copyOf(builds.values());
    }

    private void check(Desk desk, long change) {
        desk.begin();
        Map<Path, OpenText> texts = new LinkedHashMap<>();
        open.values().stream().filter(text -> desk(text.file()).filter(desk::equals).isPresent()).forEach(text -> texts.put(text.file(), text));
        desk.hold(texts.keySet());
        Map<Path, byte[]> unsaved = new LinkedHashMap<>();
        List<Document> builds = new ArrayList<>();
        for (OpenText text : texts.values()) {
            if (!holdsBuilds(desk, text.file())) {
                unsaved.put(real(text.file()), text.bytes());
            } else {
                Document read = text.read();
                boolean telling = read.root().orElse(null) instanceof Node.Obj root && (root.members().containsKey("build") || root.members().containsKey("builds"));
                if (text.file().startsWith(desk.home()) || telling) {
                    builds.add(read);
                }
            }
        }
        Drafts.Draft draft = desk.drafts().of(Documents.catalog(desk.home(), unsaved), texts);
        draft.unfinished().values().forEach(text -> builds.add(text.problems()));
        DocumentSet found = draft.documents();
        Optional<Desk.Checked> before = desk.checked();
        if (before.isPresent() && before.get().reading().documents().equals(found)) {
            desk.read(before.get().reading(), draft.unfinished());
            publish(desk, texts, before.get().reading(), before.get().quick(), before.get().slow(), validated(before.get().reading(), builds));
            return;
        }
        CatalogReading reading = CatalogReading.of(rules, found);
        desk.read(reading, draft.unfinished());
        Lint lint = new Lint(rules);
        List<Finding> quick = lint.quick(reading);
        List<Finding> ofBuilds = validated(reading, builds);
        publish(desk, texts, reading, quick, stillStanding(before, found), ofBuilds);
        thorough.execute(() -> guarded(() -> {
            // By the time that this begins, more may have been typed.
            if (desk.rests(change)) {
                Set<Finding> slow = new LinkedHashSet<>(lint.findings(reading));
                slow.removeAll(quick);
                desk.check(new Desk.Checked(reading, quick, List.copyOf(slow)));
                if (desk.rests(change)) {
                    publish(desk, texts, reading, quick, List.copyOf(slow), ofBuilds);
                }
            }
        }));
    }

    /** What was found with much work before and stands in a document that is as it was; the rest is left out until it is found anew. */
    private static List<Finding> stillStanding(Optional<Desk.Checked> before, DocumentSet now) {
        if (before.isEmpty()) {
            return List.of();
        }
        Set<String> same = new HashSet<>();
        Set<Document> was = new HashSet<>(before.get().reading().documents().documents());
        now.documents().stream().filter(was::contains).map(Document::file).forEach(same::add);
        return before.get().slow().stream().filter(finding -> finding.where().stream().map(Origin::file).allMatch(same::contains)).toList();
    }

    private List<Finding> validated(CatalogReading reading, List<Document> builds) {
        if (builds.isEmpty()) {
            return List.of();
        }
        Validation.Outcome outcome = new Validation(rules).validate(reading, new DocumentSet(builds), Optional.empty());
        Set<Finding> findings = new LinkedHashSet<>(outcome.general());
        outcome.builds().forEach(build -> findings.addAll(build.findings()));
        return List.copyOf(findings);
    }

    /**
     * Tells the editor what was found in texts as they were when the check began, and in which version of each that was: someone who types on is told of what stands
     * there all the same, and a check of the new text follows. Nothing is told of a text that was opened or closed since.
     */
    private synchronized void publish(Desk desk, Map<Path, OpenText> texts, CatalogReading reading, List<Finding> quick, List<Finding> slow, List<Finding> builds) {
        Set<Finding> all = new LinkedHashSet<>(quick);
        all.addAll(slow);
        all.addAll(builds);
        Map<Path, List<Desk.Shown>> shown = new Markings(this, desk, texts, reading).of(all);
        Set<Path> marked = new LinkedHashSet<>(desk.marked());
        Set<Path> files = new LinkedHashSet<>(marked);
        files.addAll(shown.keySet());
        files.addAll(texts.keySet());
        desk.show(shown);
        for (Path file : files) {
            Optional<OpenText> checked = Optional.ofNullable(texts.get(file));
            if (checked.isPresent() == open.containsKey(file)) {
                List<Diagnostic> diagnostics = shown.getOrDefault(file, List.of()).stream().map(Desk.Shown::diagnostic).toList();
                PublishDiagnosticsParams told = new PublishDiagnosticsParams(uri(file), diagnostics);
                checked.ifPresent(text -> told.setVersion(text.version()));
                client.ifPresent(editor -> editor.publishDiagnostics(told));
                if (diagnostics.isEmpty()) {
                    marked.remove(file);
                } else {
                    marked.add(file);
                }
            }
        }
        desk.mark(marked);
    }

    /** Where something of a catalog stands, as editors name it. */
    Location location(Desk desk, Origin origin) {
        return location(desk, origin, new LinkedHashMap<>());
    }

    /** The same in texts some of which are known; the others are added. */
    Location location(Desk desk, Origin origin, Map<Path, Lines> texts) {
        Path file = Path.of(origin.file());
        Optional<Unfinished> unfinished = desk.unfinished(file);
        Lines lines = unfinished.map(Unfinished::now).orElseGet(() -> texts.computeIfAbsent(file, this::lines));
        Extents.Stretch stretch = Extents.inner(unfinished.map(Unfinished::before).orElse(lines), origin);
        Extents.Stretch now = unfinished.flatMap(text -> text.now(stretch)).orElse(stretch);
        return new Location(uri(file), lines.range(now.from(), now.to()));
    }

    /** A file's text: what the editor holds, else what is on disk; empty where that cannot be had. */
    Lines lines(Path file) {
        OpenText text = open.get(file);
        if (text != null) {
            return text.lines();
        }
        try {
            return new Lines(new String(Files.readAllBytes(file), StandardCharsets.UTF_8));
        } catch (IOException gone) {
            return new Lines("");
        }
    }

    String uri(Path file) {
        OpenText text = open.get(file);
        return text != null ? text.uri() : file.toUri().toString();
    }

    static String shown(Path file) {
        return file.toString().replace(java.io.File.separatorChar, '/');
    }

    private static Path real(Path file) {
        try {
            return file.toRealPath();
        } catch (IOException unsaved) {
            return file;
        }
    }
}
