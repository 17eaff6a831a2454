package org.airfit.run;

import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import org.airfit.internal.Digits;
import org.airfit.line.Conduit;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.Length;
import org.airfit.quantity.MassFlow;
import org.airfit.quantity.PressureDrop;
import org.airfit.quantity.SonicConductance;
import org.airfit.working.UnitSystem;

/**
 * One explanation of readings: what may be other than told, how probable that is, and the value it would have.
 *
 * <p>This class is immutable, thread-safe and value-based.
 */
public final class Explanation {

  /** What an explanation that fits as badly as one reading set in a hundred is worth: our choice. */
  static final double MISFIT = 0.01;

  private record Values(
      Suspect suspect,
      double probability,
      OptionalDouble fit,
      Optional<FittedRange<SonicConductance>> conductance,
      Optional<FittedRange<Length>> bore,
      Optional<FittedRange<PressureDrop>> droop,
      Optional<FittedRange<FreeAirFlow>> air,
      Optional<FittedRange<GaugePressure>> shownTooMuch,
      OptionalDouble factor) {}

  private final Values values;

  private Explanation(Values values) {
    this.values = values;
  }

  /**
   * Makes an explanation of what was fitted.
   *
   * @param range the least, middle and most of the unknown, as {@link GaugeUnknown} counts it; empty where it has none
   */
  static Explanation of(
      Suspect suspect, double probability, OptionalDouble fit, double[] range, GaugeScene scene) {
    Optional<FittedRange<SonicConductance>> conductance = Optional.empty();
    Optional<FittedRange<Length>> bore = Optional.empty();
    Optional<FittedRange<PressureDrop>> droop = Optional.empty();
    Optional<FittedRange<FreeAirFlow>> air = Optional.empty();
    Optional<FittedRange<GaugePressure>> shown = Optional.empty();
    OptionalDouble factor = OptionalDouble.empty();
    switch (suspect.kind()) {
      case PART -> {
        factor = OptionalDouble.of(Math.exp(range[1]));
        if (element(suspect, scene) instanceof Element.Part part) {
          double c = part.capacity().conductance().cubicMetresPerSecondPascal();
          conductance = Optional.of(new FittedRange<>(
              conductance(c, range[0]), conductance(c, range[1]), conductance(c, range[2])));
        }
      }
      case BORE -> {
        double d = conduit(suspect, scene).bore().metres();
        bore = Optional.of(
            new FittedRange<>(length(d, range[0]), length(d, range[1]), length(d, range[2])));
      }
      case DROOP ->
        droop = Optional.of(new FittedRange<>(
            PressureDrop.ofPascals(range[0]),
            PressureDrop.ofPascals(range[1]),
            PressureDrop.ofPascals(range[2])));
      case LEAK ->
        air = Optional.of(
            new FittedRange<>(leak(range[0], scene), leak(range[1], scene), leak(range[2], scene)));
      case TOOL_AIR -> {
        FreeAirFlow told = scene.tool().rated().times(scene.tool().load());
        air = Optional.of(new FittedRange<>(
            told.times(Math.exp(range[0])),
            told.times(Math.exp(range[1])),
            told.times(Math.exp(range[2]))));
      }
      case GAUGE ->
        shown = Optional.of(new FittedRange<>(
            GaugePressure.ofPascals(range[0]),
            GaugePressure.ofPascals(range[1]),
            GaugePressure.ofPascals(range[2])));
      case NOTHING, OTHER -> {
        // no value
      }
    }
    return new Explanation(
        new Values(suspect, probability, fit, conductance, bore, droop, air, shown, factor));
  }

  private static Element element(Suspect suspect, GaugeScene scene) {
    return scene.path().elements().stream()
        .filter(element -> element.name().equals(suspect.place()))
        .findFirst()
        .orElseThrow()
        .alone();
  }

  private static Conduit conduit(Suspect suspect, GaugeScene scene) {
    return ((Element.Line) element(suspect, scene)).conduit();
  }

  private static SonicConductance conductance(double told, double x) {
    return SonicConductance.ofCubicMetresPerSecondPascal(told * Math.exp(x));
  }

  private static Length length(double told, double x) {
    return Length.ofMetres(told * Math.exp(x));
  }

  private static FreeAirFlow leak(double x, GaugeScene scene) {
    MassFlow flow = GaugeUnknown.leak(x);
    return FreeAirFlow.from(flow, scene.tool().rated().reference());
  }

  /** {@return what is other than told; of kind NOTHING where all is as told} */
  public Suspect suspect() {
    return values.suspect;
  }

  /** {@return how probable it is by the readings [-], in (0, 1)} */
  public double probability() {
    return values.probability;
  }

  /**
   * {@return the chance that readings fit this explanation worse than these do, were it the right one [-]; empty where
   * there are no more readings than unknowns, so that nothing tests it}
   */
  public OptionalDouble fit() {
    return values.fit;
  }

  /** {@return whether the readings fit it; not where nothing tests it} */
  public boolean fits() {
    return values.fit.isPresent() && values.fit.getAsDouble() >= MISFIT;
  }

  /** {@return the sonic conductance of a part; empty of other suspects and of elements of one's own} */
  public Optional<FittedRange<SonicConductance>> conductance() {
    return values.conductance;
  }

  /** {@return how many times as much a part lets through as was told [-]; empty of other suspects} */
  public OptionalDouble factor() {
    return values.factor;
  }

  /** {@return the bore of a line; empty of other suspects} */
  public Optional<FittedRange<Length>> bore() {
    return values.bore;
  }

  /** {@return by how much less is held at the air that the tool is rated at; empty of other suspects} */
  public Optional<FittedRange<PressureDrop>> droop() {
    return values.droop;
  }

  /** {@return what a leak loses at the pressure of the supply, or the tool takes at its rating; empty of others} */
  public Optional<FittedRange<FreeAirFlow>> air() {
    return values.air;
  }

  /** {@return how much more a gauge shows than stands there, less if it is below 0; empty of other suspects} */
  public Optional<FittedRange<GaugePressure>> shownTooMuch() {
    return values.shownTooMuch;
  }

  /**
   * Tells the value in words.
   *
   * @param units the units to write it in
   * @return such as "bore 6.1 mm, in 95 of 100 such cases between 5.9 mm and 6.4 mm"; of no value "no value"
   */
  public String value(UnitSystem units) {
    Objects.requireNonNull(units, "units");
    if (values.conductance.isPresent()) {
      FittedRange<SonicConductance> c = values.conductance.get();
      return between("C of ", said(units, c.least()), said(units, c.best()), said(units, c.most()));
    }
    if (values.factor.isPresent()) {
      return "lets " + Digits.significant(values.factor.getAsDouble(), 2)
          + " times of what was told through";
    }
    if (values.bore.isPresent()) {
      FittedRange<Length> bore = values.bore.get();
      return between(
          "bore of ",
          said(units, bore.least()),
          said(units, bore.best()),
          said(units, bore.most()));
    }
    if (values.droop.isPresent()) {
      FittedRange<PressureDrop> droop = values.droop.get();
      return between(
          "droop of ", units.say(droop.least()), units.say(droop.best()), units.say(droop.most()));
    }
    if (values.air.isPresent()) {
      FittedRange<FreeAirFlow> air = values.air.get();
      return between(
          "air of ", units.say(air.least()), units.say(air.best()), units.say(air.most()));
    }
    return values.shownTooMuch.map(off -> tooMuch(units, off)).orElse("no value");
  }

  private static String between(String what, String least, String best, String most) {
    return what + best + ", in 95 of 100 such cases between " + least + " and " + most;
  }

  private static String said(UnitSystem units, SonicConductance c) {
    return units.either(
        Digits.padded(c.cubicDecimetresPerSecondBar(), 2) + " dm³/(s·bar)", units.say(c));
  }

  private static String said(UnitSystem units, Length bore) {
    return units.either(
        Digits.fixed(bore.millimetres(), 1) + " mm", Digits.fixed(bore.inches(), 2) + " in");
  }

  private static String tooMuch(UnitSystem units, FittedRange<GaugePressure> off) {
    double best = off.best().pascals();
    double reach = 0.5 * (off.most().pascals() - off.least().pascals());
    return "shows " + units.say(PressureDrop.ofPascals(Math.abs(best)))
        + (best < 0.0 ? " too little" : " too much") + ", give or take "
        + units.say(PressureDrop.ofPascals(reach));
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof Explanation that && values.equals(that.values);
  }

  @Override
  public int hashCode() {
    return values.hashCode();
  }

  /** {@return the explanation in one line, such as "bore of hose, 97.2 %: bore of 6.1 mm, …"} */
  @Override
  public String toString() {
    return values.suspect + ", " + Digits.percent(values.probability) + ": " + value(UnitSystem.SI);
  }
}
