package org.airfit.thread;

import java.util.List;
import java.util.Objects;
import org.airfit.internal.Digits;
import org.airfit.quantity.Length;
import org.airfit.quantity.NominalThreadSize;
import org.airfit.source.Source;
import org.airfit.working.Formula;
import org.airfit.working.Symbol;
import org.airfit.working.UnitSystem;
import org.airfit.working.Working;

/**
 * The straight thread inside American pipe couplings, from the hand-tight plane of NPT.
 *
 * <pre>
 *   pitch diameter from E1 − 1.5 p/16 to E1 + 1.5 p/16      least minor diameter = least pitch diameter − h
 * </pre>
 *
 * <table class="striped">
 * <caption>Symbols</caption>
 * <thead><tr><th>symbol</th><th>meaning</th><th>unit</th></tr></thead>
 * <tbody>
 * <tr><td>E1</td><td>pitch diameter of {@linkplain NptThread NPT} at its hand-tight plane</td><td>in</td></tr>
 * <tr><td>p</td><td>pitch</td><td>in</td></tr>
 * <tr><td>h</td><td>height of the thread, 0.8 p</td><td>in</td></tr>
 * </tbody>
 * </table>
 *
 * <p><b>Valid</b> for sizes 1/8 to 4. <b>Source:</b> ASME B1.20.1-2013, section 4.2.1, one and a half turns either way;
 * the rule of the minor diameter is our reading of Machinery's Handbook, 27th ed., page 1864, table 4, all of whose
 * rows it gives.
 *
 * <p>This class is immutable, thread-safe and value-based.
 */
public final class NpscThread implements PipeThread {

  private static final double TOLERANCE_TURNS = 1.5;

  private static final Source SOURCE = ThreadFamily.NPSC.source();
  private static final Symbol E = NptFormulas.inches("e");
  private static final Formula LEAST_PITCH = Formula.of(
      "Least pitch diameter",
      "⟨e⟩ = ⟨E1⟩ − 1.5 × ⟨p⟩ / 16",
      SOURCE,
      E,
      NptFormulas.E1,
      NptFormulas.P);
  private static final Formula GREATEST_PITCH = Formula.of(
      "Greatest pitch diameter",
      "⟨g⟩ = ⟨E1⟩ + 1.5 × ⟨p⟩ / 16",
      SOURCE,
      NptFormulas.inches("g"),
      NptFormulas.E1,
      NptFormulas.P);
  private static final Formula LEAST_MINOR = Formula.of(
      "Least minor diameter",
      "⟨k⟩ = ⟨e⟩ − 0.8 × ⟨p⟩",
      SOURCE,
      NptFormulas.inches("k"),
      E,
      NptFormulas.P);

  private final NptThread npt;

  private NpscThread(NptThread npt) {
    this.npt = npt;
  }

  /**
   * Obtains the thread of a size.
   *
   * @param size the size, from 1/8 to 4
   * @return the thread
   * @throws IllegalArgumentException if {@code size} is 1/16
   */
  public static NpscThread of(NominalThreadSize size) {
    ThreadFamily.NPSC.requireSize(size);
    return new NpscThread(NptThread.of(size));
  }

  /** {@return all sizes, smallest first} */
  public static List<NpscThread> all() {
    return ThreadFamily.NPSC.sizes().stream().map(NpscThread::of).toList();
  }

  @Override
  public ThreadFamily family() {
    return ThreadFamily.NPSC;
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

  @Override
  public Length height() {
    return npt.height();
  }

  /** {@return the pitch diameter, E1 one and a half turns small to one and a half turns large} */
  public Limits pitchDiameter() {
    return Limits.about(
        npt.pitchDiameterAtHandTight(), npt.diameterPerTurn().times(TOLERANCE_TURNS));
  }

  /** {@return the least minor diameter} */
  public Length leastMinorDiameter() {
    return pitchDiameter().least().minus(height());
  }

  @Override
  public ThreadSection section(Gender gender, Length depth) {
    Objects.requireNonNull(depth, "depth");
    family().requireGender(gender);
    return ThreadSection.about(npt.pitchDiameterAtHandTight(), height(), height());
  }

  /** {@return one and a half turns on the cone of NPT} */
  @Override
  public Length looseness(Gender gender) {
    family().requireGender(gender);
    return npt.diameterPerTurn().times(TOLERANCE_TURNS);
  }

  /** {@return the bore: the minor diameter varies with the pitch diameter, and crests may be cut as on NPT} */
  @Override
  public Limits firstCrest(Gender gender) {
    family().requireGender(gender);
    return new Limits(
        leastMinorDiameter(), pitchDiameter().most().minus(height()).plus(crestSlack()));
  }

  @Override
  public Length crestSlack() {
    return npt.crestSlack();
  }

  @Override
  public Source source() {
    return family().source();
  }

  /** {@inheritDoc} It is in inches in either system, as the standard is. */
  @Override
  public Working working(UnitSystem units) {
    return Working.titled(size() + " NPSC, limits", units)
        .include(npt.working(units), NptFormulas.E1, NptFormulas.P)
        .step(LEAST_PITCH, pitchDiameter().least().metres(), 6)
        .step(GREATEST_PITCH, pitchDiameter().most().metres(), 6)
        .step(LEAST_MINOR, leastMinorDiameter().metres(), 6)
        .answer(LEAST_PITCH.result(), GREATEST_PITCH.result(), LEAST_MINOR.result())
        .build();
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof NpscThread that && npt.equals(that.npt);
  }

  @Override
  public int hashCode() {
    return npt.hashCode();
  }

  /** {@return the thread as it is called, such as "1/4-18 NPSC"} */
  @Override
  public String toString() {
    return size() + "-" + Digits.plain(threadsPerInch()) + " NPSC";
  }
}
