package org.airfit.plug;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.airfit.internal.Digits;
import org.airfit.internal.ReadingDensity;
import org.airfit.quantity.Length;
import org.airfit.quantity.LengthUnit;
import org.airfit.safety.Caution;
import org.jspecify.annotations.Nullable;

/**
 * What to measure first at the bench, and what next, for any plug of a set: a sorting to print and to hang beside the
 * caliper.
 *
 * <p>At each step stands the dimension that takes away most doubt for its {@link Effort} among those whose bands part
 * the profiles still possible. A band is where a reading of a genuine plug lies with a chance of
 * {@value #INSIDE_IN_WORDS}; bands that touch are one. A path ends when one profile is left and two dimensions at least
 * were read, or when nothing the set knows parts what is left. A reading outside every band is of none in the set.
 *
 * <p>A sheet cannot know what the caliper's error was in the readings before, so a band is that of a reading by itself,
 * with the error in it. It holds what it says whether or not readings share the error; only the order of the steps is
 * reckoned as if each were the first.
 *
 * <p>Near copies, where they are about, keep inside the bands of the profile in most sizes. So the path tells at its ends
 * what is {@link #restOf still to be read} before the plug can be identified, and of which profiles the set knows too
 * little for that.
 *
 * <p>The path sorts; it does not weigh. For the verdict give the readings to {@link Identifier#identify}.
 *
 * <p>This class is immutable and thread-safe.
 */
public final class BenchPath {

  private static final String INSIDE_IN_WORDS = "99.7 %";

  /** 0.135 % on either side: three standard deviations of a normal scatter. */
  private static final double TAIL = 0.00135;

  /** More than any drop of doubt over the smallest effort that is allowed for in practice. */
  private static final double FIRST = 1.0e6;

  /** Longer paths are no sorting any more; this project's choice. */
  private static final int MOST_READINGS = 5;

  private final Identifier identifier;
  private final Effort effort;
  private final List<Step> steps;

  private BenchPath(Identifier identifier, Effort effort, List<Step> steps) {
    this.identifier = identifier;
    this.effort = effort;
    this.steps = List.copyOf(steps);
  }

  /**
   * One dimension to measure, and where to go from what it reads.
   *
   * @param number the number the step has on the sheet, from 1
   * @param dimension what to measure
   * @param branches the bands, the smallest sizes first; a reading outside all of them is of none in the set
   */
  public record Step(int number, Dimension dimension, List<Branch> branches) {

    /**
     * Keeps a copy of the list.
     *
     * @param number the number the step has on the sheet, from 1
     * @param dimension what to measure
     * @param branches the bands, the smallest sizes first; a reading outside all of them is of none in the set
     */
    public Step {
      Objects.requireNonNull(dimension, "dimension");
      Objects.requireNonNull(branches, "branches");
      branches = List.copyOf(branches);
    }

    /**
     * Finds the branch of a reading.
     *
     * @param length what was read
     * @return the branch, empty if the plug is of none in the set
     */
    public Optional<Branch> of(Length length) {
      Objects.requireNonNull(length, "length");
      return branches.stream()
          .filter(
              branch -> length.compareTo(branch.low()) >= 0 && length.compareTo(branch.high()) <= 0)
          .findFirst();
    }
  }

  /**
   * A band of readings and what it leaves.
   *
   * @param low the smallest reading
   * @param high the largest
   * @param profiles what it can be, in the order of the set
   * @param next the number of the step to go to; 0 if the path ends here
   */
  public record Branch(Length low, Length high, List<PlugProfile> profiles, int next) {

    /**
     * Keeps a copy of the list.
     *
     * @param low the smallest reading
     * @param high the largest
     * @param profiles what it can be, in the order of the set
     * @param next the number of the step to go to; 0 if the path ends here
     */
    public Branch {
      Objects.requireNonNull(low, "low");
      Objects.requireNonNull(high, "high");
      Objects.requireNonNull(profiles, "profiles");
      profiles = List.copyOf(profiles);
    }

    /** {@return whether the path ends here with one profile} */
    public boolean settled() {
      return next == 0 && profiles.size() == 1;
    }
  }

  /**
   * Works out the path for a set, with {@link Effort#usual}.
   *
   * @param identifier the set, the instrument, the wear and the chance of an unknown plug
   * @return the path
   */
  public static BenchPath of(Identifier identifier) {
    Objects.requireNonNull(identifier, "identifier");
    return of(identifier, Effort.usual());
  }

  /**
   * Works out the path for a set.
   *
   * @param identifier the set, the instrument, the wear and the chance of an unknown plug
   * @param effort how much trouble each reading is
   * @return the path
   */
  public static BenchPath of(Identifier identifier, Effort effort) {
    Objects.requireNonNull(identifier, "identifier");
    Objects.requireNonNull(effort, "effort");
    Builder builder = new Builder(identifier, effort);
    builder.step(identifier.referenceSet().profiles(), EnumSet.noneOf(Dimension.class));
    builder.steps.sort(Comparator.comparingInt(Step::number));
    return new BenchPath(identifier, effort, builder.steps);
  }

  /** A band before it is known where it leads. */
  private record Band(double low, double high, List<PlugProfile> profiles) {}

  private static final class Builder {

    private final Identifier identifier;
    private final Effort effort;
    private final List<Step> steps = new ArrayList<>();
    private int last;

    Builder(Identifier identifier, Effort effort) {
      this.identifier = identifier;
      this.effort = effort;
    }

    /** Returns the number of the step, or 0 where the path ends. */
    int step(List<PlugProfile> left, Set<Dimension> taken) {
      boolean confirmed = taken.size() >= Identification.FEWEST_READINGS;
      if ((left.size() == 1 && confirmed) || taken.size() >= MOST_READINGS) {
        return 0;
      }
      Dimension best = null;
      List<Band> bands = List.of();
      double most = Double.NEGATIVE_INFINITY;
      for (Dimension dimension : open(left, taken)) {
        List<Band> found = bands(left, dimension);
        boolean parts = found.size() > 1;
        if (!parts && confirmed) {
          continue;
        }
        // a dimension that parts the profiles goes before any that only speaks for or against the
        // set
        double worth = drop(left, dimension) / effort.of(dimension) + (parts ? FIRST : 0.0);
        if (worth > most + 0.01) { // what is worth the same is taken in the order of the bench
          most = worth;
          best = dimension;
          bands = found;
        }
      }
      if (best == null) {
        return 0;
      }
      int number = ++last;
      Set<Dimension> now = EnumSet.of(best);
      now.addAll(taken);
      List<Branch> branches = new ArrayList<>();
      for (Band band : bands) {
        branches.add(new Branch(
            Length.ofMillimetres(band.low),
            Length.ofMillimetres(band.high),
            band.profiles,
            step(band.profiles, now)));
      }
      steps.add(new Step(number, best, branches));
      return number;
    }

    private Set<Dimension> open(List<PlugProfile> left, Set<Dimension> taken) {
      Set<Dimension> open = EnumSet.allOf(Dimension.class);
      open.removeAll(taken);
      // a profile that does not know the dimension would go into every band and into none
      open.removeIf(
          dimension -> left.stream().anyMatch(profile -> model(profile, dimension) == null));
      return open;
    }

    private ReadingDensity expected(PlugProfile profile, Dimension dimension) {
      return Objects.requireNonNull(model(profile, dimension));
    }

    private @Nullable ReadingDensity model(PlugProfile profile, Dimension dimension) {
      Optional<GaugeBall> ball = ball(identifier, dimension);
      return profile
          .sizes()
          .expected(
              dimension,
              ball,
              Evidence.uncertainty(identifier.instrument(), dimension, ball),
              identifier.wearAllowance().millimetres());
    }

    private List<Band> bands(List<PlugProfile> left, Dimension dimension) {
      List<Band> own = new ArrayList<>();
      for (PlugProfile profile : left) {
        ReadingDensity expected = expected(profile, dimension);
        double margin = expected.margin(TAIL);
        own.add(new Band(
            Math.max(0.0, expected.low() - margin), expected.high() + margin, List.of(profile)));
      }
      own.sort(Comparator.comparingDouble(Band::low));
      List<Band> merged = new ArrayList<>();
      for (Band band : own) {
        Band before = merged.isEmpty() ? null : merged.get(merged.size() - 1);
        if (before == null || band.low > before.high) {
          merged.add(band);
        } else {
          Set<PlugProfile> both = Set.of(band.profiles.get(0));
          List<PlugProfile> profiles = left.stream()
              .filter(profile -> before.profiles.contains(profile) || both.contains(profile))
              .toList();
          merged.set(
              merged.size() - 1, new Band(before.low, Math.max(before.high, band.high), profiles));
        }
      }
      return merged;
    }

    private double drop(List<PlugProfile> left, Dimension dimension) {
      double unknown = identifier.unknownPrior();
      double[] chances = new double[left.size()];
      @Nullable ReadingDensity[] models = new ReadingDensity[left.size()];
      for (int k = 0; k < chances.length; k++) {
        chances[k] = (1.0 - unknown) / chances.length;
        models[k] = expected(left.get(k), dimension);
      }
      return Information.bits(chances, unknown)
          - Information.of(chances, models, chances.length, unknown, identifier.confidence())
              .expectedBits();
    }
  }

  private static Optional<GaugeBall> ball(Identifier identifier, Dimension dimension) {
    return dimension == Dimension.TIP_LENGTH
        ? identifier.referenceSet().sizes().usualBall()
        : Optional.empty();
  }

  /** {@return what the path was worked out for} */
  public Identifier identifier() {
    return identifier;
  }

  /** {@return how much trouble each reading was taken to be} */
  public Effort effort() {
    return effort;
  }

  /** {@return the steps by their number; empty if the profiles of the set have no dimension in common} */
  public List<Step> steps() {
    return steps;
  }

  /** {@return how many readings a plug of the set takes on average, all profiles equally common; 0 without steps} */
  public double expectedReadings() {
    List<PlugProfile> profiles = identifier.referenceSet().profiles();
    return steps.isEmpty()
        ? 0.0
        : profiles.stream().mapToInt(this::readings).sum() / (double) profiles.size();
  }

  /**
   * Obtains what is still to be read where the path ends with one profile: the dimensions that decide its mating and
   * that the path did not ask for. A near copy may differ there.
   *
   * @param step a step of this path
   * @param branch a branch of it
   * @return the dimensions in the order of {@link Dimension}; empty where no near copies are about, or the path does not
   *     end there with one profile
   * @throws IllegalArgumentException if the step is not of this path, or the branch not of the step
   */
  public List<Dimension> restOf(Step step, Branch branch) {
    Objects.requireNonNull(step, "step");
    Objects.requireNonNull(branch, "branch");
    if (!steps.contains(step) || !step.branches().contains(branch)) {
      throw new IllegalArgumentException("step and branch must be of this path, was step "
          + step.number() + "; take them from steps()");
    }
    if (!identifier.expectsNearCopies() || !branch.settled()) {
      return List.of();
    }
    Set<Dimension> rest = EnumSet.copyOf(branch.profiles().get(0).decidingDimensions());
    Optional<Step> at = Optional.of(step);
    while (at.isPresent()) {
      rest.remove(at.get().dimension());
      int number = at.get().number();
      at = steps.stream()
          .filter(before -> before.branches().stream().anyMatch(to -> to.next() == number))
          .findFirst();
    }
    return List.copyOf(rest);
  }

  private int readings(PlugProfile profile) {
    int count = 0;
    int number = 1;
    while (number > 0) {
      count++;
      number = steps.get(number - 1).branches().stream()
          .filter(branch -> branch.profiles().contains(profile))
          .findFirst()
          .orElseThrow()
          .next();
    }
    return count;
  }

  /** {@return the warnings that go with the path} */
  public List<Caution> cautions() {
    return PlugCautions.forAnswer(identifier.referenceSet().weakestProvenance(), false);
  }

  /** {@return the path as plain text to print} */
  public String toText() {
    ReferenceSet set = identifier.referenceSet();
    StringBuilder out = new StringBuilder("What to measure: the set \"" + set.name() + "\"\n");
    out.append("Sizes ").append(set.weakestProvenance()).append(". ");
    if (steps.isEmpty()) {
      return out.append("Its profiles have no dimension in common; there is no path.\n")
          .toString();
    }
    out.append("Readings with a ").append(identifier.instrument().label());
    if (identifier.wearAllowance().metres() > 0.0) {
      out.append(", wear of up to ")
          .append(identifier.wearAllowance().format(LengthUnit.MILLIMETRE))
          .append(" allowed");
    }
    out.append(".\nA band holds ").append(INSIDE_IN_WORDS).append(" of genuine plugs. ");
    out.append(Digits.fixed(expectedReadings(), 1)).append(" readings on average.\n");
    out.append("Effort of a reading: ")
        .append(set.dimensions().stream()
            .map(dimension -> dimension.label() + " " + Digits.significant(effort.of(dimension), 3))
            .collect(Collectors.joining(", ")))
        .append(" [")
        .append(effort.source())
        .append("].\n");
    steps.forEach(step -> write(out, step));
    writeNotKnown(out, set);
    return out.append(
            "\nThis sorts and does not weigh: for the verdict enter every reading. Then check the mating, "
                + "depressurised.\n")
        .toString();
  }

  private void write(StringBuilder out, Step step) {
    String indent = "   ";
    out.append('\n').append(step.number()).append("  Measure the ").append(step.dimension());
    out.append(": ")
        .append(NextReading.how(step.dimension(), ball(identifier, step.dimension())))
        .append(".\n");
    for (Branch branch : step.branches()) {
      String names = branch.profiles().stream()
          .map(PlugProfile::displayName)
          .collect(Collectors.joining(" or "));
      out.append(indent)
          .append(padded(Digits.fixed(branch.low().millimetres(), 2)))
          .append(" to ");
      out.append(padded(Digits.fixed(branch.high().millimetres(), 2))).append(" mm   ");
      if (branch.next() > 0) {
        out.append(branch.profiles().size() == 1 ? "looks like " : "one of ")
            .append(names)
            .append(": go to ")
            .append(branch.next())
            .append(branch.profiles().size() == 1 ? " to make sure" : "");
      } else {
        out.append(branch.settled() ? "" : "one of ")
            .append(names)
            .append(branch.settled() ? "." : ": bands do not part them; measure the rest.");
        List<Dimension> rest = restOf(step, branch);
        if (!rest.isEmpty()) {
          boolean whole = branch.profiles().get(0).missingDimensions().isEmpty();
          out.append(whole ? " To identify it read also " : " Read also ")
              .append(rest.stream().map(Dimension::symbol).collect(Collectors.joining(", ")))
              .append('.');
        }
      }
      out.append('\n');
    }
    out.append(indent).append("anything else        none of the set.\n");
  }

  /** What the mating of a profile depends on and the set does not know, profiles with the same gaps together. */
  private void writeNotKnown(StringBuilder out, ReferenceSet set) {
    if (!identifier.expectsNearCopies()) {
      return;
    }
    Map<Set<Dimension>, List<String>> gaps = new LinkedHashMap<>();
    for (PlugProfile profile : set.profiles()) {
      if (!profile.missingDimensions().isEmpty()) {
        gaps.computeIfAbsent(profile.missingDimensions(), any -> new ArrayList<>())
            .add(profile.displayName());
      }
    }
    gaps.forEach(
        (missing, names) -> out.append("\nOf ")
            .append(names.size() == set.profiles().size() ? "no profile" : String.join(", ", names))
            .append(
                names.size() == set.profiles().size()
                    ? " does the set know "
                    : " the set does not know ")
            .append(missing.stream().map(Dimension::symbol).collect(Collectors.joining(", ")))
            .append(
                ", on which the mating depends too: a candidate at most, until they are in the set.\n"));
  }

  private static String padded(String number) {
    return " ".repeat(Math.max(0, 6 - number.length())) + number;
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof BenchPath that
        && identifier.equals(that.identifier)
        && effort.equals(that.effort);
  }

  @Override
  public int hashCode() {
    return Objects.hash(identifier, effort);
  }

  /** {@return the path as plain text} */
  @Override
  public String toString() {
    return toText();
  }
}
