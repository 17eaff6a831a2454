package org.airfit.files;

import java.time.Duration;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Reads a moment of a day or a span of time that may be none: a clock time "07:30", or "07:30:15", or a time as
 * {@link TimeField} reads it, counted from the beginning of the day.
 */
final class ClockField {

  private static final Pattern CLOCK = Pattern.compile("([0-9]{1,2}):([0-9]{2})(?::([0-9]{2}))?");

  private static final Pattern NONE = Pattern.compile("0+(\\.0*)? *(s|min|h)");

  /** What is accepted in a field for a moment. */
  static final String MOMENT = "a clock time such as \"07:30\"";

  /** What is accepted in a field for a span. */
  static final String SPAN = "a time such as \"20 s\", \"5 min\" or \"0 s\"";

  private ClockField() {}

  /** The time of day of a moment. */
  static Duration clock(Field field) throws WrongFileException {
    Matcher clock = CLOCK.matcher(field.text().strip());
    if (!clock.matches()) {
      throw field.wrong("\"" + field.text().strip() + "\" is no clock time; accepted: " + MOMENT);
    }
    int hours = Integer.parseInt(clock.group(1));
    int minutes = Integer.parseInt(clock.group(2));
    int seconds = clock.group(3) == null ? 0 : Integer.parseInt(clock.group(3));
    if (hours > 24 || minutes > 59 || seconds > 59 || (hours == 24 && minutes + seconds > 0)) {
      throw field.wrong("must be in [00:00, 24:00], was \"" + field.text().strip() + "\"");
    }
    return Duration.ofSeconds(3600L * hours + 60L * minutes + seconds);
  }

  /** The moment counted from the beginning of the day; one before that is of the day after. */
  static Duration since(Field field, Duration begins) throws WrongFileException {
    Duration clock = clock(field);
    return clock.compareTo(begins) < 0
        ? clock.plus(Duration.ofDays(1)).minus(begins)
        : clock.minus(begins);
  }

  /** A span of time that may be none. */
  static Duration span(Field field) throws WrongFileException {
    return NONE.matcher(field.text().strip()).matches() ? Duration.ZERO : TimeField.of(field);
  }
}
