package org.airfit.thread;

import org.airfit.quantity.Length;
import org.airfit.source.Source;

/** A thread with a name and a gender: a pipe thread, or another that is met beside pipe threads. */
public sealed interface NamedThread permits ThreadDesignation, ForeignThread {

  /** {@return the thread as people write it, with its gender, such as "3/8 NPT male" or "M14x1.5 male"} */
  String label();

  /** {@return outside or inside} */
  Gender gender();

  /** {@return the threads per inch [1/in], of a metric thread 25.4 mm over the pitch} */
  double threadsPerInch();

  /** {@return the pitch} */
  Length pitch();

  /** {@return the angle between the flanks [°]} */
  int flankAngleDegrees();

  /** {@return whether it runs on a cone} */
  boolean isTapered();

  /** {@return where its standard stands} */
  Source source();
}
