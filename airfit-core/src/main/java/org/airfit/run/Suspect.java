package org.airfit.run;

import java.util.Objects;

/**
 * One thing that may be other than told.
 *
 * @param kind what can be wrong with it
 * @param place the name of the element, "supply" of its droop, "tool" of its air, or the name of the gauge
 */
public record Suspect(SuspectKind kind, String place) {

  /** The place of the tool's air. */
  public static final String TOOL = "tool";

  /** The place of what concerns no single element. */
  static final String RUN = "run";

  /**
   * Checks the components.
   *
   * @param kind what can be wrong with it
   * @param place the name of the element, "supply" of its droop, "tool" of its air, or the name of the gauge
   * @throws IllegalArgumentException if {@code place} is blank
   */
  public Suspect {
    Objects.requireNonNull(kind, "kind");
    if (Objects.requireNonNull(place, "place").isBlank()) {
      throw new IllegalArgumentException("place of a suspect must say which, was blank");
    }
  }

  /**
   * Suspects a coupling, valve, filter or the like of letting too little through.
   *
   * @param element its name in the run
   * @return the suspect
   * @throws IllegalArgumentException if {@code element} is blank
   */
  public static Suspect part(String element) {
    return new Suspect(SuspectKind.PART, Objects.requireNonNull(element, "element"));
  }

  /**
   * Suspects the bore of a pipe, tube or hose.
   *
   * @param element its name in the run
   * @return the suspect
   * @throws IllegalArgumentException if {@code element} is blank
   */
  public static Suspect bore(String element) {
    return new Suspect(SuspectKind.BORE, Objects.requireNonNull(element, "element"));
  }

  /**
   * Suspects a regulator, or the supply, of holding too little while air flows.
   *
   * @param element its name in the run, or "supply"
   * @return the suspect
   * @throws IllegalArgumentException if {@code element} is blank
   */
  public static Suspect droop(String element) {
    return new Suspect(SuspectKind.DROOP, Objects.requireNonNull(element, "element"));
  }

  /**
   * Suspects a leak.
   *
   * @param element the name of the element behind which the air escapes
   * @return the suspect
   * @throws IllegalArgumentException if {@code element} is blank
   */
  public static Suspect leakBehind(String element) {
    return new Suspect(SuspectKind.LEAK, Objects.requireNonNull(element, "element"));
  }

  /** {@return the tool, suspected of taking other air than told} */
  public static Suspect toolAir() {
    return new Suspect(SuspectKind.TOOL_AIR, TOOL);
  }

  /** {@return the suspect in words, such as "bore of hose"} */
  @Override
  public String toString() {
    return switch (kind) {
      case NOTHING -> "all as told";
      case PART -> "restriction in " + place;
      case BORE -> "bore of " + place;
      case DROOP -> "droop of " + place;
      case LEAK -> "leak behind " + place;
      case TOOL_AIR -> "air that the tool takes";
      case GAUGE -> "error of " + place;
      case OTHER -> "something else";
    };
  }
}
