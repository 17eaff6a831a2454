package org.airfit.benchmarks;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.concurrent.TimeUnit;
import org.airfit.air.AirState;
import org.airfit.flow.FlowCapacity;
import org.airfit.joint.End;
import org.airfit.line.Conduit;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.HoseBore;
import org.airfit.quantity.Length;
import org.airfit.quantity.Money;
import org.airfit.quantity.SonicConductance;
import org.airfit.quantity.Temperature;
import org.airfit.select.Catalogue;
import org.airfit.select.Environment;
import org.airfit.select.Lubrication;
import org.airfit.select.Material;
import org.airfit.select.Objective;
import org.airfit.select.Part;
import org.airfit.select.PartFacts;
import org.airfit.select.Requirement;
import org.airfit.select.Selection;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/** How long a choice out of a large shop takes. The shop is invented, its seed is fixed. */
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Warmup(iterations = 10, time = 1) // a choice takes so long that five seconds do not compile it
@Measurement(iterations = 5, time = 1)
@Fork(2)
@State(Scope.Thread)
public class SelectionBenchmark {

  private static final double SOCKETS = 0.36;
  private static final double PLUGS = 0.28;
  private static final double HOSES = 0.20;
  private static final double ADAPTERS = 0.16;

  private static final List<String> PROFILES =
      List.of("finch", "wren", "robin", "lark", "swift", "dunnock", "siskin", "linnet");
  private static final List<String> SIZES = List.of("1/8", "1/4", "3/8", "1/2", "3/4", "1");
  private static final List<Material> NO_RUST = List.of(Material.STAINLESS_STEEL, Material.BRASS);
  private static final double[] BORES_MM = {6.3, 8.0, 9.5, 10.0, 12.7, 16.0, 19.0};
  private static final double[] LENGTHS_METRES = {5.0, 7.5, 10.0, 15.0, 20.0, 25.0, 30.0};
  private static final double[] RATINGS_BAR = {10.0, 12.0, 15.0, 16.0, 20.0, 35.0};

  /** What is asked for. */
  public enum Job {
    /** A sander outdoors, any profile: thousands of combinations fit. */
    MANY_FIT,
    /** More pressure can occur than most hoses are rated for, in a cold that their makers exclude. */
    NO_PART_SUITS,
    /** More air at more pressure than the widest parts bring over that length. */
    NO_AIR_ARRIVES
  }

  /** What is asked for. */
  @Param
  public Job job = Job.MANY_FIT;

  /** By what it is put in order. */
  @Param
  public Objective ranking = Objective.FEWEST_PIECES;

  /** How many parts the shop has. */
  @Param({"1000", "10000", "40000"})
  public int size = 10_000;

  private final SplittableRandom random = new SplittableRandom(1);
  private Catalogue catalogue = Catalogue.of(List.of());
  private Requirement requirement = requirement(Job.MANY_FIT).build();

  /** Stocks the shop and refuses to time wrong answers. */
  @Setup
  public void fill() {
    stock();
    Selection answer = select();
    boolean fits = answer instanceof Selection.Proposals;
    List<?> listed = answer.fold(Selection.Proposals::proposals, Selection.NothingFits::nearest);
    if (fits != (job == Job.MANY_FIT) || listed.size() != Selection.LISTED) {
      throw new IllegalStateException("not the answer to " + job + ": " + answer);
    }
  }

  /** Stocks the shop. */
  void stock() {
    List<Part> parts = new ArrayList<>();
    for (int i = 0; i < SOCKETS * size; i++) {
      parts.add(socket(i));
    }
    for (int i = 0; i < PLUGS * size; i++) {
      parts.add(new Part.Plug(coupling("P" + i), one(PROFILES), end()));
    }
    for (int i = 0; i < HOSES * size; i++) {
      parts.add(hose(i));
    }
    for (int i = 0; i < ADAPTERS * size; i++) {
      parts.add(adapter(i));
    }
    catalogue = Catalogue.of(parts);
    requirement = requirement(job).objective(ranking).build();
  }

  private <T> T one(List<T> of) {
    return of.get(random.nextInt(of.size()));
  }

  private double one(double[] of) {
    return of[random.nextInt(of.length)];
  }

  private PartFacts facts(String id) {
    PartFacts facts = PartFacts.of(id, "part " + id)
        .withRating(GaugePressure.ofBar(one(RATINGS_BAR)))
        .withPrice(new Money(BigDecimal.valueOf(random.nextLong(250, 9000), 2), "EUR"));
    if (random.nextInt(3) > 0) {
      facts = facts.withTemperatures(
          Temperature.ofCelsius(-20.0), Temperature.ofCelsius(random.nextBoolean() ? 60.0 : 80.0));
    }
    return random.nextInt(20) == 0
        ? facts.withLubrication(one(List.of(Lubrication.values())))
        : facts;
  }

  private PartFacts coupling(String id) {
    PartFacts facts = facts(id).withMaterial(one(List.of(Material.values())));
    facts = random.nextInt(3) == 0 ? facts.withSleeveGuarded() : facts;
    return random.nextInt(3) == 0 ? facts.withVent() : facts;
  }

  private End end() {
    if (random.nextInt(8) == 0) {
      return End.parse(one(BORES_MM) + " mm barb");
    }
    String gender = random.nextBoolean() ? " male" : " female";
    String size = one(SIZES);
    return random.nextInt(3) > 0
        ? End.parse(size + " NPT" + gender)
        : End.parse("G " + size + gender);
  }

  private Part.Socket socket(int i) {
    Set<String> profiles =
        random.nextInt(12) == 0 ? Set.of("finch", "wren", "robin") : Set.of(one(PROFILES));
    double conductance = Math.round(10.0 * random.nextDouble(1.5, 14.0)) / 10.0;
    double ratio = Math.round(100.0 * random.nextDouble(0.15, 0.5)) / 100.0;
    return new Part.Socket(
        coupling("S" + i),
        profiles,
        end(),
        FlowCapacity.of(SonicConductance.ofCubicDecimetresPerSecondBar(conductance), ratio));
  }

  private Part.Hose hose(int i) {
    double bore = one(BORES_MM);
    End bare = End.parse(bore + " mm hose");
    return new Part.Hose(
        facts("H" + i).withMaterial(one(NO_RUST)),
        HoseBore.of(Length.ofMillimetres(bore)),
        Conduit.of(
                Length.ofMillimetres(bore),
                Length.ofMetres(one(LENGTHS_METRES)),
                Length.ofMillimetres(0.01))
            .withFittings(random.nextInt(5) * 0.5),
        random.nextInt(3) == 0 ? bare : end(),
        random.nextInt(3) == 0 ? bare : end());
  }

  private Part.Adapter adapter(int i) {
    return new Part.Adapter(
        facts("A" + i).withMaterial(one(NO_RUST)),
        end(),
        end(),
        Conduit.of(
                Length.ofMillimetres(random.nextInt(5, 20)),
                Length.ofMillimetres(random.nextInt(20, 60)),
                Length.ofMillimetres(0.05))
            .withFittings(1.5));
  }

  private static Requirement.Builder requirement(Job job) {
    boolean greedy = job == Job.NO_AIR_ARRIVES;
    Requirement.Builder requirement = Requirement.forTool(
            FreeAirFlow.ofAnrLitresPerSecond(greedy ? 60.0 : 10.0),
            GaugePressure.ofBar(greedy ? 6.9 : 6.2))
        .toolRating(GaugePressure.ofBar(7.5))
        .toolInlet(End.parse("1/4 NPT female"))
        .supply(
            AirState.of(AbsolutePressure.ofBar(8.0), Temperature.ofCelsius(20.0)),
            AbsolutePressure.ofBar(1.0))
        .pipe(
            "pipe",
            Conduit.of(
                Length.ofMillimetres(35.1), Length.ofMetres(40.0), Length.ofMillimetres(0.045)))
        .outlet(End.parse("1/2 NPT female"))
        .reach(Length.ofMetres(10.0))
        .environment(Environment.OUTDOORS)
        .dragged()
        .lubrication(Lubrication.DRY);
    return job == Job.NO_PART_SUITS
        ? requirement
            .highest(GaugePressure.ofBar(40.0))
            .temperatures(Temperature.ofCelsius(-30.0), Temperature.ofCelsius(70.0))
        : requirement;
  }

  /**
   * The choice.
   *
   * @return the answer
   */
  @Benchmark
  public Selection select() {
    return Selection.of(requirement, catalogue);
  }
}
