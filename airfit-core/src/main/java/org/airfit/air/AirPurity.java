package org.airfit.air;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.airfit.internal.Digits;
import org.airfit.quantity.Density;
import org.airfit.quantity.Temperature;

/**
 * How pure compressed air is, in classes of particles, water and oil, as ISO 8573-1:2010 designates it: [2:4:1].
 *
 * <table class="striped">
 * <caption>Limits; each belongs to the class beside it</caption>
 * <thead><tr><th>class</th><th>particles per m³ of 0.1 to 0.5, 0.5 to 1 and 1 to 5 µm</th>
 * <th>water</th><th>oil in all</th></tr></thead>
 * <tbody>
 * <tr><td>1</td><td>20,000; 400; 10</td><td>dew point -70 °C</td><td>0.01 mg/m³</td></tr>
 * <tr><td>2</td><td>400,000; 6,000; 100</td><td>-40 °C</td><td>0.1 mg/m³</td></tr>
 * <tr><td>3</td><td>-; 90,000; 1,000</td><td>-20 °C</td><td>1 mg/m³</td></tr>
 * <tr><td>4</td><td>-; -; 10,000</td><td>3 °C</td><td>5 mg/m³</td></tr>
 * <tr><td>5</td><td>-; -; 100,000</td><td>7 °C</td><td></td></tr>
 * <tr><td>6</td><td>5 mg/m³ in all</td><td>10 °C</td><td></td></tr>
 * <tr><td>7</td><td>10 mg/m³ in all</td><td>0.5 g/m³ of liquid</td><td></td></tr>
 * <tr><td>8</td><td></td><td>5 g/m³ of liquid</td><td></td></tr>
 * <tr><td>9</td><td></td><td>10 g/m³ of liquid</td><td></td></tr>
 * </tbody>
 * </table>
 *
 * <p>Counts and masses are those in a cubic metre at 20 °C and 1 bar, dry. A dew point is the one at the pressure of the
 * line: public texts do not agree on which pressure it is stated at, so say it with the class. Air that is damper than
 * 10 °C without liquid water has no class. The edition counts: before 2010 the limits of particles were far lower.
 * <b>Source:</b> the table of ISO 8573-1:2010 as two public texts quote it, which agree; the standard itself was not
 * read. Buy by the standard and by what the maker of the filters warrants, not by this.
 *
 * @param particles the class of particles: 0 to 7, X or -
 * @param water the class of water: 0 to 9, X or -
 * @param oil the class of oil: 0 to 4, X or -
 */
public record AirPurity(PurityClass particles, PurityClass water, PurityClass oil) {

  private static final Pattern DESIGNATION = Pattern.compile("(?:ISO"
      + " 8573-1:2010\\s*)?(\\[?)\\s*([0-9Xx-])\\s*:\\s*([0-9Xx-])\\s*:\\s*([0-9Xx-])\\s*(\\]?)");

  private static final List<PurityClass> CLASSES = List.of(PurityClass.values());

  private static final double[][] MOST_COUNTED = {
    {20_000.0, 400.0, 10.0},
    {400_000.0, 6_000.0, 100.0},
    {Double.POSITIVE_INFINITY, 90_000.0, 1_000.0},
    {Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY, 10_000.0},
    {Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY, 100_000.0},
  };

  /** Of particles from class 6 on, of dew points and of liquid water from classes 1 and 7 on, of oil from class 1 on. */
  private static final double[] MOST_DUST = {5.0e-6, 10.0e-6};

  private static final double[] WETTEST_CELSIUS = {-70.0, -40.0, -20.0, 3.0, 7.0, 10.0};

  /** A dew point at a limit comes back from its vapour pressure, or from °F, but for its last digits [K]. */
  private static final double ROUNDING = 1.0e-6;

  private static final double[] MOST_LIQUID = {0.5e-3, 5.0e-3, 10.0e-3};
  private static final double[] MOST_OIL = {0.01e-6, 0.1e-6, 1.0e-6, 5.0e-6};

  /**
   * Particles counted in a cubic metre.
   *
   * @param upToHalf of 0.1 to 0.5 µm
   * @param halfToOne of 0.5 to 1 µm
   * @param oneToFive of 1 to 5 µm
   * @param anyLarger whether one above 5 µm was seen: then counts give no class
   */
  public record ParticleCounts(
      double upToHalf, double halfToOne, double oneToFive, boolean anyLarger) {

    /**
     * Checks the components.
     *
     * @param upToHalf of 0.1 to 0.5 µm
     * @param halfToOne of 0.5 to 1 µm
     * @param oneToFive of 1 to 5 µm
     * @param anyLarger whether one above 5 µm was seen
     * @throws IllegalArgumentException if a count is negative or not finite
     */
    public ParticleCounts {
      require("0.1 to 0.5", upToHalf);
      require("0.5 to 1", halfToOne);
      require("1 to 5", oneToFive);
    }

    private static void require(String sizes, double count) {
      if (!(count >= 0.0 && count < Double.POSITIVE_INFINITY)) {
        throw new IllegalArgumentException("particles of " + sizes
            + " µm must be at least 0 per m³ and finite, were " + Digits.told(count) + " per m³");
      }
    }
  }

  /**
   * Checks the components.
   *
   * @param particles the class of particles: 0 to 7, X or -
   * @param water the class of water: 0 to 9, X or -
   * @param oil the class of oil: 0 to 4, X or -
   * @throws IllegalArgumentException if there is no such class of it
   */
  public AirPurity {
    require("particles", particles, PurityClass.CLASS_7);
    require("water", water, PurityClass.CLASS_9);
    require("oil", oil, PurityClass.CLASS_4);
  }

  private static void require(String what, PurityClass given, PurityClass last) {
    Objects.requireNonNull(given, what);
    if (given.compareTo(last) > 0 && given.compareTo(PurityClass.CLASS_X) < 0) {
      throw new IllegalArgumentException(
          "class of " + what + " must be 0 to " + last + ", X or -, was " + given);
    }
  }

  /**
   * Reads a designation.
   *
   * @param text the three classes, such as "[2:4:1]", "1:-:2" or "ISO 8573-1:2010 [2:4:1]"; another edition is refused
   * @return the purity
   * @throws IllegalArgumentException if it cannot be read, or there is no such class
   */
  public static AirPurity parse(String text) {
    Matcher parts = DESIGNATION.matcher(Objects.requireNonNull(text, "text").strip());
    if (!parts.matches() || parts.group(1).isEmpty() != parts.group(5).isEmpty()) {
      throw new IllegalArgumentException(
          "purity must be three classes of particles, water and oil, such as [2:4:1] or [1:-:2],"
              + " was \"" + text + "\"");
    }
    return new AirPurity(
        PurityClass.parse(parts.group(2)),
        PurityClass.parse(parts.group(3)),
        PurityClass.parse(parts.group(4)));
  }

  /**
   * Finds the class of particles by counts.
   *
   * @param counts the particles in a cubic metre
   * @return the class; empty where counts give none, so that the particles must be weighed
   */
  public static Optional<PurityClass> ofParticles(ParticleCounts counts) {
    Objects.requireNonNull(counts, "counts");
    if (!counts.anyLarger()) {
      for (int i = 0; i < MOST_COUNTED.length; i++) {
        if (counts.upToHalf() <= MOST_COUNTED[i][0]
            && counts.halfToOne() <= MOST_COUNTED[i][1]
            && counts.oneToFive() <= MOST_COUNTED[i][2]) {
          return Optional.of(CLASSES.get(1 + i));
        }
      }
    }
    return Optional.empty();
  }

  /**
   * Finds the class of particles by their mass, where counts give none.
   *
   * @param mass the mass of all particles in a volume
   * @return class 6, 7 or X
   */
  public static PurityClass ofParticles(Density mass) {
    return first(Objects.requireNonNull(mass, "mass"), MOST_DUST, PurityClass.CLASS_6);
  }

  /**
   * Finds the class of water of air without liquid water.
   *
   * @param dewPoint its dew point, at the pressure of the line
   * @return the class; empty where the dew point is above 10 °C, for which there is none
   */
  public static Optional<PurityClass> ofWater(DewPoint dewPoint) {
    Objects.requireNonNull(dewPoint, "dewPoint");
    for (int i = 0; i < WETTEST_CELSIUS.length; i++) {
      double limit = Temperature.ofCelsius(WETTEST_CELSIUS[i]).kelvins();
      if (dewPoint.temperature().kelvins() <= limit + ROUNDING) {
        return Optional.of(CLASSES.get(1 + i));
      }
    }
    return Optional.empty();
  }

  /**
   * Finds the class of water of air with liquid water in it.
   *
   * @param liquid the mass of liquid water in a volume
   * @return class 7, 8, 9 or X
   * @throws IllegalArgumentException if it is nothing: then the dew point tells the class
   */
  public static PurityClass ofLiquidWater(Density liquid) {
    if (!(Objects.requireNonNull(liquid, "liquid").kilogramsPerCubicMetre() > 0.0)) {
      throw new IllegalArgumentException(
          "liquid water must be above 0 kg/m³, was 0 kg/m³; without it the dew point tells the class");
    }
    return first(liquid, MOST_LIQUID, PurityClass.CLASS_7);
  }

  /**
   * Finds the class of oil.
   *
   * @param total the mass of liquid oil, oil mist and oil vapour in a volume
   * @return class 1 to 4, or X
   */
  public static PurityClass ofOil(Density total) {
    return first(Objects.requireNonNull(total, "total"), MOST_OIL, PurityClass.CLASS_1);
  }

  private static PurityClass first(Density mass, double[] most, PurityClass least) {
    double value = mass.kilogramsPerCubicMetre();
    for (int i = 0; i < most.length; i++) {
      if (value
          <= most[i]
              * (1.0 + 1.0e-12)) { // a limit told in mg/m³ is one in kg/m³ but for its last digit
        return CLASSES.get(CLASSES.indexOf(least) + i);
      }
    }
    return PurityClass.CLASS_X;
  }

  /**
   * Tells whether air of this purity may be taken where another is asked for.
   *
   * @param asked what is asked for
   * @return whether each class is as low or lower, or not asked for; a class 0 that is asked for is met by none, since
   *     it is what user and supplier agreed
   */
  public boolean meets(AirPurity asked) {
    Objects.requireNonNull(asked, "asked");
    return particles.meets(asked.particles) && water.meets(asked.water) && oil.meets(asked.oil);
  }

  /** {@return the designation, such as "ISO 8573-1:2010 [2:4:1]"} */
  @Override
  public String toString() {
    return "ISO 8573-1:2010 [" + particles + ":" + water + ":" + oil + "]";
  }
}
