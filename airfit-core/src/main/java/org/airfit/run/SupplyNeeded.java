package org.airfit.run;

import java.util.List;
import java.util.Optional;
import java.util.function.DoubleUnaryOperator;
import org.airfit.air.AirState;
import org.airfit.air.Compression;
import org.airfit.internal.RootFinder;
import org.airfit.plant.Supply;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.MassFlow;
import org.airfit.quantity.PressureDrop;
import org.airfit.quantity.PressureUnit;
import org.airfit.safety.Caution;
import org.airfit.source.Source;
import org.airfit.working.Formula;
import org.airfit.working.Symbol;
import org.airfit.working.UnitSystem;
import org.airfit.working.ValueKind;
import org.airfit.working.Worked;
import org.airfit.working.Working;

/**
 * The pressure the supply would need for the tool to have its own, and what raising it costs.
 *
 * <p>Raising the supply is the costly way: every kilogram of air of the whole shop is then compressed further, and
 * every leak and every tool without a regulator takes more, in proportion to the absolute pressure. A rule of the trade
 * says 0.5 % of the power per psi (7 % per bar) near 100 psig.
 *
 * <p>This class is immutable, thread-safe and value-based.
 */
public final class SupplyNeeded implements Worked {

  private static final double RULE_PER_PSI = 0.005;

  private static final Source RULE = Source.handbook(
      "US DOE Compressed Air Challenge practice, quoted in trade articles: 0.5 percent per psi near 100 psig");

  private static final Source PROPORTION =
      Source.derived("choked flow is in proportion to the absolute pressure");

  private static final Symbol WORK_NOW = Symbol.of("w1", ValueKind.ENERGY_PER_MASS);
  private static final Symbol WORK_THEN = Symbol.of("w2", ValueKind.ENERGY_PER_MASS);
  private static final Symbol PRESSURE_NOW = Symbol.of("p1", ValueKind.SAID_PRESSURE);
  private static final Symbol PRESSURE_THEN = Symbol.of("p2", ValueKind.SAID_PRESSURE);
  private static final Symbol EXTRA_WORK = Symbol.of("x", ValueKind.NUMBER);
  private static final Symbol EXTRA_BY_RULE = Symbol.of("xr", ValueKind.NUMBER);
  private static final Symbol EXTRA_FLOW = Symbol.of("y", ValueKind.NUMBER);

  private static final Formula MORE_WORK = Formula.of(
      "Extra work on each kilogram",
      "⟨x⟩ = ⟨w2⟩ / ⟨w1⟩ − 1",
      Source.derived("ratio of the two works"),
      EXTRA_WORK,
      WORK_THEN,
      WORK_NOW);

  private static final Formula BY_RULE = Formula.of(
      "The same by the rule of the trade",
      "⟨xr⟩ = 0.005 × (⟨p2⟩ − ⟨p1⟩)",
      RULE,
      EXTRA_BY_RULE,
      PRESSURE_THEN.as(ValueKind.PSIA),
      PRESSURE_NOW.as(ValueKind.PSIA));

  private static final Formula MORE_FLOW = Formula.of(
      "Extra flow of leaks and of tools without a regulator",
      "⟨y⟩ = ⟨p2⟩ / ⟨p1⟩ − 1",
      PROPORTION,
      EXTRA_FLOW,
      PRESSURE_THEN,
      PRESSURE_NOW);

  private static final double HIGHEST_PASCALS = 1.0e8;

  private record Values(
      AbsolutePressure present,
      AbsolutePressure needed,
      AbsolutePressure atmosphere,
      Compression presentWork,
      Compression neededWork,
      boolean givesFlow,
      RunResult run) {}

  private final Values values;

  private SupplyNeeded(Values values) {
    this.values = values;
  }

  /** The pressure that a path's supply would need; empty where not even 1000 bar would do. */
  static Optional<SupplyNeeded> of(RunPath path, ToolDemand tool, GaugePressure atTool) {
    double wanted = atTool.absolute(path.atmosphere()).pascals();
    MassFlow taken =
        MassFlow.ofKilogramsPerSecond(tool.flow(wanted, path.atmosphere().pascals()));
    double flow = taken.kilogramsPerSecond();
    DoubleUnaryOperator missing = pascals -> wanted - path.pascalsAtTool(flow, pascals);
    double low = wanted;
    double high = wanted;
    while (!(missing.applyAsDouble(high) <= 0.0)) {
      low = high;
      high *= 2.0;
      if (high > HIGHEST_PASCALS) {
        return Optional.empty();
      }
    }
    AbsolutePressure needed = AbsolutePressure.ofPascals(
        high > low ? RootFinder.find(missing, high, low, RunPath.TOLERANCE * high) : high);
    AirState still = path.still();
    Optional<AbsolutePressure> given = path.supply()
        .at(path.fromSupply(taken))
        .map(AirState::pressure)
        .filter(pressure -> pressure.compareTo(path.atmosphere()) >= 0);
    AbsolutePressure present = given.orElse(still.pressure());
    return Optional.of(new SupplyNeeded(new Values(
        present,
        needed,
        path.atmosphere(),
        work(still, path.atmosphere(), present),
        work(still, path.atmosphere(), needed),
        given.isPresent(),
        RunAnswers.at(path.suppliedBy(Supply.fixed(still.at(needed))), taken))));
  }

  private static Compression work(
      AirState supply, AbsolutePressure atmosphere, AbsolutePressure to) {
    return Compression.adiabatic(supply.at(atmosphere), to);
  }

  /** {@return the flow of the tool at its pressure} */
  public MassFlow massFlow() {
    return values.run.massFlow();
  }

  /**
   * {@return the pressure of the supply at that flow; while nothing flows where it cannot give that much above the
   * atmosphere}
   */
  public AbsolutePressure present() {
    return values.present;
  }

  /** {@return the pressure it would need} */
  public AbsolutePressure needed() {
    return values.needed;
  }

  /** {@return the same as a gauge shows it} */
  public GaugePressure neededGauge() {
    return GaugePressure.of(values.needed, values.atmosphere);
  }

  /** {@return the work on the air at present, one adiabatic stage without losses} */
  public Compression presentWork() {
    return values.presentWork;
  }

  /** {@return the work at the pressure needed} */
  public Compression neededWork() {
    return values.neededWork;
  }

  /** {@return how the run fares with that supply} */
  public RunResult run() {
    return values.run;
  }

  /** {@return the warnings that go with it} */
  public List<Caution> cautions() {
    return values.run.cautions();
  }

  /**
   * {@return whether the present supply gives the flow above the atmosphere; where not, no pressure at rest is enough:
   * it wants a larger supply}
   */
  public boolean givesFlow() {
    return values.givesFlow;
  }

  /** {@return whether the present supply is enough: it gives the flow, and at that flow the pressure needed} */
  public boolean isMet() {
    return values.givesFlow && values.needed.compareTo(values.present) <= 0;
  }

  /**
   * {@return how much the pressure must rise at that flow, from {@link #present}; 0 where that is not below what is
   * needed}
   */
  public PressureDrop rise() {
    return PressureDrop.ofPascals(
        Math.max(0.0, values.needed.pascals() - values.present.pascals()));
  }

  /**
   * {@return the extra work on each kilogram of air over the present work [-]; negative where the pressure may fall,
   * infinite where nothing is compressed at present}
   */
  public double extraWork() {
    if (values.presentWork.joulesPerKilogram() == 0.0) {
      return isMet() ? 0.0 : Double.POSITIVE_INFINITY;
    }
    return values.neededWork.joulesPerKilogram() / values.presentWork.joulesPerKilogram() - 1.0;
  }

  /** {@return the extra power by the rule of 0.5 % per psi [-], which holds near 100 psig} */
  public double extraWorkByRule() {
    return RULE_PER_PSI * psi();
  }

  /** {@return how much more leaks and unregulated tools would take over what they take now [-]} */
  public double extraUnregulatedFlow() {
    return values.needed.pascals() / values.present.pascals() - 1.0;
  }

  private double psi() {
    return values.needed.psi() - values.present.psi();
  }

  @Override
  public Working working(UnitSystem units) {
    Working.Builder working = Working.titled("Pressure needed at the supply", units);
    if (!values.givesFlow) {
      working.note("The present supply does not give " + massFlow().format(units.massFlowUnit())
          + " above the atmosphere: it wants a larger supply. It is compared at rest.");
    }
    working
        .note("The supply was raised until the tool had its pressure: "
            + values.needed.format(units.pressureUnit()) + " instead of "
            + values.present.format(units.pressureUnit()) + ".")
        .include(values.run.working(units));
    if (values.presentWork.joulesPerKilogram() == 0.0) {
      return working
          .answer("Nothing is compressed at present: there is no work to compare with.")
          .build();
    }
    return working
        .include(values.presentWork.working(units), WORK_NOW)
        .include(values.neededWork.working(units), WORK_THEN)
        .step(MORE_WORK, extraWork(), 4)
        .given(PRESSURE_THEN, values.needed.pascals(), 6)
        .given(PRESSURE_NOW, values.present.pascals(), 6)
        .step(BY_RULE, extraWorkByRule(), 4)
        .step(MORE_FLOW, extraUnregulatedFlow(), 4)
        .answer(EXTRA_WORK, EXTRA_BY_RULE, EXTRA_FLOW)
        .build();
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof SupplyNeeded that && values.equals(that.values);
  }

  @Override
  public int hashCode() {
    return values.hashCode();
  }

  /** {@return the answer in one line, such as "9.1 bar(a) needed, 8 bar(a) at present"} */
  @Override
  public String toString() {
    return values.needed.format(PressureUnit.BAR) + " needed, "
        + values.present.format(PressureUnit.BAR) + " at present"
        + (values.givesFlow ? "" : ", which does not give the flow");
  }
}
