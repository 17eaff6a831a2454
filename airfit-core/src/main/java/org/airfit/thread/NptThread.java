package org.airfit.thread;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.airfit.internal.Digits;
import org.airfit.quantity.Length;
import org.airfit.quantity.NominalThreadSize;
import org.airfit.source.Source;
import org.airfit.working.UnitSystem;
import org.airfit.working.Working;

/**
 * The basic geometry of an American taper pipe thread, from the formulas of ASME B1.20.1.
 *
 * <pre>
 *   p = 1/n                        h = 0.8 p                     V = 3.47 p
 *   E0 = D − (0.05 D + 1.1) p      E1 = E0 + L1/16               L2 = (0.8 D + 6.8) p
 *   E2 = E0 + L2/16                E3 = E0 − L3/16,           L4 = L2 + V
 *   L5 = L2 − 2 p                  E5 = E0 + L5/16               K0 = E0 − h
 *   L3 = 3 p to size 2, 2 p from 2-1/2
 *   male thread x behind its small end:     pitch E0 + x/16,  crest + h,  root − h
 *   female thread x inside its mouth:       pitch E1 − x/16,  crest − h,  root + h
 *   crest flat = 2 f tan 30°,  f from 0.033 p to the tabulated most
 *   gauging tolerance ± 1 turn, which is ± p on L1 and ± p/16 on a diameter
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
 * <tr><td>E1, L1</td>
 *     <td>pitch diameter at the hand-tight plane, and the hand-tight engagement; L1 is tabulated, it has no
 *     formula</td><td>in</td></tr>
 * <tr><td>E2, L2</td><td>pitch diameter at the end of the effective thread, and its length</td><td>in</td></tr>
 * <tr><td>E3, L3</td><td>pitch diameter inside the female thread, wrench make-up length</td><td>in</td></tr>
 * <tr><td>L4, V</td><td>whole length of the male thread, its vanish part</td><td>in</td></tr>
 * <tr><td>E5, L5</td><td>pitch diameter at the end of the full crests, and their length</td><td>in</td></tr>
 * <tr><td>K0</td><td>minor diameter at the small end</td><td>in</td></tr>
 * <tr><td>f</td><td>truncation of a crest, below the sharp thread</td><td>in</td></tr>
 * </tbody>
 * </table>
 *
 * <p>Because E5 + h = D, the crests meet the pipe at L5. <b>Valid</b> for sizes 1/16 to 4. <b>Source:</b> ASME
 * B1.20.1-2013, tables 1 and 2 and the formulas above them, in copies; L1 of 1/8 and 1/4 is 0.1615 and 0.2278 in, where
 * older editions have 0.180 and 0.200 in. The gauging tolerance of one turn is from memory of section 3.2; of NPSC, one
 * and a half turns were read.
 *
 * <p>Lengths and turns of one size:
 *
 * <pre>{@code
 * import java.util.Locale;
 * import org.airfit.quantity.NominalThreadSize;
 * import org.airfit.thread.Gender;
 * import org.airfit.thread.NptThread;
 *
 * class QuarterNpt {
 *   public static void main(String[] args) {
 *     NptThread thread = NptThread.of(NominalThreadSize.ONE_QUARTER);
 *     System.out.println(thread.threadsPerInch()); // 18.0
 *     System.out.printf(Locale.ROOT, "%.4f in%n", thread.handTightLength().inches()); // 0.2278 in
 *     System.out.println(thread.firstCrest(Gender.MALE)); // 13.011 to 13.343 mm
 *   }
 * }
 * }</pre>
 *
 * <p>This class is immutable, thread-safe and value-based.
 */
public final class NptThread implements PipeThread {

  private static final Source SOURCE = ThreadFamily.NPT.source();

  private static final double TAPER = 1.0 / 16.0;

  /** D [in], n [1/in], L1 [in]: the three inputs the standard tabulates. */
  private record Inputs(double d, double n, double l1) {}

  private static final Map<NominalThreadSize, Inputs> TABLE = table();

  /** The greatest truncation of a crest [in] by threads per inch: ASME B1.20.1 table 1, as copied on a trade page. */
  private static final Map<Double, Double> GREATEST_TRUNCATION =
      Map.of(27.0, 0.0036, 18.0, 0.0049, 14.0, 0.0056, 11.5, 0.0063, 8.0, 0.0078);

  private final NominalThreadSize size;
  private final Inputs in;

  private NptThread(NominalThreadSize size, Inputs in) {
    this.size = size;
    this.in = in;
  }

  private static Map<NominalThreadSize, Inputs> table() {
    Map<NominalThreadSize, Inputs> table = new EnumMap<>(NominalThreadSize.class);
    table.put(NominalThreadSize.ONE_SIXTEENTH, new Inputs(0.3125, 27.0, 0.1600));
    table.put(NominalThreadSize.ONE_EIGHTH, new Inputs(0.405, 27.0, 0.1615));
    table.put(NominalThreadSize.ONE_QUARTER, new Inputs(0.540, 18.0, 0.2278));
    table.put(NominalThreadSize.THREE_EIGHTHS, new Inputs(0.675, 18.0, 0.2400));
    table.put(NominalThreadSize.ONE_HALF, new Inputs(0.840, 14.0, 0.3200));
    table.put(NominalThreadSize.THREE_QUARTERS, new Inputs(1.050, 14.0, 0.3390));
    table.put(NominalThreadSize.ONE, new Inputs(1.315, 11.5, 0.4000));
    table.put(NominalThreadSize.ONE_AND_A_QUARTER, new Inputs(1.660, 11.5, 0.4200));
    table.put(NominalThreadSize.ONE_AND_A_HALF, new Inputs(1.900, 11.5, 0.4200));
    table.put(NominalThreadSize.TWO, new Inputs(2.375, 11.5, 0.4360));
    table.put(NominalThreadSize.TWO_AND_A_HALF, new Inputs(2.875, 8.0, 0.682));
    table.put(NominalThreadSize.THREE, new Inputs(3.500, 8.0, 0.766));
    table.put(NominalThreadSize.THREE_AND_A_HALF, new Inputs(4.000, 8.0, 0.821));
    table.put(NominalThreadSize.FOUR, new Inputs(4.500, 8.0, 0.844));
    return table;
  }

  /**
   * Obtains the thread of a size.
   *
   * @param size the size, from 1/16 to 4
   * @return the thread
   */
  public static NptThread of(NominalThreadSize size) {
    ThreadFamily.NPT.requireSize(size);
    return new NptThread(size, Objects.requireNonNull(TABLE.get(size)));
  }

  /** {@return all sizes, smallest first} */
  public static List<NptThread> all() {
    return TABLE.keySet().stream().map(NptThread::of).toList();
  }

  @Override
  public ThreadFamily family() {
    return ThreadFamily.NPT;
  }

  @Override
  public NominalThreadSize size() {
    return size;
  }

  @Override
  public double threadsPerInch() {
    return in.n;
  }

  private double p() {
    return 1.0 / in.n;
  }

  private double h() {
    return ThreadForm.FLAT_60.heightOverPitch() * p();
  }

  private double e0() {
    return in.d - (0.05 * in.d + 1.1) * p();
  }

  private double e1() {
    return e0() + TAPER * in.l1;
  }

  private double l2() {
    return (0.8 * in.d + 6.8) * p();
  }

  private double l5() {
    return (0.8 * in.d + 4.8) * p();
  }

  private static Length inches(double value) {
    return Length.ofInches(value);
  }

  /** {@return D, the outside diameter of the pipe} */
  public Length pipeDiameter() {
    return inches(in.d);
  }

  @Override
  public Length pitch() {
    return inches(p());
  }

  /** {@return h, the height of the thread, 0.8 p} */
  @Override
  public Length height() {
    return inches(h());
  }

  /** {@return E0, the pitch diameter at the small end of the male thread} */
  public Length pitchDiameterAtSmallEnd() {
    return inches(e0());
  }

  /** {@return E1, the pitch diameter at the hand-tight plane, which is the mouth of the female thread} */
  public Length pitchDiameterAtHandTight() {
    return inches(e1());
  }

  /** {@return E1 one turn small to one turn large, the gauging tolerance} */
  public Limits pitchDiameterLimitsAtHandTight() {
    return Limits.about(inches(e1()), inches(TAPER * p()));
  }

  /** {@return E2, the pitch diameter at the end of the effective thread} */
  public Length pitchDiameterAtEffectiveEnd() {
    return inches(e0() + TAPER * l2());
  }

  /** {@return E3, the pitch diameter inside the female thread, at L3 beyond the hand-tight male end} */
  public Length pitchDiameterInside() {
    return inches(e0() - TAPER * wrenchTurns() * p());
  }

  /** {@return E5, the pitch diameter at the end of the full crests} */
  public Length pitchDiameterAtFullCrests() {
    return inches(e0() + TAPER * l5());
  }

  /** {@return K0, the minor diameter at the small end} */
  public Length minorDiameterAtSmallEnd() {
    return inches(e0() - h());
  }

  /** {@return L1, the hand-tight engagement} */
  public Length handTightLength() {
    return inches(in.l1);
  }

  /** {@return L1 one turn short to one turn long, the gauging tolerance of the standoff} */
  public Limits handTightLengthLimits() {
    return Limits.about(inches(in.l1), inches(p()));
  }

  /** {@return L1 in turns} */
  public double handTightTurns() {
    return in.l1 * in.n;
  }

  /** {@return L2, the length of the effective thread} */
  public Length effectiveLength() {
    return inches(l2());
  }

  /** {@return L2 in turns} */
  public double effectiveTurns() {
    return l2() * in.n;
  }

  /** {@return L3 in turns: 3 to size 2, 2 from size 2-1/2} */
  public int wrenchTurns() {
    return size.compareTo(NominalThreadSize.TWO) <= 0 ? 3 : 2;
  }

  /** {@return L3, the wrench make-up length} */
  public Length wrenchLength() {
    return inches(wrenchTurns() * p());
  }

  /** {@return V, the length of the vanish thread, 3.47 turns} */
  public Length vanishLength() {
    return inches(3.47 * p());
  }

  /** {@return L4, the whole length of the male thread} */
  public Length overallLength() {
    return effectiveLength().plus(vanishLength());
  }

  /** {@return L5, the length of the thread with full crests} */
  public Length fullCrestLength() {
    return inches(l5());
  }

  /** {@return by how much one turn changes a diameter, p/16} */
  public Length diameterPerTurn() {
    return inches(TAPER * p());
  }

  @Override
  public ThreadSection section(Gender gender, Length depth) {
    Objects.requireNonNull(gender, "gender");
    Objects.requireNonNull(depth, "depth");
    double x = TAPER * depth.inches();
    double pitchDiameter = gender == Gender.MALE ? e0() + x : e1() - x;
    return ThreadSection.about(inches(pitchDiameter), inches(h()), inches(h()));
  }

  /**
   * {@return what a caliper reads on the first thread of the male end, crests not truncated: not D, and not the nominal
   * size}
   */
  public Length firstThreadCrestDiameter() {
    return inches(e0() + h());
  }

  /** {@return the bore at the mouth of the female thread, between its crests: E1 − h} */
  public Length femaleMouthDiameter() {
    return inches(e1() - h());
  }

  /** {@return one turn on the cone, p/16} */
  @Override
  public Length looseness(Gender gender) {
    Objects.requireNonNull(gender, "gender");
    return diameterPerTurn();
  }

  @Override
  public Limits firstCrest(Gender gender) {
    Objects.requireNonNull(gender, "gender");
    Length turn = diameterPerTurn();
    return gender == Gender.MALE
        ? new Limits(
            firstThreadCrestDiameter().minus(crestSlack()).minus(turn),
            firstThreadCrestDiameter().plus(turn))
        : new Limits(
            femaleMouthDiameter().minus(turn),
            femaleMouthDiameter().plus(crestSlack()).plus(turn));
  }

  /** {@return H, the height of the sharp triangle, 0.866025 p} */
  public Length sharpHeight() {
    return inches(ThreadForm.FLAT_60.sharpHeightOverPitch() * p());
  }

  /** {@return f, from the least to the greatest a crest may be cut below the sharp thread} */
  public Limits truncation() {
    return new Limits(
        inches(0.033 * p()), inches(Objects.requireNonNull(GREATEST_TRUNCATION.get(in.n))));
  }

  /** {@return the width of the flat on a crest, 2 f tan 30°} */
  public Limits crestFlat() {
    double flatOverTruncation = 2.0 * Math.tan(Math.toRadians(30.0));
    return new Limits(
        truncation().least().times(flatOverTruncation),
        truncation().most().times(flatOverTruncation));
  }

  /** {@return how much smaller or wider the most cut crests are than the least cut ones, on the diameter} */
  @Override
  public Length crestSlack() {
    return truncation().most().minus(truncation().least()).times(2.0);
  }

  @Override
  public Source source() {
    return SOURCE;
  }

  /** {@inheritDoc} It is in inches in either system, as the standard is. */
  @Override
  public Working working(UnitSystem units) {
    return Working.titled(size + " NPT, basic dimensions", units)
        .given(NptFormulas.N, in.n, 4)
        .given(NptFormulas.D, pipeDiameter().metres(), 6)
        .given(NptFormulas.L1, handTightLength().metres(), 6)
        .given(NptFormulas.W, wrenchTurns(), 2)
        .step(NptFormulas.PITCH, pitch().metres(), 6)
        .step(NptFormulas.HEIGHT, height().metres(), 6)
        .step(NptFormulas.SMALL_END, pitchDiameterAtSmallEnd().metres(), 6)
        .step(NptFormulas.HAND_TIGHT, pitchDiameterAtHandTight().metres(), 6)
        .step(NptFormulas.EFFECTIVE_LENGTH, effectiveLength().metres(), 6)
        .step(NptFormulas.EFFECTIVE_END, pitchDiameterAtEffectiveEnd().metres(), 6)
        .step(NptFormulas.WRENCH, wrenchLength().metres(), 6)
        .step(NptFormulas.INSIDE, pitchDiameterInside().metres(), 6)
        .step(NptFormulas.VANISH, vanishLength().metres(), 6)
        .step(NptFormulas.WHOLE, overallLength().metres(), 6)
        .step(NptFormulas.FULL_CRESTS, fullCrestLength().metres(), 6)
        .step(NptFormulas.FULL_CRESTS_END, pitchDiameterAtFullCrests().metres(), 6)
        .step(NptFormulas.CRESTS_MEET_PIPE, pipeDiameter().metres(), 6)
        .step(NptFormulas.MINOR, minorDiameterAtSmallEnd().metres(), 6)
        .step(NptFormulas.CREST, firstThreadCrestDiameter().metres(), 6)
        .step(NptFormulas.BORE, femaleMouthDiameter().metres(), 6)
        .note("Gauging tolerance: one turn either way, " + Digits.fixed(p(), 5) + " in on L1 and "
            + Digits.fixed(TAPER * p(), 5) + " in on a diameter.")
        .answer(
            NptFormulas.P,
            NptFormulas.E1,
            NptFormulas.E2,
            NptFormulas.E3,
            NptFormulas.L4,
            NptFormulas.PIPE_CREST,
            NptFormulas.K0,
            NptFormulas.FIRST_CREST,
            NptFormulas.MOUTH)
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
