package org.airfit.jobsheet;

import java.util.List;
import org.airfit.network.DayCost;
import org.airfit.network.DayResult;
import org.airfit.working.UnitSystem;
import org.airfit.working.Working;

/** The sheet of a day as plain text, with the working. */
public final class DayText {

  private final Lines out = new Lines();

  private DayText() {}

  /**
   * Writes the text.
   *
   * @param sheet what is answered
   * @return lines, the working last
   */
  public static String of(DaySheet sheet) {
    DayText text = new DayText();
    text.write(sheet, new DayWords(sheet));
    return text.out.toString();
  }

  private void write(DaySheet sheet, DayWords words) {
    UnitSystem units = sheet.job().units();
    out.line("DAY  " + sheet.job().title());
    out.wrapped("", "for " + sheet.job().customer());
    out.heading("In short");
    words.inShort().forEach(line -> out.wrapped("", line.what() + ": " + line.said()));
    out.heading("What each user has");
    for (DayResult.UseDay use : sheet.day().uses()) {
      out.wrapped("  ", use.name() + ": " + words.had(use));
    }
    out.heading("What each compressor does");
    for (DayResult.CompressorDay did : sheet.day().compressors()) {
      out.wrapped("  ", did.name() + ": " + words.did(did));
    }
    out.heading("What would change");
    words.changes().forEach(change -> out.wrapped("  - ", change));
    out.heading("What to know of these numbers");
    words.limits().forEach(limit -> out.wrapped("  - ", limit));
    out.heading("Before anyone works on it");
    sheet.day().cautions().forEach(caution -> out.wrapped("  - ", caution.toString()));
    out.heading("The working");
    out.add(sheet.day().working(units).toText() + "\n");
    sheet.job().price().ifPresent(price -> {
      DayCost least = price.leastCost(sheet.day());
      DayCost most = price.mostCost(sheet.day());
      for (DayCost cost :
          least.perDay().equals(most.perDay()) ? List.of(most) : List.of(least, most)) {
        out.line("");
        out.add(cost.working(units).toText() + "\n");
      }
    });
    words.explained().ifPresent(use -> {
      out.line("");
      out.line("The lowest moment of " + use);
      for (Working working : sheet.day().workingOfLowest(use, units)) {
        out.line("");
        out.add(working.toText() + "\n");
      }
    });
  }
}
