package org.airfit.select;

import java.util.List;
import java.util.Objects;
import org.airfit.internal.NamedValues;
import org.airfit.internal.NamedValues.Name;
import org.airfit.joint.End;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.Range;
import org.airfit.run.ToolAir;

/** What can be told of a tool, by name, each checked where it is told: of the one of a job, or of one of several. */
final class ToolTold {

  static final Name<Range<FreeAirFlow>> DEMAND = Name.of("demand");
  static final Name<Range<GaugePressure>> LEAST = Name.of("least");
  static final Name<Range<FreeAirFlow>> AVERAGE = Name.of("average");
  static final Name<GaugePressure> RATING = Name.of("tool rating");
  static final Name<GaugePressure> MARKED_UP_TO = Name.of("marked up to");
  static final Name<End> INLET = Name.of("tool inlet");
  static final Name<GaugePressure> DEAD_END = Name.of("dead end");
  static final Name<Boolean> IMPACT_TOOL = Name.flag("impact tool");
  static final Name<Boolean> WHIP_HOSE = Name.of("whip hose"); // false is told too
  static final Name<Boolean> BLOW_GUN = Name.flag("blow gun");
  static final Name<Boolean> AUTOMATIC_FEED = Name.flag("automatic feed");
  static final Name<Boolean> BLASTING = Name.flag("blasting");
  static final Name<Boolean> PAINTING = Name.flag("painting");

  static final List<Name<?>> ALL = List.of(
      DEMAND,
      AVERAGE,
      LEAST,
      RATING,
      MARKED_UP_TO,
      INLET,
      DEAD_END,
      IMPACT_TOOL,
      WHIP_HOSE,
      BLOW_GUN,
      AUTOMATIC_FEED,
      BLASTING,
      PAINTING);

  private ToolTold() {}

  /** What it takes and needs. */
  static NamedValues of(Range<FreeAirFlow> demand, Range<GaugePressure> least) {
    Objects.requireNonNull(demand, "demand");
    Objects.requireNonNull(least, "least");
    requireAboveZero(least);
    return NamedValues.NONE.with(DEMAND, demand).with(LEAST, least);
  }

  private static void requireAboveZero(Range<GaugePressure> least) {
    if (!(least.least().pascals() > 0.0)) {
      throw new IllegalArgumentException("least pressure at the tool must be above 0 bar(g), was "
          + least.least().inFewestDigits());
    }
  }

  /** With the air it takes on the average, and the shares of the time between which its duty lies. */
  static NamedValues averaging(
      NamedValues told, Range<FreeAirFlow> average, double leastDuty, double mostDuty) {
    return told.with(AVERAGE, average)
        .with(DEMAND, ToolAir.whileRunning(average, leastDuty, mostDuty));
  }

  /** As one that runs so much of the time. */
  static NamedValues running(NamedValues told, double duty) {
    Range<FreeAirFlow> average = told.find(AVERAGE)
        .orElseThrow(() ->
            new IllegalArgumentException("duty must be told of a tool whose air is an average, was "
                + duty + " of another; tell the air it takes while it runs"));
    return averaging(told, average, duty, duty);
  }

  /** As one that takes so much while it runs. */
  static NamedValues taking(NamedValues told, Range<FreeAirFlow> air) {
    return told.with(DEMAND, air);
  }

  /** As one that needs just so much. */
  static NamedValues needingJust(NamedValues told, GaugePressure least) {
    Range<GaugePressure> exactly = Range.exactly(least);
    requireAboveZero(exactly);
    return told.with(LEAST, exactly);
  }

  /** As one that needs so much at least, or more if that was told. */
  static NamedValues needing(NamedValues told, GaugePressure least) {
    boolean isMore =
        told.find(LEAST).filter(range -> range.most().compareTo(least) >= 0).isPresent();
    return isMore ? told : told.with(LEAST, Range.exactly(least));
  }

  /** With the highest pressure its maker allows. */
  static NamedValues rated(NamedValues told, GaugePressure rating) {
    Objects.requireNonNull(rating, "rating");
    if (!(rating.pascals() > 0.0)) {
      throw new IllegalArgumentException(
          "highest pressure the tool's maker allows must be above 0 bar(g), was "
              + rating.inFewestDigits() + "; leave it out where it is not known");
    }
    return told.with(RATING, rating);
  }

  /** With the higher end of a range that is marked on it, of which nobody told whether that is a limit. */
  static NamedValues markedUpTo(NamedValues told, GaugePressure marked) {
    Objects.requireNonNull(marked, "marked");
    if (!(marked.pascals() > 0.0)) {
      throw new IllegalArgumentException(
          "highest pressure marked on the tool must be above 0 bar(g), was "
              + marked.inFewestDigits() + "; leave it out where nothing is marked");
    }
    return told.with(MARKED_UP_TO, marked);
  }

  /** As one that cleans with air, with the pressure at its nozzle when that is blocked. */
  static NamedValues cleaning(NamedValues told, GaugePressure atBlockedNozzle) {
    if (Objects.requireNonNull(atBlockedNozzle, "atBlockedNozzle").pascals() < 0.0) {
      throw new IllegalArgumentException(
          "dead-end pressure of a blow gun must be at least 0 bar(g), was "
              + atBlockedNozzle.inFewestDigits()
              + "; leave it out where it is not known");
    }
    return told.with(BLOW_GUN).with(DEAD_END, atBlockedNozzle);
  }
}
