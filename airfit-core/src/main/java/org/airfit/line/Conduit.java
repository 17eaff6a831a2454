package org.airfit.line;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.airfit.internal.Digits;
import org.airfit.quantity.Area;
import org.airfit.quantity.Length;
import org.airfit.quantity.LengthUnit;
import org.airfit.safety.Caution;
import org.airfit.working.UnitSystem;
import org.jspecify.annotations.Nullable;

/**
 * A straight or coiled length of pipe, tube or hose of one bore, with the fittings on it.
 *
 * <p>The bore is what the air sees, measured or from a table of the pipe: never a nominal size.
 *
 * <p>A pipe with two elbows:
 *
 * <pre>{@code
 * import java.util.List;
 * import java.util.Locale;
 * import org.airfit.joint.Tube;
 * import org.airfit.line.Conduit;
 * import org.airfit.line.PipeFitting;
 * import org.airfit.line.Wall;
 * import org.airfit.quantity.Length;
 * import org.airfit.quantity.NominalThreadSize;
 *
 * class PipeWithElbows {
 *   public static void main(String[] args) {
 *     PipeFitting elbow = PipeFitting.of(PipeFitting.Method.LENGTH, "elbow 90°, standard, threaded");
 *     Conduit pipe = Conduit.of(
 *             Tube.steelPipe(NominalThreadSize.ONE, 40).bore(),
 *             Length.parse("30 m"),
 *             Wall.COMMERCIAL_STEEL)
 *         .withFittings(List.of(elbow, elbow));
 *     System.out.printf(Locale.ROOT, "K = %.2f%n", pipe.fittingLoss()); // K = 1.35
 *   }
 * }
 * }</pre>
 *
 * <p>This class is immutable, thread-safe and value-based.
 */
public final class Conduit {

  /** Where the arithmetic ends, far from any pipe [m]. */
  private static final double LEAST_BORE = 1.0e-12;

  private static final double MOST_BORE = 1.0e12;
  private static final double MOST_LENGTH = 1.0e15;

  private final Length bore;
  private final Length length;
  private final Length roughness;
  private final double fittingLoss;
  private final @Nullable Wall wall;

  private Conduit(
      Length bore, Length length, Length roughness, double fittingLoss, @Nullable Wall wall) {
    if (!(bore.metres() > 0.0)) {
      throw new IllegalArgumentException(
          "bore must be above 0 mm, was " + bore.inFull(LengthUnit.MILLIMETRE));
    }
    if (!(bore.metres() >= LEAST_BORE && bore.metres() <= MOST_BORE)) {
      throw new IllegalArgumentException("bore must be in [1e-12, 1e12] m, was " + bore.shown());
    }
    if (!(length.metres() <= MOST_LENGTH)) {
      throw new IllegalArgumentException(
          "length must be in [0, 1e15] m, was " + length.inFull(LengthUnit.METRE));
    }
    if (!FrictionLaw.atMost(roughness.metres() / bore.metres(), FrictionLaw.ROUGHEST)) {
      throw new IllegalArgumentException(
          "roughness must be in [0, " + Digits.inFull(50.0 * bore.metres())
              + "] mm (0.05 of the bore), was " + roughness.inFull(LengthUnit.MILLIMETRE));
    }
    if (!(fittingLoss >= 0.0 && fittingLoss <= 1.0e6)) {
      throw new IllegalArgumentException(
          "sum of fitting losses K must be in [0, 1e6], was " + Digits.told(fittingLoss));
    }
    this.bore = bore;
    this.length = length;
    this.roughness = roughness;
    this.fittingLoss = fittingLoss + 0.0;
    this.wall = wall;
  }

  /**
   * Obtains a conduit without fittings.
   *
   * @param bore the inside diameter, in [10⁻¹², 10¹²] m
   * @param length the length along the flow, at most 10¹⁵ m
   * @param roughness the equivalent sand roughness of the wall, at most 0.05 of the bore
   * @return the conduit
   * @throws IllegalArgumentException if an argument is out of range
   */
  public static Conduit of(Length bore, Length length, Length roughness) {
    Objects.requireNonNull(bore, "bore");
    Objects.requireNonNull(length, "length");
    Objects.requireNonNull(roughness, "roughness");
    return new Conduit(bore, length, roughness, 0.0, null);
  }

  /**
   * Obtains a conduit without fittings of which the wall is known: what it is made of goes with it into every answer.
   *
   * @param bore the inside diameter, above 0
   * @param length the length along the flow
   * @param wall the wall, whose roughness is calculated with
   * @return the conduit
   * @throws IllegalArgumentException if an argument is out of range
   */
  public static Conduit of(Length bore, Length length, Wall wall) {
    Objects.requireNonNull(bore, "bore");
    Objects.requireNonNull(length, "length");
    Objects.requireNonNull(wall, "wall");
    return new Conduit(bore, length, wall.roughness(), 0.0, wall);
  }

  /**
   * Obtains this conduit as one of a wall, with its own roughness.
   *
   * @param madeOf the wall
   * @return this of {@code madeOf}
   */
  public Conduit withWall(Wall madeOf) {
    Objects.requireNonNull(madeOf, "madeOf");
    return new Conduit(bore, length, roughness, fittingLoss, madeOf);
  }

  /**
   * Obtains this conduit with fittings on it.
   *
   * @param k the sum of the loss coefficients of its fittings, counted on the velocity in the bore [-], in [0, 10⁶]
   * @return this with {@code k}
   * @throws IllegalArgumentException if {@code k} is out of range
   */
  public Conduit withFittings(double k) {
    return new Conduit(bore, length, roughness, k, wall);
  }

  /**
   * Obtains this conduit with fittings on it, each by its loss coefficient in fully turbulent flow in this bore.
   *
   * @param fittings all fittings; one that is there twice is named twice
   * @return this with the sum of their coefficients
   * @throws IllegalArgumentException if the bore is not above 0.5 mm or the sum is out of range
   */
  public Conduit withFittings(List<PipeFitting> fittings) {
    return withFittings(
        fittings.stream().mapToDouble(fitting -> fitting.k(bore)).sum());
  }

  /**
   * Obtains this conduit cut or extended to another length.
   *
   * @param other the length along the flow, at most 10¹⁵ m
   * @return this with {@code other}
   * @throws IllegalArgumentException if {@code other} is out of range
   */
  public Conduit withLength(Length other) {
    return new Conduit(bore, Objects.requireNonNull(other, "other"), roughness, fittingLoss, wall);
  }

  /**
   * Obtains this conduit with another bore and the same wall.
   *
   * @param other the inside diameter, in [10⁻¹², 10¹²] m
   * @return this with {@code other}
   * @throws IllegalArgumentException if {@code other} is out of range or less than 20 times the roughness
   */
  public Conduit withBore(Length other) {
    return new Conduit(
        Objects.requireNonNull(other, "other"), length, roughness, fittingLoss, wall);
  }

  /** {@return the inside diameter} */
  public Length bore() {
    return bore;
  }

  /** {@return the length along the flow} */
  public Length length() {
    return length;
  }

  /** {@return the equivalent sand roughness of the wall} */
  public Length roughness() {
    return roughness;
  }

  /** {@return the wall, if it was told} */
  public Optional<Wall> wall() {
    return Optional.ofNullable(wall);
  }

  /** {@return the warnings that go with its wall; none where it was not told} */
  public List<Caution> cautions() {
    return wall == null ? List.of() : wall.cautions();
  }

  /** {@return the sum of the loss coefficients of the fittings [-]} */
  public double fittingLoss() {
    return fittingLoss;
  }

  /** {@return the clear section of the bore} */
  public Area area() {
    return Area.ofCircle(bore);
  }

  /** {@return roughness over bore [-], at most 0.05} */
  public double relativeRoughness() {
    return Math.min(roughness.metres() / bore.metres(), FrictionLaw.ROUGHEST);
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof Conduit that
        && bore.equals(that.bore)
        && length.equals(that.length)
        && roughness.equals(that.roughness)
        && fittingLoss == that.fittingLoss
        && wall == that.wall;
  }

  @Override
  public int hashCode() {
    return 31 * (31 * bore.hashCode() + length.hashCode()) + roughness.hashCode();
  }

  /**
   * Writes it out.
   *
   * @param units the units to write it in
   * @return the length and the bore, such as "25 ft of 0.5 in bore"
   */
  public String in(UnitSystem units) {
    return length.format(units.either(LengthUnit.METRE, LengthUnit.FOOT)) + " of "
        + bore.format(units.smallLengthUnit()) + " bore";
  }

  /** {@return the conduit, such as "10 m of 9.5 mm bore"} */
  @Override
  public String toString() {
    return in(UnitSystem.SI);
  }
}
