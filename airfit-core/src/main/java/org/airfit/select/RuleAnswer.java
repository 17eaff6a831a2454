package org.airfit.select;

/** What a rule answers for one assembly, before the rule's name is put on it. */
record RuleAnswer(RuleOutcome outcome, String reason) {

  static RuleAnswer met(String reason) {
    return new RuleAnswer(RuleOutcome.MET, reason);
  }

  static RuleAnswer metWhileRegulated(String reason) {
    return new RuleAnswer(RuleOutcome.MET_WHILE_REGULATED, reason);
  }

  static RuleAnswer unmet(String reason) {
    return new RuleAnswer(RuleOutcome.UNMET, reason);
  }

  static RuleAnswer open(String reason) {
    return new RuleAnswer(RuleOutcome.OPEN, reason);
  }

  static RuleAnswer doesNotApply(String reason) {
    return new RuleAnswer(RuleOutcome.DOES_NOT_APPLY, reason);
  }
}
