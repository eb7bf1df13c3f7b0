package fettle.space.worth;

import fettle.space.Contents;
import fettle.space.Contents.Known;
import fettle.space.Rehung;
import fettle.space.Stand;
import fettle.space.Swaps;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;

/**
 * Remembers which questions about swaps led to which result, so that where they are answered alike again the result need not be worked out anew. What is answered in
 * one way whatever stands around is not among them.
 */
final class Trail<R> {

    private final Contents contents;

    Trail(Contents contents) {
        this.contents = contents;
    }

    /** A question; only one of the three is asked. */
    private record Question(Stand from, Optional<Stand> to, Optional<Rehung> made) {

        boolean ask(Swaps swaps) {
            return to.map(stand -> swaps.safe(from, stand)).orElseGet(() -> made.map(rehung -> swaps.safe(from, rehung)).orElseGet(() -> swaps.safeToEmpty(from)));
        }

        // Written out, as in SlotId.
        @Override
        public boolean equals(Object other) {
            return other instanceof Question that && from.equals(that.from) && to.equals(that.to) && made.equals(that.made);
        }

        @Override
        public int hashCode() {
            return 31 * (31 * from.hashCode() + to.hashCode()) + made.hashCode();
        }
    }

    /** Where a trail has led so far: to a question or to a result. */
    private final class Fork {
        private Question question;
        private final Map<Boolean, Fork> ways = new HashMap<>();
        private Optional<R> result = Optional.empty();

        /** Leads on from another question, should that be asked here this time: what came of the one before is forgotten. */
        void turn(Question asked) {
            if (!asked.equals(question)) {
                ways.clear();
                result = Optional.empty();
                question = asked;
            }
        }

        void end(R found) {
            ways.clear();
            question = null;
            result = Optional.of(found);
        }
    }

    private final Fork start = new Fork();

    /** The result under these swaps; worked out where the trail is new. */
    R follow(Swaps swaps, Function<Swaps, R> work) {
        Fork fork = start;
        while (fork.question != null) {
            Fork next = fork.ways.get(fork.question.ask(swaps));
            if (next == null) {
                break;
            }
            fork = next;
        }
        if (fork.question == null && fork.result.isPresent()) {
            return fork.result.get();
        }
        Walk walk = new Walk(swaps);
        R result = work.apply(walk);
        walk.at.end(result);
        return result;
    }

    /** Follows the trail question by question, and lays it further where it ends. */
    private final class Walk implements Swaps {

        private final Swaps swaps;
        private Fork at = start;

        Walk(Swaps swaps) {
            this.swaps = swaps;
        }

        private boolean ask(Question question) {
            at.turn(question);
            boolean answer = question.ask(swaps);
            at = at.ways.computeIfAbsent(answer, unused -> new Fork());
            return answer;
        }

        @Override
        public boolean safe(Stand from, Stand to) {
            return answer(contents.known(from, to), new Question(from, Optional.of(to), Optional.empty()));
        }

        @Override
        public boolean safeToEmpty(Stand from) {
            return answer(contents.knownToEmpty(from), new Question(from, Optional.empty(), Optional.empty()));
        }

        @Override
        public boolean safe(Stand from, Rehung to) {
            return answer(contents.known(from, to), new Question(from, Optional.empty(), Optional.of(to)));
        }

        private boolean answer(Known known, Question question) {
            return known == Known.SAFE || known == Known.DEPENDS && ask(question);
        }
    }
}
