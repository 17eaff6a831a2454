package org.airfit.select;

import org.airfit.internal.Labels;
import org.airfit.source.Source;

/**
 * What a customer can be asked about a job, in the order in which questions that settle as much are asked.
 *
 * <p>Without the {@linkplain #isNecessary necessary} ones nothing can be chosen. All others may stay open: a rule then
 * says that somebody must be asked.
 */
public enum Topic {
  /** What the line carries. */
  MEDIUM(
      "What does the line carry?",
      "airfit advises on compressed air for tools only; anything else ends here, before it is connected",
      Source.derived("the laws of flow and the rules used here are those of compressed air"),
      "compressed air"),

  /** The air the tool takes. */
  AIR_NEEDED(
      "How much air does the tool take?",
      "the hose and the couplings must carry that much",
      Rule.AIR_AT_TOOL.source(),
      "22 scfm, 400 l/min, or avg 4 CFM"),

  /** The pressure the tool needs. */
  PRESSURE_NEEDED(
      "What pressure must the tool have while it works?",
      "below it the tool is weak, whatever the gauge at the supply shows",
      Rule.AIR_AT_TOOL.source(),
      "90 psig, or 6.2 bar(g)"),

  /** How the tool begins. */
  TOOL_INLET(
      "What thread does the inlet of the tool have?",
      "a plug or a hose must go onto it and seal",
      Rule.ENDS_MATE.source(),
      "1/4 NPT female"),

  /** The pressure at the supply. */
  SUPPLY(
      "What does the gauge at the supply show? If it moves, from what to what?",
      "the lowest decides whether the air is enough, the highest what the parts must stand",
      Rule.AIR_AT_TOOL.source(),
      "100 psig, or 95 to 120 psig"),

  /** How the piping ends. */
  OUTLET(
      "What thread does the pipe have where the hose goes on?",
      "the first part must go onto it and seal",
      Rule.ENDS_MATE.source(),
      "1/2 NPT female"),

  /** How much hose is needed. */
  REACH(
      "How far is it from the outlet to the work?",
      "the hose must reach, and a longer one loses more pressure",
      Rule.HOSE_REACHES.source(),
      "30 ft, or 10 m"),

  /** The share of the time that a tool runs, whose air is an average. */
  DUTY(
      "Which share of the time does the tool run?",
      "its air is an average: while it runs it takes that over this share, and the line must carry"
          + " so much",
      Rule.AIR_AT_TOOL.source(),
      "25 %, or 0.25"),

  /** The air of a tool where a range was told, or all that a flow may mean. */
  EXACT_AIR(
      "How much air does the tool take exactly, and where is that counted?",
      "somewhere between the flows that what was told may mean the line no longer carries it",
      Rule.AIR_AT_TOOL.source(),
      "11 scfm, or 5 L/s ANR"),

  /** The pressure a tool needs where a range was told. */
  EXACT_PRESSURE(
      "Which pressure exactly must the tool have while it works?",
      "somewhere in the range that was told the line no longer leaves it so much",
      Rule.AIR_AT_TOOL.source(),
      "90 psig, or 6.2 bar(g)"),

  /** What a regulator is set to where a range was told. */
  SETTING(
      "What is the regulator set to exactly, by its gauge while no air flows?",
      "somewhere in the range that was told it holds too little for the tool, or too much",
      Rule.AIR_AT_TOOL.source(),
      "90 psig, or 6.2 bar(g)"),

  /** The true bore of a hose that is there, of which only a name is known. */
  HOSE_BORE(
      "How wide is the hose inside, measured at its end?",
      "hoses of one name differ by so much that the air may be enough through one and not through"
          + " another",
      Rule.AIR_AT_TOOL.source(),
      "1/4 in, or 6.3 mm"),

  /** The length of a hose that is there, of which a range was told. */
  HOSE_LENGTH(
      "How long is the hose, measured from end to end?",
      "a longer one loses more pressure, and one that is too short does not reach",
      Rule.AIR_AT_TOOL.source(),
      "25 ft, or 7.6 m"),

  /** The air that others take behind a splitter, where a range was told. */
  AIR_OF_OTHERS(
      "How much air do the others who draw from there take while the tool works?",
      "their air goes through the same pipes and hoses, and what that loses is missing at the tool",
      Rule.AIR_AT_TOOL.source(),
      "15 scfm, or 7 L/s ANR"),

  /** The rating of a hose that is there. */
  HOSE_RATING(
      "Which highest pressure is printed on the hose?",
      "a hose must stand the highest pressure that can occur, and an old one is no stronger than"
          + " it was",
      Rule.PARTS_RATED.source(),
      "300 psig, or 20 bar(g)"),

  /** The rating of the socket of a coupling that is there. */
  SOCKET_RATING(
      "Which highest pressure is printed on the socket (coupler), the half with the locking balls, or told by its"
          + " maker?",
      "every part must stand the highest pressure that can occur, and an old one is no stronger"
          + " than it was",
      Rule.PARTS_RATED.source(),
      "300 psig, or 20 bar(g)"),

  /** The rating of the plug of a coupling that is there. */
  PLUG_RATING(
      "Which highest pressure is printed on the plug, the half that goes in, or told by its maker?",
      "every part must stand the highest pressure that can occur, and an old one is no stronger"
          + " than it was",
      Rule.PARTS_RATED.source(),
      "300 psig, or 20 bar(g)"),

  /** The rating of a filter, a regulator, a manifold or another part in the line that is there. */
  PART_RATING(
      "Which highest pressure is printed on it, or told by its maker?",
      "every part must stand the highest pressure that can occur, and a bowl or housing that is too"
          + " weak can burst",
      Rule.PARTS_RATED.source(),
      "150 psig, or 10 bar(g)"),

  /** What the tool does. */
  USE(
      "What does the tool do?",
      "a tool that hammers, blows, sprays, blasts or drives fasteners has rules and warnings of its own",
      Rule.SAFETY_RULES_ALLOW.source(),
      "hammers"),

  /** Whether the tool hangs on a whip hose. */
  WHIP_HOSE(
      "Does the tool hang on a short whip hose of its own?",
      "a coupling straight on a tool that hammers is shaken until it wears and lets go",
      Rule.WHIP_HOSE.source(),
      "yes"),

  /** The pressure at a blocked nozzle. */
  BLOCKED_NOZZLE(
      "What pressure does the maker tell for the nozzle of the gun when it is blocked?",
      "rules limit the pressure of a nozzle that is pressed against a hand",
      Rule.CLEANING_PRESSURE.source(),
      "28 psig, or 1.9 bar(g)"),

  /** The most the tool may see. */
  TOOL_RATING(
      "What is the highest pressure that the maker of the tool allows?",
      "a tool that takes no air has the whole pressure of the line on it",
      Rule.TOOL_RATED.source(),
      "110 psig, or 7.5 bar(g)"),

  /** The most that can stand in the line. */
  HIGHEST(
      "At what pressure does the compressor stop, or the relief valve open?",
      "every part must stand the highest pressure that can occur, not the usual one",
      Rule.PARTS_RATED.source(),
      "125 psig, or 8.6 bar(g)"),

  /** The most that can stand in the line of a compressor of which it is known when it stops. */
  RELIEF_VALVE(
      "At what pressure does the relief valve of the compressor open?",
      "should the compressor not stop, the pressure rises to that, and every part must stand it",
      Rule.PARTS_RATED.source(),
      "150 psig, or 10 bar(g)"),

  /** Whether a regulator holds the pressure. */
  REGULATOR(
      "Does a regulator hold the pressure at the supply?",
      "a regulator keeps the tool within its limit as long as it works; it can fail open",
      Rule.TOOL_RATED.source(),
      "yes"),

  /** What stands behind a failed regulator. */
  REGULATOR_FAILED(
      "What does the maker of the regulator tell of a failed one: how much stands behind it at most?",
      "without that, all that stands in front of the regulator counts",
      Rule.PARTS_RATED.source(),
      "110 psig, or 7.5 bar(g)"),

  /** By how much the regulator droops. */
  REGULATOR_DROOP(
      "By how much does the gauge behind the regulator fall while the tool works, and all others that draw air"
          + " through it?",
      "what the regulator droops is missing at the tool",
      Rule.AIR_AT_TOOL.source(),
      "5 psi, or 0.3 bar"),

  /** Where it will be used. */
  PLACE(
      "Where will it be used?",
      "the place decides of what the parts must be made",
      Rule.MATERIAL_SUITS.source(),
      "outdoors"),

  /** What it is hosed down with. */
  CLEANER(
      "What is it hosed down with?",
      "a caustic cleaner eats plain brass and aluminium (from memory)",
      Rule.MATERIAL_SUITS.source(),
      "water"),

  /** Whether the air carries oil. */
  AIR(
      "Is there a lubricator in the line?",
      "oil stays in hoses and couplings, and spoils paint later",
      Rule.AIR_KEPT_APART.source(),
      "dry"),

  /** Whether couplings are dropped. */
  DROPPED(
      "Do couplings fall on concrete?",
      "a coupling that falls on concrete must be of hardened or stainless steel",
      Rule.MATERIAL_SUITS.source(),
      "no"),

  /** Whether the hose is dragged. */
  DRAGGED(
      "Is the hose dragged over the floor and edges?",
      "an edge can pull back an open sleeve, and the coupling lets go",
      Rule.SLEEVE_GUARDED.source(),
      "no"),

  /** Whether couplings must be vented. */
  VENTED(
      "Must couplings let the air out before they come apart?",
      "a hose under pressure whips when its coupling comes apart",
      Rule.VENTED.source(),
      "no"),

  /** The profile the shop uses. */
  PROFILE(
      "Which profile do the couplings of this shop have?",
      "a socket takes the plugs of the profiles it is made for, and no others",
      Rule.PROFILE_MATES.source(),
      "the name of a profile"),

  /** Whether plugs of more profiles are in use. */
  PROFILES_IN_USE(
      "Plugs of which profiles must go into the socket at the outlet, all together?",
      "where several are in use, one universal socket may take them all",
      Rule.PROFILES_IN_USE.source(),
      "only one"),

  /** Whether the air is dried. */
  DRYER(
      "Does a dryer stand behind the compressor?",
      "without one, water collects in the pipe, and its lowest point needs a drain",
      BillExtras.DRAIN,
      "no"),

  /** How cold the parts get. */
  COLDEST(
      "How cold can it get where it is used?",
      "hoses and seals stiffen and crack below what their makers allow",
      Rule.TEMPERATURE_SUITS.source(),
      "-10 °C, or 14 °F"),

  /** How hot the parts get. */
  HOTTEST(
      "How hot can it get where it is used?",
      "hoses and seals soften above what their makers allow",
      Rule.TEMPERATURE_SUITS.source(),
      "50 °C, or 120 °F");

  private final String question;
  private final String why;
  private final Source source;
  private final String example;

  Topic(String question, String why, Source source, String example) {
    this.question = question;
    this.why = why;
    this.source = source;
    this.example = example;
  }

  /** {@return the question in words that a customer understands} */
  public String question() {
    return question;
  }

  /** {@return why it matters, in one sentence without a full stop} */
  public String why() {
    return why;
  }

  /** {@return what that rests on} */
  public Source source() {
    return source;
  }

  /** {@return what an answer may look like} */
  public String example() {
    return example;
  }

  /** {@return whether nothing can be chosen without it} The medium is not one of these, but comes before them all. */
  public boolean isNecessary() {
    return compareTo(AIR_NEEDED) >= 0 && compareTo(REACH) <= 0;
  }

  /** {@return whether each of several tools has an answer of its own} */
  public boolean isOfTool() {
    return switch (this) {
      case AIR_NEEDED,
          PRESSURE_NEEDED,
          TOOL_INLET,
          DUTY,
          EXACT_AIR,
          EXACT_PRESSURE,
          USE,
          WHIP_HOSE,
          BLOCKED_NOZZLE,
          TOOL_RATING -> true;
      default -> false;
    };
  }

  /**
   * {@return whether it is asked of a part that is there, or of the splitter that others take air from, by the name of its
   * slot}
   */
  public boolean isOfPart() {
    return switch (this) {
      case HOSE_BORE,
          HOSE_LENGTH,
          HOSE_RATING,
          AIR_OF_OTHERS,
          SOCKET_RATING,
          PLUG_RATING,
          PART_RATING -> true;
      default -> false;
    };
  }

  /** {@return whether it asks for the rating of a part that is there} */
  boolean isRating() {
    return switch (this) {
      case HOSE_RATING, SOCKET_RATING, PLUG_RATING, PART_RATING -> true;
      default -> false;
    };
  }

  /** {@return whether the answer is an amount with its unit, not a word} */
  public boolean isAmount() {
    return switch (this) {
      case AIR_NEEDED,
          PRESSURE_NEEDED,
          SUPPLY,
          REACH,
          DUTY,
          EXACT_AIR,
          EXACT_PRESSURE,
          SETTING,
          HOSE_BORE,
          HOSE_LENGTH,
          AIR_OF_OTHERS,
          HOSE_RATING,
          SOCKET_RATING,
          PLUG_RATING,
          PART_RATING,
          BLOCKED_NOZZLE,
          TOOL_RATING,
          HIGHEST,
          RELIEF_VALVE,
          REGULATOR_FAILED,
          REGULATOR_DROOP,
          COLDEST,
          HOTTEST -> true;
      default -> false;
    };
  }

  /**
   * Reads a topic.
   *
   * @param text the topic in words, as {@link #toString} prints it
   * @return the topic
   * @throws IllegalArgumentException if {@code text} is no topic
   */
  public static Topic parse(String text) {
    return Labels.parse("topic", text, values());
  }

  /** {@return the topic in words, such as "tool rating"} */
  @Override
  public String toString() {
    return Labels.of(this);
  }
}
