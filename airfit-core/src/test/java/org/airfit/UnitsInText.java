package org.airfit;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.airfit.working.UnitSystem;

/**
 * Finds the units of one system in a text that is told in the other: numbers with a unit, and units of a pressure or a
 * flow by themselves, outside round and square brackets.
 */
public final class UnitsInText {

  private static final Pattern SI =
      Pattern.compile("\\d\\s?(?:m|mm|cm|µm|m²|m³|kg|K|kW|J|Pa|kPa|MPa)(?![\\w²³/(·°])"
          + "|(?<!\\w)(?:m/s|kg/s|kg/h|g/s|Pa·s)(?!\\w)"
          + "|(?<!\\w)(?:bar|mbar|kPa|Pa|L/s|L/min|dm³|m³/h|m³/s)(?!\\w)"
          + "|°C");

  private static final Pattern US =
      Pattern.compile("\\d\\s?(?:in|ft|ft²|ft³|lb|hp|yd|gal)(?![\\w²³/])"
          + "|(?<!\\w)(?:psi|psig|psia|scfm|cfm|scfh|ft/s|lb/s|lb/min)(?!\\w)"
          + "|°F|°R");

  private UnitsInText() {}

  /**
   * Finds what is told in the wrong system.
   *
   * @param text the text
   * @param wanted the system it should be told in
   * @param names names of people and shops that stand in the text, which have the units they have
   * @return the places, with what stands around them
   */
  public static List<String> strange(String text, UnitSystem wanted, List<String> names) {
    String bare = text;
    for (String name : names) {
      bare = bare.replace(name, "…");
    }
    bare = withoutBrackets(bare);
    List<String> found = new ArrayList<>();
    Matcher matcher = wanted.either(US, SI).matcher(bare);
    while (matcher.find()) {
      found.add(bare.substring(
          Math.max(0, matcher.start() - 40), Math.min(bare.length(), matcher.end() + 20)));
    }
    return found;
  }

  /** Leaves out what stands in round or square brackets, those within them too; each line for itself. */
  static String withoutBrackets(String text) {
    StringBuilder out = new StringBuilder();
    int depth = 0;
    for (int i = 0; i < text.length(); i++) {
      char c = text.charAt(i);
      if (c == '(' || c == '[') {
        depth++;
      } else if ((c == ')' || c == ']') && depth > 0) {
        depth--;
      } else if (depth == 0) {
        out.append(c);
      }
    }
    return out.toString();
  }
}
