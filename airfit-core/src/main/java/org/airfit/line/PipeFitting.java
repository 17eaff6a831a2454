package org.airfit.line;

import java.util.List;
import java.util.Objects;
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
import org.airfit.working.Formula;
import org.airfit.working.Symbol;
import org.airfit.working.UnitSystem;
import org.airfit.working.ValueKind;
import org.airfit.working.Working;

/**
 * An elbow, tee, valve or other piece in a line, by the pressure it takes: its loss coefficient K on the velocity in
 * the bore.
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
 * <tr><td>λT</td><td>friction factor of fully turbulent flow in new commercial steel pipe of the bore, whatever the
 * pipe is of</td><td>-</td></tr>
 * <tr><td>K1, K∞, Kd</td><td>coefficients of the fitting</td><td>-</td></tr>
 * <tr><td>D_in, N</td><td>bore, nominal size of the pipe</td><td>in</td></tr>
 * <tr><td>Re</td><td>Reynolds number on the bore</td><td>-</td></tr>
 * </tbody>
 * </table>
 *
 * <p>Methods differ by some ten percent on one piece, and a drilled or cast passage narrower than the pipe loses more
 * than any of them says. Crane prints λT with two digits, which moves K by up to 4 %. <b>Sources:</b> Crane TP-410
 * (2009); W. B. Hooper, Chem. Eng. 88 (1981); R. Darby, Chem. Eng. 108 (2001), as coded in the open library fluids
 * 1.0.22.
 *
 * <p>A sudden change of bore is a {@link BoreStep}.
 *
 * <p>This class is immutable, thread-safe and value-based.
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

  private static final Symbol BORE = Symbol.of("D", ValueKind.SMALL_LENGTH);
  private static final Symbol ROUGHNESS = Symbol.of("ε", ValueKind.SMALL_LENGTH);
  private static final Symbol FRICTION = Symbol.of("λT", "\\lambda_T", ValueKind.NUMBER);
  private static final Symbol BORES = Symbol.of("L/D", ValueKind.NUMBER);
  private static final Symbol AT_INFINITY = Symbol.of("K∞", "K_\\infty", ValueKind.NUMBER);
  private static final Symbol DIAMETER_FACTOR = Symbol.of("Kd", "K_d", ValueKind.NUMBER);
  private static final Symbol K = Symbol.of("K", ValueKind.NUMBER);

  private static final Source TABLE = Source.handbook("as its coefficients");

  private static final Formula TURBULENT = Formula.of(
      "Friction factor (Darcy), fully turbulent, new steel",
      "⟨λT⟩ = 1 / (2 × log10(3.7 × ⟨D⟩ / ⟨ε⟩))²",
      TABLE,
      FRICTION,
      BORE,
      ROUGHNESS);

  private static final Formula BY_LENGTH =
      Formula.of("Loss coefficient", "⟨K⟩ = ⟨L/D⟩ × ⟨λT⟩", TABLE, K, BORES, FRICTION);

  /** The bore is counted in inches. */
  private static final Formula TWO_COEFFICIENTS = Formula.of(
      "Loss coefficient, fully turbulent",
      "⟨K⟩ = ⟨K∞⟩ × (1 + [25.4|1] / ⟨D⟩)",
      TABLE,
      K,
      AT_INFINITY,
      BORE);

  /** The bore is counted in inches. */
  private static final Formula THREE_COEFFICIENTS = Formula.of(
      "Loss coefficient, fully turbulent",
      "⟨K⟩ = ⟨K∞⟩ × (1 + ⟨Kd⟩ × ([25.4|1] / ⟨D⟩)^0.3)",
      TABLE,
      K,
      AT_INFINITY,
      DIAMETER_FACTOR,
      BORE);

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
    Objects.requireNonNull(method, "method");
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
    Objects.requireNonNull(name, "name");
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
    Objects.requireNonNull(name, "name");
    Objects.requireNonNull(source, "source");
    if (!(bores >= 0.0 && bores <= 1.0e4)) {
      throw new IllegalArgumentException("equivalent length of " + name
          + " must be in [0, 10000] bores, was " + Digits.told(bores) + " bores");
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
    Objects.requireNonNull(name, "name");
    Objects.requireNonNull(source, "source");
    if (!(k >= 0.0 && k <= 1.0e6)) {
      throw new IllegalArgumentException(
          "loss coefficient of " + name + " must be in [0, 1e6], was " + Digits.told(k));
    }
    return new PipeFitting(Method.CONSTANT, name, 0.0, k, source);
  }

  /**
   * Obtains a valve of a known flow coefficient, for drops small against the pressure; near choking a {@link
   * org.airfit.flow.ControlValve} is right.
   *
   * <pre>
   *   K = 2 A² Δp/(ρ Q²) at Q = Kv of water at 1 bar: 1.6·10⁹ D⁴/Kv²   (m, m³/h)
   * </pre>
   *
   * @param name what to call it
   * @param coefficient its Kv or Cv
   * @param bore the bore of the pipe it sits in
   * @return the valve, to be counted on that bore
   * @throws IllegalArgumentException if K comes out above 10⁶: the valve is too small for that bore to be reckoned as
   *     a fitting
   */
  public static PipeFitting ofValveCoefficient(
      String name, ValveCoefficient coefficient, Length bore) {
    Objects.requireNonNull(bore, "bore");
    double flow = coefficient.kv() / 3600.0;
    double k = 2.0 * square(Area.ofCircle(bore).squareMetres() / flow) * 1.0e5 / 1000.0;
    return ofLossCoefficient(
        name, k, Source.handbook("Crane TP-410 (2009), K from Kv; exact from the definition"));
  }

  private static double square(double value) {
    return value * value;
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
          + bore.inFull(LengthUnit.MILLIMETRE));
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
          "Re must be above 0 for the loss of a fitting, was " + Digits.told(reynolds));
    }
    if (!(nominal.metres() > 0.0)) {
      throw new IllegalArgumentException("nominal size of the pipe must be above 0 mm, was "
          + nominal.inFull(LengthUnit.MILLIMETRE));
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
   * @param k the coefficient on the velocity in {@code counted} [-], at least 0
   * @param counted the bore it is counted on, above 0
   * @param wanted the bore it is wanted on, above 0
   * @return the coefficient on the velocity in {@code wanted} [-]
   * @throws IllegalArgumentException if {@code k} is not finite and at least 0, a bore is 0, or the result would be
   *     infinite
   */
  public static double onBore(double k, Length counted, Length wanted) {
    Objects.requireNonNull(counted, "counted");
    Objects.requireNonNull(wanted, "wanted");
    if (!(k >= 0.0 && k < Double.POSITIVE_INFINITY)) {
      throw new IllegalArgumentException(
          "loss coefficient K must be at least 0, was " + Digits.told(k));
    }
    requireBore(counted, "counted");
    requireBore(wanted, "wanted");
    double converted = k * Math.pow(wanted.metres() / counted.metres(), 4.0);
    if (!(converted < Double.POSITIVE_INFINITY)) {
      throw new IllegalArgumentException(
          "bores must be of a kind, were " + counted.shown() + " and " + wanted.shown());
    }
    return converted;
  }

  private static void requireBore(Length bore, String parameter) {
    if (!(bore.metres() > 0.0)) {
      throw new IllegalArgumentException(
          "bore " + parameter + " must be above 0 mm, was " + bore.inFull(LengthUnit.MILLIMETRE));
    }
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
    double k = k(bore);
    Working.Builder working =
        Working.titled(name + " in a bore of " + bore.format(units.smallLengthUnit()), units);
    switch (method) {
      case LENGTH ->
        working
            .given(BORE, bore.metres(), 7)
            .given(ROUGHNESS, STEEL.metres(), 4)
            .step(TURBULENT.from(source), fullyTurbulentFriction(bore).darcy(), 4)
            .given(BORES, lengthOverBore, 6)
            .step(BY_LENGTH.from(source), k, 4)
            .answer(K);
      case CONSTANT ->
        working.answer("Loss coefficient K = " + Digits.significant(k, 4) + " [" + source + "].");
      case TWO_K ->
        working
            .given(BORE, bore.metres(), 7)
            .given(AT_INFINITY, atInfinity, 4)
            .step(TWO_COEFFICIENTS.from(source), k, 4)
            .answer(K);
      case THREE_K ->
        working
            .given(BORE, bore.metres(), 7)
            .given(AT_INFINITY, atInfinity, 4)
            .given(DIAMETER_FACTOR, kd, 4)
            .step(THREE_COEFFICIENTS.from(source), k, 4)
            .answer(K);
    }
    return working.build();
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof PipeFitting that
        && method == that.method
        && name.equals(that.name)
        && lengthOverBore == that.lengthOverBore
        && constant == that.constant
        && k1 == that.k1
        && atInfinity == that.atInfinity
        && kd == that.kd
        && source.equals(that.source);
  }

  @Override
  public int hashCode() {
    return Objects.hash(method, name, lengthOverBore, constant, k1, atInfinity, kd, source);
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
