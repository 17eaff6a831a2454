package org.airfit.files;

import java.util.List;
import java.util.Optional;
import org.airfit.air.AirState;
import org.airfit.plant.PistonCompressor;
import org.airfit.plant.Regulator;
import org.airfit.plant.RegulatorCurve;
import org.airfit.plant.Supply;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.Length;
import org.airfit.quantity.PressureDrop;
import org.airfit.quantity.Range;
import org.airfit.quantity.Temperature;
import org.airfit.select.Requirement;
import org.airfit.working.UnitSystem;

/**
 * The supply of a job: between which pressures it stands, and what stands first behind it.
 *
 * @param air the air at the supply, or behind the regulator that stands first
 * @param atmosphere the pressure around it
 */
record JobSupply(AirState air, AbsolutePressure atmosphere) {

  /** Our own choice where a job does not tell: the temperature of a shop, and the atmosphere by the sea. */
  private static final Temperature USUAL_TEMPERATURE = Temperature.ofCelsius(20.0);

  private static final AbsolutePressure BY_THE_SEA = AbsolutePressure.ofPascals(101_325.0);

  /** The air around the works, and its temperature in the line. */
  static AirState around(Field supplied, UnitSystem units, List<String> remarks)
      throws WrongFileException {
    AbsolutePressure atmosphere = atmosphere(supplied, units, remarks);
    Temperature temperature = temperature(supplied, units, remarks);
    return supplied.build(() -> AirState.of(atmosphere, temperature));
  }

  /** Reads the supply and tells it, with the regulator that stands first in the line, if one does. */
  static JobSupply tell(
      Field supplied,
      Optional<JobLine.Entry> first,
      Optional<GaugePressure> receiverFallsTo,
      Requirement.Builder requirement,
      AirState around,
      List<String> remarks)
      throws WrongFileException {
    AbsolutePressure atmosphere = around.pressure();
    Temperature temperature = around.temperature();
    Field told = pressureField(supplied);
    Range<GaugePressure> stands = pressure(supplied);
    Range<GaugePressure> pressure = receiverFallsTo
        .filter(least -> least.compareTo(stands.least()) < 0)
        .map(least -> new Range<>(least, stands.most()))
        .orElse(stands);
    Optional<Field> relief = supplied.find("highest", Accepted.GAUGE);
    Optional<GaugePressure> highest = relief.isPresent()
        ? Optional.of(relief.get().most(GaugePressure::parse))
        : Optional.empty();
    if (highest.isPresent() && highest.get().compareTo(pressure.most()) < 0) {
      throw relief
          .get()
          .wrong("was " + relief.get().text().strip() + ", below the supply of "
              + told.text().strip()
              + "; give what the relief valve is set to, or leave it out");
    }
    Optional<Field> dryer = supplied.find("dryer", "true or false");
    if (dryer.isPresent()) {
      requirement.dryer(dryer.get().yes());
    }
    supplied.requireNothingElse();
    AirState air =
        supplied.build(() -> AirState.of(pressure.most().absolute(atmosphere), temperature));
    if (first.isPresent()) {
      refuseAbove(first.get().item(), pressure.most(), told.text());
      return behind(first.get(), pressure, highest, air, atmosphere, requirement);
    }
    requirement.supply(air, atmosphere);
    highest.ifPresent(requirement::highest);
    if (!pressure.isExact()) {
      requirement.lowest(pressure.least());
    }
    return new JobSupply(air, atmosphere);
  }

  /** Between which pressures the supply stands. */
  static Range<GaugePressure> pressure(Field supplied) throws WrongFileException {
    return pressureField(supplied).range(GaugePressure::parse);
  }

  /** The field that tells the pressure of the supply. */
  static Field pressureField(Field supplied) throws WrongFileException {
    return supplied.field("pressure", "\"90 to 110 psig\" or \"7.4 bar(g)\"");
  }

  /** A regulator holds no more than stands in front of it; both are told as they were typed. */
  private static void refuseAbove(Field item, GaugePressure most, String supply)
      throws WrongFileException {
    if (JobLine.set(item).most().compareTo(most) > 0) {
      Field set = item.field("set", Accepted.GAUGE);
      throw set.wrong("was " + set.text().strip()
          + ", above the supply of " + supply.strip()
          + "; supply.pressure is what stands in front of the regulator");
    }
  }

  /**
   * The supply is what a regulator holds; flow is judged with its droop, or at the cut-in where that is lower. What it
   * is set to may lie in a range, which is no swing: the answer may turn in it.
   */
  private static JobSupply behind(
      JobLine.Entry first,
      Range<GaugePressure> pressure,
      Optional<GaugePressure> highest,
      AirState inFront,
      AbsolutePressure atmosphere,
      Requirement.Builder requirement)
      throws WrongFileException {
    Field item = first.item();
    Range<GaugePressure> setRange = JobLine.set(item);
    GaugePressure set = setRange.most();
    AirState held = item.build(() -> inFront.at(set.absolute(atmosphere)));
    Optional<Field> alone = item.find("droop", "a pressure loss such as \"0.4 bar\"");
    boolean isAlone = item.find("atFlow").isEmpty();
    Optional<PartFields.Droop> droop = isAlone ? Optional.empty() : PartFields.Droop.in(item);
    Optional<Field> fails = item.find("ifFails", JobLine.IF_FAILS);
    Supply supply = Supply.fixed(held);
    if (droop.isPresent()) {
      JobLine.requireDroopBelow(item, droop.get().by(), set);
      AbsolutePressure held1 = AbsolutePressure.ofPascals(
          held.pressure().pascals() - droop.get().by().pascals());
      supply = item.build(
          () -> new Regulator(held, droop.get().atFlow(), held1, Optional.of(inFront.pressure())));
    }
    requirement.supply(supply, atmosphere);
    requirement.inFront(pressure);
    highest.ifPresent(requirement::highest);
    if (fails.isPresent()) {
      JobLine.requireFailedAtLeast(item, fails.get(), set);
      requirement.regulated(fails.get().most(GaugePressure::parse));
    } else {
      requirement.regulated();
    }
    if (CurveField.in(item, "atFlow").isEmpty() && isAlone) {
      requirement.droop(
          alone.isPresent() ? alone.get().range(PressureDrop::parse) : Regulator.UNTOLD_DROOP);
    }
    if (!setRange.isExact()) {
      requirement.leastSetting(setRange.least());
    }
    if (pressure.least().compareTo(set) < 0) {
      requirement.lowest(pressure.least());
    }
    item.requireNothingElse();
    return new JobSupply(held, atmosphere);
  }

  /**
   * What the parts must do where the regulator first of all has a curve: all that works is known only now, and so by
   * how much it droops. Behind the end of the curve that is anything up to all that it is set to.
   */
  static Requirement drooping(
      Optional<JobLine.Entry> first, Requirement asked, UnitSystem units, List<String> remarks)
      throws WrongFileException {
    if (first.isEmpty()) {
      return asked;
    }
    Field item = first.get().item();
    Optional<RegulatorCurve> told = CurveField.in(item, "atFlow");
    if (told.isEmpty()) {
      return asked;
    }
    RegulatorCurve curve = told.get();
    Range<GaugePressure> setRange = JobLine.set(item);
    curve
        .otherwiseSet(setRange.least(), units)
        .or(() -> curve.otherwiseSet(setRange.most(), units))
        .ifPresent(taken -> remarks.add(item.place() + ".curve: " + taken + "."));
    GaugePressure set = setRange.most();
    PressureDrop least = curve.droop(asked.airAtOutlet().least().massFlow()).orElse(curve.most());
    PressureDrop most = curve
        .droop(asked.airAtOutlet().most().massFlow())
        .orElse(PressureDrop.ofPascals(set.pascals()));
    Range<PressureDrop> droop = new Range<>(less(least, set), less(most, set));
    return item.build(() -> asked.toBuilder().droop(droop).build());
  }

  /** A regulator does not lose by its droop more than it is set to. */
  private static PressureDrop less(PressureDrop droop, GaugePressure set) {
    return PressureDrop.ofPascals(Math.min(droop.pascals(), set.pascals()));
  }

  private static Temperature temperature(Field supplied, UnitSystem units, List<String> remarks)
      throws WrongFileException {
    Optional<Field> told = supplied.find("temperature", "a temperature such as \"20 °C\"");
    if (told.isPresent()) {
      return told.get()
          .one(
              Temperature::parse,
              "give the highest, at which most pressure is lost; what the parts must stand goes into"
                  + " conditions.coldest and conditions.hottest");
    }
    remarks.add("Air of " + units.either("20 °C (68 °F)", "68 °F (20 °C)")
        + " is assumed, as supply.temperature is not told.");
    return USUAL_TEMPERATURE;
  }

  /** The pressure around the works: told, that of the altitude, or that by the sea. */
  private static AbsolutePressure atmosphere(Field supplied, UnitSystem units, List<String> remarks)
      throws WrongFileException {
    Optional<Field> told =
        supplied.find("atmosphere", "an absolute pressure such as \"1.013 bar(a)\"");
    Optional<Field> altitude = supplied.find("altitude", "a height such as \"5000 ft\"");
    if (told.isPresent() && altitude.isPresent()) {
      throw altitude.get().wrong("stands beside atmosphere; keep one of the two");
    }
    if (told.isPresent()) {
      return FlowFields.atmosphere(told.get());
    }
    if (altitude.isPresent()) {
      Length height =
          altitude.get().one(Length::parse, "give the greatest height, where the air is thinnest");
      return altitude.get().build(() -> PistonCompressor.atmosphereAt(height));
    }
    remarks.add("Sea level is assumed ("
        + units.either("1.013 bar(a), 14.7 psia", "14.7 psia, 1.013 bar(a)")
        + "), as supply.altitude is not told.");
    return BY_THE_SEA;
  }
}
