/** A global for the tests of the engine. */
package fettle.engine;

/** Takes pairs. */
public interface PairSink {
    void pair(Socket socket, Widget widget);
}
