package org.airfit.quantity;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Stream;

/**
 * Names of sizes that look like numbers but measure nothing, found by that number: 1-1/4, 1 1/4 and 1¼ are one name.
 *
 * @param <E> the sizes
 */
final class SizeNames<E> {

  private final String quantity;
  private final Grammar<String> grammar;
  private final Map<Double, E> byNumber = new HashMap<>();

  SizeNames(String quantity, E[] sizes, Function<E, String> label, List<String> wordsBehind) {
    this.quantity = quantity;
    this.grammar =
        Grammar.ofNames(quantity, wordsBehind, Stream.of(sizes).map(label).toList());
    for (E size : sizes) {
      byNumber.put(grammar.read(label.apply(size), (number, word) -> number), size);
    }
  }

  E parse(String text) {
    return grammar.read(text, (number, word) -> {
      E size = byNumber.get(number);
      if (size == null) {
        throw new IllegalArgumentException("there is no such " + quantity);
      }
      return size;
    });
  }
}
