package org.airfit.air;

import java.util.Objects;
import org.airfit.internal.Digits;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.MassFlow;
import org.airfit.quantity.PressureDrop;
import org.airfit.quantity.Range;
import org.airfit.source.Source;
import org.airfit.working.Formula;
import org.airfit.working.Symbol;
import org.airfit.working.UnitSystem;
import org.airfit.working.ValueKind;
import org.airfit.working.Worked;
import org.airfit.working.Working;

/**
 * The pressure that an element takes: clean, at a flow and pressure other than its rating, and at change-out.
 *
 * <pre>
 *   Δp = Δpr x pr/p     or     Δp = Δpr x² pr/p,     x = ṁ/ṁr
 * </pre>
 *
 * <table class="striped">
 * <caption>Symbols</caption>
 * <thead><tr><th>symbol</th><th>meaning</th><th>unit</th></tr></thead>
 * <tbody>
 * <tr><td>Δp, Δpr</td><td>pressure loss, and that told at the rating</td><td>Pa</td></tr>
 * <tr><td>ṁ, ṁr</td><td>flow, and that of the rating</td><td>kg/s</td></tr>
 * <tr><td>p, pr</td><td>absolute inlet pressure, and that of the rating</td><td>Pa</td></tr>
 * </tbody>
 * </table>
 *
 * <p>Public texts do not agree on the law: a magazine on the change of filters has the loss go with the square of the
 * flow, a page on filters nearly in proportion to it (deep-bed media are near the one, housings near the other). Both
 * are told, and the range holds both. At one flow the loss goes with 1/p under either law, because the air is slower
 * where it is denser. Wet elements take more: give the loss of the wetted one where the maker tells it. Air 10 K warmer
 * takes 3 to 6 % more, which is left out. At change-out the loss is what is told, whatever flows: the gauge tells the
 * state of an element only near its rated flow.
 *
 * @param ratedFlow the flow at which the loss is told, above 0
 * @param ratedPressure the inlet pressure at which it is told, above a vacuum
 * @param ratedLoss the loss of the clean element there
 * @param changeOut the loss at which the element is changed
 * @param flow the flow
 * @param inlet the inlet pressure, above a vacuum
 */
public record FilterLoss(
    MassFlow ratedFlow,
    AbsolutePressure ratedPressure,
    PressureDrop ratedLoss,
    PressureDrop changeOut,
    MassFlow flow,
    AbsolutePressure inlet)
    implements Worked {

  private static final Source SQUARE = Source.handbook(
      "magazine on fluid power, on the change of filters: the loss is a square function of the"
          + " flow");

  private static final Source PROPORTION = Source.handbook(
      "a public page on filters: the loss of deep-bed media is in proportion to the flow");

  private static final Source SHARE = Source.derived("flow over rated flow");

  private static final Symbol PART = Symbol.of("x", ValueKind.NUMBER);
  private static final Symbol FLOW = Symbol.of("ṁ", ValueKind.MASS_FLOW);
  private static final Symbol RATED_FLOW = Symbol.of("ṁr", ValueKind.MASS_FLOW);
  private static final Symbol RATED_LOSS = Symbol.of("Δpr", ValueKind.PRESSURE);
  private static final Symbol RATED_PRESSURE = Symbol.of("pr", ValueKind.PRESSURE);
  private static final Symbol INLET = Symbol.of("p", ValueKind.PRESSURE);
  private static final Symbol LINEAR_LOSS = Symbol.of("Δp1", ValueKind.PRESSURE);
  private static final Symbol SQUARE_LOSS = Symbol.of("Δp2", ValueKind.PRESSURE);

  private static final Formula RATIO =
      Formula.of("Part of the rated flow", "⟨x⟩ = ⟨ṁ⟩ / ⟨ṁr⟩", SHARE, PART, FLOW, RATED_FLOW);

  private static final Formula IN_PROPORTION = Formula.of(
      "Clean, in proportion to the flow",
      "⟨Δp1⟩ = ⟨Δpr⟩ × ⟨x⟩ × ⟨pr⟩ / ⟨p⟩",
      PROPORTION,
      LINEAR_LOSS,
      RATED_LOSS,
      PART,
      RATED_PRESSURE,
      INLET);

  private static final Formula BY_SQUARE = Formula.of(
      "Clean, by the square of the flow",
      "⟨Δp2⟩ = ⟨Δpr⟩ × ⟨x⟩^2 × ⟨pr⟩ / ⟨p⟩",
      SQUARE,
      SQUARE_LOSS,
      RATED_LOSS,
      PART,
      RATED_PRESSURE,
      INLET);

  private static final double MOST_PASCALS = 1.0e9;
  private static final double MOST_FLOW = 1.0e6;

  /**
   * Checks the components.
   *
   * @param ratedFlow the flow at which the loss is told, above 0
   * @param ratedPressure the inlet pressure at which it is told, above a vacuum
   * @param ratedLoss the loss of the clean element there
   * @param changeOut the loss at which the element is changed
   * @param flow the flow
   * @param inlet the inlet pressure, above a vacuum
   * @throws IllegalArgumentException if a flow or a pressure is out of range, or the element takes less at change-out
   *     than clean
   */
  public FilterLoss {
    Objects.requireNonNull(ratedFlow, "ratedFlow");
    Objects.requireNonNull(ratedPressure, "ratedPressure");
    Objects.requireNonNull(ratedLoss, "ratedLoss");
    Objects.requireNonNull(changeOut, "changeOut");
    Objects.requireNonNull(flow, "flow");
    Objects.requireNonNull(inlet, "inlet");
    requireWithin("rated flow", ratedFlow.kilogramsPerSecond(), 1.0e-9, MOST_FLOW, "kg/s");
    requireWithin("flow", flow.kilogramsPerSecond(), 0.0, MOST_FLOW, "kg/s");
    requireWithin("rated inlet pressure", ratedPressure.pascals(), 1.0, MOST_PASCALS, "Pa(a)");
    requireWithin("inlet pressure", inlet.pascals(), 1.0, MOST_PASCALS, "Pa(a)");
    requireWithin("rated pressure loss", ratedLoss.pascals(), 0.0, MOST_PASCALS, "Pa");
    requireWithin("pressure loss at change-out", changeOut.pascals(), 0.0, MOST_PASCALS, "Pa");
    if (changeOut.compareTo(ratedLoss) < 0) {
      throw new IllegalArgumentException("pressure loss at change-out must be at least that of"
          + " the clean element, " + ratedLoss.shown() + ", was " + changeOut.shown());
    }
  }

  private static void requireWithin(
      String what, double value, double least, double most, String unit) {
    if (!(value >= least && value <= most)) {
      throw new IllegalArgumentException(what + " must be in ["
          + Digits.told(least) + ", "
          + Digits.told(most) + "] " + unit + ", was "
          + Digits.told(value) + " " + unit);
    }
  }

  private double part() {
    return flow.kilogramsPerSecond() / ratedFlow.kilogramsPerSecond();
  }

  /** {@return the loss of the clean element if it goes in proportion to the flow} */
  public PressureDrop inProportion() {
    return PressureDrop.ofPascals(
        ratedLoss.pascals() * part() * ratedPressure.pascals() / inlet.pascals());
  }

  /** {@return the loss of the clean element if it goes with the square of the flow} */
  public PressureDrop bySquare() {
    return PressureDrop.ofPascals(
        ratedLoss.pascals() * part() * part() * ratedPressure.pascals() / inlet.pascals());
  }

  /** {@return the loss of the clean element, between the two laws} */
  public Range<PressureDrop> clean() {
    PressureDrop linear = inProportion();
    PressureDrop square = bySquare();
    return linear.compareTo(square) <= 0
        ? new Range<>(linear, square)
        : new Range<>(square, linear);
  }

  /** {@return the most it takes in use: at change-out, or clean where the flow is so large that it takes more} */
  public PressureDrop most() {
    PressureDrop clean = clean().most();
    return clean.compareTo(changeOut) > 0 ? clean : changeOut;
  }

  /** {@return whether the clean element takes as much as it is to be changed at: it is too small} */
  public boolean isTooSmall() {
    return clean().most().compareTo(changeOut) >= 0 && changeOut.pascals() > 0.0;
  }

  @Override
  public Working working(UnitSystem units) {
    return Working.titled("Pressure loss of a clean element", units)
        .given(FLOW, flow.kilogramsPerSecond(), 5)
        .given(RATED_FLOW, ratedFlow.kilogramsPerSecond(), 5)
        .step(RATIO, part(), 4)
        .given(RATED_LOSS, ratedLoss.pascals(), 5)
        .given(RATED_PRESSURE, ratedPressure.pascals(), 5)
        .given(INLET, inlet.pascals(), 5)
        .step(IN_PROPORTION, inProportion().pascals(), 4)
        .step(BY_SQUARE, bySquare().pascals(), 4)
        .answer(LINEAR_LOSS, SQUARE_LOSS)
        .build();
  }
}
