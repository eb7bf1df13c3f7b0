package fettle.view;

/** What a piece of text is to the reader; a terminal shows it by colour or weight, plain output not at all. */
enum Tone {
    PLAIN(""),
    STRONG("1"),
    FAINT("2"),
    ERROR("1;31"),
    WARNING("1;33"),
    NOTE("1;36"),
    GOOD("1;32");

    private final String code;

    Tone(String code) {
        this.code = code;
    }

    /** The text as a colour terminal is to receive it. */
    String paint(String text) {
        return code.isEmpty() || text.isEmpty() ? text : "\u001B[" + code + "m" + text + "\u001B[0m";
    }
}
