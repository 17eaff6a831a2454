package org.airfit.select;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.DoubleFunction;
import java.util.function.DoubleUnaryOperator;
import java.util.function.Function;
import org.airfit.flow.CapacityRange;
import org.airfit.flow.FlowCapacity;
import org.airfit.flow.FlowCoefficients;
import org.airfit.line.Conduit;
import org.airfit.line.ConduitRange;
import org.airfit.quantity.ConductanceUnit;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.Length;
import org.airfit.quantity.LengthUnit;
import org.airfit.quantity.PressureDrop;
import org.airfit.quantity.PressureUnit;
import org.airfit.quantity.Quantity;
import org.airfit.quantity.Range;
import org.airfit.quantity.SonicConductance;
import org.airfit.quantity.Unit;
import org.airfit.quantity.VolumeFlowUnit;
import org.airfit.run.Run;
import org.airfit.source.Basis;
import org.airfit.working.UnitSystem;

/**
 * What is not known exactly of a run and decides whether the tool has its air. Each is varied on its own from its worst
 * value to its best, with all else at its worst: the pressure at the tool never falls on the way, so that the value at
 * which the answer turns is found by halving, and on the side on which there is enough.
 */
final class Doubts {

  /** So often a range is halved that the rest is a millionth of it, far less than three digits tell. */
  private static final int HALVINGS = 20;

  /** The digits that a value is told with. */
  private static final int TOLD = 3;

  private static final String DROOP = "droop of ";
  static final String AT_SUPPLY = "the regulator at the supply";

  private final Assembly assembly;
  private final Requirement job;
  private final List<Unknown> found = new ArrayList<>();

  private Doubts(Assembly assembly) {
    this.assembly = assembly;
    this.job = assembly.requirement();
  }

  /** Those of an assembly, what settles it alone first, then what makes most difference; none where it is settled. */
  static List<Doubt> of(Assembly assembly) {
    if (!assembly.isAirOpen()) {
      return List.of();
    }
    if (!assembly.ways().isEmpty()) {
      return ofSeveral(assembly);
    }
    Doubts doubts = new Doubts(assembly);
    doubts.collect();
    return doubts.found.stream()
        .map(Unknown::weighed)
        .sorted(Comparator.comparing((Weighed each) -> !each.doubt().settles())
            .thenComparing(Comparator.comparingDouble(Weighed::gain).reversed()))
        .map(Weighed::doubt)
        .toList();
  }

  /** Those of each way of which it depends whether its tool has its air, each once. */
  private static List<Doubt> ofSeveral(Assembly assembly) {
    Set<Doubt> all = new LinkedHashSet<>();
    for (Assembly way : assembly.ways()) {
      String of = way.requirement().way().map(name -> " (" + name + ")").orElse("");
      Doubts.of(way).forEach(doubt -> all.add(doubt.on(of)));
    }
    return List.copyOf(all);
  }

  /** Up to which droop of the supply's regulator there is enough; empty where that does not decide it alone. */
  static Optional<PressureDrop> enoughDroop(Assembly way) {
    if (!way.isAirOpen()) {
      return Optional.empty();
    }
    Doubts doubts = new Doubts(way);
    doubts.collect();
    return doubts.found.stream()
        .filter(each -> each.what.equals(DROOP + AT_SUPPLY))
        .findFirst()
        .flatMap(Unknown::turning)
        .map(PressureDrop::ofPascals);
  }

  /** A doubt with how much the best value of it gains over its worst [Pa]. */
  private record Weighed(Doubt doubt, double gain) {}

  /** One number that is not known: what arrives with any value of it and all else at worst. */
  private static final class Unknown {

    private final String what;
    private final double worst;
    private final double best;
    private final DoubleFunction<Optional<GaugePressure>> at;
    private final DoubleFunction<Shown> shown;
    private final DoubleUnaryOperator needed;
    private final boolean isTold;

    Unknown(
        String what,
        double worst,
        double best,
        DoubleFunction<Optional<GaugePressure>> at,
        DoubleFunction<Shown> shown,
        DoubleUnaryOperator needed,
        boolean isTold) {
      this.isTold = isTold;
      this.needed = needed;
      this.what = what;
      this.worst = worst;
      this.best = best;
      this.at = at;
      this.shown = shown;
    }

    private boolean isEnough(double value) {
      return margin(value) >= 0.0;
    }

    /** By how much more arrives than is needed [Pa]. */
    private double margin(double value) {
      return at.apply(value).map(GaugePressure::pascals).orElse(Double.NEGATIVE_INFINITY)
          - needed.applyAsDouble(value);
    }

    /** How much its best value gains over its worst [Pa]; no air counts as no pressure. */
    double gain() {
      return Math.max(margin(best), -needed.applyAsDouble(best))
          - Math.max(margin(worst), -needed.applyAsDouble(worst));
    }

    /** The first value from the worst on with which there is enough. */
    Optional<Double> turning() {
      if (!isEnough(best)) {
        return Optional.empty();
      }
      double tooBad = worst;
      double good = best;
      for (int i = 0; i < HALVINGS; i++) {
        double middle = tooBad + (good - tooBad) / 2.0;
        if (isEnough(middle)) {
          good = middle;
        } else {
          tooBad = middle;
        }
      }
      return Optional.of(good);
    }

    Weighed weighed() {
      Optional<Double> turning = turning();
      return new Weighed(
          new Doubt(what, told(UnitSystem.SI, turning), told(UnitSystem.US, turning), isTold),
          gain());
    }

    private Doubt.Told told(UnitSystem units, Optional<Double> turning) {
      return new Doubt.Told(
          shown.apply(Math.min(worst, best)).in(units, RoundingMode.HALF_EVEN).number() + " to "
              + shown
                  .apply(Math.max(worst, best))
                  .in(units, RoundingMode.HALF_EVEN)
                  .inWords(),
          turning.map(value -> best > worst
              ? "at least " + shown.apply(value).in(units, RoundingMode.CEILING).inWords()
              : "at most " + shown.apply(value).in(units, RoundingMode.FLOOR).inWords()));
    }
  }

  /** A number with its unit, rounded. */
  private record Rounded(String number, String unit) {
    String inWords() {
      return unit.isEmpty() ? number : number + " " + unit;
    }
  }

  /** A number as it is shown in each system of units. */
  private record Shown(double si, String siUnit, double us, String usUnit) {

    static <Q extends Quantity<Q, U>, U extends Unit> Shown of(Q quantity, U si, U us) {
      return new Shown(quantity.in(si), mark(quantity, si), quantity.in(us), mark(quantity, us));
    }

    /** How the unit is printed behind a quantity of this kind: "psig" and not "psi". */
    private static <Q extends Quantity<Q, U>, U extends Unit> String mark(Q quantity, U unit) {
      String printed = quantity.format(unit);
      return printed.substring(printed.indexOf(' ') + 1);
    }

    /** A flow counted at the states at which it is counted in each system. */
    static Shown ofFlow(FreeAirFlow flow) {
      FreeAirFlow si = UnitSystem.SI.counted(flow);
      FreeAirFlow us = UnitSystem.US.counted(flow);
      return new Shown(
          si.litresPerSecond(),
          mark(UnitSystem.SI, flow),
          us.cubicFeetPerMinute(),
          mark(UnitSystem.US, flow));
    }

    /** How the unit of a flow is written behind its number: "L/s ANR", "scfm". */
    private static String mark(UnitSystem units, FreeAirFlow flow) {
      String said = units.say(flow);
      return said.substring(said.indexOf(' ') + 1);
    }

    static Shown ofRatio(double ratio) {
      return new Shown(ratio, "", ratio, "");
    }

    Rounded in(UnitSystem units, RoundingMode rounding) {
      double value = units == UnitSystem.SI ? si : us;
      BigDecimal digits = new BigDecimal(value).round(new MathContext(TOLD, rounding));
      String number = digits.signum() == 0 ? "0" : digits.stripTrailingZeros().toPlainString();
      return new Rounded(number, units.either(siUnit, usUnit));
    }
  }

  private void collect() {
    Run worst = assembly.run();
    add(
        "air the tool takes",
        job.demand().cubicMetresPerSecond(),
        flow(job.demandRange().least()),
        value -> worst.arriving(demand(value)),
        value -> Shown.ofFlow(demand(value)));
    double most = job.least().pascals();
    double least = job.leastRange().least().pascals();
    if (least != most) {
      found.add(new Unknown(
          "pressure the tool needs",
          most,
          least,
          value -> worst.arriving(job.demand()),
          value -> Shown.of(GaugePressure.ofPascals(value), PressureUnit.BAR, PressureUnit.PSI),
          value -> value,
          /* isTold= */ true));
    }
    Range<GaugePressure> supplySet = job.settingRange();
    setting(AT_SUPPLY, supplySet, value -> assembly.runFrom(job.toOutletSetTo(value)));
    droop(AT_SUPPLY, job.droopRange(), value -> assembly.runFrom(job.toOutletDroopingBy(value)));
    for (Requirement.Piping pipe : job.pipes()) {
      conduit(pipe.name(), pipe.conduit());
    }
    others();
    int element = job.pipes().size();
    for (Placed placed : assembly.slotParts()) {
      if (!placed.position().isPlug()) {
        part(worst.names().get(element++), placed);
      }
    }
  }

  /** What others take on the way, where that is not known exactly. */
  private void others() {
    for (Placed placed : assembly.placed()) {
      placed
          .position()
          .others()
          .ifPresent(air -> add(
              "air that others take at the " + placed.position().name(),
              flow(air.most()),
              flow(air.least()),
              value ->
                  assembly.runWithOthers(placed.position(), demand(value)).arriving(job.demand()),
              value -> Shown.ofFlow(demand(value))));
    }
  }

  private void add(
      String what,
      double worst,
      double best,
      DoubleFunction<Optional<GaugePressure>> at,
      DoubleFunction<Shown> shown) {
    add(what, worst, best, at, shown, /* isTold= */ true);
  }

  private void add(
      String what,
      double worst,
      double best,
      DoubleFunction<Optional<GaugePressure>> at,
      DoubleFunction<Shown> shown,
      boolean isTold) {
    if (worst != best) {
      double needed = job.least().pascals();
      found.add(new Unknown(what, worst, best, at, shown, any -> needed, isTold));
    }
  }

  /** A flow of this volume at the reference at which the largest is told. */
  private FreeAirFlow demand(double cubicMetresPerSecond) {
    return FreeAirFlow.of(
        cubicMetresPerSecond,
        VolumeFlowUnit.CUBIC_METRE_PER_SECOND,
        job.demand().reference());
  }

  /** The volume of a flow at the reference at which the largest is told. */
  private double flow(FreeAirFlow flow) {
    return FreeAirFlow.from(flow.massFlow(), job.demand().reference()).cubicMetresPerSecond();
  }

  private void part(String name, Placed placed) {
    Run worst = assembly.run();
    if (placed.part() instanceof Part.Hose hose) {
      conduit(name, hose.conduitRange());
    } else if (placed.part() instanceof Part.Socket socket) {
      capacity(name, socket.capacityRange(), capacity -> worst.replacing(name, capacity));
    } else if (placed.part() instanceof Part.Pipe pipe) {
      conduit(name, pipe.conduitRange());
    } else if (placed.part() instanceof Part.Splitter splitter) {
      capacity(name, splitter.capacityRange(), capacity -> worst.replacing(name, capacity));
    } else if (placed.part() instanceof Part.Device device) {
      capacity(name, device.capacityRange(), capacity -> worst.replacing(name, capacity));
    } else if (placed.part() instanceof Part.Regulator regulator) {
      Range<GaugePressure> set = placed.position().setting().orElseThrow();
      FlowCapacity least = regulator.capacityRange().least();
      setting(
          name,
          set,
          value -> worst.replacing(
              name, regulator.element(least, regulator.droop(), value, worst.atmosphere())));
      droop(
          name,
          regulator.droopRange(),
          value -> worst.replacing(
              name, regulator.element(least, value, set.least(), worst.atmosphere())));
      capacity(
          name,
          regulator.capacityRange(),
          capacity -> worst.replacing(
              name,
              regulator.element(capacity, regulator.droop(), set.least(), worst.atmosphere())));
    }
  }

  /** What a regulator is set to, where that is not known exactly. */
  private void setting(String name, Range<GaugePressure> set, Function<GaugePressure, Run> with) {
    add(
        "setting of " + name,
        set.least().pascals(),
        set.most().pascals(),
        value -> with.apply(GaugePressure.ofPascals(value)).arriving(job.demand()),
        value -> Shown.of(GaugePressure.ofPascals(value), PressureUnit.BAR, PressureUnit.PSI));
  }

  /** By how much a regulator droops, where that is not known exactly. */
  private void droop(String name, Range<PressureDrop> range, Function<PressureDrop, Run> with) {
    add(
        DROOP + name,
        range.most().pascals(),
        range.least().pascals(),
        value -> with.apply(PressureDrop.ofPascals(value)).arriving(job.demand()),
        value -> Shown.of(PressureDrop.ofPascals(value), PressureUnit.BAR, PressureUnit.PSI),
        !UntoldDroop.isUntold(range));
  }

  /**
   * Where a rating leaves C and b open together, each b has a C of its own, and the ends of the range are bounds that
   * need not be a part. A C that is told settles it then if it does so with any b, of which the least passes least.
   */
  private void capacity(String name, CapacityRange range, Function<FlowCapacity, Run> with) {
    FlowCoefficients worst = range.least().figures();
    FlowCoefficients best = range.most().figures();
    boolean isTold = range.assumption().basis() != Basis.COMMON_PRACTICE;
    boolean isRatioOpen = worst.criticalPressureRatio() != best.criticalPressureRatio();
    boolean isConductanceOpen = !worst.conductance().equals(best.conductance());
    double ratio = isRatioOpen ? CapacityRange.LEAST_B : worst.criticalPressureRatio();
    add(
        "conductance C of " + name + (isRatioOpen ? ", with any b" : ""),
        worst.conductance().cubicMetresPerSecondPascal(),
        best.conductance().cubicMetresPerSecondPascal(),
        value -> arriving(with, worst, conductance(value), ratio),
        value -> Shown.of(
            conductance(value),
            ConductanceUnit.CUBIC_DECIMETRE_PER_SECOND_BAR,
            ConductanceUnit.CUBIC_DECIMETRE_PER_SECOND_BAR),
        isTold);
    if (!isConductanceOpen) {
      add(
          "critical pressure ratio b of " + name,
          worst.criticalPressureRatio(),
          best.criticalPressureRatio(),
          value -> arriving(with, worst, worst.conductance(), value),
          Shown::ofRatio,
          isTold);
    }
  }

  /** What arrives through a part of other figures. */
  private Optional<GaugePressure> arriving(
      Function<FlowCapacity, Run> with, FlowCoefficients other, SonicConductance c, double b) {
    return with.apply(FlowCapacity.of(
            new FlowCoefficients(c, b, other.subsonicIndex(), other.crackingPressure())))
        .arriving(job.demand());
  }

  private static SonicConductance conductance(double cubicMetresPerSecondPascal) {
    return SonicConductance.ofCubicMetresPerSecondPascal(cubicMetresPerSecondPascal);
  }

  private void conduit(String name, ConduitRange range) {
    Run run = assembly.run();
    Conduit worst = range.least();
    Conduit best = range.most();
    add(
        "bore of " + name,
        worst.bore().metres(),
        best.bore().metres(),
        value -> run.replacing(name, worst.withBore(Length.ofMetres(value))).arriving(job.demand()),
        Doubts::length);
    add(
        Doubt.ROUGHNESS + name,
        worst.roughness().metres(),
        best.roughness().metres(),
        value -> run.replacing(
                name,
                Conduit.of(worst.bore(), worst.length(), Length.ofMetres(value))
                    .withFittings(worst.fittingLoss()))
            .arriving(job.demand()),
        Doubts::length);
    add(
        "length of " + name,
        worst.length().metres(),
        best.length().metres(),
        value ->
            run.replacing(name, worst.withLength(Length.ofMetres(value))).arriving(job.demand()),
        value -> Shown.of(Length.ofMetres(value), LengthUnit.METRE, LengthUnit.FOOT));
    add(
        "sum of loss coefficients K of " + name,
        worst.fittingLoss(),
        best.fittingLoss(),
        value -> run.replacing(name, worst.withFittings(value)).arriving(job.demand()),
        Shown::ofRatio);
  }

  private static Shown length(double metres) {
    return Shown.of(Length.ofMetres(metres), LengthUnit.MILLIMETRE, LengthUnit.INCH);
  }
}
