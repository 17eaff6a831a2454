package org.airfit.calls;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.airfit.files.Document;
import org.airfit.files.Refusal;
import org.airfit.files.WaterFile;
import org.airfit.files.WrongFileException;
import org.airfit.jobsheet.SheetParts;

/**
 * How much water falls out where compressed air is cooled, and its dew points. It is put as a file of water and purity of
 * one cooler, so that the same words are accepted and the same complaints made.
 */
final class CondensateCall {

  private static final String FILE = "?";

  private static final String SEA_LEVEL = "1.013 bar(a)";

  private static final String HUMIDITY = "a relative humidity such as \"70 %\" or 0.7";

  /** The places of the file, and the fields that were asked. */
  private static final Map<String, String> PLACES = places();

  private CondensateCall() {}

  private static Map<String, String> places() {
    Map<String, String> places = new LinkedHashMap<>();
    places.put("intake.temperature", "temperature");
    places.put("intake.driest", "humidity");
    places.put("intake.dampest", "humidity");
    places.put("trains[1].stages[1].air", "cooled");
    places.put("trains[1].stages[1]", "cooled");
    places.put("trains[1]", "cooled");
    places.put("room", "cooled");
    places.put("shift", "time");
    return places;
  }

  static Map<String, Object> answer(Asked asked, Wanted wanted) throws RefusedException {
    Optional<Refusal> refusal = FileCall.refusal(asked);
    if (refusal.isPresent()) {
      return wanted.refused(refusal.get());
    }
    String temperature =
        asked.text("temperature", "the temperature of the air taken in, such as \"25 °C\"");
    double humidity = humidity(asked.value("humidity", HUMIDITY));
    String pressure =
        asked.text("pressure", "the gauge pressure behind the compressor, such as \"7 bar(g)\"");
    String air = asked.text("air", "a free-air flow such as \"50 L/s ANR\" or \"100 scfm\"");
    String cooled =
        asked.text("cooled", "the temperature that the air is cooled to, such as \"30 °C\"");
    String time = asked.text("time", "the time for which water is counted, such as \"8 h\"");
    String atmosphere = asked
        .findText("atmosphere", "an absolute pressure such as \"1.013 bar(a)\"")
        .orElse(SEA_LEVEL);
    Optional<String> units = asked.findText("units", "US, SI");
    asked.requireNothingElse();
    Map<String, Object> file = new LinkedHashMap<>();
    file.put("airfitWater", 1);
    file.put("title", "Water out of compressed air");
    file.put("customer", "the workshop");
    units.ifPresent(told -> file.put("units", told));
    file.put("atmosphere", atmosphere);
    file.put("intake", Map.of("temperature", temperature, "driest", humidity, "dampest", humidity));
    file.put("room", cooled);
    file.put("pressure", pressure);
    file.put("air", air);
    file.put("shift", time);
    file.put(
        "trains",
        List.of(Map.of(
            "name",
            "cooler",
            "stages",
            List.of(Map.of("name", "cooler", "kind", "cooler", "air", cooled, "drain", true)))));
    try {
      return wanted.told(SheetParts.ofCooler(WaterFile.read(Document.of(FILE, file))));
    } catch (WrongFileException e) {
      throw RefusedException.asked(e, FILE, PLACES);
    }
  }

  /** A share, as a number or as a text with its sign. */
  private static double humidity(Object told) throws RefusedException {
    if (told instanceof Number number) {
      return number.doubleValue();
    }
    String text = String.valueOf(told).strip();
    boolean isPercent = text.endsWith("%");
    if (told instanceof String && text.isEmpty()) {
      throw RefusedException.field("humidity", "is empty", HUMIDITY);
    }
    String digits = isPercent ? text.substring(0, text.length() - 1).strip() : text;
    if (told instanceof String && digits.matches("[0-9]{1,9}([.][0-9]{1,9})?")) {
      double value = Double.parseDouble(digits);
      if (!isPercent && value == 1.0) {
        throw RefusedException.field(
            "humidity",
            "was \"" + text + "\", which may be 1 % or all that air can hold; say \"1 %\" or"
                + " \"100 %\"",
            HUMIDITY);
      }
      if (!isPercent && value > 1.0 && value <= 100.0) {
        throw RefusedException.field(
            "humidity",
            "was \"" + text + "\"; if that is meant in percent, say \"" + digits + " %\"",
            HUMIDITY);
      }
      double share = isPercent ? value / 100.0 : value;
      if (!(share > 0.0 && share <= 1.0)) {
        throw RefusedException.field(
            "humidity", "was \"" + text + "\"; it must be above 0 % and at most 100 %", HUMIDITY);
      }
      return share;
    }
    throw RefusedException.field("humidity", "was \"" + told + "\"", HUMIDITY);
  }
}
