package org.airfit.files;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.airfit.plug.PlugReading;
import org.airfit.plug.SocketAnswer;
import org.airfit.quantity.Length;
import org.airfit.thread.ThreadReadings;

/**
 * The plug or socket that a customer laid on the counter.
 *
 * @param where where it comes from, in words
 * @param readings what was read on the plug; empty for none
 * @param worn the most that wear can have taken off it
 * @param nearCopies whether near copies of the profiles are about
 * @param thread what was read on its thread
 * @param socket the answer where only a socket is at hand
 */
public record AtHand(
    String where,
    List<PlugReading> readings,
    Length worn,
    boolean nearCopies,
    Optional<ThreadReadings> thread,
    Optional<SocketAnswer> socket) {

  /**
   * Copies the list; refuses what is null.
   *
   * @param where where it comes from, in words
   * @param readings what was read on the plug; empty for none
   * @param worn the most that wear can have taken off it
   * @param nearCopies whether near copies of the profiles are about
   * @param thread what was read on its thread
   * @param socket the answer where only a socket is at hand
   */
  public AtHand {
    Objects.requireNonNull(where, "where");
    readings = List.copyOf(Objects.requireNonNull(readings, "readings"));
    Objects.requireNonNull(worn, "worn");
    Objects.requireNonNull(thread, "thread");
    Objects.requireNonNull(socket, "socket");
  }
}
