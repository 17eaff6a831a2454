package org.airfit.select;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.DoubleFunction;
import java.util.function.DoubleUnaryOperator;
import java.util.function.Function;
import org.airfit.flow.CapacityRange;
import org.airfit.flow.FlowCapacity;
import org.airfit.flow.FlowCoefficients;
import org.airfit.line.Conduit;
import org.airfit.line.ConduitRange;
import org.airfit.plant.RegulatorRange;
import org.airfit.quantity.ConductanceUnit;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.Length;
import org.airfit.quantity.LengthUnit;
import org.airfit.quantity.MassFlow;
import org.airfit.quantity.PressureDrop;
import org.airfit.quantity.PressureUnit;
import org.airfit.quantity.Quantity;
import org.airfit.quantity.Range;
import org.airfit.quantity.SonicConductance;
import org.airfit.quantity.Unit;
import org.airfit.quantity.ValveCoefficient;
import org.airfit.quantity.VolumeFlowUnit;
import org.airfit.run.Run;
import org.airfit.source.Basis;
import org.airfit.working.UnitSystem;

/**
 * What is not known exactly of a run and of what its tool needs. Each is varied on its own from its worst value to its
 * best, with all else at its worst: the pressure at the tool never falls on the way, so that the value at which the
 * answer turns is found by halving, and on the side on which there is enough.
 */
final class Unknowns {

  /** So often a range is halved that the rest is a millionth of it, far less than three digits tell. */
  private static final int HALVINGS = 20;

  /** The digits that a value is told with. */
  private static final int TOLD = 3;

  /** Two conductances are the same where they differ by less than this part: rounding alone. */
  private static final double SAME = 1.0e-9;

  /** What the name of a doubt about a setting begins with. */
  static final String SETTING = "setting of ";

  private static final String DROOP = "droop of ";
  private static final String CONDUCTANCE = "conductance C of ";
  static final String AT_SUPPLY = "the regulator at the supply";

  private final Requirement job;
  private final Run worst;
  private final String lastRegulator;
  private final List<Unknown> found = new ArrayList<>();

  /**
   * Begins with none, of what is asked of one tool and its run at worst, whose last regulator bears a name: that may not
   * be set above what the tool's maker allows, however much air that gives.
   */
  Unknowns(Requirement job, Run worst, Optional<String> lastRegulator) {
    this.job = job;
    this.worst = worst;
    this.lastRegulator = lastRegulator.orElse(AT_SUPPLY);
  }

  /** {@return the doubts, what settles it alone first, then what makes most difference} */
  List<Doubt> doubts() {
    return found.stream()
        .map(each -> each.weighed(limit(each)))
        .sorted(Comparator.comparing((Weighed each) -> !each.doubt().settles())
            .thenComparing(Comparator.comparingDouble(Weighed::gain).reversed()))
        .map(Weighed::doubt)
        .toList();
  }

  /** Up to which pressure a setting may be, where it is that of the last regulator and can be above what is allowed. */
  private Optional<GaugePressure> limit(Unknown unknown) {
    return job.toolRating()
        .filter(rating ->
            unknown.what.equals(SETTING + lastRegulator) && rating.pascals() < unknown.best);
  }

  /** Up to which droop of the supply's regulator there is enough; empty where that does not decide it alone. */
  Optional<PressureDrop> enoughDroop() {
    return found.stream()
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
    private final Doubt.Basis basis;
    private final String besideInUs;
    private final Optional<FreeAirFlow> atFlow;

    Unknown(
        String what,
        double worst,
        double best,
        DoubleFunction<Optional<GaugePressure>> at,
        DoubleFunction<Shown> shown,
        DoubleUnaryOperator needed,
        Doubt.Basis basis,
        String besideInUs,
        Optional<FreeAirFlow> atFlow) {
      this.atFlow = atFlow;
      this.besideInUs = besideInUs;
      this.basis = basis;
      this.needed = needed;
      this.what = what;
      this.worst = worst;
      this.best = best;
      this.at = at;
      this.shown = shown;
    }

    private String beside(UnitSystem units, double value) {
      return what.startsWith(CONDUCTANCE) ? cv(units, value) : "";
    }

    /** At which flow that is, of what goes by the flow. */
    private String atFlow(UnitSystem units) {
      return atFlow.map(flow -> " at " + units.say(flow)).orElse("");
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

    Weighed weighed(Optional<GaugePressure> limit) {
      Optional<Double> turning = turning();
      Doubt doubt =
          new Doubt(what, told(UnitSystem.SI, turning), told(UnitSystem.US, turning), basis);
      return new Weighed(
          limit
              .map(most -> doubt.upTo(most, most.pascals() >= worst && isEnough(most.pascals())))
              .orElse(doubt),
          gain());
    }

    private Doubt.Told told(UnitSystem units, Optional<Double> turning) {
      return new Doubt.Told(
          shown.apply(Math.min(worst, best)).in(units, RoundingMode.HALF_EVEN).number() + " to "
              + shown
                  .apply(Math.max(worst, best))
                  .in(units, RoundingMode.HALF_EVEN)
                  .inWords()
              + units.either("", besideInUs),
          turning.map(value -> best > worst
              ? "at least " + shown.apply(value).in(units, RoundingMode.CEILING).inWords()
                  + beside(units, value)
              : "at most " + shown.apply(value).in(units, RoundingMode.FLOOR).inWords()
                  + atFlow(units)));
    }
  }

  /**
   * Beside a conductance in US units the Cv that US catalogues print: a part with so much passes it whatever its xT is,
   * from the least that is taken of a rating, see {@link CapacityRange#ofValveCoefficient}.
   */
  private static String cv(UnitSystem units, double cubicMetresPerSecondPascal) {
    if (units == UnitSystem.SI) {
      return "";
    }
    return " (a Cv of at least "
        + rounded(coefficient(cubicMetresPerSecondPascal), RoundingMode.CEILING) + " has that)";
  }

  private static double coefficient(double cubicMetresPerSecondPascal) {
    return CapacityRange.coefficientFor(conductance(cubicMetresPerSecondPascal)).cv();
  }

  /** Beside the range of a conductance the Cv: that which was told with no xT, or those that have the ends of it. */
  private static String cvOfRange(CapacityRange range) {
    double least = range.least().conductance().cubicMetresPerSecondPascal();
    double most = range.most().conductance().cubicMetresPerSecondPascal();
    ValveCoefficient cv = CapacityRange.coefficientFor(range.least().conductance());
    double mostOfCv =
        CapacityRange.ofValveCoefficient(cv).most().conductance().cubicMetresPerSecondPascal();
    return Math.abs(mostOfCv - most) <= SAME * most
        ? ", a Cv of " + rounded(cv.cv(), RoundingMode.HALF_EVEN) + " with any xT"
        : " (a Cv of " + rounded(coefficient(least), RoundingMode.CEILING)
            + " has the least of that, one of "
            + rounded(coefficient(most), RoundingMode.CEILING) + " the most)";
  }

  private static String rounded(double value, RoundingMode rounding) {
    BigDecimal digits = new BigDecimal(value).round(new MathContext(TOLD, rounding));
    return digits.signum() == 0 ? "0" : digits.stripTrailingZeros().toPlainString();
  }

  /** A number with its unit, rounded. */
  private record Rounded(String number, String unit) {
    String inWords() {
      return unit.isEmpty() ? number : number + " " + unit;
    }
  }

  /** A number as it is shown in each system of units. */
  private record Shown(TypedNumber si, TypedNumber us) {

    static <Q extends Quantity<Q, U>, U extends Unit> Shown of(Q quantity, U si, U us) {
      return new Shown(TypedNumber.of(quantity, si), TypedNumber.of(quantity, us));
    }

    /** A flow counted at the states at which it is counted in each system. */
    static Shown ofFlow(FreeAirFlow flow) {
      FreeAirFlow si = UnitSystem.SI.counted(flow);
      FreeAirFlow us = UnitSystem.US.counted(flow);
      return new Shown(
          new TypedNumber(si.litresPerSecond(), TypedNumber.unitOf(UnitSystem.SI.say(flow))),
          new TypedNumber(us.cubicFeetPerMinute(), TypedNumber.unitOf(UnitSystem.US.say(flow))));
    }

    static Shown ofRatio(double ratio) {
      TypedNumber number = new TypedNumber(ratio, "");
      return new Shown(number, number);
    }

    Rounded in(UnitSystem units, RoundingMode rounding) {
      TypedNumber typed = units.either(si, us);
      return new Rounded(rounded(typed.number(), rounding), typed.unit());
    }
  }

  /** What is not known of the tool, the supply and the pipes, with the run at worst from any run to the outlet. */
  void ofJob(Function<Run, Run> from) {
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
          Doubt.Basis.TOLD,
          "",
          Optional.empty()));
    }
    setting(AT_SUPPLY, job.settingRange(), value -> from.apply(job.toOutletSetTo(value)));
    droop(
        AT_SUPPLY,
        job.droopRange(),
        job.isSupplyUntold(),
        job.airAtOutlet().most(),
        value -> from.apply(job.toOutletDroopingBy(value)));
    for (Requirement.Piping pipe : job.pipes()) {
      conduit(pipe.name(), pipe.conduit());
    }
  }

  /** What others take somewhere on the way, with the run at worst of which they take so much. */
  void others(String where, Range<FreeAirFlow> air, Function<FreeAirFlow, Run> with) {
    add(
        "air that others take at the " + where,
        flow(air.most()),
        flow(air.least()),
        value -> with.apply(demand(value)).arriving(job.demand()),
        value -> Shown.ofFlow(demand(value)));
  }

  /** What is not known of a part with a capacity. */
  void capacity(String name, CapacityRange range) {
    capacity(name, range, capacity -> worst.replacing(name, capacity));
  }

  /** What is not known of a regulator and of its setting, with the most air that goes through it. */
  void regulator(
      String name, RegulatorRange regulator, Range<GaugePressure> set, FreeAirFlow flow) {
    FlowCapacity least = regulator.capacity().least();
    PressureDrop most = regulator.mostDroop(set.least());
    boolean isBehind =
        regulator.curve().filter(curve -> !curve.tells(mostAir())).isPresent();
    setting(
        name,
        set,
        value -> worst.replacing(name, regulator.element(least, most, value, worst.atmosphere())));
    droop(
        isBehind ? name + " behind the end of its curve" : name,
        isBehind ? new Range<>(regulator.droop().least(), most) : regulator.droop(),
        isBehind,
        regulator.atFlow().orElse(flow),
        value -> worst.replacing(
            name, regulator.element(least, value, set.least(), worst.atmosphere())));
    capacity(
        name,
        regulator.capacity(),
        capacity -> worst.replacing(
            name, regulator.element(capacity, most, set.least(), worst.atmosphere())));
  }

  private MassFlow mostAir() {
    return job.airAtOutlet().most().massFlow();
  }

  private void add(
      String what,
      double worst,
      double best,
      DoubleFunction<Optional<GaugePressure>> at,
      DoubleFunction<Shown> shown) {
    add(what, worst, best, at, shown, Doubt.Basis.TOLD, "");
  }

  private void add(
      String what,
      double worst,
      double best,
      DoubleFunction<Optional<GaugePressure>> at,
      DoubleFunction<Shown> shown,
      Doubt.Basis basis,
      String besideInUs) {
    if (worst != best) {
      double needed = job.least().pascals();
      found.add(new Unknown(
          what, worst, best, at, shown, any -> needed, basis, besideInUs, Optional.empty()));
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

  /** What a regulator is set to, where that is not known exactly. */
  private void setting(String name, Range<GaugePressure> set, Function<GaugePressure, Run> with) {
    add(
        SETTING + name,
        set.least().pascals(),
        set.most().pascals(),
        value -> with.apply(GaugePressure.ofPascals(value)).arriving(job.demand()),
        value -> Shown.of(GaugePressure.ofPascals(value), PressureUnit.BAR, PressureUnit.PSI));
  }

  /** By how much a regulator droops at a flow, where that is not known exactly. */
  private void droop(
      String name,
      Range<PressureDrop> range,
      boolean isAnything,
      FreeAirFlow flow,
      Function<PressureDrop, Run> with) {
    if (range.isExact()) {
      return;
    }
    double needed = job.least().pascals();
    found.add(new Unknown(
        DROOP + name,
        range.most().pascals(),
        range.least().pascals(),
        value -> with.apply(PressureDrop.ofPascals(value)).arriving(job.demand()),
        value -> Shown.of(PressureDrop.ofPascals(value), PressureUnit.BAR, PressureUnit.PSI),
        any -> needed,
        isAnything
            ? Doubt.Basis.ANYTHING
            : UntoldDroop.isUntold(range) ? Doubt.Basis.USUAL : Doubt.Basis.TOLD,
        "",
        Optional.of(flow)));
  }

  /**
   * Where a rating leaves C and b open together, each b has a C of its own, and the ends of the range are bounds that
   * need not be a part. A C that is told settles it then if it does so with any b, of which the least passes least.
   */
  private void capacity(String name, CapacityRange range, Function<FlowCapacity, Run> with) {
    FlowCoefficients least = range.least().figures();
    FlowCoefficients most = range.most().figures();
    Doubt.Basis basis =
        range.assumption().basis() == Basis.COMMON_PRACTICE ? Doubt.Basis.USUAL : Doubt.Basis.TOLD;
    boolean isRatioOpen = least.criticalPressureRatio() != most.criticalPressureRatio();
    boolean isConductanceOpen = !least.conductance().equals(most.conductance());
    double ratio = isRatioOpen ? CapacityRange.LEAST_B : least.criticalPressureRatio();
    add(
        CONDUCTANCE + name + (isRatioOpen ? ", with any b" : ""),
        least.conductance().cubicMetresPerSecondPascal(),
        most.conductance().cubicMetresPerSecondPascal(),
        value -> arriving(with, least, conductance(value), ratio),
        value -> Shown.of(
            conductance(value),
            ConductanceUnit.CUBIC_DECIMETRE_PER_SECOND_BAR,
            ConductanceUnit.CUBIC_DECIMETRE_PER_SECOND_BAR),
        basis,
        isConductanceOpen ? cvOfRange(range) : "");
    if (!isConductanceOpen) {
      add(
          "critical pressure ratio b of " + name,
          least.criticalPressureRatio(),
          most.criticalPressureRatio(),
          value -> arriving(with, least, least.conductance(), value),
          Shown::ofRatio,
          basis,
          "");
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

  /** What is not known of a pipe or hose. */
  void conduit(String name, ConduitRange range) {
    Conduit least = range.least();
    Conduit most = range.most();
    add(
        "bore of " + name,
        least.bore().metres(),
        most.bore().metres(),
        value ->
            worst.replacing(name, least.withBore(Length.ofMetres(value))).arriving(job.demand()),
        Unknowns::length,
        range.isBoreByName() ? Doubt.Basis.NAMED : Doubt.Basis.TOLD,
        "");
    add(
        Doubt.ROUGHNESS + name,
        least.roughness().metres(),
        most.roughness().metres(),
        value -> worst
            .replacing(
                name,
                Conduit.of(least.bore(), least.length(), Length.ofMetres(value))
                    .withFittings(least.fittingLoss()))
            .arriving(job.demand()),
        Unknowns::length,
        range.isTold() ? Doubt.Basis.TOLD : Doubt.Basis.NAMED,
        "");
    add(
        "length of " + name,
        least.length().metres(),
        most.length().metres(),
        value ->
            worst.replacing(name, least.withLength(Length.ofMetres(value))).arriving(job.demand()),
        value -> Shown.of(Length.ofMetres(value), LengthUnit.METRE, LengthUnit.FOOT),
        range.isLengthUntold() ? Doubt.Basis.USUAL : Doubt.Basis.TOLD,
        "");
    add(
        "sum of loss coefficients K of " + name,
        least.fittingLoss(),
        most.fittingLoss(),
        value -> worst.replacing(name, least.withFittings(value)).arriving(job.demand()),
        Shown::ofRatio);
  }

  private static Shown length(double metres) {
    return Shown.of(Length.ofMetres(metres), LengthUnit.MILLIMETRE, LengthUnit.INCH);
  }
}
