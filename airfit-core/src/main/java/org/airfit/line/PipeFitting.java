package org.airfit.line;

import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.airfit.internal.Digits;
import org.airfit.internal.Table;
import org.airfit.quantity.Area;
import org.airfit.quantity.FrictionFactor;
import org.airfit.quantity.Length;
import org.airfit.quantity.LengthUnit;
import org.airfit.quantity.ValveCoefficient;
import org.airfit.source.Source;
import org.airfit.working.Term;
import org.airfit.working.UnitSystem;
import org.airfit.working.Working;

/**
 * An elbow, tee, valve or other piece in a line, by the pressure it takes: its loss coefficient K on the velocity in the bore.
 *
 * <pre>
 *   Δp = K ρ v²/2
 *   LENGTH    K = (L/D) λT            λT = ( 2 log₁₀(3.7 D/ε) )⁻²,  ε = 0.0018 in
 *   CONSTANT  K = K
 *   TWO_K     K = K1/Re + K∞ (1 + 1/D_in)
 *   THREE_K   K = K1/Re + K∞ (1 + Kd/N^0.3)
 * </pre>
 *
 * <table class="striped">
 * <caption>Symbols</caption>
 * <thead><tr><th>symbol</th><th>meaning</th><th>unit</th></tr></thead>
 * <tbody>
 * <tr><td>L/D</td><td>equivalent length in bores</td><td>-</td></tr>
 * <tr><td>λT</td><td>friction factor of fully turbulent flow in new commercial steel pipe of the bore, whatever the pipe is of</td><td>-</td></tr>
 * <tr><td>K1, K∞, Kd</td><td>coefficients of the fitting</td><td>-</td></tr>
 * <tr><td>D_in, N</td><td>bore, nominal size of the pipe</td><td>in</td></tr>
 * <tr><td>Re</td><td>Reynolds number on the bore</td><td>-</td></tr>
 * </tbody>
 * </table>
 *
 * <p>Methods differ by some ten percent on one piece, and a drilled or cast passage narrower than the pipe loses more than any of them says. Crane
 * prints λT with two digits, which moves K by up to 4 %. <b>Sources:</b> Crane TP-410 (2009); W. B. Hooper, Chem. Eng. 88 (1981); R. Darby, Chem.
 * Eng. 108 (2001), as coded in the open library fluids 1.0.22.
 *
 * <p>This class is immutable and thread-safe.
 */
public final class PipeFitting {

  /** How a loss coefficient is reckoned. */
  public enum Method {
    /** As a length of pipe in bores, Crane's way. */
    LENGTH,
    /** The same K in every pipe. */
    CONSTANT,
    /** Two coefficients, Hooper's way: K rises in slow flow and in small bores. */
    TWO_K,
    /** Three coefficients, Darby's way. */
    THREE_K
  }

  private static final Length STEEL = Length.ofInches(0.0018);

  /** Loaded on first use. */
  private static final class Loaded {
    static final List<PipeFitting> ALL = Table.read(PipeFitting.class, "fittings.csv").stream()
        .map(PipeFitting::new)
        .toList();
  }

  private final Method method;
  private final String name;
  private final double lengthOverBore;
  private final double constant;
  private final double k1;
  private final double atInfinity;
  private final double kd;
  private final Source source;

  private PipeFitting(Table.Row row) {
    this.method = Method.valueOf(row.text("method"));
    this.name = row.text("name");
    this.lengthOverBore = row.optional("l_over_d").orElse(0.0);
    this.constant = row.optional("k").orElse(0.0);
    this.k1 = row.optional("k1").orElse(0.0);
    this.atInfinity = row.optional("k_infinity").orElse(0.0);
    this.kd = row.optional("k_d").orElse(0.0);
    this.source = row.text("basis").equals("read")
        ? Source.handbook(row.text("source"))
        : Source.fromMemory(row.text("source"));
  }

  private PipeFitting(
      Method method, String name, double lengthOverBore, double constant, Source source) {
    this.method = method;
    this.name = name;
    this.lengthOverBore = lengthOverBore;
    this.constant = constant;
    this.k1 = 0.0;
    this.atInfinity = 0.0;
    this.kd = 0.0;
    this.source = source;
  }

  /**
   * Obtains all fittings known by a method.
   *
   * @param method the method
   * @return its fittings in the order of the table
   */
  public static List<PipeFitting> all(Method method) {
    return Loaded.ALL.stream().filter(fitting -> fitting.method == method).toList();
  }

  /**
   * Finds a fitting.
   *
   * @param method the method
   * @param name its name in the table, such as "elbow 90°, standard, threaded"
   * @return the fitting
   * @throws IllegalArgumentException if there is none; the message lists those there are
   */
  public static PipeFitting of(Method method, String name) {
    Optional<PipeFitting> found =
        all(method).stream().filter(fitting -> fitting.name.equals(name)).findFirst();
    return found.orElseThrow(() -> new IllegalArgumentException("name of a fitting by " + method
        + " must be one of "
        + all(method).stream().map(PipeFitting::name).collect(Collectors.joining("; ")) + "; was "
        + name));
  }

  /**
   * Obtains a fitting that takes as much as a length of pipe.
   *
   * @param name what to call it
   * @param bores its equivalent length L/D in bores [-], in [0, 10⁴]
   * @param source where that is from
   * @return the fitting
   * @throws IllegalArgumentException if {@code bores} is out of range
   */
  public static PipeFitting ofEquivalentLength(String name, double bores, Source source) {
    if (!(bores >= 0.0 && bores <= 1.0e4)) {
      throw new IllegalArgumentException(
          "equivalent length of " + name + " must be in [0, 10000] bores, was " + bores + " bores");
    }
    return new PipeFitting(Method.LENGTH, name, bores, 0.0, source);
  }

  /**
   * Obtains a fitting of a known loss coefficient.
   *
   * @param name what to call it
   * @param k its loss coefficient on the velocity in the bore [-], in [0, 10⁶]
   * @param source where that is from
   * @return the fitting
   * @throws IllegalArgumentException if {@code k} is out of range
   */
  public static PipeFitting ofLossCoefficient(String name, double k, Source source) {
    if (!(k >= 0.0 && k <= 1.0e6)) {
      throw new IllegalArgumentException(
          "loss coefficient of " + name + " must be in [0, 1e6], was " + k);
    }
    return new PipeFitting(Method.CONSTANT, name, 0.0, k, source);
  }

  /**
   * Obtains a valve of a known flow coefficient, for drops small against the pressure; near choking a {@link org.airfit.flow.ControlValve} is right.
   *
   * <pre>
   *   K = 2 A² Δp/(ρ Q²) at Q = Kv of water at 1 bar: 1.6·10⁹ D⁴/Kv²   (m, m³/h)
   * </pre>
   *
   * @param name what to call it
   * @param coefficient its Kv or Cv
   * @param bore the bore of the pipe it sits in
   * @return the valve, to be counted on that bore
   * @throws IllegalArgumentException if K comes out above 10⁶: the valve is too small for that bore to be reckoned as a fitting
   */
  public static PipeFitting ofValveCoefficient(
      String name, ValveCoefficient coefficient, Length bore) {
    double flow = coefficient.kv() / 3600.0;
    double k = 2.0 * square(Area.ofCircle(bore).squareMetres() / flow) * 1.0e5 / 1000.0;
    return ofLossCoefficient(
        name, k, Source.handbook("Crane TP-410 (2009), K from Kv; exact from the definition"));
  }

  /**
   * Obtains a sudden step to a wider bore: K = (1 − β²)² on the narrow one, after Borda and Carnot.
   *
   * @param narrow the bore in front of it
   * @param wide the bore behind it, at least {@code narrow}
   * @return the step, to be counted on the narrow bore
   * @throws IllegalArgumentException if {@code wide} is the narrower one
   */
  public static PipeFitting enlargement(Length narrow, Length wide) {
    double beta2 = square(ratio(narrow, wide));
    return ofLossCoefficient(
        "sudden enlargement to " + wide.format(LengthUnit.MILLIMETRE),
        square(1.0 - beta2),
        Source.handbook("Borda and Carnot, as in Crane TP-410 (2009)"));
  }

  /**
   * Obtains a sudden step to a narrower bore: K = 0.5 (1 − β²) on the narrow one, as in Crane.
   *
   * @param wide the bore in front of it, at least {@code narrow}
   * @param narrow the bore behind it
   * @return the step, to be counted on the narrow bore
   * @throws IllegalArgumentException if {@code wide} is the narrower one
   */
  public static PipeFitting contraction(Length wide, Length narrow) {
    return ofLossCoefficient(
        "sudden contraction from " + wide.format(LengthUnit.MILLIMETRE),
        0.5 * (1.0 - square(ratio(narrow, wide))),
        Source.handbook("Crane TP-410 (2009)"));
  }

  /**
   * Obtains the same step by another author, 19 to 35 % higher for β from 0.25 to 0.75 and lower near 1: K = 0.0696 (1 − β⁵) j² + (j − 1)², j = 1 + 0.622 (1 − 0.215 β² − 0.785 β⁵).
   *
   * @param wide the bore in front of it, at least {@code narrow}
   * @param narrow the bore behind it
   * @return the step, to be counted on the narrow bore
   * @throws IllegalArgumentException if {@code wide} is the narrower one
   */
  public static PipeFitting contractionAfterRennels(Length wide, Length narrow) {
    double beta = ratio(narrow, wide);
    double beta5 = Math.pow(beta, 5.0);
    double jet = 1.0 + 0.622 * (1.0 - 0.215 * beta * beta - 0.785 * beta5);
    return ofLossCoefficient(
        "sudden contraction from " + wide.format(LengthUnit.MILLIMETRE),
        0.0696 * (1.0 - beta5) * jet * jet + square(jet - 1.0),
        Source.handbook("Rennels and Hudson, Pipe Flow (2012), as coded in fluids 1.0.22"));
  }

  private static double square(double value) {
    return value * value;
  }

  private static double ratio(Length narrow, Length wide) {
    if (!(narrow.metres() > 0.0 && narrow.metres() <= wide.metres())) {
      throw new IllegalArgumentException("narrow bore of a step must be in (0, "
          + wide.format(LengthUnit.MILLIMETRE) + "], was " + narrow.format(LengthUnit.MILLIMETRE));
    }
    return narrow.metres() / wide.metres();
  }

  /**
   * Obtains λT, the friction factor of fully turbulent flow in new commercial steel pipe.
   *
   * @param bore the bore, above 0.5 mm
   * @return λT
   * @throws IllegalArgumentException if {@code bore} is too small for such a wall
   */
  public static FrictionFactor fullyTurbulentFriction(Length bore) {
    if (!(bore.millimetres() > 0.5)) {
      throw new IllegalArgumentException("bore of a pipe with fittings must be above 0.5 mm, was "
          + bore.format(LengthUnit.MILLIMETRE));
    }
    double root = 2.0 * Math.log10(3.7 * bore.metres() / STEEL.metres());
    return FrictionFactor.ofDarcy(1.0 / (root * root));
  }

  /** {@return how its loss coefficient is reckoned} */
  public Method method() {
    return method;
  }

  /** {@return what it is called} */
  public String name() {
    return name;
  }

  /** {@return where its coefficients come from} */
  public Source source() {
    return source;
  }

  /**
   * Obtains the loss coefficient in fully turbulent flow, which shop lines are close to.
   *
   * @param bore the bore of the pipe it sits in, also taken for its nominal size
   * @return K on the velocity in {@code bore} [-]
   * @throws IllegalArgumentException if {@code bore} is not above 0.5 mm
   */
  public double k(Length bore) {
    return k(bore, bore, Double.POSITIVE_INFINITY);
  }

  /**
   * Obtains the loss coefficient.
   *
   * @param bore the bore of the pipe it sits in
   * @param nominal the nominal size of that pipe as a length, which only {@link Method#THREE_K} asks for
   * @param reynolds Re on the bore [-], above 0; infinite for fully turbulent flow
   * @return K on the velocity in {@code bore} [-]
   * @throws IllegalArgumentException if an argument is out of range
   */
  public double k(Length bore, Length nominal, double reynolds) {
    if (!(reynolds > 0.0)) {
      throw new IllegalArgumentException(
          "Re must be above 0 for the loss of a fitting, was " + reynolds);
    }
    if (!(nominal.metres() > 0.0)) {
      throw new IllegalArgumentException("nominal size of the pipe must be above 0 mm, was "
          + nominal.format(LengthUnit.MILLIMETRE));
    }
    double turbulent = fullyTurbulentFriction(bore).darcy();
    return switch (method) {
      case LENGTH -> k(FrictionFactor.ofDarcy(turbulent));
      case CONSTANT -> constant;
      case TWO_K -> k1 / reynolds + atInfinity * (1.0 + 1.0 / bore.inches());
      case THREE_K -> k1 / reynolds + atInfinity * (1.0 + kd / Math.pow(nominal.inches(), 0.3));
    };
  }

  /**
   * Obtains the loss coefficient of a fitting reckoned by length, with a λT read from a table.
   *
   * @param fullyTurbulent λT
   * @return K [-]
   * @throws IllegalStateException if the fitting is reckoned in another way
   */
  public double k(FrictionFactor fullyTurbulent) {
    if (method != Method.LENGTH) {
      throw new IllegalStateException(
          name + " is reckoned by " + method + ", which knows no λT: ask for k of a bore");
    }
    return lengthOverBore * fullyTurbulent.darcy();
  }

  /**
   * Obtains the length of straight pipe that takes as much.
   *
   * @param bore the bore of the pipe
   * @param friction the friction factor in that pipe
   * @return K D/λ
   * @throws IllegalArgumentException if {@code bore} is not above 0.5 mm
   */
  public Length equivalentLength(Length bore, FrictionFactor friction) {
    return bore.times(k(bore) / friction.darcy());
  }

  /**
   * Converts a loss coefficient to another bore: K2 = K1 (D2/D1)⁴.
   *
   * @param k the coefficient on the velocity in {@code counted} [-]
   * @param counted the bore it is counted on
   * @param wanted the bore it is wanted on
   * @return the coefficient on the velocity in {@code wanted} [-]
   */
  public static double onBore(double k, Length counted, Length wanted) {
    return k * Math.pow(wanted.metres() / counted.metres(), 4.0);
  }

  /**
   * Tells how the loss coefficient in fully turbulent flow is reached.
   *
   * @param bore the bore of the pipe it sits in
   * @param units the units to show numbers in
   * @return the working
   * @throws IllegalArgumentException if {@code bore} is not above 0.5 mm
   */
  public Working working(Length bore, UnitSystem units) {
    Working.Builder working =
        Working.titled(name + " in a bore of " + bore.format(units.smallLengthUnit()));
    Term k = Term.of("K", "K", k(bore), "", 4);
    Term d = units.smallLength("D", "D", bore.metres(), 7);
    // the two rules count the bore in inches
    String inches = units.either("25.4 / ⟨D⟩", "1 / ⟨D⟩");
    String inchesLatex = units.either("\\frac{25.4}{⟨D⟩}", "\\frac{1}{⟨D⟩}");
    Term infinity = Term.of("K∞", "K_\\infty", atInfinity, "", 4);
    return switch (method) {
      case LENGTH ->
        working
            .step(
                "Friction factor (Darcy), fully turbulent, new steel",
                "⟨λT⟩ = 1 / (2 × log10(3.7 × ⟨D⟩ / ⟨ε⟩))²",
                "⟨λT⟩ = \\frac{1}{\\left(2 \\log_{10}\\frac{3.7 ⟨D⟩}{⟨ε⟩}\\right)^2}",
                List.of(d, units.smallLength("ε", "\\varepsilon", STEEL.metres(), 4)),
                Term.of("λT", "\\lambda_T", fullyTurbulentFriction(bore).darcy(), "", 5),
                source)
            .step(
                "Loss coefficient",
                "⟨K⟩ = ⟨L/D⟩ × ⟨λT⟩",
                "⟨K⟩ = ⟨L/D⟩ \\cdot ⟨λT⟩",
                List.of(
                    Term.of("L/D", "L/D", lengthOverBore, "", 6),
                    Term.of("λT", "\\lambda_T", fullyTurbulentFriction(bore).darcy(), "", 6)),
                k,
                source)
            .build();
      case CONSTANT ->
        working.note("Loss coefficient K = " + k.value() + " [" + source + "].").build();
      case TWO_K ->
        working
            .step(
                "Loss coefficient, fully turbulent",
                "⟨K⟩ = ⟨K∞⟩ × (1 + " + inches + ")",
                "⟨K⟩ = ⟨K∞⟩ \\left(1 + " + inchesLatex + "\\right)",
                List.of(infinity, d),
                k,
                source)
            .build();
      case THREE_K ->
        working
            .step(
                "Loss coefficient, fully turbulent",
                "⟨K⟩ = ⟨K∞⟩ × (1 + ⟨Kd⟩ × (" + inches + ")^0.3)",
                "⟨K⟩ = ⟨K∞⟩ \\left(1 + ⟨Kd⟩ \\left(" + inchesLatex + "\\right)^{0.3}\\right)",
                List.of(infinity, Term.of("Kd", "K_d", kd, "", 4), d),
                k,
                source)
            .build();
    };
  }

  /** {@return the fitting, such as "elbow 90°, standard, threaded (L/D 30)"} */
  @Override
  public String toString() {
    return name
        + switch (method) {
          case LENGTH -> " (L/D " + Digits.plain(lengthOverBore) + ")";
          case CONSTANT -> " (K " + Digits.significant(constant, 4) + ")";
          case TWO_K -> " (K1 " + Digits.plain(k1) + ", K∞ " + Digits.plain(atInfinity) + ")";
          case THREE_K ->
            " (K1 " + Digits.plain(k1) + ", K∞ " + Digits.plain(atInfinity) + ", Kd "
                + Digits.plain(kd) + ")";
        };
  }
}
