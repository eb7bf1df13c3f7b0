/** A global for the tests of the engine. */
package fettle.engine;

/** Takes words. */
public interface WordSink {
    void say(String rule, String words);
}
