package org.airfit.joint;

import java.util.Optional;
import java.util.stream.Stream;
import org.airfit.quantity.NominalThreadSize;
import org.airfit.thread.Gender;
import org.airfit.thread.ThreadFamily;
import org.airfit.thread.ThreadForm;

/** What seals a pair of ends of a sound joint, and what is bought for it. */
final class SealOfEnds {

  private SealOfEnds() {}

  /** What lies between the faces or cones of two ends whose threads only pull. */
  static Seal onFace(End one, End other) {
    return male(one, other).family() == ThreadFamily.BSPP ? Seal.WASHER : Seal.SEAT;
  }

  /** What is bought beside the parts, by name and size. */
  static Optional<String> item(Seal seal, End one, End other) {
    return switch (seal) {
      case THREAD_SEALANT -> Optional.of("thread sealant for " + nameOf(male(one, other)));
      case WASHER -> Optional.of("sealing washer for " + nameOf(male(one, other)));
      case CLAMP_OR_FERRULE ->
        Optional.of("clamp or ferrule for " + only(End.HoseEnd.class, one, other).label());
      case DRY_THREAD, CONE, SEAT, RING_OF_PART -> Optional.empty();
    };
  }

  private static <E extends End> E only(Class<E> kind, End one, End other) {
    return Stream.of(one, other).filter(kind::isInstance).map(kind::cast).findFirst().orElseThrow();
  }

  private static End.Threaded male(End one, End other) {
    End.Threaded first = (End.Threaded) one;
    return first.gender() == Gender.MALE ? first : (End.Threaded) other;
  }

  private static String nameOf(End.Threaded end) {
    NominalThreadSize size = end.size();
    String symbol = end.family().symbol(end.gender());
    return end.family().form() == ThreadForm.FLAT_60 ? size + " " + symbol : symbol + " " + size;
  }
}
