/** A fact for the tests of the engine. */
package fettle.engine;

/** A record, as all facts are. */
public record Socket(String host, String id, String kind) {
}
