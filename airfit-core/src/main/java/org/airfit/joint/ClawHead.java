package org.airfit.joint;

import org.airfit.source.Source;

/**
 * The head of a claw coupling. Two halves with heads of one kind lock on each other whatever hose or thread is on their
 * other ends; heads of two kinds do not, although the trade calls more than one of them universal.
 */
public enum ClawHead {
  /** The European head, its claws 42 mm apart on every size. */
  EUROPEAN("European", Source.standard("DIN 3489, as quoted in a public note: claw spacing 42 mm")),
  /** The North American head with two lugs, for hose with a bore of up to 1 in. */
  TWO_LUG(
      "two-lug", Source.handbook("public note on claw couplings: two lugs up to 1 in hose bore")),
  /** The North American head with four lugs, for hose with a bore of 1-1/4 to 2 in. */
  FOUR_LUG(
      "four-lug",
      Source.handbook("public note on claw couplings: four lugs from 1-1/4 to 2 in hose bore"));

  private final String label;
  private final Source source;

  ClawHead(String label, Source source) {
    this.label = label;
    this.source = source;
  }

  /** {@return the head in words, such as "two-lug"} */
  public String label() {
    return label;
  }

  /** {@return where it was read which heads lock on each other} */
  public Source source() {
    return source;
  }
}
