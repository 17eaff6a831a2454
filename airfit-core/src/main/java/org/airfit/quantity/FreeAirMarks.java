package org.airfit.quantity;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** The words in which people write free air: units of volume flow with the mark of a well-known reference state. */
final class FreeAirMarks {

  static final String ANR = "ANR";
  static final String NORMAL = "DIN 1343";
  static final String SCFM_60F = "60 °F";
  static final String SCFM_68F = "68 °F";
  static final String COMPRESSOR_INLET = "ISO 1217";

  /** How people mark a state behind a unit, and the name of that state. */
  private static final Map<String, String> MARKS = Map.ofEntries(
      Map.entry("ANR", ANR),
      Map.entry("ISO 8778", ANR),
      Map.entry("DIN 1343", NORMAL),
      Map.entry("normal", NORMAL),
      Map.entry("ISO 1217", COMPRESSOR_INLET),
      Map.entry("60 °F", SCFM_60F),
      Map.entry("60F", SCFM_60F),
      Map.entry("@60 °F", SCFM_60F),
      Map.entry("@60F", SCFM_60F),
      Map.entry("68 °F", SCFM_68F),
      Map.entry("68F", SCFM_68F),
      Map.entry("@68 °F", SCFM_68F),
      Map.entry("@68F", SCFM_68F));

  private static final Lexicon<String> STATES = new Lexicon<>();

  static {
    MARKS.forEach(STATES::add);
  }

  private FreeAirMarks() {}

  /** What a word stands for: a unit of volume flow and the name of the state it is counted at. */
  record Counted(VolumeFlowUnit unit, String state) {}

  /** The name of the well-known state that {@code mark} marks, or null if it marks none. */
  static @Nullable String stateMarked(String mark) {
    return STATES.find(mark);
  }

  static boolean isStandardCubicFoot(String state) {
    return state.equals(SCFM_60F) || state.equals(SCFM_68F);
  }

  static Map<String, Counted> words() {
    Map<String, Counted> words = new LinkedHashMap<>();
    words.put("scfm", new Counted(VolumeFlowUnit.CUBIC_FOOT_PER_MINUTE, SCFM_60F));
    words.put("scfh", new Counted(VolumeFlowUnit.CUBIC_FOOT_PER_HOUR, SCFM_60F));
    for (VolumeFlowUnit unit : VolumeFlowUnit.values()) {
      for (String word : plainWords(unit)) {
        MARKS.forEach((mark, state) -> words.put(word + mark, new Counted(unit, state)));
        if (word.startsWith("m³")) {
          words.put("N" + word, new Counted(unit, NORMAL));
        }
      }
    }
    MARKS.forEach((mark, state) -> {
      if (isStandardCubicFoot(state)) {
        words.put("scfm" + mark, new Counted(VolumeFlowUnit.CUBIC_FOOT_PER_MINUTE, state));
        words.put("scfh" + mark, new Counted(VolumeFlowUnit.CUBIC_FOOT_PER_HOUR, state));
      }
    });
    return words;
  }

  /** What to say to somebody who left the state open. */
  static Map<String, String> hints() {
    Map<String, String> hints = new LinkedHashMap<>();
    for (VolumeFlowUnit unit : VolumeFlowUnit.values()) {
      String cure = ": say \"" + unit.symbol() + " ANR\" or \"" + unit.symbol() + " DIN 1343\"";
      String unmarked = unit == VolumeFlowUnit.CUBIC_FOOT_PER_MINUTE
          ? ": say \"scfm\" where it is counted at 60 °F and 14.7 psia, \"scfm (68 °F)\" or \"cfm ANR\""
          : cure;
      for (String word : plainWords(unit)) {
        hints.put(word, "does not tell the reference state at which the air is counted" + unmarked);
        hints.put(
            word + "FAD",
            "is free air delivered, counted at the inlet of the compressor, wherever that stood: say \""
                + unit.symbol() + " ISO 1217\" if it was rated to that standard");
        hints.put("N" + word, "is counted at one state by some and at another by others" + cure);
        hints.put("S" + word, "is counted at one state by some and at another by others" + cure);
      }
    }
    return hints;
  }

  private static List<String> plainWords(VolumeFlowUnit unit) {
    List<String> words = new ArrayList<>(unit.scale().spellings());
    words.add(unit.symbol());
    return words;
  }
}
