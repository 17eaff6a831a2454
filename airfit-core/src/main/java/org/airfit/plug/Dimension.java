package org.airfit.plug;

import java.util.Arrays;
import java.util.Objects;
import java.util.stream.Collectors;
import org.airfit.measure.Access;
import org.airfit.measure.Wear;

/**
 * What can be measured on the outside of a plug, and its bore.
 *
 * <pre>
 *  tip face                                             stop face
 *    |&lt;------------------------ L_i ------------------------&gt;|
 *    |&lt;---------- L_g -----------&gt;|&lt;-- W_g --&gt;|              |
 *    |&lt;---- L_c ----&gt;|            |           |              |
 *    |               |   ________ |           | ____________ |
 *    |               |  /        \|           |/            ||
 *    |_______________|_/          |           |             ||
 *    |     tip       |   collar   |___________|  shoulder   || body
 *    |     D_t       |    D_c     |   D_g     |    D_s      ||
 *  ==|===============|============|===========|=============||==== bore d_b
 * </pre>
 *
 * <p>The definitions are this project's own, drawn from the common features of ball-locked plugs.
 */
public enum Dimension {
  /** Diameter of the cylinder that the seal of the socket grips. */
  TIP_DIAMETER(
      "D_t",
      "tip diameter",
      "the outside diameter of the cylinder that the socket's seal grips",
      "outside jaws, three readings 120° apart; take the mean",
      "the seal of the socket grips it",
      Access.OUTSIDE,
      Wear.SHRINKS,
      6.5,
      20.0),
  /** Largest diameter in front of the locking groove. */
  COLLAR_DIAMETER(
      "D_c",
      "collar diameter",
      "the largest diameter between the tip and the locking groove",
      "outside jaws",
      "it must pass the balls, and they lock behind it",
      Access.OUTSIDE,
      Wear.SHRINKS,
      10.0,
      26.0),
  /** Tip face to the wall of the locking groove that carries the balls. */
  TIP_LENGTH(
      "L_g",
      "tip length",
      "from the tip face to the groove wall the balls push against, the rear edge of the collar",
      "step faces or depth rod on the edge, not on the rounding; a length taken over a ball in the groove is another "
          + "length",
      "it sets where the balls find the groove",
      Access.STEP,
      Wear.SHRINKS,
      8.0,
      40.0),
  /** Tip face to the face that stops against the socket. */
  INSERTION_LENGTH(
      "L_i",
      "insertion length",
      "from the tip face to the face that stops against the socket",
      "step faces or depth rod",
      "it sets where the plug stops",
      Access.STEP,
      Wear.NONE,
      Double.NaN,
      Double.NaN),
  /** Axial width of the locking groove. */
  GROOVE_WIDTH(
      "W_g",
      "groove width",
      "the axial width of the locking groove between its walls",
      "blade jaws, across the walls at the top",
      "the balls must find room in it",
      Access.GROOVE,
      Wear.GROWS,
      Double.NaN,
      Double.NaN),
  /** Diameter at the root of the locking groove. */
  GROOVE_DIAMETER(
      "D_g",
      "groove diameter",
      "the diameter at the root of the locking groove",
      "blade jaws, both blades on the root",
      "it sets how deep the balls drop",
      Access.GROOVE,
      Wear.NONE,
      Double.NaN,
      Double.NaN),
  /** Tip face to the start of the collar. */
  TIP_TO_COLLAR(
      "L_c",
      "tip to collar",
      "from the tip face to where the collar starts, the end of the sealing cylinder",
      "step faces or depth rod; poor where the step is a cone or a rounding",
      "it sets how far the tip reaches through the seal",
      Access.STEP,
      Wear.NONE,
      Double.NaN,
      Double.NaN),
  /** Diameter behind the locking groove. */
  SHOULDER_DIAMETER(
      "D_s",
      "shoulder diameter",
      "the diameter behind the locking groove",
      "outside jaws",
      "it must clear the mouth of the socket",
      Access.OUTSIDE,
      Wear.NONE,
      Double.NaN,
      Double.NaN),
  /** Smallest hole through the plug: tells its size, not its family. */
  BORE(
      "d_b",
      "bore",
      "the smallest hole right through the plug",
      "inside jaws, pin gauges or drill shanks; knife-edge jaws read small in small holes",
      "the face around it opens the valve of the socket, and it lets the air through",
      Access.BORE,
      Wear.NONE,
      4.5,
      13.0);

  private final String symbol;
  private final String label;
  private final String definition;
  private final String howToMeasure;
  private final String whatItDecides;
  private final Access access;
  private final Wear wear;
  private final double usualLowMm;
  private final double usualHighMm;

  Dimension(
      String symbol,
      String label,
      String definition,
      String howToMeasure,
      String whatItDecides,
      Access access,
      Wear wear,
      double usualLowMm,
      double usualHighMm) {
    this.symbol = symbol;
    this.label = label;
    this.definition = definition;
    this.howToMeasure = howToMeasure;
    this.whatItDecides = whatItDecides;
    this.access = access;
    this.wear = wear;
    this.usualLowMm = usualLowMm;
    this.usualHighMm = usualHighMm;
  }

  /**
   * Finds the dimension by its label or symbol. Upper and lower case are alike in a label; a symbol is taken as it
   * stands.
   *
   * @param text the label, such as "tip diameter", the symbol, such as "D_t", or both, as {@link #toString} writes them
   * @return the dimension
   * @throws IllegalArgumentException if no dimension is called so
   */
  public static Dimension parse(String text) {
    Objects.requireNonNull(text, "text");
    String wanted = text.strip();
    for (Dimension dimension : values()) {
      if (dimension.label.equalsIgnoreCase(wanted)
          || dimension.symbol.equals(wanted)
          || dimension.toString().equalsIgnoreCase(wanted)) {
        return dimension;
      }
    }
    throw new IllegalArgumentException("dimension must be one of "
        + Arrays.stream(values()).map(Dimension::toString).collect(Collectors.joining(", "))
        + ", was \"" + text + "\"");
  }

  /** {@return the symbol, such as "D_t", which reads the same in LaTeX} */
  public String symbol() {
    return symbol;
  }

  /** {@return the name in plain words, such as "tip diameter"} */
  public String label() {
    return label;
  }

  /** {@return what exactly is meant, in words} */
  public String definition() {
    return definition;
  }

  /** {@return how to take it with a caliper} */
  public String howToMeasure() {
    return howToMeasure;
  }

  /**
   * Says what the dimension decides when plug and socket mate. Each of them decides something, so a copy that is off in
   * one may not lock, leak or pass no air; which of them a profile holds its plugs to, see
   * {@link PlugProfile#decidingDimensions}, and which of them it does not know {@link PlugProfile#missingDimensions}.
   *
   * @return a clause, such as "the seal of the socket grips it"; from memory, the standard for plugs was not seen
   */
  public String whatItDecides() {
    return whatItDecides;
  }

  /** {@return what wear does to it} */
  public Wear wear() {
    return wear;
  }

  /** {@return whether a worn plug reads smaller here than a new one} */
  public boolean wearShrinks() {
    return wear == Wear.SHRINKS;
  }

  /** {@return how a caliper gets at it} */
  public Access access() {
    return access;
  }

  /**
   * Whether a size lies among those of air-line plugs of all usual sizes.
   *
   * <p>The bounds are order-of-magnitude ranges from memory, for finding inch values typed as millimetres. They overlap
   * between families on purpose and tell none apart. Dimensions without a remembered range say no.
   */
  boolean isUsual(double mm) {
    return mm >= usualLowMm && mm <= usualHighMm;
  }

  /** {@return the name and the symbol, such as "tip diameter (D_t)"} */
  @Override
  public String toString() {
    return label + " (" + symbol + ")";
  }
}
