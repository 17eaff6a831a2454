package org.airfit.calls;

import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.airfit.plug.Dimension;
import org.jspecify.annotations.Nullable;

/** Where the caliper goes: a plug with its nine sizes to tap on, and of one the jaws. */
final class MeasuringCall {

  private MeasuringCall() {}

  static Map<String, Object> answer(Asked asked) throws RefusedException {
    String known =
        Arrays.stream(Dimension.values()).map(Dimension::label).collect(Collectors.joining(", "));
    Optional<String> size = asked.findText("size", known);
    asked.requireNothingElse();
    Dimension chosen = null;
    for (Dimension dimension : Dimension.values()) {
      if (size.isPresent() && dimension.label().equalsIgnoreCase(size.get().strip())) {
        chosen = dimension;
      }
    }
    if (size.isPresent() && chosen == null) {
      throw RefusedException.field("size", "was \"" + size.get() + "\"", known);
    }
    return answer(chosen);
  }

  private static Map<String, Object> answer(@Nullable Dimension chosen) {
    Map<String, Object> answer = new LinkedHashMap<>();
    answer.putAll(Shown.picture(PlugSketch.svg(chosen)));
    if (chosen != null) {
      answer.put("size", WordsCall.size(chosen));
    }
    return answer;
  }
}
