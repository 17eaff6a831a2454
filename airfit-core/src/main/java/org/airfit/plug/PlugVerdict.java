package org.airfit.plug;

/** What readings say about a plug. */
public enum PlugVerdict {
  /**
   * One profile stands out and fits, in every dimension that decides the mating unless no near copies are about, and
   * comes from a standard or from five measured pieces or more, as all of its set do. A profile of which the set does
   * not know all those dimensions is a candidate at most.
   */
  IDENTIFIED("identified"),
  /**
   * One profile stands out and fits, but its set holds dimensions that nobody verified or that are invented, or a near
   * copy or a chance agreement is not ruled out yet: the answer says what else to read, or what the set lacks.
   */
  CANDIDATE("candidate only"),
  /** Several profiles, a profile and an unknown one, or a slip in a reading remain likely. */
  AMBIGUOUS("ambiguous"),
  /** No likely profile fits; the plug is most likely of none in the set. */
  NO_MATCH("no match in the set"),
  /** Too little was read, or nothing the set knows. */
  INSUFFICIENT_DATA("not enough readings");

  private final String label;

  PlugVerdict(String label) {
    this.label = label;
  }

  /** {@return the verdict in words} */
  public String label() {
    return label;
  }
}
