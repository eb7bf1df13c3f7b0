package fettle.catalog;

import fettle.document.Origin;

/** A reference to parts by their id, {@code kind:K} or {@code tag:T}, as written. */
public record Selector(String text, Origin origin) {

    private static final String KIND = "kind:";
    private static final String TAG = "tag:";

    /** The name under which a part of this kind is selected. */
    public static String ofKind(String kind) {
        return KIND + kind;
    }

    /** The name under which a part with this tag is selected. */
    public static String ofTag(String tag) {
        return TAG + tag;
    }

    /** The text that names something of a sort: {@code kinds}, {@code tags} or {@code parts}. */
    public static String naming(String section, String target) {
        return switch (section) {
            case "kinds" -> ofKind(target);
            case "tags" -> ofTag(target);
            default -> target;
        };
    }

    /** What sort of thing it names: {@code kinds}, {@code tags} or {@code parts}. */
    public String section() {
        return text.startsWith(KIND) ? "kinds" : text.startsWith(TAG) ? "tags" : "parts";
    }

    /** Whether it has the form of one, as far as its prefix goes: ids hold neither colons nor blanks. What it was meant to name is not known of one that hasn't. */
    boolean formed() {
        boolean whole = !target().isEmpty() && text.chars().noneMatch(Character::isWhitespace);
        return whole && (!section().equals("parts") || text.indexOf(':') < 0);
    }

    /** The id, kind or tag without its prefix. */
    public String target() {
        return text.startsWith(KIND) ? text.substring(KIND.length()) : text.startsWith(TAG) ? text.substring(TAG.length()) : text;
    }
}
