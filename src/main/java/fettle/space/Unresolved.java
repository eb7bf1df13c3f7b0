package fettle.space;

import fettle.catalog.BuildEntry;
import fettle.document.Nearest;
import fettle.document.Origin;
import java.util.List;
import java.util.Optional;

/** A part of a build that could not be placed, since something that it names does not exist. */
public sealed interface Unresolved extends Computed {

    /** The entry as written. */
    BuildEntry entry();

    @Override
    default Optional<Origin> origin() {
        return Optional.of(entry().pathOrigin());
    }

    /** What keeps the part from being placed, in words that follow a colon. */
    String problem();

    /** The catalog has no such part, or none is named. */
    record NoSuchPart(BuildEntry entry) implements Unresolved {

        @Override
        public String problem() {
            return entry.named() ? "there is no part of that id" : "what is written there names no part";
        }
    }

    /**
     * The host has no such slot.
     *
     * @param host the part or platform that the path leads to
     * @param through the path as far as the slot that is not there
     * @param known the slots that the host has, and that a path can name
     * @param free the paths of slots of this build that hold nothing and that the part fits: those of the same name, or else all; or the path without its empty steps
     */
    record NoSuchSlot(BuildEntry entry, String host, String through, List<String> known, List<String> free) implements Unresolved {

        private static final int FEW = 4;

        /** The slot asked for. */
        public String slot() {
            return through.substring(through.lastIndexOf('/') + 1);
        }

        @Override
        public String problem() {
            return slot().isEmpty() ? "a step of the path is empty" : host + (known.isEmpty() ? " has no slots" : " has no slot " + slot());
        }

        /** The slots of the host nearest to the one asked for; empty where none is near, or where it is known where the part could go. */
        public Optional<List<String>> near() {
            return elsewhere().isPresent() ? Optional.empty() : Optional.of(Nearest.names(slot(), known)).filter(found -> !found.isEmpty());
        }

        /** Where the part could go instead; empty where it could go nowhere, or in so many places that none can be meant. */
        public Optional<List<String>> elsewhere() {
            return Optional.of(free).filter(paths -> !paths.isEmpty() && paths.size() <= FEW);
        }
    }

    /**
     * The path goes on through a slot, or a position in one, that holds nothing in this build.
     *
     * @param held the positions in that slot that hold something
     */
    record NothingThere(BuildEntry entry, String through, List<String> held) implements Unresolved {

        @Override
        public String problem() {
            return "nothing sits at " + through;
        }

        /** What must be filled first; nothing where other positions are. */
        public Optional<String> empty() {
            return held.isEmpty() ? Optional.of(through) : Optional.empty();
        }

        /** The positions that could have been meant; empty where there are none. */
        public Optional<List<String>> positions() {
            return Optional.of(held).filter(some -> !some.isEmpty());
        }
    }

    /** The path goes on through a slot that holds several parts without naming a position. */
    record Ambiguous(BuildEntry entry, String through, int parts) implements Unresolved {

        @Override
        public String problem() {
            return through + " holds " + parts + " parts, and the path doesn't say which, as in " + through + ":0";
        }
    }
}
