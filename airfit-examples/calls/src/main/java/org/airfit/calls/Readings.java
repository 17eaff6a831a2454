package org.airfit.calls;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Readings as a form has them: what was left blank is not read yet. */
final class Readings {

  private Readings() {}

  /** Without what is blank, of repeats too. */
  static Map<String, Object> filled(Map<String, Object> typed) {
    Map<String, Object> filled = new LinkedHashMap<>();
    typed.forEach((size, value) -> {
      if (value instanceof List<?> repeats) {
        List<Object> told = new ArrayList<>();
        for (Object each : repeats) {
          if (each != null && !(each instanceof String text && text.isBlank())) {
            told.add(each);
          }
        }
        if (!told.isEmpty()) {
          filled.put(size, told);
        }
      } else if (!(value instanceof String text && text.isBlank())) {
        filled.put(size, value);
      }
    });
    return filled;
  }
}
