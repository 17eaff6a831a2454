package org.airfit.select;

import java.util.LinkedHashMap;
import java.util.Map;

/**
 * What must be asked of a single part in its slot whatever else is chosen, as bits of {@link Rule#bit()}. The search
 * puts what leaves a question open behind what leaves none, and the sentences of the rules ask the same.
 */
final class PartQuestions {

  /** What must be asked of a part, by rule. */
  private static final Map<Rule, PartChecks.OfPart> ASKED = asked();

  /**
   * Beside the bit of {@link Rule#AIR_KEPT_APART}, which stands for parts kept for dry air: parts kept for oiled air,
   * on a line of which nobody knows which it is. Both together break the rule on every line.
   */
  static final int KEPT_FOR_OILED = 1 << 30;

  private static final int KEPT_FOR_BOTH = Rule.AIR_KEPT_APART.bit() | KEPT_FOR_OILED;

  private PartQuestions() {}

  private static Map<Rule, PartChecks.OfPart> asked() {
    Map<Rule, PartChecks.OfPart> asked = new LinkedHashMap<>();
    asked.put(Rule.PARTS_RATED, PartChecks::isUnmarkedAndThere);
    asked.put(Rule.SAFETY_RULES_ALLOW, PartChecks::mayBeForbidden);
    asked.put(Rule.HOSE_REACHES, PartChecks::mayBeTooShort);
    asked.put(Rule.HOSE_SHORT_ENOUGH, PartChecks::mayBeTooLong);
    asked.put(Rule.TEMPERATURE_SUITS, PartChecks::isOfUnknownTemperature);
    asked.put(Rule.MATERIAL_SUITS, PartChecks::isOfDoubtfulMaterial);
    asked.put(Rule.STATIC_CARRIED_OFF, PartChecks::mayKeepCharge);
    return asked;
  }

  /** What must be asked of a part, as bits. */
  static int of(Requirement job, Position position, Part part) {
    int bits = 0;
    for (Map.Entry<Rule, PartChecks.OfPart> each : ASKED.entrySet()) {
      if (each.getValue().isBroken(job, position, part)) {
        bits |= each.getKey().bit();
      }
    }
    if (PartChecks.isKeptOnUnknownLine(job, position, part)) {
      boolean oiled =
          part.facts().lubrication().filter(Lubrication.LUBRICATED::equals).isPresent();
      bits |= oiled ? KEPT_FOR_OILED : Rule.AIR_KEPT_APART.bit();
    }
    return bits;
  }

  /** What must be asked of a joint, as bits: a straight coupling thread is meant for low pressure. */
  static int ofJoint(boolean isForLowPressure) {
    return isForLowPressure ? Rule.ENDS_MATE.bit() : 0;
  }

  /** How many rules questions leave open; parts kept for both kinds of air leave none open, they break one. */
  static int count(int asked) {
    return Integer.bitCount(isBroken(asked) ? asked & ~KEPT_FOR_BOTH : asked);
  }

  /** Whether questions of several parts have no good answer together. */
  static boolean isBroken(int asked) {
    return (asked & KEPT_FOR_BOTH) == KEPT_FOR_BOTH;
  }

  /** The questions that no longer matter where these rules are broken anyway, as bits. */
  static int settledBy(int broken) {
    return (broken & Rule.AIR_KEPT_APART.bit()) == 0 ? broken : broken | KEPT_FOR_OILED;
  }

  /** How many rules the parts and joints of an assembly leave open, the questions of the job itself not counted. */
  static int count(Assembly assembly) {
    int asked = 0;
    int broken = 0;
    for (Assembly way : assembly.toEachTool()) {
      Requirement job = way.requirement();
      broken |= Rule.brokenBy(job);
      for (Placed each : way.slotParts()) {
        asked |= of(job, each.position(), each.part());
        broken |= Rule.brokenBy(job, each.position(), each.part());
      }
    }
    for (Joint joint : assembly.joints()) {
      asked |= ofJoint(joint.isForLowPressure());
      broken |= joint.isSound() ? 0 : Rule.ENDS_MATE.bit();
    }
    if (assembly.isAirOpen()) {
      asked |= Rule.AIR_AT_TOOL.bit();
    }
    return count(asked & ~broken);
  }
}
