package fettle.judgement;

import fettle.space.patch.AdviceShift;
import fettle.space.patch.CatalogChanges;
import fettle.space.patch.FitGroup;
import fettle.space.patch.SourceLoss;
import java.util.List;
import java.util.Optional;
import java.util.SortedMap;
import java.util.SortedSet;

/**
 * All that a patch changed and what it broke.
 *
 * @param touched the parts that differ, by their ids in either catalog, each with the platforms that can hold it
 * @param lost the fits lost, by cause, the most first
 * @param gained the fits gained likewise
 * @param sources the parts that can no longer be bought
 * @param advice which parts became, or ceased to be, dominated; empty where that was not looked into
 * @param builds in the order of their files, then as written there
 * @param findings in order
 */
public record Comparison(
        CatalogReading old,
        CatalogReading now,
        CatalogChanges changes,
        SortedMap<String, SortedSet<String>> touched,
        List<FitGroup> lost,
        List<FitGroup> gained,
        List<SourceLoss> sources,
        Optional<List<AdviceShift>> advice,
        List<PatchedBuild> builds,
        List<Finding> findings) {

    public Comparison {
        lost = List.copyOf(lost);
        gained = List.copyOf(gained);
        sources = List.copyOf(sources);
        builds = List.copyOf(builds);
        findings = List.copyOf(findings);
    }
}
