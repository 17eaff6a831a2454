package org.airfit.network;

import java.util.Objects;
import java.util.Optional;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.Volume;
import org.airfit.run.Run;

/**
 * A receiver in the line from the compressors to the header, wet before the treatment or dry behind it, or the volume of
 * the pipes.
 *
 * @param name what to call it
 * @param join the way of the air to it from the receiver before, such as dryer and filters; empty for the first
 * @param volume how much air it holds, in [1e-3, 1e6] m³
 * @param start the pressure in it when the day begins, at least 0
 */
public record LineReceiver(String name, Optional<Run> join, Volume volume, GaugePressure start) {

  /**
   * Checks the components.
   *
   * @param name what to call it
   * @param join the way of the air to it from the receiver before; empty for the first
   * @param volume how much air it holds, in [1e-3, 1e6] m³
   * @param start the pressure in it when the day begins, at least 0
   * @throws IllegalArgumentException if an argument is out of range
   */
  public LineReceiver {
    Objects.requireNonNull(name, "name");
    Objects.requireNonNull(join, "join");
    Objects.requireNonNull(volume, "volume");
    Objects.requireNonNull(start, "start");
    if (name.isBlank()) {
      throw new IllegalArgumentException("name of a receiver must say which, was blank");
    }
    if (join.filter(run -> run.names().isEmpty()).isPresent()) {
      throw new IllegalArgumentException("join to " + name
          + " must have at least one element, was none; make the two one receiver");
    }
    if (!(volume.cubicMetres() >= 1.0e-3 && volume.cubicMetres() <= 1.0e6)) {
      throw new IllegalArgumentException("volume of " + name + " must be in [1e-3, 1e6] m³, was "
          + volume.shown() + "; check its unit");
    }
    if (!(start.pascals() >= 0.0)) {
      throw new IllegalArgumentException("pressure in " + name
          + " when the day begins must be at least 0 Pa(g), was " + start.inFewestDigits());
    }
  }

  /**
   * Obtains this with another volume.
   *
   * @param other how much air it holds
   * @return this with {@code other}
   * @throws IllegalArgumentException if it is out of range
   */
  public LineReceiver withVolume(Volume other) {
    return new LineReceiver(name, join, other, start);
  }

  /**
   * Obtains this with another pressure at the beginning of the day.
   *
   * @param other the pressure
   * @return this with {@code other}
   * @throws IllegalArgumentException if it is out of range
   */
  public LineReceiver withStart(GaugePressure other) {
    return new LineReceiver(name, join, volume, other);
  }

  /** {@return the receiver in one line, such as "dry receiver: 1 m³, 700000 Pa(g) when the day begins"} */
  @Override
  public String toString() {
    return name + ": " + volume.shown() + ", " + start.inFewestDigits() + " when the day begins";
  }
}
