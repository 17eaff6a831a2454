package org.airfit.thread;

/** What whoever measures a thread easily gets wrong. */
public enum ThreadSlip {
  /** A leaf next to the right one was taken to fit. */
  LEAF_MISREAD(
      "the leaf of the pitch gauge was misread",
      "hold the leaf against the light again, and count the pitch"),
  /** The threads were counted and not the gaps between them, so that one pitch too many is told. */
  THREADS_COUNTED_AS_PITCHES(
      "threads were counted as pitches", "count again: over six threads there are five pitches"),
  /** One thread was overlooked, so that one pitch too few is told. */
  ONE_THREAD_OVERLOOKED(
      "one thread too few was counted", "count again: over six threads there are five pitches"),
  /** The diameter of the last full thread was given as that of the first. */
  ENDS_SWAPPED(
      "the diameters of the first and the last thread are swapped",
      "the first full thread is the one at the open end"),
  /** The outside of a male thread was given as the bore of a female one, or the other way round. */
  INSIDE_OUTSIDE_SWAPPED(
      "outside and inside are swapped",
      "a male thread is measured over its crests, a female one between them"),
  /** The diameter was not taken at the first full thread. */
  NOT_AT_THE_END(
      "the diameter was not taken at the first full thread",
      "measure the first full thread at the open end again");

  private final String label;
  private final String check;

  ThreadSlip(String label, String check) {
    this.label = label;
    this.check = check;
  }

  /** {@return what went wrong, as a clause, such as "threads were counted as pitches"} */
  public String label() {
    return label;
  }

  /** {@return what to do about it} */
  public String check() {
    return check;
  }
}
