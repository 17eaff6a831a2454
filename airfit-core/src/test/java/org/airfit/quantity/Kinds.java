package org.airfit.quantity;

import java.util.List;
import java.util.function.Function;

/** Every quantity with its units, so that a law can be checked on all of them. */
final class Kinds {

  /** How a quantity is made from a value and a unit, and read from a text. */
  record Kind<Q extends Scalar<Q, U>, U extends Unit>(
      String name, List<U> units, Maker<Q, U> maker, Function<String, Q> parser, double lowest) {

    Q make(double value, Object unit) {
      return maker.of(value, units.get(units.indexOf(unit)));
    }

    @Override
    public String toString() {
      return name;
    }
  }

  /** The factory {@code of(value, unit)}. */
  interface Maker<Q, U> {
    Q of(double value, U unit);
  }

  static final List<Kind<?, ?>> ALL = List.of(
      new Kind<>("length", List.of(LengthUnit.values()), Length::of, Length::parse, 0.0),
      new Kind<>("area", List.of(AreaUnit.values()), Area::of, Area::parse, 0.0),
      new Kind<>("volume", List.of(VolumeUnit.values()), Volume::of, Volume::parse, 0.0),
      new Kind<>("velocity", List.of(VelocityUnit.values()), Velocity::of, Velocity::parse, 0.0),
      new Kind<>("density", List.of(DensityUnit.values()), Density::of, Density::parse, 0.0),
      new Kind<>(
          "dynamic viscosity",
          List.of(ViscosityUnit.values()),
          DynamicViscosity::of,
          DynamicViscosity::parse,
          0.0),
      new Kind<>("mass flow", List.of(MassFlowUnit.values()), MassFlow::of, MassFlow::parse, 0.0),
      new Kind<>(
          "actual flow", List.of(VolumeFlowUnit.values()), ActualFlow::of, ActualFlow::parse, 0.0),
      new Kind<>("power", List.of(PowerUnit.values()), Power::of, Power::parse, 0.0),
      new Kind<>("energy", List.of(EnergyUnit.values()), Energy::of, Energy::parse, 0.0),
      new Kind<>(
          "sonic conductance",
          List.of(ConductanceUnit.values()),
          SonicConductance::of,
          SonicConductance::parse,
          0.0),
      new Kind<>(
          "pressure drop",
          List.of(PressureUnit.values()),
          PressureDrop::of,
          PressureDrop::parse,
          0.0),
      new Kind<>(
          "absolute pressure",
          List.of(PressureUnit.values()),
          AbsolutePressure::of,
          AbsolutePressure::parse,
          0.0),
      new Kind<>(
          "gauge pressure",
          List.of(PressureUnit.values()),
          GaugePressure::of,
          GaugePressure::parse,
          Scalar.UNBOUNDED),
      new Kind<>(
          "temperature",
          List.of(TemperatureUnit.values()),
          Temperature::of,
          Temperature::parse,
          0.0));

  private Kinds() {}
}
