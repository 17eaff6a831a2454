package org.airfit.select;

import org.jspecify.annotations.Nullable;

/**
 * How far a search looks: it leaves out all that cannot come before this horizon. Where too little is found before it,
 * it is set farther out and the search is made once more. Most of a catalogue is never looked at.
 */
final class Horizon {

  /** How much farther it is set each time, as a factor on what it was set beyond the nearest. */
  private static final long FARTHER = 2L;

  private final Objective objective;
  private final Key nearest;
  private Key last;
  private @Nullable Key beyond;

  /**
   * Sets it so near that only what misses and costs least is before it.
   *
   * @param objective by what proposals are put in order
   * @param nearest the least that can be found
   * @param costStep how much the cost goes beyond at first
   */
  Horizon(Objective objective, Key nearest, long costStep) {
    this.objective = objective;
    this.nearest = nearest;
    this.last = nearest.costing(nearest.cost() + costStep, objective);
  }

  /** Whether a choice that becomes this at best lies beyond; the nearest of these is remembered. */
  boolean isBehind(Key best) {
    if (best.compareTo(last) <= 0) {
      return false;
    }
    if (beyond == null || best.compareTo(beyond) < 0) {
      beyond = best;
    }
    return true;
  }

  /** Whether a choice lies beyond that becomes no better than this, and none that was left out before was better. */
  boolean isSurelyBehind(Key atLeast) {
    return beyond != null && atLeast.compareTo(last) > 0 && atLeast.compareTo(beyond) >= 0;
  }

  /** Whether all there is was looked at. */
  boolean isAll() {
    return beyond == null;
  }

  /** Sets it to what is known to be found. */
  void setTo(Key found) {
    last = found;
    beyond = null;
  }

  /** Sets it farther out, at least so far that something more is before it. */
  void setFarther() {
    Key next = beyond == null ? last : beyond;
    if (next.missed() > last.missed()) {
      long step = FARTHER * (last.missed() - nearest.missed());
      last = new Key(
          Math.max(next.missed(), nearest.missed() + step),
          next.missing(),
          next.faults(),
          next.asked(),
          next.doubt(),
          next.first(),
          next.profiles(),
          next.cost());
    } else if (next.isAsWellSuitedAs(last)) {
      long step = FARTHER * (last.cost() - nearest.cost());
      last = next.costing(
          Math.max(next.cost(), nearest.cost() + Math.min(step, Ahead.NEVER)), objective);
    } else {
      last = next;
    }
    beyond = null;
  }
}
