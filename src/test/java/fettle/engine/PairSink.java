/** A global for the tests of the engine. */
package fettle.engine;

/** Takes pairs. */
public interface PairSink {
    void pair(String rule, Socket socket, Widget widget);
}
