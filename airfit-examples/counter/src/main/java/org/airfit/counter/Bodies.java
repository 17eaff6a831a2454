package org.airfit.counter;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonLocation;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.StreamReadConstraints;
import com.fasterxml.jackson.core.StreamReadFeature;
import com.fasterxml.jackson.core.exc.StreamConstraintsException;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.io.IOException;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** The JSON of questions, within limits, and that of answers. */
final class Bodies {

  /** A longer question is refused [bytes]. */
  static final int MOST_BYTES = 1 << 20;

  /** Lists and objects may stand so deep in each other. */
  static final int DEEPEST = 32;

  private static final int LONGEST_NUMBER = 40;

  private static final JsonMapper READER = JsonMapper.builder(JsonFactory.builder()
          .streamReadConstraints(StreamReadConstraints.builder()
              .maxNestingDepth(DEEPEST)
              .maxNumberLength(LONGEST_NUMBER)
              .maxStringLength(MOST_BYTES)
              .maxDocumentLength(MOST_BYTES)
              .build())
          .build())
      .enable(StreamReadFeature.STRICT_DUPLICATE_DETECTION)
      .enable(DeserializationFeature.FAIL_ON_TRAILING_TOKENS)
      .build();

  private static final JsonMapper WRITER = JsonMapper.builder().build();

  private Bodies() {}

  /** An object of maps, lists, texts, finite numbers and truth values. */
  static Map<String, Object> read(byte[] body) throws Problem {
    @Nullable Object value;
    try {
      value = READER.readValue(body, Object.class);
    } catch (StreamConstraintsException e) {
      throw wrong("goes beyond a limit" + place(e) + ": lists and objects stand at most " + DEEPEST
          + " deep in each other, and a number has at most " + LONGEST_NUMBER + " digits");
    } catch (JsonProcessingException e) {
      throw wrong("is no JSON, or has a field twice," + place(e));
    } catch (IOException e) {
      throw wrong("is no JSON in UTF-8");
    }
    if (!(value instanceof Map<?, ?> map)) {
      throw wrong("is no object; begin with { and a field");
    }
    requireFinite(map, "");
    Map<String, Object> object = new LinkedHashMap<>();
    map.forEach((name, field) -> {
      if (field != null) {
        object.put(String.valueOf(name), field);
      }
    });
    return object;
  }

  private static Problem wrong(String complaint) {
    return new Problem(400, "not-json", "The body " + complaint + ".");
  }

  private static String place(JsonProcessingException slip) {
    JsonLocation at = slip.getLocation();
    return at == null ? "" : " at line " + at.getLineNr() + ", column " + at.getColumnNr();
  }

  /** A number such as 1e999 is read as infinite, and no field takes that. */
  private static void requireFinite(@Nullable Object value, String place) throws Problem {
    if (value instanceof Map<?, ?> map) {
      for (Map.Entry<?, ?> each : map.entrySet()) {
        requireFinite(each.getValue(), place + (place.isEmpty() ? "" : ".") + each.getKey());
      }
    } else if (value instanceof Collection<?> list) {
      int i = 1;
      for (Object each : list) {
        requireFinite(each, place + "[" + i++ + "]");
      }
    } else if (value instanceof Number number && !Double.isFinite(number.doubleValue())) {
      throw new Problem(422, "field", place + ": the number is too large; give one below 1e308")
          .with("field", place);
    }
  }

  static byte[] write(Map<String, Object> answer) {
    try {
      return WRITER.writeValueAsBytes(answer);
    } catch (JsonProcessingException e) {
      throw new IllegalStateException("an answer holds what is no JSON", e);
    }
  }
}
