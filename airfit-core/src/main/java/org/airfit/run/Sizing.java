package org.airfit.run;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import org.airfit.flow.FlowCapacity;
import org.airfit.line.Conduit;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.Money;
import org.airfit.safety.Caution;
import org.airfit.working.Working;

/**
 * Which of the hoses, bodies and pipes on offer keep a tool at its pressure: the cheapest, the one with most margin, and those that nothing on offer beats in both.
 *
 * <p>Every combination of the options is computed as a run of its own, with a margin for wear and dirt. Nothing is estimated.
 *
 * <p>This class is immutable and thread-safe.
 */
public final class Sizing {

  private static final int MOST_COMBINATIONS = 100_000;

  /** One thing on offer for a place in the run. */
  private record Option(String name, Money price, Function<Run, Run> put) {}

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
    this.options = options;
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
    Run.requireNoVacuum(least);
    run.atmosphere(); // null fails here
    tool.name();
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
    run.replacing(place, conduit);
    return with(place, new Option(name, price, r -> r.replacing(place, conduit)));
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
    run.replacing(place, capacity);
    return with(place, new Option(name, price, r -> r.replacing(place, capacity)));
  }

  private Sizing with(String place, Option option) {
    if (option.price.amount().signum() < 0) {
      throw new IllegalArgumentException(
          "price of " + option.name + " must be at least 0, was " + option.price);
    }
    options.values().stream()
        .flatMap(List::stream)
        .findFirst()
        .ifPresent(first -> first.price.compareTo(option.price)); // one currency
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
    List<Candidate> candidates = new ArrayList<>();
    combine(new ArrayList<>(options.entrySet()), 0, new LinkedHashMap<>(), run, candidates);
    List<Candidate> fitting = candidates.stream()
        .filter(candidate -> candidate.marginPascals() >= 0.0)
        .sorted(BY_PRICE)
        .toList();
    return fitting.isEmpty()
        ? new NothingFits(
            least,
            candidates.stream().min(BY_MARGIN).orElseThrow(),
            List.of(Caution.MORE_SUPPLY_PRESSURE))
        : new Fitting(least, fitting, List.of(Caution.MORE_SUPPLY_PRESSURE));
  }

  private void combine(
      List<Map.Entry<String, List<Option>>> places,
      int at,
      Map<String, Option> chosen,
      Run sofar,
      List<Candidate> candidates) {
    if (at < places.size()) {
      for (Option option : places.get(at).getValue()) {
        chosen.put(places.get(at).getKey(), option);
        combine(places, at + 1, chosen, option.put.apply(sofar), candidates);
      }
      return;
    }
    Map<String, String> names = new LinkedHashMap<>();
    Optional<Money> price = Optional.empty();
    for (Map.Entry<String, Option> one : chosen.entrySet()) {
      Money next = one.getValue().price;
      names.put(one.getKey(), one.getValue().name);
      price = Optional.of(price.map(sum -> sum.plus(next)).orElse(next));
    }
    RunResult result = sofar.withLossFactor(lossFactor).balance(tool);
    double margin = result.<Double>fold(
        delivered -> delivered.atToolGauge().pascals() - least.pascals(),
        starved -> -least.pascals() - 1.0);
    candidates.add(new Candidate(names, price.orElseThrow(), sofar, result, margin));
  }

  private static final Comparator<Candidate> BY_MARGIN =
      Comparator.comparingDouble(Candidate::marginPascals).reversed();

  private static final Comparator<Candidate> BY_PRICE =
      Comparator.comparing(Candidate::price).thenComparing(BY_MARGIN);

  /**
   * One combination of options.
   *
   * @param chosen the option at each place
   * @param price what they cost together
   * @param run the run with them, new and clean
   * @param result how the tool fares with the margin for wear and dirt
   * @param marginPascals the pressure at the tool above the least one then [Pa]; negative where it is missed, and by more than the whole where the tool can't be fed
   */
  public record Candidate(
      Map<String, String> chosen, Money price, Run run, RunResult result, double marginPascals) {

    /**
     * Copies the map.
     *
     * @param chosen the option at each place
     * @param price what they cost together
     * @param run the run with them, new and clean
     * @param result how the tool fares with the margin for wear and dirt
     * @param marginPascals the pressure at the tool above the least one then [Pa]
     */
    public Candidate {
      chosen = Collections.unmodifiableMap(new LinkedHashMap<>(chosen));
    }
  }

  /** What came of a sizing. */
  public sealed interface Result {

    /**
     * Handles both cases.
     *
     * @param <R> what is made of them
     * @param fitting what to make of combinations that fit
     * @param nothing what to make of none
     * @return what was made
     */
    <R> R fold(
        Function<? super Fitting, ? extends R> fitting,
        Function<? super NothingFits, ? extends R> nothing);

    /** {@return how the tool fares with the best combination, or the nearest} */
    Working working();

    /** {@return the warnings that go with it} */
    List<Caution> cautions();
  }

  /**
   * Combinations that keep the tool at pressure.
   *
   * @param least the least pressure at the tool
   * @param candidates all of them, the cheapest first
   * @param cautions the warnings that go with it
   */
  public record Fitting(GaugePressure least, List<Candidate> candidates, List<Caution> cautions)
      implements Result {

    /**
     * Copies the list.
     *
     * @param least the least pressure at the tool
     * @param candidates all of them, the cheapest first
     * @param cautions the warnings that go with it
     */
    public Fitting {
      candidates = List.copyOf(candidates);
    }

    /** {@return the cheapest; of equal prices, that with most margin} */
    public Candidate cheapest() {
      return candidates.get(0);
    }

    /** {@return that with most pressure at the tool; of equal ones, the cheapest} */
    public Candidate mostMargin() {
      return candidates.stream().min(BY_MARGIN.thenComparing(Candidate::price)).orElseThrow();
    }

    /** {@return those that no other beats in price without losing margin, cheapest first: each has more margin than all before it} */
    public List<Candidate> pareto() {
      List<Candidate> front = new ArrayList<>();
      for (Candidate candidate : candidates) {
        if (front.isEmpty()
            || candidate.marginPascals() > front.get(front.size() - 1).marginPascals()) {
          front.add(candidate);
        }
      }
      return List.copyOf(front);
    }

    @Override
    public <R> R fold(
        Function<? super Fitting, ? extends R> fitting,
        Function<? super NothingFits, ? extends R> nothing) {
      return fitting.apply(this);
    }

    @Override
    public Working working() {
      return told("The cheapest that keeps the tool at pressure", cheapest());
    }
  }

  /**
   * No combination keeps the tool at pressure.
   *
   * @param least the least pressure at the tool
   * @param nearest the combination that comes nearest
   * @param cautions the warnings that go with it
   */
  public record NothingFits(GaugePressure least, Candidate nearest, List<Caution> cautions)
      implements Result {

    @Override
    public <R> R fold(
        Function<? super Fitting, ? extends R> fitting,
        Function<? super NothingFits, ? extends R> nothing) {
      return nothing.apply(this);
    }

    @Override
    public Working working() {
      return told("Nothing keeps the tool at pressure; the nearest", nearest);
    }
  }

  private static Working told(String title, Candidate candidate) {
    return Working.titled(title)
        .note("Chosen: " + candidate.chosen() + " for " + candidate.price() + ".")
        .include(candidate.result().working())
        .build();
  }
}
