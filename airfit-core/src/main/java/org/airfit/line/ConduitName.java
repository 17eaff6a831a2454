package org.airfit.line;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.airfit.internal.Digits;
import org.airfit.quantity.Length;
import org.airfit.quantity.LengthUnit;
import org.airfit.quantity.QuantityFormatException;
import org.airfit.source.Source;
import org.airfit.thread.Limits;

/**
 * What people call a pipe, tube or hose, such as 'rubber hose', '1/4 in hose, old' or '1/2 in steel pipe, sch 40', and
 * what bore and wall that may mean.
 *
 * <table class="striped">
 * <caption>What is taken for what is not told</caption>
 * <thead><tr><th>not told</th><th>taken</th></tr></thead>
 * <tbody>
 * <tr><td>true bore of a hose</td><td>the limits of ISO 1307 for its name, however it is made</td></tr>
 * <tr><td>what a hose is of</td><td>from smooth plastic to smooth rubber</td></tr>
 * <tr><td>what a pipe is of</td><td>any wall of pipe; steel where a schedule is told</td></tr>
 * <tr><td>schedule of steel pipe</td><td>from 80 to 40</td></tr>
 * <tr><td>type of copper tube</td><td>every type of that name, with its tolerances</td></tr>
 * <tr><td>wall of plastic tube</td><td>every tube of that outside in the tables</td></tr>
 * <tr><td>age of steel, galvanized or cast iron pipe</td><td>from new to years in compressed-air service</td></tr>
 * </tbody>
 * </table>
 *
 * <p>Roughnesses are those published for the {@link Wall}. A steel wall that is <i>old</i> has 0.15 to 1 mm (Idelchik
 * 2007), ten times as much at the most as a new one. No figure was found for other old walls: they are taken to be up
 * to ten times as rough as the roughest published new, as steel, which is our own choice. Beyond 0.05 of the bore no
 * law of friction holds, so that no wall is taken rougher than that.
 *
 * <p>This class is immutable, thread-safe and value-based.
 */
public final class ConduitName {

  private final String text;
  private final ConduitFacts facts;

  private ConduitName(String text, ConduitFacts facts) {
    this.text = text;
    this.facts = facts;
  }

  /**
   * Reads what people type.
   *
   * @param text what it is of, its size and its age, each only if known, such as "rubber hose", "1/4 in hose, old",
   *     "1/2 in steel pipe, sch 40", "3/4 in copper type L", "8 x 1 mm tube"
   * @return the name
   * @throws QuantityFormatException if the text is no pipe, tube or hose; it tells where and what would be accepted
   */
  public static ConduitName parse(String text) {
    Objects.requireNonNull(text, "text");
    return new ConduitName(text.strip(), ConduitReader.read(text));
  }

  /** {@return the bore it may have, empty if no size was told} */
  public Optional<Limits> bore() {
    return Optional.ofNullable(facts.bore());
  }

  /** {@return the roughness its wall may have} */
  public Limits roughness() {
    return facts.roughness();
  }

  /** {@return what it is of, empty if that was not told; steel pipe not said to be new counts as in service} */
  public Optional<Wall> wall() {
    return Optional.ofNullable(facts.wall());
  }

  /** {@return what was taken for what was not told, with what each rests on} */
  public List<Source> assumptions() {
    return facts.assumptions();
  }

  /**
   * Obtains a length of it, in the bore its name tells.
   *
   * @param length the length along the flow
   * @return the range of conduits it may be, without fittings
   * @throws IllegalStateException if the name tells no bore
   */
  public ConduitRange over(Length length) {
    Objects.requireNonNull(length, "length");
    Limits bore = facts.bore();
    if (bore == null) {
      throw new IllegalStateException("\"" + text + "\" does not tell the bore: give it too");
    }
    return over(bore, length);
  }

  /**
   * Obtains a length of it, with a bore that was measured.
   *
   * @param bore the inside diameter, above 0
   * @param length the length along the flow
   * @return the range of conduits it may be, without fittings
   * @throws IllegalArgumentException if {@code bore} is out of range
   */
  public ConduitRange over(Length bore, Length length) {
    Objects.requireNonNull(bore, "bore");
    Objects.requireNonNull(length, "length");
    return over(new Limits(bore, bore), length);
  }

  /**
   * Obtains a length of it, with a bore that is known to some limits.
   *
   * @param bore the least and the largest inside diameter, above 0
   * @param length the length along the flow
   * @return the range of conduits it may be, without fittings
   * @throws IllegalArgumentException if {@code bore} is out of range
   */
  public ConduitRange over(Limits bore, Length length) {
    Objects.requireNonNull(bore, "bore");
    Objects.requireNonNull(length, "length");
    List<Source> sources = new ArrayList<>(facts.assumptions());
    if (!bore.equals(facts.bore())) {
      sources.removeIf(ConduitReader::isBoreOfHose);
    }
    Length roughest = least(facts.roughness().most(), bore.least().times(FrictionLaw.ROUGHEST));
    Length smoothest = least(facts.roughness().least(), roughest);
    if (!roughest.equals(facts.roughness().most())) {
      sources.add(ConduitRange.capped(roughest));
    }
    Conduit narrow = Conduit.of(bore.least(), length, roughest);
    Conduit wide = Conduit.of(bore.most(), length, smoothest);
    Wall wall = facts.wall();
    return new ConduitRange(
        wall == null ? narrow : narrow.withWall(wall),
        wall == null ? wide : wide.withWall(wall),
        sources);
  }

  private static Length least(Length one, Length other) {
    return one.compareTo(other) <= 0 ? one : other;
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof ConduitName that && facts.equals(that.facts);
  }

  @Override
  public int hashCode() {
    return facts.hashCode();
  }

  /**
   * Tells what the name may mean.
   *
   * @return the words, such as "bore 5.600 to 7.200 mm, roughness 0.006 to 0.07 mm"
   */
  public String meaning() {
    Limits bore = facts.bore();
    return (bore == null ? "" : "bore " + bore + ", ") + "roughness "
        + Digits.significant(facts.roughness().least().millimetres(), 3) + " to "
        + facts.roughness().most().format(LengthUnit.MILLIMETRE);
  }

  /** {@return the name as it was typed, which {@code parse} reads back} */
  @Override
  public String toString() {
    return text;
  }
}
