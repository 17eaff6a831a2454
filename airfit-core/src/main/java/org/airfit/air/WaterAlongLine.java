package org.airfit.air;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.MassFlow;
import org.airfit.quantity.MassFlowUnit;
import org.airfit.quantity.Temperature;
import org.airfit.source.Source;
import org.airfit.working.Formula;
import org.airfit.working.Symbol;
import org.airfit.working.UnitSystem;
import org.airfit.working.ValueKind;
import org.airfit.working.Worked;
import org.airfit.working.Working;

/**
 * The water that a compressor draws in with the air, along one chain of places: where it falls out, where it is
 * drained, what goes on as liquid because nothing drains it, and what is left as vapour.
 *
 * <pre>
 *   V = min(A, S)     L = A − V     A' = V where the place drains, else A
 * </pre>
 *
 * <table class="striped">
 * <caption>Symbols; all are masses per mass of dry air</caption>
 * <thead><tr><th>symbol</th><th>meaning</th><th>unit</th></tr></thead>
 * <tbody>
 * <tr><td>A, A'</td><td>all water that comes to a place, and to the next one</td><td>kg/kg</td></tr>
 * <tr><td>S</td><td>humidity ratio of saturated air at the place, of a dryer at its pressure dew point, see
 * {@link DewPoint}</td><td>kg/kg</td></tr>
 * <tr><td>V, L</td><td>vapour and liquid there</td><td>kg/kg</td></tr>
 * </tbody>
 * </table>
 *
 * <p>Liquid that is not drained goes on with the air and may evaporate where it is warmer. Above 100 °C nothing is
 * taken to condense. A drain takes out all liquid; what a separator lets pass is counted only where a place is told
 * as not drained. Water in is water out, to the last digits. The vapour is that of ideal gases: really air at 8 bar
 * keeps 2 to 5 % more of it. {@link WaterBalance} is the same for places that all drain. <b>Source:</b> balance of
 * mass.
 *
 * @param dryAir the flow of dry air, the mean over the time that is asked about
 * @param driest the dew point of the driest air taken in
 * @param dampest the dew point of the dampest air taken in
 * @param places the places in the order of the air, at most 20
 */
public record WaterAlongLine(
    MassFlow dryAir, DewPoint driest, DewPoint dampest, List<WaterPlace> places) implements Worked {

  /** More than any line has; a choice of this project. */
  private static final int MOST_PLACES = 20;

  private static final Source BALANCE = Source.derived("balance of mass");

  private static final Symbol DRY_AIR = Symbol.of("ṁa", ValueKind.MASS_FLOW);
  private static final Symbol TAKEN_IN = Symbol.of("ṁ0", ValueKind.MASS_FLOW);
  private static final Symbol LEFT = Symbol.of("ṁv", ValueKind.MASS_FLOW);

  /**
   * Water at one place.
   *
   * @param name the place
   * @param air the temperature of the air there
   * @param pressure the pressure there
   * @param vapour the vapour that leaves with the air
   * @param liquid the liquid there: what falls out and what came on as liquid
   * @param isDrained whether the liquid leaves there
   * @param dewPoint the dew point of the air that leaves; empty outside of [-100, 100] °C
   */
  public record AtPlace(
      String name,
      Temperature air,
      AbsolutePressure pressure,
      MassFlow vapour,
      MassFlow liquid,
      boolean isDrained,
      Optional<DewPoint> dewPoint) {

    /**
     * Refuses what is null.
     *
     * @param name the place
     * @param air the temperature of the air there
     * @param pressure the pressure there
     * @param vapour the vapour that leaves with the air
     * @param liquid the liquid there
     * @param isDrained whether the liquid leaves there
     * @param dewPoint the dew point of the air that leaves
     */
    public AtPlace {
      Objects.requireNonNull(name, "name");
      Objects.requireNonNull(air, "air");
      Objects.requireNonNull(pressure, "pressure");
      Objects.requireNonNull(vapour, "vapour");
      Objects.requireNonNull(liquid, "liquid");
      Objects.requireNonNull(dewPoint, "dewPoint");
    }

    /** {@return what leaves by the drain} */
    public MassFlow drainedOff() {
      return isDrained ? liquid : MassFlow.ofKilogramsPerSecond(0.0);
    }

    /** {@return what goes on as liquid} */
    public MassFlow carriedOn() {
      return isDrained ? MassFlow.ofKilogramsPerSecond(0.0) : liquid;
    }

    /** {@return the place in one line, such as "receiver: 0.5 kg/h of liquid, drained; 0.4 kg/h of vapour"} */
    @Override
    public String toString() {
      return name + ": " + liquid.format(MassFlowUnit.KILOGRAM_PER_HOUR) + " of liquid, "
          + (isDrained ? "drained" : "not drained") + "; "
          + vapour.format(MassFlowUnit.KILOGRAM_PER_HOUR) + " of vapour"
          + dewPoint.map(point -> ", dew point " + point).orElse("");
    }
  }

  /**
   * The most water that can be at a place, within all that was told of temperatures, pressures and intake.
   *
   * @param most the place when the dampest air is taken in, all places in front of it are at their warmest and it is at
   *     its coldest
   * @param withoutDryer the liquid there if no dryer works
   * @param need whether it needs a drain
   */
  public record AtMost(AtPlace most, MassFlow withoutDryer, DrainNeed need) {

    /**
     * Refuses what is null.
     *
     * @param most the place at its wettest
     * @param withoutDryer the liquid there if no dryer works
     * @param need whether it needs a drain
     */
    public AtMost {
      Objects.requireNonNull(most, "most");
      Objects.requireNonNull(withoutDryer, "withoutDryer");
      Objects.requireNonNull(need, "need");
    }

    /** {@return the place in one line} */
    @Override
    public String toString() {
      return most + "; without a dryer " + withoutDryer.format(MassFlowUnit.KILOGRAM_PER_HOUR)
          + " of liquid; " + need.label();
    }
  }

  /**
   * Checks the components and copies the list.
   *
   * @param dryAir the flow of dry air
   * @param driest the dew point of the driest air taken in
   * @param dampest the dew point of the dampest air taken in
   * @param places the places in the order of the air, at most 20
   * @throws IllegalArgumentException if the driest air is damper than the dampest, there is no place or more than 20,
   *     or two have one name
   */
  public WaterAlongLine {
    Objects.requireNonNull(dryAir, "dryAir");
    Objects.requireNonNull(driest, "driest");
    Objects.requireNonNull(dampest, "dampest");
    places = List.copyOf(Objects.requireNonNull(places, "places"));
    if (!(driest.humidityRatio() <= dampest.humidityRatio())) {
      throw new IllegalArgumentException(
          "driest air taken in must be at most as damp as " + dampest + ", was " + driest);
    }
    if (places.isEmpty() || places.size() > MOST_PLACES) {
      throw new IllegalArgumentException(
          "places along a line must be in [1, " + MOST_PLACES + "], were " + places.size());
    }
    long names = places.stream().map(WaterPlace::name).distinct().count();
    if (names < places.size()) {
      throw new IllegalArgumentException("places along a line must have a name each, were "
          + String.join(", ", places.stream().map(WaterPlace::name).toList()));
    }
  }

  /** {@return the water taken in with the dampest air} */
  public MassFlow takenIn() {
    return water(dampest.humidityRatio());
  }

  /** {@return each place when the dampest air is taken in and all places are at their warmest and lowest pressure} */
  public List<AtPlace> warmDay() {
    return course(dampest, places, places.size());
  }

  /**
   * {@return the highest dew point that the air can have at the end: with the dampest air and all places at their
   * warmest, at the lowest pressures or at the highest; empty outside of [-100, 100] °C}
   */
  public Optional<DewPoint> dampestEnd() {
    List<WaterPlace> pressed =
        places.stream().map(WaterPlace::atHighestPressure).toList();
    Optional<DewPoint> low = last(warmDay()).dewPoint();
    Optional<DewPoint> high = last(course(dampest, pressed, places.size())).dewPoint();
    boolean isHigher = low.isPresent()
        && high.isPresent()
        && high.get().temperature().compareTo(low.get().temperature()) > 0;
    return isHigher || low.isEmpty() ? high : low;
  }

  private static AtPlace last(List<AtPlace> course) {
    return course.get(course.size() - 1);
  }

  /** {@return each place when the driest air is taken in and all places are at their coldest and highest pressure} */
  public List<AtPlace> coldDay() {
    return course(driest, places, 0);
  }

  /** {@return the most water that can be at each place; these do not happen all at once, and have no sum} */
  public List<AtMost> most() {
    List<WaterPlace> undried = places.stream().map(WaterPlace::withoutDryer).toList();
    List<AtMost> most = new ArrayList<>();
    for (int i = 0; i < places.size(); i++) {
      AtPlace at = course(dampest, places.subList(0, i + 1), i).get(i);
      MassFlow without = course(dampest, undried.subList(0, i + 1), i).get(i).liquid();
      most.add(new AtMost(at, without, need(places.get(i), at, without)));
    }
    return List.copyOf(most);
  }

  private static DrainNeed need(WaterPlace place, AtPlace at, MassFlow without) {
    if (at.liquid().kilogramsPerSecond() > 0.0) {
      return place.drains() ? DrainNeed.FITTED : DrainNeed.MISSING;
    }
    return without.kilogramsPerSecond() > 0.0 ? DrainNeed.WITHOUT_DRYER : DrainNeed.NONE;
  }

  private MassFlow water(double humidityRatio) {
    return MassFlow.ofKilogramsPerSecond(dryAir.kilogramsPerSecond() * humidityRatio);
  }

  /** Each place, the first ones at their warmest and lowest pressure, the others at their coldest and highest. */
  private List<AtPlace> course(DewPoint intake, List<WaterPlace> chain, int warm) {
    List<AtPlace> course = new ArrayList<>();
    double all = intake.humidityRatio();
    for (int i = 0; i < chain.size(); i++) {
      WaterPlace place = chain.get(i);
      Temperature air = i < warm ? place.air().most() : place.air().least();
      AbsolutePressure pressure =
          i < warm ? place.pressure().least() : place.pressure().most();
      double vapour = Math.min(all, place.saturated(air.kelvins(), pressure.pascals()));
      course.add(new AtPlace(
          place.name(),
          air,
          pressure,
          water(vapour),
          water(all - vapour),
          place.drains(),
          WaterPlace.dewPoint(vapour, pressure)));
      all = place.drains() ? vapour : all;
    }
    return List.copyOf(course);
  }

  /** {@return the working of {@link #warmDay}} */
  @Override
  public Working working(UnitSystem units) {
    Symbol coming = ratio(0);
    Working.Builder working = Working.titled(
            "Water along the line, at its warmest with the dampest air", units)
        .given(DRY_AIR, dryAir.kilogramsPerSecond(), 6)
        .include(dampest.working(units), coming)
        .step(
            Formula.of("Water taken in", "⟨ṁ0⟩ = ⟨ṁa⟩ × ⟨W0⟩", BALANCE, TAKEN_IN, DRY_AIR, coming),
            takenIn().kilogramsPerSecond(),
            4)
        .answer(TAKEN_IN);
    List<AtPlace> course = warmDay();
    Symbol leaving = coming;
    for (int i = 0; i < course.size(); i++) {
      AtPlace at = course.get(i);
      leaving = coming;
      if (at.liquid().kilogramsPerSecond() > 0.0) {
        WaterPlace place = places.get(i);
        Symbol saturated = ratio(i + 1);
        Symbol liquid = Symbol.of("ṁ" + (i + 1), ValueKind.MASS_FLOW);
        double t = place.saturatedKelvins(at.air().kelvins());
        working
            .include(
                new DewPoint(Temperature.ofKelvins(t), at.pressure()).working(units), saturated)
            .step(
                Formula.of(
                    "Liquid at " + at.name(),
                    "⟨" + liquid.text() + "⟩ = ⟨ṁa⟩ × (⟨" + coming.text() + "⟩ − ⟨"
                        + saturated.text() + "⟩)",
                    BALANCE,
                    liquid,
                    DRY_AIR,
                    coming,
                    saturated),
                at.liquid().kilogramsPerSecond(),
                4)
            .answer(liquid);
        leaving = saturated;
        coming = at.isDrained() ? saturated : coming;
      }
    }
    return working
        .step(
            Formula.of(
                "Water left as vapour",
                "⟨ṁv⟩ = ⟨ṁa⟩ × ⟨" + leaving.text() + "⟩",
                BALANCE,
                LEFT,
                DRY_AIR,
                leaving),
            last(course).vapour().kilogramsPerSecond(),
            4)
        .answer(LEFT)
        .build();
  }

  /** {@return the water on a warm day in one line} */
  @Override
  public String toString() {
    return "water in " + takenIn().format(MassFlowUnit.KILOGRAM_PER_HOUR) + "; "
        + String.join("; ", warmDay().stream().map(AtPlace::toString).toList());
  }

  /** The humidity ratio of saturated air at a place, counted from 1; 0 is the intake. */
  private static Symbol ratio(int place) {
    return Symbol.of("W" + place, ValueKind.NUMBER);
  }
}
