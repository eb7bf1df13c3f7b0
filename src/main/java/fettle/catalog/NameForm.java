package fettle.catalog;

import java.util.Set;
import java.util.regex.Pattern;

/** The form of the words by which things are named, as the schemas have it. */
public final class NameForm {

    private static final Pattern ID = Pattern.compile("[a-z0-9][a-z0-9._-]{0,79}");
    private static final Pattern TAG = Pattern.compile("\\S{1,80}");
    private static final Set<String> FREE = Set.of("tags", "slot tags");

    private NameForm() {}

    /** Whether this can be an id. */
    public static boolean id(String word) {
        return ID.matcher(word).matches();
    }

    /** Whether this can name something of a sort: that of a section, or one of the sorts of {@link Reference#space}. */
    public static boolean fits(String space, String word) {
        return FREE.contains(space) ? TAG.matcher(word).matches() : id(word);
    }
}
