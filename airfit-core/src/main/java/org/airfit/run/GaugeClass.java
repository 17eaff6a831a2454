package org.airfit.run;

import java.util.Objects;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.PressureDrop;

/**
 * Accuracy classes of pressure gauges with a Bourdon tube: the limit of error as a part of the top of the scale.
 *
 * <pre>
 *   L = c/100 S
 * </pre>
 *
 * <p>c is the number of the class, S the top of a scale that begins at 0, L the limit of error at every point of it.
 * <b>Source:</b> EN 837-1:1996, table 11, read in a stored copy. A gauge without a class on its dial has none: tell
 * its error yourself.
 */
public enum GaugeClass {
  /** 0.1 % of the span. */
  CLASS_0_1("0.1", 0.1),
  /** 0.25 % of the span. */
  CLASS_0_25("0.25", 0.25),
  /** 0.6 % of the span. */
  CLASS_0_6("0.6", 0.6),
  /** 1 % of the span. */
  CLASS_1("1", 1.0),
  /** 1.6 % of the span. */
  CLASS_1_6("1.6", 1.6),
  /** 2.5 % of the span. */
  CLASS_2_5("2.5", 2.5),
  /** 4 % of the span. */
  CLASS_4("4", 4.0);

  private final String label;
  private final double percent;

  GaugeClass(String label, double percent) {
    this.label = label;
    this.percent = percent;
  }

  /** {@return the limit of error in percent of the span} */
  public double percent() {
    return percent;
  }

  /**
   * Finds the limit of error of a gauge of this class.
   *
   * @param topOfScale the pressure at the top of its scale, which begins at 0; above 0
   * @return the limit
   * @throws IllegalArgumentException if {@code topOfScale} is not above 0
   */
  public PressureDrop limitOfError(GaugePressure topOfScale) {
    if (!(Objects.requireNonNull(topOfScale, "topOfScale").pascals() > 0.0)) {
      throw new IllegalArgumentException("top of the scale of a gauge must be above 0 Pa(g), was "
          + topOfScale.shown() + "; a compound or vacuum gauge tells its error itself");
    }
    return PressureDrop.ofPascals(percent / 100.0 * topOfScale.pascals());
  }

  /**
   * Reads a class as it stands on a dial.
   *
   * @param text such as "1.6", "1,6", "class 1.6", "cl. 1.6" or "KL 1.6"
   * @return the class
   * @throws IllegalArgumentException if there is no such class
   */
  public static GaugeClass parse(String text) {
    String number = Objects.requireNonNull(text, "text")
        .strip()
        .replaceFirst("(?i)^(class|cl[.]?|kl[.]?)\\s*", "")
        .replace(',', '.');
    for (GaugeClass each : values()) {
      if (number.equals(each.label) || number.equals(each.label + ".0")) {
        return each;
      }
    }
    throw new IllegalArgumentException("class of a gauge must be one of EN 837-1,"
        + " 0.1, 0.25, 0.6, 1, 1.6, 2.5 or 4, was \"" + text.strip()
        + "\"; of another gauge tell the limit of error as a pressure");
  }

  /** {@return the class as it is said, such as "class 1.6", which {@link #parse} reads} */
  @Override
  public String toString() {
    return "class " + label;
  }
}
