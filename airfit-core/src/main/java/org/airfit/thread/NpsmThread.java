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
import org.airfit.working.Formula;
import org.airfit.working.Symbol;
import org.airfit.working.UnitSystem;
import org.airfit.working.Working;

/**
 * The American straight pipe thread for free-fitting mechanical joints, from the hand-tight plane of NPT.
 *
 * <pre>
 *   male:    pitch ≤ E1 − a      major ≤ greatest pitch + 0.649519 p
 *   female:  pitch ≥ E1          minor ≥ E1 − 0.433013 p
 * </pre>
 *
 * <table class="striped">
 * <caption>Symbols</caption>
 * <thead><tr><th>symbol</th><th>meaning</th><th>unit</th></tr></thead>
 * <tbody>
 * <tr><td>E1</td><td>pitch diameter of {@linkplain NptThread NPT} at its hand-tight plane</td><td>in</td></tr>
 * <tr><td>a</td><td>allowance of the male thread, tabulated</td><td>in</td></tr>
 * <tr><td>p</td><td>pitch</td><td>in</td></tr>
 * </tbody>
 * </table>
 *
 * <p>The widths of the limits have no formula and are tabulated. <b>Valid</b> for sizes 1/8 to 4. <b>Source:</b> ASME
 * B1.20.1, table of NPSM, as reproduced in Machinery's Handbook, 27th ed., page 1865, table 5, and on a gauge trade
 * page, for 1/8 to 2 without 3/8 and 1-1/4; the widths of 3/8, 1-1/4 and 2-1/2 to 4 are from memory. A footnote of the
 * handbook gives 0.666025 p for the major diameter; that is the rule of another thread, NPSL, and gives no row of this
 * one.
 *
 * <p>This class is immutable, thread-safe and value-based.
 */
public final class NpsmThread implements PipeThread {

  private static final double MAJOR_OVER_PITCH = 0.649519;
  private static final double MINOR_OVER_PITCH = 0.433013;

  private static final Symbol ALLOWANCE = NptFormulas.inches("a");
  private static final Symbol E = NptFormulas.inches("e");
  private static final Formula MALE_PITCH = Formula.of(
      "Greatest pitch diameter of the male thread",
      "⟨e⟩ = ⟨E1⟩ − ⟨a⟩",
      ThreadFamily.NPSM.source(),
      E,
      NptFormulas.E1,
      ALLOWANCE);
  private static final Formula MALE_MAJOR = Formula.of(
      "Greatest major diameter of the male thread",
      "⟨d⟩ = ⟨e⟩ + 0.649519 × ⟨p⟩",
      ThreadFamily.NPSM.source(),
      NptFormulas.inches("d"),
      E,
      NptFormulas.P);
  private static final Formula FEMALE_MINOR = Formula.of(
      "Least minor diameter of the female thread",
      "⟨k⟩ = ⟨E1⟩ − 0.433013 × ⟨p⟩",
      ThreadFamily.NPSM.source(),
      NptFormulas.inches("k"),
      NptFormulas.E1,
      NptFormulas.P);

  /** Allowance, and widths of the limits of male major and pitch, female minor and pitch [in]. */
  private record Inputs(
      double allowance,
      double maleMajor,
      double malePitch,
      double femaleMinor,
      double femalePitch,
      boolean seen) {}

  private static final Map<NominalThreadSize, Inputs> TABLE = table();

  private final NptThread npt;
  private final Inputs in;

  private NpsmThread(NptThread npt, Inputs in) {
    this.npt = npt;
    this.in = in;
  }

  private static Map<NominalThreadSize, Inputs> table() {
    Map<NominalThreadSize, Inputs> table = new EnumMap<>(NominalThreadSize.class);
    table.put(NominalThreadSize.ONE_EIGHTH, new Inputs(0.0011, 0.007, 0.0036, 0.006, 0.0047, true));
    table.put(
        NominalThreadSize.ONE_QUARTER, new Inputs(0.0013, 0.009, 0.0044, 0.013, 0.0058, true));
    table.put(
        NominalThreadSize.THREE_EIGHTHS, new Inputs(0.0014, 0.009, 0.0045, 0.009, 0.0059, false));
    table.put(NominalThreadSize.ONE_HALF, new Inputs(0.0015, 0.010, 0.0051, 0.012, 0.0067, true));
    table.put(
        NominalThreadSize.THREE_QUARTERS, new Inputs(0.0016, 0.010, 0.0053, 0.012, 0.0069, true));
    table.put(NominalThreadSize.ONE, new Inputs(0.0017, 0.012, 0.0058, 0.010, 0.0076, true));
    table.put(
        NominalThreadSize.ONE_AND_A_QUARTER,
        new Inputs(0.0018, 0.012, 0.0060, 0.009, 0.0078, false));
    table.put(
        NominalThreadSize.ONE_AND_A_HALF, new Inputs(0.0018, 0.012, 0.0061, 0.009, 0.0079, true));
    table.put(NominalThreadSize.TWO, new Inputs(0.0019, 0.012, 0.0062, 0.009, 0.0081, true));
    table.put(
        NominalThreadSize.TWO_AND_A_HALF, new Inputs(0.0022, 0.015, 0.0074, 0.012, 0.0096, false));
    table.put(NominalThreadSize.THREE, new Inputs(0.0023, 0.015, 0.0076, 0.012, 0.0099, false));
    table.put(
        NominalThreadSize.THREE_AND_A_HALF,
        new Inputs(0.0023, 0.015, 0.0077, 0.012, 0.0100, false));
    table.put(NominalThreadSize.FOUR, new Inputs(0.0023, 0.015, 0.0077, 0.012, 0.0100, false));
    return table;
  }

  /**
   * Obtains the thread of a size.
   *
   * @param size the size, from 1/8 to 4
   * @return the thread
   * @throws IllegalArgumentException if {@code size} is 1/16
   */
  public static NpsmThread of(NominalThreadSize size) {
    ThreadFamily.NPSM.requireSize(size);
    return new NpsmThread(NptThread.of(size), Objects.requireNonNull(TABLE.get(size)));
  }

  /** {@return all sizes, smallest first} */
  public static List<NpsmThread> all() {
    return ThreadFamily.NPSM.sizes().stream().map(NpsmThread::of).toList();
  }

  @Override
  public ThreadFamily family() {
    return ThreadFamily.NPSM;
  }

  @Override
  public NominalThreadSize size() {
    return npt.size();
  }

  @Override
  public double threadsPerInch() {
    return npt.threadsPerInch();
  }

  @Override
  public Length pitch() {
    return npt.pitch();
  }

  /**
   * {@return the height of the thread between the greatest male major and the least female minor diameter, (0.649519 +
   * 0.433013)/2 p}
   */
  @Override
  public Length height() {
    return pitch().times(0.5 * (MAJOR_OVER_PITCH + MINOR_OVER_PITCH));
  }

  /** {@return a, by how much the male thread is kept below E1} */
  public Length allowance() {
    return Length.ofInches(in.allowance);
  }

  private Limits downFrom(Length most, double width) {
    return new Limits(most.minus(Length.ofInches(width)), most);
  }

  private Limits upFrom(Length least, double width) {
    return new Limits(least, least.plus(Length.ofInches(width)));
  }

  /** {@return the pitch diameter of the male thread} */
  public Limits malePitchDiameter() {
    return downFrom(npt.pitchDiameterAtHandTight().minus(allowance()), in.malePitch);
  }

  /** {@return the major diameter of the male thread} */
  public Limits maleMajorDiameter() {
    return downFrom(malePitchDiameter().most().plus(pitch().times(MAJOR_OVER_PITCH)), in.maleMajor);
  }

  /** {@return the pitch diameter of the female thread} */
  public Limits femalePitchDiameter() {
    return upFrom(npt.pitchDiameterAtHandTight(), in.femalePitch);
  }

  /** {@return the minor diameter of the female thread} */
  public Limits femaleMinorDiameter() {
    return upFrom(
        npt.pitchDiameterAtHandTight().minus(pitch().times(MINOR_OVER_PITCH)), in.femaleMinor);
  }

  /**
   * {@return the diameters; roots, which the standard leaves to the tool, are taken 0.649519 p from the pitch diameter}
   */
  @Override
  public ThreadSection section(Gender gender, Length depth) {
    Objects.requireNonNull(gender, "gender");
    Objects.requireNonNull(depth, "depth");
    Length outward = pitch().times(MAJOR_OVER_PITCH);
    return gender == Gender.MALE
        ? ThreadSection.about(malePitchDiameter().most(), outward, outward)
        : ThreadSection.about(
            femalePitchDiameter().least(), outward, pitch().times(MINOR_OVER_PITCH));
  }

  /** {@return the width of the limits of the pitch diameter} */
  @Override
  public Length looseness(Gender gender) {
    Objects.requireNonNull(gender, "gender");
    return Length.ofInches(gender == Gender.MALE ? in.malePitch : in.femalePitch);
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
    return in.seen
        ? family().source()
        : Source.fromMemory(
            "ASME B1.20.1, table of NPSM, row " + size() + ": widths of the limits");
  }

  /** {@inheritDoc} It is in inches in either system, as the standard is; limits are told in the units asked for. */
  @Override
  public Working working(UnitSystem units) {
    LengthUnit unit = units.smallLengthUnit();
    return Working.titled(size() + " NPSM, limits", units)
        .include(npt.working(units), NptFormulas.E1, NptFormulas.P)
        .given(ALLOWANCE, allowance().metres(), 4)
        .step(MALE_PITCH.from(source()), malePitchDiameter().most().metres(), 6)
        .step(MALE_MAJOR.from(source()), maleMajorDiameter().most().metres(), 6)
        .step(FEMALE_MINOR.from(source()), femaleMinorDiameter().least().metres(), 6)
        .note("Male: major " + maleMajorDiameter().format(unit) + ", pitch "
            + malePitchDiameter().format(unit) + ". Female: minor "
            + femaleMinorDiameter().format(unit) + ", pitch "
            + femalePitchDiameter().format(unit)
            + ".")
        .answer(MALE_PITCH.result(), MALE_MAJOR.result(), FEMALE_MINOR.result())
        .build();
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof NpsmThread that && npt.equals(that.npt);
  }

  @Override
  public int hashCode() {
    return npt.hashCode();
  }

  /** {@return the thread as it is called, such as "1/4-18 NPSM"} */
  @Override
  public String toString() {
    return size() + "-" + Digits.plain(threadsPerInch()) + " NPSM";
  }
}
