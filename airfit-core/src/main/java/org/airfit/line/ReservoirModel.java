package org.airfit.line;

import static org.airfit.line.LineSymbols.BORE;
import static org.airfit.line.LineSymbols.DROP;
import static org.airfit.line.LineSymbols.FLOW;
import static org.airfit.line.LineSymbols.GAS_CONSTANT;
import static org.airfit.line.LineSymbols.INLET_KELVINS;
import static org.airfit.line.LineSymbols.INLET_MACH;
import static org.airfit.line.LineSymbols.INLET_PRESSURE;
import static org.airfit.line.LineSymbols.LARGEST_FLOW;
import static org.airfit.line.LineSymbols.OUTLET_PRESSURE;
import static org.airfit.line.LineSymbols.RATIO;
import static org.airfit.line.LineSymbols.REST_KELVINS;
import static org.airfit.line.LineSymbols.REST_PRESSURE;

import java.util.Objects;
import org.airfit.air.AirState;
import org.airfit.flow.FlowElement;
import org.airfit.flow.IsentropicFlow;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.MassFlow;
import org.airfit.quantity.PressureDrop;
import org.airfit.quantity.Temperature;
import org.airfit.source.Source;
import org.airfit.working.Formula;
import org.airfit.working.UnitSystem;
import org.airfit.working.ValueKind;
import org.airfit.working.Working;

/** Adiabatic flow from air at rest; see {@link LossModels#fromReservoir}. */
record ReservoirModel(FrictionLaw law) implements LossModel {

  private static final double G = AirState.HEAT_CAPACITY_RATIO;

  private static final Source SOURCE =
      Source.handbook("Shapiro, Compressible Fluid Flow (1953), chapters 4 and 6");

  private static final Formula MACH_ENTERED = Formula.of(
      "Mach number where it has entered",
      "⟨M1⟩ = 4 × ⟨ṁ⟩ / (π × ⟨D⟩² × ⟨p1⟩ × [144]) × √(⟨R⟩ × ⟨T1⟩ / (⟨γ⟩ × [g_c]))",
      SOURCE,
      INLET_MACH,
      FLOW,
      BORE,
      INLET_PRESSURE,
      GAS_CONSTANT,
      INLET_KELVINS,
      RATIO);

  private static final Formula PRESSURE_AT_REST = Formula.of(
      "Pressure at rest",
      "⟨p0⟩ = ⟨p1⟩ × (1 + (⟨γ⟩ − 1) / 2 × ⟨M1⟩²)^(⟨γ⟩ / (⟨γ⟩ − 1))",
      SOURCE,
      REST_PRESSURE,
      INLET_PRESSURE,
      RATIO,
      INLET_MACH);

  private static final Formula LOST_FROM_REST = Formula.of(
      "Pressure lost from rest",
      "⟨Δp⟩ = ⟨p0⟩ − ⟨p2⟩",
      SOURCE,
      DROP,
      REST_PRESSURE.as(ValueKind.SAID_PRESSURE),
      OUTLET_PRESSURE.as(ValueKind.SAID_PRESSURE));

  private static final Formula LARGEST = Formula.of(
      "Largest flow, at the Mach number of the inlet found by trial",
      "⟨ṁ⟩ = π / 4 × ⟨D⟩² × ⟨p0⟩ × [144] × √(⟨γ⟩ × [g_c] / (⟨R⟩ × ⟨T0⟩)) × ⟨M1⟩"
          + " × (1 + (⟨γ⟩ − 1) / 2 × ⟨M1⟩²)^(−3)",
      SOURCE,
      LARGEST_FLOW,
      BORE,
      REST_PRESSURE,
      RATIO,
      GAS_CONSTANT,
      REST_KELVINS,
      INLET_MACH);

  private PipeModel inBore() {
    return new PipeModel(PipeEquation.ADIABATIC, law);
  }

  @Override
  public LineLoss loss(Conduit conduit, MassFlow massFlow, AirState inlet) {
    double flow = massFlow.kilogramsPerSecond();
    if (PipeElement.countsAsNone(flow)) {
      return PipeModel.losesNothing(this, conduit, massFlow, inlet);
    }
    double p0 = inlet.pressure().pascals();
    double t0 = inlet.temperature().kelvins();
    double psi = flow / new ReservoirElement(law, conduit).flowAtOne(p0, t0);
    if (psi > IsentropicFlow.atMach(1.0).massFlowFunction()) {
      return choked(conduit, massFlow, inlet);
    }
    IsentropicFlow entering = IsentropicFlow.subsonicAtMassFlowFunction(psi);
    AirState entry = AirState.of(
            AbsolutePressure.ofPascals(entering.pressureRatio() * p0),
            Temperature.ofKelvins(entering.temperatureRatio() * t0))
        .withViscosity(inlet.viscosity());
    return inBore()
        .loss(conduit, massFlow, entry)
        .fold(
            flowing -> LineLoss.flowing(
                this,
                conduit,
                massFlow,
                entry,
                flowing.outlet(),
                PressureDrop.ofPascals(
                    p0 * entering.pressureLost() + flowing.drop().pascals()),
                flowing.friction(),
                flowing.warningsOfModel()),
            more -> choked(conduit, massFlow, inlet));
  }

  @Override
  public FlowElement element(Conduit conduit) {
    return new ReservoirElement(law, Objects.requireNonNull(conduit, "conduit"));
  }

  private LineLoss choked(Conduit conduit, MassFlow asked, AirState rest) {
    ReservoirElement element = new ReservoirElement(law, conduit);
    double p0 = rest.pressure().pascals();
    double t0 = rest.temperature().kelvins();
    IsentropicFlow entering =
        IsentropicFlow.atMach(element.machAtLargest(p0, t0, rest.viscosity().pascalSeconds()));
    double largest = element.flowAtOne(p0, t0) * entering.massFlowFunction();
    return LineLoss.choked(
        this,
        conduit,
        asked,
        rest,
        MassFlow.ofKilogramsPerSecond(Math.min(largest, asked.kilogramsPerSecond())),
        AbsolutePressure.ofPascals(entering.pressureRatio()
            * p0
            * PipeEquation.ADIABATIC.chokingPressureRatio(G * entering.mach() * entering.mach())));
  }

  @Override
  public Working working(LineLoss loss, UnitSystem units) {
    PipeModel.requireOwn(this, loss);
    return loss.fold(flowing -> working(flowing, units), choked -> working(choked, units));
  }

  private Working working(LineLoss.Flowing loss, UnitSystem units) {
    String title = PipeWorking.title(loss, units);
    if (PipeElement.countsAsNone(loss.massFlow().kilogramsPerSecond())) {
      return PipeWorking.nothingLost(title, loss.massFlow().kilogramsPerSecond(), units);
    }
    if (PipeWorking.isNoGas(loss)) {
      return PipeWorking.noGas(title, loss, units);
    }
    if (PipeWorking.hardlyAnythingLeft(loss, units)) {
      return PipeWorking.hardlyAnythingLeft(title, loss, units);
    }
    int digits = PipeWorking.digits(loss);
    LineLoss inBore = inBore().loss(loss.conduit(), loss.massFlow(), loss.inlet());
    return Working.titled(title, units)
        .note("The air at rest has been sped up into the bore, where it has the state 1.")
        .given(FLOW, loss.massFlow().kilogramsPerSecond(), 8)
        .given(BORE, loss.conduit().bore().metres(), 8)
        .given(INLET_PRESSURE, loss.inlet().pressure().pascals(), digits)
        .given(GAS_CONSTANT, AirState.GAS_CONSTANT, 9)
        .given(INLET_KELVINS, loss.inlet().temperature().kelvins(), 7)
        .given(RATIO, G, 3)
        .step(MACH_ENTERED, loss.inletMach(), 4)
        .step(PRESSURE_AT_REST, loss.outlet().pressure().pascals() + loss.drop().pascals(), digits)
        .include(inBore.working(units), OUTLET_PRESSURE)
        .step(LOST_FROM_REST, loss.drop().pascals(), 3)
        .answer(DROP)
        .build();
  }

  private Working working(LineLoss.Choked loss, UnitSystem units) {
    double m1 = new ReservoirElement(law, loss.conduit())
        .machAtLargest(
            loss.inlet().pressure().pascals(),
            loss.inlet().temperature().kelvins(),
            loss.inlet().viscosity().pascalSeconds());
    return Working.titled("Air in " + loss.conduit().in(units) + " chokes (" + title() + ")", units)
        .given(BORE, loss.conduit().bore().metres(), 8)
        .given(REST_PRESSURE, loss.inlet().pressure().pascals(), 8)
        .given(RATIO, G, 3)
        .given(GAS_CONSTANT, AirState.GAS_CONSTANT, 9)
        .given(REST_KELVINS, loss.inlet().temperature().kelvins(), 8)
        .given(INLET_MACH, m1, 8)
        .step(LARGEST, loss.largest().kilogramsPerSecond(), 4)
        .answer(LARGEST_FLOW)
        .note("Friction brings it to Mach 1 at the outlet. The flow asked for is more.")
        .build();
  }

  @Override
  public String title() {
    return "adiabatic flow from a reservoir, " + law.title();
  }

  @Override
  public String validity() {
    return "ideal gas without heat through the wall, any length, up to choking at Mach 1; the inlet is air at "
        + "rest, a rounded entrance";
  }

  @Override
  public String fitBasis() {
    return PipeModel.FIT_BASIS;
  }

  @Override
  public String bias() {
    return "higher by the pressure that speeds the air up, 0.7 M1² of p0: nothing in shop lines, most of the drop "
        + "in a stub that blows off";
  }

  @Override
  public Source source() {
    return SOURCE;
  }
}
