package fettle.space.patch;

import fettle.catalog.Attribute;
import fettle.catalog.Build;
import fettle.catalog.Catalog;
import fettle.catalog.Limit;
import fettle.catalog.Outfit;
import fettle.catalog.Part;
import fettle.catalog.Stat;
import fettle.space.Change;
import fettle.space.EntryName;
import fettle.space.LimitMargin;
import fettle.space.Prices;
import fettle.space.Totals;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;

/** Finds which differences moved a build's totals, its cost, and its standing to limits, by undoing them. Remembers what many builds share. */
final class FigureBlame {

    private static final Set<String> MONEY = Set.of("currencies", "goods", "vendors", "catalog");

    /** A build whose parts are all known on both sides. */
    record Placed(Build build, List<String> parts) {}

    private record Undone(EntryName entry, Set<Change> changes) {}

    private record Bought(String part, String access) {}

    private final CatalogChanges changes;
    private final UnaryOperator<String> former;
    private final Mixture mixture;
    private final List<EntryName> money;
    private final Map<Undone, Catalog> read = new HashMap<>();
    private final Map<Bought, List<Change>> dearer = new HashMap<>();

    /** @param former the id that prices of the old catalog know a part by */
    FigureBlame(CatalogChanges changes, UnaryOperator<String> former) {
        this.changes = changes;
        this.former = former;
        this.mixture = Mixture.undoing(changes);
        Set<EntryName> names = new TreeSet<>(changes.old().entries().keySet());
        names.addAll(changes.now().entries().keySet());
        this.money = names.stream().filter(name -> MONEY.contains(name.section())).toList();
    }

    /** The differences behind an attribute's total. */
    List<Change> total(Placed placed, String attribute, Optional<BigDecimal> before) {
        return Needed.of(touching(placed, attribute), undone -> same(total(placed, attribute, placed.build.loaded(), Optional.empty(), undone), before));
    }

    private static boolean same(Optional<BigDecimal> one, Optional<BigDecimal> other) {
        return one.isPresent() == other.isPresent() && (one.isEmpty() || one.get().compareTo(other.get()) == 0);
    }

    private Optional<BigDecimal> total(Placed placed, String attribute, boolean loaded, Optional<Outfit> outfit, Set<Change> undone) {
        Optional<Attribute> measured = Optional.ofNullable(mixed(new EntryName("attributes", attribute), undone).attributes().get(attribute));
        Optional<Part> platform = host(EntryName.platform(placed.build.platform().id()), undone);
        if (measured.isEmpty() || platform.isEmpty()) {
            return Optional.empty();
        }
        List<Part> parts = placed.parts.stream().flatMap(id -> host(EntryName.part(id), undone).stream()).toList();
        return Totals.of(measured.get(), platform.get(), parts, loaded, outfit);
    }

    private Optional<Part> host(EntryName name, Set<Change> undone) {
        return mixed(name, undone).host(name.id());
    }

    /** A catalog of nothing but this entry, as it is with these differences undone. */
    private Catalog mixed(EntryName name, Set<Change> undone) {
        Set<Change> own = changes.of(name).isEmpty() ? Set.of() : undone.stream().filter(change -> change.entry().equals(name)).collect(Collectors.toSet());
        return read.computeIfAbsent(new Undone(name, own), key -> mixture.catalog(List.of(name), own));
    }

    /** The differences in what the attribute says, and in the figures for it of the parts and the platform. */
    private Set<Change> touching(Placed placed, String attribute) {
        Set<Change> touching = new LinkedHashSet<>(changes.of(new EntryName("attributes", attribute)));
        Set<EntryName> hosts = new LinkedHashSet<>(List.of(EntryName.platform(placed.build.platform().id())));
        placed.parts.forEach(part -> hosts.add(EntryName.part(part)));
        for (EntryName host : hosts) {
            if (changes.of(host).isEmpty()) {
                continue;
            }
            List<BigDecimal> now = figures(host, attribute, Set.of());
            changes.of(host).stream()
                    .filter(change -> !change.property().equals(WrittenCatalog.OFFERS))
                    .filter(change -> !figures(host, attribute, Set.of(change)).equals(now))
                    .forEach(touching::add);
        }
        return touching;
    }

    private List<BigDecimal> figures(EntryName host, String attribute, Set<Change> undone) {
        List<BigDecimal> figures = new ArrayList<>();
        host(host, undone).ifPresent(part -> {
            for (Map<String, Stat> stats : List.of(part.stats(), part.loaded())) {
                figures.add(Optional.ofNullable(stats.get(attribute)).map(stat -> stat.value().stripTrailingZeros()).orElse(BigDecimal.ZERO));
                figures.add(stats.containsKey(attribute) ? BigDecimal.ONE : BigDecimal.ZERO);
            }
        });
        return figures;
    }

    /**
     * The differences behind the cost: those that moved the price of a part, for each part that is bought. Where the build as a whole can no
     * longer be had, or now can, those that took a part from sale or put it there.
     */
    List<Change> cost(Placed placed, Prices before, Prices after) {
        Set<String> owned = placed.build.owned().stream().map(Build.Located::id).collect(Collectors.toSet());
        String access = placed.build.access().map(Build.Located::id).orElse("");
        List<String> moved = new ArrayList<>();
        List<String> turned = new ArrayList<>();
        for (String part : new TreeSet<>(placed.parts)) {
            Optional<BigDecimal> then = price(before, former.apply(part));
            Optional<BigDecimal> since = price(after, part);
            if (!owned.contains(part) && !same(then, since)) {
                (then.isPresent() == since.isPresent() ? moved : turned).add(part);
            }
        }
        Set<Change> blame = new TreeSet<>();
        (turned.isEmpty() ? moved : turned).forEach(part ->
                blame.addAll(dearer.computeIfAbsent(new Bought(part, access), bought -> price(bought, price(before, former.apply(part)), !turned.isEmpty()))));
        return List.copyOf(blame);
    }

    private static Optional<BigDecimal> price(Prices prices, String part) {
        return prices.cheapest(part).map(Prices.Priced::cost);
    }

    /** The differences behind one part's price, or, where it {@code turned}, behind its being sold at all. */
    private List<Change> price(Bought bought, Optional<BigDecimal> before, boolean turned) {
        EntryName part = EntryName.part(bought.part);
        EntryName access = new EntryName("access", bought.access);
        List<EntryName> entries = new ArrayList<>(money);
        entries.add(part);
        entries.add(access);
        Set<Change> touching = new LinkedHashSet<>();
        changes.of(part).stream().filter(change -> change.whole() || change.property().equals(WrittenCatalog.OFFERS)).forEach(touching::add);
        entries.stream().filter(entry -> !entry.equals(part)).forEach(entry -> touching.addAll(changes.of(entry)));
        return Needed.of(touching, undone -> {
            Catalog catalog = mixture.catalog(entries, undone);
            Prices prices = new Prices(catalog, Optional.ofNullable(catalog.access().get(bought.access)));
            Optional<BigDecimal> price = price(prices, bought.part);
            return turned ? price.isPresent() == before.isPresent() : same(price, before);
        });
    }

    /**
     * The differences that took a build across a limit.
     *
     * @param held whether it kept the limit before
     * @param own the differences in what the limit itself says
     */
    List<Change> limit(Placed placed, String limit, boolean held, List<Change> own) {
        EntryName name = new EntryName("limits", limit);
        Set<Change> touching = new LinkedHashSet<>(own);
        placed.build.outfit().ifPresent(worn -> touching.addAll(changes.of(new EntryName("outfits", worn.id()))));
        Set<String> attributes = new TreeSet<>();
        limit(name, Set.of()).ifPresent(now -> attributes.addAll(measured(now)));
        limit(name, Set.copyOf(own)).ifPresent(then -> attributes.addAll(measured(then)));
        attributes.forEach(attribute -> touching.addAll(touching(placed, attribute)));
        return Needed.of(touching, undone -> holds(placed, name, undone) == held);
    }

    private Optional<Limit> limit(EntryName name, Set<Change> undone) {
        return Optional.ofNullable(mixed(name, undone).limits().get(name.id()));
    }

    private static List<String> measured(Limit limit) {
        return limit.bound() instanceof Limit.Table table ? List.of(limit.attribute(), table.by()) : List.of(limit.attribute());
    }

    private boolean holds(Placed placed, EntryName name, Set<Change> undone) {
        Optional<Limit> limit = limit(name, undone);
        if (limit.isEmpty()) {
            return true;
        }
        Optional<Outfit> outfit = placed.build.outfit()
                .flatMap(worn -> Optional.ofNullable(mixed(new EntryName("outfits", worn.id()), undone).outfits().get(worn.id())));
        Map<String, BigDecimal> totals = new HashMap<>();
        for (String attribute : measured(limit.get())) {
            total(placed, attribute, limit.get().loaded(), outfit, undone).ifPresent(total -> totals.put(attribute, total));
        }
        return LimitMargin.of(limit.get(), totals).holds();
    }
}
