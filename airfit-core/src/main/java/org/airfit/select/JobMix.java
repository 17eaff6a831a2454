package org.airfit.select;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Random;
import java.util.function.ToDoubleFunction;
import java.util.stream.Stream;
import org.airfit.air.AirState;
import org.airfit.internal.Digits;
import org.airfit.joint.End;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.Length;
import org.airfit.quantity.LengthUnit;
import org.airfit.quantity.Range;
import org.airfit.quantity.ReferenceState;

/**
 * What jobs come to a counter, as its owner states it: tools and places, each with how often it comes. A job is a
 * tool at a place, drawn independently of each other; its air, its pressure and how far it is are drawn evenly from
 * their ranges. The same seed draws the same jobs.
 *
 * @param seed where the random numbers begin
 * @param jobs how many jobs are drawn, from 1 to {@link #MOST_JOBS}
 * @param tools the tools, at least one
 * @param places the places, at least one
 * @param outside the air around: its pressure is what gauges read against
 * @param hoseLengths the lengths in which a hose that the catalogue lacks could be had, shortest first; {@link #METRES}
 *     or {@link #FEET} where nobody told
 */
public record JobMix(
    long seed,
    int jobs,
    List<Tool> tools,
    List<Place> places,
    AirState outside,
    List<Length> hoseLengths) {

  /** Lengths in which hoses are made up, in metres: our own choice. */
  public static final List<Length> METRES = Stream.of(
          2.0, 5.0, 10.0, 15.0, 20.0, 25.0, 30.0, 40.0, 50.0)
      .map(Length::ofMetres)
      .toList();

  /** Lengths in which hoses are made up, in feet: our own choice. */
  public static final List<Length> FEET = Stream.of(6.0, 10.0, 15.0, 25.0, 35.0, 50.0, 75.0, 100.0)
      .map(feet -> Length.of(feet, LengthUnit.FOOT))
      .toList();

  /** So many jobs are drawn at most. */
  public static final int MOST_JOBS = 400;

  /**
   * A kind of tool.
   *
   * @param name what it is
   * @param weight how often it comes, beside the weights of the others [-], in (0, 10⁶]
   * @param air the flow it takes, somewhere in this range
   * @param needs what it needs at its inlet
   * @param rated what it may see at most
   * @param inlet how its inlet ends
   */
  public record Tool(
      String name,
      double weight,
      Range<FreeAirFlow> air,
      GaugePressure needs,
      GaugePressure rated,
      End inlet) {
    /**
     * Checks the components.
     *
     * @param name what it is
     * @param weight how often it comes, beside the weights of the others [-], in (0, 10⁶]
     * @param air the flow it takes, above 0
     * @param needs what it needs at its inlet, above 0
     * @param rated what it may see at most, at least {@code needs}
     * @param inlet how its inlet ends
     * @throws IllegalArgumentException if {@code name} is blank, or one of the others is out of range
     */
    public Tool {
      requireNamed("tool", name, weight);
      Objects.requireNonNull(air, "air");
      Objects.requireNonNull(needs, "needs");
      Objects.requireNonNull(rated, "rated");
      Objects.requireNonNull(inlet, "inlet");
      if (!(air.least().cubicMetresPerSecond() > 0.0)) {
        throw new IllegalArgumentException(
            "air of tool \"" + name + "\" must be above 0, was " + air.least().shown());
      }
      if (!(needs.pascals() > 0.0 && rated.compareTo(needs) >= 0)) {
        throw new IllegalArgumentException("pressures of tool \"" + name
            + "\" must be above 0 bar(g), and what it may see at least what it needs, were "
            + needs.shown() + " and " + rated.shown());
      }
    }
  }

  /**
   * A kind of place.
   *
   * @param name what it is
   * @param weight how often it comes, beside the weights of the others [-], in (0, 10⁶]
   * @param pressure the pressure at the outlet while the tool runs, somewhere in this range; its upper end is the
   *     highest that any part of it sees
   * @param outlet how the outlet ends
   * @param reach how far the hose must reach, somewhere in this range
   * @param environment what it is like there
   */
  public record Place(
      String name,
      double weight,
      Range<GaugePressure> pressure,
      End outlet,
      Range<Length> reach,
      Environment environment) {
    /**
     * Checks the components.
     *
     * @param name what it is
     * @param weight how often it comes, beside the weights of the others [-], in (0, 10⁶]
     * @param pressure the pressure at the outlet while the tool runs, above 0
     * @param outlet how the outlet ends
     * @param reach how far the hose must reach, above 0
     * @param environment what it is like there
     * @throws IllegalArgumentException if {@code name} is blank, or one of the others is out of range
     */
    public Place {
      requireNamed("place", name, weight);
      Objects.requireNonNull(pressure, "pressure");
      Objects.requireNonNull(outlet, "outlet");
      Objects.requireNonNull(reach, "reach");
      Objects.requireNonNull(environment, "environment");
      if (!(pressure.least().pascals() > 0.0)) {
        throw new IllegalArgumentException("pressure at place \"" + name
            + "\" must be above 0 bar(g), was " + pressure.least().shown());
      }
      if (!(reach.least().metres() > 0.0)) {
        throw new IllegalArgumentException("reach at place \"" + name + "\" must be above 0 m, was "
            + reach.least().inFull(LengthUnit.METRE));
      }
    }
  }

  /**
   * One job of the mix.
   *
   * @param number its number, from 1
   * @param tool the name of the tool
   * @param place the name of the place
   * @param requirement what it asks
   */
  public record Job(int number, String tool, String place, Requirement requirement) {
    /**
     * Refuses what is null.
     *
     * @param number its number, from 1
     * @param tool the name of the tool
     * @param place the name of the place
     * @param requirement what it asks
     */
    public Job {
      Objects.requireNonNull(tool, "tool");
      Objects.requireNonNull(place, "place");
      Objects.requireNonNull(requirement, "requirement");
    }
  }

  /**
   * Checks the components, and copies the lists.
   *
   * @param seed where the random numbers begin
   * @param jobs how many jobs are drawn, from 1 to {@link #MOST_JOBS}
   * @param tools the tools, at least one
   * @param places the places, at least one
   * @param outside the air around: its pressure is what gauges read against
   * @param hoseLengths the lengths in which a hose could be had, shortest first
   * @throws IllegalArgumentException if {@code jobs} is out of range, or a list is empty
   */
  public JobMix {
    tools = List.copyOf(Objects.requireNonNull(tools, "tools"));
    places = List.copyOf(Objects.requireNonNull(places, "places"));
    Objects.requireNonNull(outside, "outside");
    hoseLengths =
        Objects.requireNonNull(hoseLengths, "hoseLengths").stream().sorted().toList();
    if (jobs < 1 || jobs > MOST_JOBS) {
      throw new IllegalArgumentException(
          "jobs to draw must be in [1, " + MOST_JOBS + "], were " + jobs);
    }
    if (tools.isEmpty() || places.isEmpty() || hoseLengths.isEmpty()) {
      throw new IllegalArgumentException(
          "a mix must have at least one tool, one place and one length of hoses, had "
              + tools.size() + ", " + places.size() + " and " + hoseLengths.size());
    }
  }

  private static void requireNamed(String what, String name, double weight) {
    if (Objects.requireNonNull(name, "name").isBlank()) {
      throw new IllegalArgumentException("name of a " + what + " must not be blank");
    }
    if (!(weight > 0.0 && weight <= 1.0e6)) {
      throw new IllegalArgumentException("weight of " + what + " \"" + name
          + "\" must be in (0, 1e6], was " + Digits.told(weight));
    }
  }

  /** {@return the highest pressure that a part of any place sees} */
  public GaugePressure highest() {
    return places.stream()
        .map(place -> place.pressure().most())
        .max(GaugePressure::compareTo)
        .orElseThrow();
  }

  /** {@return the jobs, the same each time} */
  public List<Job> drawn() {
    Random random = new Random(seed);
    List<Job> all = new ArrayList<>();
    for (int number = 1; number <= jobs; number++) {
      Tool tool = drawn(tools, Tool::weight, random.nextDouble());
      Place place = drawn(places, Place::weight, random.nextDouble());
      double pressure = random.nextDouble();
      double reach = random.nextDouble();
      double air = random.nextDouble();
      all.add(new Job(
          number,
          tool.name(),
          place.name(),
          requirement(
              tool,
              place,
              GaugePressure.ofPascals(between(
                  place.pressure().least().pascals(), place.pressure().most().pascals(), pressure)),
              Length.ofMetres(
                  between(place.reach().least().metres(), place.reach().most().metres(), reach)),
              air)));
    }
    return List.copyOf(all);
  }

  private Requirement requirement(
      Tool tool, Place place, GaugePressure pressure, Length reach, double air) {
    FreeAirFlow least = tool.air().least();
    FreeAirFlow flow = FreeAirFlow.ofAnrLitresPerSecond(between(
        least.at(ReferenceState.ANR).litresPerSecond(),
        tool.air().most().at(ReferenceState.ANR).litresPerSecond(),
        air));
    return Requirement.forTool(flow, tool.needs())
        .toolRating(tool.rated())
        .toolInlet(tool.inlet())
        .supply(
            AirState.of(pressure.absolute(outside.pressure()), outside.temperature()),
            outside.pressure())
        .highest(place.pressure().most())
        .outlet(place.outlet())
        .reach(reach)
        .environment(place.environment())
        .lubrication(Lubrication.DRY)
        .build();
  }

  private static double between(double least, double most, double share) {
    return least + share * (most - least);
  }

  private static <T> T drawn(List<T> all, ToDoubleFunction<T> weight, double share) {
    double left = share * all.stream().mapToDouble(weight).sum();
    for (T each : all) {
      left -= weight.applyAsDouble(each);
      if (left < 0.0) {
        return each;
      }
    }
    return all.get(all.size() - 1);
  }

  /** {@return how many jobs of how many tools and places, with the seed} */
  @Override
  public String toString() {
    return jobs + " jobs of " + tools.size() + " tools and " + places.size() + " places, seed "
        + seed;
  }
}
