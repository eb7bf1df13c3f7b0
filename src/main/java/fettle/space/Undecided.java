package fettle.space;

/**
 * Why a question about all builds was not answered.
 *
 * @param why one sentence, with the bound that was reached
 * @param at what took the work: a part, platform, slot or relation; empty where it was the whole
 */
public record Undecided(String why, String at) {

    static Undecided of(TooLarge tooLarge) {
        String why = switch (tooLarge.what()) {
            case RELATION -> "One relation can be in more than " + tooLarge.bound() + " states.";
            case WORK -> "It takes more than " + tooLarge.bound() + " steps.";
            case STATES -> "More than " + tooLarge.bound() + " groups of assemblies have to be kept apart.";
            case ENDLESS -> "Builds can grow without end.";
        };
        return new Undecided(why, tooLarge.at());
    }
}
