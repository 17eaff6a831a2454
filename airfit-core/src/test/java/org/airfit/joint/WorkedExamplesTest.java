package org.airfit.joint;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Objects;
import java.util.function.DoubleSupplier;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.airfit.Comparison;
import org.airfit.Evidence;
import org.airfit.Rows;
import org.airfit.Rows.Row;
import org.airfit.ThreadTables;
import org.airfit.quantity.Length;
import org.airfit.quantity.NominalThreadSize;
import org.airfit.thread.BsppThread;
import org.airfit.thread.BsptThread;
import org.airfit.thread.Gender;
import org.airfit.thread.Limits;
import org.airfit.thread.NpscThread;
import org.airfit.thread.NptThread;
import org.airfit.thread.RpThread;
import org.airfit.thread.ThreadForm;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Worked examples of the trade's pages and handbooks. */
class WorkedExamplesTest {

  private static final Map<String, DoubleSupplier> OURS = new LinkedHashMap<>();

  static {
    NptThread half = NptThread.of(NominalThreadSize.ONE_HALF);
    NptThread threeQuarters = NptThread.of(NominalThreadSize.THREE_QUARTERS);
    NptThread one = NptThread.of(NominalThreadSize.ONE);
    NptThread quarter = NptThread.of(NominalThreadSize.ONE_QUARTER);
    NptThread eightPerInch = NptThread.of(NominalThreadSize.THREE);
    Tube copper = Tube.of(Tube.Kind.COPPER_TUBE, "3/4", "L");
    OURS.put("W01", () -> half.pitchDiameterAtSmallEnd().inches());
    OURS.put("W02", () -> threeQuarters.effectiveLength().inches());
    OURS.put("W03", () -> one.pitchDiameterAtHandTight().inches());
    OURS.put(
        "W04",
        () -> quarter.section(Gender.MALE, Length.ofInches(0.200)).pitch().inches());
    OURS.put(
        "W05",
        () -> threeQuarters
            .section(Gender.MALE, threeQuarters.fullCrestLength())
            .major()
            .inches());
    OURS.put("W06", () -> one.fullCrestLength().inches());
    OURS.put("W07", ThreadForm::coneHalfAngleDegrees);
    OURS.put("W08", () -> eightPerInch.sharpHeight().inches());
    OURS.put("W09", () -> 0.125 * ThreadForm.FLAT_60.taperSharpHeightOverPitch());
    OURS.put("W10", () -> half.diameterPerTurn().inches());
    OURS.put("W11", () -> half.handTightLength().plus(half.wrenchLength()).inches());
    OURS.put(
        "W12",
        () -> NpscThread.of(NominalThreadSize.ONE_HALF).pitchDiameter().least().inches());
    OURS.put("W13", () -> ThreadForm.ROUND_55.heightOverPitch() * 1.814);
    OURS.put(
        "W14", () -> BsppThread.of(NominalThreadSize.ONE_HALF).pitchDiameter().millimetres());
    OURS.put(
        "W15",
        () -> BsptThread.of(NominalThreadSize.ONE_QUARTER)
            .section(Gender.MALE, ThreadTables.END)
            .major()
            .millimetres());
    OURS.put(
        "W16", () -> BsptThread.of(NominalThreadSize.ONE_HALF).usefulLength().millimetres());
    OURS.put(
        "W17",
        () -> RpThread.of(NominalThreadSize.ONE_QUARTER).diameterTolerance().millimetres());
    OURS.put(
        "W18",
        () -> BsppThread.of(NominalThreadSize.ONE_QUARTER)
            .maleMajorDiameter()
            .least()
            .millimetres());
    OURS.put(
        "W19",
        () -> new HoseBend(90.0, Length.ofMillimetres(450.0), Length.ofMillimetres(70.0))
            .length()
            .millimetres());
    OURS.put("W20", () -> copper.boreArea().squareInches());
    OURS.put("W21", () -> copper.boreArea().squareInches() / 144.0);
    OURS.put(
        "W22",
        () -> 4.0
            * new ThreadMismatch(quarter, BsppThread.of(NominalThreadSize.ONE_QUARTER))
                .pitchDifference()
                .millimetres());
    OURS.put(
        "W23", () -> Tube.steelPipe(NominalThreadSize.ONE_QUARTER, 80).bore().millimetres());
  }

  static Stream<Row> examples() {
    return Rows.of(WorkedExamplesTest.class, "worked_examples.csv")
        .filter(row -> OURS.containsKey(row.text("id")));
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("examples")
  void an_example_comes_out_as_printed(Row row) {
    Matcher number = Pattern.compile("[0-9]+\\.[0-9]+").matcher(row.text("expected"));
    assertThat(number.find()).isTrue();
    double printed = Double.parseDouble(number.group());
    boolean told = row.has("tolerance");
    Comparison.of(
            "Threads: worked examples",
            row + ": " + row.text("topic") + ", " + row.text("given"),
            printed,
            row.has("unit") ? row.text("unit") : "mm",
            row.source().contains("prints")
                ? Evidence.printed(row.text("source"))
                : row.evidence("expected"))
        .isMetBy(
            Objects.requireNonNull(OURS.get(row.text("id"))).getAsDouble(),
            told ? row.number("tolerance") * (1.0 + 1.0e-9) : 0.0005,
            told ? "tolerance of the example" : "digits printed");
  }

  @Test
  void every_example_is_here() {
    assertThat(Rows.of(WorkedExamplesTest.class, "worked_examples.csv")
            .filter(row -> !OURS.containsKey(row.text("id")))
            .map(Row::toString))
        .isEmpty();
  }

  @Test
  void second_answers_of_an_example_come_out_as_well() {
    Limits npsc = NpscThread.of(NominalThreadSize.ONE_HALF).pitchDiameter();
    assertThat(npsc.most().inches()).isBetween(0.78505, 0.78515); // W12 prints 0.7851
    BsppThread half = BsppThread.of(NominalThreadSize.ONE_HALF);
    assertThat(half.minorDiameter().millimetres()).isBetween(18.6305, 18.6315); // W14 prints 18.631
    double ratio = Tube.steelPipe(NominalThreadSize.ONE_QUARTER, 80).boreArea().squareMillimetres()
        / Tube.steelPipe(NominalThreadSize.ONE_QUARTER, 40).boreArea().squareMillimetres();
    assertThat(ratio).isBetween(0.6875, 0.6885); // W23 prints 0.688
  }
}
