package fettle.view;

/** A piece of a line in one tone. */
record Span(String text, Tone tone) {

    static Span plain(String text) {
        return new Span(text, Tone.PLAIN);
    }

    static Span faint(String text) {
        return new Span(text, Tone.FAINT);
    }

    static Span strong(String text) {
        return new Span(text, Tone.STRONG);
    }
}
