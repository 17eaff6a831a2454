package org.airfit.select;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.airfit.air.AirState;
import org.airfit.flow.FlowCapacity;
import org.airfit.flow.FlowElement;
import org.airfit.flow.OutletAtFlow;
import org.airfit.line.Conduit;
import org.airfit.line.LossModel;
import org.airfit.line.LossModels;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.MassFlow;
import org.jspecify.annotations.Nullable;

/**
 * What the tool's air becomes part by part, by the same kernels as {@link org.airfit.run.Run} and nothing but the pressure: a search asks
 * for it far oftener than it makes a proposal. Null stands for a flow that does not get there. Not thread-safe: it remembers.
 *
 * <p>More pressure in front of a part never leaves less behind it; the search rests on that.
 */
final class PressureCache {

  /** The pressure told for a flow that does not get there [Pa above atmosphere]. */
  static final double STARVED = -1.0;

  /** Of the model that a run takes where none is named. */
  private static final LossModel LINES = LossModels.isothermal();

  private final MassFlow demand;
  private final AbsolutePressure atmosphere;
  private final Map<Conduit, Line> lines = new HashMap<>();

  PressureCache(Requirement job) {
    this.demand = job.demand().massFlow();
    this.atmosphere = job.toOutlet().atmosphere();
  }

  /** One conduit and the air behind it by the pressure in front. */
  private static final class Line {
    private final FlowElement element;
    private final Map<Double, Optional<AirState>> behind = new HashMap<>();

    Line(Conduit conduit) {
      this.element = LINES.element(conduit);
    }
  }

  double gaugePascals(@Nullable AirState state) {
    return state == null
        ? STARVED
        : GaugePressure.of(state.pressure(), atmosphere).pascals();
  }

  @Nullable
  AirState behind(Conduit conduit, @Nullable AirState inlet) {
    if (inlet == null) {
      return null;
    }
    Line line = lines.computeIfAbsent(conduit, Line::new);
    return line.behind
        .computeIfAbsent(inlet.pressure().pascals(), any -> through(line.element, inlet))
        .orElse(null);
  }

  private Optional<AirState> through(FlowElement element, AirState inlet) {
    double outlet = element.outlet(
        demand.kilogramsPerSecond(),
        inlet.pressure().pascals(),
        inlet.temperature().kelvins(),
        inlet.viscosity().pascalSeconds());
    return outlet >= atmosphere.pascals()
        ? Optional.of(inlet.at(AbsolutePressure.ofPascals(outlet)))
        : Optional.empty();
  }

  @Nullable
  AirState behind(FlowCapacity capacity, @Nullable AirState inlet) {
    return inlet != null
            && capacity.passage(demand, inlet) instanceof OutletAtFlow.Passes passes
            && passes.outlet().pascals() > 0.0
        ? orNull(inlet.at(passes.outlet()))
        : null;
  }

  @Nullable
  AirState behind(List<Part.Adapter> adapters, @Nullable AirState inlet) {
    AirState last = inlet;
    for (Part.Adapter adapter : adapters) {
      last = behind(adapter.conduit(), last);
    }
    return last;
  }

  private @Nullable AirState orNull(AirState outlet) {
    return outlet.pressure().compareTo(atmosphere) >= 0 ? outlet : null;
  }
}
