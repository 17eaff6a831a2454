package org.airfit.flow;

import java.util.List;
import java.util.Objects;
import org.airfit.air.AirState;
import org.airfit.source.Source;

/**
 * An element known by a sheet of flows and drops at one inlet.
 *
 * <p>Between two points, and between no flow and the first, the drop is straight in the square of the flow. Beyond the
 * last point nothing passes. At another inlet the ratio of the pressures is that of the same ṁ √T1/p1, which is the
 * same Mach number; the Reynolds number is left out.
 *
 * <p>This class is immutable, thread-safe and value-based.
 */
public final class FlowTable implements FlowElement {

  private final AirState inlet;
  private final List<FlowLoss> points;
  private final Source source;
  private final double[] squares; // of ṁ √T1/p1, from 0 up
  private final double[] shares; // Δp/p1, from 0 up

  private FlowTable(AirState inlet, List<FlowLoss> points, Source source) {
    this.inlet = inlet;
    this.points = points;
    this.source = source;
    this.squares = new double[points.size() + 1];
    this.shares = new double[points.size() + 1];
    double p1 = inlet.pressure().pascals();
    double perPressure = Math.sqrt(inlet.temperature().kelvins()) / p1;
    for (int i = 1; i < squares.length; i++) {
      FlowLoss point = points.get(i - 1);
      double reduced = point.flow().massFlow().kilogramsPerSecond() * perPressure;
      squares[i] = reduced * reduced;
      shares[i] = point.drop().pascals() / p1;
      if (!(squares[i] > squares[i - 1])) {
        throw new IllegalArgumentException("flows of a table must rise from above 0, was "
            + point.flow().shown() + " at point " + i);
      }
      if (!(shares[i] >= shares[i - 1])) {
        throw new IllegalArgumentException("drops of a table must not fall as the flow rises, was "
            + point.drop().shown() + " at point " + i);
      }
      if (!(shares[i] < 1.0)) {
        throw new IllegalArgumentException("drops of a table must be below the inlet pressure "
            + inlet.pressure().shown() + ", was " + point.drop().shown() + " at point " + i);
      }
    }
  }

  /**
   * Obtains an element from a sheet.
   *
   * @param inlet the air in front in the sheet
   * @param points the flows and drops, the flows rising from above 0, the drops never falling; at least one
   * @param source where the sheet comes from
   * @return the element
   * @throws IllegalArgumentException if the points break what is said above, or a drop leaves no pressure
   */
  public static FlowTable of(AirState inlet, List<FlowLoss> points, Source source) {
    Objects.requireNonNull(inlet, "inlet");
    Objects.requireNonNull(points, "points");
    Objects.requireNonNull(source, "source");
    if (points.isEmpty()) {
      throw new IllegalArgumentException("points of a table must be at least 1, was 0");
    }
    return new FlowTable(inlet, List.copyOf(points), source);
  }

  /** {@return the air in front in the sheet} */
  public AirState inlet() {
    return inlet;
  }

  /** {@return the flows and drops, the flows rising} */
  public List<FlowLoss> points() {
    return points;
  }

  /** {@return where the sheet comes from} */
  public Source source() {
    return source;
  }

  private static double reduced(double flow, double pascals, double kelvins) {
    return flow * Math.sqrt(kelvins) / pascals;
  }

  /** The end of the piece a square lies in; the last where it lies beyond. */
  private int piece(double square) {
    int end = 1;
    while (end < squares.length - 1 && square > squares[end]) {
      end++;
    }
    return end;
  }

  private double steepness(int end) {
    return (shares[end] - shares[end - 1]) / (squares[end] - squares[end - 1]);
  }

  @Override
  public double outlet(double flow, double pascals, double kelvins, double viscosity) {
    double reduced = reduced(flow, pascals, kelvins);
    double square = reduced * reduced;
    if (square > squares[squares.length - 1]) {
      return Double.NaN;
    }
    int end = piece(square);
    double share = shares[end - 1] + (square - squares[end - 1]) * steepness(end);
    return pascals * (1.0 - share);
  }

  @Override
  public double largest(double pascals, double kelvins, double viscosity) {
    return Math.sqrt(squares[squares.length - 1]) * pascals / Math.sqrt(kelvins);
  }

  @Override
  public double slope(double flow, double pascals, double kelvins, double viscosity) {
    double reduced = reduced(flow, pascals, kelvins);
    double square = reduced * reduced;
    return square > squares[squares.length - 1]
        ? Double.NaN
        : -2.0 * reduced * Math.sqrt(kelvins) * steepness(piece(square));
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof FlowTable that
        && inlet.equals(that.inlet)
        && points.equals(that.points)
        && source.equals(that.source);
  }

  @Override
  public int hashCode() {
    return 31 * (31 * inlet.hashCode() + points.hashCode()) + source.hashCode();
  }

  /** {@return the element in words, such as "table of 4 points up to 0.03 m³/s ANR"} */
  @Override
  public String toString() {
    return "table of " + points.size() + " points up to "
        + points.get(points.size() - 1).flow().shown();
  }
}
