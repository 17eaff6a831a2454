package org.airfit.run;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.stream.Stream;
import org.airfit.Comparison;
import org.airfit.Evidence;
import org.airfit.Rows;
import org.airfit.air.AirState;
import org.airfit.flow.FlowCapacity;
import org.airfit.line.Conduit;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.Length;
import org.airfit.quantity.PressureDrop;
import org.airfit.quantity.Temperature;
import org.airfit.quantity.ValveCoefficient;
import org.airfit.working.UnitSystem;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Losses printed in handbooks, read as if by gauges that are nearly perfect: the bore, the air, the leak behind them. */
class DiagnosisPublishedTest {

  private static final String CHAPTER = "Diagnosis by gauges";

  private static final AbsolutePressure ATMOSPHERE = AbsolutePressure.ofPsi(14.7);

  /** The table's own drops leave a smooth curve of its formula by up to 3 %, and the drop goes with d⁻⁵ and q^1.8. */
  private static final String SPREAD =
      "the drops printed leave the table's own formula by up to 3 %,"
          + " which is 0.6 % of a bore and 1.7 % of a flow; and the table takes the flow as incompressible,"
          + " 4 % of the largest drops";

  private static final PressureGauge FINE = new PressureGauge(
      "fine", GaugePressure.ofPsi(200.0), PressureDrop.ofPsi(0.002), PressureDrop.ofPsi(0.001));

  static Stream<Rows.Row> rows() {
    return Rows.of(DiagnosisPublishedTest.class, "/org/airfit/line/air_flow_sch40_published.csv")
        .filter(row -> row.number("published_dp_psi_per_100ft") > 1.5
            && row.number("published_dp_psi_per_100ft") < 6.0
            && !row.has("note")
            && List.of("1/2", "3/4", "1", "1-1/4").contains(row.text("nps")));
  }

  private static Run pipe(double boreInches, double feet, double psig, double fahrenheit) {
    AirState air =
        AirState.of(AbsolutePressure.ofPsi(psig + 14.7), Temperature.ofFahrenheit(fahrenheit));
    return Run.from(air, ATMOSPHERE)
        .through(
            "pipe",
            Conduit.of(Length.ofInches(boreInches), Length.ofFeet(feet), Length.ofInches(0.0018)));
  }

  private static GaugeTest exactly(Run run, double scfm) {
    return GaugeTest.of(run, ToolDemand.fixed("tool", FreeAirFlow.ofScfm60F(scfm)))
        .withLossKnownWithin(run.names().get(0), 0.0)
        .withToolAirKnownWithin(0.0)
        .withSupplyHolding(PressureDrop.ofPascals(0.0));
  }

  private static List<GaugeReading> shown(String element, double psig, double drop) {
    return List.of(
        new GaugeReading(FINE, "supply", ToolState.AT_REST, GaugePressure.ofPsi(psig)),
        new GaugeReading(FINE, "supply", ToolState.RUNNING, GaugePressure.ofPsi(psig)),
        new GaugeReading(FINE, element, ToolState.AT_REST, GaugePressure.ofPsi(psig)),
        new GaugeReading(FINE, element, ToolState.RUNNING, GaugePressure.ofPsi(psig - drop)));
  }

  private static Explanation only(Diagnosis found, SuspectKind kind) {
    return found.explanations().stream()
        .filter(each -> each.suspect().kind() == kind)
        .findFirst()
        .orElseThrow();
  }

  /** The pipe is told as 1.3 times as wide as it is: its bore comes from the loss printed. */
  @ParameterizedTest
  @MethodSource("rows")
  void the_bore_of_a_pipe_follows_from_a_printed_loss(Rows.Row row) {
    double bore = row.number("id_in");
    double scfm = row.number("free_air_scfm");
    Diagnosis found = exactly(pipe(1.3 * bore, 100.0, 100.0, 60.0), scfm)
        .unmarked("pipe")
        .read(shown("pipe", 100.0, row.number("published_dp_psi_per_100ft")));
    Comparison.of(
            CHAPTER,
            "bore by the loss of " + scfm + " scfm in 100 ft of " + row.text("nps"),
            bore,
            "in",
            row.evidence("id_in"))
        .isMetWithinFraction(
            only(found, SuspectKind.BORE).bore().orElseThrow().best().inches(), 0.014, SPREAD);
  }

  /** The tool is told to take two fifths of its air: what it takes comes from the loss printed. */
  @ParameterizedTest
  @MethodSource("rows")
  void the_air_of_a_tool_follows_from_a_printed_loss(Rows.Row row) {
    double scfm = row.number("free_air_scfm");
    Diagnosis found = exactly(pipe(row.number("id_in"), 100.0, 100.0, 60.0), scfm / 2.5)
        .suspecting(List.of(Suspect.toolAir()))
        .read(shown("pipe", 100.0, row.number("published_dp_psi_per_100ft")));
    Comparison.of(
            CHAPTER,
            "air by the loss in 100 ft of " + row.text("nps") + " at " + scfm + " scfm",
            scfm,
            "scfm",
            row.evidence("free_air_scfm"))
        .isMetWithinFraction(
            only(found, SuspectKind.TOOL_AIR).air().orElseThrow().best().cubicFeetPerMinute(),
            0.036,
            SPREAD);
  }

  /** The tool takes two fifths of the air of the table, a leak at the end of the pipe the rest. */
  @ParameterizedTest
  @MethodSource("rows")
  void a_leak_follows_from_a_printed_loss(Rows.Row row) {
    double scfm = row.number("free_air_scfm");
    double drop = row.number("published_dp_psi_per_100ft");
    List<GaugeReading> running = shown("pipe", 100.0, drop).stream()
        .filter(reading -> reading.state() == ToolState.RUNNING)
        .toList();
    Diagnosis found = exactly(pipe(row.number("id_in"), 100.0, 100.0, 60.0), 0.4 * scfm)
        .suspecting(List.of(Suspect.leakBehind("pipe")))
        .read(running);
    double atSupply = only(found, SuspectKind.LEAK).air().orElseThrow().best().cubicFeetPerMinute();
    // it is told at the pressure of the supply, and escapes at that behind the pipe
    double escapes = atSupply * (114.7 - drop) / 114.7;
    Comparison.of(
            CHAPTER,
            "tool and leak by the loss in 100 ft of " + row.text("nps") + " at " + scfm + " scfm",
            scfm,
            "scfm",
            row.evidence("free_air_scfm"))
        .isMetWithinFraction(0.4 * scfm + escapes, 0.036, SPREAD);
  }

  @Test
  void the_air_of_a_worked_example_follows_from_its_loss() {
    Diagnosis found = exactly(pipe(1.049, 75.0, 65.0, 110.0), 45.0)
        .suspecting(List.of(Suspect.toolAir()))
        .read(shown("pipe", 65.0, 2.61));
    Comparison.of(
            CHAPTER,
            "TP-410 example 7.16: air by the loss in 75 ft of 1 in pipe at 65 psig",
            100.0,
            "scfm",
            Evidence.printed(
                "TP-410 ch.7 example as transcribed in Debian python-fluids-doc 1.0.22 (solved problems)"))
        .isMetWithinFraction(
            only(found, SuspectKind.TOOL_AIR).air().orElseThrow().best().cubicFeetPerMinute(),
            0.02,
            "the example takes its drop from a table printed to three digits, and the flow as incompressible:"
                + " 2.7 % of the drop");
  }

  /** At rest 118 psig, 44 at work: by one place alone nothing on the way there can be told from the rest. */
  @Test
  void a_saw_read_at_its_inlet_alone_leaves_several_explanations() {
    Run run = Run.from(
            AirState.of(AbsolutePressure.ofPsi(132.7), Temperature.ofCelsius(20.0)), ATMOSPHERE)
        .through("coupling", FlowCapacity.ofValveCoefficient(ValveCoefficient.ofCv(2.5), 0.6))
        .through(
            "hose",
            Conduit.of(Length.ofInches(0.5), Length.ofFeet(30.0), Length.ofMillimetres(0.02)));
    PressureGauge gauge = PressureGauge.ofClass(
        "gauge", GaugeClass.CLASS_1_6, GaugePressure.ofPsi(160.0), PressureDrop.ofPsi(2.0));
    Diagnosis found = GaugeTest.of(
            run,
            ToolDemand.following("saw", FreeAirFlow.ofScfm60F(40.0), AbsolutePressure.ofPsi(104.7)))
        .read(List.of(
            new GaugeReading(gauge, "hose", ToolState.AT_REST, GaugePressure.ofPsi(118.0)),
            new GaugeReading(gauge, "hose", ToolState.RUNNING, GaugePressure.ofPsi(44.0))));
    assertThat(found.verdict()).isEqualTo(DiagnosisVerdict.SEVERAL);
    assertThat(found.alike())
        .extracting(Explanation::suspect)
        .contains(Suspect.part("coupling"), Suspect.bore("hose"));
    assertThat(found.next()).isPresent();
    assertThat(found.inWords(UnitSystem.US).get(0)).contains("cannot be told apart");
  }

  /**
   * A plant profile of 125 psig at the compressor, 115 behind dryer and filters, 110 at the far end. Told is a dryer
   * that loses 4 psi, and a pipe that loses 5: the dryer it is most probably, the pipe hardly. The parts and the air are ours.
   */
  @Test
  void a_dryer_that_loses_ten_psi_is_the_most_probable() {
    PressureGauge gauge = PressureGauge.ofClass(
        "gauge", GaugeClass.CLASS_0_25, GaugePressure.ofPsi(160.0), PressureDrop.ofPsi(0.5));
    AirState air = AirState.of(AbsolutePressure.ofPsi(139.7), Temperature.ofFahrenheit(60.0));
    Run plain = Run.from(air, ATMOSPHERE)
        .through(
            "dryer",
            FlowCapacity.ofRatedFlow(
                FreeAirFlow.ofScfm60F(150.0),
                AbsolutePressure.ofPsi(139.7),
                PressureDrop.ofPsi(4.0),
                Temperature.ofFahrenheit(60.0),
                0.4))
        .through(
            "pipe",
            // 150 scfm lose 4.87 psi in 100 ft of 1 in at 100 psig, here the air is denser
            Conduit.of(Length.ofInches(1.049), Length.ofFeet(116.0), Length.ofInches(0.0018)));
    Diagnosis found = GaugeTest.of(plain, ToolDemand.fixed("plant", FreeAirFlow.ofScfm60F(150.0)))
        .withToolAirKnownWithin(0.05)
        .suspecting(List.of(Suspect.part("dryer"), Suspect.bore("pipe"), Suspect.toolAir()))
        .read(List.of(
            new GaugeReading(gauge, "supply", ToolState.RUNNING, GaugePressure.ofPsi(125.0)),
            new GaugeReading(gauge, "dryer", ToolState.RUNNING, GaugePressure.ofPsi(115.0)),
            new GaugeReading(gauge, "pipe", ToolState.RUNNING, GaugePressure.ofPsi(110.0))));
    assertThat(found.explanations().get(0).suspect()).isEqualTo(Suspect.part("dryer"));
    assertThat(found.explanations().get(0).probability()).isGreaterThan(0.8);
    assertThat(only(found, SuspectKind.BORE).probability()).isLessThan(0.02);
  }
}
