package org.airfit.joint;

import java.util.Optional;
import org.airfit.internal.Capital;
import org.airfit.source.Source;

/** Judges any two ends. It does not matter which is named first. */
final class EndPairs {

  private EndPairs() {}

  static Pairing of(End one, End other) {
    if (one instanceof End.Threaded a && other instanceof End.Threaded b) {
      return ThreadPairs.of(a, b);
    }
    return inOrder(one, other)
        .or(() -> inOrder(other, one))
        .orElseGet(() -> new Pairing(
            MatingVerdict.DOES_NOT_FIT,
            Capital.first(Article.with(one.label())) + " and " + Article.with(other.label())
                + " have nothing to hold on to.",
            Source.commonPractice("ends of different kinds need an adapter")));
  }

  private static Optional<Pairing> inOrder(End one, End other) {
    if (one instanceof End.HoseEnd hose && other instanceof End.Barb barb) {
      return Optional.of(HosePairs.of(hose, barb));
    }
    if (one instanceof End.TubeEnd tube && other instanceof End.PushIn grip) {
      return Optional.of(HosePairs.of(tube, grip));
    }
    if (one instanceof End.Formed a && other instanceof End.Formed b) {
      return Optional.of(FormPairs.of(a, b));
    }
    if (one instanceof End.Formed formed && other instanceof End.Threaded pipe) {
      return Optional.of(FormPairs.of(formed, pipe));
    }
    if (one instanceof End.Formed formed && formed.form() == SealForm.WATER) {
      return Optional.of(FormPairs.ofWater(formed, other));
    }
    if (one instanceof End.Formed formed
        && formed.form().isCone()
        && other instanceof End.TubeEnd tube) {
      return Optional.of(FormPairs.ofPlainTube(formed, tube));
    }
    if (one instanceof End.Claw a && other instanceof End.Claw b) {
      return Optional.of(ClawPairs.of(a, b));
    }
    return Optional.empty();
  }

  /** Whether the verdict of {@link #of} is sound, without its reasons: for a search over many ends. */
  static boolean isSound(End one, End other) {
    if (one instanceof End.Threaded a && other instanceof End.Threaded b) {
      return ThreadPairs.isSound(a, b);
    }
    if (one instanceof End.Formed || other instanceof End.Formed) {
      return isSoundInOrder(one, other) || isSoundInOrder(other, one);
    }
    if (one instanceof End.Claw a && other instanceof End.Claw b) {
      return ClawPairs.isSound(a, b);
    }
    return inOrder(one, other)
        .or(() -> inOrder(other, one))
        .filter(pairing -> pairing.verdict().isSound())
        .isPresent();
  }

  private static boolean isSoundInOrder(End one, End other) {
    return one instanceof End.Formed formed
        && (other instanceof End.Formed second
            ? FormPairs.isSound(formed, second)
            : other instanceof End.Threaded pipe && FormPairs.isSound(formed, pipe));
  }
}
