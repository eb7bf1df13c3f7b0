package fettle.view;

/** Counts the columns that text takes on a terminal. */
final class Columns {

    private Columns() {}

    /** Marks that combine with the letter before take none, the wide letters of East Asia and pictures two. */
    static int of(String text) {
        int columns = 0;
        for (int i = 0; i < text.length(); i += Character.charCount(text.codePointAt(i))) {
            columns += of(text.codePointAt(i));
        }
        return columns;
    }

    private static int of(int c) {
        int type = Character.getType(c);
        if (type == Character.NON_SPACING_MARK || type == Character.ENCLOSING_MARK || type == Character.FORMAT) {
            return 0;
        }
        return wide(c) ? 2 : 1;
    }

    private static boolean wide(int c) {
        return c >= 0x1100 && c <= 0x115F
                || c >= 0x2E80 && c <= 0x303E
                || c >= 0x3041 && c <= 0xA4CF
                || c >= 0xAC00 && c <= 0xD7A3
                || c >= 0xF900 && c <= 0xFAFF
                || c >= 0xFE30 && c <= 0xFE6F
                || c >= 0xFF00 && c <= 0xFF60
                || c >= 0xFFE0 && c <= 0xFFE6
                || c >= 0x1F300 && c <= 0x1FAFF
                || c >= 0x20000 && c <= 0x3FFFD;
    }
}
