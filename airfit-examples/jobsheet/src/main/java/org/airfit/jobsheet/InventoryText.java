package org.airfit.jobsheet;

import java.util.List;

/** The sheet of an inventory of couplings as plain text. */
public final class InventoryText {

  private final Lines out = new Lines();

  private InventoryText() {}

  /**
   * Writes the text.
   *
   * @param sheet what is answered
   * @return lines
   */
  public static String of(InventorySheet sheet) {
    InventoryText text = new InventoryText();
    text.write(sheet);
    return text.out.toString();
  }

  private void write(InventorySheet sheet) {
    out.wrapped("", "COUPLINGS  " + sheet.job().title());
    out.wrapped("", "for " + sheet.job().customer());
    out.heading("In short");
    sheet.inShort().forEach(line -> out.wrapped("", line.what() + ": " + line.answer()));
    list("Each bay", sheet.baysInWords());
    if (!sheet.stops().isEmpty()) {
      list("What to take from the shelf and to buy", sheet.purchasesInWords());
      out.heading("In which order");
      out.wrapped("", InventorySheet.ORDER);
      int number = 1;
      for (InventorySheet.Stop stop : sheet.stops()) {
        out.wrapped("  ", number++ + ". " + stop.what());
        out.wrapped("     ", stop.gain());
        stop.until().forEach(line -> out.wrapped("     - ", line));
      }
    }
    list("The air at each tool", sheet.air());
    out.heading("What can be plugged together wrongly today");
    for (List<String> row : sheet.wrongToday()) {
      out.wrapped(
          "  ",
          "plug " + row.get(0) + " in socket " + row.get(1) + ": " + row.get(2) + "; ways: "
              + row.get(3));
    }
    if (sheet.wrongToday().isEmpty()) {
      out.wrapped("  ", sheet.noneWrong());
    }
    list("Sizes of pairs that nobody told of; they do not tell what happens", sheet.sizes());
    list("Why others are not kept", sheet.notKept());
    out.heading("Spare pieces");
    out.wrapped("", sheet.spareInWords());
    sheet
        .spare(/* isAfter= */ true)
        .forEach(row -> out.wrapped(
            "  ", row.get(0) + ": " + row.get(2) + " spare for " + row.get(1) + " in use"));
    out.heading("How far this can be trusted");
    InventorySheet.LIMITS.forEach(line -> out.wrapped("  - ", line));
    out.heading("Before anyone changes a coupling");
    sheet.cautions().forEach(caution -> out.wrapped("  - ", caution.toString()));
    out.line("");
  }

  private void list(String heading, List<String> lines) {
    if (!lines.isEmpty()) {
      out.heading(heading);
      lines.forEach(line -> out.wrapped("  ", line));
    }
  }
}
