package org.airfit.fleet;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.airfit.working.UnitSystem;

/** The fields of a drop: those of a job file that count for what arrives at its tool. */
final class DropFields {

  /** What tells the row: its key, and by what the summary counts. */
  static final List<String> LABELS = List.of("key", "site", "profile");

  /** What drops of one yard have in common. */
  static final PackedFields PLACE = new PackedFields(
      List.of(
          "conditions.medium",
          "supply.pressure",
          "supply.highest",
          "supply.temperature",
          "supply.altitude",
          "supply.atmosphere",
          "year.hours",
          "year.electricity",
          "year.flow",
          "year.discharge",
          "year.compressorEfficiency",
          "year.motorEfficiency"),
      Set.of("year.hours", "year.compressorEfficiency", "year.motorEfficiency"),
      Set.of(),
      Set.of());

  /** The tool, and the air around it, in which some of its air is counted. */
  static final PackedFields TOOL = new PackedFields(
      List.of(
          "supply.temperature",
          "supply.altitude",
          "supply.atmosphere",
          "tool.name",
          "tool.marking",
          "tool.air",
          "tool.duty",
          "tool.pressure",
          "tool.notAbove",
          "tool.inlet"),
      Set.of("tool.duty"),
      Set.of(),
      Set.of());

  /** One item of what is connected. */
  static final PackedFields ITEM = new PackedFields(
      List.of(
          "name",
          "bore",
          "size",
          "length",
          "wall",
          "roughness",
          "fittings",
          "capacity",
          "set",
          "part"),
      Set.of("fittings"),
      Set.of(),
      Set.of());

  /** The list of what is connected, in the order the air goes. */
  static final String NOW = "now";

  /** A line that is there for the form alone: nothing is computed of it. */
  private static final List<Object> LINE =
      List.of(Map.of("kind", "outlet", "end", "1/2 NPT female"), Map.of("kind", "coupling"));

  private static final String SUPPLY = "supply";
  private static final String WITH_TOOL = "tool";

  private DropFields() {}

  /** A row, packed. */
  record Packed(String place, String tool, List<String> now) {}

  /** A job with what the place tells; a tool stands in it that nothing is taken of. */
  static Map<String, Object> ofPlace(String place, UnitSystem units)
      throws PackedFields.UnreadableException {
    Map<String, Object> job = begun(units);
    job.putAll(PLACE.unpack(place));
    Map<String, Object> tool = new LinkedHashMap<>();
    tool.put("air", "10 L/s ANR");
    tool.put("pressure", "6 bar(g)");
    job.put(WITH_TOOL, named(tool));
    return job;
  }

  /** A job with the tool; a supply stands in it of which nothing is taken but the air around. */
  static Map<String, Object> ofTool(String tool, UnitSystem units)
      throws PackedFields.UnreadableException {
    Map<String, Object> job = begun(units);
    job.putAll(TOOL.unpack(tool));
    object(job, SUPPLY).put("pressure", "7 bar(g)");
    named(object(job, WITH_TOOL));
    return job;
  }

  /** The whole job; blank items are left out. */
  static Map<String, Object> job(Packed row, UnitSystem units)
      throws PackedFields.UnreadableException {
    Map<String, Object> job = begun(units);
    job.putAll(PLACE.unpack(row.place()));
    Map<String, Object> tool = TOOL.unpack(row.tool());
    if (tool.containsKey(WITH_TOOL)) {
      job.put(WITH_TOOL, tool.get(WITH_TOOL));
      named(object(job, WITH_TOOL));
    }
    List<Object> items = new ArrayList<>();
    for (String item : row.now()) {
      if (!PackedFields.isBlank(item)) {
        items.add(ITEM.unpack(item));
      }
    }
    job.put(NOW, items);
    return job;
  }

  private static Map<String, Object> begun(UnitSystem units) {
    Map<String, Object> job = new LinkedHashMap<>();
    job.put("job", "a drop of a fleet");
    job.put("customer", "fleet");
    job.put("units", units.name());
    job.put("line", LINE);
    return job;
  }

  @SuppressWarnings("unchecked") // an object of a file
  private static Map<String, Object> object(Map<String, Object> job, String field) {
    return (Map<String, Object>) job.computeIfAbsent(field, name -> new LinkedHashMap<>());
  }

  /** A job must tell the name of its tool and its inlet; no part is chosen here by them. */
  private static Map<String, Object> named(Map<String, Object> tool) {
    tool.putIfAbsent("name", "tool");
    tool.putIfAbsent("inlet", "1/4 NPT female");
    return tool;
  }

  /** What stands in a field of a row but for what is connected. */
  static String text(Packed row, String path) throws PackedFields.UnreadableException {
    return PLACE.paths().contains(path)
        ? PLACE.text(row.place(), path)
        : TOOL.text(row.tool(), path);
  }
}
