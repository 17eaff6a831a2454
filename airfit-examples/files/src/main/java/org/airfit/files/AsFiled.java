package org.airfit.files;

import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/**
 * What a file said, so that it can be written again: a job or a network cannot be told from what was read of it.
 *
 * @param content the plain values of the file, as {@link Document} lists them
 * @param files the plain values of the files with rules that it names, by the name it has for them
 */
public record AsFiled(Object content, Map<String, Object> files) {

  /**
   * Copies the plain values; refuses what is null.
   *
   * @param content the plain values of the file, as {@link Document} lists them
   * @param files the plain values of the files with rules that it names, by the name it has for them
   */
  public AsFiled {
    content = copy(Objects.requireNonNull(content, "content"));
    Map<String, Object> copies = new LinkedHashMap<>();
    Objects.requireNonNull(files, "files")
        .forEach((name, file) -> copies.put(name, copy(Objects.requireNonNull(file, name))));
    files = Collections.unmodifiableMap(copies);
  }

  private static Object copy(Object value) {
    if (value instanceof Map<?, ?> map) {
      Map<String, @Nullable Object> copy = new LinkedHashMap<>();
      map.forEach((name, each) -> copy.put(String.valueOf(name), each == null ? null : copy(each)));
      return Collections.unmodifiableMap(copy);
    }
    if (value instanceof List<?> list) {
      List<@Nullable Object> copy = new ArrayList<>(list.size());
      Object last = null;
      Object copied = null;
      for (Object each : list) {
        if (each != last) {
          last = each;
          copied = each == null ? null : copy(each);
        }
        copy.add(copied); // millions of empty rows are one and the same
      }
      return Collections.unmodifiableList(copy);
    }
    return value;
  }

  /** The same file, which notes in {@code files} what is opened through it. */
  static Document noting(Document document, Map<String, Object> files) {
    return new Document(document.name(), document.content(), path -> {
      Document opened = document.shelf().open(path);
      files.put(path, opened.content());
      return opened;
    });
  }
}
