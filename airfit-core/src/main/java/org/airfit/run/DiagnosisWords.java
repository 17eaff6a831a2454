package org.airfit.run;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.airfit.internal.Digits;
import org.airfit.quantity.PressureDrop;
import org.airfit.working.UnitSystem;

/** What a diagnosis says, in the words of whoever stands beside the run. */
final class DiagnosisWords {

  private DiagnosisWords() {}

  static List<String> of(
      DiagnosisVerdict verdict,
      List<Explanation> explanations,
      List<Explanation> alike,
      List<Contradiction> contradictions,
      Optional<Suspect> unmarked,
      UnitSystem units) {
    List<String> lines = new ArrayList<>();
    Explanation best = explanations.get(0);
    switch (verdict) {
      case FOUND ->
        lines.add(found(best, unmarked, units) + " This is " + Digits.percent(best.probability())
            + " probable, and the readings fit it.");
      case LIKELY ->
        lines.add("Most probably " + lower(found(best, unmarked, units)) + " That is "
            + Digits.percent(best.probability()) + " probable"
            + (best.fit().isPresent()
                ? best.fits() ? "; it is not firm yet." : ", but it does not fit the readings well."
                : "; nothing is left to test it by, so it is not firm."));
      case AS_TOLD ->
        lines.add((best.suspect().kind() == SuspectKind.NOTHING
                ? "The readings agree with what was told, "
                : found(best, unmarked, units) + " This is ")
            + Digits.percent(best.probability())
            + " probable. A fault that shifts no pressure by more than about "
            + units.say(PressureDrop.ofPascals(GaugeGrid.LEAST_EFFECT))
            + " is not ruled out, and counts as none here.");
      case SEVERAL ->
        lines.add("These cannot be told apart by these readings: "
            + alike.stream()
                .map(each -> each.suspect() + " (" + Digits.percent(each.probability()) + ")")
                .collect(Collectors.joining(", "))
            + ".");
      case NONE_FITS ->
        lines.add("No single fault explains the readings: something else is wrong,"
            + " or several things at once, or a reading was taken down wrong.");
      case CONTRADICTED ->
        lines.add("The readings contradict each other, so nothing else is judged firmly by them.");
    }
    contradictions.forEach(each -> lines.add(each.said(units)));
    return List.copyOf(lines);
  }

  private static String lower(String sentence) {
    return sentence.startsWith("The ") || sentence.startsWith("Air ") || sentence.startsWith("All ")
        ? Character.toLowerCase(sentence.charAt(0)) + sentence.substring(1)
        : sentence;
  }

  /** An explanation as a sentence. */
  private static String found(Explanation best, Optional<Suspect> unmarked, UnitSystem units) {
    String place = best.suspect().place();
    boolean isUnmarked = unmarked.filter(best.suspect()::equals).isPresent();
    String value = best.value(units);
    return switch (best.suspect().kind()) {
      case NOTHING -> "All is as told.";
      case PART ->
        isUnmarked
            ? "All else is as told, and " + place + " has a " + value + "."
            : "The air is held back by " + place + ", which lets less through than told: " + value
                + ".";
      case BORE ->
        isUnmarked
            ? "All else is as told, and " + place + " has a " + value + "."
            : "The air is held back by " + place + ", which is narrower inside than told: " + value
                + ".";
      case DROOP ->
        "The " + (place.equals(GaugeReading.SUPPLY) ? "" : "regulator ") + place
            + " holds less while air flows: " + value + ".";
      case LEAK -> "Air escapes behind " + place + ": at the pressure of the supply " + value + ".";
      case TOOL_AIR -> "The tool takes other air than told: " + value + ".";
      case GAUGE -> "The gauge is wrong: " + place + " " + value + ".";
      case OTHER -> "Something is wrong that is not in the list.";
    };
  }
}
