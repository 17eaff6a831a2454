package org.airfit.plant;

import java.time.Duration;
import java.util.Objects;
import java.util.Optional;
import org.airfit.internal.Digits;
import org.airfit.internal.Seconds;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.MassFlowUnit;
import org.airfit.quantity.Power;

/**
 * A compressor of fixed speed as it behaves in time: it is called at cut-in, delivers after a delay, and at cut-out
 * idles for a while or stops.
 *
 * <p>Loaded it delivers the same free air at every pressure, as machines that displace air nearly do. Its electric
 * power follows the pressure p as the work of adiabatic compression in one stage does; at cut-out it falls in a straight
 * line over the blow-down to what it takes idling:
 *
 * <pre>
 *   P = Pr (r^0.2857 − 1)/(rr^0.2857 − 1),   r = p/pa
 * </pre>
 *
 * <p>Pr is the power stated at the pressure of {@code ratedAt} (ratio rr), pa the atmosphere. While it starts or builds
 * up its pressure it counts as idling. <b>Source:</b> steady-flow work as in {@link org.airfit.air.Compression}; that
 * the power falls over the blow-down: US DOE sourcebook, as quoted (40 s); the straight line is our choice.
 *
 * @param name what to call it
 * @param delivery the free air it delivers loaded, above 0; a maker's figure is mostly counted at its own inlet
 * @param band its own cut-in and cut-out; empty where it shares a band with others
 * @param startDelay from the call to delivery where it stands still, at most 1 h
 * @param loadDelay from the call to delivery where it idles, at most 1 h
 * @param runOn how long it idles before it stops: 0 s for one that starts and stops at every swing, empty for one that
 *     never stops
 * @param blowDown how long its power takes to fall from loaded to idle, at most 1 h
 * @param loadedPower the electric power it takes loaded, stated at {@code ratedAt}
 * @param idlePower the electric power it takes idling, at most {@code loadedPower}
 * @param ratedAt the pressure at which {@code loadedPower} is stated, above 0
 */
public record TimedCompressor(
    String name,
    FreeAirFlow delivery,
    Optional<PressureBand> band,
    Duration startDelay,
    Duration loadDelay,
    Optional<Duration> runOn,
    Duration blowDown,
    Power loadedPower,
    Power idlePower,
    GaugePressure ratedAt) {

  private static final double LONGEST_DELAY = 3600.0;

  /**
   * Checks the components.
   *
   * @param name what to call it
   * @param delivery the free air it delivers loaded, above 0
   * @param band its own cut-in and cut-out; empty where it shares a band with others
   * @param startDelay from the call to delivery where it stands still, at most 1 h
   * @param loadDelay from the call to delivery where it idles, at most 1 h
   * @param runOn how long it idles before it stops; empty for one that never stops
   * @param blowDown how long its power takes to fall from loaded to idle, at most 1 h
   * @param loadedPower the electric power it takes loaded
   * @param idlePower the electric power it takes idling, at most {@code loadedPower}
   * @param ratedAt the pressure at which {@code loadedPower} is stated, above 0
   * @throws IllegalArgumentException if an argument is out of range
   */
  public TimedCompressor {
    Objects.requireNonNull(name, "name");
    Objects.requireNonNull(delivery, "delivery");
    Objects.requireNonNull(band, "band");
    Objects.requireNonNull(startDelay, "startDelay");
    Objects.requireNonNull(loadDelay, "loadDelay");
    Objects.requireNonNull(runOn, "runOn");
    Objects.requireNonNull(blowDown, "blowDown");
    Objects.requireNonNull(loadedPower, "loadedPower");
    Objects.requireNonNull(idlePower, "idlePower");
    Objects.requireNonNull(ratedAt, "ratedAt");
    if (name.isBlank()) {
      throw new IllegalArgumentException("name of a compressor must say which, was blank");
    }
    if (!(delivery.cubicMetresPerSecond() > 0.0)) {
      throw new IllegalArgumentException(
          "delivery of " + name + " must be above 0, was " + delivery.shown());
    }
    requireDelay("start delay", name, startDelay);
    requireDelay("load delay", name, loadDelay);
    requireDelay("blow-down", name, blowDown);
    if (runOn.filter(Duration::isNegative).isPresent()) {
      throw new IllegalArgumentException(
          "run-on of " + name + " must be at least 0 s, was " + Seconds.told(runOn.get()));
    }
    if (!(idlePower.watts() >= 0.0 && idlePower.watts() <= loadedPower.watts())) {
      throw new IllegalArgumentException("idle power of " + name + " must be in [0, "
          + Digits.told(loadedPower.watts()) + "] W, was " + Digits.told(idlePower.watts())
          + " W");
    }
    if (!(ratedAt.pascals() > 0.0)) {
      throw new IllegalArgumentException("pressure at which the power of " + name
          + " is stated must be above 0 bar(g), was " + ratedAt.inFewestDigits());
    }
  }

  private static void requireDelay(String what, String name, Duration time) {
    if (!(Seconds.of(time) >= 0.0 && Seconds.of(time) <= LONGEST_DELAY)) {
      throw new IllegalArgumentException(
          what + " of " + name + " must be in [0, 3600] s, was " + Seconds.told(time));
    }
  }

  /**
   * Obtains this with another band.
   *
   * @param other its own cut-in and cut-out; empty where it shares a band with others
   * @return this with {@code other}
   */
  public TimedCompressor withBand(Optional<PressureBand> other) {
    return new TimedCompressor(
        name,
        delivery,
        other,
        startDelay,
        loadDelay,
        runOn,
        blowDown,
        loadedPower,
        idlePower,
        ratedAt);
  }

  /** {@return the compressor in one line, such as "screw 1: 0.046 kg/s, 15000 W loaded, 4500 W idling"} */
  @Override
  public String toString() {
    return name + ": " + delivery.massFlow().format(MassFlowUnit.KILOGRAM_PER_SECOND) + ", "
        + Digits.inFull(loadedPower.watts()) + " W loaded, " + Digits.inFull(idlePower.watts())
        + " W idling";
  }
}
