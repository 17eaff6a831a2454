package org.airfit.joint;

import java.util.List;
import java.util.Optional;
import org.airfit.thread.Gender;
import org.airfit.thread.NamedThread;
import org.airfit.thread.ThreadDesignation;
import org.airfit.thread.ThreadFamily;

/** What seals a pair of ends of a sound joint, and what is bought for it. */
final class SealOfEnds {

  private SealOfEnds() {}

  /** What lies between the faces or cones of two ends whose threads only pull. */
  static Seal onFace(End one, End other) {
    for (End end : List.of(one, other)) {
      if (end instanceof End.Formed formed) {
        if (formed.form().isCone()) {
          return Seal.CONE;
        }
        if (formed.form() == SealForm.O_RING || formed.form() == SealForm.RING) {
          return Seal.RING_OF_PART;
        }
      }
    }
    boolean isFree =
        male(one, other) instanceof ThreadDesignation pipe && pipe.family() != ThreadFamily.BSPP;
    return isFree ? Seal.SEAT : Seal.WASHER;
  }

  /** What is bought beside the parts, by name and size. */
  static Optional<String> item(Seal seal, End one, End other) {
    return switch (seal) {
      case THREAD_SEALANT -> Optional.of("thread sealant for " + ThreadNames.of(male(one, other)));
      case WASHER -> Optional.of("sealing washer for " + ThreadNames.of(male(one, other)));
      case CLAMP_OR_FERRULE ->
        Optional.of(
            "clamp or ferrule for " + (one instanceof End.HoseEnd ? one.label() : other.label()));
      case DRY_THREAD, CONE, SEAT, RING_OF_PART -> Optional.empty();
    };
  }

  private static NamedThread male(End one, End other) {
    NamedThread first = thread(one);
    return first.gender() == Gender.MALE ? first : thread(other);
  }

  private static NamedThread thread(End end) {
    return end instanceof End.Threaded pipe ? pipe.thread() : ((End.Formed) end).thread();
  }

  /** What turns so that a sound joint closes. */
  static Turning turning(MatingVerdict verdict, End one, End other) {
    return switch (verdict) {
      case HOLDS_WITH_CLAMP, HOLDS_IN_GRIP -> Turning.NOTHING;
      case LOCKS_ON_CLAWS -> Turning.EIGHTH;
      default -> turnsFreely(one) || turnsFreely(other) ? Turning.NUT : Turning.PART;
    };
  }

  private static boolean turnsFreely(End end) {
    return end instanceof End.Threaded pipe
        ? pipe.turnsFreely()
        : end instanceof End.Formed formed && formed.turnsFreely();
  }
}
