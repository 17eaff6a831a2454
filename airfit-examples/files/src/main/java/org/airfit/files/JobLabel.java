package org.airfit.files;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.Objects;
import java.util.Optional;

/**
 * What a shop files a job by.
 *
 * @param number the number of the job; empty where it has none yet
 * @param date its day; empty where it was not told
 */
public record JobLabel(Optional<String> number, Optional<LocalDate> date) {

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

  private static LocalDate day(String text) {
    try {
      return LocalDate.parse(text.strip());
    } catch (DateTimeException e) {
      throw new IllegalArgumentException("must be a day as year-month-day such as 2026-11-28", e);
    }
  }
}
