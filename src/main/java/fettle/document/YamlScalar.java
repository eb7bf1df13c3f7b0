package fettle.document;

import java.util.regex.Pattern;

/** What an unquoted YAML scalar means: the core schema of YAML 1.2, with decimal numbers only. */
enum YamlScalar {
    NULL,
    TRUE,
    FALSE,
    NUMBER,
    TEXT;

    private static final Pattern DECIMAL = Pattern.compile("[-+]?(?:\\.[0-9]+|[0-9]+(?:\\.[0-9]*)?)(?:[eE][-+]?[0-9]+)?");

    static YamlScalar of(String plain) {
        return switch (plain) {
            case "", "~", "null", "Null", "NULL" -> NULL;
            case "true", "True", "TRUE" -> TRUE;
            case "false", "False", "FALSE" -> FALSE;
            default -> mayBeginNumber(plain.charAt(0)) && DECIMAL.matcher(plain).matches() ? NUMBER : TEXT;
        };
    }

    private static boolean mayBeginNumber(char first) {
        return first >= '0' && first <= '9' || first == '-' || first == '+' || first == '.';
    }
}
