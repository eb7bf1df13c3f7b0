package fettle.engine;

/**
 * Compiled rules and the class loader that knows them.
 *
 * <p>Rules that can be loaded.
 *
 * @param index  what there is to load
 * @param loader finds the classes that the index names
 */
record LoadableRules(RuleIndex index, ClassLoader loader) {
    static LoadableRules of(CompiledRules compiled, ClassLoader facts) {
        return new LoadableRules(compiled.index(), new RuleLoader(compiled.classes(), facts));
    }
}
