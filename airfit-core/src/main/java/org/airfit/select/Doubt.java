package org.airfit.select;

import java.math.RoundingMode;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Collectors;
import org.airfit.quantity.GaugePressure;
import org.airfit.working.UnitSystem;

/**
 * Something that is not known exactly and decides whether the tool has its air: what it can be, and from which value on
 * there is enough, whatever else is not known.
 *
 * <p>This class is immutable, thread-safe and value-based.
 */
public final class Doubt {

  /** The digits of a pressure that must not be exceeded. */
  private static final int DIGITS = 4;

  /** What the name of a doubt about a wall begins with. */
  static final String ROUGHNESS = "roughness of ";

  private final String what;
  private final Told si;
  private final Told us;
  private final Basis basis;

  /** What the values rest on between which something lies. */
  enum Basis {
    /** Somebody told them. */
    TOLD,
    /** Somebody told a name, such as that of a hose or a wall, and all that it may mean is reckoned with. */
    NAMED,
    /** Nobody told anything, and what is usual is reckoned with. */
    USUAL,
    /** Nobody told anything, and all that can be is reckoned with. */
    ANYTHING
  }

  /**
   * What is told in one system of units.
   *
   * @param known between which values it lies
   * @param turning from which value on there is enough; empty if its best value alone is not enough
   */
  record Told(String known, Optional<String> turning) {
    private Told upTo(String most, boolean isEnough) {
      return new Told(
          known, turning.filter(from -> isEnough).map(from -> from + " and at most " + most));
    }
  }

  Doubt(String what, Told si, Told us, Basis basis) {
    this.what = what;
    this.si = si;
    this.us = us;
    this.basis = basis;
  }

  /** The same on one way of several. */
  Doubt on(String way) {
    return new Doubt(what + way, si, us, basis);
  }

  /** The same where it may not be above a pressure; it settles nothing if not so much is enough. */
  Doubt upTo(GaugePressure most, boolean isEnough) {
    return new Doubt(
        what,
        si.upTo(noMoreThan(most, UnitSystem.SI), isEnough),
        us.upTo(noMoreThan(most, UnitSystem.US), isEnough),
        basis);
  }

  /** A pressure that must not be exceeded, rounded down: set as it is told, it is not. */
  private static String noMoreThan(GaugePressure most, UnitSystem units) {
    return TypedNumber.of(most, units.pressureUnit()).inWords(DIGITS, RoundingMode.FLOOR);
  }

  private Told in(UnitSystem units) {
    return Objects.requireNonNull(units, "units").either(si, us);
  }

  /** {@return what is not known, such as "bore of Hose 10 m"} */
  public String what() {
    return what;
  }

  /**
   * Tells what is known of it.
   *
   * @param units the units
   * @return between which values it lies, such as "8.9 to 9.5 mm"
   */
  public String known(UnitSystem units) {
    return in(units).known();
  }

  /** Between which values it lies, and whether somebody told that, or it is what is usual or what can be. */
  String knownBy(UnitSystem units) {
    return switch (basis) {
      case TOLD -> known(units) + " told";
      case NAMED -> known(units) + " by its name";
      case USUAL -> "nobody told it: " + known(units) + " reckoned, common practice, no source";
      case ANYTHING -> "nobody told it: " + known(units) + " can be";
    };
  }

  /** Whether somebody at the part can read or measure it: nobody does so with the roughness of a wall. */
  boolean isReadable() {
    return !what.startsWith(ROUGHNESS);
  }

  /** {@return whether it alone can settle that there is enough air, all else taken at its worst} */
  public boolean settles() {
    return si.turning().isPresent();
  }

  /**
   * Tells where the answer turns.
   *
   * @param units the units
   * @return from which value on there is enough with all else at its worst, to three digits on the safe side, such as
   *     "at least 9.12 mm"; empty if its best value alone is not enough
   */
  public Optional<String> enoughIf(UnitSystem units) {
    return in(units).turning();
  }

  /**
   * Tells the doubt in words.
   *
   * @param units the units
   * @return such as "bore of Hose 10 m: 8.9 to 9.5 mm; enough if at least 9.12 mm"
   */
  public String inWords(UnitSystem units) {
    return what + ": " + known(units)
        + enoughIf(units).map(turning -> "; enough if " + turning).orElse("");
  }

  /** What is to be asked, the one first that settles most; what nobody can read off a part comes last. */
  static String whatToAsk(List<Doubt> doubts, UnitSystem units) {
    List<Doubt> settling = doubts.stream()
        .filter(Doubt::settles)
        .sorted(Comparator.comparing((Doubt doubt) -> !doubt.isReadable()))
        .toList();
    if (settling.isEmpty()) {
      Doubt most = doubts.stream().filter(Doubt::isReadable).findFirst().orElse(doubts.get(0));
      return "No single answer settles it; "
          + (most.equals(doubts.get(0))
              ? "most depends on the "
              : "of what can be read, most depends on the ")
          + most.what() + " (" + most.knownBy(units) + "): ask for that first.";
    }
    String enough = settling.stream()
        .map(doubt -> doubt.what() + " is " + doubt.enoughIf(units).orElseThrow() + " ("
            + doubt.knownBy(units) + ")")
        .collect(Collectors.joining(", or if the "));
    return "It is enough if the " + enough + ": "
        + (settling.get(0).isReadable()
            ? settling.size() > 1 ? "ask for the first of these." : "ask for it."
            : "nobody reads that off a part; try it, with a gauge at the inlet of the tool while it runs.");
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof Doubt that
        && what.equals(that.what)
        && si.equals(that.si)
        && us.equals(that.us)
        && basis == that.basis;
  }

  @Override
  public int hashCode() {
    return Objects.hash(what, si, us, basis);
  }

  /** {@return the doubt in words, such as "bore of Hose 10 m: 8.9 to 9.5 mm; enough if at least 9.12 mm"} */
  @Override
  public String toString() {
    return inWords(UnitSystem.SI);
  }
}
