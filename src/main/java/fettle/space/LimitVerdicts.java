package fettle.space;

import fettle.catalog.Attribute;
import fettle.catalog.Catalog;
import fettle.catalog.Limit;
import fettle.catalog.Part;
import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.function.Supplier;
import java.util.stream.Stream;

/**
 * Decides which valid builds keep a limit, on all platforms together. Builds that were met on the way are looked at first; where those don't show both a build
 * that keeps it and one that breaks it, all builds are asked for the one that comes nearest.
 */
final class LimitVerdicts {

    /** How many pairs of totals may be kept apart for one set of assemblies, and looked at for one platform. */
    private static final int MOST_PAIRS = 3_000;

    private static final long MOST_WORK = 20_000_000;

    /** How many builds may be tried for one limit. */
    private static final int MOST_TRIED = 5_000;

    private final Catalog catalog;
    private final Terrain terrain;
    private final List<Question> questions = new ArrayList<>();

    /** One limit, and what is known of it. */
    private static final class Question {

        private final Limit limit;
        private final List<Attribute> attributes;
        private final Trials.Patience patience = new Trials.Patience(MOST_TRIED);
        private boolean kept;
        private boolean broken;

        Question(Limit limit, List<Attribute> attributes) {
            this.limit = limit;
            this.attributes = attributes;
        }

        boolean answered() {
            return kept && broken;
        }

        /** Whether the limit says something of builds on a platform: what is a percentage of nothing is for another rule to mend. */
        boolean concerns(Part platform) {
            return attributes.stream().noneMatch(attribute -> attribute.baseless(platform));
        }
    }

    LimitVerdicts(Catalog catalog, Terrain terrain) {
        this.catalog = catalog;
        this.terrain = terrain;
        for (Limit limit : catalog.limits().values()) {
            List<Attribute> attributes = new ArrayList<>();
            Optional.ofNullable(catalog.attributes().get(limit.attribute())).ifPresent(attributes::add);
            if (limit.bound() instanceof Limit.Table table) {
                Optional.ofNullable(catalog.attributes().get(table.by())).ifPresent(attributes::add);
            }
            boolean whole = attributes.size() == (limit.bound() instanceof Limit.Table ? 2 : 1);
            if (whole && !(limit.bound() instanceof Limit.Table table && table.points().isEmpty())) {
                questions.add(new Question(limit, attributes));
            }
        }
    }

    /** Looks at a valid build. */
    void see(Trial trial) {
        Part platform = catalog.platforms().get(terrain.hosts().get(trial.platform()));
        List<Part> placed = null;
        for (Question question : questions) {
            if (!question.answered() && question.concerns(platform)) {
                if (placed == null) {
                    placed = new ArrayList<>();
                    for (int i = 0; i < trial.size(); i++) {
                        placed.add(catalog.parts().get(terrain.hosts().get(trial.part(i))));
                    }
                }
                Map<String, BigDecimal> totals = new TreeMap<>();
                for (Attribute attribute : question.attributes) {
                    Totals.of(attribute, platform, placed, question.limit.loaded(), Optional.empty()).ifPresent(total -> totals.put(attribute.id(), total));
                }
                boolean holds = LimitMargin.of(question.limit, totals).holds();
                question.kept |= holds;
                question.broken |= !holds;
            }
        }
    }

    /** Tries for the builds that are missing still: parts that draw a total over its bound, or keep it within, are put together. */
    void seek(Trials trials, int platform) {
        Part entry = catalog.platforms().get(terrain.hosts().get(platform));
        for (Question question : questions) {
            if (!question.answered() && !question.patience.spent() && question.concerns(entry)) {
                boolean upward = (question.limit.side() == Limit.Side.AT_LEAST) != question.kept;
                Map<Integer, BigDecimal> pull = new HashMap<>();
                for (int part : trials.reached()) {
                    pull.put(part, pull(question, entry, part, upward));
                }
                List<Integer> wanted = trials.reached().stream().filter(part -> pull.get(part).signum() > 0)
                        .sorted(Comparator.comparing((Integer part) -> pull.get(part)).reversed()).toList();
                trials.gather(wanted, question::answered, question.patience);
            }
        }
    }

    /** How far a part draws the total away from what the limit's table gives for it, roughly. */
    private BigDecimal pull(Question question, Part platform, int part, boolean upward) {
        Limit limit = question.limit;
        BigDecimal pull = brought(question.attributes.get(0), platform, part, limit.loaded());
        if (limit.bound() instanceof Limit.Table table && table.points().size() > 1) {
            Limit.Point first = table.points().get(0);
            Limit.Point last = table.points().get(table.points().size() - 1);
            BigDecimal slope = last.y().subtract(first.y()).divide(last.x().subtract(first.x()), MathContext.DECIMAL32);
            pull = pull.subtract(slope.multiply(brought(question.attributes.get(1), platform, part, limit.loaded())));
        }
        return upward ? pull : pull.negate();
    }

    private BigDecimal brought(Attribute attribute, Part platform, int part, boolean loaded) {
        Part entry = catalog.parts().get(terrain.hosts().get(part));
        Optional<BigDecimal> alone = Totals.of(attribute, platform, List.of(entry), loaded, Optional.empty());
        Optional<BigDecimal> without = Totals.of(attribute, platform, List.of(), loaded, Optional.empty());
        return alone.map(total -> total.subtract(without.orElse(BigDecimal.ZERO))).orElse(BigDecimal.ZERO);
    }

    /** Whether all limits are known to be kept by some build and broken by another. */
    boolean answered() {
        return questions.stream().allMatch(Question::answered);
    }

    /**
     * The verdicts, by the limits' ids; none on a limit that concerns no valid build.
     *
     * @param folded all platforms; asked for only where {@link #answered} is false
     */
    List<LimitVerdict> verdicts(Supplier<SortedMap<String, Folded>> folded) {
        List<LimitVerdict> verdicts = new ArrayList<>();
        for (Question question : questions) {
            if (question.answered()) {
                verdicts.add(new LimitVerdict(question.limit, LimitVerdict.KeptBy.SOME, List.of(), Optional.empty(), Optional.empty(), Optional.empty()));
            } else {
                new Asking(question, folded.get()).verdict().ifPresent(verdicts::add);
            }
        }
        return verdicts;
    }

    /** Asks all builds about one limit. */
    private final class Asking {

        private final Question question;
        private final Limit limit;
        private final List<String> platforms = new ArrayList<>();
        private Optional<Undecided> undecided = Optional.empty();
        private final Map<Boolean, Nearest> nearest = new HashMap<>();

        /** The total that comes nearest to what was looked for, and its platform. */
        private record Nearest(BigDecimal total, String platform) {}

        Asking(Question question, SortedMap<String, Folded> folded) {
            this.question = question;
            this.limit = question.limit;
            for (Folded each : folded.values()) {
                if (question.concerns(catalog.platforms().get(each.platform())) && !each.isVoid()) {
                    platforms.add(each.platform());
                    if (each.undecided().isPresent()) {
                        undecided = each.undecided();
                    } else {
                        ask(each);
                    }
                }
            }
        }

        private void ask(Folded folded) {
            try {
                question.kept = question.kept || found(folded, true);
                question.broken = question.broken || found(folded, false);
            } catch (TooLarge tooLarge) {
                undecided = Optional.of(Undecided.of(tooLarge.at(limit.id())));
            }
        }

        private Optional<LimitVerdict> verdict() {
            if (platforms.isEmpty()) {
                return Optional.empty();
            }
            LimitVerdict.KeptBy keptBy = question.answered() ? LimitVerdict.KeptBy.SOME
                    : undecided.isPresent() ? LimitVerdict.KeptBy.OPEN
                    : question.kept ? LimitVerdict.KeptBy.ALL : LimitVerdict.KeptBy.NONE;
            Optional<Nearest> told = switch (keptBy) {
                case NONE -> Optional.ofNullable(nearest.get(true));
                case ALL -> Optional.ofNullable(nearest.get(false));
                case SOME, OPEN -> Optional.empty();
            };
            return Optional.of(new LimitVerdict(
                    limit, keptBy, platforms, told.map(Nearest::total), told.map(Nearest::platform),
                    keptBy == LimitVerdict.KeptBy.OPEN ? undecided : Optional.empty()));
        }

        /** Whether a build of the platform keeps the limit, or breaks it. */
        private boolean found(Folded folded, boolean kept) {
            Part platform = catalog.platforms().get(folded.platform());
            Strand value = Strand.of(question.attributes.get(0), terrain, catalog, platform, limit.loaded());
            boolean high = (limit.side() == Limit.Side.AT_LEAST) == kept;
            Strand.Wanted wanted = high ? Strand.Wanted.MORE : Strand.Wanted.LESS;
            List<Optional<BigDecimal>> totals = totals(folded, value, wanted);
            if (limit.bound() instanceof Limit.Table table) {
                Strand by = Strand.of(question.attributes.get(1), terrain, catalog, platform, limit.loaded());
                return near(totals, high, totals(folded, by, Strand.Wanted.LESS), totals(folded, by, Strand.Wanted.MORE), table, kept)
                        && front(folded, value, wanted, by, toward(table.points(), high)).stream()
                                .anyMatch(pair -> holds(value.total(pair.one()), by.total(pair.other())) == kept);
            }
            totals.forEach(total -> total.ifPresent(reached -> nearer(new Nearest(reached, folded.platform()), high, kept)));
            return totals.stream().anyMatch(total -> holds(total, Optional.empty()) == kept);
        }

        private List<Pairs.Pair> front(Folded folded, Strand one, Strand.Wanted wantedOne, Strand other, Strand.Wanted wantedOther) {
            return folded.ask(new Pairs(one, one.wanted(wantedOne), other, other.wanted(wantedOther), MOST_PAIRS, MOST_WORK));
        }

        /** The totals of one attribute that go farthest, and none where some build has none. */
        private List<Optional<BigDecimal>> totals(Folded folded, Strand strand, Strand.Wanted wanted) {
            Strand nothing = Strand.none(strand.attribute(), terrain.parts());
            return front(folded, strand, wanted, nothing, Strand.Wanted.LESS).stream().map(pair -> strand.total(pair.one())).toList();
        }

        /** Whether it is possible at all, if each attribute could go as far as it does in some build. */
        private boolean near(
                List<Optional<BigDecimal>> values, boolean high, List<Optional<BigDecimal>> least, List<Optional<BigDecimal>> most, Limit.Table table, boolean kept) {
            if (Stream.of(values, least, most).flatMap(List::stream).anyMatch(Optional::isEmpty)) {
                return true;
            }
            BigDecimal from = least.stream().map(Optional::get).min(Comparator.naturalOrder()).orElseThrow();
            BigDecimal to = most.stream().map(Optional::get).max(Comparator.naturalOrder()).orElseThrow();
            List<Fraction> bounds = new ArrayList<>(List.of(LimitMargin.at(table.points(), from), LimitMargin.at(table.points(), to)));
            table.points().stream().filter(point -> point.x().compareTo(from) > 0 && point.x().compareTo(to) < 0).forEach(point -> bounds.add(Fraction.of(point.y())));
            Fraction bound = high ? Collections.min(bounds) : Collections.max(bounds);
            return values.stream().map(Optional::get).anyMatch(value -> {
                int inside = Fraction.of(value).minus(bound).signum();
                return (limit.side() == Limit.Side.AT_LEAST ? inside >= 0 : inside <= 0) == kept;
            });
        }

        private void nearer(Nearest reached, boolean high, boolean kept) {
            nearest.merge(kept, reached, (one, other) -> {
                int compared = other.total.compareTo(one.total);
                return (high ? compared > 0 : compared < 0) ? other : one;
            });
        }

        private boolean holds(Optional<BigDecimal> total, Optional<BigDecimal> by) {
            Map<String, BigDecimal> totals = new HashMap<>();
            by.ifPresent(value -> totals.put(question.attributes.get(question.attributes.size() - 1).id(), value));
            total.ifPresent(value -> totals.put(limit.attribute(), value));
            return LimitMargin.of(limit, totals).holds();
        }
    }

    /** What to want of the attribute that a table follows, so that the table gives little, or much. */
    private static Strand.Wanted toward(List<Limit.Point> points, boolean little) {
        boolean rises = false;
        boolean falls = false;
        for (int i = 1; i < points.size(); i++) {
            int step = points.get(i).y().compareTo(points.get(i - 1).y());
            rises |= step > 0;
            falls |= step < 0;
        }
        if (rises && falls) {
            return Strand.Wanted.EACH;
        }
        return falls != little ? Strand.Wanted.LESS : Strand.Wanted.MORE;
    }
}
