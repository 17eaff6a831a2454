package org.airfit.run;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Collectors;
import org.airfit.joint.HoseSize;
import org.airfit.line.Conduit;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.Length;
import org.airfit.quantity.LengthUnit;
import org.airfit.quantity.MassFlow;
import org.airfit.working.UnitSystem;

/**
 * How long a hose of a size that exists may be for the tool to have its pressure.
 *
 * <p>The hose has the wall and the fittings of the one in the run and the bore that its name says; every length is
 * solved as a run of its own. The length is a whole number of metres or feet: that one is enough, and one more is not.
 * It ends at 300 m or 1000 ft, which is our choice.
 *
 * <p>How long a hose of each size may be:
 *
 * <pre>{@code
 * import java.util.List;
 * import org.airfit.air.AirState;
 * import org.airfit.line.Conduit;
 * import org.airfit.line.Wall;
 * import org.airfit.quantity.AbsolutePressure;
 * import org.airfit.quantity.FreeAirFlow;
 * import org.airfit.quantity.GaugePressure;
 * import org.airfit.quantity.Length;
 * import org.airfit.quantity.Temperature;
 * import org.airfit.run.LongestHose;
 * import org.airfit.run.Run;
 * import org.airfit.working.UnitSystem;
 *
 * class LongestOfEachSize {
 *   public static void main(String[] args) {
 *     AbsolutePressure atmosphere = AbsolutePressure.STANDARD_ATMOSPHERE;
 *     AirState supply = AirState.of(
 *         GaugePressure.parse("100 psig").absolute(atmosphere), Temperature.parse("68 °F"));
 *     Conduit hose = Conduit.of(Length.parse("3/8 in"), Length.parse("50 ft"), Wall.SMOOTH_RUBBER_HOSE);
 *     List<LongestHose> longest = LongestHose.ofEverySize(
 *         Run.from(supply, atmosphere).through("hose", hose),
 *         "hose",
 *         FreeAirFlow.parse("25 scfm").massFlow(),
 *         GaugePressure.parse("90 psig"),
 *         UnitSystem.US);
 *     System.out.println(LongestHose.inWords(longest, UnitSystem.US));
 *     // 1/4 in hose: up to 5 ft; 3/8 in hose: up to 42 ft; 1/2 in hose: up to 180 ft; 3/4 in hose: 1000 ft
 *     // and more.
 *   }
 * }
 * }</pre>
 *
 * <p>This class is immutable, thread-safe and value-based.
 */
public final class LongestHose {

  private static final int MOST_METRES = 300;
  private static final int MOST_FEET = 1000;

  private record Values(
      HoseSize size, int length, int most, Length each, Optional<RunResult> atLongest) {}

  private final Values values;

  private LongestHose(Values values) {
    this.values = values;
  }

  /**
   * Finds the longest hose of every size that exists.
   *
   * @param run the run as it is
   * @param hose the name of the hose in the run
   * @param demand the flow the tool takes
   * @param least the least pressure at the tool, not below the atmosphere
   * @param units whether the sizes are those in millimetres or in inches, and the lengths in metres or in feet
   * @return one of each size, narrowest first; empty where the element is no hose but a part
   * @throws IllegalArgumentException if the run has no such element, or {@code least} is negative
   */
  public static List<LongestHose> ofEverySize(
      Run run, String hose, MassFlow demand, GaugePressure least, UnitSystem units) {
    Objects.requireNonNull(run, "run");
    Objects.requireNonNull(hose, "hose");
    Objects.requireNonNull(demand, "demand");
    Run.requireNoVacuum(Objects.requireNonNull(least, "least"));
    Objects.requireNonNull(units, "units");
    Conduit old = run.conduit(hose).orElse(null);
    if (old == null) {
      return List.of();
    }
    return HoseSize.all(units).stream()
        .map(size -> find(run, hose, old.withBore(size.bore()), size, demand, least, units))
        .toList();
  }

  private static LongestHose find(
      Run run,
      String hose,
      Conduit wall,
      HoseSize size,
      MassFlow demand,
      GaugePressure least,
      UnitSystem units) {
    Length each = Length.of(1.0, units.either(LengthUnit.METRE, LengthUnit.FOOT));
    int most = units.either(MOST_METRES, MOST_FEET);
    int enough = 0;
    int tooLong = most + 1;
    Optional<RunResult> atLongest = Optional.empty();
    while (tooLong - enough > 1) {
      int middle = (enough + tooLong) / 2;
      Run tried = run.replacing(hose, wall.withLength(each.times(middle)));
      RunResult result = tried.at(demand);
      if (tried.keeps(least, result)) {
        enough = middle;
        atLongest = Optional.of(result);
      } else {
        tooLong = middle;
      }
    }
    return new LongestHose(new Values(size, enough, most, each, atLongest));
  }

  /**
   * Obtains the longest that a hose may be which feeds several tools, where each of them shall have its pressure: of
   * every size the shortest of those for one tool.
   *
   * @param ofEach what {@link #ofEverySize} gave for each tool, in one system of units
   * @return one of each size, narrowest first; empty where there is none
   * @throws IllegalArgumentException if the lists are of different sizes of hose
   */
  public static List<LongestHose> forAll(List<List<LongestHose>> ofEach) {
    List<LongestHose> shortest = new ArrayList<>();
    for (List<LongestHose> ofOne : Objects.requireNonNull(ofEach, "ofEach")) {
      if (shortest.isEmpty()) {
        shortest.addAll(ofOne);
      }
      if (!shortest.stream()
          .map(LongestHose::size)
          .toList()
          .equals(ofOne.stream().map(LongestHose::size).toList())) {
        throw new IllegalArgumentException("ofEach must be of the same sizes of hose, was "
            + shortest + " beside " + ofOne + "; obtain all of them in the same units");
      }
      for (int i = 0; i < ofOne.size(); i++) {
        if (ofOne.get(i).values.length < shortest.get(i).values.length) {
          shortest.set(i, ofOne.get(i));
        }
      }
    }
    return List.copyOf(shortest);
  }

  /** {@return the size} */
  public HoseSize size() {
    return values.size;
  }

  /** {@return how long it may be, in whole metres or feet; empty where not even one of them leaves enough} */
  public Optional<Length> length() {
    return values.length == 0 ? Optional.empty() : Optional.of(values.each.times(values.length));
  }

  /** {@return what arrives at the tool with a hose of that length, with its working; empty where there is none} */
  public Optional<RunResult> result() {
    return values.atLongest;
  }

  /** {@return whether it may be as long as hoses are tried, and perhaps longer} */
  public boolean isWithoutEnd() {
    return values.length == values.most;
  }

  /**
   * Tells the longest hoses.
   *
   * @param longest what {@link #ofEverySize} gave
   * @param units the units
   * @return one sentence, such as "1/4 in hose: too narrow at any length; 3/8 in hose: up to 87 ft; 1/2 in hose: up to
   *     415 ft."; empty for none
   */
  public static String inWords(List<LongestHose> longest, UnitSystem units) {
    Objects.requireNonNull(units, "units");
    String sentence = Objects.requireNonNull(longest, "longest").stream()
        .map(hose -> hose.inWords(units))
        .collect(Collectors.joining("; ", "", "."));
    return longest.isEmpty() ? "" : sentence;
  }

  private String inWords(UnitSystem units) {
    return values.size
        + length()
            .map(length -> isWithoutEnd()
                ? ": " + units.say(length) + " and more"
                : ": up to " + units.say(length))
            .orElse(": too narrow at any length");
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof LongestHose that && values.equals(that.values);
  }

  @Override
  public int hashCode() {
    return values.hashCode();
  }

  /** {@return the size and its longest, such as "1/2 in hose: 415 ft"} */
  @Override
  public String toString() {
    return values.size + ": " + length().map(Length::toString).orElse("none");
  }
}
