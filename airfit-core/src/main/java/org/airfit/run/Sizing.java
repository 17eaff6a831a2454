package org.airfit.run;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Stream;
import org.airfit.flow.FlowCapacity;
import org.airfit.line.Conduit;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.Money;
import org.airfit.quantity.PressureUnit;
import org.airfit.safety.Caution;
import org.airfit.working.UnitSystem;
import org.airfit.working.Worked;
import org.airfit.working.Working;

/**
 * Which of the hoses, bodies and pipes on offer keep a tool at its pressure: the cheapest, the one with most margin,
 * and
 * those that nothing on offer beats in both.
 *
 * <p>Every combination of the options is computed as a run of its own, with a margin for wear and dirt. Nothing is
 * estimated.
 *
 * <p>This class is immutable and thread-safe.
 */
public final class Sizing {

  private static final int MOST_COMBINATIONS = 100_000;

  /** One thing on offer for a place in the run. */
  private sealed interface Option {

    String name();

    Money price();

    Run put(Run run, String place);
  }

  private record LineOption(String name, Conduit conduit, Money price) implements Option {

    @Override
    public Run put(Run run, String place) {
      return run.replacing(place, conduit);
    }
  }

  private record PartOption(String name, FlowCapacity capacity, Money price) implements Option {

    @Override
    public Run put(Run run, String place) {
      return run.replacing(place, capacity);
    }
  }

  private final Run run;
  private final ToolDemand tool;
  private final GaugePressure least;
  private final double lossFactor;
  private final Map<String, List<Option>> options;

  private Sizing(
      Run run,
      ToolDemand tool,
      GaugePressure least,
      double lossFactor,
      Map<String, List<Option>> options) {
    this.run = run;
    this.tool = tool;
    this.least = least;
    this.lossFactor = lossFactor;
    this.options = Collections.unmodifiableMap(options);
  }

  /**
   * Starts a sizing.
   *
   * @param run the run with anything in the places to be sized
   * @param tool what the tool takes
   * @param least the least pressure at the tool, not below the atmosphere
   * @return a sizing without options and without margin
   * @throws IllegalArgumentException if {@code least} is negative
   */
  public static Sizing of(Run run, ToolDemand tool, GaugePressure least) {
    Objects.requireNonNull(run, "run");
    Objects.requireNonNull(tool, "tool");
    Run.requireNoVacuum(Objects.requireNonNull(least, "least"));
    return new Sizing(run, tool, least, 1.0, Map.of());
  }

  /**
   * Adds a hose, pipe or tube on offer.
   *
   * @param place the name of the line in the run
   * @param name what to call the option
   * @param conduit the conduit
   * @param price what it costs, at least 0, in the currency of the others
   * @return the sizing with it
   * @throws IllegalArgumentException if the run has no such line, or the price is negative or in another currency
   */
  public Sizing with(String place, String name, Conduit conduit, Money price) {
    return with(
        place,
        new LineOption(
            Objects.requireNonNull(name, "name"),
            Objects.requireNonNull(conduit, "conduit"),
            Objects.requireNonNull(price, "price")));
  }

  /**
   * Adds a coupler body, valve, filter or the like on offer.
   *
   * @param place the name of the part in the run
   * @param name what to call the option
   * @param capacity the part
   * @param price what it costs, at least 0, in the currency of the others
   * @return the sizing with it
   * @throws IllegalArgumentException if the run has no such part, or the price is negative or in another currency
   */
  public Sizing with(String place, String name, FlowCapacity capacity, Money price) {
    return with(
        place,
        new PartOption(
            Objects.requireNonNull(name, "name"),
            Objects.requireNonNull(capacity, "capacity"),
            Objects.requireNonNull(price, "price")));
  }

  private Sizing with(String place, Option option) {
    option.put(run, Objects.requireNonNull(place, "place")); // refuses a place that is none
    if (option.price().amount().signum() < 0) {
      throw new IllegalArgumentException(
          "price of " + option.name() + " must be at least 0, was " + option.price());
    }
    options.values().stream()
        .flatMap(List::stream)
        .findFirst()
        .ifPresent(first -> first.price().compareTo(option.price())); // one currency
    Map<String, List<Option>> more = new LinkedHashMap<>(options);
    List<Option> here = new ArrayList<>(more.getOrDefault(place, List.of()));
    here.add(option);
    more.put(place, List.copyOf(here));
    double combinations = 1.0;
    for (List<Option> there : more.values()) {
      combinations *= there.size();
    }
    if (combinations > MOST_COMBINATIONS) {
      throw new IllegalArgumentException("combinations of the options must be at most "
          + MOST_COMBINATIONS + ", was " + Math.round(combinations));
    }
    return new Sizing(run, tool, least, lossFactor, more);
  }

  /**
   * Obtains this sizing with a margin for wear and dirt.
   *
   * @param factor the factor on the loss of every element, the user's own [-], in [1, 10]
   * @return this with {@code factor}
   * @throws IllegalArgumentException if {@code factor} is out of range
   */
  public Sizing withLossFactor(double factor) {
    run.withLossFactor(factor);
    return new Sizing(run, tool, least, factor, options);
  }

  /**
   * Computes every combination.
   *
   * @return those that keep the tool at pressure, or the nearest miss
   * @throws IllegalStateException if there are no options
   */
  public Result solve() {
    if (options.isEmpty()) {
      throw new IllegalStateException("a sizing needs options, say with(…)");
    }
    List<SizingOption> all = new ArrayList<>();
    combine(new ArrayList<>(options.entrySet()), 0, new LinkedHashMap<>(), run, all);
    List<SizingOption> kept = all.stream()
        .filter(SizingOption::keepsPressure)
        .sorted(SizingOption.BY_PRICE)
        .toList();
    return kept.isEmpty()
        ? new NoSolution(all.stream().min(SizingOption.BY_MARGIN).orElseThrow())
        : new Solutions(kept);
  }

  private void combine(
      List<Map.Entry<String, List<Option>>> places,
      int at,
      Map<String, Option> chosen,
      Run sofar,
      List<SizingOption> all) {
    if (at < places.size()) {
      for (Option option : places.get(at).getValue()) {
        chosen.put(places.get(at).getKey(), option);
        combine(places, at + 1, chosen, option.put(sofar, places.get(at).getKey()), all);
      }
      return;
    }
    Map<String, String> names = new LinkedHashMap<>();
    Optional<Money> price = Optional.empty();
    for (Map.Entry<String, Option> one : chosen.entrySet()) {
      Money next = one.getValue().price();
      names.put(one.getKey(), one.getValue().name());
      price = Optional.of(price.map(sum -> sum.plus(next)).orElse(next));
    }
    SizingOption worn = option(names, price.orElseThrow(), sofar, lossFactor);
    // at a jump of friction less may be left as new than worn
    all.add(
        lossFactor == 1.0 || !worn.keepsPressure()
            ? worn
            : Stream.of(worn, option(names, price.orElseThrow(), sofar, 1.0))
                .min(Comparator.comparingDouble(SizingOption::marginPascals))
                .orElseThrow());
  }

  private SizingOption option(Map<String, String> names, Money price, Run asNew, double factor) {
    return new SizingOption(names, price, asNew, asNew.withLossFactor(factor).balance(tool), least);
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof Sizing that
        && run.equals(that.run)
        && tool.equals(that.tool)
        && least.equals(that.least)
        && Double.compare(lossFactor, that.lossFactor) == 0
        && options.equals(that.options);
  }

  @Override
  public int hashCode() {
    return Objects.hash(run, tool, least, lossFactor, options);
  }

  /** {@return the sizing in one line, such as "2 places for grinder to have 6 bar(g)"} */
  @Override
  public String toString() {
    return options.size() + " places for " + tool.name() + " to have "
        + least.format(PressureUnit.BAR);
  }

  /** What came of a sizing. */
  public sealed interface Result extends Worked {

    /**
     * Handles both cases.
     *
     * @param <R> what is made of them
     * @param solutions what to make of combinations that keep the tool at pressure
     * @param none what to make of no such combination
     * @return what was made
     */
    <R> R fold(
        Function<? super Solutions, ? extends R> solutions,
        Function<? super NoSolution, ? extends R> none);

    /** {@return the warnings that go with it} */
    default List<Caution> cautions() {
      return List.of(Caution.MORE_SUPPLY_PRESSURE);
    }
  }

  /**
   * Combinations that keep the tool at pressure.
   *
   * <p>This class is immutable, thread-safe and value-based.
   */
  public static final class Solutions implements Result {

    private final List<SizingOption> options;

    private Solutions(List<SizingOption> options) {
      this.options = List.copyOf(options);
    }

    /** {@return all of them, the cheapest first} */
    public List<SizingOption> options() {
      return options;
    }

    /** {@return the cheapest; of equal prices, that with most margin} */
    public SizingOption cheapest() {
      return options.get(0);
    }

    /** {@return that with most pressure at the tool; of equal ones, the cheapest} */
    public SizingOption mostMargin() {
      return options.stream()
          .min(SizingOption.BY_MARGIN.thenComparing(SizingOption::price))
          .orElseThrow();
    }

    /**
     * {@return those that no other beats in price without losing margin, cheapest first: each has more margin than all
     * before it}
     */
    public List<SizingOption> pareto() {
      List<SizingOption> front = new ArrayList<>();
      for (SizingOption option : options) {
        if (front.isEmpty()
            || option.marginPascals() > front.get(front.size() - 1).marginPascals()) {
          front.add(option);
        }
      }
      return List.copyOf(front);
    }

    @Override
    public <R> R fold(
        Function<? super Solutions, ? extends R> solutions,
        Function<? super NoSolution, ? extends R> none) {
      Objects.requireNonNull(none, "none");
      return Objects.requireNonNull(solutions, "solutions").apply(this);
    }

    @Override
    public Working working(UnitSystem units) {
      return told("The cheapest that keeps the tool at pressure", "Chosen", cheapest(), units);
    }

    @Override
    public boolean equals(Object other) {
      return other instanceof Solutions that && options.equals(that.options);
    }

    @Override
    public int hashCode() {
      return options.hashCode();
    }

    /** {@return the answer in one line, such as "12 combinations, the cheapest hose 1/2 in for 30 USD"} */
    @Override
    public String toString() {
      return options.size() + " combinations, the cheapest " + cheapest();
    }
  }

  /**
   * No combination keeps the tool at pressure.
   *
   * <p>This class is immutable, thread-safe and value-based.
   */
  public static final class NoSolution implements Result {

    private final SizingOption nearest;

    private NoSolution(SizingOption nearest) {
      this.nearest = nearest;
    }

    /** {@return the combination that comes nearest} */
    public SizingOption nearest() {
      return nearest;
    }

    @Override
    public <R> R fold(
        Function<? super Solutions, ? extends R> solutions,
        Function<? super NoSolution, ? extends R> none) {
      Objects.requireNonNull(solutions, "solutions");
      return Objects.requireNonNull(none, "none").apply(this);
    }

    @Override
    public Working working(UnitSystem units) {
      return told("Nothing keeps the tool at pressure; the nearest", "Nearest", nearest, units);
    }

    @Override
    public boolean equals(Object other) {
      return other instanceof NoSolution that && nearest.equals(that.nearest);
    }

    @Override
    public int hashCode() {
      return nearest.hashCode();
    }

    /**
     * {@return the answer in one line, such as "nothing keeps the tool at pressure; the nearest hose 1/2 in for 30
     * USD"}
     */
    @Override
    public String toString() {
      return "nothing keeps the tool at pressure; the nearest " + nearest;
    }
  }

  private static Working told(String title, String lead, SizingOption option, UnitSystem units) {
    return Working.titled(title, units)
        .include(option.result().working(units))
        .answer(lead + ": " + option + ".")
        .build();
  }
}
