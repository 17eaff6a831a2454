package org.airfit.browser.lessons;

import java.util.function.ToDoubleFunction;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.Length;
import org.airfit.quantity.Money;
import org.airfit.quantity.PressureDrop;
import org.airfit.quantity.ReferenceState;
import org.airfit.quantity.SonicConductance;
import org.airfit.quantity.Temperature;
import org.airfit.quantity.Volume;

/** What is typed into a field: a quantity, and the unit that the slider beside it moves in. */
enum Kind {
  MILLIMETRES("mm", text -> Length.parse(text).millimetres()),
  METRES("m", text -> Length.parse(text).metres()),
  INCHES("in", text -> Length.parse(text).inches()),
  SCFM(
      "scfm",
      text -> FreeAirFlow.from(FreeAirFlow.parse(text).massFlow(), ReferenceState.SCFM_60F)
          .cubicFeetPerMinute()),
  LITRES_PER_SECOND(
      "L/s ANR",
      text -> FreeAirFlow.from(FreeAirFlow.parse(text).massFlow(), ReferenceState.ANR)
          .litresPerSecond()),
  PSIG("psig", text -> GaugePressure.parse(text).psi()),
  BAR_GAUGE("bar(g)", text -> GaugePressure.parse(text).bar()),
  PSI_LOST("psi", text -> PressureDrop.parse(text).psi()),
  CONDUCTANCE("dm³/(s·bar)", text -> SonicConductance.parse(text).cubicDecimetresPerSecondBar()),
  LITRES("L", text -> Volume.parse(text).litres()),
  MONEY("EUR", text -> Money.parse(text).amount().doubleValue()),
  SECONDS("s", Numbers::seconds),
  HOURS("h", text -> Numbers.read(text, "h")),
  CELSIUS("°C", text -> Temperature.parse(text).celsius()),
  PERCENT("%", text -> Numbers.read(text, "%")),
  LITRES_AS_IS("L/s", text -> Numbers.read(text, "L/s")),
  DEGREES("°", text -> Numbers.read(text, "°")),
  NUMBER("", text -> Numbers.read(text, "")),
  CHOICE("", text -> Double.NaN);

  private final String unit;
  private final ToDoubleFunction<String> reader;

  Kind(String unit, ToDoubleFunction<String> reader) {
    this.unit = unit;
    this.reader = reader;
  }

  String unit() {
    return unit;
  }

  /** The text with the field's unit behind a bare number. */
  String complete(String typed) {
    String text = typed.strip();
    return !unit.isEmpty() && Numbers.isBare(text) ? text + " " + unit : text;
  }

  /** The number in the unit of the slider. */
  double number(String text) {
    return reader.applyAsDouble(text);
  }
}
