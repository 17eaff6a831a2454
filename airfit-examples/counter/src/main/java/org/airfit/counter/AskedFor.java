package org.airfit.counter;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import org.airfit.counter.stock.Stock;
import org.airfit.files.Document;
import org.airfit.files.Json;
import org.airfit.files.WrongFileException;
import org.jspecify.annotations.Nullable;

/**
 * A question with a job: an object, the text of a job file, or the name of one of the files.
 *
 * @param question the question, its job with a catalogue
 * @param job the job; without fields where it cannot be read, as whoever answers tells
 */
record AskedFor(Map<String, Object> question, Map<?, ?> job) {

  private static final String JOB = "job";
  private static final String FILES = "files";
  private static final String CATALOGUE = "catalogue";

  /** A question whose job has the parts of the shop, where it names no catalogue. */
  static AskedFor ofShop(Map<String, Object> question) {
    Map<String, Object> asked = new LinkedHashMap<>(question);
    Object told = asked.get(JOB);
    if (told instanceof Map<?, ?> job) {
      if (!job.containsKey(CATALOGUE)) {
        Map<String, Object> completed = Document.fields(job);
        completed.put(CATALOGUE, Stock.FILE);
        asked.put(JOB, completed);
      }
      return new AskedFor(asked, job);
    }
    if (!(told instanceof String word)) {
      return new AskedFor(asked, Map.of());
    }
    Map<String, Object> files =
        Document.fields(Optional.ofNullable(asked.get(FILES)).orElse(Map.of()));
    Optional<String> name = files.keySet().stream()
        .filter(each -> House.name(each).equals(House.name(word)))
        .findFirst();
    @Nullable Object text = name.isPresent() ? files.get(name.get()) : word;
    Map<?, ?> job = text instanceof String written ? read(written) : Map.of();
    if (!job.isEmpty() && !job.containsKey(CATALOGUE)) {
      String completed = completed(String.valueOf(text));
      if (name.isPresent()) {
        files.put(name.get(), completed);
        asked.put(FILES, files);
      } else {
        asked.put(JOB, completed);
      }
    }
    return new AskedFor(asked, job);
  }

  private static Map<?, ?> read(String text) {
    try {
      return Json.read(JOB, text) instanceof Map<?, ?> job ? job : Map.of();
    } catch (WrongFileException e) {
      return Map.of();
    }
  }

  /** The text of an object with one more field in front: all else stays as it was written. */
  private static String completed(String text) {
    int inside = text.indexOf('{') + 1;
    return text.substring(0, inside) + "\"" + CATALOGUE + "\": \"" + Stock.FILE + "\", "
        + text.substring(inside);
  }
}
