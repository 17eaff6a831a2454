package org.airfit.calls;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.airfit.files.Document;
import org.airfit.files.Job;
import org.airfit.files.JobFile;
import org.airfit.files.TypedUnits;
import org.airfit.files.WrongFileException;
import org.airfit.working.UnitSystem;

/**
 * A call put as a job, so that the reader of job files reads what was typed: the same words are accepted, the same
 * complaints made, the same remarks told.
 */
final class AskedJob {

  /** The name of the file that is none; a file that was given has another. */
  private static final String FILE = "?";

  /** A line that is there for the form alone: nothing is computed of it. */
  private static final List<Object> LINE =
      List.of(Map.of("kind", "outlet", "end", "1/2 NPT female"), Map.of("kind", "coupling"));

  private static final String CATALOGUE = "catalogue.json";

  /** A catalogue without parts; a set has one profile at least, so this has an invented one that nothing asks for. */
  private static final Map<String, Object> NO_CATALOGUE = Map.of(
      "catalogue",
      "none",
      "profiles",
      List.of(Map.of(
          "id",
          "none",
          "name",
          "none",
          "from",
          "invented",
          "source",
          "stands for no plug",
          "dimensions",
          Map.of("bore", Map.of("nominal", "8 mm", "deviation", "0.06 mm")))),
      "parts",
      List.of());

  private final Map<String, Object> fields = new LinkedHashMap<>();
  private final Map<String, String> places = new LinkedHashMap<>();
  private Given given;

  private AskedJob(Given given) {
    this.given = given;
  }

  /** Begins with what a job must have. */
  static AskedJob begun() throws RefusedException {
    AskedJob job = new AskedJob(Given.files(Map.of()).with(CATALOGUE, NO_CATALOGUE));
    job.fields.put("job", "asked");
    job.fields.put("customer", "none");
    job.fields.put("catalogue", CATALOGUE);
    job.fields.put("supply", supply("7 bar(g)"));
    job.fields.put("line", LINE);
    job.fields.put("tool", tool("10 L/s ANR", "6 bar(g)"));
    return job;
  }

  static Map<String, Object> supply(String pressure) {
    Map<String, Object> supply = new LinkedHashMap<>();
    supply.put("pressure", pressure);
    return supply;
  }

  static Map<String, Object> tool(Object air, Object pressure) {
    Map<String, Object> tool = new LinkedHashMap<>();
    tool.put("name", "The tool");
    tool.put("air", air);
    tool.put("pressure", pressure);
    tool.put("inlet", "1/4 NPT female");
    return tool;
  }

  /** Tells a field. */
  void put(String field, Object value) {
    fields.put(field, value);
  }

  /** A place in the job is another in what was asked. */
  void place(String ofJob, String asked) {
    places.put(ofJob, asked);
  }

  /** Takes a catalogue, or a set as that of a catalogue without parts. */
  void profiles(Object set) throws RefusedException {
    Object content = set;
    String file = "set.json";
    if (set instanceof String text) {
      file = Given.isJson(text) ? file : "set.csv";
      content = text;
    } else if (!(set instanceof Map)) {
      throw RefusedException.field("set", "was " + set, "the text of a set file, or an object");
    }
    try {
      Object values = Given.files(Map.of()).with(file, content).open(file).content();
      if (values instanceof Map<?, ?> map && map.containsKey("catalogue")) {
        given = given.with(CATALOGUE, values);
      } else {
        given = given.with(file, values);
        given = given.with(
            CATALOGUE, Map.of("catalogue", "set", "profileSet", file, "parts", List.of()));
      }
    } catch (WrongFileException e) {
      throw RefusedException.file(e);
    }
  }

  /** Takes a catalogue, its text or plain values. */
  void catalogue(Object catalogue) {
    given = given.with(CATALOGUE, catalogue);
  }

  /** Takes the units that were told, or those in which most of what was typed is. */
  void units(Optional<String> told, Object typed) {
    UnitSystem counted = TypedUnits.of(Document.of(FILE, typed)).system();
    String word = told.orElse(counted.name());
    String upper = word.toUpperCase(Locale.ROOT);
    // What is no system of units is told back as it was typed.
    boolean isKnown =
        List.of(UnitSystem.values()).stream().anyMatch(system -> system.name().equals(upper));
    fields.put("units", isKnown ? upper : word);
  }

  /** Reads the job. */
  Job read() throws RefusedException {
    try {
      return JobFile.read(new Document(FILE, JobFile.toObject(fields), given));
    } catch (WrongFileException e) {
      throw RefusedException.asked(e, FILE, places);
    }
  }
}
