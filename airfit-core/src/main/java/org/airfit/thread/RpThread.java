package org.airfit.thread;

import java.util.List;
import java.util.Objects;
import org.airfit.internal.Digits;
import org.airfit.quantity.Length;
import org.airfit.quantity.LengthUnit;
import org.airfit.quantity.NominalThreadSize;
import org.airfit.source.Source;
import org.airfit.working.Formula;
import org.airfit.working.Symbol;
import org.airfit.working.UnitSystem;
import org.airfit.working.ValueKind;
import org.airfit.working.Working;

/**
 * Rp, the 55° parallel female thread of ISO 7-1, which takes {@linkplain BsptThread R} with a jointing medium.
 *
 * <pre>
 *   basic diameters d, d2, d1 of G; each may be T2/2/16 smaller or larger, which is 1.25 P/16 to size 2
 * </pre>
 *
 * <p>P is the pitch [mm], T2/2 the tolerance of the gauge plane of Rc [mm]. Because Rp may be smaller than basic and a
 * male G may be at basic size, G may bind in Rp. <b>Valid</b> for sizes 1/16 to 4 without 3-1/2. <b>Source:</b> ISO 7-1
 * as quoted in JIS B 0203:1999; the rule of a sixteenth in notes on GB 7306-87. JIS prints 0.181 mm at 11 per inch, the
 * rule gives 0.180.
 *
 * <p>This class is immutable, thread-safe and value-based.
 */
public final class RpThread implements PipeThread {

  private static final Symbol TURNS = Symbol.of("w", ValueKind.NUMBER);
  private static final Symbol PITCH = BspFormulas.length("P");
  private static final Formula TOLERANCE = Formula.of(
      "Tolerance of a diameter",
      "⟨t⟩ = ⟨w⟩ × ⟨P⟩ / 16",
      ThreadFamily.RP.source(),
      BspFormulas.length("t"),
      TURNS,
      PITCH);

  private final BsptThread taper;

  private RpThread(BsptThread taper) {
    this.taper = taper;
  }

  /**
   * Obtains the thread of a size.
   *
   * @param size the size, from 1/16 to 4 without 3-1/2
   * @return the thread
   * @throws IllegalArgumentException if {@code size} is 3-1/2
   */
  public static RpThread of(NominalThreadSize size) {
    ThreadFamily.RP.requireSize(size);
    return new RpThread(BsptThread.of(size));
  }

  /** {@return all sizes, smallest first} */
  public static List<RpThread> all() {
    return ThreadFamily.RP.sizes().stream().map(RpThread::of).toList();
  }

  @Override
  public ThreadFamily family() {
    return ThreadFamily.RP;
  }

  @Override
  public NominalThreadSize size() {
    return taper.size();
  }

  @Override
  public double threadsPerInch() {
    return taper.threadsPerInch();
  }

  @Override
  public Length pitch() {
    return taper.pitch();
  }

  @Override
  public Length height() {
    return taper.height();
  }

  /** {@return how much smaller or larger each diameter may be} */
  public Length diameterTolerance() {
    return taper.femaleGaugeTolerance().times(1.0 / 16.0);
  }

  /** {@return the minor diameter} */
  public Limits minorDiameter() {
    return Limits.about(taper.atGaugePlane().minor(), diameterTolerance());
  }

  /** {@return the pitch diameter} */
  public Limits pitchDiameter() {
    return Limits.about(taper.atGaugePlane().pitch(), diameterTolerance());
  }

  /** {@return the diameters, which are the same at every depth} */
  @Override
  public ThreadSection section(Gender gender, Length depth) {
    Objects.requireNonNull(depth, "depth");
    family().requireGender(gender);
    return taper.atGaugePlane();
  }

  /** {@return the tolerance of a diameter} */
  @Override
  public Length looseness(Gender gender) {
    family().requireGender(gender);
    return diameterTolerance();
  }

  @Override
  public Limits firstCrest(Gender gender) {
    family().requireGender(gender);
    return minorDiameter();
  }

  /** {@return nothing: crests are rounded, not cut} */
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
    return Working.titled("Rp " + size() + ", basic dimensions and limits", units)
        .include(taper.working(units))
        .given(TURNS, taper.femaleGaugeToleranceTurns(), 3)
        .given(PITCH, Length.ofMillimetres(25.4 / threadsPerInch()).metres(), 5)
        .step(TOLERANCE, diameterTolerance().metres(), 3)
        .note("Minor " + minorDiameter().format(unit) + ", pitch "
            + pitchDiameter().format(unit) + ".")
        .answer(TOLERANCE.result())
        .build();
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof RpThread that && taper.equals(that.taper);
  }

  @Override
  public int hashCode() {
    return taper.hashCode();
  }

  /** {@return the thread as it is called, such as "Rp 1/4-19"} */
  @Override
  public String toString() {
    return "Rp " + size() + "-" + Digits.plain(threadsPerInch());
  }
}
