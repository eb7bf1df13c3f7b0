package fettle.space.patch;

import fettle.catalog.Access;
import fettle.catalog.Catalog;
import fettle.catalog.Offer;
import fettle.space.Change;
import fettle.space.EntryName;
import fettle.space.Prices;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;

/** Finds the parts that can no longer be bought, by anybody or under some access profile. */
public final class SourceLosses {

    private static final Set<String> SELLERS = Set.of("vendors", "currencies", "goods");

    private SourceLosses() {}

    /** All of them, by part; parts that are gone altogether are none. */
    public static List<SourceLoss> of(Catalog old, Catalog now, CatalogChanges changes) {
        Map<String, Rename> formerly = new HashMap<>();
        changes.renames().forEach(rename -> formerly.put(rename.to().id(), rename));
        Prices anybodyBefore = new Prices(old, Optional.empty());
        Prices anybodyAfter = new Prices(now, Optional.empty());
        Map<String, Prices> before = profiles(old, now);
        Map<String, Prices> after = profiles(now, old);
        List<SourceLoss> losses = new ArrayList<>();
        for (String part : now.parts().keySet()) {
            Optional<Rename> rename = Optional.ofNullable(formerly.get(part));
            String was = rename.map(found -> found.from().id()).orElse(part);
            boolean whole = anybodyBefore.cheapest(was).isPresent() && anybodyAfter.cheapest(part).isEmpty();
            List<String> lost = before.keySet().stream()
                    .filter(profile -> before.get(profile).cheapest(was).isPresent() && after.get(profile).cheapest(part).isEmpty())
                    .toList();
            if (whole || !lost.isEmpty()) {
                Set<Offer> offers = new LinkedHashSet<>();
                List<Prices> theirs = whole ? List.of(anybodyBefore) : lost.stream().map(before::get).toList();
                theirs.forEach(prices -> prices.offers(was).forEach(priced -> offers.add(priced.offer())));
                losses.add(new SourceLoss(part, was, whole, lost, List.copyOf(offers), causes(part, rename, lost, offers, changes), misnamed(was, now)));
            }
        }
        return losses;
    }

    private static List<Offer> misnamed(String was, Catalog now) {
        return now.parts().containsKey(was) || now.platforms().containsKey(was) ? List.of() : now.offers().stream().filter(offer -> offer.part().equals(was)).toList();
    }

    private static Map<String, Prices> profiles(Catalog catalog, Catalog other) {
        Map<String, Prices> prices = new TreeMap<>();
        catalog.access().forEach((id, profile) -> {
            if (other.access().containsKey(id)) {
                prices.put(id, new Prices(catalog, Optional.<Access>of(profile)));
            }
        });
        return prices;
    }

    private static List<Change> causes(String part, Optional<Rename> rename, List<String> profiles, Set<Offer> offers, CatalogChanges changes) {
        List<Change> causes = new ArrayList<>();
        rename.map(Rename::changes).orElse(changes.of(EntryName.part(part))).stream()
                .filter(change -> change.property().equals(WrittenCatalog.OFFERS))
                .filter(change -> change.removed() || change.what().endsWith(".tier"))
                .forEach(causes::add);
        if (causes.isEmpty()) {
            changes.all().stream()
                    .filter(change -> SELLERS.contains(change.entry().section()) || change.entry().section().equals("access") && profiles.contains(change.entry().id()))
                    .filter(change -> concerns(change, offers))
                    .forEach(causes::add);
        }
        return causes;
    }

    private static boolean concerns(Change change, Set<Offer> offers) {
        return offers.stream().anyMatch(offer -> change.entry().id().equals(offer.vendor())
                || change.entry().id().equals(offer.currency())
                || offer.barter().stream().anyMatch(item -> change.entry().id().equals(item.good()))
                || change.path().contains(offer.vendor()));
    }
}
