package org.airfit.select;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.airfit.joint.End;

/** A number for each end, the same for equal ends. Not thread-safe: it remembers. */
final class EndNumbers {

  private final Map<End, Integer> numbers = new HashMap<>();
  private final List<End> ends = new ArrayList<>();

  int number(End end) {
    return numbers.computeIfAbsent(end, any -> {
      ends.add(end);
      return ends.size() - 1;
    });
  }

  End end(int number) {
    return ends.get(number);
  }
}
