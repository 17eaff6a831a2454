package org.airfit.jobsheet;

import java.util.List;
import org.airfit.air.AirTreatment;
import org.airfit.air.TreatmentRating;
import org.airfit.files.WaterJob;
import org.airfit.plant.ElementCost;
import org.airfit.plant.Payback;
import org.airfit.working.Worked;

/** The sheet of water and purity as plain text, with the working. */
public final class WaterText {

  private final Lines out = new Lines();
  private final WaterSheet sheet;

  private WaterText(WaterSheet sheet) {
    this.sheet = sheet;
  }

  /**
   * Writes the text.
   *
   * @param sheet what is answered
   * @return lines, the working last
   */
  public static String of(WaterSheet sheet) {
    return of(sheet, sheet.inShort());
  }

  /** The same with other lines in short. */
  static String of(WaterSheet sheet, List<Answer> inShort) {
    WaterText text = new WaterText(sheet);
    text.write(inShort);
    return text.out.toString();
  }

  private void write(List<Answer> inShort) {
    out.wrapped("", "WATER AND PURITY  " + sheet.job().title());
    out.wrapped("", "for " + sheet.job().customer());
    out.heading("In short");
    inShort.forEach(line -> out.wrapped("", line.what() + ": " + line.answer()));
    for (WaterJob.Train train : sheet.job().trains()) {
      train(train);
    }
    list("How far this can be trusted", WaterSheet.LIMITS);
    out.heading("Before anyone opens it or trusts the air");
    sheet.cautions().forEach(caution -> out.wrapped("  - ", caution.toString()));
    out.heading("The working");
    sheet.job().trains().forEach(this::working);
  }

  private void train(WaterJob.Train train) {
    out.heading("Train: " + train.name());
    sheet.judged(train).ifPresent(answer -> {
      out.wrapped("", "Purity, asked for " + answer.asked() + ":");
      for (WaterSheet.Reached row : sheet.reached(answer)) {
        out.wrapped(
            "  - ",
            row.what() + ": " + (row.asked().startsWith("not") ? "" : "asked ") + row.asked()
                + ", told " + row.told() + ", "
                + row.verdict().label() + ". " + row.why());
      }
    });
    out.wrapped("", "Water in " + sheet.shift() + ":");
    for (WaterSheet.Water row : sheet.water(train)) {
      out.wrapped(
          "  - ",
          row.place() + ": warm " + row.warm() + "; cold " + row.cold() + "; at most " + row.most()
              + "; " + row.need());
    }
    out.wrapped("  ", sheet.balance(train));
    sheet.undried(train).ifPresent(said -> out.wrapped("  ", said));
    out.wrapped("", "Drains and fall:");
    sheet.drains(train).forEach(line -> out.wrapped("  - ", InWords.capital(line)));
    List<WaterSheet.Loss> losses = sheet.losses(train);
    if (!losses.isEmpty()) {
      out.wrapped("", "Pressure that it takes:");
      for (WaterSheet.Loss row : losses) {
        out.wrapped(
            "  - ",
            row.name() + ": clean " + row.clean() + "; change-out " + row.changeOut()
                + "; in a year " + row.costs() + "; clogged costs more: " + row.extra()
                + "; new element paid back: " + row.paidBack());
      }
      out.wrapped("  ", sheet.lossInAll(train));
    }
  }

  private void list(String heading, List<String> lines) {
    out.heading(heading);
    lines.forEach(line -> out.wrapped("  - ", line));
  }

  private void working(WaterJob.Train train) {
    out.line("Train: " + train.name());
    work(train.treatment().water());
    for (AirTreatment.At at : train.treatment().along()) {
      train.treatment().capacity(at).ifPresent((TreatmentRating.Capacity capacity) -> {
        out.line(at.stage().name());
        work(capacity);
      });
      at.loss().ifPresent(loss -> {
        out.line(at.stage().name());
        work(loss);
      });
    }
    train.mains().forEach(main -> work(main.slope()));
    for (ElementCost cost : train.costs()) {
      work(cost.atChangeOut());
      cost.payback().ifPresent((Payback payback) -> work(payback));
    }
  }

  private void work(Worked worked) {
    out.add(worked.working(sheet.units()).toText() + "\n");
  }
}
