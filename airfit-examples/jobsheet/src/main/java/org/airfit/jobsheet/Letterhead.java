package org.airfit.jobsheet;

import java.time.LocalDate;
import java.util.Objects;
import java.util.Optional;
import org.airfit.files.JobLabel;
import org.airfit.files.Shop;

/**
 * What stands at the head of a sheet beside the job itself.
 *
 * @param shop whose sheet it is; empty where no settings file was found
 * @param number the number of the job; empty to be filled in by hand
 * @param date the day of the sheet; empty to be filled in by hand
 */
public record Letterhead(Optional<Shop> shop, Optional<String> number, Optional<LocalDate> date) {

  /** Nothing but lines to be filled in by hand. */
  public static final Letterhead BLANK =
      new Letterhead(Optional.empty(), Optional.empty(), Optional.empty());

  /**
   * Refuses what is null.
   *
   * @param shop whose sheet it is; empty where no settings file was found
   * @param number the number of the job; empty to be filled in by hand
   * @param date the day of the sheet; empty to be filled in by hand
   */
  public Letterhead {
    Objects.requireNonNull(shop, "shop");
    Objects.requireNonNull(number, "number");
    Objects.requireNonNull(date, "date");
  }

  /**
   * Obtains the head of a job's sheet.
   *
   * @param shop whose sheet it is; empty where no settings file was found
   * @param label what the job says of its number and date
   * @param today the day where the job tells none
   * @return the head
   */
  public static Letterhead of(Optional<Shop> shop, JobLabel label, LocalDate today) {
    Objects.requireNonNull(today, "today");
    return new Letterhead(shop, label.number(), label.date().or(() -> Optional.of(today)));
  }

  /** Until when the offer holds, in words; empty where the shop promises nothing. */
  Optional<String> validity() {
    return shop.flatMap(Shop::validDays)
        .map(days -> date.map(day -> day.plusDays(days).toString())
            .orElse(days + (days == 1 ? " day" : " days") + " from the date"));
  }

  /** The job as the footer of every side names it. */
  String footer(String title) {
    return number.map(told -> "Job " + told + ", ").orElse("") + title;
  }
}
