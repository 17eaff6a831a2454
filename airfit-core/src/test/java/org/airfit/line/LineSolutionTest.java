package org.airfit.line;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.airfit.Pencil;
import org.airfit.air.AirState;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.Length;
import org.airfit.quantity.MassFlow;
import org.airfit.quantity.Temperature;
import org.airfit.working.Completeness;
import org.airfit.working.UnitSystem;
import org.junit.jupiter.api.Test;

class LineSolutionTest {

  private static final AirState AIR =
      AirState.of(AbsolutePressure.ofBar(8.0), Temperature.ofCelsius(20.0));
  private static final AbsolutePressure WANTED = AbsolutePressure.ofBar(7.5);
  private static final Conduit HOSE =
      Conduit.of(Length.ofMillimetres(9.5), Length.ofMetres(10.0), Length.ofMillimetres(0.01));
  private static final MassFlow FLOW = MassFlow.ofKilogramsPerSecond(0.02);

  private static void check(LineSolution solution, String answer) {
    Pencil.check(solution);
    Completeness.check(solution);
    for (UnitSystem units : UnitSystem.values()) {
      assertThat(solution.working(units).toText())
          .contains(
              "Found by trial",
              "pressure at the outlet was the one wanted",
              answer,
              "arrives at " + WANTED.format(units.pressureUnit()));
    }
    assertThat(solution.wanted()).isEqualTo(WANTED);
    assertThat(solution.loss().outlet().pressure().bar()).isCloseTo(7.5, within(1.0e-11));
    assertThat(solution.isLimitedByChoking()).isFalse();
  }

  @Test
  void flow_bore_and_length_show_how_they_were_found() {
    LossModel model = LossModels.isothermal();
    check(model.flowFor(HOSE, AIR, WANTED), "The largest flow is ");
    check(model.boreFor(HOSE, FLOW, AIR, WANTED).orElseThrow(), "The smallest bore is ");
    check(model.lengthFor(HOSE, FLOW, AIR, WANTED).orElseThrow(), "The longest line is ");
  }

  @Test
  void where_choking_is_the_limit_it_says_so() {
    LossModel model = LossModels.isothermal();
    AbsolutePressure low = AbsolutePressure.ofBar(0.5);
    LineSolution flow = model.flowFor(HOSE, AIR, low);
    LineSolution bore = model.boreFor(HOSE, FLOW, AIR, low).orElseThrow();
    LineSolution length = model.lengthFor(HOSE, FLOW, AIR, low).orElseThrow();
    assertThat(flow.isLimitedByChoking()).isTrue();
    assertThat(bore.isLimitedByChoking()).isTrue();
    assertThat(length.isLimitedByChoking()).isTrue();
    assertThat(flow).asString().contains("chokes, and no more passes");
    assertThat(bore).asString().contains("chokes in a smaller one");
    assertThat(length).asString().contains("chokes in a longer one");
    for (LineSolution solution : List.of(flow, bore, length)) {
      assertThat(solution.working().toText())
          .contains("choked")
          .doesNotContain("the pressure at the outlet was the one wanted");
    }
    assertThat(flow.massFlow().kilogramsPerSecond())
        .isEqualTo(
            model
                .element(HOSE)
                .largest(
                    AIR.pressure().pascals(),
                    AIR.temperature().kelvins(),
                    AIR.viscosity().pascalSeconds()),
            within(1.0e-15));
  }

  @Test
  void solutions_compare_by_value() {
    LossModel model = LossModels.isothermal();
    LineSolution one = model.flowFor(HOSE, AIR, WANTED);
    assertThat(one)
        .isEqualTo(LossModels.isothermal().flowFor(HOSE, AIR, WANTED))
        .hasSameHashCodeAs(model.flowFor(HOSE, AIR, WANTED))
        .isNotEqualTo(model.flowFor(HOSE, AIR, AbsolutePressure.ofBar(7.4)))
        .isNotEqualTo(new Object());
    assertThat(one.conduit()).isEqualTo(HOSE);
  }

  /**
   * The pressures that are lost have seven digits in bar there, and the Mach numbers four: one does not give the
   * other.
   */
  @Test
  void above_ten_thousand_bar_no_working_is_shown() {
    for (LossModel model : List.of(
        LossModels.fromReservoir(FrictionLaw.MOODY),
        LossModels.of(PipeEquation.ADIABATIC, FrictionLaw.COLEBROOK),
        LossModels.isothermal())) {
      for (double bar : new double[] {9_999.0, 10_001.0, 874_753.5, 6.4e6}) {
        AbsolutePressure begins = AbsolutePressure.ofBar(bar);
        AirState air = AirState.of(begins, Temperature.ofCelsius(20.0));
        for (double share : new double[] {0.9, 0.5, 0.1}) {
          LineSolution solution = model.flowFor(HOSE, air, AbsolutePressure.ofBar(share * bar));
          for (UnitSystem units : UnitSystem.values()) {
            String text = solution.working(units).toText();
            if (bar > 10_000.0) {
              assertThat(text)
                  .contains(" air is no gas any more: above "
                      + AbsolutePressure.ofBar(10_000.0).format(units.pressureUnit())
                      + " the calculation is not shown.");
            } else {
              assertThat(text).doesNotContain("no gas any more").contains("Δp = ");
            }
          }
        }
      }
    }
  }
}
