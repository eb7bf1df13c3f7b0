package fettle.engine;

import java.util.Map;

/**
 * Loads rule classes from memory.
 *
 * <p>Looks among its own classes first: generated classes are named by package, so a user's rules bear the names of
 * built-in classes.
 */
final class RuleLoader extends ClassLoader {
    private final Map<String, byte[]> classes;

    RuleLoader(Map<String, byte[]> classes, ClassLoader parent) {
        super(parent);
        this.classes = classes;
    }

    @Override
    protected Class<?> loadClass(String name, boolean resolve) throws ClassNotFoundException {
        byte[] code = classes.get(name.replace('.', '/') + ".class");
        if (code == null) {
            return super.loadClass(name, resolve);
        }
        synchronized (getClassLoadingLock(name)) {
            Class<?> known = findLoadedClass(name);
            return known != null ? known : defineClass(name, code, 0, code.length);
        }
    }
}
