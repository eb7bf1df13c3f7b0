package fettle.space;

import fettle.oracle.Entries;
import fettle.oracle.JsonText;
import fettle.oracle.RandomCatalogs;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;

/** Random catalogs, as JSON, whose platforms are small enough to try every candidate. */
final class SmallCatalogs {

    static final int MOST_CANDIDATES = 1_500;

    private SmallCatalogs() {}

    /** From two sources: one draws on everything evenly, the other loves clashes. */
    static Arbitrary<String> catalogs() {
        Arbitrary<String> odd = Arbitraries.randomValue(random -> {
            while (true) {
                String json = RandomCatalog.json(random);
                if (small(json)) {
                    return json;
                }
            }
        });
        return Arbitraries.oneOf(odd, RandomCatalogs.catalogs().map(Object::toString).filter(SmallCatalogs::small));
    }

    static boolean small(String json) {
        Entries entries = Entries.of(JsonText.read(json));
        return entries.platformIds().stream().allMatch(platform -> fettle.oracle.Space.small(entries, platform, MOST_CANDIDATES));
    }
}
