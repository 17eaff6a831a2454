package org.airfit.quantity;

import java.util.List;
import java.util.function.BiFunction;
import java.util.function.Function;

/**
 * A quantity with its units and its doors, so that a test can speak of all of them.
 *
 * @param name how it calls itself in a message
 * @param units its units, the SI unit first
 * @param lowest the lowest value in the SI unit
 */
record Kind<Q extends Quantity<Q, U>, U extends Unit>(
    String name,
    Class<Q> type,
    List<U> units,
    double lowest,
    BiFunction<Double, U, Q> of,
    Function<String, Q> parse) {

  static final List<Kind<?, ?>> ALL = List.of(
      kind("length", Length.class, LengthUnit.values(), Length::of, Length::parse),
      kind("area", Area.class, AreaUnit.values(), Area::of, Area::parse),
      kind("volume", Volume.class, VolumeUnit.values(), Volume::of, Volume::parse),
      new Kind<>(
          "gauge pressure",
          GaugePressure.class,
          List.of(PressureUnit.values()),
          -Double.MAX_VALUE,
          GaugePressure::of,
          GaugePressure::parse),
      kind(
          "absolute pressure",
          AbsolutePressure.class,
          PressureUnit.values(),
          AbsolutePressure::of,
          AbsolutePressure::parse),
      kind(
          "pressure drop",
          PressureDrop.class,
          PressureUnit.values(),
          PressureDrop::of,
          PressureDrop::parse),
      kind(
          "temperature",
          Temperature.class,
          TemperatureUnit.values(),
          Temperature::of,
          Temperature::parse),
      kind("mass flow", MassFlow.class, MassFlowUnit.values(), MassFlow::of, MassFlow::parse),
      kind(
          "free-air flow",
          FreeAirFlow.class,
          VolumeFlowUnit.values(),
          (value, unit) -> FreeAirFlow.of(value, unit, ReferenceState.ANR),
          FreeAirFlow::parse),
      kind("density", Density.class, DensityUnit.values(), Density::of, Density::parse),
      kind("velocity", Velocity.class, VelocityUnit.values(), Velocity::of, Velocity::parse),
      kind(
          "dynamic viscosity",
          DynamicViscosity.class,
          ViscosityUnit.values(),
          DynamicViscosity::of,
          DynamicViscosity::parse),
      kind("power", Power.class, PowerUnit.values(), Power::of, Power::parse),
      kind("energy", Energy.class, EnergyUnit.values(), Energy::of, Energy::parse),
      kind(
          "sonic conductance",
          SonicConductance.class,
          ConductanceUnit.values(),
          SonicConductance::of,
          SonicConductance::parse));

  private static <Q extends Quantity<Q, U>, U extends Unit> Kind<Q, U> kind(
      String name,
      Class<Q> type,
      U[] units,
      BiFunction<Double, U, Q> of,
      Function<String, Q> parse) {
    return new Kind<>(name, type, List.of(units), 0.0, of, parse);
  }

  U siUnit() {
    return units.get(0);
  }

  Q ofSi(double si) {
    return of.apply(si, siUnit());
  }

  boolean mayBeNegative() {
    return lowest < 0.0;
  }

  @Override
  public String toString() {
    return name;
  }
}
