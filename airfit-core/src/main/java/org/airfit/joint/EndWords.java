package org.airfit.joint;

import java.util.Optional;
import org.airfit.quantity.HoseBore;
import org.airfit.quantity.Length;
import org.airfit.thread.NamedThread;
import org.airfit.thread.ThreadDesignation;

/** What was read of an end, with what whoever typed it ought to know. */
sealed interface EndWords {

  /** What whoever typed it ought to know, because it may be meant otherwise. */
  Optional<String> remark();

  /** A pipe thread. */
  record Pipe(ThreadDesignation thread, boolean turnsFreely, Optional<String> remark)
      implements EndWords {}

  /** A hose, or the barb for it. */
  record OfHose(HoseBore bore, boolean isBarb, Optional<String> remark) implements EndWords {}

  /** A tube, or the push-in end for it. */
  record OfTube(Length outside, boolean isGrip, Optional<Length> wall, Optional<String> remark)
      implements EndWords {}

  /** A thread beside a form that seals. */
  record WithForm(NamedThread thread, SealForm form, boolean turnsFreely, Optional<String> remark)
      implements EndWords {}

  /** A claw coupling. */
  record OfClaw(ClawHead head, Optional<String> remark) implements EndWords {}
}
