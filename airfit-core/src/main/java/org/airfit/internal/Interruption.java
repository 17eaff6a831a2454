package org.airfit.internal;

import java.util.concurrent.CancellationException;

/** Ends what takes long where nobody waits for it any more: its thread was interrupted. */
public final class Interruption {

  private Interruption() {}

  /**
   * Goes on unless the thread was interrupted; the thread stays so.
   *
   * @param what what is going on, as the subject of a sentence
   * @throws CancellationException if the thread was interrupted
   */
  public static void check(String what) {
    if (Thread.currentThread().isInterrupted()) {
      throw new CancellationException(
          what
              + " ended without an answer: its thread was interrupted; ask again where that was not meant");
    }
  }
}
