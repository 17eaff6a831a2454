package org.airfit.calls;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.airfit.files.CatalogueShelf;
import org.airfit.files.Document;
import org.airfit.files.LeakFile;
import org.airfit.files.Refusal;
import org.airfit.files.WrongFileException;
import org.airfit.jobsheet.SheetParts;

/**
 * What leaks cost: those of a ledger, or one by its hole. That one is put as a ledger, so that the same words are accepted
 * and the same complaints made.
 */
final class LeakCall {

  private static final String FILE = "?";

  private static final String SEA_LEVEL = "1.013 bar(a)";

  /** What must be told of the plant, and of the leak. */
  private static final Map<String, String> OF_PLANT = ofPlant();

  /** The places of the ledger; of a whole row nothing is told but what is wrong. */
  private static final Map<String, String> PLACES = places();

  private LeakCall() {}

  private static Map<String, String> places() {
    Map<String, String> places = new LinkedHashMap<>();
    for (String row : List.of("row 2", "row 3")) {
      places.put(row + ", column ", "");
      places.put(row, "");
    }
    return places;
  }

  private static Map<String, String> ofPlant() {
    Map<String, String> fields = new LinkedHashMap<>();
    fields.put(
        "loadedPower", "the electric power while the compressor delivers, such as \"37 kW\"");
    fields.put(
        "unloadedPower",
        "the electric power while it does not deliver, such as \"8 to 10 kW\"; \"0 kW\" where it"
            + " stops");
    fields.put("delivery", "what it delivers while loaded, such as \"210 scfm\"");
    fields.put("hours", "a whole number of hours in the year under pressure, such as \"4000\"");
    fields.put("electricity", "the price of a kWh, such as \"0.15 USD\"");
    return fields;
  }

  /** A whole ledger. */
  static Map<String, Object> ledger(Asked asked, Optional<CatalogueShelf> house, Wanted wanted)
      throws RefusedException {
    return FileCall.answer(
        asked, house, wanted, "leaks.csv", file -> SheetParts.of(LeakFile.read(file)));
  }

  /** One leak by its hole. */
  static Map<String, Object> answer(Asked asked, Wanted wanted) throws RefusedException {
    Optional<Refusal> refusal = FileCall.refusal(asked);
    if (refusal.isPresent()) {
      return wanted.refused(refusal.get());
    }
    Map<String, String> plant = new LinkedHashMap<>();
    plant.put("record", "plant");
    plant.put("name", "What a leak costs");
    plant.put("customer", "the workshop");
    plant.put(
        "atmosphere",
        asked
            .findText("atmosphere", "an absolute pressure such as \"1.013 bar(a)\"")
            .orElse(SEA_LEVEL));
    plant.put(
        "temperature",
        asked
            .findText("temperature", "the temperature of the air, such as \"20 °C\"")
            .orElse("20 °C"));
    for (Map.Entry<String, String> field : OF_PLANT.entrySet()) {
      plant.put(field.getKey(), typed(asked.value(field.getKey(), field.getValue())));
    }
    Map<String, String> leak = new LinkedHashMap<>();
    leak.put("record", "leak");
    leak.put("tag", "1");
    leak.put("place", "as told");
    leak.put("what", "hole");
    leak.put("hole", asked.text("hole", "its diameter, such as \"2 mm\" or \"1/16 to 1/8 in\""));
    leak.put(
        "pressure", asked.text("pressure", "the gauge pressure at the leak, such as \"90 psig\""));
    put(leak, "edge", asked.findText("edge", "its edge, such as \"sharp edge\""));
    put(
        leak,
        "repairCost",
        asked.findText("repairCost", "what the repair costs, such as \"40 USD\""));
    Optional<String> units = asked.findText("units", "US, SI");
    plant.put(
        "units", units.orElse(leak.getOrDefault("pressure", "").contains("psi") ? "US" : "SI"));
    asked.requireNothingElse();
    for (Map<String, String> row : List.of(plant, leak)) {
      requireFilled(row);
    }
    try {
      return wanted.told(SheetParts.ofLeak(LeakFile.read(Document.of(FILE, rows(plant, leak)))));
    } catch (WrongFileException e) {
      throw RefusedException.asked(e, FILE, PLACES);
    }
  }

  /** Refuses an empty text: in a table such a cell counts as left out. */
  private static void requireFilled(Map<String, String> row) throws RefusedException {
    for (Map.Entry<String, String> cell : row.entrySet()) {
      if (cell.getValue().isBlank()) {
        throw RefusedException.field(
            cell.getKey(),
            "is empty; write what is asked for, or leave it out where it may be missing",
            OF_PLANT.getOrDefault(cell.getKey(), ""));
      }
    }
  }

  private static void put(Map<String, String> row, String field, Optional<String> told) {
    told.ifPresent(text -> row.put(field, text));
  }

  /** A text, or a number as a text. */
  private static String typed(Object told) {
    return told instanceof Number number && number.doubleValue() == Math.rint(number.doubleValue())
        ? String.valueOf(number.longValue())
        : String.valueOf(told);
  }

  /** Two rows as a table. */
  private static List<List<String>> rows(Map<String, String> one, Map<String, String> other) {
    List<String> heading = new ArrayList<>(one.keySet());
    other.keySet().stream().filter(column -> !heading.contains(column)).forEach(heading::add);
    List<List<String>> rows = new ArrayList<>();
    rows.add(heading);
    for (Map<String, String> row : List.of(one, other)) {
      rows.add(heading.stream().map(column -> row.getOrDefault(column, "")).toList());
    }
    return rows;
  }
}
