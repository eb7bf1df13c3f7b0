package fettle.view;

import fettle.document.Origin;

/** Writes places as editors and terminals understand them. */
final class Places {

    private Places() {}

    /** {@code file:line:column}; standard input has a name that says so. */
    static String of(Origin origin) {
        return at(file(origin), origin);
    }

    /** The same, but only the file's own name where its whole path has just been told. */
    static String of(Origin origin, String told) {
        return origin.file().equals(told) ? at(file(origin).replaceFirst(".*/", ""), origin) : of(origin);
    }

    private static String file(Origin origin) {
        return origin.file().equals("-") ? "standard input" : origin.file();
    }

    private static String at(String file, Origin origin) {
        return file + ":" + origin.line() + ":" + origin.column();
    }
}
