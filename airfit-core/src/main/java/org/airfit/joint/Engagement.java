package org.airfit.joint;

import java.util.Objects;
import java.util.Optional;
import org.airfit.internal.Digits;
import org.airfit.quantity.Length;
import org.airfit.source.Source;
import org.airfit.thread.BsptThread;
import org.airfit.thread.NptThread;
import org.airfit.working.UnitSystem;

/**
 * How far a taper male thread goes into its female one: by hand, and with a wrench.
 *
 * <pre>
 *   NPT:  by hand L1 n turns,  by wrench L3 n = 3 turns (2 from size 2-1/2)
 *   R:    by hand a/P turns,   by wrench (f − T2/2)/P turns, to the nearest half
 * </pre>
 *
 * <p>L1, L3, n as on {@link NptThread}, a, f, T2, P as on {@link BsptThread}. Hand tight is a place, not a torque: each
 * part may be one turn off, so that a sound joint may sit up to two turns from it. <b>Source:</b> ASME B1.20.1-2013 for
 * NPT; ISO 7-1 for a; the wrenching allowance of R from memory of BS 21, which agrees with f less T2/2.
 *
 * <p>This class is immutable, thread-safe and value-based.
 */
public final class Engagement {

  /** Where the shorter figures come from. */
  public static final Source WORKSHOP =
      Source.commonPractice("total make-up of a widely copied chart, marked approximate there");

  private final double handTightTurns;
  private final Length handTightLength;
  private final double wrenchTurns;
  private final Length wrenchLength;
  private final Optional<Length> workshopMakeUp;
  private final Source handTightSource;
  private final Source wrenchSource;

  private Engagement(
      double handTightTurns,
      Length handTightLength,
      double wrenchTurns,
      Length wrenchLength,
      Optional<Length> workshopMakeUp,
      Source handTightSource,
      Source wrenchSource) {
    this.handTightTurns = handTightTurns;
    this.handTightLength = handTightLength;
    this.wrenchTurns = wrenchTurns;
    this.wrenchLength = wrenchLength;
    this.workshopMakeUp = workshopMakeUp;
    this.handTightSource = handTightSource;
    this.wrenchSource = wrenchSource;
  }

  /**
   * Obtains the engagement of an American taper thread.
   *
   * @param thread the thread
   * @return how far it goes in
   */
  public static Engagement of(NptThread thread) {
    Objects.requireNonNull(thread, "thread");
    return new Engagement(
        thread.handTightTurns(),
        thread.handTightLength(),
        thread.wrenchTurns(),
        thread.wrenchLength(),
        workshop(thread),
        Source.standard("ASME B1.20.1-2013, L1"),
        Source.standard("ASME B1.20.1-2013, L3"));
  }

  private static Optional<Length> workshop(NptThread thread) {
    double inches = switch (thread.size()) {
      case ONE_SIXTEENTH -> 0.0;
      case ONE_EIGHTH -> 0.25;
      case ONE_QUARTER, THREE_EIGHTHS -> 0.375;
      case ONE_HALF -> 0.4375;
      case THREE_QUARTERS -> 0.5;
      case ONE, ONE_AND_A_QUARTER, ONE_AND_A_HALF -> 0.5625;
      case TWO -> 0.625;
      case TWO_AND_A_HALF -> 0.875;
      case THREE -> 1.0;
      case THREE_AND_A_HALF, FOUR -> 1.0625;
    };
    return inches == 0.0 ? Optional.empty() : Optional.of(Length.ofInches(inches));
  }

  /**
   * Obtains the engagement of R in Rc or Rp.
   *
   * @param thread the thread
   * @return how far it goes in
   */
  public static Engagement of(BsptThread thread) {
    Objects.requireNonNull(thread, "thread");
    double wrench = 0.5
        * Math.rint(2.0 * (thread.fittingAllowanceTurns() - thread.femaleGaugeToleranceTurns()));
    return new Engagement(
        thread.handTightTurns(),
        thread.gaugeLength(),
        wrench,
        Length.ofMillimetres(wrench * 25.4 / thread.threadsPerInch()),
        Optional.empty(),
        thread.source(),
        Source.fromMemory("BS 21:1985 wrenching allowance; f less T2/2 of ISO 7-1 gives the same"));
  }

  /** {@return turns by hand} */
  public double handTightTurns() {
    return handTightTurns;
  }

  /** {@return the length engaged by hand} */
  public Length handTightLength() {
    return handTightLength;
  }

  /** {@return turns past hand tight} */
  public double wrenchTurns() {
    return wrenchTurns;
  }

  /** {@return the length of the turns past hand tight} */
  public Length wrenchLength() {
    return wrenchLength;
  }

  /**
   * Obtains the whole engagement of a chart that is widely copied in workshops; shorter than the standard's, never to
   * be mixed with it.
   *
   * @return the length, empty where there is none
   */
  public Optional<Length> workshopMakeUp() {
    return workshopMakeUp;
  }

  /** {@return where the turns by hand come from} */
  public Source handTightSource() {
    return handTightSource;
  }

  /** {@return where the turns past hand tight come from} */
  public Source wrenchSource() {
    return wrenchSource;
  }

  /** {@return all turns} */
  public double totalTurns() {
    return handTightTurns + wrenchTurns;
  }

  /** {@return the whole length engaged} */
  public Length totalLength() {
    return handTightLength.plus(wrenchLength);
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof Engagement that
        && handTightTurns == that.handTightTurns
        && handTightLength.equals(that.handTightLength)
        && wrenchTurns == that.wrenchTurns
        && wrenchLength.equals(that.wrenchLength)
        && workshopMakeUp.equals(that.workshopMakeUp)
        && handTightSource.equals(that.handTightSource)
        && wrenchSource.equals(that.wrenchSource);
  }

  @Override
  public int hashCode() {
    return Objects.hash(
        handTightTurns,
        handTightLength,
        wrenchTurns,
        wrenchLength,
        workshopMakeUp,
        handTightSource,
        wrenchSource);
  }

  /**
   * Tells the engagement.
   *
   * @param units the units to show the length in
   * @return such as "4.48 turns by hand, then 3 turns by wrench: 13.57 mm in all"
   */
  public String inWords(UnitSystem units) {
    return Digits.fixed(handTightTurns, 2) + " turns by hand, then " + Digits.plain(wrenchTurns)
        + " turns by wrench: " + totalLength().format(units.smallLengthUnit()) + " in all";
  }

  /** {@return the engagement in words, lengths in mm} */
  @Override
  public String toString() {
    return inWords(UnitSystem.SI);
  }
}
