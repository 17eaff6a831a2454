package org.airfit.run;

/** What readings say about a run. */
public enum DiagnosisVerdict {
  /** One explanation is at least 99 % probable and fits the readings: it is named. */
  FOUND,
  /** One explanation is the most probable by far, but not enough, or nothing is left to test its fit by. */
  LIKELY,
  /**
   * The readings agree with what was told, but for the value of what is unmarked; a fault smaller than they show is not
   * ruled out.
   */
  AS_TOLD,
  /** Several explanations cannot be told apart by these readings. */
  SEVERAL,
  /** No explanation of the list fits the readings. */
  NONE_FITS,
  /** The readings contradict one another or physics: a gauge is wrong, or a leak flows at rest. */
  CONTRADICTED
}
