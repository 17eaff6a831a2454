package org.airfit.plug;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Collectors;
import org.airfit.internal.Capital;
import org.airfit.internal.Digits;
import org.airfit.measure.CaliperSlip;
import org.airfit.quantity.Length;
import org.airfit.quantity.LengthUnit;
import org.airfit.working.UnitSystem;

/**
 * A reading that was probably a slip: which, what kind, and the profile that all others, and this one as it was meant,
 * agree with.
 *
 * <p>It is told and never corrected: read again, and enter what the caliper shows.
 *
 * <p>Nobody but the identification makes one. This class is immutable and thread-safe.
 */
public final class ReadingSlip {

  static final List<String> NUMBERS =
      List.of("none", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine");
  private static final List<String> PLACES = List.of(
      "zeroth", "first", "second", "third", "fourth", "fifth", "sixth", "seventh", "eighth",
      "ninth");

  private final List<PlugReading> readings;
  private final CaliperSlip kind;
  private final PlugProfile profile;
  private final Optional<Length> meant;
  private final Optional<Dimension> measured;
  private final int agreeing;
  private final double probability;

  /** Keeps a copy of the list. */
  ReadingSlip(
      List<PlugReading> readings,
      CaliperSlip kind,
      PlugProfile profile,
      Optional<Length> meant,
      Optional<Dimension> measured,
      int agreeing,
      double probability) {
    this.readings = List.copyOf(readings);
    this.kind = Objects.requireNonNull(kind, "kind");
    this.profile = Objects.requireNonNull(profile, "profile");
    this.meant = Objects.requireNonNull(meant, "meant");
    this.measured = Objects.requireNonNull(measured, "measured");
    this.agreeing = agreeing;
    this.probability = probability;
  }

  /** The same, with the chance of another slip of this reading that speaks for this profile too. */
  ReadingSlip with(double more) {
    return new ReadingSlip(
        readings, kind, profile, meant, measured, agreeing, Math.min(1.0, probability + more));
  }

  /** {@return the readings to take again: one, or all of them where all were typed in the wrong unit} */
  public List<PlugReading> readings() {
    return readings;
  }

  /** {@return what kind of slip} */
  public CaliperSlip kind() {
    return kind;
  }

  /** {@return the profile that all other readings agree with} */
  public PlugProfile profile() {
    return profile;
  }

  /** {@return what was probably meant; empty where that cannot be told, or several readings slipped} */
  public Optional<Length> meant() {
    return meant;
  }

  /** {@return the dimension that was probably measured, where it was another one} */
  public Optional<Dimension> measured() {
    return measured;
  }

  /** {@return how many readings agree with the profile as they stand} */
  public int agreeing() {
    return agreeing;
  }

  /**
   * {@return the chance of this slip, against every other explanation; where the reading may as well be misread, of
   * the same profile, that chance is in it}
   */
  public double probability() {
    return probability;
  }

  /**
   * {@return what to do and why, such as "Four readings agree with Tern; read the fifth again, the groove width (W_g):
   * 5.16 mm was misread."}
   */
  public String inWords() {
    return inWords(UnitSystem.SI);
  }

  /**
   * Tells the same with lengths in millimetres or inches. Where one unit was typed for the other, both are told.
   *
   * @param units the units
   * @return what to do and why
   */
  public String inWords(UnitSystem units) {
    Objects.requireNonNull(units, "units");
    if (readings.size() > 1) {
      return "All readings look like " + unit() + ": "
          + readings.stream()
              .map(reading -> number(reading.length()) + " " + typed() + " is "
                  + kind.meant(reading.length()).get(0).format(LengthUnit.MILLIMETRE, 2))
              .collect(Collectors.joining(", "))
          + ", as of " + profile.displayName() + ". Type the unit.";
    }
    PlugReading reading = readings.get(0);
    String what = "the " + reading.dimension();
    String start = agreeing == 0
        ? "Read " + what + " again: "
        : Capital.first(NUMBERS.get(agreeing))
            + (agreeing == 1 ? " reading agrees" : " readings agree")
            + " with " + profile.displayName() + "; read the " + PLACES.get(agreeing + 1)
            + " again, " + what + ": ";
    return start + why(reading, units) + ".";
  }

  private String why(PlugReading reading, UnitSystem units) {
    String read = units.saySmall(reading.length());
    String as = meant
        .map(length -> length.format(units.smallLengthUnit(), units.either(2, 4)))
        .orElse("");
    String of = ", as of " + profile.displayName();
    return switch (kind) {
      case INCHES_TYPED, MILLIMETRES_TYPED ->
        number(reading.length()) + " looks like " + unit() + ", "
            + number(meant.map(this::asTyped).orElseThrow()) + " "
            + typed() + " is "
            + meant.map(length -> length.format(LengthUnit.MILLIMETRE, 2)).orElse("")
            + of;
      case DIGITS_EXCHANGED -> read + " looks like " + as + " with two digits exchanged" + of;
      case DECIMAL_POINT -> read + ": a decimal slip? It would be " + as + of;
      case OTHER_SIZE ->
        read + " looks like the " + measured.orElseThrow() + " of " + profile.displayName();
      case MISREAD -> read + " may be misread";
    };
  }

  private Length asTyped(Length as) {
    return kind == CaliperSlip.INCHES_TYPED ? as.times(1.0 / 25.4) : as;
  }

  private String unit() {
    return kind == CaliperSlip.INCHES_TYPED ? "inches" : "millimetres typed as inches";
  }

  private String typed() {
    return kind == CaliperSlip.INCHES_TYPED ? "in" : "mm";
  }

  private static String number(Length length) {
    return Digits.significant(length.millimetres(), 4);
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof ReadingSlip that
        && readings.equals(that.readings)
        && kind == that.kind
        && profile.equals(that.profile)
        && meant.equals(that.meant)
        && measured.equals(that.measured)
        && agreeing == that.agreeing
        && Double.compare(probability, that.probability) == 0;
  }

  @Override
  public int hashCode() {
    return Objects.hash(readings, kind, profile, meant, measured, agreeing, probability);
  }

  /** {@return the same as {@link #inWords()}} */
  @Override
  public String toString() {
    return inWords();
  }
}
