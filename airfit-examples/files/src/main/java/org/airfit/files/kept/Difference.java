package org.airfit.files.kept;

import static org.airfit.files.kept.DifferenceWords.by;
import static org.airfit.files.kept.DifferenceWords.price;
import static org.airfit.files.kept.DifferenceWords.told;
import static org.airfit.files.kept.DifferenceWords.wasIs;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.Money;
import org.airfit.select.RuleOutcome;
import org.airfit.working.UnitSystem;

/**
 * One difference between two answers that were kept: of what they rest on, or of what was answered.
 *
 * <p>{@code then} is the earlier answer, {@code now} the later one. A text that was not told is blank.
 */
public sealed interface Difference {

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

  /** A difference of what the answers rest on. */
  sealed interface OfInput extends Difference {

    @Override
    default boolean isOfInput() {
      return true;
    }
  }

  /**
   * Another version of the library answered.
   *
   * @param then the version then
   * @param now the version now
   */
  record OtherLibrary(String then, String now) implements OfInput {

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
  record OtherSupply(GaugePressure then, GaugePressure now) implements OfInput {

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
  record AskedOtherwise(String field, String then, String now) implements OfInput {

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
  record OtherProfile(String profile, String field, String then, String now) implements OfInput {

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
  record OtherPrice(String part, Optional<Money> then, Optional<Money> now) implements OfInput {

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
      implements OfInput {

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
  record OtherPart(String part, String field, String then, String now) implements OfInput {

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
  record PartCameOrWent(String part, boolean isNew) implements OfInput {

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
  record OtherArticles(int changed, int gone, int added) implements OfInput {

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
   * The first proposal, or the nearest miss, takes something else beside its parts, such as other clamps.
   *
   * @param listed whether the parts are proposals or misses
   * @param then the line of the bill then: pieces, name, number and price; blank where there was none
   * @param now the line now; blank where there is none
   */
  record OtherBill(Listed listed, String then, String now) implements Difference {

    /**
     * Refuses what is null.
     *
     * @param listed whether the parts are proposals or misses
     * @param then the line of the bill then: pieces, name, number and price; blank where there was none
     * @param now the line now; blank where there is none
     */
    public OtherBill {
      Objects.requireNonNull(listed, "listed");
      Objects.requireNonNull(then, "then");
      Objects.requireNonNull(now, "now");
    }

    @Override
    public String inWords(UnitSystem units) {
      String with = listed.with() + ", the bill of materials ";
      if (then.isBlank()) {
        return with + "has " + now + ", which it had not then.";
      }
      return now.isBlank()
          ? with + "no longer has " + then + "."
          : with + "had " + then + " then, has " + now + " now.";
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
   * What arrives at a tool was enough and is not any more, or the other way round.
   *
   * @param line with which parts, such as "Without new parts"
   * @param tool the tool
   * @param arrives the pressure there now; empty where no air arrives
   * @param needed what the tool needs now
   */
  record EnoughTurned(
      String line, String tool, Optional<GaugePressure> arrives, GaugePressure needed)
      implements Difference {

    /**
     * Refuses what is null.
     *
     * @param line with which parts, such as "Without new parts"
     * @param tool the tool
     * @param arrives the pressure there now; empty where no air arrives
     * @param needed what the tool needs now
     */
    public EnoughTurned {
      Objects.requireNonNull(line, "line");
      Objects.requireNonNull(tool, "tool");
      Objects.requireNonNull(arrives, "arrives");
      Objects.requireNonNull(needed, "needed");
    }

    /** {@return whether it is enough now} */
    public boolean isEnough() {
      return isEnough(arrives, needed);
    }

    /** Whether what arrives, or nothing, is as much as is needed. */
    static boolean isEnough(Optional<GaugePressure> arrives, GaugePressure needed) {
      return arrives.filter(there -> there.compareTo(needed) >= 0).isPresent();
    }

    @Override
    public String inWords(UnitSystem units) {
      String who = tool.isBlank() ? "the tool" : tool;
      return line + ", " + who
          + (isEnough() ? " has enough now, which it had not then" : " no longer has enough")
          + ": it needs " + units.say(needed) + ", and "
          + arrives
              .map(there -> units.say(there, needed) + " arrive.")
              .orElse("its air does not pass.");
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
}
