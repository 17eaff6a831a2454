package org.airfit.select;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.airfit.flow.CapacityRange;
import org.airfit.line.ConduitRange;
import org.airfit.plant.RegulatorRange;
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

    void tell(Unknowns unknowns);

    boolean isExactUpTo(MassFlow flow);
  }

  private record Line(String name, ConduitRange conduit) implements Piece {
    @Override
    public Run addTo(Run run, Known known) {
      return run.through(name, known.of(conduit));
    }

    @Override
    public void tell(Unknowns unknowns) {
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
    public void tell(Unknowns unknowns) {
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
    public void tell(Unknowns unknowns) {
      unknowns.regulator(name, regulator, set);
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
   * {@return met if the tool has its air whatever is not known, unmet if it has not, open if it depends}
   *
   * @throws IllegalStateException if air goes through nothing: no piping was told and nothing is connected
   */
  public RuleOutcome outcome() {
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
    if (outcome() != RuleOutcome.OPEN) {
      return List.of();
    }
    Unknowns unknowns = new Unknowns(job, run);
    unknowns.ofJob(toOutlet -> {
      Run whole = toOutlet;
      for (Piece piece : pieces) {
        whole = piece.addTo(whole, Known.AT_WORST);
      }
      return whole;
    });
    pieces.forEach(piece -> piece.tell(unknowns));
    return unknowns.doubts().stream().map(this::withinRating).toList();
  }

  /** The setting of the last regulator may not be above what the tool's maker allows, however much air that gives. */
  private Doubt withinRating(Doubt doubt) {
    Optional<Regulated> last =
        lastRegulator().filter(each -> doubt.what().equals(Unknowns.SETTING + each.name()));
    Optional<GaugePressure> allowed = job.toolRating()
        .filter(rating ->
            last.filter(each -> rating.compareTo(each.set().most()) < 0).isPresent());
    return allowed
        .map(rating -> doubt.upTo(rating, isEnoughSetTo(last.orElseThrow(), rating)))
        .orElse(doubt);
  }

  /** Whether a setting that can be is enough, all else at its worst, if a regulator is set to what the tool may get. */
  private boolean isEnoughSetTo(Regulated regulated, GaugePressure rating) {
    if (rating.compareTo(regulated.set().least()) < 0) {
      return false;
    }
    RunNow other = of(job);
    for (Piece piece : pieces) {
      other = other.with(
          piece.equals(regulated)
              ? new Regulated(regulated.name(), regulated.regulator(), Range.exactly(rating))
              : piece);
    }
    return other.outcome() == RuleOutcome.MET;
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
    GaugePressure held = job.pressures().whileRegulated().orElse(job.highest());
    for (Piece piece : pieces) {
      if (piece instanceof Regulated regulated && regulated.set().most().compareTo(held) < 0) {
        held = regulated.set().most();
      }
    }
    return held;
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
            .map(
                last -> (last.set().isExact() ? "" : "ask what " + last.name() + " is set to, and ")
                    + "lower " + (last.set().isExact() ? last.name() : "it") + " to at most "
                    + atMost
                    + ".")
            .orElse(
                job.pressures().whileRegulated().isPresent()
                    ? "lower the regulator at the supply to at most " + atMost + "."
                    : "set a regulator in front of it to at most " + atMost + ".");
  }

  private String ifFails(GaugePressure rating, UnitSystem units) {
    return "If the regulator fails, the tool may get up to " + units.sayBoth(job.highest())
        + "; it is made for at most " + units.sayBoth(rating)
        + ": a relief valve behind the regulator, set to at most that, guards it.";
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
