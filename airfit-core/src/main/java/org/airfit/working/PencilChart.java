package org.airfit.working;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.function.DoubleUnaryOperator;

/**
 * Curves drawn to scale for a pencil card: a number is set off along the lower axis with a ruler and another read off
 * the upright axis.
 *
 * <p>A reader holds {@link ChartAxis#READING} on either axis; the drawing's own error, below a tenth of that, is part
 * of it. {@link PencilCard} takes into account whatever such a reader can read.
 *
 * <p>This class is immutable and thread-safe.
 */
public final class PencilChart {

  private final String title;
  private final ChartAxis across;
  private final ChartAxis up;
  private final List<ChartCurve> curves;

  private PencilChart(String title, ChartAxis across, ChartAxis up, List<ChartCurve> curves) {
    this.title = title;
    this.across = across;
    this.up = up;
    this.curves = List.copyOf(curves);
  }

  /**
   * Obtains a chart without curves.
   *
   * @param title what is read off it
   * @param across the lower axis
   * @param up the upright axis
   * @return the chart
   * @throws IllegalArgumentException if {@code title} is blank
   */
  public static PencilChart of(String title, ChartAxis across, ChartAxis up) {
    Objects.requireNonNull(title, "title");
    return new PencilChart(
        Markup.requireProse(title, "title of a chart"),
        Objects.requireNonNull(across, "across"),
        Objects.requireNonNull(up, "up"),
        List.of());
  }

  /**
   * Obtains this with a further curve. It must rise throughout, or fall throughout, between its jumps: what may be read
   * off it rests on that.
   *
   * @param name what tells it from others, such as "ε/D 0.0011"
   * @param function the curve, whose numbers are good to 10⁻⁹ of themselves
   * @param jumps where it jumps; it has the number behind the jump there
   * @return this with the curve
   * @throws IllegalArgumentException if {@code name} is blank, or a curve has that name
   */
  public PencilChart with(String name, DoubleUnaryOperator function, double... jumps) {
    Objects.requireNonNull(name, "name");
    Objects.requireNonNull(function, "function");
    Objects.requireNonNull(jumps, "jumps");
    Markup.requireProse(name, "name of a curve");
    if (hasCurve(name)) {
      throw new IllegalArgumentException(
          "a chart must have one curve of a name, \"" + name + "\" is there");
    }
    List<Double> places = new ArrayList<>();
    for (double jump : jumps) {
      places.add(jump);
    }
    List<ChartCurve> all = new ArrayList<>(curves);
    all.add(new ChartCurve(name, function, List.copyOf(places)));
    return new PencilChart(title, across, up, all);
  }

  private boolean hasCurve(String name) {
    return curves.stream().anyMatch(curve -> curve.name().equals(name));
  }

  /** {@return what is read off it} */
  public String title() {
    return title;
  }

  /** {@return the lower axis} */
  public ChartAxis across() {
    return across;
  }

  /** {@return the upright axis} */
  public ChartAxis up() {
    return up;
  }

  /** {@return the names of its curves, in the order they were added} */
  public List<String> curves() {
    return curves.stream().map(ChartCurve::name).toList();
  }

  private ChartCurve curve(String name) {
    return curves.stream()
        .filter(curve -> curve.name().equals(name))
        .findFirst()
        .orElseThrow(() -> new IllegalArgumentException(
            "curve must be one of " + curves() + ", was \"" + name + "\""));
  }

  /**
   * Reads a curve without error.
   *
   * @param curve its name
   * @param value a number on the lower axis
   * @return the number that belongs to it
   * @throws IllegalArgumentException if no curve has that name
   */
  public double read(String curve, double value) {
    return curve(Objects.requireNonNull(curve, "curve")).function().applyAsDouble(value);
  }

  /**
   * All that a reader can read where the number on the lower axis lies in an interval; no interval where it may lie
   * beyond the axis, or the curve may leave the chart.
   */
  Interval read(String curve, Interval values) {
    if (!across.holds(values)) {
      return Interval.NONE;
    }
    Interval found = curve(curve).over(across.read(values));
    return up.holds(found) ? up.read(found) : Interval.NONE;
  }

  /**
   * Draws the chart to scale: its unit is the millimetre on paper.
   *
   * @return an SVG element
   */
  public String toSvg() {
    return ChartSvg.of(title, across, up, curves);
  }

  /** {@return its title, axes and curves in one line} */
  @Override
  public String toString() {
    return title + ": " + across + "; " + up + "; " + curves();
  }
}
