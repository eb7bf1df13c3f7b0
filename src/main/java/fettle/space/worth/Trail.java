package fettle.space.worth;

import fettle.space.Rehung;
import fettle.space.Stand;
import fettle.space.Swaps;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;

/** Remembers which questions about swaps led to which result, so that where they are answered alike again the result need not be worked out anew. */
final class Trail<R> {

    /** A question; only one of the three is asked. */
    private record Question(Stand from, Optional<Stand> to, Optional<Rehung> made) {

        boolean ask(Swaps swaps) {
            return to.map(stand -> swaps.safe(from, stand)).orElseGet(() -> made.map(rehung -> swaps.safe(from, rehung)).orElseGet(() -> swaps.safeToEmpty(from)));
        }
    }

    /** Where a trail has led so far: to a question or to a result. */
    private final class Fork {
        private Question question;
        private final Map<Boolean, Fork> ways = new HashMap<>();
        private Optional<R> result = Optional.empty();
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
        walk.at.result = Optional.of(result);
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
            at.question = question;
            boolean answer = question.ask(swaps);
            at = at.ways.computeIfAbsent(answer, unused -> new Fork());
            return answer;
        }

        @Override
        public boolean safe(Stand from, Stand to) {
            return ask(new Question(from, Optional.of(to), Optional.empty()));
        }

        @Override
        public boolean safeToEmpty(Stand from) {
            return ask(new Question(from, Optional.empty(), Optional.empty()));
        }

        @Override
        public boolean safe(Stand from, Rehung to) {
            return ask(new Question(from, Optional.empty(), Optional.of(to)));
        }
    }
}
