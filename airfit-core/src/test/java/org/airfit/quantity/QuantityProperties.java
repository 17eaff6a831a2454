package org.airfit.quantity;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.math.BigDecimal;
import java.math.MathContext;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.Scale;
import org.airfit.source.Source;

/** What holds for every unit of every quantity. */
class QuantityProperties {

  @Provide
  Arbitrary<Kind<?, ?>> kinds() {
    return Arbitraries.of(Kind.ALL);
  }

  /** From 1e-60 to 1e60, every magnitude alike. */
  @Provide
  Arbitrary<Double> magnitudes() {
    return Arbitraries.doubles()
        .between(-60.0, 60.0)
        .ofScale(6)
        .map(exponent -> Math.pow(10.0, exponent));
  }

  /** The bound is the package page's: 2 ulp of the value in the SI unit. */
  @Property(tries = 400)
  void there_and_back_is_exact_to_two_ulp_for_every_unit(@ForAll("magnitudes") double si) {
    for (Kind<?, ?> kind : Kind.ALL) {
      for (Unit unit : kind.units()) {
        if (unit.scale().offset() == 0.0) {
          assertThat(unit.toSi(unit.fromSi(si)))
              .as("%s in %s", kind, unit)
              .isCloseTo(si, within(2.0 * Math.ulp(si)));
          double value = unit.fromSi(unit.toSi(si));
          assertThat(value).as("%s from %s", kind, unit).isCloseTo(si, within(2.0 * Math.ulp(si)));
        }
      }
    }
  }

  @Property(tries = 2000)
  void temperatures_come_back_to_two_ulp_of_the_kelvins(
      @ForAll @Scale(9) @DoubleRange(min = 170.0, max = 5000.0) double kelvins) {
    for (TemperatureUnit unit : TemperatureUnit.values()) {
      assertThat(unit.toSi(unit.fromSi(kelvins)))
          .as("%s", unit)
          .isCloseTo(kelvins, within(2.0 * Math.ulp(kelvins)));
    }
  }

  /** The fraction of the definition in two hundred digits, rounded once to a double. */
  @Property(tries = 400)
  void a_conversion_gives_the_nearest_double(@ForAll("magnitudes") double value) {
    MathContext digits = new MathContext(200);
    for (Kind<?, ?> kind : Kind.ALL) {
      for (Unit unit : kind.units()) {
        UnitScale scale = unit.scale();
        BigDecimal top = new BigDecimal(scale.multiplier());
        BigDecimal bottom = new BigDecimal(scale.divisor());
        BigDecimal exact = new BigDecimal(value)
            .add(BigDecimal.valueOf(scale.offset()))
            .multiply(top)
            .divide(bottom, digits);
        assertThat(unit.toSi(value)).as("%s of %s", value, unit).isEqualTo(exact.doubleValue());
        if (scale.offset() == 0.0) {
          assertThat(unit.fromSi(value))
              .as("%s SI in %s", value, unit)
              .isEqualTo(
                  new BigDecimal(value).multiply(bottom).divide(top, digits).doubleValue());
        }
      }
    }
  }

  @Property(tries = 400)
  void what_is_printed_is_read_back_exactly(
      @ForAll("kinds") Kind<?, ?> kind, @ForAll("magnitudes") double si) {
    readsBack(kind, si);
    if (kind.mayBeNegative()) {
      readsBack(kind, -si);
    }
  }

  private static <Q extends Quantity<Q, U>, U extends Unit> void readsBack(
      Kind<Q, U> kind, double si) {
    Q quantity = kind.ofSi(si);
    assertThat(kind.parse().apply(quantity.toString())).isEqualTo(quantity);
  }

  @Property(tries = 400)
  void what_is_formatted_for_people_can_be_typed_back(
      @ForAll @Scale(6) @DoubleRange(min = 0.001, max = 1.0e6) double value) {
    for (Kind<?, ?> kind : Kind.ALL) {
      typedBack(kind, value);
    }
  }

  /** Half a unit of the fourth digit, and the rounding of the conversion there and back. */
  private static <Q extends Quantity<Q, U>, U extends Unit> void typedBack(
      Kind<Q, U> kind, double value) {
    for (U unit : kind.units()) {
      Q quantity = kind.of().apply(value, unit);
      double again = kind.parse().apply(quantity.format(unit)).in(unit);
      assertThat(again)
          .as("%s", quantity.format(unit))
          .isCloseTo(value, within(0.5e-3 * value * (1.0 + 1.0e-9) + 1.0e-9));
    }
  }

  @Property(tries = 400)
  void order_equality_and_hash_agree_with_the_numbers(
      @ForAll("kinds") Kind<?, ?> kind,
      @ForAll("magnitudes") double one,
      @ForAll("magnitudes") double other) {
    ordered(kind, one, other);
    ordered(kind, one, one);
    ordered(kind, one, Math.nextUp(one));
  }

  private static <Q extends Quantity<Q, U>, U extends Unit> void ordered(
      Kind<Q, U> kind, double one, double other) {
    Q first = kind.ofSi(one);
    Q second = kind.ofSi(other);
    assertThat(first.compareTo(second)).isEqualTo(Double.compare(one, other));
    assertThat(first.equals(second)).isEqualTo(one == other);
    assertThat(first.compareTo(second) == 0).isEqualTo(first.equals(second));
    if (one == other) {
      assertThat(first.hashCode()).isEqualTo(second.hashCode());
    }
  }

  @Property
  void lengths_flows_and_drops_add_like_their_numbers(
      @ForAll @Scale(6) @DoubleRange(min = 0.0, max = 1.0e6) double one,
      @ForAll @Scale(6) @DoubleRange(min = 0.0, max = 1.0e6) double other) {
    assertThat(Length.ofMetres(one).plus(Length.ofMetres(other)))
        .isEqualTo(Length.ofMetres(other).plus(Length.ofMetres(one)))
        .isEqualTo(Length.ofMetres(one + other));
    assertThat(MassFlow.ofKilogramsPerSecond(one).plus(MassFlow.ofKilogramsPerSecond(other)))
        .isEqualTo(MassFlow.ofKilogramsPerSecond(one + other));
    assertThat(PressureDrop.ofPascals(one).plus(PressureDrop.ofPascals(other)))
        .isEqualTo(PressureDrop.ofPascals(one + other));
    Length longer = Length.ofMetres(Math.max(one, other));
    Length shorter = Length.ofMetres(Math.min(one, other));
    assertThat(longer.minus(shorter)).isEqualTo(Length.ofMetres(Math.abs(one - other)));
  }

  @Property
  void a_drop_taken_off_and_put_back_leaves_the_pressure(
      @ForAll @Scale(3) @DoubleRange(min = 1.0e5, max = 2.0e6) double pascals,
      @ForAll @Scale(6) @DoubleRange(min = 0.0, max = 1.0) double share) {
    AbsolutePressure upstream = AbsolutePressure.ofPascals(pascals);
    PressureDrop drop = PressureDrop.ofPascals(share * pascals);
    AbsolutePressure downstream = upstream.minus(drop);
    assertThat(downstream.plus(drop).pascals()).isCloseTo(pascals, within(2.0 * Math.ulp(pascals)));
    assertThat(upstream.dropTo(downstream).pascals())
        .isCloseTo(drop.pascals(), within(2.0 * Math.ulp(pascals)));
  }

  @Property
  void gauge_and_absolute_differ_by_the_atmosphere_and_nothing_else(
      @ForAll @Scale(3) @DoubleRange(min = -80.0e3, max = 2.0e6) double gauge,
      @ForAll @Scale(3) @DoubleRange(min = 80.0e3, max = 110.0e3) double atmosphere) {
    AbsolutePressure around = AbsolutePressure.ofPascals(atmosphere);
    AbsolutePressure absolute = GaugePressure.ofPascals(gauge).absolute(around);
    assertThat(absolute.pascals()).isEqualTo(atmosphere + gauge);
    assertThat(GaugePressure.of(absolute, around).pascals())
        .isCloseTo(gauge, within(2.0 * Math.ulp(absolute.pascals() + atmosphere)));
  }

  @Property
  void darcy_is_four_times_fanning(
      @ForAll @Scale(6) @DoubleRange(min = 0.0001, max = 1.0) double factor) {
    assertThat(FrictionFactor.ofFanning(factor)).isEqualTo(FrictionFactor.ofDarcy(4.0 * factor));
    assertThat(FrictionFactor.ofFanning(factor).fanning()).isEqualTo(factor);
    assertThat(FrictionFactor.ofDarcy(factor).darcy()).isEqualTo(factor);
  }

  @Property
  void cv_and_kv_come_back(@ForAll @Scale(6) @DoubleRange(min = 0.0001, max = 1000.0) double cv) {
    assertThat(ValveCoefficient.ofCv(cv).cv()).isCloseTo(cv, within(2.0 * Math.ulp(cv)));
    assertThat(ValveCoefficient.ofKv(cv).kv()).isEqualTo(cv);
  }

  /** The amount of gas is kept, whichever way it goes round. */
  @Property
  void free_air_counted_elsewhere_and_back_is_the_same(
      @ForAll @Scale(6) @DoubleRange(min = 0.0, max = 1.0e4) double litres) {
    FreeAirFlow flow = FreeAirFlow.ofAnrLitresPerSecond(litres);
    for (ReferenceState one : ReferenceState.wellKnown()) {
      for (ReferenceState other : ReferenceState.wellKnown()) {
        FreeAirFlow direct = flow.at(other);
        assertThat(flow.at(one).at(other).litresPerSecond())
            .isCloseTo(direct.litresPerSecond(), within(8.0 * Math.ulp(direct.litresPerSecond())));
        assertThat(flow.dryAirAt(one).dryAirAt(other).dryAirMassFlow().kilogramsPerSecond())
            .isCloseTo(
                flow.dryAirMassFlow().kilogramsPerSecond(),
                within(8.0 * Math.ulp(flow.dryAirMassFlow().kilogramsPerSecond())));
      }
    }
  }

  /** Whatever it is, and however few of its digits fall on a round number of kilopascals or per cent. */
  @Property
  void a_state_of_ones_own_and_a_flow_at_it_read_back(
      @ForAll @Scale(12) @DoubleRange(min = 273.16, max = 373.15) double kelvins,
      @ForAll @Scale(9) @DoubleRange(min = 110.0e3, max = 200.0e3) double pascals,
      @ForAll @Scale(17) @DoubleRange(min = 0.0, max = 1.0) double humidity,
      @ForAll @Scale(9) @DoubleRange(min = 0.0, max = 1.0e4) double litres) {
    ReferenceState state = ReferenceState.of(
        "shop",
        Temperature.ofKelvins(kelvins),
        AbsolutePressure.ofPascals(pascals),
        humidity,
        Source.demo("a test"));
    FreeAirFlow flow = FreeAirFlow.of(litres, VolumeFlowUnit.LITRE_PER_SECOND, state);
    assertThat(ReferenceState.parse(state.toString())).isEqualTo(state);
    assertThat(FreeAirFlow.parse(flow.toString())).isEqualTo(flow);
  }
}
