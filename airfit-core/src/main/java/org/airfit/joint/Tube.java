package org.airfit.joint;

import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Collectors;
import org.airfit.internal.Table;
import org.airfit.quantity.Area;
import org.airfit.quantity.Length;
import org.airfit.quantity.LengthUnit;
import org.airfit.quantity.NominalThreadSize;
import org.airfit.source.Source;
import org.airfit.thread.Limits;
import org.jspecify.annotations.Nullable;

/**
 * A pipe or tube of a table: what it measures outside, how thick its wall is, and the bore that follows.
 *
 * <pre>
 *   di = D − 2 t      greatest bore (D + ΔD) − 2 (t − Δt)      least bore (D − ΔD) − 2 (t + Δt)
 * </pre>
 *
 * <p>D is the outside diameter, t the wall, ΔD and Δt their tolerances, di the bore [mm or in]. Pipe is named by
 * neither its outside nor its bore, copper tube by a size an eighth of an inch below its outside, plastic tube by its
 * outside. Only outside and wall are tabulated; the bore is computed, because printed bores and areas hold misprints.
 * <b>Source:</b> of every row, see {@link #source()}.
 *
 * <p>What a pipe measures that is called 1/2:
 *
 * <pre>{@code
 * import java.util.Locale;
 * import org.airfit.joint.Tube;
 * import org.airfit.quantity.NominalThreadSize;
 *
 * class PipeCalledHalf {
 *   public static void main(String[] args) {
 *     Tube pipe = Tube.steelPipe(NominalThreadSize.ONE_HALF, 40);
 *     System.out.println(pipe.outside().inches()); // 0.8400000000000001
 *     System.out.printf(Locale.ROOT, "%.3f in%n", pipe.bore().inches()); // 0.622 in
 *   }
 * }
 * }</pre>
 *
 * <p>This class is immutable and thread-safe. There is one instance for each row of the table.
 */
public final class Tube {

  /** What kind of tube, and whose table. */
  public enum Kind {
    /** Steel pipe of ASME B36.10M, from the inch table; types "40" and "80" are the schedules. */
    STEEL_PIPE("steel pipe, schedule"),
    /** The same pipe from the metric table, rounded to 0.1 and 0.01 mm: its bores differ by up to 0.05 mm. */
    STEEL_PIPE_METRIC("steel pipe (metric table), schedule"),
    /** Copper tube of ASTM B88; types "K", "L" and "M". */
    COPPER_TUBE("copper tube, type"),
    /** Nylon and polyurethane tube; the type is the series. */
    PLASTIC_TUBE("plastic tube");

    private final String label;

    Kind(String label) {
      this.label = label;
    }

    /** {@return the kind in words} */
    public String label() {
      return label;
    }
  }

  /** Loaded on first use. */
  private static final class Loaded {
    static final List<Tube> ALL = read();
  }

  private final Kind kind;
  private final String name;
  private final String type;
  private final Length outside;
  private final Length wall;
  private final @Nullable Length outsideTolerance;
  private final @Nullable Length outsideToleranceDrawn;
  private final @Nullable Length wallMinus;
  private final @Nullable Length wallPlus;
  private final @Nullable Length bendRadius;
  private final Source source;
  private final Source toleranceSource;

  private Tube(Table.Row row) {
    LengthUnit unit = row.text("unit").equals("in") ? LengthUnit.INCH : LengthUnit.MILLIMETRE;
    this.kind = Kind.valueOf(row.text("kind"));
    this.name = row.text("name");
    this.type = row.text("type");
    this.outside = Length.of(row.number("outside"), unit);
    this.wall = Length.of(row.number("wall"), unit);
    this.outsideTolerance = length(row, "outside_tolerance", unit);
    this.outsideToleranceDrawn = length(row, "outside_tolerance_drawn", unit);
    this.wallMinus = length(row, "wall_minus", unit);
    this.wallPlus = length(row, "wall_plus", unit);
    this.bendRadius = length(row, "bend_radius_mm", LengthUnit.MILLIMETRE);
    this.source = Published.source(row);
    this.toleranceSource = row.text("tolerance_basis").equals("memory")
        ? Source.fromMemory(
            "ASTM A53: outside ± 1/64 in to size 1-1/2 and ± 1 % above, wall not more than 12.5 % thinner")
        : source;
  }

  private static @Nullable Length length(Table.Row row, String column, LengthUnit unit) {
    return row.optional(column).map(value -> Length.of(value, unit)).orElse(null);
  }

  /** Reads the whole table, as is done once. */
  static List<Tube> read() {
    return Table.read(Tube.class, "tubes.csv").stream().map(Tube::new).toList();
  }

  /**
   * Obtains all tubes of a kind.
   *
   * @param kind the kind
   * @return its tubes in the order of the table
   */
  public static List<Tube> all(Kind kind) {
    Objects.requireNonNull(kind, "kind");
    return Loaded.ALL.stream().filter(tube -> tube.kind == kind).toList();
  }

  /**
   * Finds a tube.
   *
   * @param kind the kind
   * @param name its name in the table, such as "1/2" or "6 x 1 mm"
   * @param type its type, such as "40", "L" or "PA DIN 74324"
   * @return the tube
   * @throws IllegalArgumentException if there is none; the message lists those there are
   */
  public static Tube of(Kind kind, String name, String type) {
    Objects.requireNonNull(kind, "kind");
    Objects.requireNonNull(name, "name");
    Objects.requireNonNull(type, "type");
    return find(kind, name, type)
        .orElseThrow(() ->
            new IllegalArgumentException("name and type of " + kind.label() + " must be one of "
                + all(kind).stream()
                    .map(tube -> tube.name + " " + tube.type)
                    .collect(Collectors.joining(", "))
                + "; was " + name + " " + type));
  }

  static Optional<Tube> find(Kind kind, String name, String type) {
    return all(kind).stream()
        .filter(tube -> tube.name.equals(name) && tube.type.equals(type))
        .findFirst();
  }

  /**
   * Finds a steel pipe in the inch table.
   *
   * @param size the size the pipe and its thread share, from 1/8 to 4
   * @param schedule 40 or 80
   * @return the pipe
   * @throws IllegalArgumentException if there is none; the message lists those there are
   */
  public static Tube steelPipe(NominalThreadSize size, int schedule) {
    Objects.requireNonNull(size, "size");
    return of(Kind.STEEL_PIPE, size.label(), Integer.toString(schedule));
  }

  /**
   * Finds the next standard size up.
   *
   * @param kind the kind
   * @param type its type, such as "40"
   * @param bore the bore it must have at least
   * @return the tube with the smallest bore that is not below {@code bore}, empty if the table ends before
   */
  public static Optional<Tube> nextSizeUp(Kind kind, String type, Length bore) {
    Objects.requireNonNull(kind, "kind");
    Objects.requireNonNull(type, "type");
    Objects.requireNonNull(bore, "bore");
    return all(kind).stream()
        .filter(tube -> tube.type.equals(type) && tube.bore().compareTo(bore) >= 0)
        .min(Comparator.comparing(Tube::bore));
  }

  /** {@return what kind of tube it is} */
  public Kind kind() {
    return kind;
  }

  /** {@return its name in the table} */
  public String name() {
    return name;
  }

  /** {@return its schedule, type or series} */
  public String type() {
    return type;
  }

  /** {@return D, the outside diameter} */
  public Length outside() {
    return outside;
  }

  /** {@return t, the thickness of the wall} */
  public Length wall() {
    return wall;
  }

  /** {@return the bore, the outside diameter less twice the wall} */
  public Length bore() {
    return outside.minus(wall.times(2.0));
  }

  /** {@return the clear area of the bore} */
  public Area boreArea() {
    return Area.ofCircle(bore());
  }

  /**
   * {@return ΔD, how much the outside may be smaller or larger, if the table says; of copper tube that of annealed
   * tube, the wider one}
   */
  public Optional<Length> outsideTolerance() {
    return Optional.ofNullable(outsideTolerance);
  }

  /** {@return the closer tolerance of the outside of drawn copper tube} */
  public Optional<Length> outsideToleranceDrawn() {
    return Optional.ofNullable(outsideToleranceDrawn);
  }

  /** {@return how much thinner the wall may be, if the table says} */
  public Optional<Length> wallMinus() {
    return Optional.ofNullable(wallMinus);
  }

  /** {@return how much thicker the wall may be, if the table says} */
  public Optional<Length> wallPlus() {
    return Optional.ofNullable(wallPlus);
  }

  /** {@return the least and greatest bore the tolerances allow, if all of them are known} */
  public Optional<Limits> boreLimits() {
    if (outsideTolerance == null || wallMinus == null || wallPlus == null) {
      return Optional.empty();
    }
    return Optional.of(new Limits(
        bore().minus(outsideTolerance).minus(wallPlus.times(2.0)),
        bore().plus(outsideTolerance).plus(wallMinus.times(2.0))));
  }

  /** {@return the least radius it may be bent to, if the table says} */
  public Optional<Length> leastBendRadius() {
    return Optional.ofNullable(bendRadius);
  }

  /** {@return where outside and wall come from} */
  public Source source() {
    return source;
  }

  /** {@return where the tolerances come from} */
  public Source toleranceSource() {
    return toleranceSource;
  }

  /** {@return the tube, such as "steel pipe, schedule 40 1/2: 21.34 mm outside, 15.8 mm bore"} */
  @Override
  public String toString() {
    return kind.label() + " " + type + " " + name + ": " + outside.format(LengthUnit.MILLIMETRE)
        + " outside, " + bore().format(LengthUnit.MILLIMETRE) + " bore";
  }
}
