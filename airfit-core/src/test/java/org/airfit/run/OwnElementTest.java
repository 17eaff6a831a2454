package org.airfit.run;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.airfit.Pencil;
import org.airfit.air.AirState;
import org.airfit.flow.FlowElement;
import org.airfit.flow.FlowElements;
import org.airfit.flow.FlowLoss;
import org.airfit.line.Conduit;
import org.airfit.line.FrictionLaw;
import org.airfit.line.LossModels;
import org.airfit.line.PipeEquation;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.Length;
import org.airfit.quantity.MassFlow;
import org.airfit.quantity.PressureDrop;
import org.airfit.quantity.ReferenceState;
import org.airfit.quantity.Temperature;
import org.airfit.source.Source;
import org.airfit.working.UnitSystem;
import org.junit.jupiter.api.Test;

/** An element of the user's own in a run: the table of a filter, told at 8 bar and 20 °C. */
class OwnElementTest {

  private static final AbsolutePressure ATMOSPHERE = AbsolutePressure.ofBar(1.0);
  private static final AirState EIGHT =
      AirState.of(AbsolutePressure.ofBar(8.0), Temperature.ofCelsius(20.0));
  private static final FlowElement FILTER = FlowElements.ofTable(
      EIGHT,
      List.of(point(0.01, 0.1), point(0.02, 0.5)),
      Source.demo("a filter of no maker, for this test"));
  private static final Run RUN = Run.from(EIGHT, ATMOSPHERE).through("filter", FILTER);

  private static FlowLoss point(double kilogramsPerSecond, double bar) {
    return new FlowLoss(
        FreeAirFlow.from(kg(kilogramsPerSecond), ReferenceState.COMPRESSOR_INLET),
        PressureDrop.ofBar(bar));
  }

  private static MassFlow kg(double kilogramsPerSecond) {
    return MassFlow.ofKilogramsPerSecond(kilogramsPerSecond);
  }

  private static RunResult.Delivered delivered(RunResult result) {
    return (RunResult.Delivered) result;
  }

  @Test
  void at_the_points_of_the_table_it_loses_what_the_table_says() {
    assertThat(delivered(RUN.at(kg(0.01))).lost().bar()).isCloseTo(0.1, within(1.0e-9));
    assertThat(delivered(RUN.at(kg(0.02))).lost().bar()).isCloseTo(0.5, within(1.0e-9));
    ElementLoss loss = delivered(RUN.at(kg(0.01))).shares().get(0);
    assertThat(loss.name()).isEqualTo("filter");
    assertThat(loss.inletMach()).isZero();
    assertThat(loss.outletMach()).isZero();
    assertThat(loss.warnings()).isEmpty();
  }

  /** Half the pressure in front: half the flow has half the loss, as pressure ratio and ṁ √T/p1 are the same. */
  @Test
  void behind_half_the_pressure_half_the_flow_loses_half_as_much() {
    Run half = Run.from(EIGHT.at(AbsolutePressure.ofBar(4.0)), ATMOSPHERE).through("f", FILTER);
    assertThat(delivered(half.at(kg(0.005))).lost().bar()).isCloseTo(0.05, within(1.0e-9));
  }

  @Test
  void beyond_the_table_nothing_passes_and_the_run_says_where() {
    RunResult.Starved starved = (RunResult.Starved) RUN.at(kg(0.0201));
    assertThat(starved.element()).isEqualTo("filter");
    assertThat(starved.largest().kilogramsPerSecond()).isCloseTo(0.02, within(1.0e-12));
    assertThat(starved.working().toText()).contains("0.0201 kg/s from 8 bar(a) is more than it");
    LargestFlow most = RUN.largestFlow(GaugePressure.ofBar(1.0)).orElseThrow();
    assertThat(most.massFlow().kilogramsPerSecond()).isCloseTo(0.02, within(1.0e-12));
    assertThat(most.stopping()).contains("filter");
    assertThat(most.working(UnitSystem.US).toText())
        .contains("filter stops it", "The largest flow is", "psia");
  }

  @Test
  void its_working_tells_the_table_and_its_source() {
    RunResult.Delivered delivered = delivered(RUN.at(kg(0.01)));
    Pencil.check(delivered);
    assertThat(delivered.working().toText())
        .contains("table of 2 points", "8 bar(a), 20 °C", "a filter of no maker", "7.9 bar(a)");
    assertThat(delivered.working(UnitSystem.US).toText())
        .contains("table of 2 points up to ", " cfm ISO 1217 gives it")
        .doesNotContain("m³/s");
  }

  @Test
  void the_working_of_a_worn_one_tells_the_table_and_that_it_is_worn() {
    assertThat(delivered(RUN.withLossFactor(2.0).withLossFactor(2.0).at(kg(0.005)))
            .working()
            .toText())
        .contains("table of 2 points", "worn or dirty", "at 2 times the flow");
    assertThat(delivered(RUN.withLossFactor(1.0).at(kg(0.005))).working().toText())
        .contains("table of 2 points")
        .doesNotContain("worn");
  }

  /**
   * The loss goes with the square of the flow below the first point: twice the loss is twice the drop, to what the
   * table bends there.
   */
  @Test
  void a_worn_one_loses_more() {
    double clean = delivered(RUN.at(kg(0.005))).lost().pascals();
    double worn = delivered(RUN.withLossFactor(2.0).at(kg(0.005))).lost().pascals();
    assertThat(worn).isCloseTo(2.0 * clean, within(1.0e-9 * clean));
    assertThat(RUN.withLossFactor(4.0).at(kg(0.0101))).isInstanceOf(RunResult.Starved.class);
    assertThat(RUN.withLossFactor(4.0).at(kg(0.0099))).isInstanceOf(RunResult.Delivered.class);
    assertThat(RUN.withLossFactor(2.0)).isEqualTo(RUN.withLossFactor(2.0)).isNotEqualTo(RUN);
  }

  @Test
  void a_worn_element_keeps_the_contract() {
    WornElement worn = new WornElement(FILTER, 1.5);
    double p = 7.0e5;
    double t = 280.0;
    double viscosity = 1.8e-5;
    double largest = worn.largest(p, t, viscosity);
    assertThat(worn.outlet(largest * (1.0 - 1.0e-9), p, t, viscosity)).isPositive();
    assertThat(worn.outlet(largest * (1.0 + 1.0e-9), p, t, viscosity)).isNaN();
    double flow = 0.4 * largest;
    double step = 1.0e-5 * flow;
    double difference =
        (worn.outlet(flow + step, p, t, viscosity) - worn.outlet(flow - step, p, t, viscosity))
            / (2.0 * step);
    assertThat(worn.slope(flow, p, t, viscosity))
        .isCloseTo(difference, within(1.0e-6 * -difference));
    assertThat(worn.outletKelvins(flow, p, t, viscosity)).isEqualTo(t);
    assertThat(worn.nextJump(0.0, viscosity)).isInfinite();
    FlowElement line = Run.from(EIGHT, ATMOSPHERE)
        .through("l", hose())
        .path()
        .elements()
        .get(0)
        .flow();
    FlowElement adiabatic =
        LossModels.of(PipeEquation.ADIABATIC, FrictionLaw.COLEBROOK).element(hose());
    FlowElement half = new WornElement(adiabatic, 2.0);
    assertThat(half.outletKelvins(0.01, p, t, viscosity))
        .isEqualTo(adiabatic.outletKelvins(0.02, p, t, viscosity))
        .isLessThan(t);
    assertThat(half.largest(p, t, viscosity)).isEqualTo(0.5 * adiabatic.largest(p, t, viscosity));
    assertThat(new WornElement(line, 2.0).nextJump(0.0, viscosity))
        .isEqualTo(0.5 * line.nextJump(0.0, viscosity));
  }

  private static Conduit hose() {
    return Conduit.of(Length.ofMillimetres(9.5), Length.ofMetres(10.0), Length.ofMillimetres(0.01));
  }

  @Test
  void it_is_left_out_of_the_sensitivities_and_by_no_model() {
    Run both = RUN.through("hose", hose());
    assertThat(both.sensitivities(kg(0.008)))
        .extracting(Sensitivity::element)
        .contains("hose", "the run")
        .doesNotContain("filter");
    assertThat(RUN.by(LossModels.isothermal())).isEqualTo(RUN);
  }
}
