package fettle.engine;

/**
 * A global for the tests of the engine.
 *
 * <p>Takes pairs.
 */
public interface PairSink {
    void pair(String rule, Socket socket, Widget widget);
}
