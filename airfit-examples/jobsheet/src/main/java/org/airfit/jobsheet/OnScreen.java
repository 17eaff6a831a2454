package org.airfit.jobsheet;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import org.airfit.files.Printable;
import org.airfit.files.Refusal;
import org.airfit.plug.Identification;
import org.airfit.quantity.GaugePressure;
import org.airfit.run.ElementLoss;
import org.airfit.run.RunResult;
import org.airfit.safety.Caution;
import org.airfit.select.BillOfMaterials;
import org.airfit.select.Offer;
import org.airfit.select.Proposal;
import org.airfit.working.UnitSystem;

/** The words and the pictures of a sheet, piece by piece: for a screen that lays them out in its own way. */
public final class OnScreen {

  private OnScreen() {}

  /**
   * The pressure along a run, drawn twice; what it shows in words is the label of both.
   *
   * @param wide an SVG element for a wide screen
   * @param narrow an SVG element for a telephone
   */
  public record Chart(String wide, String narrow) {

    /**
     * Refuses what is null.
     *
     * @param wide an SVG element for a wide screen
     * @param narrow an SVG element for a telephone
     */
    public Chart {
      Objects.requireNonNull(wide, "wide");
      Objects.requireNonNull(narrow, "narrow");
    }
  }

  /**
   * Tells what a plug is, as the sheet to hand over does.
   *
   * @param plug the answer
   * @param units the units
   * @return a sentence or two
   */
  public static String plugIs(Identification plug, UnitSystem units) {
    return PageFound.plugIs(plug, units);
  }

  /**
   * Tells what is still open of a plug.
   *
   * @param plug the answer
   * @param units the units
   * @return sentences; empty where nothing is
   */
  public static String plugAsks(Identification plug, UnitSystem units) {
    return PageFound.plugAsks(plug, units);
  }

  /**
   * Tells what a plug may be: profiles, slips, near copies, none of these.
   *
   * @param plug the answer
   * @return the chance of each, together 1
   */
  public static Map<String, Double> chances(Identification plug) {
    return InWords.chances(plug);
  }

  /**
   * Tells what was taken for granted of a plug.
   *
   * @param plug the answer
   * @param units the units
   * @return sentences
   */
  public static String takenForGranted(Identification plug, UnitSystem units) {
    return InWords.takenForGranted(plug, units);
  }

  /**
   * Tells what was found, line by line.
   *
   * @param sheet the answers to a job
   * @return the lines
   */
  public static List<Answer> found(JobSheet sheet) {
    return PageFound.found(sheet);
  }

  /**
   * Tells what must be asked, measured or tried.
   *
   * @param sheet the answers to a job
   * @return each once
   */
  public static List<String> open(JobSheet sheet) {
    return PageFound.open(sheet);
  }

  /**
   * Tells what a rule forbids or the parts do not meet.
   *
   * @param sheet the answers to a job
   * @return each once
   */
  public static List<String> wrong(JobSheet sheet) {
    return PageFound.wrong(sheet);
  }

  /**
   * Tells how the job and the catalogue were read, where that may be meant otherwise.
   *
   * @param sheet the answers to a job
   * @return the remarks
   */
  public static List<Answer> remarks(JobSheet sheet) {
    return InWords.readOtherwise(sheet);
  }

  /**
   * Tells every caution of a job: to depressurise first, the one that defers to codes and makers last.
   *
   * @param sheet the answers to a job
   * @return each once
   */
  public static List<Caution> cautions(JobSheet sheet) {
    return InWords.cautions(sheet);
  }

  /**
   * Tells what else can be offered; what the shop earns is not for a screen that a customer sees.
   *
   * @param sheet the answers to a job
   * @return the offers; empty where the job tells no figures of a year
   */
  public static List<String> offers(JobSheet sheet) {
    return sheet
        .offers()
        .map(offers -> offers.offers().stream()
            .filter(offer -> !offer.aims().equals(Set.of(Offer.Aim.MOST_MARGIN)))
            .map(InWords::offer)
            .toList())
        .orElse(List.of());
  }

  /**
   * Obtains all that a proposal takes.
   *
   * @param sheet the answers to a job
   * @param proposal one of its proposals
   * @return the bill, in the units of the sheet
   */
  public static BillOfMaterials bill(JobSheet sheet, Proposal proposal) {
    return InWords.bill(sheet, proposal);
  }

  /**
   * Tells what a bill sums to.
   *
   * @param bill the bill
   * @param proposal the proposal it is of
   * @return a sentence or two; empty where no price is known
   */
  public static Optional<String> together(BillOfMaterials bill, Proposal proposal) {
    return InWords.together(bill, proposal);
  }

  /**
   * Tells what arrives with the parts of a proposal, against what is needed.
   *
   * @param sheet the answers to a job
   * @param proposal one of its proposals
   * @return a sentence, one for each tool
   */
  public static String arrives(JobSheet sheet, Proposal proposal) {
    return InWords.arrives(proposal, sheet);
  }

  /**
   * Tells what arrives with what is connected now, against what is needed.
   *
   * @param sheet the answers to a job
   * @return a sentence, and what to ask where it depends on what is not known; blank where nothing was told
   */
  public static String arrivesNow(JobSheet sheet) {
    return InWords.arrivesNow(sheet);
  }

  /**
   * Tells what arrives with what is connected now, where no need was told.
   *
   * @param sheet the answers to a job
   * @return a sentence, with both ends where not all is known; blank where nothing was told
   */
  public static String arrivesWithoutNeed(JobSheet sheet) {
    return InWords.arrivesWithoutNeed(sheet);
  }

  /**
   * Tells what is connected now carries at the pressure the tool needs.
   *
   * @param sheet the answers to a job
   * @return sentences; blank where nothing was told
   */
  public static String carriesNow(JobSheet sheet) {
    return InWords.carriesNow(sheet).orElse("");
  }

  /**
   * Tells what wider hoses would bring, where the tool has too little and a hose is the biggest restriction.
   *
   * @param sheet the answers to a job
   * @param now what arrives now
   * @return sentences; empty where no hose is to blame
   */
  public static Optional<String> widerHose(JobSheet sheet, RunResult now) {
    return InWords.widerHose(sheet, now);
  }

  /**
   * Tells what is to be known of one element's loss.
   *
   * @param sheet the answers to a job
   * @param share the loss
   * @return sentences; empty for most
   */
  public static List<String> notes(JobSheet sheet, ElementLoss share) {
    List<String> notes = new ArrayList<>();
    InWords.regulated(share, sheet).ifPresent(notes::add);
    notes.addAll(share.warnings(sheet.units()));
    return List.copyOf(notes);
  }

  /**
   * Tells what the regulator at the supply loses in front of the first part, for the table of losses.
   *
   * @param sheet the sheet
   * @param result what arrives
   * @return the row; empty where no regulator stands at the supply
   */
  public static Optional<AtSupply> atSupply(JobSheet sheet, RunResult result) {
    return InWords.atSupply(result, sheet)
        .map(regulator -> new AtSupply(
            InWords.AT_SUPPLY,
            sheet.units().say(regulator.lost()),
            regulator.set(),
            regulator.note(sheet.units())));
  }

  /**
   * What the regulator at the supply loses in front of the first part.
   *
   * @param name what the row is called
   * @param loss by how much less stands behind it than it is set to
   * @param set what it is set to
   * @param note that its loss is not among those that the shares are of
   */
  public record AtSupply(String name, String loss, GaugePressure set, String note) {

    /**
     * Refuses what is null.
     *
     * @param name what the row is called
     * @param loss by how much less stands behind it than it is set to
     * @param set what it is set to
     * @param note that its loss is not among those that the shares are of
     */
    public AtSupply {
      Objects.requireNonNull(name, "name");
      Objects.requireNonNull(loss, "loss");
      Objects.requireNonNull(set, "set");
      Objects.requireNonNull(note, "note");
    }
  }

  /**
   * Tells a part of a whole, such as "42 %".
   *
   * @param fraction the part of 1
   * @return the share in percent; what is not nothing is never told as 0 %
   */
  public static String share(double fraction) {
    return Amounts.share(fraction);
  }

  /**
   * Tells a chance, such as "&gt; 99.9 %".
   *
   * @param probability the chance
   * @return the chance in percent, never 0 % or 100 %
   */
  public static String percent(double probability) {
    return Amounts.percent(probability);
  }

  /**
   * Draws the pressure along a run of a job; all charts of a job share their scale.
   *
   * @param sheet the answers to a job
   * @param title what the run is, such as "Now"
   * @param result what it delivers
   * @return the drawings
   */
  public static Chart chart(JobSheet sheet, String title, RunResult result) {
    return chart(
        sheet, title, result, Optional.of(sheet.requirement().least()), InWords.scale(sheet));
  }

  /**
   * Draws the pressure along a run of which nobody said what the tool needs.
   *
   * @param sheet the answers to a job
   * @param title what the run is
   * @param result what it delivers
   * @return the drawings, without what the tool needs
   */
  public static Chart chartWithoutNeed(JobSheet sheet, String title, RunResult result) {
    return chart(
        sheet,
        title,
        result,
        Optional.empty(),
        PressureChart.Scale.of(
            List.of(result),
            sheet.job().supply().pressure(),
            sheet.job().atmosphere(),
            Optional.empty(),
            sheet.units()));
  }

  private static Chart chart(
      JobSheet sheet,
      String title,
      RunResult result,
      Optional<GaugePressure> need,
      PressureChart.Scale scale) {
    String whole = title + ": pressure from the supply to the tool";
    return new Chart(
        PressureChart.of(whole, result, sheet.job().atmosphere(), need, scale, false),
        PressureChart.of(whole, result, sheet.job().atmosphere(), need, scale, true));
  }

  /**
   * Obtains the style of charts: rules for a style sheet, in which the custom properties {@code --ink}, {@code --soft},
   * {@code --hair}, {@code --run}, {@code --warn} and {@code --paper} are colours that the page sets; a chart stands in a
   * figure of class "chart".
   *
   * @return CSS
   */
  public static String chartStyle() {
    return PageStyle.CHART;
  }

  /**
   * Writes the sheet of a file that is not for compressed air, as text.
   *
   * @param refusal the refusal
   * @return the text
   */
  public static String text(Refusal refusal) {
    return RefusalSheet.text(refusal);
  }

  /**
   * Writes the sheet of a file that is not for compressed air, as a page.
   *
   * @param refusal the refusal
   * @param head the shop, the number of the job and the date
   * @return one HTML file that needs no other
   */
  public static String page(Refusal refusal, Letterhead head) {
    return Printable.lines(RefusalSheet.page(refusal, head));
  }
}
