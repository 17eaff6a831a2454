package org.airfit.plant;

/** Whether a receiver does for a user that draws now and then. */
public enum ReceiverVerdict {
  /** It carries every draw, whatever is not known, and is full again before the next. */
  MET("met"),
  /** What is not known decides. */
  DEPENDS("depends on what is not known"),
  /**
   * It is empty before the draw ends, whatever is not known of the flows. Where it is not known at all what the
   * compressor delivers, that is said of the receiver alone.
   */
  TOO_SMALL("NOT MET, the receiver is too small"),
  /** The compressor does not fill it again before the next draw, whatever is not known. */
  NOT_FILLED("NOT MET, the compressor delivers too little");

  private final String words;

  ReceiverVerdict(String words) {
    this.words = words;
  }

  /** {@return the verdict in words, such as "met"} */
  @Override
  public String toString() {
    return words;
  }
}
