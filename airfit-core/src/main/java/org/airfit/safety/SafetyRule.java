package org.airfit.safety;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Collectors;
import org.airfit.quantity.GaugePressure;
import org.airfit.source.Source;
import org.airfit.working.UnitSystem;
import org.jspecify.annotations.Nullable;

/**
 * One rule of safety: what it demands, where it holds, where it stands, and, as far as airfit can judge it, which
 * quantity it limits and when it applies.
 *
 * <p>Rules are data: {@link SafetyRules} reads them from tables, those that come with airfit and the user's own alike.
 * They are reminders, not a legal code: other rules apply in other places, and makers' ratings come before all of them.
 *
 * <p>A rule applies where all facts it waits for are told and none that it excepts. It then judges a quantity by its
 * limit, or, without one, asks for something or forbids it. A limit that is printed in two units which agree when
 * rounded, such as 232 psi (16 bar), treats both printed values alike: what is allowed at one is allowed at the other.
 *
 * <p>This class is immutable, thread-safe and value-based.
 */
public final class SafetyRule {

  /** Where the limit stands in a demand. */
  static final String LIMIT = "{limit}";

  /** What a rule does where it applies. */
  enum Asks {
    REQUIRES,
    FORBIDS,
    ADVISES_AGAINST;

    /** Whether its operator says what is allowed, not what something is asked for. */
    boolean isAgainst() {
      return this != REQUIRES;
    }
  }

  /** What a rule says of a situation, before its name is put on it. */
  record Answer(Judgement judgement, String reason) {}

  /** Where a rule stands and what it says. */
  record Statement(
      String jurisdiction,
      String citation,
      String scope,
      String text,
      String title,
      String demand,
      Source source,
      String seenIn) {}

  /** When it applies and what it compares; the operator is null where it has no limit. */
  record Judging(
      Asks asks,
      List<Fact> when,
      List<Fact> unless,
      @Nullable RuleQuantity quantity,
      @Nullable RuleOperator operator,
      @Nullable RuleLimit limit) {

    Judging withLimit(RuleLimit told) {
      return new Judging(asks, when, unless, quantity, operator, told);
    }

    /**
     * Whether the lowest value is the worst: where it must be above a limit, or where something is asked for below
     * one.
     */
    boolean isWorstAtLeast() {
      boolean upwards = operator == RuleOperator.ABOVE || operator == RuleOperator.FROM;
      return upwards == asks.isAgainst();
    }
  }

  private final Statement statement;
  private final @Nullable Judging judging;
  private final String judgedBy;

  SafetyRule(Statement statement, @Nullable Judging judging, String judgedBy) {
    this.statement = statement;
    this.judging = judging;
    this.judgedBy = judgedBy;
  }

  /** {@return the jurisdiction, such as "US" for federal law, "US-CA", "ISO", or "any" for general practice} */
  public String jurisdiction() {
    return statement.jurisdiction;
  }

  /** {@return where the rule stands, such as "29 CFR 1910.242(b)"} */
  public String citation() {
    return statement.citation;
  }

  /** {@return the work the rule is on, such as "construction"} */
  public String scope() {
    return statement.scope;
  }

  /** {@return what the rule says, in other words than its own} */
  public String text() {
    return statement.text;
  }

  /** {@return what the rule is about, in a few words} */
  public String title() {
    return statement.title;
  }

  /** {@return what the rule demands, in plain words, with its limit as it is printed} */
  public String demand() {
    return limit().map(limit -> statement.demand.replace(LIMIT, limit)).orElse(statement.demand);
  }

  /** {@return where the rule stands, and how far that can be trusted} */
  public Source source() {
    return statement.source;
  }

  /** {@return where it was read, or why it was not} */
  public String seenIn() {
    return statement.seenIn;
  }

  /** {@return the quantity it limits, such as "cleaning pressure"; empty where it limits none} */
  public Optional<String> quantity() {
    return Optional.ofNullable(judging).map(Judging::quantity).map(RuleQuantity::toString);
  }

  /** {@return its limit as it is printed, such as "232 psig (16 bar(g))" or "110 %"; empty where it has none} */
  public Optional<String> limit() {
    return Optional.ofNullable(judging).map(Judging::limit).map(RuleLimit::printed);
  }

  /** {@return the pressure at which its judgement turns; empty where it limits no pressure} */
  public Optional<GaugePressure> pressureLimit() {
    return bound(RuleQuantity.Kind.PRESSURE).map(GaugePressure::ofPascals);
  }

  /**
   * Tells the pressure at which its judgement turns, where it limits a share of a rating.
   *
   * @param rating the rating
   * @return its share of {@code rating}; empty where it limits no share
   */
  public Optional<GaugePressure> pressureLimit(GaugePressure rating) {
    Objects.requireNonNull(rating, "rating");
    return bound(RuleQuantity.Kind.SHARE)
        .map(percent -> GaugePressure.ofPascals(rating.pascals() * percent / 100.0));
  }

  private Optional<Double> bound(RuleQuantity.Kind kind) {
    return judging == null
            || judging.quantity == null
            || judging.operator == null
            || judging.limit == null
            || judging.quantity.kind() != kind
        ? Optional.empty()
        : Optional.of(judging.limit.deciding(judging.operator));
  }

  /**
   * Obtains this rule with its limit told in a system of units: demand, limit and reasons then speak in these units,
   * and what the law prints stands in brackets. A limit that is printed in two units keeps both. It judges as before.
   *
   * @param units the units
   * @return the same rule in {@code units}
   */
  public SafetyRule toldIn(UnitSystem units) {
    Objects.requireNonNull(units, "units");
    return judging == null || judging.limit == null
        ? this
        : new SafetyRule(statement, judging.withLimit(judging.limit.toldIn(units)), judgedBy);
  }

  /** {@return how its limit is meant, as {@code "<="}: below, at most, above or from; empty where it has none} */
  public Optional<String> operator() {
    return Optional.ofNullable(judging).map(Judging::operator).map(RuleOperator::toString);
  }

  /** {@return whether a situation can be judged by it} */
  public boolean isJudged() {
    return judging != null;
  }

  /** {@return of a rule that is not judged, what stands for it or why it is not; else empty} */
  public Optional<String> judgedBy() {
    return judgedBy.isEmpty() ? Optional.empty() : Optional.of(judgedBy);
  }

  /**
   * {@return whether it forbids something, or advises against it} A rule that is not judged forbids nothing.
   */
  public boolean isForbidding() {
    return judging != null && judging.asks.isAgainst();
  }

  /** {@return whether it is advice, not law: what it is against is not allowed by it, and may be done all the same} */
  public boolean isAdvice() {
    return judging != null && judging.asks == Asks.ADVISES_AGAINST;
  }

  /** {@return the facts that it waits for, by the names they have in a table of rules; none if it is not judged} */
  public List<String> waitsFor() {
    return judging == null ? List.of() : labels(judging.when);
  }

  /** {@return the facts that except it, by the names they have in a table of rules; none if it is not judged} */
  public List<String> excepts() {
    return judging == null ? List.of() : labels(judging.unless);
  }

  private static List<String> labels(List<Fact> facts) {
    return facts.stream().map(Fact::label).toList();
  }

  /** What this rule alone says of a situation. */
  Answer judge(Situation situation) {
    if (judging == null) {
      return silent("it is not judged by itself; " + judgedBy);
    }
    List<Fact> asked = new ArrayList<>();
    for (Fact fact : judging.when) {
      if (fact.isUnknown(situation)) {
        asked.add(fact);
      } else if (!fact.isTold(situation)) {
        return silent(fact.untold());
      }
    }
    for (Fact fact : judging.unless) {
      if (fact.isUnknown(situation)) {
        asked.add(fact);
      } else if (fact.isTold(situation)) {
        return silent("the rule does not apply where " + fact.told());
      }
    }
    Fact presumed = judging.quantity == null ? null : judging.quantity.presumes();
    if (presumed != null && presumed.isUnknown(situation) && !asked.contains(presumed)) {
      asked.add(presumed);
    }
    Answer answer = whereItApplies(judging, situation);
    return asked.isEmpty() || answer.judgement.isHarmless() ? answer : depends(asked, answer);
  }

  /** What it says, taken that it applies: what is not known of the facts is left out. */
  private static Answer whereItApplies(Judging judging, Situation situation) {
    if (judging.quantity == null || judging.operator == null || judging.limit == null) {
      String told = judging.when.stream()
          .filter(fact -> fact.isTold(situation))
          .map(Fact::told)
          .collect(Collectors.joining(" and "));
      return new Answer(
          judging.asks.isAgainst() ? Judgement.NOT_ALLOWED : Judgement.REQUIRED,
          (judging.when.isEmpty() ? "the rule is on every line" : told) + ".");
    }
    Optional<String> unknown = judging.quantity.asked(situation);
    if (unknown.isPresent()) {
      return new Answer(Judgement.DEPENDS, "ask for the " + unknown.get() + ".");
    }
    double rating = judging.quantity.rating(situation);
    double value = judging.isWorstAtLeast()
        ? judging.quantity.least(situation)
        : judging.quantity.value(situation);
    if (judging.quantity.kind() == RuleQuantity.Kind.SHARE) {
      value = Double.isNaN(rating) ? Double.NaN : value;
    }
    return Double.isNaN(value)
        ? silent(judging.quantity.untold())
        : compared(judging, judging.quantity, judging.operator, judging.limit, value, rating);
  }

  private static Answer depends(List<Fact> asked, Answer answer) {
    String whether = asked.stream().map(Fact::asked).collect(Collectors.joining(", and whether "));
    boolean saysMore = answer.reason.length() > 1;
    return new Answer(
        Judgement.DEPENDS, "ask whether " + whether + (saysMore ? "; " : "") + answer.reason);
  }

  private static Answer compared(
      Judging judging,
      RuleQuantity quantity,
      RuleOperator operator,
      RuleLimit limit,
      double value,
      double rating) {
    boolean share = quantity.kind() == RuleQuantity.Kind.SHARE;
    double bound = limit.deciding(operator);
    // rating × 110 / 100, so that 100 % is the rating itself
    double against = share ? rating * bound / 100.0 : bound;
    boolean holds = operator.holds(value, against);
    String compared = share
        ? ofRating(quantity, limit, limit.words(against, value), rating)
        : limit.printed(value);
    String words = share ? limit.words(value, against) : limit.against(value);
    if (judging.asks.isAgainst()) {
      return new Answer(
          holds ? Judgement.ALLOWED : Judgement.NOT_ALLOWED,
          words + " against " + operator.allowed() + " " + compared + ".");
    }
    return new Answer(
        holds ? Judgement.REQUIRED : Judgement.NOT_REQUIRED,
        words + (share ? "" : " " + quantity.phrase()) + ", asked for " + operator.askedFor() + " "
            + compared + (operator == RuleOperator.FROM ? " on." : "."));
  }

  private static String ofRating(
      RuleQuantity quantity, RuleLimit limit, String part, double rating) {
    return limit.value() == 100.0
        ? part + ", " + quantity.phrase()
        : part + ", which are " + limit.printed() + " of " + limit.words(rating, rating) + ", "
            + quantity.phrase();
  }

  private static Answer silent(String reason) {
    return new Answer(Judgement.DOES_NOT_APPLY, reason + ".");
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof SafetyRule that
        && statement.equals(that.statement)
        && Objects.equals(judging, that.judging)
        && judgedBy.equals(that.judgedBy);
  }

  @Override
  public int hashCode() {
    return Objects.hash(statement, judging, judgedBy);
  }

  /** {@return the rule in one line, such as "Hoisting by the hose: 29 CFR 1926.302(b)(6), construction"} */
  @Override
  public String toString() {
    return statement.title + ": " + statement.citation
        + (statement.scope.isEmpty() ? "" : ", " + statement.scope);
  }
}
