package org.airfit.flow;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.Scale;
import net.jqwik.api.constraints.Size;
import org.airfit.air.AirState;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.PressureDrop;
import org.airfit.quantity.ReferenceState;
import org.airfit.quantity.SonicConductance;
import org.airfit.quantity.Temperature;
import org.airfit.quantity.ValveCoefficient;
import org.airfit.source.Source;

/** The ends of a range bound what comes out, whatever is not known; the proof is in the javadoc, this tries it. */
class CapacityRangeProperties {

  private static final double HAIR = 1.0e-12;
  private static final Source SHEET = Source.demo("a data sheet");
  private static final Temperature SHOP = Temperature.ofCelsius(20.0);

  private static double passes(FlowCapacity part, double bar, double ratio) {
    return part.flow(
            AirState.of(AbsolutePressure.ofBar(bar), SHOP), AbsolutePressure.ofBar(bar * ratio))
        .massFlow()
        .kilogramsPerSecond();
  }

  /** What the element says for a flow: the pressure behind, where none passes 0. */
  private static double outlet(FlowCapacity part, double bar, double flow) {
    double outlet = part.element().outlet(flow, 1.0e5 * bar, 293.15, 1.8e-5);
    return Double.isNaN(outlet) ? 0.0 : outlet;
  }

  private static void isWithin(FlowCapacity one, CapacityRange range, double bar, double ratio) {
    double flow = passes(one, bar, ratio);
    assertThat(flow)
        .isGreaterThanOrEqualTo(passes(range.least(), bar, ratio) * (1.0 - HAIR))
        .isLessThanOrEqualTo(passes(range.most(), bar, ratio) * (1.0 + HAIR));
    double less = flow * (1.0 - 1.0e-9); // off choking, where the last digit decides
    assertThat(outlet(one, bar, less))
        .isGreaterThanOrEqualTo(outlet(range.least(), bar, less) * (1.0 - HAIR) - 1.0e-3)
        .isLessThanOrEqualTo(outlet(range.most(), bar, less) * (1.0 + HAIR) + 1.0e-3);
  }

  @Property(tries = 400)
  void a_rating_holds_every_b(
      @ForAll @Scale(12) @DoubleRange(min = 0.0, max = 0.528) double b,
      @ForAll @Scale(12) @DoubleRange(min = 0.001, max = 0.999) double ratedShare,
      @ForAll @Scale(12) @DoubleRange(min = 1.5, max = 20.0) double ratedBar,
      @ForAll @Scale(12) @DoubleRange(min = 1.0, max = 20.0) double bar,
      @ForAll @Scale(12) @DoubleRange(min = 0.0, max = 1.0) double ratio) {
    FreeAirFlow rated = FreeAirFlow.ofAnrLitresPerSecond(20.0);
    AbsolutePressure inlet = AbsolutePressure.ofBar(ratedBar);
    PressureDrop drop = PressureDrop.ofBar(ratedShare * ratedBar);
    isWithin(
        FlowCapacity.ofRatedFlow(rated, inlet, drop, SHOP, b),
        CapacityRange.ofRatedFlow(rated, inlet, drop, SHOP),
        bar,
        ratio);
  }

  @Property(tries = 400)
  void c_alone_holds_every_b(
      @ForAll @Scale(12) @DoubleRange(min = 0.0, max = 0.528) double b,
      @ForAll @Scale(12) @DoubleRange(min = 1.0, max = 20.0) double bar,
      @ForAll @Scale(12) @DoubleRange(min = 0.0, max = 1.0) double ratio) {
    SonicConductance c = SonicConductance.ofCubicDecimetresPerSecondBar(3.5);
    isWithin(FlowCapacity.of(c, b), CapacityRange.ofConductance(c), bar, ratio);
  }

  /** Both by ISO 6358 and by the curve of IEC 60534, which is another model. */
  @Property(tries = 400)
  void a_coefficient_holds_every_factor(
      @ForAll @Scale(12) @DoubleRange(min = 0.2, max = 1.0) double xt,
      @ForAll @Scale(12) @DoubleRange(min = 1.0, max = 20.0) double bar,
      @ForAll @Scale(12) @DoubleRange(min = 0.001, max = 1.0) double ratio) {
    ValveCoefficient kv = ValveCoefficient.ofKv(1.2);
    CapacityRange range = CapacityRange.ofValveCoefficient(kv);
    isWithin(FlowCapacity.ofValveCoefficient(kv, xt), range, bar, ratio);
    double iec = new ControlValve(kv, xt)
        .flow(AirState.of(AbsolutePressure.ofBar(bar), SHOP), AbsolutePressure.ofBar(bar * ratio))
        .kilogramsPerSecond();
    assertThat(iec)
        .isGreaterThanOrEqualTo(passes(range.least(), bar, ratio) * (1.0 - HAIR))
        .isLessThanOrEqualTo(passes(range.most(), bar, ratio) * (1.0 + HAIR));
  }

  @Property(tries = 400)
  void what_is_spanned_bounds_every_part_and_what_lies_between_them(
      @ForAll @Size(min = 1, max = 4) List<@Scale(9) @DoubleRange(min = 0.5, max = 8.0) Double> c,
      @ForAll @Size(value = 4) List<@Scale(9) @DoubleRange(min = 0.0, max = 0.95) Double> b,
      @ForAll @Scale(12) @DoubleRange(min = 0.0, max = 1.0) double between,
      @ForAll @Scale(12) @DoubleRange(min = 0.0, max = 1.0) double ratio) {
    List<FlowCapacity> parts = new ArrayList<>();
    for (int i = 0; i < c.size(); i++) {
      parts.add(
          FlowCapacity.of(SonicConductance.ofCubicDecimetresPerSecondBar(c.get(i)), b.get(i)));
    }
    CapacityRange range = CapacityRange.spanning(parts, SHEET);
    parts.forEach(part -> isWithin(part, range, 7.0, ratio));
    // between the first and the last in C² and in C²/(1 − b)
    double first = c.get(0) * c.get(0);
    double last = c.get(c.size() - 1) * c.get(c.size() - 1);
    double square = first + between * (last - first);
    double slope = first / (1.0 - b.get(0))
        + between * (last / (1.0 - b.get(c.size() - 1)) - first / (1.0 - b.get(0)));
    isWithin(
        FlowCapacity.of(
            SonicConductance.ofCubicDecimetresPerSecondBar(Math.sqrt(square)),
            Math.max(0.0, 1.0 - square / slope)),
        range,
        7.0,
        ratio);
  }

  @Property(tries = 400)
  void other_indices_and_check_valves_are_bounded_too(
      @ForAll @Scale(12) @DoubleRange(min = 0.5, max = 8.0) double c,
      @ForAll @Scale(12) @DoubleRange(min = 0.0, max = 0.9) double b,
      @ForAll @Scale(12) @DoubleRange(min = 0.2, max = 1.0) double m,
      @ForAll @Scale(12) @DoubleRange(min = 0.0, max = 0.5) double crackingBar,
      @ForAll @Scale(12) @DoubleRange(min = 0.0, max = 1.0) double ratio) {
    FlowCapacity one = FlowCapacity.of(SonicConductance.ofCubicDecimetresPerSecondBar(c), b)
        .withSubsonicIndex(m)
        .withCrackingPressure(PressureDrop.ofBar(crackingBar));
    FlowCapacity other = FlowCapacity.of(SonicConductance.ofCubicDecimetresPerSecondBar(3.0), 0.3);
    CapacityRange range = CapacityRange.spanning(List.of(one, other), SHEET);
    isWithin(one, range, 7.0, ratio);
    isWithin(other, range, 7.0, ratio);
  }

  /** The true part lies in the range of points read off its curve, wherever they were read. */
  @Property(tries = 200)
  void the_range_of_points_of_a_part_holds_it(
      @ForAll @Scale(12) @DoubleRange(min = 0.0, max = 0.528) double b,
      @ForAll @Size(min = 1, max = 5)
          List<@Scale(9) @DoubleRange(min = 0.02, max = 0.95) Double> shares,
      @ForAll @Scale(12) @DoubleRange(min = 0.0, max = 1.0) double ratio) {
    FlowCapacity part = FlowCapacity.of(SonicConductance.ofCubicDecimetresPerSecondBar(4.0), b);
    List<RatedPoint> points = new ArrayList<>();
    for (double share : shares) {
      AbsolutePressure inlet = AbsolutePressure.ofBar(6.0 + share);
      PressureDrop drop = PressureDrop.ofBar(share * (6.0 + share));
      points.add(new RatedPoint(
          FreeAirFlow.from(
              part.flow(AirState.of(inlet, SHOP), inlet.minus(drop)).massFlow(),
              ReferenceState.ANR),
          inlet,
          drop,
          SHOP));
    }
    isWithin(part, CapacityRange.ofPoints(points), 7.0, ratio);
  }
}
