package org.airfit.thread;

/** Whether a thread is cut on the outside or on the inside. */
public enum Gender {
  /** Cut on the outside. */
  MALE("male"),
  /** Cut on the inside. */
  FEMALE("female");

  private final String label;

  Gender(String label) {
    this.label = label;
  }

  /** {@return the other one} */
  public Gender other() {
    return this == MALE ? FEMALE : MALE;
  }

  /** {@return "male" or "female"} */
  public String label() {
    return label;
  }
}
