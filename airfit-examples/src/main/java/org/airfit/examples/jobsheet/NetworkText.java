package org.airfit.examples.jobsheet;

import java.util.Locale;
import org.airfit.line.PipeVelocity;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.PressureUnit;
import org.airfit.quantity.ReferenceState;
import org.airfit.quantity.VelocityUnit;
import org.airfit.quantity.VolumeFlowUnit;

/** The sheet of a network as plain text, with the working. */
final class NetworkText {

  private final StringBuilder out = new StringBuilder();

  private NetworkText() {}

  static String of(NetworkSheet sheet) {
    NetworkText text = new NetworkText();
    text.write(sheet);
    return text.out.toString();
  }

  private void line(String text) {
    out.append(text.stripTrailing()).append('\n');
  }

  private void heading(String text) {
    line("");
    line(text.toUpperCase(Locale.ROOT));
    line("-".repeat(text.length()));
  }

  private void write(NetworkSheet sheet) {
    line("NETWORK  " + sheet.job().title());
    line("for " + sheet.job().customer());
    heading("In short");
    sheet.inShort().forEach(line -> line(line.what() + ": " + line.answer()));
    heading("At the drops, all tools running");
    for (NetworkSheet.Fare fare : sheet.fares()) {
      line("  " + fare.drop().name() + ", " + fare.drop().tool() + ": "
          + InWords.pressure(fare.flow().atTool()) + ", needs "
          + InWords.pressure(fare.drop().needs()) + ": " + fare.verdict() + "; "
          + free(fare)
          + fare.usual()
              .map(usual -> "; in 95 % of its running time at least " + InWords.pressure(usual))
              .orElse(""));
    }
    heading("On the way there");
    for (NetworkSheet.Way way : sheet.ways()) {
      line("  " + way.flow().name() + ": " + flow(way) + ", takes "
          + InWords.drop(way.flow().drop())
          + way.velocity().map(NetworkText::velocity).map(v -> ", " + v).orElse("")
          + (way.flow().chokes() ? ", chokes" : ""));
      way.flow().warnings().forEach(warning -> line("      note: " + warning));
    }
    heading("What to change");
    sheet.cures().forEach(cure -> line("  - " + InWords.sentence(cure, "the weakest drop")));
    heading("One main closed for repair, all tools running");
    sheet.closures().forEach(closure -> line("  - " + closure.pipe() + ": " + closure.answer()));
    heading("Before anyone works on it");
    sheet.cautions().forEach(caution -> line("  - " + caution));
    heading("The working");
    out.append(sheet.all().working().toText()).append('\n');
    line("Pressures stand above an atmosphere of "
        + sheet.job().atmosphere().format(PressureUnit.BAR) + ".");
  }

  /** What a drop gets of the free air it wants. */
  static String free(NetworkSheet.Fare fare) {
    String got = FreeAirFlow.from(fare.flow().massFlow(), ReferenceState.ANR)
        .format(VolumeFlowUnit.LITRE_PER_SECOND, 1);
    return "gets " + got + " of "
        + FreeAirFlow.from(fare.flow().wanted(), ReferenceState.ANR)
            .format(VolumeFlowUnit.LITRE_PER_SECOND, 1);
  }

  static String flow(NetworkSheet.Way way) {
    return InWords.flow(FreeAirFlow.from(way.flow().massFlow(), ReferenceState.ANR));
  }

  static String velocity(PipeVelocity velocity) {
    return velocity.velocity().format(VelocityUnit.METRE_PER_SECOND, 1) + " ("
        + switch (velocity.verdict()) {
          case WITHIN -> "rule: at most ";
          case ABOVE -> "too fast, rule: at most ";
        }
        + velocity.duty().highest().format(VelocityUnit.METRE_PER_SECOND, 1) + ")";
  }
}
