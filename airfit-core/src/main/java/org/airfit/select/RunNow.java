package org.airfit.select;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Stream;
import org.airfit.flow.CapacityRange;
import org.airfit.line.ConduitRange;
import org.airfit.plant.RegulatorRange;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.MassFlow;
import org.airfit.quantity.Range;
import org.airfit.run.Run;
import org.airfit.run.RunResult;
import org.airfit.working.UnitSystem;

/**
 * What is connected to the outlet of a job now, as well as it is known, and whether the tool has its air: whatever it
 * is, whatever it is not, or depending on what is not known.
 *
 * <p>This class is immutable, thread-safe and value-based; {@code through} returns a longer run.
 */
public final class RunNow {

  /** One thing that is connected. */
  private sealed interface Piece {
    Run addTo(Run run, Known known);

    void tell(Unknowns unknowns, FreeAirFlow flow);

    boolean isExactUpTo(MassFlow flow);
  }

  private record Line(String name, ConduitRange conduit) implements Piece {
    @Override
    public Run addTo(Run run, Known known) {
      return run.through(name, known.of(conduit));
    }

    @Override
    public void tell(Unknowns unknowns, FreeAirFlow flow) {
      unknowns.conduit(name, conduit);
    }

    @Override
    public boolean isExactUpTo(MassFlow flow) {
      return conduit.isExact();
    }
  }

  private record Passage(String name, CapacityRange capacity) implements Piece {
    @Override
    public Run addTo(Run run, Known known) {
      return run.through(name, known.of(capacity));
    }

    @Override
    public void tell(Unknowns unknowns, FreeAirFlow flow) {
      unknowns.capacity(name, capacity);
    }

    @Override
    public boolean isExactUpTo(MassFlow flow) {
      return capacity.isExact();
    }
  }

  private record Regulated(String name, RegulatorRange regulator, Range<GaugePressure> set)
      implements Piece {
    @Override
    public Run addTo(Run run, Known known) {
      GaugePressure end = known.ofSetting(set);
      return run.through(
          name,
          known == Known.AT_WORST
              ? regulator.atWorst(end, run.atmosphere())
              : regulator.atBest(end, run.atmosphere()));
    }

    @Override
    public void tell(Unknowns unknowns, FreeAirFlow flow) {
      unknowns.regulator(name, regulator, set, flow);
    }

    @Override
    public boolean isExactUpTo(MassFlow flow) {
      return set.isExact() && regulator.isExactUpTo(flow);
    }
  }

  private final Requirement job;
  private final List<Piece> pieces;
  private final Run run;
  private final Run atBest;

  private RunNow(Requirement job, List<Piece> pieces, Run run, Run atBest) {
    this.job = job;
    this.pieces = pieces;
    this.run = run;
    this.atBest = atBest;
  }

  /**
   * Starts at the outlet of a job.
   *
   * @param job what the tool needs, and what stands in front of the outlet
   * @return the run to the outlet
   */
  public static RunNow of(Requirement job) {
    return new RunNow(
        Objects.requireNonNull(job, "job"),
        List.of(),
        job.toOutlet(Known.AT_WORST),
        job.toOutlet(Known.AT_BEST));
  }

  private RunNow with(Piece piece) {
    List<Piece> longer = new ArrayList<>(pieces);
    longer.add(piece);
    return new RunNow(
        job,
        List.copyOf(longer),
        piece.addTo(run, Known.AT_WORST),
        piece.addTo(atBest, Known.AT_BEST));
  }

  /**
   * Leads through a pipe, tube or hose.
   *
   * @param name what to call it, different from the others
   * @param conduit the pipe, tube or hose, as well as it is known
   * @return the longer run
   * @throws IllegalArgumentException if an element of this run has that name
   */
  public RunNow through(String name, ConduitRange conduit) {
    return with(
        new Line(Objects.requireNonNull(name, "name"), Objects.requireNonNull(conduit, "conduit")));
  }

  /**
   * Leads through a coupling, valve, filter or the like.
   *
   * @param name what to call it, different from the others
   * @param capacity how much it lets through, as well as that is known
   * @return the longer run
   * @throws IllegalArgumentException if an element of this run has that name
   */
  public RunNow through(String name, CapacityRange capacity) {
    return with(new Passage(
        Objects.requireNonNull(name, "name"), Objects.requireNonNull(capacity, "capacity")));
  }

  /**
   * Leads through a regulator.
   *
   * @param name what to call it, different from the others
   * @param regulator the regulator, as well as it is known
   * @param set what it is set to
   * @return the longer run
   * @throws IllegalArgumentException if an element of this run has that name, or {@code set} is not above the droop
   */
  public RunNow through(String name, RegulatorRange regulator, GaugePressure set) {
    return through(name, regulator, Range.exactly(Objects.requireNonNull(set, "set")));
  }

  /**
   * Leads through a regulator of which it is not known exactly what it is set to.
   *
   * @param name what to call it, different from the others
   * @param regulator the regulator, as well as it is known
   * @param set between which pressures what it is set to lies: the air is judged from the least to the most
   * @return the longer run
   * @throws IllegalArgumentException if an element of this run has that name, or the least of {@code set} is not above
   *     the droop
   */
  public RunNow through(String name, RegulatorRange regulator, Range<GaugePressure> set) {
    return with(new Regulated(
        Objects.requireNonNull(name, "name"),
        Objects.requireNonNull(regulator, "regulator"),
        Objects.requireNonNull(set, "set")));
  }

  /** {@return the run at worst: every part lets least through of what it can be} */
  public Run run() {
    return run;
  }

  /** {@return the run at best: every part lets most through of what it can be} */
  public Run runAtBest() {
    return atBest;
  }

  /**
   * {@return what arrives at worst: the tool takes the most that it can take}
   *
   * @throws IllegalStateException if air goes through nothing: no piping was told and nothing is connected
   */
  public RunResult result() {
    return run.at(job.demand());
  }

  /**
   * {@return what arrives at best: the tool takes the least that it can take}
   *
   * @throws IllegalStateException if air goes through nothing: no piping was told and nothing is connected
   */
  public RunResult resultAtBest() {
    return atBest.at(job.demandRange().least());
  }

  /** {@return whether all is known exactly, of the job and of what is connected, with the air that may be drawn} */
  public boolean isExact() {
    MassFlow most = job.airAtOutlet().most().massFlow();
    return job.isExact() && pieces.stream().allMatch(piece -> piece.isExactUpTo(most));
  }

  /**
   * {@return the worse of {@link #airOutcome} and {@link #pressureOutcome}: unmet if one of them is, else open if one
   * is, else met while the regulator holds or met; where it is not known what the tool's maker allows, that of the air
   * alone}
   *
   * @throws IllegalStateException if air goes through nothing: no piping was told and nothing is connected
   */
  public RuleOutcome outcome() {
    RuleOutcome air = airOutcome();
    return job.toolRating().isEmpty()
        ? air
        : RuleOutcome.worst(Stream.of(air, pressureOutcome())).orElseThrow();
  }

  /**
   * Says whether the tool may stand what is at it while it takes no air. It says nothing of its air.
   *
   * @return met if it may even where a regulator fails, met while the regulator holds if only then, unmet if it may not
   *     whatever the regulators are set to, open if that depends on their settings or it is not known what the tool's
   *     maker allows
   */
  public RuleOutcome pressureOutcome() {
    return job.toolRating()
        .map(rating -> {
          if (isToolOverPressured()) {
            return rating.compareTo(deadEnd(Range::least)) < 0
                ? RuleOutcome.UNMET
                : RuleOutcome.OPEN;
          }
          return rating.compareTo(job.highest()) < 0
              ? RuleOutcome.MET_WHILE_REGULATED
              : RuleOutcome.MET;
        })
        .orElse(RuleOutcome.OPEN);
  }

  /**
   * {@return met if the tool has its air whatever is not known, unmet if it has not, open if it depends} It says nothing
   * of the pressure that the tool may stand: {@link #pressureOutcome} does, and {@link #outcome} covers both.
   *
   * @throws IllegalStateException if air goes through nothing: no piping was told and nothing is connected
   */
  public RuleOutcome airOutcome() {
    if (Assembly.isAtLeast(result(), job.least())) {
      return RuleOutcome.MET;
    }
    return Assembly.isAtLeast(resultAtBest(), job.leastRange().least())
        ? RuleOutcome.OPEN
        : RuleOutcome.UNMET;
  }

  /**
   * {@return what is not known and decides, with the value at which the answer turns; empty where it is settled}
   *
   * @throws IllegalStateException if air goes through nothing: no piping was told and nothing is connected
   */
  public List<Doubt> doubts() {
    if (airOutcome() != RuleOutcome.OPEN) {
      return List.of();
    }
    Unknowns unknowns = new Unknowns(job, run, lastRegulator().map(Regulated::name));
    unknowns.ofJob(toOutlet -> {
      Run whole = toOutlet;
      for (Piece piece : pieces) {
        whole = piece.addTo(whole, Known.AT_WORST);
      }
      return whole;
    });
    pieces.forEach(piece -> piece.tell(unknowns, job.demand()));
    return unknowns.doubts();
  }

  private Optional<Regulated> lastRegulator() {
    return pieces.stream()
        .filter(Regulated.class::isInstance)
        .map(Regulated.class::cast)
        .reduce((earlier, later) -> later);
  }

  /**
   * {@return the highest pressure that can stand at the tool while it takes no air and every regulator holds, of those
   * that are connected and of one at the supply; without a regulator the highest of the supply}
   */
  public GaugePressure deadEnd() {
    return deadEnd(Range::most);
  }

  /** The same with every regulator set to one end of what it may be set to. */
  private GaugePressure deadEnd(Function<Range<GaugePressure>, GaugePressure> end) {
    GaugePressure held = isSupplyRegulated() ? end.apply(job.settingRange()) : job.highest();
    for (Piece piece : pieces) {
      if (piece instanceof Regulated regulated) {
        GaugePressure set = end.apply(regulated.set());
        held = set.compareTo(held) < 0 ? set : held;
      }
    }
    return held;
  }

  private boolean isSupplyRegulated() {
    return job.pressures().whileRegulated().isPresent();
  }

  /**
   * {@return whether the tool can get more than its maker allows while every regulator holds; no where it is not known
   * what its maker allows}
   */
  public boolean isToolOverPressured() {
    return job.toolRating().filter(rating -> rating.compareTo(deadEnd()) < 0).isPresent();
  }

  /**
   * Tells that the tool can get more pressure than its maker allows, and what to do.
   *
   * @param units the units
   * @return sentences; blank where it cannot, even if a regulator fails, or where it is not known what its maker allows
   */
  public String overPressure(UnitSystem units) {
    Objects.requireNonNull(units, "units");
    return job.toolRating()
        .filter(rating -> rating.compareTo(job.highest()) < 0)
        .map(rating -> isToolOverPressured() ? tooHigh(rating, units) : ifFails(rating, units))
        .orElse("");
  }

  private String tooHigh(GaugePressure rating, UnitSystem units) {
    String atMost = units.sayBoth(rating);
    return "The tool may get up to " + units.sayBoth(deadEnd())
        + " while it takes no air; it is made for at most " + atMost + ": "
        + lastRegulator()
            .map(last -> lower(last.name(), last.set(), atMost))
            .orElse(
                isSupplyRegulated()
                    ? lower(Unknowns.AT_SUPPLY, job.settingRange(), atMost)
                    : "set a regulator in front of it to at most " + atMost + ".");
  }

  /** What to do with a regulator that can be set too high; of one of which that is not known, to ask first. */
  private static String lower(String regulator, Range<GaugePressure> set, String atMost) {
    return (set.isExact()
            ? "lower " + regulator
            : "ask what " + regulator + " is set to, and lower it")
        + " to at most " + atMost + ".";
  }

  private String ifFails(GaugePressure rating, UnitSystem units) {
    return "If the regulator fails, the tool may get " + units.sayBoth(job.highest())
        + "; it is made for at most " + units.sayBoth(rating)
        + ": a relief valve set to that guards it.";
  }

  /**
   * Tells what to ask, where it depends.
   *
   * @param units the units
   * @return a sentence with the values at which the answer turns; blank where it is settled
   * @throws IllegalStateException if air goes through nothing: no piping was told and nothing is connected
   */
  public String whatToAsk(UnitSystem units) {
    List<Doubt> doubts = doubts();
    return doubts.isEmpty() ? "" : Doubt.whatToAsk(doubts, Objects.requireNonNull(units, "units"));
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof RunNow that && job.equals(that.job) && pieces.equals(that.pieces);
  }

  @Override
  public int hashCode() {
    return Objects.hash(job, pieces);
  }

  /** {@return what the air goes through, at worst} */
  @Override
  public String toString() {
    return run.toString();
  }
}
