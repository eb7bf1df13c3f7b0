package fettle.judgement;

import fettle.catalog.Build;
import fettle.catalog.BuildReader;
import fettle.catalog.Catalog;
import fettle.catalog.Entry;
import fettle.catalog.Part;
import fettle.catalog.Reference;
import fettle.document.DeepStack;
import fettle.document.Document;
import fettle.document.DocumentSet;
import fettle.document.Places;
import fettle.document.Schemas;
import fettle.engine.RuleBase;
import fettle.relation.Deriver;
import fettle.relation.Relations;
import fettle.space.Change;
import fettle.space.EntryName;
import fettle.space.Prices;
import fettle.space.patch.Advice;
import fettle.space.patch.BuildShift;
import fettle.space.patch.BuildShifts;
import fettle.space.patch.CatalogChanges;
import fettle.space.patch.FitChanges;
import fettle.space.patch.FitGroup;
import fettle.space.patch.Reach;
import fettle.space.patch.SourceLoss;
import fettle.space.patch.SourceLosses;
import fettle.space.worth.Gains;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;
import java.util.SortedSet;
import java.util.function.Predicate;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** Compares two catalogs, and the builds of one with both. */
public final class PatchReview {

    /** What a build names that it is judged by, and not made of. */
    private static final Set<String> BESIDE_PARTS = Set.of("outfits", "access", "lenses");

    private final RuleBase rules;
    private final Advice.Scope scope;

    /** @param scope for which parts it is looked into whether they became dominated, or ceased to be */
    public PatchReview(RuleBase rules, Advice.Scope scope) {
        this.rules = rules;
        this.scope = scope;
    }

    /** Everything that differs, and what that does to these builds. */
    public Comparison compare(CatalogReading old, CatalogReading now, DocumentSet builds) {
        Supplier<List<Finding>> stated = DeepStack.begin(() -> stated(old, now));
        Relations before = old.relations();
        Relations after = now.relations();
        CatalogChanges changes = CatalogChanges.between(old.documents(), now.documents());
        List<FitGroup> lost = FitChanges.lost(before, after, changes);
        List<FitGroup> gained = FitChanges.gained(before, after, changes);
        List<SourceLoss> sources = SourceLosses.of(old.catalog(), now.catalog(), changes);
        SortedMap<String, SortedSet<String>> touched = Reach.of(parts(changes), before, after);

        List<Object> facts = new ArrayList<>(documentFacts(old, now, builds));
        List<String> files = new ArrayList<>();
        List<Build> read = new ArrayList<>();
        for (Document document : builds.documents()) {
            BuildReader.read(document).forEach(build -> {
                files.add(document.file());
                read.add(build);
            });
        }
        List<Entry> entries = read.stream().map(Build::entry).toList();
        facts.addAll(entries);
        facts.addAll(SharedId.of(entries));
        List<BuildShift> shifts = BuildShifts.of(read, before, after, changes, hidden(old, now), catalog -> Deriver.derive(rules, catalog));
        List<PatchedBuild> patched = new ArrayList<>();
        for (int i = 0; i < shifts.size(); i++) {
            patched.add(new PatchedBuild(files.get(i), shifts.get(i)));
        }
        Optional<Advice> advice = Advice.between(before, after, read, scope);

        Stream.concat(lost.stream(), gained.stream()).map(FitsTurned::new).forEach(facts::add);
        facts.add(new PatchReading(Reading.of(old), Reading.of(now), profiles(read)));
        facts.addAll(broken(old.catalog(), now, read, changes));
        facts.addAll(sources);
        advice.ifPresent(found -> facts.addAll(turned(found, before.catalog(), after.catalog(), changes)));
        facts.addAll(patched);
        patched.stream().filter(build -> !build.unjudged()).forEach(build -> build.shift().crossings().forEach(crossing -> facts.add(new CrossedLimit(build, crossing))));
        List<Finding> findings = new ArrayList<>(new Judge(rules).judge(facts, places(old, now, builds)));
        findings.addAll(stated.get());
        return new Comparison(old, now, changes, touched, lost, gained, sources, advice.map(Advice::shifts), patched, Judge.sorted(findings));
    }

    /** Of what seems gone, what stood in a document of the old catalog that the new one has too, and that could not be read in full there. */
    private static Predicate<Change> hidden(CatalogReading old, CatalogReading now) {
        Set<String> unread = new HashSet<>(now.unread());
        Set<String> names = now.documents().documents().stream().filter(document -> unread.contains(document.file())).map(Document::name).collect(Collectors.toSet());
        Set<String> files = old.documents().documents().stream().filter(document -> names.contains(document.name())).map(Document::file).collect(Collectors.toSet());
        return change -> change.whole() && change.removed() && change.before().filter(origin -> files.contains(origin.file())).isPresent();
    }

    /** What the new catalog states wrongly and the old one did not, and the ids of either of which it isn't known which entry is compared. */
    private List<Finding> stated(CatalogReading old, CatalogReading now) {
        StatedErrors errors = new StatedErrors(rules);
        List<Finding> before = errors.besideMentions(old);
        Set<List<Object>> known = before.stream().map(PatchReview::said).collect(Collectors.toSet());
        return Stream.concat(
                before.stream().filter(PatchReview::ofSharedId),
                errors.besideMentions(now).stream().filter(finding -> ofSharedId(finding) || !known.contains(said(finding)))).toList();
    }

    private static boolean ofSharedId(Finding finding) {
        return finding.rule().equals("duplicate-id");
    }

    private static List<Object> said(Finding finding) {
        return List.of(finding.rule(), finding.subject(), finding.data());
    }

    /** The mentions that named something before, or weren't there, and name nothing now, with what tells that. */
    private List<Object> broken(Catalog old, CatalogReading now, List<Build> builds, CatalogChanges changes) {
        Names names = new Names(now.catalog(), rules.index(), changes.renames(), changes.entryRenames());
        Names earlier = new Names(old, rules.index());
        Set<List<String>> before = unknown(old, earlier).stream().map(PatchReview::said).collect(Collectors.toSet());
        List<Reference> broken = unknown(now.catalog(), names).stream().filter(mention -> !before.contains(said(mention))).toList();
        // What became of a build's platform and parts is told with its verdict.
        List<BuildMention> lost = builds.stream().flatMap(build -> BuildMention.of(build).stream()).filter(mention -> BESIDE_PARTS.contains(mention.space()))
                .filter(mention -> earlier.known(mention.reference()) && !names.known(mention.reference())).toList();
        List<Object> facts = new ArrayList<>(broken);
        facts.addAll(lost);
        facts.addAll(names.facts(Stream.concat(now.catalog().references().stream(), lost.stream().map(BuildMention::reference)).toList()));
        facts.add(Reading.of(now));
        facts.add(new BuildReading(Reading.of(now)));
        facts.addAll(now.catalog().heads());
        return facts;
    }

    private static List<Reference> unknown(Catalog catalog, Names names) {
        return catalog.references().stream().filter(mention -> !names.known(mention)).toList();
    }

    private static List<String> said(Reference mention) {
        return List.of(mention.subject(), mention.space(), mention.id());
    }

    /** What was advised and is no longer true, and what is not known of it, platform by platform. */
    private static List<Object> turned(Advice advice, Catalog old, Catalog now, CatalogChanges changes) {
        List<Object> facts = new ArrayList<>(AdviceTurned.of(
                advice.shifts(), now.parts(), new Gains(old, new Prices(old, Optional.empty())), new Gains(now, new Prices(now, Optional.empty())), changes));
        advice.open().forEach((id, parts) -> {
            Part platform = now.platforms().get(id);
            facts.add(new LeftOpen(platform.subject(), platform.origin(), "the advice still holds on", List.copyOf(parts.keySet()), parts.get(parts.firstKey())));
        });
        return facts;
    }

    private static Places places(CatalogReading old, CatalogReading now, DocumentSet builds) {
        return new Places(Stream.of(old.documents(), now.documents(), builds).flatMap(set -> set.documents().stream()).toList());
    }

    private static Optional<Set<String>> profiles(List<Build> builds) {
        return Optional.of(builds).filter(some -> !some.isEmpty())
                .map(some -> some.stream().flatMap(build -> build.access().stream()).map(named -> named.id()).collect(Collectors.toSet()));
    }

    private static List<String> parts(CatalogChanges changes) {
        return changes.all().stream().map(Change::entry).filter(entry -> entry.section().equals("parts")).map(EntryName::id).distinct().toList();
    }

    /** What is wrong with documents is told for both catalogs: what can't be read can't be compared. */
    private static List<Object> documentFacts(CatalogReading old, CatalogReading now, DocumentSet builds) {
        Schemas schemas = new Schemas();
        List<Object> facts = new ArrayList<>(old.documentFacts());
        facts.addAll(now.documentFacts());
        builds.problems().forEach(facts::add);
        builds.documents().forEach(document -> facts.addAll(schemas.checkBuild(document)));
        return facts;
    }
}
