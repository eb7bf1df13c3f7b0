package fettle.space;

import fettle.catalog.Fact;
import fettle.catalog.SlotId;
import fettle.relation.Agreement;
import fettle.relation.Clause;
import fettle.relation.NoReentry;
import fettle.relation.Room;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * One of the reasons why something is in no valid build of a platform. Each can be thought away by itself, and without it the others would let a build through.
 */
public sealed interface Cause extends Computed {

    /** The rule behind it; empty where it is what was asked, or what the platform lacks. */
    Optional<String> rule();

    /** The catalog entries that it rests on, of which those that are not by themselves the relation are about things that the other causes speak of. */
    List<Fact> because();

    /** A part is asked for. Thought away: the build need not have it. */
    record Asked(String part) implements Cause {

        @Override
        public Optional<String> rule() {
            return Optional.empty();
        }

        @Override
        public List<Fact> because() {
            return List.of();
        }
    }

    /** A slot is asked to be in use. Thought away: the build need not use it. */
    record AskedSlot(SlotId slot) implements Cause {

        @Override
        public Optional<String> rule() {
            return Optional.empty();
        }

        @Override
        public List<Fact> because() {
            return List.of();
        }
    }

    /**
     * On this platform a part fits these slots and no others. Thought away: it may stand by itself, in no slot at all.
     *
     * @param places the slots, of the platform and of parts to which chains of fits lead; at least one
     */
    record Only(String part, List<SlotId> places, List<Fact> because) implements Cause {

        public Only {
            places = List.copyOf(places);
            because = List.copyOf(because);
        }

        @Override
        public Optional<String> rule() {
            return Optional.of("does-not-fit");
        }
    }

    /**
     * No chain of fits leads from the platform to some parts. Thought away: they may stand by themselves, in no slot at all.
     *
     * @param parts those that the other causes speak of
     */
    record Unreached(List<String> parts, List<Fact> because) implements Cause {

        /** Of whatever parts the other causes speak of. */
        static final Unreached ANY = new Unreached(List.of(), List.of());

        public Unreached {
            parts = List.copyOf(parts);
            because = List.copyOf(because);
        }

        @Override
        public Optional<String> rule() {
            return Optional.of("does-not-fit");
        }
    }

    /**
     * A slot has limited room, or must be filled. Thought away: this one limit is not there.
     *
     * @param candidates where the slot must be filled, the parts that fit it; otherwise none
     * @param spans where the slot is short, how many notches the parts take of which other causes speak; known when the causes are told
     */
    record Space(Room room, List<String> candidates, SortedMap<String, Integer> spans) implements Cause {

        public Space {
            candidates = List.copyOf(candidates);
            spans = Collections.unmodifiableSortedMap(new TreeMap<>(spans));
        }

        Space(Room room, List<String> candidates) {
            this(room, candidates, new TreeMap<>());
        }

        @Override
        public Optional<String> rule() {
            return Optional.of(room.rule());
        }

        @Override
        public List<Fact> because() {
            return List.of(room.because());
        }
    }

    /** Some placed things exclude or need others. Thought away: they don't. */
    record Rule(Clause clause, List<Fact> because) implements Cause {

        public Rule {
            because = List.copyOf(because);
        }

        @Override
        public Optional<String> rule() {
            return Optional.of(clause.rule());
        }
    }

    /** A part has but these values of a trait. Thought away: it has any. */
    record Values(Agreement agreement) implements Cause {

        @Override
        public Optional<String> rule() {
            return Optional.of(agreement.rule());
        }

        @Override
        public List<Fact> because() {
            return List.of(agreement.because());
        }
    }

    /** A part may not stand below itself. Thought away: it may, once. */
    record Nesting(NoReentry noReentry, List<Fact> because) implements Cause {

        public Nesting {
            because = List.copyOf(because);
        }

        @Override
        public Optional<String> rule() {
            return Optional.of(noReentry.rule());
        }
    }
}
