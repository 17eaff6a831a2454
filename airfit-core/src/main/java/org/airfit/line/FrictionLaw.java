package org.airfit.line;

import java.util.function.DoubleBinaryOperator;
import org.airfit.internal.Digits;
import org.airfit.quantity.FrictionFactor;
import org.airfit.source.Source;

/**
 * Friction factors of flow in a bore.
 *
 * <p>Below Re = 2300 every law gives 64/Re, whatever the wall. From 4000 up it gives its own formula. Between the two
 * nothing is settled: the flow may be laminar or turbulent and change from one to the other. There a law gives its
 * turbulent value, which is the higher, and {@link #isTransition(double)} tells that a result needs a warning. {@link
 * #CHURCHILL_1977} alone gives its own formula everywhere.
 *
 * <p>{@link #COLEBROOK} is solved exactly and is the one to use; the explicit formulas stand for it and are here to
 * check the work of those who used them. {@link #deviation()} is the largest share by which one leaves Colebrook where
 * shop lines lie, {@link #largestDeviation()} anywhere in the range it was published for.
 */
public enum FrictionLaw {
  /**
   * Colebrook (1939), solved to the last digits of a double.
   *
   * <pre>
   *   1/√λ = −2 log₁₀( (ε/D)/3.7 + 2.51 / (Re √λ) )
   * </pre>
   *
   * <p>Books also print 3.71 and 2.523; they move λ by up to 0.1 %.
   */
  COLEBROOK(
      "C. F. Colebrook, Turbulent flow in pipes, J. Inst. Civ. Eng. 11 (1939) 133-156",
      4.0e3,
      1.0e9,
      0.05,
      0.0,
      0.0,
      FrictionKernels::colebrook),
  /** 1/√λ = −1.8 log₁₀( (ε/D/3.7)^1.11 + 6.9/Re ). */
  HAALAND("Haaland, 1983", 4.0e3, 1.0e8, 0.05, 0.0143, 0.0143, FrictionKernels::haaland),
  /** λ = 0.25 / log₁₀²( ε/D/3.7 + 5.74/Re^0.9 ), the textbook form. */
  SWAMEE_JAIN(
      "Swamee, Jain, 1976", 5.0e3, 1.0e8, 0.05, 0.0283, 0.0300, FrictionKernels::swameeJain),
  /** 1/√λ = −2 log₁₀( ε/D/3.7 + (7/Re)^0.9 ). */
  CHURCHILL_1973(
      "Churchill, 1973", 4.0e3, 1.0e8, 0.05, 0.0291, 0.0342, FrictionKernels::churchill1973),
  /** λ = 8 ( (8/Re)¹² + (A + B)^−1.5 )^(1/12), one curve through laminar, unsettled and turbulent flow. */
  CHURCHILL_1977(
      "Churchill, Chem. Eng. 84 (1977)",
      1.0,
      1.0e8,
      0.05,
      0.0287,
      0.0316,
      FrictionKernels::churchill1977),
  /** An explicit form of Chen's with one logarithm inside another. */
  CHEN("Chen, 1979", 4.0e3, 4.0e8, 0.05, 0.00326, 0.00326, FrictionKernels::chen),
  /** Zigrang and Sylvester with one step inside. */
  ZIGRANG_SYLVESTER_1(
      "Zigrang, Sylvester, 1982",
      4.0e3,
      1.0e8,
      0.05,
      0.0076,
      0.0102,
      FrictionKernels::zigrangSylvester1),
  /** Zigrang and Sylvester with two steps inside. */
  ZIGRANG_SYLVESTER_2(
      "Zigrang, Sylvester, 1982",
      4.0e3,
      1.0e8,
      0.05,
      0.00092,
      0.00114,
      FrictionKernels::zigrangSylvester2),
  /** Serghides with three values of 1/√λ. */
  SERGHIDES_1("Serghides, 1984", 4.0e3, 1.0e8, 0.05, 2.0e-5, 3.2e-5, FrictionKernels::serghides1),
  /** Serghides with two values of 1/√λ. */
  SERGHIDES_2("Serghides, 1984", 4.0e3, 1.0e8, 0.05, 0.00152, 0.00449, FrictionKernels::serghides2),
  /** λ = 0.11 (68/Re + ε/D)^0.25. */
  ALTSHUL("Altshul, 1952", 4.0e3, 1.0e8, 0.05, 0.0878, 0.469, FrictionKernels::altshul),
  /** λ = 0.0055 (1 + (2·10⁴ ε/D + 10⁶/Re)^(1/3)). */
  MOODY("Moody, 1947", 4.0e3, 1.0e8, 0.01, 0.0401, 0.127, FrictionKernels::moody),
  /** 1/√λ = −2 log₁₀( ε/D/3.7 + 95/Re^0.983 − 96.82/Re ). */
  MANADILLI("Manadilli, 1997", 5245.0, 1.0e8, 0.05, 0.0214, 0.0250, FrictionKernels::manadilli),
  /** λ = 0.3164/Re^0.25, for smooth bores only; its deviations are those in smooth bores. */
  BLASIUS(
      "Blasius, 1913",
      3.0e3,
      2.0e5,
      0.0,
      0.0433,
      0.0433,
      (re, rough) -> FrictionKernels.blasius(re));

  /** Below this Reynolds number the flow counts as laminar. */
  public static final double LAMINAR_BELOW = 2300.0;

  /** From this Reynolds number up the flow counts as turbulent. */
  public static final double TURBULENT_FROM = 4000.0;

  /** The roughest bore that a law is asked about: roughness over bore [-]. */
  static final double ROUGHEST = 0.05;

  /**
   * By how much a ratio of two lengths may pass a bound and still count as on it [-]: a roughness of 0.05 of the bore,
   * computed in any unit, differs from it in the last digits of a double.
   */
  static final double ROUNDING = 1.0e-12;

  /** No measurement of friction goes beyond this Reynolds number. */
  static final double HIGHEST = 1.0e9;

  private final Source source;
  private final double leastReynolds;
  private final double mostReynolds;
  private final double mostRoughness;
  private final double deviation;
  private final double largestDeviation;
  private final DoubleBinaryOperator turbulent;

  FrictionLaw(
      String citation,
      double leastReynolds,
      double mostReynolds,
      double mostRoughness,
      double deviation,
      double largestDeviation,
      DoubleBinaryOperator turbulent) {
    this.source = Source.handbook(citation);
    this.leastReynolds = leastReynolds;
    this.mostReynolds = mostReynolds;
    this.mostRoughness = mostRoughness;
    this.deviation = deviation;
    this.largestDeviation = largestDeviation;
    this.turbulent = turbulent;
  }

  /**
   * Finds the friction factor.
   *
   * @param reynolds the Reynolds number on the bore [-], in [10⁻¹⁰⁰, 10⁹]
   * @param relativeRoughness the roughness over the bore [-], in [0, 0.05]; what passes 0.05 by rounding counts as 0.05
   * @return the friction factor
   * @throws IllegalArgumentException if an argument lies outside the range above, or is NaN
   */
  public FrictionFactor factor(double reynolds, double relativeRoughness) {
    if (!(reynolds >= 1.0e-100 && reynolds <= HIGHEST)) {
      throw new IllegalArgumentException(
          "Re must be in [1e-100, 1e9], was " + Digits.told(reynolds));
    }
    if (!(relativeRoughness >= 0.0 && atMost(relativeRoughness, ROUGHEST))) {
      throw new IllegalArgumentException(
          "relative roughness must be in [0, 0.05], was " + Digits.told(relativeRoughness));
    }
    return FrictionFactor.ofDarcy(darcy(reynolds, Math.min(relativeRoughness, ROUGHEST)));
  }

  /** Whether a ratio of two lengths is at most a bound, but for rounding. */
  static boolean atMost(double ratio, double bound) {
    return ratio <= bound * (1.0 + ROUNDING);
  }

  double darcy(double reynolds, double relativeRoughness) {
    // Churchill's sixteenth powers leave the range of a double below Re = 1, where it is 64/Re to
    // all digits
    boolean laminar = reynolds < (this == CHURCHILL_1977 ? 1.0 : LAMINAR_BELOW);
    return laminar
        ? FrictionKernels.laminar(reynolds)
        : turbulent.applyAsDouble(reynolds, relativeRoughness);
  }

  /** What a model with this law adds to its title. */
  String title() {
    return this == COLEBROOK ? "Colebrook friction" : "friction after " + source.citation();
  }

  /** Whether the factor jumps at Re 2300. */
  boolean jumps() {
    return this != CHURCHILL_1977;
  }

  /**
   * Tells whether a turbulent flow lies in the range this law was published for.
   *
   * @param reynolds the Reynolds number [-]
   * @param relativeRoughness the roughness over the bore [-]
   * @return whether it does; laminar flow always does
   */
  public boolean holds(double reynolds, double relativeRoughness) {
    boolean published = reynolds >= leastReynolds
        && reynolds <= mostReynolds
        && atMost(relativeRoughness, mostRoughness);
    return reynolds < LAMINAR_BELOW || published;
  }

  /**
   * Tells how far this law leaves Colebrook where shop lines lie.
   *
   * <p>It holds everywhere in Re 5·10³ to 10⁷ and ε/D 10⁻⁴ to 10⁻²; for {@link #BLASIUS} in smooth bores at Re 5·10³
   * to 2·10⁵. It is the maximum in that range, rounded up.
   *
   * @return the largest share [-]
   */
  public double deviation() {
    return deviation;
  }

  /**
   * Tells how far this law leaves Colebrook anywhere in the range that it was published for, from Re 4000 up.
   *
   * <p>The range is that of {@link #holds}; it includes smooth bores. The formulas that are powers only, {@link
   * #ALTSHUL} and {@link #MOODY}, leave it furthest at the highest Re.
   *
   * @return the largest share [-], the maximum rounded up
   */
  public double largestDeviation() {
    return largestDeviation;
  }

  /**
   * Tells whether a flow lies in the band where no law is settled.
   *
   * @param reynolds the Reynolds number [-]
   * @return whether it is at least 2300 and below 4000
   */
  public static boolean isTransition(double reynolds) {
    return reynolds >= LAMINAR_BELOW && reynolds < TURBULENT_FROM;
  }

  /** {@return where this law stands} */
  public Source source() {
    return source;
  }
}
