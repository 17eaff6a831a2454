package org.airfit.select;

import java.util.function.DoubleUnaryOperator;
import org.airfit.air.AirState;
import org.airfit.flow.FlowElement;
import org.airfit.line.LossModel;
import org.airfit.line.LossModels;
import org.airfit.quantity.AbsolutePressure;
import org.jspecify.annotations.Nullable;

/**
 * The pressure behind parts for the flows of a job. Pressures are absolute [Pa]; {@link #STARVED} stands for
 * a flow that does not get there.
 *
 * <p>The parts answer as {@link FlowElement}s, as they do in a {@link org.airfit.run.Run}. More pressure in front of
 * one never leaves less behind it; the search rests on that. Lines are isothermal and parts keep the temperature, so
 * that it is the supply's all along.
 */
final class SearchAir {

  /** The pressure told for a flow that does not get there [Pa], below every real one. */
  static final double STARVED = -1.0;

  /** What computing may round off a pressure, and much more. */
  static final double NOISE_PASCALS = 1.0e-3;

  /** The model that a run takes where none is named. */
  private static final LossModel LINES = LossModels.isothermal();

  private final double atmosphere;
  private final double kelvins;
  private final double viscosity;
  private final double outlet;

  /**
   * Obtains the pressures behind parts.
   *
   * @param job the job
   * @param known which end is taken of what is not known
   */
  SearchAir(Requirement job, Known known) {
    this.atmosphere = job.toOutlet().atmosphere().pascals();
    AirState still = job.toOutlet().stillAir();
    this.kelvins = still.temperature().kelvins();
    this.viscosity = still.viscosity().pascalSeconds();
    this.outlet = job.atOutlet(known).map(AbsolutePressure::pascals).orElse(STARVED);
  }

  /** The pressure at the outlet while the tool works, or all do. */
  double outlet() {
    return outlet;
  }

  double gaugePascals(double pascals) {
    return pascals == STARVED ? STARVED : pascals - atmosphere;
  }

  /** The pressure behind an element of a flow [kg/s], by that in front; behind none, that in front. */
  DoubleUnaryOperator behind(@Nullable FlowElement element, double flow) {
    if (element == null) {
      return inlet -> inlet;
    }
    DoubleUnaryOperator outlet = element.outletByInlet(flow, kelvins, viscosity);
    return inlet -> inlet == STARVED ? STARVED : orStarved(outlet.applyAsDouble(inlet));
  }

  private double orStarved(double behind) {
    return behind >= atmosphere ? behind : STARVED;
  }

  /** What a part does to the air; null of a plug. */
  static @Nullable FlowElement element(Part part, Known known) {
    if (part.line().isPresent()) {
      return LINES.element(known.of(part.line().get()));
    }
    return part.passage().isPresent() ? known.of(part.passage().get()).element() : null;
  }
}
