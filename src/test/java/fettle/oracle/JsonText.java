package fettle.oracle;

import tools.jackson.core.json.JsonReadFeature;
import tools.jackson.databind.DeserializationFeature;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** Reads JSON text into trees whose decimals are exact. */
public final class JsonText {
  private static final JsonMapper EXACT =
      JsonMapper.builder()
          .enable(DeserializationFeature.USE_BIG_DECIMAL_FOR_FLOATS)
          .enable(JsonReadFeature.ALLOW_SINGLE_QUOTES)
          .build();

  private JsonText() {}

  /** The tree of {@code json}; single quotes may stand for double ones, so that tests read easily. */
  public static JsonNode read(String json) {
    return EXACT.readTree(json);
  }
}
