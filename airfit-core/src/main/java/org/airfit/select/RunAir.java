package org.airfit.select;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.airfit.air.AirState;
import org.airfit.flow.FlowCapacity;
import org.airfit.flow.Passage;
import org.airfit.line.Conduit;
import org.airfit.line.FrictionLaw;
import org.airfit.line.LineLoss;
import org.airfit.line.LossModel;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.MassFlow;
import org.jspecify.annotations.Nullable;

/**
 * What the tool's air becomes part by part, with the same models as {@link org.airfit.circuit.Run} and nothing but the pressure: a search asks
 * for it far oftener than it makes a proposal. Null stands for a flow that does not get there. Not thread-safe: it remembers.
 *
 * <p>More pressure in front of a part never leaves less behind it; the search rests on that.
 */
final class RunAir {

  /** The pressure told for a flow that does not get there [Pa above atmosphere]. */
  static final double STARVED = -1.0;

  private static final double LEAST_REYNOLDS = 1.0e-100;
  private static final double MOST_REYNOLDS = 1.0e9;
  private static final double ROUGHEST = 0.05;

  private static final LossModel MODEL = LossModel.isothermal();

  private final MassFlow demand;
  private final AbsolutePressure atmosphere;
  private final Map<Conduit, Line> lines = new HashMap<>();

  RunAir(Requirement job) {
    this.demand = job.demand().massFlow();
    this.atmosphere = job.toOutlet().atmosphere();
  }

  /** What is known of one conduit: the air behind it by the pressure in front, and the highest pressure that was too low. */
  private static final class Line {
    private final Map<Double, AirState> behind = new HashMap<>();
    private double tooLowPascals = Double.NEGATIVE_INFINITY;
  }

  double gaugePascals(@Nullable AirState air) {
    return air == null ? STARVED : air.pressure().above(atmosphere).pascals();
  }

  @Nullable
  AirState behind(Conduit conduit, @Nullable AirState inlet) {
    if (inlet == null) {
      return null;
    }
    Line line = lines.computeIfAbsent(conduit, any -> new Line());
    double pascals = inlet.pressure().pascals();
    if (pascals <= line.tooLowPascals) {
      return null; // that it chokes takes long to find, and less pressure is no help
    }
    AirState known = line.behind.get(pascals);
    if (known != null) {
      return known;
    }
    AirState found = !isHopeless(conduit, inlet)
            && MODEL.loss(conduit, demand, inlet) instanceof LineLoss.Flowing flowing
        ? orNull(flowing.outlet())
        : null;
    if (found == null) {
      line.tooLowPascals = pascals;
    } else {
      line.behind.put(pascals, found);
    }
    return found;
  }

  /**
   * Whether friction alone takes more than there is above the atmosphere. Where a line chokes, the model also looks for the flow at which it would not, which takes a hundred
   * times as long as this.
   *
   * <pre>
   *   p1² − p2² ≥ (ṁ/A)² R T (λL/D + ΣK),  p2 ≥ p of the atmosphere
   * </pre>
   */
  private boolean isHopeless(Conduit conduit, AirState inlet) {
    double flow = demand.kilogramsPerSecond();
    double reynolds =
        4.0 * flow / (Math.PI * conduit.bore().metres() * inlet.viscosity().pascalSeconds());
    if (!(reynolds >= LEAST_REYNOLDS && reynolds <= MOST_REYNOLDS)
        || conduit.relativeRoughness() > ROUGHEST) {
      return false; // outside what the law tells on its own: ask the model
    }
    double darcy =
        FrictionLaw.COLEBROOK.factor(reynolds, conduit.relativeRoughness()).darcy();
    double resistance =
        darcy * conduit.length().metres() / conduit.bore().metres() + conduit.fittingLoss();
    double flux = flow / conduit.area().squareMetres();
    double rt = AirState.GAS_CONSTANT * inlet.temperature().kelvins();
    double p1 = inlet.pressure().pascals();
    double p2 = atmosphere.pascals();
    return flux * flux * rt * resistance > (p1 * p1 - p2 * p2) * (1.0 + 1.0e-9);
  }

  @Nullable
  AirState behind(FlowCapacity capacity, @Nullable AirState inlet) {
    return inlet != null
            && capacity.passage(demand, inlet) instanceof Passage.Passes passes
            && passes.outlet().pascals() > 0.0
        ? orNull(inlet.at(passes.outlet()))
        : null;
  }

  @Nullable
  AirState behind(List<Part.Adapter> adapters, @Nullable AirState inlet) {
    AirState air = inlet;
    for (Part.Adapter adapter : adapters) {
      air = behind(adapter.conduit(), air);
    }
    return air;
  }

  private @Nullable AirState orNull(AirState outlet) {
    return outlet.pressure().compareTo(atmosphere) >= 0 ? outlet : null;
  }
}
