package org.airfit.joint;

import java.util.Optional;
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
            capital(Article.with(one.label())) + " and " + Article.with(other.label())
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
    return Optional.empty();
  }

  /** Whether the verdict of {@link #of} is sound, without its reasons: for a search over many ends. */
  static boolean isSound(End one, End other) {
    if (one instanceof End.Threaded a && other instanceof End.Threaded b) {
      return ThreadPairs.isSound(a, b);
    }
    return inOrder(one, other)
        .or(() -> inOrder(other, one))
        .filter(pairing -> pairing.verdict().isSound())
        .isPresent();
  }

  private static String capital(String sentence) {
    return Character.toUpperCase(sentence.charAt(0)) + sentence.substring(1);
  }
}
