package org.airfit.plant;

import java.time.Duration;
import java.util.Objects;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.MassFlow;
import org.airfit.quantity.Money;
import org.airfit.quantity.Power;
import org.airfit.quantity.Range;
import org.airfit.source.Source;
import org.airfit.working.Formula;
import org.airfit.working.Symbol;
import org.airfit.working.UnitSystem;
import org.airfit.working.ValueKind;
import org.airfit.working.Worked;
import org.airfit.working.Working;

/**
 * What air costs at a plant whose own figures are known: what its compressor takes while it delivers and while it does
 * not, how long it runs in the year, and what electricity costs.
 *
 * <pre>
 *   cost    P = ṁ/ṁd Pl
 *   saved   P = ṁ/ṁd (Pl − Pu)
 * </pre>
 *
 * <table class="striped">
 * <caption>Symbols</caption>
 * <thead><tr><th>symbol</th><th>meaning</th><th>unit</th></tr></thead>
 * <tbody>
 * <tr><td>P</td><td>electric power</td><td>W</td></tr>
 * <tr><td>ṁ, ṁd</td><td>the flow, and what the compressor delivers</td><td>kg/s</td></tr>
 * <tr><td>Pl, Pu</td><td>electric power loaded and unloaded</td><td>W</td></tr>
 * </tbody>
 * </table>
 *
 * <p>Air that is no longer taken lets the compressor run unloaded for longer, and unloaded it still takes power: so a
 * repair saves less than the air costs. Unloaded power is 0 where the machine stops, or where its speed follows the
 * demand. Published shares of the loaded power disagree: 15 to 30 % and 50 to 60 %, in one set of training notes.
 * <b>Source:</b> proportion, as in US DOE Compressed Air Tip Sheet 3 with kW per cfm.
 *
 * @param loaded the electric power while it delivers, above 0
 * @param unloaded the electric power while it does not, at most {@code loaded}
 * @param delivery what it delivers while loaded, above 0
 * @param time the time in the year in which the line stands under pressure
 * @param perKilowattHour the rate
 */
public record AirPrice(
    Power loaded,
    Range<Power> unloaded,
    FreeAirFlow delivery,
    Duration time,
    Money perKilowattHour) {

  private static final Source PROPORTION = Source.derived(
      "a compressor that loads and unloads takes power in proportion to its loaded time");

  private static final Symbol FLOW = Symbol.of("ṁ", ValueKind.MASS_FLOW);
  private static final Symbol DELIVERED = Symbol.of("ṁd", ValueKind.MASS_FLOW);
  private static final Symbol SHARE = Symbol.of("x", ValueKind.NUMBER);
  private static final Symbol LOADED = Symbol.of("Pl", "P_l", ValueKind.POWER);
  private static final Symbol UNLOADED = Symbol.of("Pu", "P_u", ValueKind.POWER);

  private static final Formula PART =
      Formula.of("Part of the delivery", "⟨x⟩ = ⟨ṁ⟩ / ⟨ṁd⟩", PROPORTION, SHARE, FLOW, DELIVERED);

  private static final Formula TAKEN =
      Formula.of("Electric power", "⟨P⟩ = ⟨x⟩ × ⟨Pl⟩", PROPORTION, YearlyCost.POWER, SHARE, LOADED);

  private static final Formula LESS = Formula.of(
      "Electric power that is saved",
      "⟨P⟩ = ⟨x⟩ × (⟨Pl⟩ − ⟨Pu⟩)",
      PROPORTION,
      YearlyCost.POWER,
      SHARE,
      LOADED,
      UNLOADED);

  /**
   * Checks the components.
   *
   * @param loaded the electric power while it delivers, above 0
   * @param unloaded the electric power while it does not, at most {@code loaded}
   * @param delivery what it delivers while loaded, above 0
   * @param time the time in the year in which the line stands under pressure
   * @param perKilowattHour the rate
   * @throws IllegalArgumentException if a component is out of range, or {@code time} is negative
   */
  public AirPrice {
    Objects.requireNonNull(loaded, "loaded");
    Objects.requireNonNull(unloaded, "unloaded");
    Objects.requireNonNull(delivery, "delivery");
    Objects.requireNonNull(perKilowattHour, "perKilowattHour");
    if (!(loaded.watts() > 0.0)) {
      throw new IllegalArgumentException("loaded power must be above 0 kW, was " + loaded.shown());
    }
    if (unloaded.most().compareTo(loaded) > 0) {
      throw new IllegalArgumentException("unloaded power must be at most the loaded power, "
          + loaded.shown() + ", was " + unloaded.most().shown());
    }
    if (!(delivery.massFlow().kilogramsPerSecond() > 0.0)) {
      throw new IllegalArgumentException(
          "delivery of the compressor must be above 0, was " + delivery.shown());
    }
    YearlyCost.requireTime(time);
  }

  /**
   * Obtains the price at a plant of which the compression and the efficiencies are known.
   *
   * @param plant the plant
   * @param delivery what its compressor delivers while loaded, above 0
   * @param unloaded the electric power while it does not deliver
   * @return the price
   * @throws IllegalArgumentException if {@code unloaded} is above the power that the delivery takes, or that is 0
   */
  public static AirPrice of(AirPlant plant, FreeAirFlow delivery, Range<Power> unloaded) {
    Objects.requireNonNull(plant, "plant");
    Objects.requireNonNull(delivery, "delivery");
    return new AirPrice(
        plant.electricPower(delivery.massFlow()),
        unloaded,
        delivery,
        plant.time(),
        plant.perKilowattHour());
  }

  /**
   * Finds what a flow costs in a year.
   *
   * @param what what takes the flow
   * @param flow its mean flow over the time in the year
   * @return the cost
   * @throws IllegalArgumentException if the cost is not below 1e30
   */
  public YearlyCost cost(String what, MassFlow flow) {
    return cost(new Less(this, flow, Power.ofWatts(0.0)), what);
  }

  /**
   * Finds what is saved for certain in a year when a flow is no longer taken.
   *
   * @param what what took the flow
   * @param flow its mean flow over the time in the year
   * @return what is saved where unloaded power is the most that it can be
   * @throws IllegalArgumentException if the money is not below 1e30
   */
  public YearlyCost leastSaved(String what, MassFlow flow) {
    return cost(new Less(this, flow, unloaded.most()), what);
  }

  /**
   * Finds what is saved at most in a year when a flow is no longer taken.
   *
   * @param what what took the flow
   * @param flow its mean flow over the time in the year
   * @return what is saved where unloaded power is the least that it can be
   * @throws IllegalArgumentException if the money is not below 1e30
   */
  public YearlyCost mostSaved(String what, MassFlow flow) {
    return cost(new Less(this, flow, unloaded.least()), what);
  }

  private YearlyCost cost(Less less, String what) {
    return YearlyCost.of(what, Power.ofWatts(less.watts()), time, perKilowattHour, less);
  }

  /** The power of a flow, less what the compressor takes unloaded in the same time. */
  private record Less(AirPrice price, MassFlow flow, Power unloaded) implements Worked {

    Less {
      Objects.requireNonNull(flow, "flow");
    }

    double share() {
      return flow.kilogramsPerSecond() / price.delivery.massFlow().kilogramsPerSecond();
    }

    double watts() {
      return share() * (price.loaded.watts() - unloaded.watts());
    }

    @Override
    public Working working(UnitSystem units) {
      Working.Builder working = Working.titled("Electric power", units)
          .given(FLOW, flow.kilogramsPerSecond(), 5)
          .given(DELIVERED, price.delivery.massFlow().kilogramsPerSecond(), 5)
          .step(PART, share(), 4)
          .given(LOADED, price.loaded.watts(), 5);
      if (unloaded.watts() == 0.0) {
        working.step(TAKEN, watts(), 4);
      } else {
        working.given(UNLOADED, unloaded.watts(), 5).step(LESS, watts(), 4);
      }
      return working.answer(YearlyCost.POWER).build();
    }
  }
}
