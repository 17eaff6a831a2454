package org.airfit.thread;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.airfit.internal.Digits;
import org.airfit.quantity.Length;
import org.airfit.quantity.LengthUnit;
import org.airfit.quantity.NominalThreadSize;
import org.airfit.source.Source;
import org.airfit.working.UnitSystem;
import org.airfit.working.Working;

/**
 * G, the 55° parallel pipe thread of ISO 228-1, which holds but does not seal.
 *
 * <pre>
 *   P = 25.4/n, rounded to 0.001 mm    h = 0.640327 P, rounded to 0.001 mm    d2 = d − h    d1 = d − 2h
 *   male:    major d − Td … d          pitch d2 − Td2 … d2 (class A or B)
 *   female:  minor d1 … d1 + TD1       pitch d2 … d2 + TD2
 * </pre>
 *
 * <table class="striped">
 * <caption>Symbols</caption>
 * <thead><tr><th>symbol</th><th>meaning</th><th>unit</th></tr></thead>
 * <tbody>
 * <tr><td>n, P</td><td>threads per inch, pitch</td><td>1/in, mm</td></tr>
 * <tr><td>h</td><td>height of the thread</td><td>mm</td></tr>
 * <tr><td>d, d2, d1</td><td>major, pitch and minor diameter</td><td>mm</td></tr>
 * <tr><td>Td, Td2</td>
 *     <td>tolerance of the male major and pitch diameter; Td2 of class B is twice that of class A,
 *     and Td equals it</td><td>mm</td></tr>
 * <tr><td>TD1, TD2</td><td>tolerance of the female minor and pitch diameter; TD2 equals Td2 of class A</td>
 *     <td>mm</td></tr>
 * </tbody>
 * </table>
 *
 * <p><b>Valid</b> for sizes 1/16 to 4. <b>Source:</b> ISO 228-1:2003 (BS EN) in a public data file that quotes it; the
 * equalities of tolerances hold in all its rows.
 *
 * <p>This class is immutable, thread-safe and value-based.
 */
public final class BsppThread implements PipeThread {

  /** The tolerance class of the pitch diameter of a male thread. */
  public enum ToleranceClass {
    /** The closer one, marked A. */
    A,
    /** The wider one, marked B, with twice the tolerance. */
    B
  }

  /** n [1/in], d, Td2 of class A, TD1 [mm]. */
  private record Inputs(int n, double d, double td2, double td1) {}

  private static final Map<NominalThreadSize, Inputs> TABLE = table();

  private final NominalThreadSize size;
  private final Inputs in;

  private BsppThread(NominalThreadSize size, Inputs in) {
    this.size = size;
    this.in = in;
  }

  private static Map<NominalThreadSize, Inputs> table() {
    Map<NominalThreadSize, Inputs> table = new EnumMap<>(NominalThreadSize.class);
    table.put(NominalThreadSize.ONE_SIXTEENTH, new Inputs(28, 7.723, 0.107, 0.282));
    table.put(NominalThreadSize.ONE_EIGHTH, new Inputs(28, 9.728, 0.107, 0.282));
    table.put(NominalThreadSize.ONE_QUARTER, new Inputs(19, 13.157, 0.125, 0.445));
    table.put(NominalThreadSize.THREE_EIGHTHS, new Inputs(19, 16.662, 0.125, 0.445));
    table.put(NominalThreadSize.ONE_HALF, new Inputs(14, 20.955, 0.142, 0.541));
    table.put(NominalThreadSize.THREE_QUARTERS, new Inputs(14, 26.441, 0.142, 0.541));
    table.put(NominalThreadSize.ONE, new Inputs(11, 33.249, 0.180, 0.640));
    table.put(NominalThreadSize.ONE_AND_A_QUARTER, new Inputs(11, 41.910, 0.180, 0.640));
    table.put(NominalThreadSize.ONE_AND_A_HALF, new Inputs(11, 47.803, 0.180, 0.640));
    table.put(NominalThreadSize.TWO, new Inputs(11, 59.614, 0.180, 0.640));
    table.put(NominalThreadSize.TWO_AND_A_HALF, new Inputs(11, 75.184, 0.217, 0.640));
    table.put(NominalThreadSize.THREE, new Inputs(11, 87.884, 0.217, 0.640));
    table.put(NominalThreadSize.THREE_AND_A_HALF, new Inputs(11, 100.330, 0.217, 0.640));
    table.put(NominalThreadSize.FOUR, new Inputs(11, 113.030, 0.217, 0.640));
    return table;
  }

  /**
   * Obtains the thread of a size.
   *
   * @param size the size, from 1/16 to 4
   * @return the thread
   */
  public static BsppThread of(NominalThreadSize size) {
    ThreadFamily.BSPP.requireSize(size);
    return new BsppThread(size, Objects.requireNonNull(TABLE.get(size)));
  }

  /** {@return all sizes, smallest first} */
  public static List<BsppThread> all() {
    return TABLE.keySet().stream().map(BsppThread::of).toList();
  }

  @Override
  public ThreadFamily family() {
    return ThreadFamily.BSPP;
  }

  @Override
  public NominalThreadSize size() {
    return size;
  }

  @Override
  public double threadsPerInch() {
    return in.n;
  }

  private static double rounded(double millimetres) {
    return Math.rint(millimetres * 1000.0) / 1000.0;
  }

  private double p() {
    return rounded(25.4 / in.n);
  }

  private double h() {
    return rounded(ThreadForm.ROUND_55.heightOverPitch() * p());
  }

  private static Length mm(double value) {
    return Length.ofMillimetres(value);
  }

  /** {@return P, the pitch, to 0.001 mm as the standards use it} */
  @Override
  public Length pitch() {
    return mm(p());
  }

  /** {@return h, the height of the thread, to 0.001 mm} */
  @Override
  public Length height() {
    return mm(h());
  }

  /** {@return d, the basic major diameter} */
  public Length majorDiameter() {
    return mm(in.d);
  }

  /** {@return d2, the basic pitch diameter} */
  public Length pitchDiameter() {
    return mm(in.d - h());
  }

  /** {@return d1, the basic minor diameter} */
  public Length minorDiameter() {
    return mm(in.d - 2.0 * h());
  }

  /** {@return the major diameter of the male thread, d − Td to d} */
  public Limits maleMajorDiameter() {
    return new Limits(mm(in.d - 2.0 * in.td2), majorDiameter());
  }

  /**
   * Obtains the pitch diameter of the male thread.
   *
   * @param toleranceClass A or B
   * @return d2 − Td2 to d2
   */
  public Limits malePitchDiameter(ToleranceClass toleranceClass) {
    Objects.requireNonNull(toleranceClass, "toleranceClass");
    double tolerance = toleranceClass == ToleranceClass.A ? in.td2 : 2.0 * in.td2;
    return new Limits(mm(in.d - h() - tolerance), pitchDiameter());
  }

  /** {@return the minor diameter of the female thread, d1 to d1 + TD1} */
  public Limits femaleMinorDiameter() {
    return new Limits(minorDiameter(), mm(in.d - 2.0 * h() + in.td1));
  }

  /** {@return the pitch diameter of the female thread, d2 to d2 + TD2} */
  public Limits femalePitchDiameter() {
    return new Limits(pitchDiameter(), mm(in.d - h() + in.td2));
  }

  /** {@return the diameters, which are the same at every depth} */
  @Override
  public ThreadSection section(Gender gender, Length depth) {
    Objects.requireNonNull(gender, "gender");
    Objects.requireNonNull(depth, "depth");
    return new ThreadSection(majorDiameter(), pitchDiameter(), minorDiameter());
  }

  /** {@return Td2 of class B, or TD2} */
  @Override
  public Length looseness(Gender gender) {
    Objects.requireNonNull(gender, "gender");
    return mm(gender == Gender.MALE ? 2.0 * in.td2 : in.td2);
  }

  @Override
  public Limits firstCrest(Gender gender) {
    Objects.requireNonNull(gender, "gender");
    return gender == Gender.MALE ? maleMajorDiameter() : femaleMinorDiameter();
  }

  /** {@return nothing: {@link #firstCrest} holds all the standard allows} */
  @Override
  public Length crestSlack() {
    return Length.ofMetres(0.0);
  }

  @Override
  public Source source() {
    return family().source();
  }

  @Override
  public Working working(UnitSystem units) {
    LengthUnit unit = units.smallLengthUnit();
    Working.Builder out = Working.titled("G " + size + ", basic dimensions and limits", units);
    basicSteps(out, source());
    return out.note("Male: major " + maleMajorDiameter().format(unit) + ", pitch of class A "
            + malePitchDiameter(ToleranceClass.A).format(unit) + ", of class B "
            + malePitchDiameter(ToleranceClass.B).format(unit) + ".")
        .note("Female: minor " + femaleMinorDiameter().format(unit) + ", pitch "
            + femalePitchDiameter().format(unit) + ".")
        .answer(BspFormulas.D2, BspFormulas.D1)
        .build();
  }

  /** The steps of all 55° threads: pitch, height, pitch and minor diameter. */
  void basicSteps(Working.Builder out, Source from) {
    out.given(BspFormulas.N, in.n, 4)
        .given(BspFormulas.D, majorDiameter().metres(), 6)
        .step(BspFormulas.PITCH.from(from), pitch().metres(), digitsToMicrometre(p()))
        .step(BspFormulas.HEIGHT.from(from), height().metres(), digitsToMicrometre(h()))
        .step(BspFormulas.PITCH_DIAMETER.from(from), pitchDiameter().metres(), 6)
        .step(BspFormulas.MINOR_DIAMETER.from(from), minorDiameter().metres(), 6);
  }

  private static int digitsToMicrometre(double millimetres) {
    return millimetres < 1.0 ? 3 : 4;
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof BsppThread that && size == that.size;
  }

  @Override
  public int hashCode() {
    return size.hashCode();
  }

  /** {@return the thread as it is called, such as "G 1/4-19"} */
  @Override
  public String toString() {
    return "G " + size + "-" + Digits.plain(in.n);
  }
}
