package org.airfit.files.kept;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.function.Consumer;
import org.airfit.files.Document;
import org.airfit.files.Job;
import org.airfit.files.JobFile;
import org.airfit.files.Json;
import org.airfit.files.ShopCatalogue;
import org.jspecify.annotations.Nullable;

/** An example job, with one thing or another changed in its files. */
final class Claims {

  static final LocalDate THEN = LocalDate.parse("2026-11-29");
  static final LocalDate NOW = LocalDate.parse("2031-02-03");
  static final String FIRST = "0.1.0";

  private static final Path FOLDER = Path.of("..", "jobs", "boatyard");

  private final String job;
  private final Map<String, Object> catalogue;

  private Claims(String job, Map<String, Object> catalogue) {
    this.job = job;
    this.catalogue = catalogue;
  }

  /** As the files stand. */
  static Claims asFiled() throws Exception {
    return new Claims(
        Files.readString(FOLDER.resolve("weak-sander.json")),
        fields(Json.read("catalogue.json", Files.readString(FOLDER.resolve("catalogue.json")))));
  }

  static Map<String, Object> fields(@Nullable Object plain) {
    Map<String, Object> fields = new LinkedHashMap<>();
    ((Map<?, ?>) Objects.requireNonNull(plain))
        .forEach((name, value) -> fields.put(String.valueOf(name), value));
    return fields;
  }

  /** With another text in the job file, which stands there once. */
  Claims asked(String text, String other) {
    assertThat(job.indexOf(text)).isPositive().isEqualTo(job.lastIndexOf(text));
    return new Claims(job.replace(text, other), catalogue);
  }

  /** With other fields of a part. */
  Claims part(String id, Consumer<Map<String, Object>> change) {
    return changed("parts", id, change);
  }

  /** With other fields of something that goes with parts. */
  Claims accessory(String id, Consumer<Map<String, Object>> change) {
    return changed("accessories", id, change);
  }

  /** With other fields of a profile. */
  Claims profile(String id, Consumer<Map<String, Object>> change) {
    return changed("profiles", id, change);
  }

  private Claims changed(String list, String id, Consumer<Map<String, Object>> change) {
    return items(list, item -> {
      if (id.equals(item.get("id"))) {
        change.accept(item);
      }
    });
  }

  private Claims items(String list, Consumer<Map<String, Object>> change) {
    List<Object> items = new ArrayList<>();
    for (Object item : (List<?>) Objects.requireNonNull(catalogue.get(list), list)) {
      Map<String, Object> fields = fields(item);
      change.accept(fields);
      if (!fields.isEmpty()) {
        items.add(fields);
      }
    }
    Map<String, Object> other = new LinkedHashMap<>(catalogue);
    other.put(list, items);
    return new Claims(job, other);
  }

  /** With the parts in another order. */
  Claims turnedRound() {
    List<Object> parts = new ArrayList<>((List<?>) Objects.requireNonNull(catalogue.get("parts")));
    Collections.reverse(parts);
    Map<String, Object> other = new LinkedHashMap<>(catalogue);
    other.put("parts", parts);
    return new Claims(job, other);
  }

  Job job() throws Exception {
    return JobFile.read(
        new Document("job.json", Json.read("job.json", job), name -> Document.of(name, catalogue)));
  }

  ShopCatalogue catalogue() throws Exception {
    return job().catalogue();
  }

  KeptAnswer kept() throws Exception {
    return KeptAnswer.of(job(), THEN, FIRST);
  }

  /** What is different from the files as they stand. */
  AnswerComparison compared() throws Exception {
    return AnswerComparison.of(asFiled().kept(), kept());
  }
}
