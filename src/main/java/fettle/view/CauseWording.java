package fettle.view;

import fettle.catalog.Constraint;
import fettle.catalog.SlotId;
import fettle.relation.Clause;
import fettle.relation.Room;
import fettle.relation.Term;
import fettle.space.Cause;
import java.util.Collections;
import java.util.List;
import java.util.SortedMap;

/** Puts a cause of an impossibility into one sentence, with the rule behind it; the facts told with it say why it is so. */
final class CauseWording {

    /** Of more parts than this it is only told how short they are. */
    private static final int MOST_SPANS = 4;

    private CauseWording() {}

    /** One sentence, without a full stop. */
    static String sentence(Cause cause) {
        return words(cause) + cause.rule().map(rule -> " (" + rule + ")").orElse("");
    }

    private static String words(Cause cause) {
        if (cause instanceof Cause.Asked asked) {
            return asked.part() + " is asked for";
        } else if (cause instanceof Cause.AskedSlot asked) {
            return "a part in " + asked.slot() + " is asked for";
        } else if (cause instanceof Cause.Only only) {
            return only.part() + " fits only " + Phrases.and(Phrases.each(only.places(), SlotId::toString)) + " here";
        } else if (cause instanceof Cause.Unreached unreached) {
            return unreached.parts().isEmpty() ? "the catalog has nothing else for it" : "nothing here leads to " + Phrases.or(unreached.parts());
        } else if (cause instanceof Cause.Space space) {
            return room(space.room(), space.candidates()) + spans(space.spans());
        } else if (cause instanceof Cause.Rule rule) {
            return clause(rule.clause());
        } else if (cause instanceof Cause.Values values) {
            return values.agreement().values().isEmpty()
                    ? values.agreement().part() + " leaves over nothing of " + values.agreement().trait()
                    : "of " + values.agreement().trait() + ", " + values.agreement().part() + " leaves over only " + Phrases.or(values.agreement().values());
        }
        return ((Cause.Nesting) cause).noReentry().part() + " cannot stand below itself";
    }

    private static String room(Room room, List<String> candidates) {
        String slot = room.slot().toString();
        if (room instanceof Room.Holds holds) {
            return slot + " has room for " + Phrases.count(holds.most(), "part", "parts");
        } else if (room instanceof Room.Length length) {
            return "the parts in " + slot + " take at most " + Phrases.count(length.notches(), "notch", "notches");
        } else if (room instanceof Room.Places places) {
            return "the parts in " + slot + " lie apart on " + Phrases.count(places.notches(), "notch", "notches");
        } else if (room instanceof Room.Distinct) {
            return slot + " takes no part twice";
        }
        return candidates.isEmpty() ? slot + " must hold a part, and nothing fits it" : slot + " must hold " + Phrases.or(candidates);
    }

    private static String spans(SortedMap<String, Integer> spans) {
        if (spans.size() > MOST_SPANS) {
            return ", and each of these takes at least " + Collections.min(spans.values());
        }
        return spans.isEmpty() ? "" : ", and " + Phrases.and(Phrases.each(spans.entrySet(), span -> span.getKey() + " takes " + span.getValue()));
    }

    /** What a constraint says of why it holds, as words that follow; nothing where it doesn't. */
    static String why(Clause clause) {
        return clause.because().stream()
                .filter(Constraint.class::isInstance)
                .map(fact -> ((Constraint) fact).because())
                .filter(words -> !words.isBlank())
                .map(words -> ": " + words)
                .findFirst().orElse("");
    }

    private static String clause(Clause clause) {
        // One thing may meet several terms that are not apart, so that one of them given twice says no more than once.
        List<Term> when = clause.apart() ? clause.when() : clause.when().stream().distinct().toList();
        String why = why(clause);
        if (!clause.need().isEmpty()) {
            String needed = Phrases.or(Phrases.each(clause.need(), CauseWording::term));
            return (when.isEmpty() ? "every build" : Phrases.and(Phrases.each(when, CauseWording::term))) + (when.size() > 1 ? " need " : " needs ") + needed + why;
        } else if (when.size() == 2 && when.get(0).equals(when.get(1))) {
            return (when.get(0).sort() == Term.Sort.GROUP ? "no two of these" : "no two of " + Phrases.every(when.get(0).key())) + " can be used together" + why;
        }
        return Phrases.and(Phrases.each(when, CauseWording::term)) + " cannot be used" + (when.size() > 1 ? " together" : "") + why;
    }

    private static String term(Term term) {
        return switch (term.sort()) {
            case PART -> term.key();
            case NAME -> Phrases.one(term.key());
            case SLOT -> "a part in a slot tagged " + term.key();
            case GROUP -> "one of these";
        };
    }
}
