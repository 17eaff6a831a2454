package org.airfit.jobsheet;

import java.util.List;
import org.airfit.select.FaultEffect;

/** The sheet of a checked price list as plain text. */
public final class PriceListText {

  private final Lines out = new Lines();

  private PriceListText() {}

  /**
   * Writes the text.
   *
   * @param sheet what was found
   * @return lines
   */
  public static String of(PriceListSheet sheet) {
    PriceListText text = new PriceListText();
    text.write(sheet);
    return text.out.toString();
  }

  private void write(PriceListSheet sheet) {
    out.wrapped("", "PRICE LIST  " + sheet.job().title());
    out.wrapped("", "for " + sheet.job().customer());
    out.heading("In short");
    sheet.inShort().forEach(line -> out.wrapped("", line.what() + ": " + line.answer()));
    if (!sheet.unread().isEmpty()) {
      out.heading("Could not be read");
      sheet
          .unread()
          .forEach(row -> out.wrapped("  ", row.get(0) + ", " + row.get(1) + ": " + row.get(2)));
    }
    for (FaultEffect effect : sheet.effects()) {
      out.heading(PriceListSheet.heading(effect));
      for (List<String> row : sheet.faults(effect)) {
        out.wrapped("  ", "[" + row.get(0) + "] " + row.get(1) + ". " + row.get(2));
        out.wrapped("      ", row.get(3));
      }
    }
    out.heading("What was looked at");
    sheet
        .looked()
        .forEach(row -> out.wrapped(
            "  ", row.get(0) + ": " + row.get(1) + " looked at, " + row.get(2) + " found"));
    if (sheet.coverage().isPresent()) {
      out.heading("What would solve more jobs");
      out.wrapped("", sheet.drawn());
      sheet
          .gaps()
          .forEach(row ->
              out.wrapped("  ", row.get(0) + ": " + jobs(row.get(1)) + " more, " + row.get(2)));
      if (sheet.gaps().isEmpty()) {
        out.wrapped("  ", "No single part or figure that was tried solves a job more.");
      }
      if (!sheet.inTheWay().isEmpty()) {
        out.heading("What stands in the way of jobs without a proposal");
        sheet.inTheWay().forEach(row -> out.wrapped("  ", row.get(0) + ": " + jobs(row.get(1))));
      }
    }
    out.heading("How far this can be trusted");
    sheet.limits().forEach(line -> out.wrapped("  - ", line));
    out.heading("Before anything is sold by this list");
    sheet.cautions().forEach(caution -> out.wrapped("  - ", caution.toString()));
    out.line("");
  }

  private static String jobs(String count) {
    return count + (count.equals("1") ? " job" : " jobs");
  }
}
