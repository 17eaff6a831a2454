package org.airfit.joint;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.airfit.quantity.Length;
import org.airfit.source.Source;

/**
 * An adapter of a standard shape, such as a reducing bushing 1/2 NPT male × 1/4 NPT female: what to ask for at a parts
 * counter, whoever makes it.
 *
 * <p>The shapes are those of the standards of pipe fittings (from memory: ASME B16.3, B16.11 and B16.14, ISO 49, SAE
 * J530) and of the trade in hose and push-in fittings (common practice, no source). How far one piece reduces is a
 * choice of this project: four sizes within a family, one size between families, two sizes between a hose or tube and
 * a thread, one size between a flare or port and a thread, and between tubes to half the diameter. Which claws have
 * which threads was read of the European ones and is from memory of the North American ones, those with two lugs and
 * those with four. Whether a maker has every size of a shape is not told here.
 *
 * <p>Only {@link #all()} makes them. This class is immutable, thread-safe and value-based.
 */
public final class StandardAdapter implements TwoEnded {

  /** Where the shapes come from. */
  public static final Source SOURCE = Source.fromMemory(
      "shapes of ASME B16.3, B16.11, B16.14, ISO 49 and SAE J530, and of the trade; how far one piece reduces is a"
          + " choice of this project");

  /** Loaded on first use. */
  private static final class Loaded {
    static final List<StandardAdapter> ALL = List.copyOf(make());
  }

  private final AdapterShape shape;
  private final End one;
  private final End other;

  private StandardAdapter(AdapterShape shape, End one, End other) {
    this.shape = shape;
    this.one = one;
    this.other = other;
  }

  /** {@return every adapter of a standard shape, in sizes 1/16 to 4, always in the same order} */
  public static List<StandardAdapter> all() {
    return Loaded.ALL;
  }

  /** Makes them all anew, as {@link #all()} does once. */
  static List<StandardAdapter> make() {
    return StandardShapes.make().stream()
        .map(piece -> new StandardAdapter(piece.shape(), piece.one(), piece.other()))
        .toList();
  }

  /** {@return its shape} */
  public AdapterShape shape() {
    return shape;
  }

  /** {@return shape and ends, such as "reducing bushing 1/2 NPT male × 1/4 NPT female"} */
  @Override
  public String name() {
    return shape == AdapterShape.HOSE_LENGTH || shape == AdapterShape.TUBE_LENGTH
        ? "length of " + one.label()
        : shape.label() + " " + one.label() + " × " + other.label();
  }

  @Override
  public End one() {
    return one;
  }

  @Override
  public End other() {
    return other;
  }

  /** {@return empty: a shape tells no bore, ask the maker of the piece} */
  @Override
  public Optional<Length> smallestBore() {
    return Optional.empty();
  }

  @Override
  public boolean equals(Object object) {
    return object instanceof StandardAdapter that
        && shape == that.shape
        && one.equals(that.one)
        && other.equals(that.other);
  }

  @Override
  public int hashCode() {
    return Objects.hash(shape, one, other);
  }

  /** {@return the {@link #name()}} */
  @Override
  public String toString() {
    return name();
  }
}
