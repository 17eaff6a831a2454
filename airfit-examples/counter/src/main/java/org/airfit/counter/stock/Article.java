package org.airfit.counter.stock;

import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.airfit.files.CatalogueFile;

/** One row of a table of articles. */
record Article(long row, Map<Column, Object> values, Optional<Integer> quantity) {

  Article {
    values = new EnumMap<>(values);
  }

  /** What the shop calls it. */
  String number() {
    return String.valueOf(values.get(Column.ID));
  }

  /** The object of a catalogue file. */
  Map<String, Object> toObject() {
    return object(values);
  }

  static Map<String, Object> object(Map<Column, Object> values) {
    Map<String, Object> object = new LinkedHashMap<>();
    values.forEach((column, value) -> column.putInto(object, value));
    return object;
  }

  /** Puts the object of an article where a catalogue file has it: with the parts, or with what goes with them. */
  static void add(Map<String, Object> article, List<Object> parts, List<Object> accessories) {
    (isAccessory(String.valueOf(article.get("kind"))) ? accessories : parts).add(article);
  }

  /** Whether a word is the kind of something that goes with parts. */
  static boolean isAccessory(String kind) {
    return CatalogueFile.accessoryKinds().stream().anyMatch(kind::equalsIgnoreCase);
  }

  /** The kind that a word is, of a part or of what goes with parts, as a catalogue file writes it; empty for none. */
  static Optional<String> kind(String word) {
    return Stream.of(CatalogueFile.partKinds(), CatalogueFile.accessoryKinds())
        .flatMap(List::stream)
        .filter(word::equalsIgnoreCase)
        .findFirst();
  }
}
