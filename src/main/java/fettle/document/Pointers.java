package fettle.document;

/** Writes JSON pointers (RFC 6901). */
final class Pointers {
    private Pointers() {}

    static String child(String parent, String name) {
        boolean plain = name.indexOf('~') < 0 && name.indexOf('/') < 0;
        return parent + '/' + (plain ? name : name.replace("~", "~0").replace("/", "~1"));
    }

    static String child(String parent, int index) {
        return parent + '/' + index;
    }
}
