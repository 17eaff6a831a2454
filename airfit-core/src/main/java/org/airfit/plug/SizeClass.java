package org.airfit.plug;

import java.util.EnumMap;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import org.airfit.internal.Table;
import org.airfit.measure.PartSpread.Limits;
import org.airfit.quantity.Length;
import org.airfit.source.Basis;
import org.airfit.source.Source;

/**
 * How large a plug is, roughly: which body and bore it belongs to, and no more than that.
 *
 * <p>The ranges are orders of magnitude <b>from memory</b>. They overlap, by intention: they find a typing error or a
 * plug of quite another size and tell no family from another. Nothing uses them in an identification unless
 * {@link Identifier#withSizeClasses} asks for it.
 */
public enum SizeClass {
  /** Body of 1/4 in, bore of 5 to 6 mm. */
  SMALL("small"),
  /** Bore of 7 to 8 mm: high-flow 1/4 in or 3/8 in body. */
  MID("middle"),
  /** Bore of 10 to 12 mm: body of 1/2 in. */
  LARGE("large");

  /** Where the ranges are from. */
  public static final Source RANGES =
      new Source(Basis.FROM_MEMORY, "size classes of air-line plugs, order of magnitude only");

  private final String label;

  SizeClass(String label) {
    this.label = label;
  }

  /** {@return the class in one word} */
  public String label() {
    return label;
  }

  /** {@return what the class stands for, such as "1/4 in body; 5 to 6 mm bore"} */
  public String meaning() {
    return Objects.requireNonNull(Envelope.MEANINGS.get(this));
  }

  /**
   * Obtains the range a dimension lies in, roughly.
   *
   * @param dimension the dimension
   * @return the range, from memory; empty where none is remembered
   */
  public Optional<Limits> range(Dimension dimension) {
    Objects.requireNonNull(dimension, "dimension");
    return Optional.ofNullable(Envelope.RANGES.get(this)).map(ranges -> ranges.get(dimension));
  }

  /** {@return the class with its meaning} */
  @Override
  public String toString() {
    return label + " (" + meaning() + ")";
  }

  /** Read once, when first asked for. */
  private static final class Envelope {

    static final Map<SizeClass, Map<Dimension, Limits>> RANGES = new EnumMap<>(SizeClass.class);
    static final Map<SizeClass, String> MEANINGS = new EnumMap<>(SizeClass.class);

    static {
      for (Table.Row row : Table.read(SizeClass.class, "size_class_envelope.csv")) {
        SizeClass size = valueOf(row.text("size_class"));
        MEANINGS.put(size, row.text("meaning"));
        RANGES
            .computeIfAbsent(size, any -> new EnumMap<>(Dimension.class))
            .put(
                Dimension.parse(row.text("symbol")),
                new Limits(
                    Length.ofMillimetres(row.number("low_mm")),
                    Length.ofMillimetres(row.number("high_mm"))));
      }
    }
  }
}
