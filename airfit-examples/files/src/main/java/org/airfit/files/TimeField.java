package org.airfit.files;

import java.time.Duration;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Reads a time as people write it: "40 s", "1.5 min", "1 min 30 s", "2 h". */
final class TimeField {

  private static final Pattern PIECE =
      Pattern.compile("\\G *([0-9]+(?:[.][0-9]+)?|[.][0-9]+) *([a-z]+)[.]?(?: |$)");

  private static final Map<String, Integer> SECONDS = Map.ofEntries(
      Map.entry("s", 1),
      Map.entry("sec", 1),
      Map.entry("second", 1),
      Map.entry("seconds", 1),
      Map.entry("min", 60),
      Map.entry("minute", 60),
      Map.entry("minutes", 60),
      Map.entry("h", 3600),
      Map.entry("hr", 3600),
      Map.entry("hour", 3600),
      Map.entry("hours", 3600));

  /** No user of a receiver draws for longer. */
  private static final double MOST = 7.0 * 24.0 * 3600.0;

  private TimeField() {}

  static Duration of(Field field) throws WrongFileException {
    String typed = field.text().strip().toLowerCase(Locale.ROOT);
    Matcher piece = PIECE.matcher(typed);
    double seconds = 0.0;
    int end = 0;
    while (piece.find()) {
      Integer unit = SECONDS.get(piece.group(2));
      if (unit == null) {
        throw wrong(field, typed);
      }
      seconds += unit * Double.parseDouble(piece.group(1));
      end = piece.end();
    }
    if (end == 0 || end < typed.length()) {
      throw wrong(field, typed);
    }
    if (!(seconds > 0.0 && seconds <= MOST)) {
      throw field.wrong("must be above 0 s and at most 7 days, was \"" + typed + "\"");
    }
    return Duration.ofNanos(Math.round(1.0e9 * seconds));
  }

  private static WrongFileException wrong(Field field, String typed) {
    return field.wrong("\"" + typed + "\" is no time; accepted: a number with s, min or h, such as"
        + " \"40 s\", \"1 min 30 s\" or \"2 h\"");
  }
}
