package fettle.judgement;

import fettle.catalog.Catalog;
import fettle.catalog.DeclaresTrait;
import fettle.catalog.Fact;
import fettle.catalog.Part;
import fettle.catalog.Reference;
import fettle.catalog.Slot;
import fettle.catalog.SlotHasTag;
import fettle.document.Slips;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * A free word that one part or slot alone has and nothing names, which is another with a slip of the pen. Such words are listed nowhere, so that none of them is wrong by itself.
 *
 * @param subject what has it
 * @param bearer the entry that says so, and the steps to the word within that
 * @param what what sort of word it is: {@code tag}, {@code slot tag}, or a trait's id
 * @param meant the word that it probably was to be
 * @param uses what has or names that one
 */
public record OddName(String subject, Fact bearer, String steps, String what, String name, String meant, List<Fact> uses) {

    private static final int SHOWN = 3;

    public OddName {
        uses = List.copyOf(uses);
    }

    /** The number of uses. */
    public int count() {
        return uses.size();
    }

    /** A few of the uses. */
    public List<Fact> some() {
        return uses.subList(0, Math.min(SHOWN, uses.size()));
    }

    /** That something has a word. */
    private record Bearing(String host, String subject, Fact fact, String steps) {}

    /** Words of one sort: what has them, and what names them. Words that something must name are without effect where nothing does. */
    private record Vocabulary(String what, boolean toBeNamed, SortedMap<String, List<Bearing>> borne, SortedMap<String, List<Fact>> named) {

        Vocabulary(String what, boolean toBeNamed) {
            this(what, toBeNamed, new TreeMap<>(), new TreeMap<>());
        }

        void bear(String word, Bearing bearing) {
            borne.computeIfAbsent(word, unused -> new ArrayList<>()).add(bearing);
        }

        void name(Reference mention) {
            named.computeIfAbsent(mention.id(), unused -> new ArrayList<>()).add(mention);
        }

        /** What has or names a word, where it matters that it be written so. */
        List<Fact> uses(String word) {
            List<Fact> naming = named.getOrDefault(word, List.of());
            List<Fact> uses = new ArrayList<>(borne.get(word).stream().map(Bearing::fact).toList());
            uses.addAll(naming);
            return uses.size() > 1 && (!toBeNamed || !naming.isEmpty()) ? uses : List.of();
        }

        List<OddName> odd() {
            List<OddName> odd = new ArrayList<>();
            Slips used = new Slips(borne.keySet().stream().filter(word -> !uses(word).isEmpty()).toList());
            borne.forEach((word, bearings) -> {
                if (bearings.size() == 1 && !named.containsKey(word)) {
                    meant(word, bearings.get(0), used).ifPresent(odd::add);
                }
            });
            return odd;
        }

        private Optional<OddName> meant(String word, Bearing only, Slips used) {
            return used.of(word).stream()
                    .filter(other -> borne.get(other).stream().noneMatch(bearing -> bearing.host.equals(only.host)))
                    .findFirst()
                    .map(other -> new OddName(only.subject, only.fact, only.steps, what, word, other, uses(other)));
        }
    }

    /** All such words of a catalog. */
    static List<OddName> of(Catalog catalog) {
        Vocabulary tags = new Vocabulary("tag", true);
        Vocabulary slotTags = new Vocabulary("slot tag", true);
        Map<String, Vocabulary> named = Map.of("tags", tags, "slot tags", slotTags);
        SortedMap<String, Vocabulary> values = new TreeMap<>();
        for (Map<String, Part> hosts : List.of(catalog.platforms(), catalog.parts())) {
            for (Part host : hosts.values()) {
                host.names().forEach(name -> name.tag().ifPresent(tag -> tags.bear(tag, new Bearing(host.id(), host.subject(), name, ""))));
                for (Slot slot : host.slots()) {
                    for (SlotHasTag tag : slot.tags()) {
                        slotTags.bear(tag.tag(), new Bearing(slot.id().toString(), "slot:" + slot.id(), tag, ""));
                    }
                }
                for (DeclaresTrait trait : host.traits()) {
                    for (int i = 0; i < trait.values().size(); i++) {
                        values.computeIfAbsent(trait.trait(), id -> new Vocabulary(id, false))
                                .bear(trait.values().get(i), new Bearing(host.id(), host.subject(), trait, Integer.toString(i)));
                    }
                }
            }
        }
        for (Reference mention : catalog.references()) {
            Optional.ofNullable(named.get(mention.space())).ifPresent(words -> words.name(mention));
        }
        List<OddName> odd = new ArrayList<>(tags.odd());
        odd.addAll(slotTags.odd());
        values.values().forEach(trait -> odd.addAll(trait.odd()));
        return odd;
    }
}
