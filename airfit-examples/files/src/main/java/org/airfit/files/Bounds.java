package org.airfit.files;

import java.util.List;
import org.airfit.flow.CapacityRange;
import org.airfit.flow.Rating;
import org.airfit.plant.RegulatorCurve;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.Length;
import org.airfit.quantity.Money;
import org.airfit.quantity.Power;
import org.airfit.quantity.PressureDrop;
import org.airfit.quantity.Quantity;
import org.airfit.quantity.Range;
import org.airfit.quantity.ReferenceState;
import org.airfit.quantity.SonicConductance;
import org.airfit.quantity.Temperature;
import org.airfit.quantity.Volume;

/**
 * How large an amount of a file can be, whichever field it stands in: more than any plant owns, so that what is refused
 * is a slip or nonsense. All of them are this project's choice, without a source; docs/job-file.md lists them.
 *
 * @param what the amount
 * @param least the smallest
 * @param most the largest
 * @param tiniest the smallest without its sign, beside 0
 * @param inWords the same with the unit
 */
record Bounds(String what, double least, double most, double tiniest, String inWords) {

  private static final Bounds GAUGE =
      new Bounds("gauge pressure", -5.0, 3000.0, 0.0, "in [-5, 3000] bar(g)");

  private static final Bounds ABSOLUTE =
      new Bounds("absolute pressure", 0.0, 3000.0, 0.0, "in [0, 3000] bar(a)");

  private static final Bounds DROP =
      new Bounds("pressure loss", 0.0, 3000.0, 0.0, "in [0, 3000] bar");

  private static final Bounds FLOW =
      new Bounds("free-air flow", 0.0, 1.0e6, 1.0e-9, "0 or in [1e-9, 1e6] L/s ANR");

  private static final Bounds LENGTH =
      new Bounds("length", 0.0, 1.0e6, 1.0e-10, "0 or in [1e-10, 1e6] m");

  private static final Bounds TEMPERATURE =
      new Bounds("temperature", -200.0, 2000.0, 0.0, "in [-200, 2000] °C");

  private static final Bounds VOLUME =
      new Bounds("volume", 0.0, 1.0e7, 1.0e-9, "0 or in [1e-9, 1e7] m³");

  private static final Bounds CONDUCTANCE =
      new Bounds("sonic conductance", 0.0, 1.0e6, 1.0e-9, "0 or in [1e-9, 1e6] dm³/(s·bar)");

  private static final Bounds POWER = new Bounds("power", 0.0, 1.0e6, 0.0, "in [0, 1e6] kW");

  private static final Bounds MONEY =
      new Bounds("amount of money", -1.0e8, 1.0e8, 0.0, "in [-1e8, 1e8] of its currency");

  /** What stands without a unit: hours, a share, a sum of K. */
  static final Bounds NUMBER =
      new Bounds("number without a unit", -1.0e9, 1.0e9, 0.0, "in [-1e9, 1e9]");

  static final List<Bounds> ALL = List.of(
      GAUGE, ABSOLUTE, DROP, FLOW, LENGTH, TEMPERATURE, VOLUME, CONDUCTANCE, POWER, MONEY, NUMBER);

  /**
   * Lets a value pass; of a range and of a capacity both ends, of a curve every point.
   *
   * @throws IllegalArgumentException if it lies outside
   */
  static <T> T within(T value) {
    if (value instanceof Range<?> range) {
      check(range.least());
      check(range.most());
    } else if (value instanceof Rating rating) {
      within(rating.capacity());
    } else if (value instanceof CapacityRange capacity) {
      check(capacity.least().conductance());
      check(capacity.most().conductance());
    } else if (value instanceof RegulatorCurve curve) {
      curve.points().forEach(point -> {
        check(point.flow());
        check(point.held());
      });
    } else if (value instanceof Money money) {
      MONEY.check(money.amount().doubleValue());
    } else if (value instanceof Quantity<?, ?> quantity) {
      check(quantity);
    }
    return value;
  }

  private static void check(Quantity<?, ?> quantity) {
    if (quantity instanceof GaugePressure pressure) {
      GAUGE.check(pressure.bar());
    } else if (quantity instanceof AbsolutePressure pressure) {
      ABSOLUTE.check(pressure.bar());
    } else if (quantity instanceof PressureDrop drop) {
      DROP.check(drop.bar());
    } else if (quantity instanceof FreeAirFlow flow) {
      FLOW.check(FreeAirFlow.from(flow.massFlow(), ReferenceState.ANR).litresPerSecond());
    } else if (quantity instanceof Length length) {
      LENGTH.check(length.metres());
    } else if (quantity instanceof Temperature temperature) {
      TEMPERATURE.check(temperature.celsius());
    } else if (quantity instanceof Volume volume) {
      VOLUME.check(volume.cubicMetres());
    } else if (quantity instanceof Power power) {
      POWER.check(power.kilowatts());
    } else if (quantity instanceof SonicConductance conductance) {
      CONDUCTANCE.check(conductance.cubicDecimetresPerSecondBar());
    }
  }

  /** Refuses what lies outside. */
  void check(double value) {
    boolean isTiny = value != 0.0 && Math.abs(value) < tiniest;
    if (!(value >= least && value <= most) || isTiny) {
      throw new IllegalArgumentException(what + " must be " + inWords
          + "; no plant has such a one, look at the number and its unit");
    }
  }
}
