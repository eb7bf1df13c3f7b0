package fettle.document;

/** Words what is wrong with a document that has nothing in it. */
final class EmptyText {
    private EmptyText() {}

    static void report(TreeBuilder tree) {
        tree.report(tree.here(1, 1), "the document is empty", "write what belongs into it, or delete the file");
    }
}
