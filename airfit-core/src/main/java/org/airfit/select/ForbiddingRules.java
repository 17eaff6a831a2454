package org.airfit.select;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.airfit.line.Conduit;
import org.airfit.line.Wall;
import org.airfit.safety.SafetyRule;
import org.airfit.safety.SafetyRules;

/** Which safety rules forbid something in a job, and whose they are. */
final class ForbiddingRules {

  static final String SHARE_OF_RATING = "share of lowest rating";
  static final String PLASTIC_PIPE = "plastic pipe";

  private static final Set<SafetyRule> BUNDLED =
      Set.copyOf(SafetyRules.bundled().rules());

  private ForbiddingRules() {}

  /** Those that forbid, but for the bundled ones on ratings, which {@link Rule#PARTS_RATED} judges part by part. */
  static List<SafetyRule> of(SafetyRules rules) {
    return rules.rules().stream()
        .filter(SafetyRule::isForbidding)
        .filter(rule -> isOwn(rule) || !limits(rule, SHARE_OF_RATING))
        .toList();
  }

  /** Whether somebody brought it, such as a works. */
  static boolean isOwn(SafetyRule rule) {
    return !BUNDLED.contains(rule);
  }

  /** Of the bundled federal rules each is on a trade of its own, and a job does not tell its trade. */
  static boolean isOfOneTrade(SafetyRule rule) {
    return rule.jurisdiction().equals("US") && !isOwn(rule);
  }

  static boolean limits(SafetyRule rule, String quantity) {
    return rule.quantity().filter(quantity::equals).isPresent();
  }

  /** Whether it allows what lies above its limit, not what lies below. */
  static boolean isUpwards(SafetyRule rule) {
    return rule.operator().filter(operator -> operator.startsWith(">")).isPresent();
  }

  /** Whether it limits what each part has for itself. */
  static boolean limitsParts(SafetyRule rule) {
    return limits(rule, "hose bore")
        || limits(rule, "mine hose bore")
        || (limits(rule, SHARE_OF_RATING) && !isUpwards(rule));
  }

  /** Whether single parts decide it: the bore of a hose, a rating, a wall of plastic. */
  static boolean isOfParts(SafetyRule rule) {
    return limitsParts(rule)
        || (rule.waitsFor().contains(PLASTIC_PIPE) && !rule.excepts().contains(PLASTIC_PIPE));
  }

  /** Those of rules that single parts decide, unless plastic before the outlet has decided for all of them. */
  static List<SafetyRule> ofParts(List<SafetyRule> forbidding, Optional<Boolean> plasticPipes) {
    boolean isPlastic = plasticPipes.equals(Optional.of(true));
    return forbidding.stream()
        .filter(ForbiddingRules::isOfParts)
        .filter(rule -> limitsParts(rule) || !isPlastic)
        .toList();
  }

  /** Whether any of some pipes is of plastic; empty where nobody knows. */
  static Optional<Boolean> plastic(List<Conduit> pipes) {
    Optional<Boolean> plastic = Optional.of(false);
    for (Conduit pipe : pipes) {
      plastic = either(plastic, pipe.wall().map(Wall::isPlastic));
    }
    return plastic;
  }

  /** Whether one of two is so; empty where that hangs on one that nobody knows. */
  static Optional<Boolean> either(Optional<Boolean> one, Optional<Boolean> other) {
    if (one.orElse(false) || other.orElse(false)) {
      return Optional.of(true);
    }
    return one.isEmpty() ? one : other;
  }
}
