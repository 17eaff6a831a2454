package org.airfit.joint;

import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.airfit.internal.Table;
import org.airfit.quantity.HoseBore;
import org.airfit.quantity.Length;
import org.airfit.quantity.LengthUnit;
import org.airfit.source.Source;
import org.airfit.thread.Limits;
import org.jspecify.annotations.Nullable;

/**
 * A hose bore of ISO 1307: its name in millimetres, the inch name the trade pairs with it, and what the bore may
 * measure.
 *
 * <p>A hose named 10 mm or 3/8 in may have a bore of 9.3 to 10.1 mm, and made without a mandrel 8.7 to 10.3 mm. The
 * name is not the bore. <b>Source:</b> ISO 1307:2006, table 1, ten of its sizes; the pairing of inch names is the
 * trade's.
 *
 * <p>This class is immutable and thread-safe. There is one instance for each row of the table.
 */
public final class StandardHose {

  /** How the hose is made, the types of ISO 1307. */
  public enum Type {
    /** On a rigid mandrel. */
    A,
    /** On a flexible mandrel. */
    B,
    /** Without a mandrel. */
    C
  }

  /** Loaded on first use. */
  private static final class Loaded {
    static final List<StandardHose> ALL = read();
  }

  /** Below every step of a name [mm], above the rounding of a double. */
  private static final double ROUNDING = 1.0e-9;

  private final HoseBore nominal;
  private final @Nullable HoseBore tradeName;
  private final Limits a;
  private final @Nullable Limits b;
  private final Limits c;
  private final Source source;

  private StandardHose(Table.Row row) {
    this.nominal = HoseBore.of(Length.ofMillimetres(row.number("nominal_mm")));
    String inches = row.text("trade_in");
    this.tradeName = inches.isEmpty() ? null : HoseBore.parse(inches + " in");
    this.a = limits(row, "a");
    this.b = row.text("b_least_mm").isEmpty() ? null : limits(row, "b");
    this.c = limits(row, "c");
    this.source = Published.source(row);
  }

  private static Limits limits(Table.Row row, String type) {
    return new Limits(
        Length.ofMillimetres(row.number(type + "_least_mm")),
        Length.ofMillimetres(row.number(type + "_most_mm")));
  }

  /** Reads the whole table, as is done once. */
  static List<StandardHose> read() {
    return Table.read(StandardHose.class, "hose_bores.csv").stream()
        .map(StandardHose::new)
        .toList();
  }

  /** {@return all bores, smallest first} */
  public static List<StandardHose> all() {
    return Loaded.ALL;
  }

  /**
   * Finds the standard's name for a bore.
   *
   * @param bore a bore by its name in millimetres or by the inch name the trade pairs with it
   * @return the standard hose, empty if the standard, as far as it was seen, has no such name; {@link #nearest} offers
   *     one
   */
  public static Optional<StandardHose> of(HoseBore bore) {
    Objects.requireNonNull(bore, "bore");
    return all().stream()
        .filter(hose ->
            hose.nominal.equals(bore) || hose.tradeName().filter(bore::equals).isPresent())
        .findFirst();
  }

  /**
   * Finds the standard hose that the trade calls by a bore: by one of its two names, by a bore between them, or by one
   * of them rounded to tenths of a millimetre or to whole millimetres, as 9.5 mm or 10 mm for 3/8 in.
   *
   * @param bore a bore as a part is called by it
   * @return the standard hose, empty if none is called so; that names are rounded is common practice, no source
   */
  public static Optional<StandardHose> calledBy(HoseBore bore) {
    Objects.requireNonNull(bore, "bore");
    Optional<StandardHose> exact = of(bore);
    return exact.isPresent()
        ? exact
        : all().stream().filter(hose -> hose.isCalled(bore)).findFirst();
  }

  private boolean isCalled(HoseBore bore) {
    double asked = bore.nominal().millimetres();
    double one = nominal.nominal().millimetres();
    double other = tradeName == null ? one : tradeName.nominal().millimetres();
    return (asked >= Math.min(one, other) && asked <= Math.max(one, other))
        || isRounded(asked, one)
        || isRounded(asked, other);
  }

  /** Whether a number of millimetres is another one rounded to tenths or to wholes, halves upwards. */
  private static boolean isRounded(double asked, double name) {
    return Math.abs(asked - Math.floor(10.0 * name + 0.5 + ROUNDING) / 10.0) < ROUNDING
        || Math.abs(asked - Math.floor(name + 0.5 + ROUNDING)) < ROUNDING;
  }

  /**
   * Finds the standard hose whose name is nearest.
   *
   * @param bore any bore
   * @return the nearest, by its name in millimetres
   */
  public static StandardHose nearest(HoseBore bore) {
    Objects.requireNonNull(bore, "bore");
    double wanted = bore.nominal().millimetres();
    return all().stream()
        .min(Comparator.comparingDouble(
            hose -> Math.abs(hose.nominal.nominal().millimetres() - wanted)))
        .orElseThrow();
  }

  /**
   * Finds the next standard size up.
   *
   * @param bore the bore it must have at least
   * @return the smallest hose whose bore is not below {@code bore} even at its least limit, however it is made; empty
   *     if the sizes seen end before
   */
  public static Optional<StandardHose> nextSizeUp(Length bore) {
    Objects.requireNonNull(bore, "bore");
    return all().stream()
        .filter(hose -> hose.anyBore().least().compareTo(bore) >= 0)
        .min(Comparator.comparing(hose -> hose.anyBore().least()));
  }

  /** {@return the name in millimetres} */
  public HoseBore nominal() {
    return nominal;
  }

  /** {@return the inch name the trade pairs with it, if there is one} */
  public Optional<HoseBore> tradeName() {
    return Optional.ofNullable(tradeName);
  }

  /**
   * Obtains what the bore may measure.
   *
   * @param type how the hose is made
   * @return the limits, empty where the standard has none for the type
   */
  public Optional<Limits> bore(Type type) {
    Objects.requireNonNull(type, "type");
    return switch (type) {
      case A -> Optional.of(a);
      case B -> Optional.ofNullable(b);
      case C -> Optional.of(c);
    };
  }

  /** {@return what the bore may measure if nobody knows how the hose is made} */
  public Limits anyBore() {
    return new Limits(
        a.least().compareTo(c.least()) < 0 ? a.least() : c.least(),
        a.most().compareTo(c.most()) > 0 ? a.most() : c.most());
  }

  /** {@return where the limits come from} */
  public Source source() {
    return source;
  }

  /** {@return the hose, such as "10 mm (3/8 in) hose, bore 8.700 to 10.300 mm"} */
  @Override
  public String toString() {
    return nominal.nominal().format(LengthUnit.MILLIMETRE)
        + (tradeName == null ? "" : " (" + tradeName.label() + ")") + " hose, bore " + anyBore();
  }
}
