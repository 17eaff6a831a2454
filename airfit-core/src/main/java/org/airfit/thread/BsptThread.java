package org.airfit.thread;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import org.airfit.internal.Digits;
import org.airfit.quantity.Length;
import org.airfit.quantity.NominalThreadSize;
import org.airfit.source.Source;
import org.airfit.working.Formula;
import org.airfit.working.Symbol;
import org.airfit.working.UnitSystem;
import org.airfit.working.Working;

/**
 * R outside and Rc inside, the 55° taper pipe threads of ISO 7-1, which have the diameters of {@linkplain BsppThread G}
 * at the gauge plane.
 *
 * <pre>
 *   male, x behind the small end:     d + (x − a)/16,  d2 + (x − a)/16,  d1 + (x − a)/16
 *   female, x inside the mouth:       d − x/16,  d2 − x/16,  d1 − x/16
 *   useful thread a + f;  gauging tolerance of R ± T1/2, of Rc ± T2/2;
 *   useful female thread at least 0.8 (a + f − T1/2)
 * </pre>
 *
 * <table class="striped">
 * <caption>Symbols</caption>
 * <thead><tr><th>symbol</th><th>meaning</th><th>unit</th></tr></thead>
 * <tbody>
 * <tr><td>d, d2, d1</td><td>major, pitch and minor diameter at the gauge plane</td><td>mm</td></tr>
 * <tr><td>a</td><td>gauge length: from the small end of R to its gauge plane; tabulated</td><td>mm</td></tr>
 * <tr><td>f</td><td>fitting allowance: useful thread beyond the gauge plane; tabulated</td><td>mm</td></tr>
 * <tr><td>T1/2</td><td>tolerance of a: one turn to size 2, one and a half turns from 2-1/2</td><td>mm</td></tr>
 * <tr><td>T2/2</td><td>tolerance of the gauge plane of Rc: 1.25 turns to size 2, one and a half turns from 2-1/2</td>
 *     <td>mm</td></tr>
 * <tr><td>P</td><td>pitch</td><td>mm</td></tr>
 * </tbody>
 * </table>
 *
 * <p><b>Valid</b> for sizes 1/16 to 4 without 3-1/2, which ISO 7-1 does not have. <b>Source:</b> ISO 7-1 as quoted in
 * JIS B 0203:1999 (f, T1, T2) and in an encyclopedia (a to size 2). a of 2-1/2 to 4 is from memory; it gives the
 * printed useful female lengths 18.6, 21.1 and 25.9 mm.
 *
 * <p>This class is immutable, thread-safe and value-based.
 */
public final class BsptThread implements PipeThread {

  private static final double TAPER = 1.0 / 16.0;

  private static final Symbol A = BspFormulas.length("a");
  private static final Symbol F = BspFormulas.length("f");
  private static final Formula FIRST_CREST = Formula.of(
      "Crest of the first thread",
      "⟨c⟩ = ⟨d⟩ − ⟨a⟩ / 16",
      ThreadFamily.BSPT.source(),
      BspFormulas.length("c"),
      BspFormulas.D,
      A);
  private static final Formula LAST_CREST = Formula.of(
      "Crest at the end of the useful thread",
      "⟨g⟩ = ⟨d⟩ + ⟨f⟩ / 16",
      ThreadFamily.BSPT.source(),
      BspFormulas.length("g"),
      BspFormulas.D,
      F);
  private static final Formula USEFUL_THREAD = Formula.of(
      "Useful thread",
      "⟨l⟩ = ⟨a⟩ + ⟨f⟩",
      ThreadFamily.BSPT.source(),
      BspFormulas.length("l"),
      A,
      F);

  /** a, f, outside diameter of the pipe of JIS and of EN 10255 (0 where none is given) [mm]. */
  private record Inputs(double a, double f, double jis, double en) {}

  private static final Map<NominalThreadSize, Inputs> TABLE = table();

  private final BsppThread atGaugePlane;
  private final Inputs in;

  private BsptThread(BsppThread atGaugePlane, Inputs in) {
    this.atGaugePlane = atGaugePlane;
    this.in = in;
  }

  private static Map<NominalThreadSize, Inputs> table() {
    Map<NominalThreadSize, Inputs> table = new EnumMap<>(NominalThreadSize.class);
    table.put(NominalThreadSize.ONE_SIXTEENTH, new Inputs(4.0, 2.5, 0.0, 0.0));
    table.put(NominalThreadSize.ONE_EIGHTH, new Inputs(4.0, 2.5, 10.5, 10.2));
    table.put(NominalThreadSize.ONE_QUARTER, new Inputs(6.0, 3.7, 13.8, 13.5));
    table.put(NominalThreadSize.THREE_EIGHTHS, new Inputs(6.4, 3.7, 17.3, 17.2));
    table.put(NominalThreadSize.ONE_HALF, new Inputs(8.2, 5.0, 21.7, 21.3));
    table.put(NominalThreadSize.THREE_QUARTERS, new Inputs(9.5, 5.0, 27.2, 26.9));
    table.put(NominalThreadSize.ONE, new Inputs(10.4, 6.4, 34.0, 33.7));
    table.put(NominalThreadSize.ONE_AND_A_QUARTER, new Inputs(12.7, 6.4, 42.7, 42.4));
    table.put(NominalThreadSize.ONE_AND_A_HALF, new Inputs(12.7, 6.4, 48.6, 48.3));
    table.put(NominalThreadSize.TWO, new Inputs(15.9, 7.5, 60.5, 60.3));
    table.put(NominalThreadSize.TWO_AND_A_HALF, new Inputs(17.5, 9.2, 76.3, 0.0));
    table.put(NominalThreadSize.THREE, new Inputs(20.6, 9.2, 89.1, 0.0));
    table.put(NominalThreadSize.FOUR, new Inputs(25.4, 10.4, 114.3, 0.0));
    return table;
  }

  /**
   * Obtains the thread of a size.
   *
   * @param size the size, from 1/16 to 4 without 3-1/2
   * @return the thread
   * @throws IllegalArgumentException if {@code size} is 3-1/2
   */
  public static BsptThread of(NominalThreadSize size) {
    ThreadFamily.BSPT.requireSize(size);
    return new BsptThread(BsppThread.of(size), Objects.requireNonNull(TABLE.get(size)));
  }

  /** {@return all sizes, smallest first} */
  public static List<BsptThread> all() {
    return TABLE.keySet().stream().map(BsptThread::of).toList();
  }

  @Override
  public ThreadFamily family() {
    return ThreadFamily.BSPT;
  }

  @Override
  public NominalThreadSize size() {
    return atGaugePlane.size();
  }

  @Override
  public double threadsPerInch() {
    return atGaugePlane.threadsPerInch();
  }

  /** {@return P, the pitch, to 0.001 mm as the standards use it} */
  @Override
  public Length pitch() {
    return atGaugePlane.pitch();
  }

  /** {@return h, the height of the thread, to 0.001 mm} */
  @Override
  public Length height() {
    return atGaugePlane.height();
  }

  /** {@return d, d2 and d1, the diameters at the gauge plane} */
  public ThreadSection atGaugePlane() {
    return atGaugePlane.section(Gender.MALE, Length.ofMetres(0.0));
  }

  private boolean isLarge() {
    return size().compareTo(NominalThreadSize.TWO) > 0;
  }

  /** Turns are counted with the unrounded pitch: JIS B 0203 prints T1/2 and T2/2 from 1.3368 mm. */
  private Length turn() {
    return mm(25.4 / threadsPerInch());
  }

  private static Length mm(double value) {
    return Length.ofMillimetres(value);
  }

  /** {@return a, the distance of the gauge plane of R from its small end} */
  public Length gaugeLength() {
    return mm(in.a);
  }

  /** {@return the tolerance of a in turns} */
  public double gaugeToleranceTurns() {
    return isLarge() ? 1.5 : 1.0;
  }

  /** {@return T1/2, the tolerance of a} */
  public Length gaugeTolerance() {
    return turn().times(gaugeToleranceTurns());
  }

  /** {@return a less and plus its tolerance} */
  public Limits gaugeLengthLimits() {
    return Limits.about(gaugeLength(), gaugeTolerance());
  }

  /** {@return the tolerance of the gauge plane of Rc in turns} */
  public double femaleGaugeToleranceTurns() {
    return isLarge() ? 1.5 : 1.25;
  }

  /** {@return T2/2, the tolerance of the gauge plane of Rc} */
  public Length femaleGaugeTolerance() {
    return turn().times(femaleGaugeToleranceTurns());
  }

  /** {@return f, the useful thread beyond the gauge plane} */
  public Length fittingAllowance() {
    return mm(in.f);
  }

  /** {@return f in turns} */
  public double fittingAllowanceTurns() {
    return in.f / turn().millimetres();
  }

  /** {@return a in turns, how far R goes into Rc by hand} */
  public double handTightTurns() {
    return in.a / turn().millimetres();
  }

  /** {@return the useful length of R, the gauge length and the fitting allowance beyond it} */
  public Length usefulLength() {
    return gaugeLength().plus(fittingAllowance());
  }

  /** {@return the useful length of R at the least and at the greatest gauge length} */
  public Limits usefulLengthLimits() {
    return Limits.about(usefulLength(), gaugeTolerance());
  }

  /**
   * {@return the useful length a female thread must have at least, 0.8 of the useful length of R at the least gauge
   * length}
   */
  public Length leastFemaleUsefulLength() {
    return usefulLengthLimits().least().times(0.8);
  }

  @Override
  public ThreadSection section(Gender gender, Length depth) {
    Objects.requireNonNull(gender, "gender");
    Objects.requireNonNull(depth, "depth");
    ThreadSection plane = atGaugePlane();
    double growth =
        gender == Gender.MALE ? TAPER * (depth.millimetres() - in.a) : -TAPER * depth.millimetres();
    return new ThreadSection(
        mm(plane.major().millimetres() + growth),
        mm(plane.pitch().millimetres() + growth),
        mm(plane.minor().millimetres() + growth));
  }

  /** {@return the gauging tolerance on the cone} */
  @Override
  public Length looseness(Gender gender) {
    Objects.requireNonNull(gender, "gender");
    return (gender == Gender.MALE ? gaugeTolerance() : femaleGaugeTolerance()).times(TAPER);
  }

  @Override
  public Limits firstCrest(Gender gender) {
    Objects.requireNonNull(gender, "gender");
    return Limits.about(section(gender, Length.ofMetres(0.0)).crest(gender), looseness(gender));
  }

  /** {@return nothing: crests are rounded, not cut} */
  @Override
  public Length crestSlack() {
    return Length.ofMetres(0.0);
  }

  /**
   * {@return the outside diameter of the pipe that carries the thread after EN 10255, as an encyclopedia gives it;
   * empty for 1/16 and above 2}
   */
  public Optional<Length> pipeDiameterEn10255() {
    return in.en > 0.0 ? Optional.of(mm(in.en)) : Optional.empty();
  }

  /** {@return the outside diameter of the pipe that carries the thread after JIS B 0203; empty for 1/16} */
  public Optional<Length> pipeDiameterJis() {
    return in.jis > 0.0 ? Optional.of(mm(in.jis)) : Optional.empty();
  }

  @Override
  public Source source() {
    return isLarge()
        ? Source.fromMemory("gauge length of ISO 7-1, size " + size()
            + "; it gives the useful female length printed in JIS B 0203:1999")
        : family().source();
  }

  @Override
  public Working working(UnitSystem units) {
    Working.Builder out = Working.titled("R " + size() + ", basic dimensions", units);
    atGaugePlane.basicSteps(out, source());
    Length end = Length.ofMetres(0.0);
    return out.given(A, gaugeLength().metres(), 4)
        .given(F, fittingAllowance().metres(), 4)
        .step(FIRST_CREST.from(source()), section(Gender.MALE, end).major().metres(), 5)
        .step(
            LAST_CREST.from(source()),
            section(Gender.MALE, usefulLength()).major().metres(),
            5)
        .step(USEFUL_THREAD.from(source()), usefulLength().metres(), 4)
        .note("Gauging tolerance: R " + Digits.plain(gaugeToleranceTurns())
            + " turn(s) either way, Rc " + Digits.plain(femaleGaugeToleranceTurns()) + " turns.")
        .answer(
            BspFormulas.D2,
            BspFormulas.D1,
            FIRST_CREST.result(),
            LAST_CREST.result(),
            USEFUL_THREAD.result())
        .build();
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof BsptThread that && size() == that.size();
  }

  @Override
  public int hashCode() {
    return size().hashCode();
  }

  /** {@return the thread as it is called, such as "R 1/4-19"} */
  @Override
  public String toString() {
    return "R " + size() + "-" + Digits.plain(threadsPerInch());
  }
}
