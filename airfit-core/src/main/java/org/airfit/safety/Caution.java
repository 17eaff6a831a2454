package org.airfit.safety;

import java.util.Objects;
import org.airfit.source.Source;

/**
 * A warning that goes with an answer, and what it rests on.
 *
 * <p>A caution never replaces local codes, the makers' ratings or licensed practice; it points at them.
 *
 * @param title what it is about, in a few words, such as "Hose failure protection"
 * @param text what to do or not to do, in one or two plain sentences
 * @param source the rule it rests on, or common practice
 */
public record Caution(String title, String text, Source source) {

  /** Against the wish to raise the supply where a restriction should go. */
  public static final Caution MORE_SUPPLY_PRESSURE = new Caution(
      "More pressure at the supply does not help",
      "Pressure above the tool's rating damages tools; too little flow starves them. A larger "
          + "coupler or hose does not push more"
          + " air into a tool than it takes at its pressure. Remove the restriction before raising the supply.",
      Source.commonPractice("over-pressure damages tools, under-flow starves them"));

  /** To whoever looks for leaks. */
  public static final Caution FEELING_FOR_LEAKS = new Caution(
      "Never feel for a leak with a hand",
      "Air from a small hole can go through the skin, and gets into the blood. Look for leaks with an ultrasonic"
          + " detector, with soapy water or with a ribbon on a stick, and wear eye protection.",
      Source.commonPractice("leak surveys"));

  /** Parts what is asked for from why it is asked for here. */
  private static final String HERE = " Here: ";

  /** A caution of a rule, with why it applies here. */
  static Caution of(String title, String demand, String reason, Source source) {
    return new Caution(title, demand + HERE + reason, source);
  }

  /** {@return the text without why it applies here} */
  public String demand() {
    int here = text.indexOf(HERE);
    return here < 0 ? text : text.substring(0, here);
  }

  /**
   * Checks the components.
   *
   * @param title what it is about, in a few words, such as "Hose failure protection"
   * @param text what to do or not to do, in one or two plain sentences
   * @param source the rule it rests on, or common practice
   * @throws IllegalArgumentException if {@code title} or {@code text} is blank
   */
  public Caution {
    Objects.requireNonNull(title, "title");
    Objects.requireNonNull(text, "text");
    if (title.isBlank() || text.isBlank()) {
      throw new IllegalArgumentException("title and text of a caution must say something, were \""
          + title + "\" and \"" + text + "\"");
    }
    Objects.requireNonNull(source, "source");
  }

  /** {@return the caution in one line, such as "Hose failure protection: … [29 CFR 1926.302(b)(7) (text of the rule)]"} */
  @Override
  public String toString() {
    return title + ": " + text + " [" + source + "]";
  }
}
