package org.airfit.air;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.airfit.internal.Digits;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.MassFlow;
import org.airfit.quantity.Temperature;
import org.airfit.source.Source;
import org.airfit.working.Formula;
import org.airfit.working.Symbol;
import org.airfit.working.UnitSystem;
import org.airfit.working.ValueKind;
import org.airfit.working.Worked;
import org.airfit.working.Working;

/**
 * For which air the maker of a dryer or filter warrants what it does: the flow, and the pressure, the temperature of
 * the air that comes in and that of the room at which it holds; and the factors by which the flow changes elsewhere.
 *
 * <pre>
 *   ṁ = ṁr Fp Ft Fa
 * </pre>
 *
 * <p>ṁr rated flow, Fp, Ft, Fa the maker's factors of inlet pressure, inlet temperature and room temperature [-].
 * Nothing is drawn between two points of a table, and nothing beyond its last: of two neighbours the worse counts. A
 * factor without a table is 1 where the air is at least as good as the rating says: the pressure at least as high, the
 * temperatures at most as high; otherwise the maker has not told. <b>Source:</b> product of factors, as manuals of
 * dryers print it with an example.
 *
 * @param flow the rated flow, above 0
 * @param pressure the inlet pressure it is rated at
 * @param inlet the inlet temperature it is rated at
 * @param room the temperature of the room it is rated at; empty where it does not matter or is not told
 * @param byPressure factors by inlet pressure, rising; empty where none are told
 * @param byInlet factors by inlet temperature, rising in temperature; empty where none are told
 * @param byRoom factors by temperature of the room, rising in temperature; empty where none are told
 */
public record TreatmentRating(
    FreeAirFlow flow,
    GaugePressure pressure,
    Temperature inlet,
    Optional<Temperature> room,
    List<PressureFactor> byPressure,
    List<TemperatureFactor> byInlet,
    List<TemperatureFactor> byRoom) {

  private static final Source FACTORS = Source.handbook(
      "manuals of refrigerated dryers: capacity is the rated flow times the factors of pressure"
          + " and temperatures");

  private static final Symbol RATED = Symbol.of("ṁr", ValueKind.MASS_FLOW);
  private static final Symbol OF_PRESSURE = Symbol.of("Fp", ValueKind.NUMBER);
  private static final Symbol OF_INLET = Symbol.of("Ft", ValueKind.NUMBER);
  private static final Symbol OF_ROOM = Symbol.of("Fa", ValueKind.NUMBER);
  private static final Symbol CAPACITY = Symbol.of("ṁ", ValueKind.MASS_FLOW);

  private static final Formula PRODUCT = Formula.of(
      "Flow for which the rating holds",
      "⟨ṁ⟩ = ⟨ṁr⟩ × ⟨Fp⟩ × ⟨Ft⟩ × ⟨Fa⟩",
      FACTORS,
      CAPACITY,
      RATED,
      OF_PRESSURE,
      OF_INLET,
      OF_ROOM);

  private static final double MOST_FACTOR = 10.0;

  /**
   * A factor of the flow at an inlet pressure.
   *
   * @param at the inlet pressure
   * @param factor the factor [-], in (0, 10]
   */
  public record PressureFactor(GaugePressure at, double factor) {

    /**
     * Checks the components.
     *
     * @param at the inlet pressure
     * @param factor the factor [-], in (0, 10]
     * @throws IllegalArgumentException if the factor is out of range
     */
    public PressureFactor {
      Objects.requireNonNull(at, "at");
      requireFactor(factor);
    }
  }

  /**
   * A factor of the flow at a temperature.
   *
   * @param at the temperature
   * @param factor the factor [-], in (0, 10]
   */
  public record TemperatureFactor(Temperature at, double factor) {

    /**
     * Checks the components.
     *
     * @param at the temperature
     * @param factor the factor [-], in (0, 10]
     * @throws IllegalArgumentException if the factor is out of range
     */
    public TemperatureFactor {
      Objects.requireNonNull(at, "at");
      requireFactor(factor);
    }
  }

  /**
   * The flow up to which a rating holds in some air.
   *
   * @param rated the rated flow
   * @param ofPressure the factor of the inlet pressure [-]
   * @param ofInlet the factor of the inlet temperature [-]
   * @param ofRoom the factor of the temperature of the room [-]
   */
  public record Capacity(MassFlow rated, double ofPressure, double ofInlet, double ofRoom)
      implements Worked {

    /**
     * Checks the components.
     *
     * @param rated the rated flow
     * @param ofPressure the factor of the inlet pressure [-]
     * @param ofInlet the factor of the inlet temperature [-]
     * @param ofRoom the factor of the temperature of the room [-]
     * @throws IllegalArgumentException if a factor is out of range
     */
    public Capacity {
      Objects.requireNonNull(rated, "rated");
      requireFactor(ofPressure);
      requireFactor(ofInlet);
      requireFactor(ofRoom);
    }

    /** {@return the flow} */
    public MassFlow flow() {
      return MassFlow.ofKilogramsPerSecond(
          rated.kilogramsPerSecond() * ofPressure * ofInlet * ofRoom);
    }

    @Override
    public Working working(UnitSystem units) {
      return Working.titled("Flow for which a rating holds", units)
          .given(RATED, rated.kilogramsPerSecond(), 5)
          .given(OF_PRESSURE, ofPressure, 5)
          .given(OF_INLET, ofInlet, 5)
          .given(OF_ROOM, ofRoom, 5)
          .step(PRODUCT, flow().kilogramsPerSecond(), 4)
          .answer(CAPACITY)
          .build();
    }
  }

  /**
   * Checks the components and copies the lists.
   *
   * @param flow the rated flow, above 0
   * @param pressure the inlet pressure it is rated at
   * @param inlet the inlet temperature it is rated at
   * @param room the temperature of the room it is rated at
   * @param byPressure factors by inlet pressure, rising
   * @param byInlet factors by inlet temperature, rising in temperature
   * @param byRoom factors by temperature of the room, rising in temperature
   * @throws IllegalArgumentException if the flow is 0, or a table is out of order: a factor must not fall as the
   *     pressure rises, nor rise as a temperature rises
   */
  public TreatmentRating {
    Objects.requireNonNull(flow, "flow");
    Objects.requireNonNull(pressure, "pressure");
    Objects.requireNonNull(inlet, "inlet");
    Objects.requireNonNull(room, "room");
    byPressure = List.copyOf(Objects.requireNonNull(byPressure, "byPressure"));
    byInlet = List.copyOf(Objects.requireNonNull(byInlet, "byInlet"));
    byRoom = List.copyOf(Objects.requireNonNull(byRoom, "byRoom"));
    if (!(flow.massFlow().kilogramsPerSecond() > 0.0)) {
      throw new IllegalArgumentException("rated flow must be above 0, was " + flow.shown());
    }
    for (int i = 1; i < byPressure.size(); i++) {
      if (byPressure.get(i).at().compareTo(byPressure.get(i - 1).at()) <= 0
          || byPressure.get(i).factor() < byPressure.get(i - 1).factor()) {
        throw new IllegalArgumentException("factors by pressure must rise with the pressure, were "
            + Digits.told(byPressure.get(i - 1).factor()) + " at "
            + byPressure.get(i - 1).at().shown() + " and "
            + Digits.told(byPressure.get(i).factor()) + " at "
            + byPressure.get(i).at().shown());
      }
    }
    requireFalling("inlet temperature", byInlet);
    requireFalling("temperature of the room", byRoom);
  }

  private static void requireFactor(double factor) {
    if (!(factor > 0.0 && factor <= MOST_FACTOR)) {
      throw new IllegalArgumentException(
          "factor of a flow must be in (0, 10], was " + Digits.told(factor));
    }
  }

  private static void requireFalling(String what, List<TemperatureFactor> factors) {
    for (int i = 1; i < factors.size(); i++) {
      TemperatureFactor before = factors.get(i - 1);
      TemperatureFactor here = factors.get(i);
      if (here.at().compareTo(before.at()) <= 0 || here.factor() > before.factor()) {
        throw new IllegalArgumentException("factors by " + what
            + " must fall as that rises, were " + Digits.told(before.factor()) + " at "
            + before.at().shown() + " and " + Digits.told(here.factor()) + " at "
            + here.at().shown());
      }
    }
  }

  /**
   * Finds the flow up to which the rating holds.
   *
   * @param lowest the lowest inlet pressure
   * @param hottest the highest inlet temperature
   * @param warmestRoom the highest temperature of the room
   * @return the flow with its factors; empty where the maker has not told it for such air, see {@link #gaps}
   */
  public Optional<Capacity> capacity(
      GaugePressure lowest, Temperature hottest, Temperature warmestRoom) {
    Optional<Double> ofPressure = ofPressure(Objects.requireNonNull(lowest, "lowest"));
    Optional<Double> ofInlet =
        ofTemperature(Objects.requireNonNull(hottest, "hottest"), Optional.of(inlet), byInlet);
    Optional<Double> ofRoom =
        ofTemperature(Objects.requireNonNull(warmestRoom, "warmestRoom"), room, byRoom);
    return ofPressure.isPresent() && ofInlet.isPresent() && ofRoom.isPresent()
        ? Optional.of(new Capacity(flow.massFlow(), ofPressure.get(), ofInlet.get(), ofRoom.get()))
        : Optional.empty();
  }

  /**
   * Tells for what of the air the maker has told no figure.
   *
   * @param lowest the lowest inlet pressure
   * @param hottest the highest inlet temperature
   * @param warmestRoom the highest temperature of the room
   * @param units the units to write in
   * @return such as "inlet temperature 50 °C, told up to 45 °C"; none where {@link #capacity} knows the flow
   */
  public List<String> gaps(
      GaugePressure lowest, Temperature hottest, Temperature warmestRoom, UnitSystem units) {
    Objects.requireNonNull(units, "units");
    List<String> gaps = new ArrayList<>();
    if (ofPressure(Objects.requireNonNull(lowest, "lowest")).isEmpty()) {
      GaugePressure told = byPressure.isEmpty() ? pressure : byPressure.get(0).at();
      gaps.add("inlet pressure " + units.say(lowest, told) + ", told down to "
          + units.say(told, lowest));
    }
    gap(gaps, "inlet temperature ", hottest, "hottest", Optional.of(inlet), byInlet, units);
    gap(gaps, "temperature of the room ", warmestRoom, "warmestRoom", room, byRoom, units);
    return List.copyOf(gaps);
  }

  private static void gap(
      List<String> gaps,
      String what,
      Temperature most,
      String name,
      Optional<Temperature> rated,
      List<TemperatureFactor> factors,
      UnitSystem units) {
    if (ofTemperature(Objects.requireNonNull(most, name), rated, factors).isEmpty()) {
      Temperature told = factors.isEmpty()
          ? rated.orElseThrow()
          : factors.get(factors.size() - 1).at();
      gaps.add(what + units.say(most, told) + ", told up to " + units.say(told, most));
    }
  }

  private Optional<Double> ofPressure(GaugePressure lowest) {
    if (byPressure.isEmpty()) {
      return lowest.compareTo(pressure) >= 0 ? Optional.of(1.0) : Optional.empty();
    }
    Optional<Double> found = Optional.empty();
    for (PressureFactor each : byPressure) {
      found = each.at().compareTo(lowest) <= 0 ? Optional.of(each.factor()) : found;
    }
    return found;
  }

  private static Optional<Double> ofTemperature(
      Temperature most, Optional<Temperature> rated, List<TemperatureFactor> factors) {
    if (factors.isEmpty()) {
      return rated.isEmpty() || most.compareTo(rated.get()) <= 0
          ? Optional.of(1.0)
          : Optional.empty();
    }
    for (TemperatureFactor each : factors) {
      if (each.at().compareTo(most) >= 0) {
        return Optional.of(each.factor());
      }
    }
    return Optional.empty();
  }

  /** {@return the rating in one line, such as "100 L/s ANR at 7 bar(g) and 35 °C"} */
  @Override
  public String toString() {
    int points = byPressure.size() + byInlet.size() + byRoom.size();
    return flow.shown() + " at " + pressure.shown() + " and " + inlet.shown()
        + room.map(warmest -> " in a room of " + warmest.shown()).orElse("")
        + (points == 0 ? "" : ", factors at " + points + " points");
  }
}
