package org.airfit.files.json;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.math.BigInteger;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.airfit.files.AsFiled;
import org.airfit.files.CatalogueShelf;
import org.airfit.files.Document;
import org.airfit.files.Job;
import org.airfit.files.JobFile;
import org.airfit.files.NetworkFile;
import org.airfit.files.NetworkJob;
import org.airfit.files.ShopCatalogue;
import org.airfit.files.WrongFileException;
import org.jspecify.annotations.Nullable;

/**
 * Jobs and networks, which are written as their files say them: a job has {@code job}, the fields of a job file, and
 * {@code catalogue}; a network has {@code rows}, those of a network file. Either has {@code files} where it names
 * tables of rules.
 */
final class Filed {

  static final String JOB = "job";
  static final String CATALOGUE = "catalogue";
  static final String ROWS = "rows";
  static final String FILES = "files";

  private static final int LONGEST_LONG = 18;

  private Filed() {}

  /** Whether values of this type are written as their files say them. */
  static boolean isFiled(Class<?> type) {
    return type.equals(Job.class) || type.equals(NetworkJob.class);
  }

  /** The fields of such a type. */
  static Set<String> fields(Class<?> type) {
    return type.equals(Job.class) ? Set.of(JOB, CATALOGUE, FILES) : Set.of(ROWS, FILES);
  }

  /** What writes a catalogue. */
  interface Catalogue {

    void write(Object catalogue) throws IOException;
  }

  /** The job that its fields tell. */
  static Job job(Object fields, ShopCatalogue catalogue, Map<String, Object> files)
      throws WrongFileException {
    return JobFile.read(new Document(JOB, fields, new CatalogueShelf() {
      @Override
      public ShopCatalogue catalogue(String path) {
        return catalogue;
      }

      @Override
      public Document open(String path) throws WrongFileException {
        return opened(path, files);
      }
    }));
  }

  /** The network that its rows tell. */
  static NetworkJob network(Object rows, Map<String, Object> files) throws WrongFileException {
    return NetworkFile.read(new Document(ROWS, rows, path -> opened(path, files)));
  }

  private static Document opened(String path, Map<String, Object> files) throws WrongFileException {
    Object content = files.get(path);
    if (content == null) {
      throw new WrongFileException(
          path,
          "",
          "\"" + Plain.shown(path)
              + "\" is not among files; accepted: its rows, as a field of files by this name");
    }
    return Document.of(path, content);
  }

  static void write(Job job, Catalogue catalogue, JsonGenerator out) throws IOException {
    AsFiled said = said(job.asFiled(), "job", "asked");
    out.writeStartObject();
    out.writeFieldName(JOB);
    plain(said.content(), out);
    out.writeFieldName(CATALOGUE);
    catalogue.write(job.catalogue());
    files(said, out);
    out.writeEndObject();
  }

  static void write(NetworkJob network, JsonGenerator out) throws IOException {
    AsFiled said = said(network.asFiled(), "network", "made");
    out.writeStartObject();
    out.writeFieldName(ROWS);
    plain(said.content(), out);
    files(said, out);
    out.writeEndObject();
  }

  private static AsFiled said(Optional<AsFiled> said, String what, String done) {
    return said.orElseThrow(() ->
        new IllegalArgumentException("a " + what + " is written as its file says it, but this was "
            + done + " by a program; write the " + what + " that was read"));
  }

  private static void files(AsFiled said, JsonGenerator out) throws IOException {
    if (!said.files().isEmpty()) {
      out.writeFieldName(FILES);
      plain(said.files(), out);
    }
  }

  private static void plain(@Nullable Object value, JsonGenerator out) throws IOException {
    if (value instanceof Map<?, ?> map) {
      out.writeStartObject();
      for (Map.Entry<?, ?> entry : map.entrySet()) {
        out.writeFieldName(String.valueOf(entry.getKey()));
        plain(entry.getValue(), out);
      }
      out.writeEndObject();
    } else if (value instanceof List<?> list) {
      out.writeStartArray();
      for (Object item : list) {
        plain(item, out);
      }
      out.writeEndArray();
    } else {
      out.writeObject(value); // a text, a number, a truth value or null
    }
  }

  /** Plain values with numbers as the readers of files know them. */
  static @Nullable Object counted(@Nullable Object plain) {
    if (plain instanceof Map<?, ?> map) {
      Map<String, @Nullable Object> copy = new LinkedHashMap<>();
      map.forEach((name, value) -> copy.put(String.valueOf(name), counted(value)));
      return copy;
    }
    if (plain instanceof List<?> list) {
      List<@Nullable Object> copy = new ArrayList<>();
      list.forEach(value -> copy.add(counted(value)));
      return copy;
    }
    return plain instanceof Plain.Numeral numeral ? number(numeral) : plain;
  }

  private static Number number(Plain.Numeral numeral) {
    String text = numeral.text();
    if (text.indexOf('.') >= 0 || text.indexOf('e') >= 0 || text.indexOf('E') >= 0) {
      return numeral.value();
    }
    if (text.length() > LONGEST_LONG) {
      return new BigInteger(text);
    }
    long whole = Long.parseLong(text);
    return whole == (int) whole ? (Number) (int) whole : (Number) whole;
  }
}
