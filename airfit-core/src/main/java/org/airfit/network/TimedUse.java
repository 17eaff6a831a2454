package org.airfit.network;

import java.util.Objects;
import java.util.Optional;
import org.airfit.quantity.GaugePressure;
import org.airfit.run.Run;
import org.airfit.run.ToolDemand;

/**
 * What takes air from the header in the course of a day: a tool at its drop, a machine, a leak.
 *
 * @param name what to call it
 * @param drop the way of the air from the header to it, whose own supply counts for nothing; empty for what sits on the
 *     header itself
 * @param tool what it takes while it runs; its duty counts for nothing, as the times are told
 * @param need the pressure it needs while it runs, above 0; empty for a leak or an open blow
 * @param when the times in which it takes air
 */
public record TimedUse(
    String name,
    Optional<Run> drop,
    ToolDemand tool,
    Optional<GaugePressure> need,
    DemandTimes when) {

  /**
   * Checks the components.
   *
   * @param name what to call it
   * @param drop the way of the air from the header to it; empty for what sits on the header itself
   * @param tool what it takes while it runs
   * @param need the pressure it needs while it runs, above 0; empty for a leak or an open blow
   * @param when the times in which it takes air
   * @throws IllegalArgumentException if {@code name} is blank, {@code need} is not above 0, or {@code drop} has no
   *     elements
   */
  public TimedUse {
    Objects.requireNonNull(name, "name");
    Objects.requireNonNull(drop, "drop");
    Objects.requireNonNull(tool, "tool");
    Objects.requireNonNull(need, "need");
    Objects.requireNonNull(when, "when");
    if (name.isBlank()) {
      throw new IllegalArgumentException("name of a user of air must say which, was blank");
    }
    if (drop.filter(run -> run.names().isEmpty()).isPresent()) {
      throw new IllegalArgumentException(
          "drop of " + name + " must have at least one element, was none; leave the drop out");
    }
    if (need.filter(pressure -> !(pressure.pascals() > 0.0)).isPresent()) {
      throw new IllegalArgumentException("pressure that " + name
          + " needs must be above 0 Pa(g), was " + need.get().inFewestDigits());
    }
  }

  /** {@return this with the air of a recording bunched, see {@link DemandTimes#bunched()}} */
  public TimedUse bunched() {
    return new TimedUse(name, drop, tool, need, when.bunched());
  }

  /** {@return the user in one line, such as "press: 0.01 kg/s while it runs; 12 times, from 0 s to 600 s"} */
  @Override
  public String toString() {
    return (name.equals(tool.name()) ? "" : name + ", ") + tool + "; " + when;
  }
}
