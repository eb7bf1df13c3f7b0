package fettle.view;

import fettle.document.Origin;
import java.net.URI;
import java.net.URISyntaxException;

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

    /** The file as a URI reference: relative where the file was named so. */
    static String uri(String file) {
        boolean drive = file.matches("[A-Za-z]:/.*");
        boolean whole = drive || file.startsWith("/");
        try {
            String path = new URI(null, null, (drive ? "/" : whole ? "" : "./") + file, null).toASCIIString();
            return whole ? "file://" + path : path.contains(":") ? path : path.substring("./".length());
        } catch (URISyntaxException impossible) {
            throw new IllegalStateException("no path is too strange for a URI: " + file, impossible);
        }
    }

    private static String file(Origin origin) {
        return origin.file().equals("-") ? "standard input" : origin.file();
    }

    private static String at(String file, Origin origin) {
        return file + ":" + origin.line() + ":" + origin.column();
    }
}
