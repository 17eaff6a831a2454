package org.airfit.joint;

import java.util.List;
import java.util.Optional;
import org.airfit.internal.Table;
import org.airfit.source.Source;

/**
 * Which thread the flare or the port with O-ring has that belongs to a tube.
 *
 * @param form the form
 * @param dash the dash size, sixteenths of an inch of the tube; 0 where the form has none
 * @param tube the outside diameter of the tube [in] by its name, such as 3/8
 * @param thread the thread by its name, such as 9/16-18
 * @param source where the row was read, or that it was recalled
 */
record TubeThread(SealForm form, int dash, String tube, String thread, Source source) {

  /** Loaded on first use. */
  private static final class Loaded {
    static final List<TubeThread> ALL = read();
  }

  /** Reads the whole table, as is done once. */
  static List<TubeThread> read() {
    return Table.read(TubeThread.class, "tube_threads.csv").stream()
        .map(row -> new TubeThread(
            SealForm.valueOf(row.text("form")),
            row.optional("dash").map(Double::intValue).orElse(0),
            row.text("tube_in"),
            row.text("thread"),
            Published.source(row)))
        .toList();
  }

  /** All rows of a form, by tube; none where nothing tells tubes and threads apart, as of a G port. */
  static List<TubeThread> all(SealForm form) {
    return Loaded.ALL.stream().filter(row -> row.form == form).toList();
  }

  static Optional<TubeThread> ofThread(SealForm form, String thread) {
    return all(form).stream().filter(row -> row.thread.equals(thread)).findFirst();
  }

  /** The row of a dash size. */
  static Optional<TubeThread> ofDash(SealForm form, int dash) {
    return all(form).stream().filter(row -> row.dash == dash && dash > 0).findFirst();
  }

  /** The row of a tube of that diameter [in]. */
  static Optional<TubeThread> ofTube(SealForm form, double inches) {
    return all(form).stream()
        .filter(row -> new EndScanner(row.tube, "a tube").amount().value() == inches)
        .findFirst();
  }
}
