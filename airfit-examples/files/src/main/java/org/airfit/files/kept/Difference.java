package org.airfit.files.kept;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.Length;
import org.airfit.quantity.LengthUnit;
import org.airfit.quantity.Money;
import org.airfit.quantity.PressureDrop;
import org.airfit.quantity.QuantityFormatException;
import org.airfit.select.RuleOutcome;
import org.airfit.working.UnitSystem;

/**
 * One difference between two answers that were kept: of what they rest on, or of what was answered.
 *
 * <p>{@code then} is the earlier answer, {@code now} the later one. A text that was not told is blank.
 */
public sealed interface Difference {

  /** The most digits of a number that is told as it stands. */
  int TYPED_DIGITS = 6;

  /** The digits of a number that was computed. */
  int SHOWN_DIGITS = 5;

  /** {@return whether it is one of what the answers rest on: library, question, reference set, catalogue} */
  default boolean isOfInput() {
    return false;
  }

  /**
   * Tells the difference.
   *
   * @param units the units of pressures
   * @return a sentence
   */
  String inWords(UnitSystem units);

  /**
   * Another version of the library answered.
   *
   * @param then the version then
   * @param now the version now
   */
  record OtherLibrary(String then, String now) implements Difference {

    /**
     * Refuses what is null.
     *
     * @param then the version then
     * @param now the version now
     */
    public OtherLibrary {
      Objects.requireNonNull(then, "then");
      Objects.requireNonNull(now, "now");
    }

    @Override
    public boolean isOfInput() {
      return true;
    }

    @Override
    public String inWords(UnitSystem units) {
      return "Another version of the library: " + then + " then, " + now + " now.";
    }
  }

  /**
   * The pressure of the supply is another one.
   *
   * @param then the pressure then
   * @param now the pressure now
   */
  record OtherSupply(GaugePressure then, GaugePressure now) implements Difference {

    /**
     * Refuses what is null.
     *
     * @param then the pressure then
     * @param now the pressure now
     */
    public OtherSupply {
      Objects.requireNonNull(then, "then");
      Objects.requireNonNull(now, "now");
    }

    @Override
    public boolean isOfInput() {
      return true;
    }

    @Override
    public String inWords(UnitSystem units) {
      return "The supply " + (now.compareTo(then) < 0 ? "fell" : "rose") + " by "
          + by(then, now, units) + ", from " + units.say(then, now) + " to " + units.say(now, then)
          + ".";
    }
  }

  /**
   * Something else was asked.
   *
   * @param field the field of the job file
   * @param then what it said then; blank where nothing
   * @param now what it says now; blank where nothing
   */
  record AskedOtherwise(String field, String then, String now) implements Difference {

    /**
     * Refuses what is null.
     *
     * @param field the field of the job file
     * @param then what it said then; blank where nothing
     * @param now what it says now; blank where nothing
     */
    public AskedOtherwise {
      Objects.requireNonNull(field, "field");
      Objects.requireNonNull(then, "then");
      Objects.requireNonNull(now, "now");
    }

    @Override
    public boolean isOfInput() {
      return true;
    }

    @Override
    public String inWords(UnitSystem units) {
      return "In the question, the field \"" + field + "\"" + wasIs(then, now, units);
    }
  }

  /**
   * A profile of the reference set is another one, came or went.
   *
   * @param profile its id; blank where it is something of the set as a whole
   * @param field what of it, such as "dimensions.tip diameter.mean"; blank for the whole profile
   * @param then what it was then; blank where it was not there
   * @param now what it is now; blank where it is not there
   */
  record OtherProfile(String profile, String field, String then, String now) implements Difference {

    /**
     * Refuses what is null.
     *
     * @param profile its id; blank where it is something of the set as a whole
     * @param field what of it; blank for the whole profile
     * @param then what it was then; blank where it was not there
     * @param now what it is now; blank where it is not there
     */
    public OtherProfile {
      Objects.requireNonNull(profile, "profile");
      Objects.requireNonNull(field, "field");
      Objects.requireNonNull(then, "then");
      Objects.requireNonNull(now, "now");
    }

    @Override
    public boolean isOfInput() {
      return true;
    }

    @Override
    public String inWords(UnitSystem units) {
      if (field.isEmpty()) {
        return "The reference set " + (now.isEmpty() ? "has no profile " : "has a new profile, ")
            + profile + (now.isEmpty() ? " any more." : ".");
      }
      return "In the reference set, the field \"" + field + "\""
          + (profile.isEmpty() ? "" : " of the profile " + profile) + wasIs(then, now, units);
    }
  }

  /**
   * A part has another price.
   *
   * @param part name and id
   * @param then the price then; empty where it was not known
   * @param now the price now; empty where it is not known
   */
  record OtherPrice(String part, Optional<Money> then, Optional<Money> now) implements Difference {

    /**
     * Refuses what is null.
     *
     * @param part name and id
     * @param then the price then; empty where it was not known
     * @param now the price now; empty where it is not known
     */
    public OtherPrice {
      Objects.requireNonNull(part, "part");
      Objects.requireNonNull(then, "then");
      Objects.requireNonNull(now, "now");
    }

    @Override
    public boolean isOfInput() {
      return true;
    }

    @Override
    public String inWords(UnitSystem units) {
      return "In the catalogue, " + price(part, part, then, now);
    }
  }

  /**
   * A part is rated for another pressure.
   *
   * @param part name and id
   * @param then the rating then; empty where it was not known
   * @param now the rating now; empty where it is not known
   */
  record OtherRating(String part, Optional<GaugePressure> then, Optional<GaugePressure> now)
      implements Difference {

    /**
     * Refuses what is null.
     *
     * @param part name and id
     * @param then the rating then; empty where it was not known
     * @param now the rating now; empty where it is not known
     */
    public OtherRating {
      Objects.requireNonNull(part, "part");
      Objects.requireNonNull(then, "then");
      Objects.requireNonNull(now, "now");
    }

    @Override
    public boolean isOfInput() {
      return true;
    }

    @Override
    public String inWords(UnitSystem units) {
      return "In the catalogue, the rating of " + part + " was "
          + then.map(units::say).orElse("not told") + ", is "
          + now.map(units::say).orElse("not told") + " now.";
    }
  }

  /**
   * Something else of a part is another.
   *
   * @param part name and id
   * @param field the field, as in a catalogue file
   * @param then what it was then; blank where it was not told
   * @param now what it is now; blank where it is not told
   */
  record OtherPart(String part, String field, String then, String now) implements Difference {

    /**
     * Refuses what is null.
     *
     * @param part name and id
     * @param field the field, as in a catalogue file
     * @param then what it was then; blank where it was not told
     * @param now what it is now; blank where it is not told
     */
    public OtherPart {
      Objects.requireNonNull(part, "part");
      Objects.requireNonNull(field, "field");
      Objects.requireNonNull(then, "then");
      Objects.requireNonNull(now, "now");
    }

    @Override
    public boolean isOfInput() {
      return true;
    }

    @Override
    public String inWords(UnitSystem units) {
      return "In the catalogue, the field \"" + field + "\" of " + part + wasIs(then, now, units);
    }
  }

  /**
   * A part that one of the answers proposes came or went.
   *
   * @param part name and id
   * @param isNew whether it was not in the catalogue then; else it is not in it now
   */
  record PartCameOrWent(String part, boolean isNew) implements Difference {

    /**
     * Refuses what is null.
     *
     * @param part name and id
     * @param isNew whether it was not in the catalogue then; else it is not in it now
     */
    public PartCameOrWent {
      Objects.requireNonNull(part, "part");
    }

    @Override
    public boolean isOfInput() {
      return true;
    }

    @Override
    public String inWords(UnitSystem units) {
      return isNew
          ? "The catalogue has a new part, " + part + "."
          : "The catalogue has no " + part + " any more.";
    }
  }

  /**
   * Articles that none of the answers proposes are others.
   *
   * @param changed how many are in both catalogues and not the same
   * @param gone how many were in that of then only
   * @param added how many are in that of now only
   */
  record OtherArticles(int changed, int gone, int added) implements Difference {

    @Override
    public boolean isOfInput() {
      return true;
    }

    @Override
    public String inWords(UnitSystem units) {
      return "Of the articles of the catalogue that neither answer proposes, " + changed
          + " changed, " + gone + " went and " + added + " came.";
    }
  }

  /**
   * A text is another one in something that has no sentence of its own, such as the order of parts.
   *
   * @param what the question, the reference set, the catalogue or the answer
   * @param isOfInput whether it is not the answer
   */
  record OtherText(String what, boolean isOfInput) implements Difference {

    /**
     * Refuses what is null.
     *
     * @param what the question, the reference set, the catalogue or the answer
     * @param isOfInput whether it is not the answer
     */
    public OtherText {
      Objects.requireNonNull(what, "what");
    }

    @Override
    public String inWords(UnitSystem units) {
      return "The " + what
          + " is not the same in something that has no sentence here, such as an order or a wording.";
    }
  }

  /**
   * The plug is told to be something else.
   *
   * @param then the verdict then, with the profile; blank where none was at hand
   * @param now the verdict now, with the profile; blank where none is at hand
   */
  record OtherPlug(String then, String now) implements Difference {

    /**
     * Refuses what is null.
     *
     * @param then the verdict then, with the profile; blank where none was at hand
     * @param now the verdict now, with the profile; blank where none is at hand
     */
    public OtherPlug {
      Objects.requireNonNull(then, "then");
      Objects.requireNonNull(now, "now");
    }

    @Override
    public String inWords(UnitSystem units) {
      return "The verdict on what is at hand was " + told(then) + ", is " + told(now) + " now.";
    }
  }

  /**
   * The answer turned, such as from parts that fit to none.
   *
   * @param then what became of the job then, in words
   * @param now what becomes of it now, in words
   * @param toGive what would have to give now; empty where parts fit
   */
  record VerdictTurned(String then, String now, List<String> toGive) implements Difference {

    /**
     * Copies the list; refuses what is null.
     *
     * @param then what became of the job then, in words
     * @param now what becomes of it now, in words
     * @param toGive what would have to give now; empty where parts fit
     */
    public VerdictTurned {
      Objects.requireNonNull(then, "then");
      Objects.requireNonNull(now, "now");
      toGive = List.copyOf(Objects.requireNonNull(toGive, "toGive"));
    }

    @Override
    public String inWords(UnitSystem units) {
      return "The answer turned: then " + then + ", now " + now + "."
          + (toGive.isEmpty() ? "" : " " + String.join(" ", toGive));
    }
  }

  /** What the lists of parts of two answers are: proposals, or misses where nothing fits. */
  enum Listed {
    /** Both list proposals. */
    PROPOSALS(false, false),
    /** Both list misses. */
    MISSES(true, true),
    /** Proposals were listed then, misses are now. */
    MISSES_AFTER_PROPOSALS(false, true),
    /** Misses were listed then, proposals are now. */
    PROPOSALS_AFTER_MISSES(true, false);

    private final boolean wereMisses;
    private final boolean areMisses;

    Listed(boolean wereMisses, boolean areMisses) {
      this.wereMisses = wereMisses;
      this.areMisses = areMisses;
    }

    static Listed of(boolean wereMisses, boolean areMisses) {
      if (wereMisses) {
        return areMisses ? MISSES : PROPOSALS_AFTER_MISSES;
      }
      return areMisses ? MISSES_AFTER_PROPOSALS : PROPOSALS;
    }

    private boolean isTurned() {
      return wereMisses != areMisses;
    }

    private static String first(boolean isMiss) {
      return isMiss ? "nearest miss" : "first proposal";
    }

    /** Such as "With the first proposal". */
    String with() {
      return "With the " + first(areMisses)
          + (isTurned() ? " now and the " + first(wereMisses) + " then" : "");
    }

    private String other() {
      if (isTurned()) {
        return "The " + first(areMisses) + " is not the " + first(wereMisses) + " of then";
      }
      return areMisses ? "Another miss is nearest" : "Another proposal is first";
    }

    private String behind() {
      if (isTurned()) {
        return "Behind the " + first(wereMisses) + " then and the " + first(areMisses) + " now";
      }
      return areMisses ? "Of the misses behind the nearest" : "Of the proposals behind the first";
    }
  }

  /**
   * Another proposal is first, or another miss nearest.
   *
   * @param listed whether the parts are proposals or misses
   * @param then the parts of the first then, name and id
   * @param now the parts of the first now, name and id
   */
  record OtherFirst(Listed listed, List<String> then, List<String> now) implements Difference {

    /**
     * Copies the lists; refuses what is null.
     *
     * @param listed whether the parts are proposals or misses
     * @param then the parts of the first then, name and id
     * @param now the parts of the first now, name and id
     */
    public OtherFirst {
      Objects.requireNonNull(listed, "listed");
      then = List.copyOf(Objects.requireNonNull(then, "then"));
      now = List.copyOf(Objects.requireNonNull(now, "now"));
    }

    @Override
    public String inWords(UnitSystem units) {
      List<String> gone = without(then, now);
      List<String> added = without(now, then);
      if (gone.isEmpty() || added.isEmpty()) {
        return listed.other() + ": " + String.join(", ", now) + "; then it was "
            + String.join(", ", then) + ".";
      }
      return listed.other() + ": " + String.join(", ", added)
          + (added.size() == 1 ? " stands" : " stand") + " in the place of "
          + String.join(", ", gone) + ".";
    }

    private static List<String> without(List<String> all, List<String> others) {
      List<String> rest = new ArrayList<>(all);
      others.forEach(rest::remove);
      return rest;
    }
  }

  /**
   * The first proposal, or the nearest miss, costs more or less.
   *
   * @param listed whether the parts are proposals or misses
   * @param then its price then; empty where it was not known
   * @param now its price now; empty where it is not known
   */
  record OtherTotal(Listed listed, Optional<Money> then, Optional<Money> now)
      implements Difference {

    /**
     * Refuses what is null.
     *
     * @param listed whether the parts are proposals or misses
     * @param then its price then; empty where it was not known
     * @param now its price now; empty where it is not known
     */
    public OtherTotal {
      Objects.requireNonNull(listed, "listed");
      Objects.requireNonNull(then, "then");
      Objects.requireNonNull(now, "now");
    }

    @Override
    public String inWords(UnitSystem units) {
      return price(
          "The " + Listed.first(listed.wereMisses),
          "The " + Listed.first(listed.areMisses),
          then,
          now);
    }
  }

  /**
   * Another pressure arrives at a tool.
   *
   * @param line with which parts, such as "With the first proposal"
   * @param tool the tool
   * @param then the pressure then; empty where no air arrived
   * @param now the pressure now; empty where no air arrives
   */
  record OtherPressure(
      String line, String tool, Optional<GaugePressure> then, Optional<GaugePressure> now)
      implements Difference {

    /**
     * Refuses what is null.
     *
     * @param line with which parts, such as "With the first proposal"
     * @param tool the tool
     * @param then the pressure then; empty where no air arrived
     * @param now the pressure now; empty where no air arrives
     */
    public OtherPressure {
      Objects.requireNonNull(line, "line");
      Objects.requireNonNull(tool, "tool");
      Objects.requireNonNull(then, "then");
      Objects.requireNonNull(now, "now");
    }

    @Override
    public String inWords(UnitSystem units) {
      String where = "at " + (tool.isBlank() ? "the tool" : tool);
      if (then.isPresent() && now.isPresent()) {
        boolean isLess = now.get().compareTo(then.get()) < 0;
        return line + ", the pressure " + where + " is " + by(then.get(), now.get(), units)
            + (isLess ? " lower" : " higher") + " than then: " + units.say(then.get(), now.get())
            + " then, " + units.say(now.get(), then.get()) + " now.";
      }
      return now.isPresent()
          ? line + ", " + units.say(now.get()) + " arrive " + where
              + "; then the air asked for did not pass."
          : line + ", the air asked for does not arrive " + where + "; then "
              + then.map(pressure -> units.say(pressure) + " arrived").orElse("it did not either")
              + ".";
    }
  }

  /**
   * Something else is the biggest restriction.
   *
   * @param line with which parts, such as "With the first proposal"
   * @param tool the way to which tool
   * @param then what it was then; blank where there was none
   * @param now what it is now; blank where there is none
   */
  record OtherRestriction(String line, String tool, String then, String now) implements Difference {

    /**
     * Refuses what is null.
     *
     * @param line with which parts, such as "With the first proposal"
     * @param tool the way to which tool
     * @param then what it was then; blank where there was none
     * @param now what it is now; blank where there is none
     */
    public OtherRestriction {
      Objects.requireNonNull(line, "line");
      Objects.requireNonNull(tool, "tool");
      Objects.requireNonNull(then, "then");
      Objects.requireNonNull(now, "now");
    }

    @Override
    public String inWords(UnitSystem units) {
      return line + ", " + (now.isBlank() ? "nothing" : now) + " is now the biggest restriction"
          + (tool.isBlank() ? "" : " on the way to " + tool) + "; then it was "
          + (then.isBlank() ? "nothing" : then) + ".";
    }
  }

  /**
   * A rule says something else of the first proposal, or the same for another reason.
   *
   * @param rule its title
   * @param then what it said then; blank where there was no such rule
   * @param now what it says now; blank where there is no such rule
   * @param reason why it says so now
   */
  record RuleTurned(String rule, String then, String now, String reason) implements Difference {

    /**
     * Refuses what is null.
     *
     * @param rule its title
     * @param then what it said then; blank where there was no such rule
     * @param now what it says now; blank where there is no such rule
     * @param reason why it says so now
     */
    public RuleTurned {
      Objects.requireNonNull(rule, "rule");
      Objects.requireNonNull(then, "then");
      Objects.requireNonNull(now, "now");
      Objects.requireNonNull(reason, "reason");
    }

    @Override
    public String inWords(UnitSystem units) {
      if (then.equals(now)) {
        return "The rule \"" + rule + "\" " + is(now) + ", as then, for another reason: " + reason;
      }
      return "The rule \"" + rule + "\" " + was(then) + ", " + isNow(now)
          + (reason.isBlank() ? "." : ": " + reason);
    }

    private static String was(String outcome) {
      if (outcome.equals(RuleOutcome.DOES_NOT_APPLY.toString())) {
        return "did not apply";
      }
      return "was " + words(outcome);
    }

    private static String is(String outcome) {
      return outcome.equals(RuleOutcome.DOES_NOT_APPLY.toString())
          ? outcome
          : "is " + words(outcome);
    }

    private static String isNow(String outcome) {
      return outcome.equals(RuleOutcome.MET_WHILE_REGULATED.toString())
          ? "is now " + outcome
          : is(outcome) + " now";
    }

    private static String words(String outcome) {
      return outcome.equals(RuleOutcome.UNMET.toString()) ? "not met" : told(outcome);
    }
  }

  /**
   * A caution is new, is not told any more, or says something else.
   *
   * @param title what it is about
   * @param then what it said then; blank where it was not told
   * @param now what it says now; blank where it is not told
   */
  record OtherCaution(String title, String then, String now) implements Difference {

    /**
     * Refuses what is null.
     *
     * @param title what it is about
     * @param then what it said then; blank where it was not told
     * @param now what it says now; blank where it is not told
     */
    public OtherCaution {
      Objects.requireNonNull(title, "title");
      Objects.requireNonNull(then, "then");
      Objects.requireNonNull(now, "now");
    }

    @Override
    public String inWords(UnitSystem units) {
      if (then.isBlank()) {
        return "A new caution, " + title + ": " + now;
      }
      return now.isBlank()
          ? "A caution is not told any more, " + title + ": " + then
          : "A caution says something else, " + title + ": " + now;
    }
  }

  /**
   * The proposals behind the first, or the misses behind the nearest, are others.
   *
   * @param listed whether the parts are proposals or misses
   * @param gone how many were listed then only
   * @param added how many are listed now only
   */
  record OtherProposals(Listed listed, int gone, int added) implements Difference {

    /**
     * Refuses what is null.
     *
     * @param listed whether the parts are proposals or misses
     * @param gone how many were listed then only
     * @param added how many are listed now only
     */
    public OtherProposals {
      Objects.requireNonNull(listed, "listed");
    }

    @Override
    public String inWords(UnitSystem units) {
      return listed.behind() + ", " + gone + " went and " + added + " came.";
    }
  }

  private static String told(String text) {
    return text.isBlank() ? "not told" : text;
  }

  /** By how much two pressures differ, as far as it can be seen in the digits of the units. */
  private static String by(GaugePressure then, GaugePressure now, UnitSystem units) {
    PressureDrop difference = PressureDrop.ofPascals(Math.abs(now.pascals() - then.pascals()));
    return units.say(difference);
  }

  private static String price(
      String before, String after, Optional<Money> then, Optional<Money> now) {
    boolean isSame = before.equals(after);
    if (then.isPresent()
        && now.isPresent()
        && then.get().currency().equals(now.get().currency())) {
      boolean isMore = now.get().compareTo(then.get()) > 0;
      Money difference = new Money(
          now.get().amount().subtract(then.get().amount()).abs(), now.get().currency());
      return after + " costs " + difference.shown() + (isMore ? " more" : " less") + " than "
          + (isSame ? "" : inside(before) + " ") + "then: " + then.get().shown() + " then, "
          + now.get().shown() + " now.";
    }
    return before + " cost " + price(then) + " then, " + (isSame ? "" : inside(after) + " ")
        + "costs " + price(now) + " now.";
  }

  private static String price(Optional<Money> price) {
    return price.map(Money::shown).orElse("an amount that is not known");
  }

  private static String inside(String subject) {
    return subject.substring(0, 1).toLowerCase(Locale.ROOT) + subject.substring(1);
  }

  private static String wasIs(String then, String now, UnitSystem units) {
    String before = then;
    String after = now;
    if (isLong(then) || isLong(now)) {
      before = rounded(then, units);
      after = rounded(now, units);
      if (before.equals(after)) {
        before = then;
        after = now;
      }
    }
    return " was " + quoted(before) + ", is " + quoted(after) + " now.";
  }

  /** Words stand in quotation marks, so that they read as what a field says; numbers do not. */
  private static String quoted(String text) {
    return text.isBlank() || text.equals("true") || text.equals("false") || isNumber(text)
        ? told(text)
        : "\"" + text + "\"";
  }

  private static boolean isNumber(String text) {
    char first = text.charAt(0);
    return first == '-' || (first >= '0' && first <= '9');
  }

  /** The number in front of a unit; empty where there is none. */
  private static Optional<BigDecimal> number(String text) {
    int end = text.indexOf(' ');
    try {
      return Optional.of(new BigDecimal(end < 0 ? text : text.substring(0, end)));
    } catch (NumberFormatException e) {
      return Optional.empty();
    }
  }

  /** Whether a number has more digits than anybody types: then it was computed. */
  private static boolean isLong(String text) {
    return number(text).filter(number -> number.precision() > TYPED_DIGITS).isPresent();
  }

  private static String rounded(String text, UnitSystem units) {
    Optional<BigDecimal> number = number(text);
    if (number.isEmpty()) {
      return text;
    }
    try {
      Length length = Length.parse(text);
      LengthUnit unit = length.metres() < 1.0
          ? units == UnitSystem.SI ? LengthUnit.MILLIMETRE : LengthUnit.INCH
          : units == UnitSystem.SI ? LengthUnit.METRE : LengthUnit.FOOT;
      return digits(BigDecimal.valueOf(length.in(unit))) + " " + unit.symbol();
    } catch (QuantityFormatException e) {
      int end = text.indexOf(' ');
      return digits(number.get()) + (end < 0 ? "" : text.substring(end));
    }
  }

  private static String digits(BigDecimal number) {
    return number.round(new MathContext(SHOWN_DIGITS)).stripTrailingZeros().toPlainString();
  }
}
