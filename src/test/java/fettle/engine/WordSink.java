package fettle.engine;

/**
 * A global for the tests of the engine.
 *
 * <p>Takes words.
 */
public interface WordSink {
    void say(String rule, String words);
}
