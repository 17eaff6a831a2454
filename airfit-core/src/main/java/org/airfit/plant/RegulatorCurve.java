package org.airfit.plant;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Collectors;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.MassFlow;
import org.airfit.quantity.PressureDrop;
import org.airfit.working.UnitSystem;

/**
 * What a regulator holds at some flows, as its maker draws it.
 *
 * <p>Between two points it goes in a straight line. Behind the last point it is not told: nothing is extrapolated. The
 * curve is drawn at one setting; set otherwise, the regulator is taken to droop by as much at the same flow, which is
 * our choice.
 *
 * @param points what it holds, from no flow on: more flow at each, and no more pressure
 */
public record RegulatorCurve(List<Point> points) {

  private static final String AT = " at ";

  /**
   * A point of the curve.
   *
   * @param flow the flow
   * @param held what stands behind the regulator then
   */
  public record Point(FreeAirFlow flow, GaugePressure held) {

    /**
     * Refuses what is null.
     *
     * @param flow the flow
     * @param held what stands behind the regulator then
     */
    public Point {
      Objects.requireNonNull(flow, "flow");
      Objects.requireNonNull(held, "held");
    }

    /** {@return the point with all its digits, such as "600000.0 Pa(g) at 0.01 m³/s ANR"} */
    @Override
    public String toString() {
      return held + " at " + flow;
    }

    /** The point in a refusal, such as "6 bar(g) at 10 L/s ANR". */
    private String shown() {
      return held.inFewestDigits() + " at " + flow.inFewestDigits();
    }

    private double kilograms() {
      return flow.massFlow().kilogramsPerSecond();
    }
  }

  /**
   * Checks the points.
   *
   * @param points what it holds, from no flow on: more flow at each, and no more pressure
   * @throws IllegalArgumentException if there are fewer than two, the first is not at no flow, a flow is not above that
   *     of the point before, or a pressure is above that of the point before or not above 0
   */
  public RegulatorCurve {
    points = List.copyOf(Objects.requireNonNull(points, "points"));
    if (points.size() < 2) {
      throw new IllegalArgumentException("points of a regulator's curve must be at least 2, were "
          + points.size() + "; tell what it holds at no flow, and at a flow");
    }
    if (points.get(0).kilograms() != 0.0) {
      throw new IllegalArgumentException(
          "first point of a regulator's curve must be at no flow, was "
              + points.get(0).shown()
              + "; tell what it holds while nothing flows, such as 90 psig at 0 scfm");
    }
    for (int i = 0; i < points.size(); i++) {
      Point point = points.get(i);
      if (!(point.held().pascals() > 0.0)) {
        throw new IllegalArgumentException(
            "pressure of a point of a regulator's curve must be above 0, was " + point.shown());
      }
      if (i > 0) {
        requireOrder(points.get(i - 1), point);
      }
    }
  }

  /**
   * Reads a curve as people write it.
   *
   * @param text its points, parted by semicolons, such as "90 psig at 0 scfm; 86 psig at 20 scfm; 80 psig at 40 scfm";
   *     one behind the last does no harm
   * @return the curve
   * @throws IllegalArgumentException if the text is no curve; it says why, and what would be accepted
   */
  public static RegulatorCurve parse(String text) {
    Objects.requireNonNull(text, "text");
    List<Point> points = new ArrayList<>();
    int from = 0;
    while (from <= text.length()) {
      int semicolon = text.indexOf(';', from);
      int to = semicolon < 0 ? text.length() : semicolon;
      String typed = text.substring(from, to).strip();
      boolean isBehindLast = typed.isEmpty() && semicolon < 0 && !points.isEmpty();
      if (!isBehindLast) {
        points.add(point(typed));
      }
      from = to + 1;
    }
    return new RegulatorCurve(points);
  }

  private static Point point(String typed) {
    int at = typed.indexOf(AT);
    if (at < 0) {
      throw new IllegalArgumentException("\"" + typed
          + "\" is no point of a curve; accepted: what it holds at some flows from none on, such as \"90 psig"
          + " at 0 scfm; 86 psig at 20 scfm\"");
    }
    return new Point(
        FreeAirFlow.parse(typed.substring(at + AT.length()).strip()),
        GaugePressure.parse(typed.substring(0, at).strip()));
  }

  private static void requireOrder(Point before, Point point) {
    if (!(point.kilograms() > before.kilograms())) {
      throw new IllegalArgumentException(
          "flow of a point of a regulator's curve must be above that of the point before, "
              + before.flow().inFewestDigits() + ", was "
              + point.flow().inFewestDigits()
              + "; put the points in the order of their flows, each once");
    }
    if (!(point.held().compareTo(before.held()) <= 0)) {
      throw new IllegalArgumentException(
          "pressure of a point of a regulator's curve must be at most that of the point before, "
              + before.shown() + ", was " + point.shown()
              + "; a regulator holds no more while more flows");
    }
  }

  /** {@return the setting that it is drawn at: what it holds while nothing flows} */
  public GaugePressure set() {
    return points.get(0).held();
  }

  /** {@return the flow at which it ends: what the regulator holds at more is not told} */
  public FreeAirFlow end() {
    return points.get(points.size() - 1).flow();
  }

  /** {@return by how much it droops at its end, the most that is told} */
  public PressureDrop most() {
    return PressureDrop.ofPascals(droopOf(points.size() - 1));
  }

  /**
   * Tells what is taken of a regulator that is set otherwise than its curve is drawn.
   *
   * @param set what it is set to
   * @param units the units
   * @return the words; empty where it is set as the curve is drawn
   */
  public Optional<String> otherwiseSet(GaugePressure set, UnitSystem units) {
    Objects.requireNonNull(units, "units");
    return Objects.requireNonNull(set, "set").equals(set())
        ? Optional.empty()
        : Optional.of("its maker's curve is drawn at a setting of " + units.say(set(), set)
            + "; at " + units.say(set, set())
            + " it is taken to droop by as much at the same flow, which is our choice");
  }

  /**
   * Says whether the curve tells what it holds at a flow.
   *
   * @param flow the flow
   * @return whether it is at most that of the last point
   */
  public boolean tells(MassFlow flow) {
    return Objects.requireNonNull(flow, "flow").kilogramsPerSecond() <= last();
  }

  private double last() {
    return points.get(points.size() - 1).kilograms();
  }

  private double droopOf(int point) {
    return set().pascals() - points.get(point).held().pascals();
  }

  /**
   * Tells by how much it droops at a flow.
   *
   * @param flow the flow
   * @return by how much less it holds than at no flow; empty behind the end of the curve, where that is not told
   */
  public Optional<PressureDrop> droop(MassFlow flow) {
    return tells(flow)
        ? Optional.of(PressureDrop.ofPascals(droop(flow.kilogramsPerSecond())))
        : Optional.empty();
  }

  /** By how much it droops at a flow [kg/s], in [Pa]; NaN behind its end. */
  double droop(double flow) {
    if (!(flow <= last())) {
      return Double.NaN;
    }
    int next = 1;
    while (points.get(next).kilograms() < flow) {
      next++;
    }
    double from = points.get(next - 1).kilograms();
    double share = (flow - from) / (points.get(next).kilograms() - from);
    double before = droopOf(next - 1);
    return before + Math.max(0.0, share) * (droopOf(next) - before);
  }

  /**
   * Tells the points.
   *
   * @param units the units
   * @return such as "90 psig at 0 scfm; 86 psig at 20 scfm"
   */
  public String inWords(UnitSystem units) {
    Objects.requireNonNull(units, "units");
    return points.stream()
        .map(point -> units.say(point.held()) + " at " + units.say(point.flow()))
        .collect(Collectors.joining("; "));
  }

  /** {@return the points with all their digits, as {@link #parse} reads them back; people read {@link #inWords}} */
  @Override
  public String toString() {
    return points.stream().map(Point::toString).collect(Collectors.joining("; "));
  }
}
