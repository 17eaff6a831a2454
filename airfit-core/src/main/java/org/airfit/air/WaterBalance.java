package org.airfit.air;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.airfit.internal.Digits;
import org.airfit.internal.Seconds;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.MassFlow;
import org.airfit.quantity.MassFlowUnit;
import org.airfit.quantity.Volume;
import org.airfit.source.Source;
import org.airfit.working.Formula;
import org.airfit.working.Symbol;
import org.airfit.working.UnitSystem;
import org.airfit.working.ValueKind;
import org.airfit.working.Worked;
import org.airfit.working.Working;

/**
 * Where the water goes that a compressor draws in with the air: what each cooler, dryer or cold pipe takes out of it,
 * and what is left as vapour.
 *
 * <pre>
 *   ṁ = ṁa (W1 − W2),   W2 = min(W1, W(td2))
 * </pre>
 *
 * <table class="striped">
 * <caption>Symbols</caption>
 * <thead><tr><th>symbol</th><th>meaning</th><th>unit</th></tr></thead>
 * <tbody>
 * <tr><td>ṁ</td><td>water taken out</td><td>kg/s</td></tr>
 * <tr><td>ṁa</td><td>dry air</td><td>kg/s</td></tr>
 * <tr><td>W1, W2</td><td>humidity ratio before and behind, see {@link DewPoint}</td><td>kg/kg</td></tr>
 * <tr><td>td2</td><td>dew point of air that leaves saturated: of a cooler and of a cold pipe the temperature of the air
 * itself, of a dryer its pressure dew point</td><td>K</td></tr>
 * </tbody>
 * </table>
 *
 * <p>It is as if all that condenses is drained where it does. What a separator lets pass comes out farther on; a drain
 * that fails lets all of it pass. Really compressed air keeps a little more vapour than reckoned, see {@link DewPoint}:
 * of the vapour left behind a cooler at 8 bar 2 to 5 %. <b>Source:</b> balance of mass.
 *
 * <p>What an aftercooler gathers in a day:
 *
 * <pre>{@code
 * import java.time.Duration;
 * import java.util.Locale;
 * import org.airfit.air.AirState;
 * import org.airfit.air.DewPoint;
 * import org.airfit.air.WaterBalance;
 * import org.airfit.quantity.AbsolutePressure;
 * import org.airfit.quantity.FreeAirFlow;
 * import org.airfit.quantity.Temperature;
 * import org.airfit.quantity.Volume;
 *
 * class GatheredInADay {
 *   public static void main(String[] args) {
 *     DewPoint intake = DewPoint.of(
 *         AirState.of(AbsolutePressure.parse("1 bar(a)"), Temperature.parse("25 °C")), 0.6);
 *     DewPoint cooled = new DewPoint(Temperature.parse("35 °C"), AbsolutePressure.parse("8 bar(a)"));
 *     WaterBalance water = WaterBalance.ofDryAir(FreeAirFlow.parse("100 L/s ANR").massFlow(), intake)
 *         .through("aftercooler", cooled);
 *     Volume day = water.stages().get(0).collected(Duration.ofHours(24));
 *     System.out.printf(Locale.ROOT, "%.0f L%n", day.litres()); // 78 L
 *   }
 * }
 * }</pre>
 *
 * <p>This class is immutable, thread-safe and value-based.
 */
public final class WaterBalance implements Worked {

  /**
   * What takes water out of the air.
   *
   * @param name what it is, such as "aftercooler"
   * @param behind the dew point of the air that leaves it
   * @param takenOut the water it takes out
   */
  public record Stage(String name, DewPoint behind, MassFlow takenOut) {

    /**
     * Refuses what is null.
     *
     * @param name what it is, such as "aftercooler"
     * @param behind the dew point of the air that leaves it
     * @param takenOut the water it takes out
     */
    public Stage {
      Objects.requireNonNull(name, "name");
      Objects.requireNonNull(behind, "behind");
      Objects.requireNonNull(takenOut, "takenOut");
    }

    /**
     * Finds how much liquid that is.
     *
     * @param time how long, such as a shift of 8 h
     * @return the volume; a kilogram of water is a litre
     * @throws IllegalArgumentException if {@code time} is negative
     */
    public Volume collected(Duration time) {
      return litres(takenOut, time);
    }
  }

  /** Of water up to 30 °C, to 0.5 % (Kell, J. Chem. Eng. Data 20 (1975) 97) [kg/m³]. */
  private static final double WATER_DENSITY = 1_000.0;

  /** More than any line has; a choice of this project. */
  private static final int MOST_STAGES = 20;

  private static final Source BALANCE = Source.derived("balance of mass");

  private static final Symbol DRY_AIR = Symbol.of("ṁa", ValueKind.MASS_FLOW);
  private static final Symbol TAKEN_IN = Symbol.of("ṁ0", ValueKind.MASS_FLOW);
  private static final Symbol LEFT = Symbol.of("ṁv", ValueKind.MASS_FLOW);
  private static final Symbol IN_INTAKE = ratio(0);

  private static final Formula TAKES_IN =
      Formula.of("Water taken in", "⟨ṁ0⟩ = ⟨ṁa⟩ × ⟨W0⟩", BALANCE, TAKEN_IN, DRY_AIR, IN_INTAKE);

  private final MassFlow dryAir;
  private final DewPoint intake;
  private final List<Stage> stages;

  private WaterBalance(MassFlow dryAir, DewPoint intake, List<Stage> stages) {
    this.dryAir = Objects.requireNonNull(dryAir, "dryAir");
    this.intake = Objects.requireNonNull(intake, "intake");
    this.stages = List.copyOf(stages);
  }

  /**
   * Begins with the air that a compressor takes in, of which the flow is that of the dry air, as free air at a dry
   * reference state such as scfm is.
   *
   * @param dryAir the flow of dry air
   * @param intake the dew point of the air taken in
   * @return the balance, in which nothing is taken out yet
   */
  public static WaterBalance ofDryAir(MassFlow dryAir, DewPoint intake) {
    return new WaterBalance(dryAir, intake, List.of());
  }

  /**
   * Begins with the air that a compressor takes in, of which the flow is a volume of the moist air itself, as makers
   * count what a compressor delivers at the conditions of its inlet.
   *
   * @param drawn the flow, counted at the temperature and pressure of the intake
   * @param intake the dew point of the air taken in
   * @return the balance, in which nothing is taken out yet
   */
  public static WaterBalance ofMoistAir(FreeAirFlow drawn, DewPoint intake) {
    Objects.requireNonNull(drawn, "drawn");
    Objects.requireNonNull(intake, "intake");
    double dry = 1.0 - intake.vapourPressure().pascals() / intake.pressure().pascals();
    return ofDryAir(
        MassFlow.ofKilogramsPerSecond(drawn.massFlow().kilogramsPerSecond() * dry), intake);
  }

  /**
   * Leads the air through something that takes water out.
   *
   * @param name what it is, such as "aftercooler"
   * @param saturated the dew point of the air that leaves it if that is saturated: of a cooler the temperature and the
   *     pressure of the air behind it, of a dryer its pressure dew point
   * @return this with it; air that comes in drier leaves as it came
   * @throws IllegalArgumentException if the air that comes in drier has a dew point outside of [-100, 100] °C at the
   *     pressure there, or if there are 20 stages already
   */
  public WaterBalance through(String name, DewPoint saturated) {
    Objects.requireNonNull(name, "name");
    Objects.requireNonNull(saturated, "saturated");
    if (stages.size() == MOST_STAGES) {
      throw new IllegalArgumentException("stages that take water out must be at most " + MOST_STAGES
          + ", " + name + " would be one more");
    }
    DewPoint before = behind();
    boolean isDrier = before.humidityRatio() <= saturated.humidityRatio();
    DewPoint behind = isDrier ? before.at(saturated.pressure()) : saturated;
    double taken = isDrier ? 0.0 : before.humidityRatio() - saturated.humidityRatio();
    List<Stage> more = new ArrayList<>(stages);
    more.add(new Stage(
        name, behind, MassFlow.ofKilogramsPerSecond(dryAir.kilogramsPerSecond() * taken)));
    return new WaterBalance(dryAir, intake, more);
  }

  /** {@return the flow of dry air} */
  public MassFlow dryAir() {
    return dryAir;
  }

  /** {@return the dew point of the air taken in} */
  public DewPoint intake() {
    return intake;
  }

  /** {@return what takes water out, in the order of the air} */
  public List<Stage> stages() {
    return stages;
  }

  /** {@return the dew point of the air that leaves the last stage; of the intake where there is none} */
  public DewPoint behind() {
    return stages.isEmpty() ? intake : stages.get(stages.size() - 1).behind();
  }

  /** {@return the water taken in with the air} */
  public MassFlow takenIn() {
    return MassFlow.ofKilogramsPerSecond(dryAir.kilogramsPerSecond() * intake.humidityRatio());
  }

  /** {@return the water that is left in the air as vapour} */
  public MassFlow left() {
    return MassFlow.ofKilogramsPerSecond(dryAir.kilogramsPerSecond() * behind().humidityRatio());
  }

  /**
   * Finds how much liquid a flow of water is.
   *
   * @param water the flow of water, such as {@link #takenIn}
   * @param time how long, such as a shift of 8 h
   * @return the volume; a kilogram of water is a litre
   * @throws IllegalArgumentException if {@code time} is negative
   */
  public static Volume litres(MassFlow water, Duration time) {
    Objects.requireNonNull(water, "water");
    if (Objects.requireNonNull(time, "time").isNegative()) {
      throw new IllegalArgumentException(
          "time must be at least 0 s, was " + Digits.told(Seconds.of(time)) + " s");
    }
    return Volume.ofCubicMetres(water.kilogramsPerSecond() * Seconds.of(time) / WATER_DENSITY);
  }

  @Override
  public Working working(UnitSystem units) {
    Working.Builder working = Working.titled("Water out of compressed air", units)
        .given(DRY_AIR, dryAir.kilogramsPerSecond(), 6)
        .include(intake.working(units), IN_INTAKE)
        .step(TAKES_IN, takenIn().kilogramsPerSecond(), 4)
        .answer(TAKEN_IN);
    for (int i = 1; i <= stages.size(); i++) {
      Stage stage = stages.get(i - 1);
      Symbol taken = Symbol.of("ṁ" + i, ValueKind.MASS_FLOW);
      working
          .include(stage.behind().working(units), ratio(i))
          .step(
              Formula.of(
                  "Water taken out, " + stage.name(),
                  "⟨ṁ" + i + "⟩ = ⟨ṁa⟩ × (⟨W" + (i - 1) + "⟩ − ⟨W" + i + "⟩)",
                  BALANCE,
                  taken,
                  DRY_AIR,
                  ratio(i - 1),
                  ratio(i)),
              stage.takenOut().kilogramsPerSecond(),
              4)
          .answer(taken);
    }
    int last = stages.size();
    return working
        .step(
            Formula.of(
                "Water left as vapour",
                "⟨ṁv⟩ = ⟨ṁa⟩ × ⟨W" + last + "⟩",
                BALANCE,
                LEFT,
                DRY_AIR,
                ratio(last)),
            left().kilogramsPerSecond(),
            4)
        .answer(LEFT)
        .build();
  }

  /** The humidity ratio behind a stage, counted from 1; 0 is the intake. */
  private static Symbol ratio(int stage) {
    return Symbol.of("W" + stage, ValueKind.NUMBER);
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof WaterBalance that
        && dryAir.equals(that.dryAir)
        && intake.equals(that.intake)
        && stages.equals(that.stages);
  }

  @Override
  public int hashCode() {
    return Objects.hash(dryAir, intake, stages);
  }

  /** {@return the balance in one line, such as "water in 1.2 kg/h; aftercooler 0.7 kg/h; left 0.5 kg/h"} */
  @Override
  public String toString() {
    StringBuilder text = new StringBuilder("water in ").append(hourly(takenIn()));
    for (Stage stage : stages) {
      text.append("; ").append(stage.name()).append(' ').append(hourly(stage.takenOut()));
    }
    return text.append("; left ").append(hourly(left())).toString();
  }

  private static String hourly(MassFlow water) {
    return water.format(MassFlowUnit.KILOGRAM_PER_HOUR);
  }
}
