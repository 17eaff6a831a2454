package org.airfit.internal;

import java.util.function.DoubleUnaryOperator;

/**
 * The one bracketing root finder of the library: the last place at which a function is not above 0.
 *
 * <p>The steps are those of T. R. Chandrupatla, <cite>A new hybrid quadratic/bisection algorithm for finding the zero
 * of a nonlinear function without using derivatives</cite>, Advances in Engineering Software 28 (1997) 145-149:
 * inverse quadratic interpolation where three points allow it, halving otherwise. Each step is then kept so near the
 * middle that the search never needs more than {@link #SPARE} steps more than halving would. This bound is the
 * projection of I. F. D. Oliveira and R. H. C. Takahashi, <cite>An enhancement of the bisection method average
 * performance preserving minmax optimality</cite>, ACM Trans. Math. Softw. 47 (2020), article 5.
 *
 * <p>The search ends when the place lies between two points less than two tolerances apart, or at a value of exactly 0.
 * Of the two points, it returns the one where the function is not above 0. So at a jump the answer is the last place
 * before the jump. NaN counts as above 0: that is how a function says "beyond the end". A function that knows only "not
 * beyond" and "beyond" may return −1 and 1; the search then halves.
 *
 * <p>Nothing is allocated.
 */
public final class RootFinder {

  /** The steps that a search may take beyond those of halving. */
  public static final int SPARE = 6;

  private RootFinder() {}

  /**
   * Finds the last place, on the way from a point within to a point beyond, at which a function is not above 0.
   *
   * @param function the function, which rises above 0 once between the points; where it does so more often, one of
   *     these places is found. Where it is just 0 along a span, as behind a regulator that holds what is asked for, the
   *     end of the span is found
   * @param within a point where the function is at most 0
   * @param beyond a point where the function is above 0 or NaN, on either side of {@code within}
   * @param tolerance half of the largest distance between the answer and the nearest point beyond, above 0; where it is
   *     less than four last digits of a double at the larger of the points, these are taken
   * @return the place
   * @throws IllegalArgumentException if an argument breaks what is said above
   */
  public static double find(
      DoubleUnaryOperator function, double within, double beyond, double tolerance) {
    return find(
        function,
        within,
        function.applyAsDouble(within),
        beyond,
        function.applyAsDouble(beyond),
        tolerance);
  }

  /**
   * Finds the same from values already known at both points.
   *
   * @param function the function
   * @param within a point where the function is at most 0
   * @param atWithin the value there
   * @param beyond a point where the function is above 0 or NaN
   * @param atBeyond the value there
   * @param tolerance half of the largest distance between the answer and the nearest point beyond, above 0
   * @return the place
   * @throws IllegalArgumentException if an argument breaks what is said above
   */
  public static double find(
      DoubleUnaryOperator function,
      double within,
      double atWithin,
      double beyond,
      double atBeyond,
      double tolerance) {
    return find(function, within, atWithin, beyond, atBeyond, 0.5 * (within + beyond), tolerance);
  }

  /**
   * Finds the same, and looks at a guess first: a good one saves a look or two, a bad one costs no more than halving does.
   *
   * @param function the function
   * @param within a point where the function is at most 0
   * @param atWithin the value there
   * @param beyond a point where the function is above 0 or NaN
   * @param atBeyond the value there
   * @param guess where to look first; in the middle where it does not lie between the points
   * @param tolerance half of the largest distance between the answer and the nearest point beyond, above 0
   * @return the place
   * @throws IllegalArgumentException if an argument breaks what is said above
   */
  public static double find(
      DoubleUnaryOperator function,
      double within,
      double atWithin,
      double beyond,
      double atBeyond,
      double guess,
      double tolerance) {
    if (!(atWithin <= 0.0)) {
      throw new IllegalArgumentException(
          "value within must be at most 0, was " + atWithin + " at " + within);
    }
    if (atBeyond <= 0.0) {
      throw new IllegalArgumentException(
          "value beyond must be above 0 or NaN, was " + atBeyond + " at " + beyond);
    }
    if (!(tolerance > 0.0)) {
      throw new IllegalArgumentException("tolerance must be above 0, was " + tolerance);
    }
    double eps = Math.max(tolerance, 4.0 * Math.ulp(Math.max(Math.abs(within), Math.abs(beyond))));
    double width = Math.abs(beyond - within);
    if (!(width < Double.POSITIVE_INFINITY)) {
      throw new IllegalArgumentException(
          "points must be finite, were " + within + " and " + beyond);
    }
    // what halving, and the spare steps, may have left of the width: 2 eps after the last of them,
    // less a tenth for
    // the rounding of the points
    double allowed = 0.9 * eps * Math.scalb(1.0, halvings(width, eps) + SPARE);
    double x1 = beyond; // the newest point, x2 on the other side of 0, x3 the one before
    double f1 = finiteOrAbove(atBeyond);
    double x2 = within;
    double f2 = atWithin;
    double share = (guess - x1) / (x2 - x1); // of the way from x1 to x2
    share = share > 0.0 && share < 1.0 ? share : 0.5;
    while (width > 2.0 * eps) {
      double slack = Math.max(0.0, allowed / width - 0.5);
      share = Math.min(Math.max(share, eps / width), 1.0 - eps / width);
      share = Math.min(Math.max(share, 0.5 - slack), 0.5 + slack);
      double x = x1 + share * (x2 - x1);
      double f = finiteOrAbove(function.applyAsDouble(x));
      double x3;
      double f3;
      if (f > 0.0 == f1 > 0.0) {
        x3 = x1;
        f3 = f1;
      } else {
        x3 = x2;
        f3 = f2;
        x2 = x1;
        f2 = f1;
      }
      x1 = x;
      f1 = f;
      width = Math.abs(x2 - x1);
      allowed *= 0.5;
      share = share(x1, f1, x2, f2, x3, f3);
    }
    return f1 <= 0.0 ? x1 : x2;
  }

  /**
   * Tells how often a search may ask for the function, besides the two values at its ends.
   *
   * @param width the distance of the two points
   * @param tolerance the tolerance of the search, above 0
   * @return the number, which halving would need less {@link #SPARE}
   */
  public static int most(double width, double tolerance) {
    return halvings(width, tolerance) + SPARE;
  }

  /** How often a width is halved until it is at most two tolerances. */
  private static int halvings(double width, double tolerance) {
    int count = 0;
    for (double left = width; left > 2.0 * tolerance; left *= 0.5) {
      count++;
    }
    return count;
  }

  private static double finiteOrAbove(double value) {
    return Double.isNaN(value) ? Double.POSITIVE_INFINITY : value;
  }

  /**
   * The next step as a share of the way from x1 to x2, after Chandrupatla (1997): 0.5 where interpolation is not
   * safe.
   */
  private static double share(double x1, double f1, double x2, double f2, double x3, double f3) {
    double xi = (x1 - x2) / (x3 - x2);
    double phi = (f1 - f2) / (f3 - f2);
    // an infinite value makes phi 0, 1 or NaN, or fails here: the search halves
    if (!(phi * phi < xi && (1.0 - phi) * (1.0 - phi) < 1.0 - xi)) {
      return 0.5;
    }
    double share = f1 / (f2 - f1) * (f3 / (f2 - f3))
        + (x3 - x1) / (x2 - x1) * (f1 / (f3 - f1)) * (f2 / (f3 - f2));
    return share >= 0.0 && share <= 1.0 ? share : 0.5;
  }
}
