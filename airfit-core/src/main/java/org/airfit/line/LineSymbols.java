package org.airfit.line;

import org.airfit.working.Symbol;
import org.airfit.working.ValueKind;

/** The symbols that the workings of lines share. */
final class LineSymbols {

  static final Symbol FLOW = Symbol.of("ṁ", ValueKind.MASS_FLOW);
  static final Symbol LARGEST_FLOW = Symbol.of("ṁ", "\\dot m_{max}", ValueKind.MASS_FLOW);
  static final Symbol FLUX = Symbol.of("G", ValueKind.MASS_FLUX);
  static final Symbol BORE = Symbol.of("D", ValueKind.LENGTH);
  static final Symbol AREA = Symbol.of("A", ValueKind.AREA);
  static final Symbol LENGTH = Symbol.of("L", ValueKind.LENGTH);
  static final Symbol VISCOSITY = Symbol.of("μ", ValueKind.VISCOSITY);
  static final Symbol REYNOLDS = Symbol.of("Re", ValueKind.NUMBER);
  static final Symbol ROUGHNESS = Symbol.of("ε/D", ValueKind.NUMBER);
  static final Symbol FRICTION = Symbol.of("λ", ValueKind.NUMBER);
  static final Symbol FITTINGS = Symbol.of("ΣK", ValueKind.NUMBER);
  static final Symbol RESISTANCE = Symbol.of("k", ValueKind.NUMBER);
  static final Symbol GAS_CONSTANT = Symbol.of("R", ValueKind.HEAT_CAPACITY);
  static final Symbol RATIO = Symbol.of("γ", ValueKind.NUMBER);
  static final Symbol KELVINS = Symbol.of("T", ValueKind.TEMPERATURE);
  static final Symbol REST_KELVINS = Symbol.of("T0", ValueKind.TEMPERATURE);
  static final Symbol INLET_KELVINS = Symbol.of("T1", ValueKind.TEMPERATURE);
  static final Symbol OUTLET_KELVINS = Symbol.of("T2", ValueKind.TEMPERATURE);
  static final Symbol INLET_DENSITY = Symbol.of("ρ1", ValueKind.DENSITY);
  static final Symbol INLET_MACH = Symbol.of("M1", ValueKind.NUMBER);
  static final Symbol OUTLET_MACH = Symbol.of("M2", ValueKind.NUMBER);
  static final Symbol REST_PRESSURE = Symbol.of("p0", ValueKind.PRESSURE);
  static final Symbol INLET_PRESSURE = Symbol.of("p1", ValueKind.PRESSURE);
  static final Symbol OUTLET_PRESSURE = Symbol.of("p2", ValueKind.PRESSURE);
  static final Symbol DROP = Symbol.of("Δp", ValueKind.SAID_PRESSURE);

  private LineSymbols() {}
}
