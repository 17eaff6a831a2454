package org.airfit.thread;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.airfit.internal.Digits;
import org.airfit.quantity.Length;
import org.airfit.quantity.NominalThreadSize;
import org.airfit.source.Source;
import org.airfit.working.Term;
import org.airfit.working.Working;

/**
 * The basic geometry of an American taper pipe thread, from the formulas of ASME B1.20.1.
 *
 * <pre>
 *   p = 1/n                        h = 0.8 p                     V = 3.47 p
 *   E0 = D − (0.05 D + 1.1) p      E1 = E0 + L1/16               L2 = (0.8 D + 6.8) p
 *   E2 = E0 + L2/16                E3 = E0 − L3/16, L3 = 3 p     L4 = L2 + V
 *   L5 = L2 − 2 p                  E5 = E0 + L5/16               K0 = E0 − h
 * </pre>
 *
 * <table class="striped">
 * <caption>Symbols</caption>
 * <thead><tr><th>symbol</th><th>meaning</th><th>unit</th></tr></thead>
 * <tbody>
 * <tr><td>D</td><td>outside diameter of the pipe</td><td>in</td></tr>
 * <tr><td>n, p</td><td>threads per inch, pitch</td><td>1/in, in</td></tr>
 * <tr><td>h</td><td>height of the thread</td><td>in</td></tr>
 * <tr><td>E0</td><td>pitch diameter at the small end of the male thread</td><td>in</td></tr>
 * <tr><td>E1, L1</td><td>pitch diameter at the hand-tight plane, and the hand-tight engagement; L1 is tabulated, it has no formula</td><td>in</td></tr>
 * <tr><td>E2, L2</td><td>pitch diameter at the end of the effective thread, and its length</td><td>in</td></tr>
 * <tr><td>E3, L3</td><td>pitch diameter inside the female thread, wrench make-up length</td><td>in</td></tr>
 * <tr><td>L4, V</td><td>whole length of the male thread, its vanish part</td><td>in</td></tr>
 * <tr><td>E5, L5</td><td>pitch diameter at the end of the full crests, and their length</td><td>in</td></tr>
 * <tr><td>K0</td><td>minor diameter at the small end</td><td>in</td></tr>
 * </tbody>
 * </table>
 *
 * <p>Because E5 + h = D, the crests meet the pipe at L5. <b>Valid</b> for sizes 1/16 to 2 (L3 is two turns from 2-1/2 up, which are not
 * here). <b>Source:</b> ASME B1.20.1-2013, tables 1a and 1b and the formulas above them.
 *
 * <p>This class is immutable, thread-safe and value-based.
 */
public final class NptThread {

  private static final Source SOURCE = ThreadFamily.NPT.source();

  /** D [in], n [1/in], L1 [in]: the three inputs the standard tabulates. */
  private record Inputs(double d, double n, double l1) {}

  private static final Map<NominalThreadSize, Inputs> TABLE = new EnumMap<>(Map.of(
      NominalThreadSize.ONE_SIXTEENTH, new Inputs(0.3125, 27.0, 0.1600),
      NominalThreadSize.ONE_EIGHTH, new Inputs(0.405, 27.0, 0.1615),
      NominalThreadSize.ONE_QUARTER, new Inputs(0.540, 18.0, 0.2278),
      NominalThreadSize.THREE_EIGHTHS, new Inputs(0.675, 18.0, 0.2400),
      NominalThreadSize.ONE_HALF, new Inputs(0.840, 14.0, 0.3200),
      NominalThreadSize.THREE_QUARTERS, new Inputs(1.050, 14.0, 0.3390),
      NominalThreadSize.ONE, new Inputs(1.315, 11.5, 0.4000),
      NominalThreadSize.ONE_AND_A_QUARTER, new Inputs(1.660, 11.5, 0.4200),
      NominalThreadSize.ONE_AND_A_HALF, new Inputs(1.900, 11.5, 0.4200),
      NominalThreadSize.TWO, new Inputs(2.375, 11.5, 0.4360)));

  private final NominalThreadSize size;
  private final Inputs in;

  private NptThread(NominalThreadSize size, Inputs in) {
    this.size = size;
    this.in = in;
  }

  /**
   * Obtains the thread of a size.
   *
   * @param size the size, from 1/16 to 2
   * @return the thread
   * @throws IllegalArgumentException if the size is larger than 2
   */
  public static NptThread of(NominalThreadSize size) {
    Inputs inputs = TABLE.get(Objects.requireNonNull(size));
    if (inputs == null) {
      throw new IllegalArgumentException(
          "NPT size must be one of " + TABLE.keySet() + ", was " + size);
    }
    return new NptThread(size, inputs);
  }

  /** {@return all sizes, smallest first} */
  public static List<NptThread> all() {
    return TABLE.keySet().stream().map(NptThread::of).toList();
  }

  /** {@return the size} */
  public NominalThreadSize size() {
    return size;
  }

  /** {@return n, threads per inch} */
  public double threadsPerInch() {
    return in.n;
  }

  private double p() {
    return 1.0 / in.n;
  }

  private double e0() {
    return in.d - (0.05 * in.d + 1.1) * p();
  }

  private static Length inches(double value) {
    return Length.ofInches(value);
  }

  /** {@return D, the outside diameter of the pipe} */
  public Length pipeDiameter() {
    return inches(in.d);
  }

  /** {@return p, the pitch} */
  public Length pitch() {
    return inches(p());
  }

  /** {@return h, the height of the thread} */
  public Length height() {
    return inches(0.8 * p());
  }

  /** {@return E0, the pitch diameter at the small end of the male thread} */
  public Length pitchDiameterAtSmallEnd() {
    return inches(e0());
  }

  /** {@return E1, the pitch diameter at the hand-tight plane, which is the mouth of the female thread} */
  public Length pitchDiameterAtHandTight() {
    return pitchDiameterAt(handTightLength());
  }

  /** {@return E2, the pitch diameter at the end of the effective thread} */
  public Length pitchDiameterAtEffectiveEnd() {
    return pitchDiameterAt(effectiveLength());
  }

  /** {@return E3, the pitch diameter inside the female thread, three turns beyond the hand-tight male end} */
  public Length pitchDiameterInside() {
    return inches(e0() - 3.0 * p() / 16.0);
  }

  /** {@return E5, the pitch diameter at the end of the full crests} */
  public Length pitchDiameterAtFullCrests() {
    return pitchDiameterAt(fullCrestLength());
  }

  /** {@return K0, the minor diameter at the small end} */
  public Length minorDiameterAtSmallEnd() {
    return pitchDiameterAtSmallEnd().minus(height());
  }

  /** {@return L1, the hand-tight engagement} */
  public Length handTightLength() {
    return inches(in.l1);
  }

  /** {@return L2, the length of the effective thread} */
  public Length effectiveLength() {
    return inches((0.8 * in.d + 6.8) * p());
  }

  /** {@return L3, the wrench make-up length of three turns} */
  public Length wrenchLength() {
    return inches(3.0 * p());
  }

  /** {@return V, the length of the vanish thread} */
  public Length vanishLength() {
    return inches(3.47 * p());
  }

  /** {@return L4, the whole length of the male thread} */
  public Length overallLength() {
    return effectiveLength().plus(vanishLength());
  }

  /** {@return L5, the length of the thread with full crests} */
  public Length fullCrestLength() {
    return inches((0.8 * in.d + 4.8) * p());
  }

  /**
   * Finds the pitch diameter of the male thread at a plane.
   *
   * @param fromSmallEnd the distance of the plane from the small end
   * @return E0 plus a sixteenth of the distance
   */
  public Length pitchDiameterAt(Length fromSmallEnd) {
    return inches(e0() + fromSmallEnd.inches() / 16.0);
  }

  /**
   * Finds the diameter over the crests of the male thread at a plane, crests not truncated.
   *
   * @param fromSmallEnd the distance of the plane from the small end
   * @return the pitch diameter plus the height
   */
  public Length crestDiameterAt(Length fromSmallEnd) {
    return pitchDiameterAt(fromSmallEnd).plus(height());
  }

  /** {@return what a caliper reads on the first thread of the male end, crests not truncated: not D, and not the nominal size} */
  public Length firstThreadCrestDiameter() {
    return crestDiameterAt(Length.ofMetres(0.0));
  }

  /** {@return the bore at the mouth of the female thread, between its crests: E1 − h} */
  public Length femaleMouthDiameter() {
    return pitchDiameterAtHandTight().minus(height());
  }

  /** {@return how the main dimensions follow from pipe diameter and threads per inch} */
  public Working working() {
    Term d = Term.of("D", "D", in.d, "in", 6);
    Term p = Term.of("p", "p", p(), "in", 6);
    Term e0 = Term.of("E0", "E_0", e0(), "in", 6);
    Term l2 = Term.of("L2", "L_2", effectiveLength().inches(), "in", 6);
    return Working.titled(size + " NPT, basic dimensions")
        .step(
            "Pitch",
            "⟨p⟩ = 1 / ⟨n⟩",
            "⟨p⟩ = \\frac{1}{⟨n⟩}",
            List.of(Term.of("n", "n", in.n, "", 4)),
            p,
            SOURCE)
        .step(
            "Pitch diameter at the small end",
            "⟨E0⟩ = ⟨D⟩ − (0.05 × ⟨D⟩ + 1.1 in) × ⟨p⟩ / (1 in)",
            "⟨E0⟩ = ⟨D⟩ - (0.05 \\cdot ⟨D⟩ + 1.1\\,\\mathrm{in}) \\cdot ⟨p⟩ / (1\\,\\mathrm{in})",
            List.of(d, p),
            Term.of("E0", "E_0", e0(), "in", 5),
            SOURCE)
        .step(
            "Pitch diameter at the hand-tight plane",
            "⟨E1⟩ = ⟨E0⟩ + ⟨L1⟩ / 16",
            "⟨E1⟩ = ⟨E0⟩ + \\frac{⟨L1⟩}{16}",
            List.of(e0, Term.of("L1", "L_1", in.l1, "in", 5)),
            Term.of("E1", "E_1", pitchDiameterAtHandTight().inches(), "in", 5),
            SOURCE)
        .step(
            "Effective length",
            "⟨L2⟩ = (0.8 × ⟨D⟩ + 6.8 in) × ⟨p⟩ / (1 in)",
            "⟨L2⟩ = (0.8 \\cdot ⟨D⟩ + 6.8\\,\\mathrm{in}) \\cdot ⟨p⟩ / (1\\,\\mathrm{in})",
            List.of(d, p),
            Term.of("L2", "L_2", effectiveLength().inches(), "in", 4),
            SOURCE)
        .step(
            "Whole length",
            "⟨L4⟩ = ⟨L2⟩ + 3.47 × ⟨p⟩",
            "⟨L4⟩ = ⟨L2⟩ + 3.47 \\cdot ⟨p⟩",
            List.of(l2, p),
            Term.of("L4", "L_4", overallLength().inches(), "in", 4),
            SOURCE)
        .step(
            "Crest of the first thread",
            "⟨d⟩ = ⟨E0⟩ + 0.8 × ⟨p⟩",
            "⟨d⟩ = ⟨E0⟩ + 0.8 \\cdot ⟨p⟩",
            List.of(e0, p),
            Term.of("d", "d", firstThreadCrestDiameter().inches(), "in", 4),
            SOURCE)
        .build();
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof NptThread that && size == that.size;
  }

  @Override
  public int hashCode() {
    return size.hashCode();
  }

  /** {@return the thread as it is called, such as "1/4-18 NPT"} */
  @Override
  public String toString() {
    return size + "-" + Digits.plain(in.n) + " NPT";
  }
}
