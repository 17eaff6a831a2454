package org.airfit.flow;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.airfit.air.AirState;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.MassFlow;
import org.airfit.quantity.ReferenceState;
import org.airfit.source.Source;
import org.airfit.working.Formula;
import org.airfit.working.Symbol;
import org.airfit.working.UnitSystem;
import org.airfit.working.ValueKind;
import org.airfit.working.Worked;
import org.airfit.working.Working;

/**
 * The flow through several parts together, as {@link PartsInSeries#flow} and {@link PartsInParallel#flow} find it.
 *
 * <p>This class is immutable, thread-safe and value-based.
 */
public final class GroupFlow implements Worked {

  private static final Source SUM = Source.derived("balance of mass");
  private static final Source CHAIN = Source.derived("what one part leaves, the next one gets");

  private static final Symbol INLET = Symbol.of("p1", ValueKind.SAID_PRESSURE);
  private static final Symbol OUTLET = Symbol.of("p2", ValueKind.SAID_PRESSURE);
  private static final Symbol FLOW = Symbol.of("ṁ", ValueKind.MASS_FLOW);

  private final AirState inlet;
  private final AbsolutePressure outlet;
  private final FlowRegime regime;
  private final MassFlow massFlow;
  private final List<AbsolutePressure> between;
  private final List<OutletAtFlow> inSeries;
  private final List<FlowAtOutlet> sideBySide;

  private GroupFlow(
      AirState inlet,
      AbsolutePressure outlet,
      FlowRegime regime,
      MassFlow massFlow,
      List<AbsolutePressure> between,
      List<OutletAtFlow> inSeries,
      List<FlowAtOutlet> sideBySide) {
    this.inlet = inlet;
    this.outlet = outlet;
    this.regime = regime;
    this.massFlow = massFlow;
    this.between = List.copyOf(between);
    this.inSeries = List.copyOf(inSeries);
    this.sideBySide = List.copyOf(sideBySide);
  }

  static GroupFlow inSeries(
      AirState inlet,
      AbsolutePressure outlet,
      FlowRegime regime,
      MassFlow massFlow,
      List<AbsolutePressure> between,
      List<OutletAtFlow> parts) {
    return new GroupFlow(inlet, outlet, regime, massFlow, between, parts, List.of());
  }

  static GroupFlow sideBySide(
      AirState inlet,
      AbsolutePressure outlet,
      FlowRegime regime,
      MassFlow massFlow,
      List<FlowAtOutlet> parts) {
    return new GroupFlow(inlet, outlet, regime, massFlow, List.of(), List.of(), parts);
  }

  /** {@return the air in front of them} */
  public AirState inlet() {
    return inlet;
  }

  /** {@return the pressure behind them} */
  public AbsolutePressure outlet() {
    return outlet;
  }

  /** {@return how the air passes: choked where a lower pressure behind them changes nothing} */
  public FlowRegime regime() {
    return regime;
  }

  /** {@return how much passes} */
  public MassFlow massFlow() {
    return massFlow;
  }

  /** {@return where the air in front lies outside what its model holds for; empty where it holds} */
  public List<String> warnings() {
    return inlet.warnings();
  }

  /** {@return the flow as free air at ISO 8778 reference} */
  public FreeAirFlow freeAir() {
    return FreeAirFlow.from(massFlow, ReferenceState.ANR);
  }

  /** {@return the pressures between parts in series, in order; empty for parts side by side} */
  public List<AbsolutePressure> between() {
    return between;
  }

  /** {@return what becomes of the air at each part, in order; behind a part that shuts against a vacuum there is none} */
  public List<Worked> parts() {
    return inSeries.isEmpty() ? List.copyOf(sideBySide) : List.copyOf(inSeries);
  }

  @Override
  public Working working(UnitSystem units) {
    Working.Builder working = Working.titled(
        inSeries.isEmpty()
            ? "Flow through parts side by side"
            : "Flow through parts in series, found by trial",
        units);
    if (regime == FlowRegime.CLOSED) {
      return working
          .answer("Nothing flows: there is no drop, or a part does not open.")
          .build();
    }
    if (inSeries.isEmpty()) {
      sum(working, units);
    } else {
      chain(working, units);
    }
    return working.build();
  }

  private void sum(Working.Builder working, UnitSystem units) {
    working.note("Each part passes its own flow between the two pressures; the flows add up.");
    List<Symbol> symbols = new ArrayList<>(List.of(FLOW));
    List<String> terms = new ArrayList<>();
    for (FlowAtOutlet part : sideBySide) {
      if (part.regime() != FlowRegime.CLOSED) {
        Symbol flow = Symbol.of("ṁ" + symbols.size(), ValueKind.MASS_FLOW);
        symbols.add(flow);
        terms.add("⟨" + flow.text() + "⟩");
        working.include(part.working(units), flow);
      } else {
        working.include(part.working(units));
      }
    }
    working
        .step(
            Formula.of(
                "Flow through all",
                "⟨ṁ⟩ = " + String.join(" + ", terms),
                SUM,
                symbols.toArray(new Symbol[0])),
            massFlow.kilogramsPerSecond(),
            5)
        .answer(FLOW);
  }

  private void chain(Working.Builder working, UnitSystem units) {
    working
        .note("The flow was moved until the pressure behind the last part is that asked for;"
            + " it is checked part by part.")
        .given(INLET, inlet.pressure().pascals(), 7);
    List<Symbol> symbols = new ArrayList<>(List.of(OUTLET, INLET));
    StringBuilder definition = new StringBuilder("⟨p2⟩ = ⟨p1⟩");
    double behind = outlet.pascals();
    for (OutletAtFlow part : inSeries) {
      Symbol drop = Symbol.of("Δp" + (symbols.size() - 1), ValueKind.SAID_PRESSURE);
      symbols.add(drop);
      definition.append(" − ⟨").append(drop.text()).append('⟩');
      working.include(part.working(units), drop);
      behind = part.fold(passes -> passes.outlet().pascals(), chokes -> 0.0);
    }
    working.step(
        Formula.of(
            "Pressure behind the last part",
            definition.toString(),
            CHAIN,
            symbols.toArray(new Symbol[0])),
        behind,
        6);
    if (regime == FlowRegime.CHOKED) {
      working.note("A part chokes: a lower pressure behind the last one changes nothing.");
    }
    working
        .answer("The flow is " + ValueKind.MASS_FLOW.format(massFlow.kilogramsPerSecond(), 5, units)
            + ".")
        .answer(OUTLET);
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof GroupFlow that
        && inlet.equals(that.inlet)
        && outlet.equals(that.outlet)
        && regime == that.regime
        && massFlow.equals(that.massFlow)
        && between.equals(that.between)
        && inSeries.equals(that.inSeries)
        && sideBySide.equals(that.sideBySide);
  }

  @Override
  public int hashCode() {
    return Objects.hash(inlet, outlet, regime, massFlow, between, inSeries, sideBySide);
  }

  /** {@return the flow and the parts} */
  @Override
  public String toString() {
    return massFlow.shown() + " through " + parts().size()
        + (inSeries.isEmpty() ? " parts side by side" : " parts in series");
  }
}
