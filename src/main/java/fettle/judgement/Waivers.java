package fettle.judgement;

import fettle.catalog.CatalogHead;
import fettle.catalog.Waiver;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Applies a catalog's waivers to its findings. */
final class Waivers {

    private final List<WaiverUse> uses = new ArrayList<>();
    private final List<Finding> findings = new ArrayList<>();

    Waivers(Optional<CatalogHead> head, List<Waiver> waivers, List<Finding> drawn) {
        for (Waiver waiver : waivers) {
            boolean used = drawn.stream().anyMatch(finding -> covers(waiver, finding));
            boolean expired = waiver.until().isPresent() && head.isPresent() && Patches.compare(head.get().patch(), waiver.until().get()) >= 0;
            uses.add(new WaiverUse(waiver, used, expired));
        }
        for (Finding finding : drawn) {
            Optional<WaiverUse> use = uses.stream().filter(each -> !each.expired() && covers(each.waiver(), finding)).findFirst();
            findings.add(use.map(each -> finding.waivedBecause(each.waiver().because())).orElse(finding));
        }
    }

    private static boolean covers(Waiver waiver, Finding finding) {
        return waiver.rule().equals(finding.rule()) && waiver.subject().equals(finding.subject());
    }

    List<WaiverUse> uses() {
        return List.copyOf(uses);
    }

    List<Finding> findings() {
        return List.copyOf(findings);
    }
}
