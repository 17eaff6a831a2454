package org.airfit.plant;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import org.airfit.air.AirState;
import org.airfit.flow.CapacityRange;
import org.airfit.flow.FlowCapacity;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.MassFlow;
import org.airfit.quantity.PressureDrop;
import org.airfit.quantity.Range;
import org.airfit.quantity.SonicConductance;
import org.airfit.quantity.Temperature;
import org.airfit.working.UnitSystem;
import org.junit.jupiter.api.Test;

/** 6 bar at no flow, 5.7 bar at 10 L/s, 5.2 bar at 30 L/s: straight lines between them, by hand, and nothing behind. */
class RegulatorCurveTest {

  private static final AbsolutePressure AROUND = AbsolutePressure.ofBar(1.0);
  private static final CapacityRange WIDE = CapacityRange.exactly(
      FlowCapacity.of(SonicConductance.ofCubicDecimetresPerSecondBar(50.0), 0.3));
  private static final RegulatorCurve CURVE = curve(0.0, 6.0, 10.0, 5.7, 30.0, 5.2);

  private static RegulatorCurve curve(double... litresAndBars) {
    List<RegulatorCurve.Point> points = new ArrayList<>();
    for (int i = 0; i < litresAndBars.length; i += 2) {
      points.add(new RegulatorCurve.Point(
          FreeAirFlow.ofAnrLitresPerSecond(litresAndBars[i]),
          GaugePressure.ofBar(litresAndBars[i + 1])));
    }
    return new RegulatorCurve(points);
  }

  private static MassFlow flow(double litres) {
    return FreeAirFlow.ofAnrLitresPerSecond(litres).massFlow();
  }

  /** What stands behind it [bar(g)], with 9 bar(a) in front. */
  private static double behind(RegulatorElement element, double litres) {
    return element.outlet(flow(litres).kilogramsPerSecond(), 9.0e5, 293.15, 1.8e-5) / 1.0e5 - 1.0;
  }

  private static RegulatorElement atWorst(double setBar) {
    return RegulatorRange.ofCurve(WIDE, CURVE).atWorst(GaugePressure.ofBar(setBar), AROUND);
  }

  private static RegulatorElement atBest(double setBar) {
    return RegulatorRange.ofCurve(WIDE, CURVE).atBest(GaugePressure.ofBar(setBar), AROUND);
  }

  /** Who types scfm reads scfm in a refusal, and no litres. */
  @Test
  void a_curve_in_us_units_is_refused_in_us_units() {
    for (String wrong : List.of(
        "90 psig at 5 scfm; 86 psig at 20 scfm",
        "90 psig at 0 scfm; 86 psig at 20 scfm; 84 psig at 20 scfm",
        "90 psig at 0 scfm; 91 psig at 20 scfm")) {
      assertThatIllegalArgumentException()
          .as(wrong)
          .isThrownBy(() -> RegulatorCurve.parse(wrong))
          .withMessageContaining("scfm (60 °F)")
          .satisfies(refused -> assertThat(refused.getMessage()).doesNotContain("L/s", "bar(g)"));
    }
    assertThatIllegalArgumentException()
        .isThrownBy(() -> RegulatorCurve.parse("6 bar(g) at 5 L/s ANR; 5 bar(g) at 20 L/s ANR"))
        .withMessageContaining("was 6 bar(g) at 5 L/s ANR");
    assertThat(FreeAirFlow.ofScfm60F(20.0).inFewestDigits()).isEqualTo("20 scfm (60 °F)");
    assertThat(FreeAirFlow.ofAnrLitresPerSecond(10.0).inFewestDigits()).isEqualTo("10 L/s ANR");
    assertThat(FreeAirFlow.ofScfm60F(0.0).inFewestDigits()).isEqualTo("0 scfm (60 °F)");
  }

  @Test
  void a_semicolon_behind_the_last_point_does_no_harm() {
    String told = "90 psig at 0 scfm; 86 psig at 20 scfm";
    assertThat(RegulatorCurve.parse(told + ";")).isEqualTo(RegulatorCurve.parse(told));
    assertThat(RegulatorCurve.parse(told + " ; ")).isEqualTo(RegulatorCurve.parse(told));
    for (String wrong : List.of(";", "", told + ";;", "90 psig at 0 scfm;; 86 psig at 20 scfm")) {
      assertThatIllegalArgumentException().as(wrong).isThrownBy(() -> RegulatorCurve.parse(wrong));
    }
  }

  @Test
  void at_another_setting_it_says_what_is_taken() {
    assertThat(CURVE.otherwiseSet(GaugePressure.ofBar(6.0), UnitSystem.SI)).isEmpty();
    assertThat(CURVE.otherwiseSet(GaugePressure.ofBar(5.0), UnitSystem.SI))
        .contains(
            "its maker's curve is drawn at a setting of 6 bar(g); at 5 bar(g) it is taken to droop"
                + " by as much at the same flow, which is our choice");
  }

  @Test
  void it_goes_in_straight_lines_between_its_points() {
    double[][] told = {
      {0.0, 6.0}, {5.0, 5.85}, {10.0, 5.7}, {20.0, 5.45}, {29.0, 5.225}, {30.0, 5.2}
    };
    for (double[] point : told) {
      assertThat(behind(atWorst(6.0), point[0])).isCloseTo(point[1], within(1.0e-9));
      assertThat(behind(atBest(6.0), point[0])).isCloseTo(point[1], within(1.0e-9));
      assertThat(CURVE.droop(flow(point[0])).orElseThrow().bar())
          .isCloseTo(6.0 - point[1], within(1.0e-9));
    }
    assertThat(behind(atWorst(4.0), 10.0))
        .as("set lower, the same droop")
        .isCloseTo(3.7, within(1.0e-9));
    assertThat(behind(atWorst(0.5), 30.0)).as("it holds no vacuum").isCloseTo(0.0, within(1.0e-9));
    assertThat(behind(atBest(0.5), 10.0)).isCloseTo(0.2, within(1.0e-9));
  }

  /** Behind its end it may hold nothing, or what it holds at its end: nothing is extrapolated. */
  @Test
  void behind_its_end_nothing_is_told() {
    assertThat(CURVE.end()).isEqualTo(FreeAirFlow.ofAnrLitresPerSecond(30.0));
    assertThat(CURVE.tells(flow(30.0))).isTrue();
    assertThat(CURVE.tells(flow(30.1))).isFalse();
    assertThat(CURVE.droop(flow(30.1))).isEmpty();
    assertThat(behind(atWorst(6.0), 30.1)).isCloseTo(0.0, within(1.0e-9));
    assertThat(behind(atBest(6.0), 30.1)).isCloseTo(5.2, within(1.0e-9));
    RegulatorRange range = RegulatorRange.ofCurve(WIDE, CURVE);
    assertThat(range.isExactUpTo(flow(30.0))).isTrue();
    assertThat(range.isExactUpTo(flow(30.1))).isFalse();
    assertThat(range.isExact()).isFalse();
    assertThat(atWorst(6.0).tells(flow(30.1))).isFalse();
  }

  @Test
  void its_working_tells_the_curve_and_where_it_ends() {
    AirState inFront = AirState.of(AbsolutePressure.ofBar(9.0), Temperature.ofCelsius(20.0));
    assertThat(atWorst(6.0).working(flow(10.0), inFront, UnitSystem.SI).toText())
        .contains("Its maker's curve: ", "droops by 0.3 bar");
    assertThat(atWorst(6.0).working(flow(31.0), inFront, UnitSystem.SI).toText())
        .contains("behind the end of the curve, is not told");
  }

  @Test
  void it_is_set_otherwise_and_compared_by_what_was_told() {
    assertThat(atBest(6.0).withSet(AbsolutePressure.ofBar(5.0))).isEqualTo(atBest(4.0));
    assertThat(atBest(6.0)).isNotEqualTo(atWorst(6.0)).hasSameHashCodeAs(atBest(6.0));
    assertThat(atBest(6.0).curve()).hasValue(CURVE);
    assertThat(atBest(6.0).toString()).contains("with the curve");
    assertThat(RegulatorCurve.parse(CURVE.toString())).isEqualTo(CURVE);
    assertThat(CURVE.inWords(UnitSystem.US)).startsWith("87.0 psig at 0");
    assertThat(CURVE)
        .hasToString(
            "600000.0 Pa(g) at 0.0 m³/s ANR; 570000.0 Pa(g) at 0.01 m³/s ANR; 520000.0 Pa(g) at 0.03 m³/s ANR");
  }

  @Test
  void what_is_no_curve_is_refused() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> RegulatorCurve.parse("90 psig at 0 scfm; 80 psig"))
        .withMessageContaining("\"80 psig\" is no point of a curve");
    refused("at least 2", 0.0, 6.0);
    refused("first point of a regulator's curve must be at no flow", 1.0, 6.0, 10.0, 5.0);
    refused("must be above that of the point before", 0.0, 6.0, 10.0, 5.0, 10.0, 4.0);
    refused("must be above that of the point before", 0.0, 6.0, 10.0, 5.0, 9.0, 4.0);
    refused("must be at most that of the point before", 0.0, 6.0, 10.0, 6.1);
    refused("must be above 0", 0.0, 6.0, 10.0, 0.0);
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new RegulatorRange(
            WIDE,
            Range.exactly(PressureDrop.ofBar(0.5)),
            java.util.Optional.of(FreeAirFlow.ofAnrLitresPerSecond(5.0)),
            java.util.Optional.of(CURVE)))
        .withMessageContaining("must not be told beside its curve");
  }

  private static void refused(String why, double... points) {
    assertThatIllegalArgumentException().isThrownBy(() -> curve(points)).withMessageContaining(why);
  }
}
