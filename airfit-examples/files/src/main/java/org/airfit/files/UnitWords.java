package org.airfit.files;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.airfit.quantity.AreaUnit;
import org.airfit.quantity.LengthUnit;
import org.airfit.quantity.MassFlowUnit;
import org.airfit.quantity.PowerUnit;
import org.airfit.quantity.PressureUnit;
import org.airfit.quantity.TemperatureUnit;
import org.airfit.quantity.Unit;
import org.airfit.quantity.VelocityUnit;
import org.airfit.quantity.VolumeFlowUnit;
import org.airfit.quantity.VolumeUnit;
import org.airfit.working.UnitSystem;

/**
 * The words for units that stand behind the numbers of a text, and the system that each belongs to.
 *
 * <p>A text that no parser has read yet is only looked through: what is misspelt is told by the parser, later.
 */
final class UnitWords {

  /** Words that are no unit of the library alone: free air, and what is asked back. */
  private static final Map<UnitSystem, List<String>> OTHERS = Map.of(
      UnitSystem.US,
      List.of(
          "scfm", "scfh", "icfm", "acfm", "fad cfm", "gal", "gallon", "gallons", "cu ft", "ft3"),
      UnitSystem.SI,
      List.of("nl/min", "nl/s", "nm3/h", "nm3/min", "slpm"));

  /** A number: digits, a fraction, a decimal, with what may stand between its parts. */
  private static final Pattern NUMBER = Pattern.compile("[0-9]+(?:[ .,/-]?[0-9]+)*\\s?");

  /** The rest of a text behind a word for a unit: how a pressure tells from where it counts, and no letter or digit. */
  private static final Pattern BEHIND = Pattern.compile(
      "(?:\\s?[(\\[]?(?:gauge|gage|absolute|abs|diff|g|a|d)[)\\]]?)?(?:[^a-z0-9/].*)?",
      Pattern.DOTALL);

  private static final Map<String, UnitSystem> WORDS = words();

  private UnitWords() {}

  /** All words, the longest first. */
  private static Map<String, UnitSystem> words() {
    Map<String, UnitSystem> words = new HashMap<>();
    Stream.<Unit[]>of(
            LengthUnit.values(),
            AreaUnit.values(),
            VolumeUnit.values(),
            PressureUnit.values(),
            TemperatureUnit.values(),
            VolumeFlowUnit.values(),
            MassFlowUnit.values(),
            VelocityUnit.values(),
            PowerUnit.values())
        .flatMap(Stream::of)
        .forEach(unit -> UnitSystem.of(unit).ifPresent(system -> {
          words.put(plain(unit.symbol()), system);
          unit.scale().spellings().forEach(word -> words.put(plain(word), system));
        }));
    OTHERS.forEach((system, others) -> others.forEach(word -> words.put(word, system)));
    words.remove("r"); // the letter of a thread
    Map<String, UnitSystem> ordered = new LinkedHashMap<>();
    words.keySet().stream()
        .sorted(Comparator.comparing(String::length).reversed().thenComparing(word -> word))
        .forEach(word -> ordered.put(word, words.getOrDefault(word, UnitSystem.SI)));
    return ordered;
  }

  /** One spelling for what looks alike. */
  private static String plain(String text) {
    return text.toLowerCase(Locale.ROOT)
        .replace('²', '2')
        .replace('₂', '2')
        .replace('³', '3')
        .replace('º', '°')
        .replace('μ', 'µ')
        .replace('″', '"')
        .replace('”', '"')
        .replace('′', '\'')
        .replace('’', '\'');
  }

  /** The system of each unit that stands behind a number, in the order of the text. */
  static List<UnitSystem> in(String text) {
    String plain = plain(text);
    List<UnitSystem> found = new ArrayList<>();
    Matcher number = NUMBER.matcher(plain);
    while (number.find()) {
      if (!endsName(plain, number.start())) {
        behind(plain.substring(number.end())).ifPresent(found::add);
      }
    }
    return found;
  }

  /** Whether the number is the tail of a name, such as that of "H-12". */
  private static boolean endsName(String text, int at) {
    int before = at > 0 && text.charAt(at - 1) == '-' ? at - 2 : at - 1;
    return before >= 0 && Character.isLetterOrDigit(text.charAt(before));
  }

  private static Optional<UnitSystem> behind(String rest) {
    return WORDS.entrySet().stream()
        .filter(word -> rest.startsWith(word.getKey())
            && BEHIND.matcher(rest.substring(word.getKey().length())).matches())
        .map(Map.Entry::getValue)
        .findFirst();
  }
}
