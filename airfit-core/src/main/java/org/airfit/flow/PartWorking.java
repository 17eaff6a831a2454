package org.airfit.flow;

import org.airfit.air.AirState;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.MassFlow;
import org.airfit.quantity.PressureDrop;
import org.airfit.quantity.ReferenceState;
import org.airfit.source.Source;
import org.airfit.working.Formula;
import org.airfit.working.Symbol;
import org.airfit.working.UnitSystem;
import org.airfit.working.ValueKind;
import org.airfit.working.Working;

/** The workings of a part after ISO 6358. */
final class PartWorking {

  private static final Source SOURCE = Source.handbook(
      "equation of ISO 6358-1:2013, read in documentation of general modelling libraries; the standard not seen");

  private static final Symbol CONDUCTANCE = Symbol.of("C", ValueKind.CONDUCTANCE);
  private static final Symbol REFERENCE_DENSITY = Symbol.of("ρ0", ValueKind.DENSITY);
  private static final Symbol REFERENCE_KELVINS = Symbol.of("T0", ValueKind.TEMPERATURE);
  private static final Symbol INLET = Symbol.of("p1", ValueKind.PRESSURE);
  private static final Symbol KELVINS = Symbol.of("T1", ValueKind.TEMPERATURE);
  private static final Symbol OUTLET = Symbol.of("p2", ValueKind.PRESSURE);
  private static final Symbol CHOKED_FLOW = Symbol.of("ṁ*", ValueKind.MASS_FLOW);
  private static final Symbol FLOW = Symbol.of("ṁ", ValueKind.MASS_FLOW);
  private static final Symbol B = Symbol.of("b", ValueKind.NUMBER);
  private static final Symbol M = Symbol.of("m", ValueKind.NUMBER);
  private static final Symbol CRACKING = Symbol.of("Δpc", ValueKind.PRESSURE);
  private static final Symbol DROP = Symbol.of("Δp", ValueKind.SAID_PRESSURE);

  private static final Formula CHOKED = Formula.of(
      "Choked flow",
      "⟨ṁ*⟩ = ⟨C⟩ × ⟨ρ0⟩ × ⟨p1⟩ × √(⟨T0⟩ / ⟨T1⟩)",
      SOURCE,
      CHOKED_FLOW,
      CONDUCTANCE,
      REFERENCE_DENSITY,
      INLET,
      REFERENCE_KELVINS,
      KELVINS);

  private static final Formula SUBSONIC = Formula.of(
      "Subsonic flow",
      "⟨ṁ⟩ = ⟨ṁ*⟩ × (1 − ((⟨p2⟩ / ⟨p1⟩ − ⟨b⟩) / (1 − ⟨Δpc⟩ / ⟨p1⟩ − ⟨b⟩))²)^⟨m⟩",
      SOURCE,
      FLOW,
      CHOKED_FLOW,
      OUTLET,
      INLET,
      CRACKING,
      B,
      M);

  private static final Formula LOSS = Formula.of(
      "Drop",
      "⟨Δp⟩ = ⟨Δpc⟩ + (⟨p1⟩ × (1 − ⟨b⟩) − ⟨Δpc⟩) × (1 − √(1 − (⟨ṁ⟩ / ⟨ṁ*⟩)^(1 / ⟨m⟩)))",
      SOURCE,
      DROP,
      CRACKING.as(ValueKind.SAID_PRESSURE),
      INLET.as(ValueKind.SAID_PRESSURE),
      B,
      FLOW,
      CHOKED_FLOW,
      M);

  private static final Formula AS_IT_OPENS = Formula.of(
      "Drop at which it opens", "⟨Δp⟩ = ⟨Δpc⟩", SOURCE, DROP, CRACKING.as(ValueKind.SAID_PRESSURE));

  private static final Formula ACROSS = Formula.of(
      "Drop across the part",
      "⟨Δp⟩ = ⟨p1⟩ − ⟨p2⟩",
      Source.handbook("definition"),
      DROP,
      INLET.as(ValueKind.SAID_PRESSURE),
      OUTLET.as(ValueKind.SAID_PRESSURE));

  private PartWorking() {}

  private static Working choked(FlowCoefficients part, AirState inlet, UnitSystem units) {
    Working.Builder working = Working.titled("Largest flow of air it lets through", units);
    inlet.warnings(units).forEach(working::note);
    return working
        .given(CONDUCTANCE, part.conductance().cubicMetresPerSecondPascal(), 7)
        .given(REFERENCE_DENSITY, ReferenceState.ANR.density().kilogramsPerCubicMetre(), 4)
        .given(INLET, inlet.pressure().pascals(), 7)
        .given(REFERENCE_KELVINS, FlowKernels.T0, 5)
        .given(KELVINS, inlet.temperature().kelvins(), 6)
        .step(
            CHOKED,
            FlowKernels.choked(
                part.conductance().cubicMetresPerSecondPascal(),
                ReferenceState.ANR.density().kilogramsPerCubicMetre(),
                inlet.pressure().pascals(),
                inlet.temperature().kelvins()),
            5)
        .answer(CHOKED_FLOW)
        .build();
  }

  private static Working.Builder titled(
      String title, FlowCoefficients part, AirState inlet, UnitSystem units) {
    return Working.titled(title, units).include(choked(part, inlet, units), CHOKED_FLOW);
  }

  /** The flow through a part between two pressures. */
  static Working flow(
      FlowCoefficients part,
      AirState inlet,
      AbsolutePressure outlet,
      FlowRegime regime,
      MassFlow flow,
      UnitSystem units) {
    String title = "Flow of air through a part of " + part.inWords(units);
    return switch (regime) {
      case CHOKED ->
        titled(title, part, inlet, units)
            .note("p2/p1 is not above b: the flow is choked, and this is all that passes.")
            .answer(CHOKED_FLOW)
            .build();
      case CLOSED ->
        Working.titled(title, units)
            .given(INLET, inlet.pressure().pascals(), 7)
            .given(OUTLET, outlet.pascals(), 7)
            .step(ACROSS, inlet.pressure().dropTo(outlet).pascals(), 4)
            .answer(DROP)
            .answer("The drop does not exceed the cracking pressure: nothing flows.")
            .build();
      case SUBSONIC ->
        titled(title, part, inlet, units)
            .given(INLET, inlet.pressure().pascals(), 7)
            .given(OUTLET, outlet.pascals(), 7)
            .given(CRACKING, part.crackingPressure().pascals(), 7)
            .given(B, part.criticalPressureRatio(), 4)
            .given(M, part.subsonicIndex(), 4)
            .step(SUBSONIC, flow.kilogramsPerSecond(), 4)
            .answer(FLOW)
            .build();
    };
  }

  /** The drop of a flow that passes. */
  static Working passes(
      FlowCoefficients part, AirState inlet, MassFlow flow, PressureDrop drop, UnitSystem units) {
    if (FlowKernels.chokesAsItOpens(
        part.criticalPressureRatio(),
        part.crackingPressure().pascals() / inlet.pressure().pascals())) {
      return Working.titled("Pressure of the air behind a part of " + part.inWords(units), units)
          .note("It opens only where p2/p1 is at most b, and chokes as soon as it is open.")
          .given(CRACKING, part.crackingPressure().pascals(), 6)
          .step(AS_IT_OPENS, drop.pascals(), 4)
          .answer(DROP)
          .build();
    }
    return titled("Pressure of the air behind a part of " + part.inWords(units), part, inlet, units)
        .given(INLET, inlet.pressure().pascals(), 7)
        .given(CRACKING, part.crackingPressure().pascals(), 6)
        .given(B, part.criticalPressureRatio(), 6)
        .given(FLOW, flow.kilogramsPerSecond(), 7)
        .given(M, part.subsonicIndex(), 4)
        .step(LOSS, drop.pascals(), 4)
        .answer(DROP)
        .build();
  }

  /** A flow that does not pass. */
  static Working chokes(FlowCoefficients part, AirState inlet, MassFlow flow, UnitSystem units) {
    return titled("The air in a part of " + part.inWords(units) + " chokes", part, inlet, units)
        .note("The flow asked for, "
            + ValueKind.MASS_FLOW.format(flow.kilogramsPerSecond(), 6, units)
            + ", is more than that.")
        .answer(CHOKED_FLOW)
        .build();
  }
}
