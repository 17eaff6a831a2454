package org.airfit.safety;

import java.util.Arrays;
import java.util.Optional;
import java.util.stream.Collectors;
import org.airfit.internal.NamedValues.Name;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.Length;
import org.jspecify.annotations.Nullable;

/**
 * A quantity of a {@link Situation} that a rule limits, by the name it has in a table of rules.
 *
 * <p>A share is a pressure over a rating; its limit is so many percent of that rating.
 */
enum RuleQuantity {
  CLEANING_PRESSURE(
      Situation.CLEANING, "cleaning pressure", Situation.CLEANING_PRESSURE, "at a blocked nozzle"),
  PRESSURE_ON_CLOTHING("pressure on clothing", Situation.CLOTHING_PRESSURE, "at the nozzle"),
  AUTOMATIC_FEED_PRESSURE(
      Situation.AUTOMATIC_FEED,
      "automatic feed pressure",
      Situation.AUTOMATIC_FEED_PRESSURE,
      "at the tool"),
  COUPLER_PRESSURE("coupler pressure", Situation.COUPLER_PRESSURE, "at the couplers"),
  LINE_PRESSURE("line pressure", Situation.LINE_PRESSURE, "in the line"),
  HOSE_BORE(Situation.HOSE_BORE, "hose bore", "no hose bore was told"),
  MINE_HOSE_BORE(Situation.MINE_HOSE_BORE, "mine hose bore", "no hose in a mine was named"),
  SHARE_OF_LOWEST_RATING(
      "share of lowest rating",
      Situation.LINE_PRESSURE,
      Situation.LOWEST_RATING,
      "the rating of the weakest part"),
  SHARE_OF_RECEIVER_RATING(
      "share of receiver rating",
      Situation.RECEIVER_REACHES,
      Situation.RECEIVER_RATING,
      "the rating of the receiver");

  /** What is compared. */
  enum Kind {
    PRESSURE,
    LENGTH,
    SHARE
  }

  private final Kind kind;
  private final String text;
  private final @Nullable Name<GaugePressure> pressure;
  private final @Nullable Name<GaugePressure> rating;
  private final @Nullable Name<Length> length;
  private final @Nullable Name<Boolean> fact;
  private final String phrase;
  private final String untold;

  RuleQuantity(String text, Name<GaugePressure> pressure, String phrase) {
    this(null, text, pressure, phrase);
  }

  /** A pressure that is the highest of the line where the fact alone was told. */
  RuleQuantity(
      @Nullable Name<Boolean> fact, String text, Name<GaugePressure> pressure, String phrase) {
    this(
        Kind.PRESSURE,
        text,
        pressure,
        null,
        null,
        fact,
        phrase,
        "no " + pressure.text() + " was told");
  }

  RuleQuantity(Name<Length> length, String text, String untold) {
    this(Kind.LENGTH, text, null, null, length, null, "of bore", untold);
  }

  RuleQuantity(
      String text, Name<GaugePressure> pressure, Name<GaugePressure> rating, String phrase) {
    this(
        Kind.SHARE,
        text,
        pressure,
        rating,
        null,
        null,
        phrase,
        "no " + pressure.text() + " with the " + rating.text() + " was told");
  }

  RuleQuantity(
      Kind kind,
      String text,
      @Nullable Name<GaugePressure> pressure,
      @Nullable Name<GaugePressure> rating,
      @Nullable Name<Length> length,
      @Nullable Name<Boolean> fact,
      String phrase,
      String untold) {
    this.kind = kind;
    this.text = text;
    this.pressure = pressure;
    this.rating = rating;
    this.length = length;
    this.fact = fact;
    this.phrase = phrase;
    this.untold = untold;
  }

  Kind kind() {
    return kind;
  }

  /** Where it is, such as "at the tool"; of a share, what it is a share of. */
  String phrase() {
    return phrase;
  }

  /** That it was not told, without a full stop. */
  String untold() {
    return untold;
  }

  /** What it presumes, where that is a fact of its own; null for nothing. */
  @Nullable
  Fact presumes() {
    return switch (this) {
      case PRESSURE_ON_CLOTHING -> Fact.AIR_ON_CLOTHING;
      case MINE_HOSE_BORE -> Fact.MINE;
      default -> null;
    };
  }

  /** What to ask for, where nobody knows what it takes to tell it; empty where it is told, or was not spoken of. */
  Optional<String> asked(Situation situation) {
    return rating != null && situation.isUnknown(rating) && situation.get(rating) == null
        ? Optional.of(rating.text())
        : Optional.empty();
  }

  /**
   * The same as {@link #value} at the least it can be: at the lowest at which the supply stands, where it hangs on that
   * and that was told, and at the narrowest bore.
   */
  double least(Situation situation) {
    Length narrowest = this == HOSE_BORE ? situation.get(Situation.NARROWEST_HOSE_BORE) : null;
    if (narrowest != null) {
      return narrowest.metres();
    }
    boolean hangsOnSupply =
        this == LINE_PRESSURE || this == COUPLER_PRESSURE || this == AUTOMATIC_FEED_PRESSURE;
    double value = value(situation);
    double lowest = pascals(Situation.LOWEST_LINE_PRESSURE, situation);
    return hangsOnSupply && lowest < value ? lowest : value;
  }

  /** The pressure [Pa above atmosphere] or length [m], NaN where it was not told. */
  double value(Situation situation) {
    if (length != null) {
      Length told = situation.get(length);
      return told == null ? Double.NaN : told.metres();
    }
    double told = pascals(pressure, situation);
    return Double.isNaN(told) && fact != null && situation.is(fact)
        ? pascals(Situation.LINE_PRESSURE, situation)
        : told;
  }

  /** The rating [Pa above atmosphere] a share is of, NaN where there is none. */
  double rating(Situation situation) {
    return pascals(rating, situation);
  }

  private static double pascals(@Nullable Name<GaugePressure> name, Situation situation) {
    GaugePressure told = name == null ? null : situation.get(name);
    return told == null ? Double.NaN : told.pascals();
  }

  /** Reads a name; empty from a blank text. */
  static Optional<RuleQuantity> parse(String text) {
    if (text.isBlank()) {
      return Optional.empty();
    }
    for (RuleQuantity quantity : values()) {
      if (quantity.text.equalsIgnoreCase(text.strip())) {
        return Optional.of(quantity);
      }
    }
    throw new IllegalArgumentException("was \"" + text + "\"; accepted: "
        + Arrays.stream(values()).map(RuleQuantity::toString).collect(Collectors.joining(", ")));
  }

  @Override
  public String toString() {
    return text;
  }
}
