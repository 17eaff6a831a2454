package org.airfit.air;

/** Whether a place on the way of compressed air needs a drain. */
public enum DrainNeed {
  /** Water is there, and a drain takes it out. */
  FITTED("a drain is needed, and there is one"),
  /** Water is there, and no drain is told. */
  MISSING("a drain is needed, and none is told"),
  /** Water comes there only while a dryer in front of it stands still. */
  WITHOUT_DRYER("water comes only while the dryer stands still"),
  /** No water comes there, within all that was told. */
  NONE("no water comes there");

  private final String label;

  DrainNeed(String label) {
    this.label = label;
  }

  /** {@return the need in words, such as "a drain is needed, and none is told"} */
  public String label() {
    return label;
  }
}
