package org.airfit.safety;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;
import org.airfit.internal.NamedValues.Name;

/** A fact of a {@link Situation} that a rule may wait for or except, by the name it has in a table of rules. */
enum Fact {
  QUICK_COUPLERS(
      Situation.QUICK_COUPLERS, "quick couplers are in the line", "no quick coupler was named"),
  TOOL_ON_HOSE(
      Situation.TOOL_ON_HOSE, "a pneumatic tool hangs on a hose", "no tool on a hose was named"),
  PERCUSSION_TOOL(
      Situation.IMPACT_TOOL, "the tool is a percussion tool", "no percussion tool was named"),
  WHIP_HOSE(Situation.WHIP_HOSE, "a whip hose lies before the tool", "no whip hose was named"),
  AUTOMATIC_FEED(
      Situation.AUTOMATIC_FEED,
      "the tool feeds its fasteners by itself",
      "no tool with automatic feed was named"),
  CLEANING(Situation.CLEANING, "air is used for cleaning", "no cleaning was named"),
  FORMS_OR_MILL_SCALE(
      Situation.FORMS_OR_MILL_SCALE,
      "concrete forms, mill scale or the like are cleaned",
      "no forms or mill scale were named"),
  AIR_ON_CLOTHING(
      Situation.AIR_ON_CLOTHING,
      "air is blown on clothing that is worn",
      "no air on clothing was named"),
  BLASTING(Situation.BLASTING, "the air drives abrasive", "no blasting was named"),
  PAINTING(Situation.PAINTING, "the air sprays paint", "no painting was named"),
  LUBRICATED_LINE(
      Situation.LUBRICATED_LINE, "the line is lubricated", "no lubricated line was named"),
  PLASTIC_PIPE(
      Situation.PLASTIC_PIPE,
      "plastic pipe or tube is in the line; find out what plastic it is and what it is made for",
      "no plastic pipe was named"),
  HOISTED_BY_HOSE(Situation.HOISTED_BY_HOSE, "the tool hangs by its hose", "no hoisting was named"),
  MAINTENANCE(
      Situation.MAINTENANCE,
      "somebody works on the line or the machine",
      "no work on the line itself was named"),
  MINE(Situation.MINE, "the line is in a mine", "no mine was named"),
  MILITARY_CONSTRUCTION(
      Situation.MILITARY_CONSTRUCTION,
      "it is military construction",
      "no military construction was named");

  private final Name<Boolean> name;
  private final String told;
  private final String untold;

  Fact(Name<Boolean> name, String told, String untold) {
    this.name = name;
    this.told = told;
    this.untold = untold;
  }

  boolean isTold(Situation situation) {
    return situation.is(name);
  }

  /** That it is so, without a full stop. */
  String told() {
    return told;
  }

  /** Whether nobody knows if it is so. */
  boolean isUnknown(Situation situation) {
    return !isTold(situation) && situation.isUnknown(name);
  }

  /** What to ask, behind "ask whether". */
  String asked() {
    int remark = told.indexOf(';');
    return remark < 0 ? told : told.substring(0, remark);
  }

  /** The name it has in a table of rules. */
  String label() {
    return name.text();
  }

  /** That it was not told, without a full stop. */
  String untold() {
    return untold;
  }

  /** Reads facts, one after the other with semicolons between; none from a blank text. */
  static List<Fact> parse(String text) {
    List<Fact> facts = new ArrayList<>();
    for (String part : text.split(";", -1)) {
      if (!text.isBlank()) {
        facts.add(one(part.strip()));
      }
    }
    return List.copyOf(facts);
  }

  private static Fact one(String text) {
    for (Fact fact : values()) {
      if (fact.name.text().equalsIgnoreCase(text)) {
        return fact;
      }
    }
    throw new IllegalArgumentException("was \"" + text + "\"; accepted, with semicolons between: "
        + Arrays.stream(values()).map(fact -> fact.name.text()).collect(Collectors.joining(", ")));
  }
}
