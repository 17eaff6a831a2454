package org.airfit.run;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.SplittableRandom;
import org.airfit.ReliabilityTable;
import org.airfit.air.AirState;
import org.airfit.flow.FlowCapacity;
import org.airfit.flow.Orifice;
import org.airfit.line.Conduit;
import org.airfit.line.FrictionLaw;
import org.airfit.line.LossModel;
import org.airfit.line.LossModels;
import org.airfit.line.PipeEquation;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.Length;
import org.airfit.quantity.MassFlow;
import org.airfit.quantity.PressureDrop;
import org.airfit.quantity.ReferenceState;
import org.airfit.quantity.SonicConductance;
import org.airfit.quantity.Temperature;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;

/**
 * How often a diagnosis is right. The workshop that draws is not the judge's model: what is known roughly is off
 * evenly and not normally, the friction is another law's, a leak is a hole, a regulator bends down with the square of
 * the flow, gauges have one offset, one error of scale and a pointer that hangs behind and shows printed divisions
 * alone, and faults have other sizes than the judge takes for probable.
 */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class DiagnosisReliabilityTest {

  /** As many cases a run and a kind of case as a build takes time for; -Dairfit.diagnoses=400 for more. */
  private static final int CASES = Integer.getInteger("airfit.diagnoses", 40);

  private static final int RUNS = 8;

  private static final AbsolutePressure ATMOSPHERE = AbsolutePressure.ofBar(1.0);

  private static final Temperature WARM = Temperature.ofCelsius(20.0);

  private static final LossModel OTHER_LAW =
      LossModels.of(PipeEquation.ISOTHERMAL, FrictionLaw.HAALAND);

  /** A run as told: what stands in it, in order. */
  private record Told(
      double supplyBar, List<String> names, Map<String, Object> parts, double litres) {

    ToolDemand tool(double factor) {
      return ToolDemand.following(
          "sander", FreeAirFlow.ofAnrLitresPerSecond(litres * factor), AbsolutePressure.ofBar(7.3));
    }

    Object part(String name) {
      return Objects.requireNonNull(parts.get(name), name);
    }

    Run run() {
      Run run = Run.from(AirState.of(AbsolutePressure.ofBar(supplyBar + 1.0), WARM), ATMOSPHERE);
      for (String name : names) {
        Object part = part(name);
        run = part instanceof Conduit conduit
            ? run.through(name, conduit)
            : run.through(name, (FlowCapacity) part);
      }
      return run;
    }
  }

  private static double even(SplittableRandom random, double low, double high) {
    return low + (high - low) * random.nextDouble();
  }

  private static Told told(SplittableRandom random, int number) {
    Map<String, Object> parts = new LinkedHashMap<>();
    parts.put("drop", conduit(even(random, 12.0, 21.0), even(random, 4.0, 15.0), 0.1));
    if (number % 2 == 0) {
      parts.put("filter", part(even(random, 5.0, 12.0), 0.35));
    }
    parts.put("coupling", part(even(random, 2.5, 7.0), 0.3));
    parts.put("hose", conduit(even(random, 8.0, 11.0), even(random, 6.0, 15.0), 0.02));
    if (number % 3 != 0) {
      parts.put("second coupling", part(even(random, 2.5, 7.0), 0.3));
    }
    return new Told(
        even(random, 6.0, 8.0), List.copyOf(parts.keySet()), parts, even(random, 6.0, 13.0));
  }

  private static Conduit conduit(double mm, double metres, double roughnessMm) {
    return Conduit.of(
        Length.ofMillimetres(mm), Length.ofMetres(metres), Length.ofMillimetres(roughnessMm));
  }

  private static FlowCapacity part(double c, double b) {
    return FlowCapacity.of(SonicConductance.ofCubicDecimetresPerSecondBar(c), b);
  }

  /** What is true of a run: how each element, the tool and the supply differ from what was told. */
  private static final class Truth {
    private final Map<String, Double> capacities = new LinkedHashMap<>();
    private final Map<String, Double> bores = new LinkedHashMap<>();
    private final Map<String, Double> losses = new LinkedHashMap<>();
    private double air = 1.0;
    private double level;
    private double wander;
    private double droopBar;
    private String leakBehind = "";
    private double leakMm;
    private String sticking = "";
    private double stickingBar;

    /** The pressures [bar] above the atmosphere at all places; empty where the air does not get there. */
    Optional<double[]> pressures(Told told, boolean running) {
      double[] last = null;
      double leak = 0.0;
      double flow = 0.0;
      for (int i = 0; i < 30; i++) {
        Optional<double[]> found = pressures(told, running, leak, flow);
        if (found.isEmpty()) {
          return found;
        }
        double[] now = found.get();
        flow = now[now.length - 1];
        if (!leakBehind.isEmpty()) {
          double there = now[1 + told.names.indexOf(leakBehind)] + 1.0;
          double next = Orifice.sharp(Length.ofMillimetres(leakMm))
              .flow(AirState.of(AbsolutePressure.ofBar(there), WARM), ATMOSPHERE)
              .massFlow()
              .kilogramsPerSecond();
          leak = 0.5 * (leak + next);
        }
        if (last != null && Math.abs(last[last.length - 2] - now[now.length - 2]) < 1.0e-5) {
          break;
        }
        last = now;
      }
      double[] settled = Objects.requireNonNull(last, "last");
      return Optional.of(Arrays.copyOf(settled, settled.length - 1));
    }

    private Optional<double[]> pressures(Told told, boolean running, double leak, double flow) {
      double held = told.supplyBar + level + (running ? wander : 0.0);
      // at the air told it droops by that much, at another as the square of it
      double rated = told.tool(1.0).rated().massFlow().kilogramsPerSecond();
      held -= droopBar * Math.pow((flow + leak) / rated, 2.0);
      if (held < 0.5) {
        return Optional.empty();
      }
      Run run = Run.from(AirState.of(AbsolutePressure.ofBar(held + 1.0), WARM), ATMOSPHERE);
      for (String name : told.names) {
        run = through(run, name, told.part(name));
        if (name.equals(sticking)) {
          // so wide that nothing but its spring takes pressure, the same at rest
          run = run.through(
              "check valve",
              part(200.0, 0.5).withCrackingPressure(PressureDrop.ofBar(stickingBar)));
        }
        if (name.equals(leakBehind) && leak > 0.0) {
          run = run.sharedWith(
              FreeAirFlow.from(MassFlow.ofKilogramsPerSecond(leak), ReferenceState.ANR));
        }
      }
      RunResult result =
          running ? run.balance(told.tool(air)) : run.at(FreeAirFlow.ofAnrLitresPerSecond(0.0));
      return result.fold(
          delivered -> {
            double[] bars = new double[told.names.size() + 2];
            bars[0] = held(delivered.shares().get(0).inlet().bar());
            int at = 0;
            for (ElementLoss share : delivered.shares()) {
              boolean isValve = share.name().equals("check valve");
              at += isValve ? 0 : 1;
              bars[at] = held(share.outlet().bar());
            }
            bars[bars.length - 1] = delivered.massFlow().kilogramsPerSecond();
            return Optional.of(bars);
          },
          starved -> Optional.empty());
    }

    private static double held(double absolute) {
      return absolute - 1.0;
    }

    private Run through(Run run, String name, Object part) {
      double loss = losses.getOrDefault(name, 1.0);
      if (part instanceof Conduit conduit) {
        Conduit other = conduit
            .withBore(Length.ofMetres(conduit.bore().metres() * bores.getOrDefault(name, 1.0)))
            .withLength(Length.ofMetres(conduit.length().metres() * loss));
        return run.through(name, other, OTHER_LAW);
      }
      FlowCapacity capacity = (FlowCapacity) part;
      double c = capacity.conductance().cubicDecimetresPerSecondBar()
          * capacities.getOrDefault(name, 1.0)
          / Math.sqrt(loss);
      return run.through(name, part(c, capacity.criticalPressureRatio()));
    }
  }

  private static Truth roughly(Told told, SplittableRandom random) {
    Truth truth = new Truth();
    told.names.forEach(name -> truth.losses.put(name, even(random, 0.83, 1.17)));
    truth.air = even(random, 0.83, 1.17);
    truth.level = even(random, -0.5, 0.5);
    truth.wander = even(random, -0.17, 0.17);
    return truth;
  }

  /** Puts a fault in; that of a gauge is its offset, which is told by the answer [bar]. */
  private static double fault(Truth truth, Suspect suspect, SplittableRandom random) {
    String place = suspect.place();
    switch (suspect.kind()) {
      case PART ->
        truth.capacities.put(
            place, 1.0 / Math.sqrt(even(random, 1.5, 12.0) * even(random, 0.8, 1.2)));
      case BORE -> truth.bores.put(place, even(random, 0.5, 0.92));
      case DROOP -> truth.droopBar = even(random, 0.2, 1.8);
      case LEAK -> {
        truth.leakBehind = place;
        truth.leakMm = even(random, 1.0, 4.0);
      }
      case TOOL_AIR ->
        truth.air *= random.nextBoolean() ? even(random, 1.3, 2.2) : even(random, 0.4, 0.75);
      case GAUGE -> {
        return even(random, 0.4, 1.5) * (random.nextBoolean() ? 1.0 : -1.0);
      }
      default -> throw new IllegalArgumentException(suspect + " is no fault");
    }
    return 0.0;
  }

  /** A gauge of the workshop: its class and scale as on the dial, and what is wrong with it [bar]. */
  private record Pointer(PressureGauge dial, double offset, double scale, double lag, double step) {

    static Pointer of(String name, SplittableRandom random) {
      boolean fine = random.nextBoolean();
      double step = fine ? 0.1 : 0.2;
      PressureGauge dial = PressureGauge.ofClass(
          name,
          random.nextBoolean() ? GaugeClass.CLASS_1_6 : GaugeClass.CLASS_1,
          GaugePressure.ofBar(fine ? 10.0 : 16.0),
          PressureDrop.ofBar(step));
      double limit = dial.limit().bar();
      return new Pointer(
          dial,
          even(random, -0.6, 0.6) * limit,
          even(random, -0.4, 0.4) * limit / dial.topOfScale().bar(),
          even(random, 0.0, 0.3) * limit,
          step);
    }

    GaugeReading read(String place, ToolState state, double bar, double more) {
      double hangs = state == ToolState.RUNNING ? lag : -lag;
      double shown = bar + more + offset + scale * bar + hangs;
      double division = step * Math.rint(shown / step);
      double top = dial.topOfScale().bar();
      return new GaugeReading(
          dial, place, state, GaugePressure.ofBar(Math.max(0.0, Math.min(top, division))));
    }
  }

  /** The counts of one kind of case. */
  private static final class Count {
    private int cases;
    private int firm;
    private int firmWrong;
    private int several;
    private int asTold;
    private int none;
    private int contradicted;

    void add(Diagnosis found, List<Suspect> right) {
      cases++;
      switch (found.verdict()) {
        case FOUND -> {
          firm++;
          if (!right.contains(found.explanations().get(0).suspect())) {
            firmWrong++;
          }
        }
        case LIKELY, SEVERAL -> several++;
        case AS_TOLD -> asTold++;
        case NONE_FITS -> none++;
        case CONTRADICTED -> contradicted++;
      }
    }

    List<String> row(String name) {
      return List.of(
          name,
          String.valueOf(cases),
          percent(firm, cases),
          percent(firmWrong, firm),
          percent(several, cases),
          percent(asTold, cases),
          percent(none, cases),
          percent(contradicted, cases));
    }
  }

  private static String percent(double part, double whole) {
    return whole == 0.0 ? "-" : String.format(Locale.ROOT, "%.1f %%", 100.0 * part / whole);
  }

  /** Stated chances and how often they were right. */
  private static final class Bin {
    private int answers;
    private double stated;
    private int right;

    void add(double probability, boolean isRight) {
      answers++;
      stated += probability;
      right += isRight ? 1 : 0;
    }
  }

  private final Map<String, Count> counts = new LinkedHashMap<>();
  private final Bin[] bins = {new Bin(), new Bin(), new Bin(), new Bin()};

  private static int bin(double probability) {
    return probability >= 0.99 ? 3 : probability >= 0.9 ? 2 : probability >= 0.7 ? 1 : 0;
  }

  private Count count(String name) {
    return counts.computeIfAbsent(name, any -> new Count());
  }

  @Test
  void stated_chances_are_right_and_firm_answers_are_seldom_wrong() {
    SplittableRandom random = new SplittableRandom(20261130);
    for (int number = 0; number < RUNS; number++) {
      Told told = told(random, number);
      GaugeTest test = GaugeTest.of(told.run(), told.tool(1.0));
      List<Suspect> suspects = new ArrayList<>(test.suspects());
      for (int i = 0; i < CASES; i++) {
        one(told, test, suspects, random);
      }
      for (int i = 0; i < CASES / 4; i++) {
        twoAtOnce(told, test, suspects, random);
      }
      for (int i = 0; i < 4; i++) {
        Suspect left = suspects.get(random.nextInt(suspects.size()));
        List<Suspect> others = new ArrayList<>(suspects);
        others.remove(left);
        GaugeTest without = test.suspecting(others);
        for (int k = 0; k < CASES / 16; k++) {
          notInTheList(told, without, left, random);
        }
      }
    }
    ReliabilityTable.write(
        "diagnosis",
        List.of(
            "true fault",
            "cases",
            "named firmly",
            "of them wrong",
            "several or likely",
            "as told",
            "none fits",
            "contradicted"),
        counts.entrySet().stream()
            .map(each -> each.getValue().row(each.getKey()))
            .toList());
    List<List<String>> rows = new ArrayList<>();
    String[] names = {"below 70 %", "70 to 90 %", "90 to 99 %", "99 % or more"};
    for (int i = 0; i < bins.length; i++) {
      rows.add(List.of(
          names[i],
          String.valueOf(bins[i].answers),
          percent(bins[i].stated, bins[i].answers),
          percent(bins[i].right, bins[i].answers)));
    }
    ReliabilityTable.write(
        "diagnosisCalibration",
        List.of("chance said of the best explanation", "answers", "promised", "right"),
        rows);
    int firm = 0;
    int wrong = 0;
    for (Map.Entry<String, Count> each : counts.entrySet()) {
      if (!each.getKey().startsWith("two") && !each.getKey().startsWith("not in")) {
        firm += each.getValue().firm;
        wrong += each.getValue().firmWrong;
      }
    }
    assertThat(firm).isGreaterThan(20);
    assertThat((double) wrong / firm).isLessThanOrEqualTo(0.01);
    Bin high = bins[2];
    assertThat(high.right / (double) high.answers)
        .isGreaterThanOrEqualTo(high.stated / high.answers - 0.03);
  }

  private void one(Told told, GaugeTest test, List<Suspect> suspects, SplittableRandom random) {
    int kind = random.nextInt(8);
    if (kind == 0) {
      judge("none", told, test, roughly(told, random), Map.of(), random, nothing());
      return;
    }
    if (kind == 1) {
      Suspect gauge = new Suspect(SuspectKind.GAUGE, random.nextBoolean() ? "A" : "B");
      Truth truth = roughly(told, random);
      double off = fault(truth, gauge, random);
      judge("a gauge", told, test, truth, Map.of(gauge.place(), off), random, List.of(gauge));
      return;
    }
    Suspect suspect = suspects.get(random.nextInt(suspects.size()));
    faulty(told, List.of(suspect), random)
        .ifPresent(
            truth -> judge(name(suspect), told, test, truth, Map.of(), random, List.of(suspect)));
  }

  private static List<Suspect> nothing() {
    return List.of(new Suspect(SuspectKind.NOTHING, Suspect.RUN));
  }

  private static String name(Suspect suspect) {
    return switch (suspect.kind()) {
      case PART -> "a part";
      case BORE -> "a bore";
      case DROOP -> "droop of the supply";
      case LEAK -> "a leak";
      case TOOL_AIR -> "air of the tool";
      default -> suspect.toString();
    };
  }

  private void twoAtOnce(
      Told told, GaugeTest test, List<Suspect> suspects, SplittableRandom random) {
    Suspect one = suspects.get(random.nextInt(suspects.size()));
    Suspect other = one;
    while (other.equals(one)
        || (other.kind() == SuspectKind.LEAK && one.kind() == SuspectKind.LEAK)) {
      other = suspects.get(random.nextInt(suspects.size()));
    }
    List<Suspect> both = List.of(one, other);
    faulty(told, both, random)
        .ifPresent(truth ->
            judge("two at once, either is right", told, test, truth, Map.of(), random, both));
  }

  private void notInTheList(Told told, GaugeTest without, Suspect left, SplittableRandom random) {
    faulty(told, List.of(left), random)
        .ifPresent(
            truth -> judge("not suspected", told, without, truth, Map.of(), random, List.of(left)));
    Truth sticks = roughly(told, random);
    sticks.sticking = told.names.get(random.nextInt(told.names.size()));
    sticks.stickingBar = even(random, 0.3, 1.2);
    judge(
        "not in the list: a valve that sticks", told, without, sticks, Map.of(), random, List.of());
  }

  /** A fault counts where it shifts some pressure by 0.15 bar; each of two by itself. */
  private static Optional<Truth> faulty(
      Told told, List<Suspect> suspects, SplittableRandom random) {
    for (int tries = 0; tries < 12; tries++) {
      Truth whole = roughly(told, random);
      boolean counts = true;
      for (Suspect suspect : suspects) {
        long seed = random.nextLong();
        Truth alone = new Truth();
        alone.losses.putAll(whole.losses);
        alone.air = whole.air;
        alone.level = whole.level;
        alone.wander = whole.wander;
        Truth before = new Truth();
        before.losses.putAll(whole.losses);
        before.air = alone.air;
        before.level = alone.level;
        before.wander = alone.wander;
        fault(alone, suspect, new SplittableRandom(seed));
        Optional<double[]> with = alone.pressures(told, true);
        Optional<double[]> plain = before.pressures(told, true);
        counts &= with.isPresent() && plain.isPresent() && apart(with.get(), plain.get()) >= 0.15;
        fault(whole, suspect, new SplittableRandom(seed));
      }
      if (counts
          && whole.pressures(told, true).isPresent()
          && whole.pressures(told, false).isPresent()) {
        return Optional.of(whole);
      }
    }
    return Optional.empty(); // what is so wide that no fault of it counts
  }

  private static double apart(double[] one, double[] other) {
    double most = 0.0;
    for (int i = 0; i < one.length; i++) {
      most = Math.max(most, Math.abs(one[i] - other[i]));
    }
    return most;
  }

  private void judge(
      String name,
      Told told,
      GaugeTest test,
      Truth truth,
      Map<String, Double> off,
      SplittableRandom random,
      List<Suspect> right) {
    double[] rest = truth.pressures(told, false).orElseThrow();
    double[] running = truth.pressures(told, true).orElseThrow();
    Pointer a = Pointer.of("A", random);
    Pointer b = Pointer.of("B", random);
    List<String> places = new ArrayList<>(told.names);
    places.add(0, GaugeReading.SUPPLY);
    List<GaugeReading> readings = new ArrayList<>();
    for (int i = 0; i < places.size(); i++) {
      boolean isEnd = i == 0 || i == places.size() - 1;
      if (isEnd || random.nextInt(4) > 0) {
        Pointer gauge = i == 0 ? a : i == places.size() - 1 || random.nextBoolean() ? b : a;
        double more = off.getOrDefault(gauge.dial.name(), 0.0);
        readings.add(gauge.read(places.get(i), ToolState.AT_REST, rest[i], more));
        readings.add(gauge.read(places.get(i), ToolState.RUNNING, running[i], more));
      }
    }
    Diagnosis found = test.read(readings);
    count(name).add(found, right);
    if (!right.isEmpty() && right.size() == 1) {
      Explanation best = found.explanations().get(0);
      bins[bin(best.probability())].add(best.probability(), right.contains(best.suspect()));
    }
  }
}
