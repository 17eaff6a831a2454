package org.airfit.run;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import org.airfit.internal.Statistics;

/** Holds all explanations of a run against readings. */
final class GaugeJudge {

  /** A gauge difference beyond so many standard deviations is no chance: our choice. */
  private static final double BEYOND = 3.0;

  private final GaugeModel model;
  private final GaugePlaces places;
  private final List<GaugeFit> fits = new ArrayList<>();
  private final double[] probabilities;
  private final double other;

  GaugeJudge(GaugeModel model, List<GaugeReading> readings) {
    this.model = model;
    this.places = new GaugePlaces(readings, model.names());
    for (GaugeFit fit : model.fits(gauges(readings))) {
      GaugeFit held = fit.against(places);
      if (held.isPossible()) {
        fits.add(held);
      }
    }
    double ofOther = Math.log(model.priorOfOther()) + logOfOther();
    double most =
        Math.max(ofOther, fits.stream().mapToDouble(GaugeFit::logWeight).max().orElseThrow());
    double sum = Math.exp(ofOther - most);
    probabilities = new double[fits.size()];
    for (int i = 0; i < probabilities.length; i++) {
      probabilities[i] = Math.exp(fits.get(i).logWeight() - most);
      sum += probabilities[i];
    }
    for (int i = 0; i < probabilities.length; i++) {
      probabilities[i] /= sum;
    }
    other = Math.exp(ofOther - most) / sum;
  }

  private static List<String> gauges(List<GaugeReading> readings) {
    return readings.stream().map(reading -> reading.gauge().name()).distinct().toList();
  }

  /**
   * How probable readings are where something else is wrong: those at rest as if all were as told; while the tool runs
   * any pressures that fall along the run, between that of the supply and none, each as probable as another:
   *
   * <pre>
   *   n!/Pⁿ
   * </pre>
   */
  private double logOfOther() {
    List<GaugeReading> atRest = places.readings().stream()
        .filter(reading -> reading.state() == ToolState.AT_REST)
        .toList();
    double log = 0.0;
    if (!atRest.isEmpty()) {
      GaugeFit rest = model.plain().against(new GaugePlaces(atRest, model.names()));
      log += rest.logWeight() - Math.log(rest.prior());
    }
    int running = places.size() - atRest.size();
    return log
        + Statistics.logGamma(running + 1.0)
        - running * Math.log(model.gaugePressureOfSupply());
  }

  /** All explanations, the most probable first. */
  List<Explanation> explanations() {
    List<Explanation> all = new ArrayList<>();
    for (int i = 0; i < fits.size(); i++) {
      GaugeFit fit = fits.get(i);
      boolean hasValue = fit.suspect().kind() != SuspectKind.NOTHING;
      all.add(Explanation.of(
          fit.suspect(),
          probabilities[i],
          fit.fit(places.size()),
          hasValue ? fit.range() : new double[0],
          model.scene()));
    }
    all.add(Explanation.of(
        new Suspect(SuspectKind.OTHER, Suspect.RUN),
        other,
        OptionalDouble.empty(),
        new double[0],
        model.scene()));
    all.sort(Comparator.comparingDouble(Explanation::probability).reversed());
    return List.copyOf(all);
  }

  Optional<NextGaugeReading> next() {
    return GaugeNext.of(fits, probabilities, places.readings(), model.names());
  }

  /** What would stand at the places of the readings where all is as told [Pa]. */
  double[] asTold() {
    GaugeFit plain = model.plain().against(places);
    double[] expected = plain.bestRow();
    return IntStream.range(0, places.size())
        .mapToDouble(i -> expected[plain.grid().index(0, places.state(i), places.place(i))])
        .toArray();
  }

  /** Pairs of readings that contradict each other. */
  List<Contradiction> contradictions() {
    double[] told = asTold();
    List<Contradiction> found = new ArrayList<>();
    for (int i = 0; i < places.size(); i++) {
      for (int j = 0; j < places.size(); j++) {
        if (places.state(i) == places.state(j) && isBefore(i, j)) {
          contradiction(i, j, told).ifPresent(found::add);
        }
      }
    }
    return List.copyOf(found);
  }

  /** Whether a reading lies nearer to the supply; of two at one place the first does. */
  private boolean isBefore(int one, int other) {
    return places.place(one) < places.place(other)
        || (places.place(one) == places.place(other) && one < other);
  }

  private Optional<Contradiction> contradiction(int up, int down, double[] told) {
    double allowed = BEYOND
        * Math.sqrt(places.ofGauges(up, up)
            + places.ofGauges(down, down)
            - 2.0 * places.ofGauges(up, down));
    GaugeReading above = places.readings().get(up);
    GaugeReading below = places.readings().get(down);
    double rise = below.shown().pascals() - above.shown().pascals();
    // a regulator or a check valve between them holds some back at rest
    double apart = Math.abs(rise - (told[down] - told[up]));
    boolean isOne = places.place(up) == places.place(down);
    boolean isEven = isOne || places.state(up) == ToolState.AT_REST;
    boolean contradicts = isEven ? apart > allowed : rise > allowed;
    return contradicts ? Optional.of(Contradiction.of(above, below, allowed)) : Optional.empty();
  }
}
