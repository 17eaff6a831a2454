package org.airfit.files;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * What a shop files a job by.
 *
 * @param number the number of the job; empty where it has none yet
 * @param date its day; empty where it was not told
 */
public record JobLabel(Optional<String> number, Optional<LocalDate> date) {

  /** Neither number nor day. */
  static final JobLabel NONE = new JobLabel(Optional.empty(), Optional.empty());

  private static final Pattern DAY = Pattern.compile("(\\d{4})-(\\d{2})-(\\d{2})");
  private static final String WANTED = "must be a day as year-month-day such as 2026-11-28";

  /**
   * Refuses what is null.
   *
   * @param number the number of the job; empty where it has none yet
   * @param date its day; empty where it was not told
   */
  public JobLabel {
    Objects.requireNonNull(number, "number");
    Objects.requireNonNull(date, "date");
  }

  /** The fields {@code number} and {@code date} of a job. */
  static JobLabel of(Field root) throws WrongFileException {
    Optional<Field> number = root.find("number", "a text such as \"2041\"");
    Optional<Field> date = root.find("date", "a day such as \"2026-11-28\"");
    return new JobLabel(
        number.isPresent() ? Optional.of(number.get().text()) : Optional.empty(),
        date.isPresent() ? Optional.of(date.get().as(JobLabel::day)) : Optional.empty());
  }

  /** The same of a job of which nothing else is read: what is not in its form is left out, and not refused. */
  static JobLabel found(Map<?, ?> job) {
    Optional<String> number = Optional.empty();
    if (job.get("number") instanceof String text
        && !text.isBlank()
        && Printable.firstHarmful(text).isEmpty()) {
      number = Optional.of(text);
    }
    Optional<LocalDate> date = Optional.empty();
    if (job.get("date") instanceof String text && DAY.matcher(text.strip()).matches()) {
      try {
        date = Optional.of(day(text));
      } catch (IllegalArgumentException e) {
        date = Optional.empty(); // such as the 31st of February
      }
    }
    return new JobLabel(number, date);
  }

  /** Read by hand: a parser of dates would bring every form of dates and all time zones into a web page. */
  static LocalDate day(String text) {
    Matcher day = DAY.matcher(text.strip());
    try {
      if (day.matches()) {
        return LocalDate.of(
            Integer.parseInt(day.group(1)),
            Integer.parseInt(day.group(2)),
            Integer.parseInt(day.group(3)));
      }
      throw new IllegalArgumentException(WANTED);
    } catch (DateTimeException e) {
      throw new IllegalArgumentException(WANTED, e);
    }
  }
}
