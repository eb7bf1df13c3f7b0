package fettle.engine;

/**
 * A fact for the tests of the engine.
 *
 * <p>A record, as all facts are.
 */
public record Socket(String host, String id, String kind) {
}
