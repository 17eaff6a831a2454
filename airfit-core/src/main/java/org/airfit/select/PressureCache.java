package org.airfit.select;

import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import org.airfit.air.AirState;
import org.airfit.flow.FlowCapacity;
import org.airfit.flow.FlowElement;
import org.airfit.line.Conduit;
import org.airfit.line.LossModel;
import org.airfit.line.LossModels;
import org.airfit.quantity.AbsolutePressure;
import org.jspecify.annotations.Nullable;

/**
 * The pressure behind parts for the tool's flow, remembered by the pressure in front: a search asks for it far
 * oftener than it makes a
 * proposal. Pressures are absolute [Pa]; NaN stands for a flow that does not get there. Not thread-safe: it remembers.
 *
 * <p>The parts answer as {@link FlowElement}s, as they do in a {@link org.airfit.run.Run}. More pressure in front of
 * one never leaves less
 * behind it; the search rests on that. Lines are isothermal and parts keep the temperature, so that it is the
 * supply's all along.
 */
final class PressureCache {

  /** The pressure told for a flow that does not get there [Pa above atmosphere]. */
  static final double STARVED = -1.0;

  /** The model that a run takes where none is named. */
  private static final LossModel LINES = LossModels.isothermal();

  private final double flow;
  private final double atmosphere;
  private final double kelvins;
  private final double viscosity;
  private final double outlet;
  private final Map<Conduit, Remembered> lines = new HashMap<>();
  private final IdentityHashMap<FlowCapacity, Remembered> parts = new IdentityHashMap<>();

  PressureCache(Requirement job) {
    this.flow = job.demand().massFlow().kilogramsPerSecond();
    this.atmosphere = job.toOutlet().atmosphere().pascals();
    AirState still = job.toOutlet().stillAir();
    this.kelvins = still.temperature().kelvins();
    this.viscosity = still.viscosity().pascalSeconds();
    this.outlet = job.atOutlet().map(AbsolutePressure::pascals).orElse(Double.NaN);
  }

  /** An element with the pressures behind it by those in front. */
  private final class Remembered {
    private final FlowElement element;
    private final Map<Double, Double> behind = new HashMap<>();

    Remembered(FlowElement element) {
      this.element = element;
    }

    double behind(double inlet) {
      if (Double.isNaN(inlet)) {
        return Double.NaN;
      }
      @Nullable Double known = behind.get(inlet);
      if (known == null) {
        double found = element.outlet(flow, inlet, kelvins, viscosity);
        known = found >= atmosphere ? found : Double.NaN;
        behind.put(inlet, known);
      }
      return known;
    }
  }

  /** The pressure at the outlet while the tool works. */
  double outlet() {
    return outlet;
  }

  double gaugePascals(double pascals) {
    return Double.isNaN(pascals) ? STARVED : pascals - atmosphere;
  }

  double behind(Conduit conduit, double inlet) {
    return lines
        .computeIfAbsent(conduit, any -> new Remembered(LINES.element(any)))
        .behind(inlet);
  }

  double behind(FlowCapacity capacity, double inlet) {
    return parts.computeIfAbsent(capacity, any -> new Remembered(any.element())).behind(inlet);
  }

  double behind(List<Part.Adapter> adapters, double inlet) {
    double last = inlet;
    for (Part.Adapter adapter : adapters) {
      last = behind(adapter.conduit(), last);
    }
    return last;
  }
}
