package fettle.space.patch;

import fettle.document.Node;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;

/** Names a part's offers, so that one offer can be told from another and found again in the next catalog. */
final class OfferNames {

    private static final String CURRENCY = "currency";

    private OfferNames() {}

    /**
     * The offers of one part by name: {@code vendor}, {@code vendor:tier}, and a further {@code :barter} where goods are asked. Several of one name
     * are numbered in the order of what they say. The base currency is written out where it is left out.
     */
    static SortedMap<String, Node.Obj> named(List<Node.Obj> offers, String baseCurrency) {
        SortedMap<String, List<Node.Obj>> byName = new TreeMap<>();
        for (Node.Obj offer : offers) {
            WrittenCatalog.text(offer, "vendor").ifPresent(vendor -> {
                String name = vendor + tier(offer).map(tier -> ":" + tier).orElse("") + (bartered(offer) ? ":barter" : "");
                byName.computeIfAbsent(name, unused -> new ArrayList<>()).add(inItsCurrency(offer, baseCurrency));
            });
        }
        SortedMap<String, Node.Obj> named = new TreeMap<>();
        byName.forEach((name, same) -> {
            if (same.size() > 1) {
                same.sort(Comparator.comparing((Node.Obj offer) -> said(offer)).thenComparing(Node.Obj::origin));
            }
            for (int i = 0; i < same.size(); i++) {
                named.put(i == 0 ? name : name + "#" + (i + 1), same.get(i));
            }
        });
        return named;
    }

    private static String said(Node.Obj offer) {
        StringBuilder said = new StringBuilder();
        Statements.of(offer).values().forEach(statement -> said.append(statement.path()).append(statement.value().text()).append('\n'));
        return said.toString();
    }

    private static Node.Obj inItsCurrency(Node.Obj offer, String base) {
        if (base.isEmpty() || bartered(offer) || offer.members().containsKey(CURRENCY)) {
            return offer;
        }
        Map<String, Node.Member> members = new LinkedHashMap<>(offer.members());
        members.put(CURRENCY, new Node.Member(offer.origin(), new Node.Text(base, offer.origin())));
        return new Node.Obj(members, offer.origin());
    }

    private static Optional<String> tier(Node.Obj offer) {
        return Optional.ofNullable(offer.members().get("tier")).map(member -> Statements.text(member.value()));
    }

    private static boolean bartered(Node.Obj offer) {
        return offer.members().containsKey("barter") && !offer.members().containsKey("price");
    }

    /** The new offers under their old names: those of equal name, then of each vendor the one that is left on either side. */
    static SortedMap<String, Node.Obj> aligned(SortedMap<String, Node.Obj> before, SortedMap<String, Node.Obj> after) {
        SortedMap<String, Node.Obj> aligned = new TreeMap<>();
        after.forEach((name, offer) -> {
            List<String> gone = unmatched(before, after, offer);
            boolean moved = !before.containsKey(name) && gone.size() == 1 && unmatched(after, before, offer).size() == 1;
            aligned.put(moved ? gone.get(0) : name, offer);
        });
        return aligned;
    }

    /** The names of the offers of the same vendor, and for the same sort of payment, that the other side has not. */
    private static List<String> unmatched(SortedMap<String, Node.Obj> offers, SortedMap<String, Node.Obj> others, Node.Obj like) {
        return offers.entrySet().stream()
                .filter(offer -> !others.containsKey(offer.getKey()))
                .filter(offer -> WrittenCatalog.text(offer.getValue(), "vendor").equals(WrittenCatalog.text(like, "vendor")))
                .filter(offer -> bartered(offer.getValue()) == bartered(like))
                .map(Map.Entry::getKey)
                .toList();
    }
}
