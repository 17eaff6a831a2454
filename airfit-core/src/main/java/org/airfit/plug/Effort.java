package org.airfit.plug;

import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.airfit.source.Source;

/**
 * How much trouble each dimension is to read, against one another: a reading of weight 2 must take away twice the doubt
 * to go first.
 *
 * @param weights a weight above 0 for every dimension
 * @param source whose judgement they are
 */
public record Effort(Map<Dimension, Double> weights, Source source) {

  private static final double HEAVIEST = 100.0;

  private static final Effort USUAL = new Effort(
      weights(1.0, 2.0, 2.0, 3.0),
      Source.commonPractice(
          "outside jaws go on at once (1), steps and grooves must be found and held (2), a bore needs pins or a "
              + "careful hand (3)"));

  private static final Effort EQUAL = new Effort(
      weights(1.0, 1.0, 1.0, 1.0), Source.commonPractice("every reading counts the same"));

  /**
   * Keeps a copy and checks that every dimension has its weight.
   *
   * @param weights a weight above 0 for every dimension
   * @param source whose judgement they are
   * @throws IllegalArgumentException if a dimension has no weight, or one outside (0, 100]
   */
  public Effort {
    Objects.requireNonNull(weights, "weights");
    Objects.requireNonNull(source, "source");
    for (Dimension dimension : Dimension.values()) {
      Double weight = weights.get(dimension);
      if (weight == null || !(weight > 0.0 && weight <= HEAVIEST)) {
        throw new IllegalArgumentException(
            "effort of the " + dimension + " must be in (0, 100], was "
                + (weight == null ? "missing" : weight.toString()) + "; 1 is an easy reading");
      }
    }
    weights = Collections.unmodifiableMap(new EnumMap<>(weights));
  }

  private static Map<Dimension, Double> weights(
      double outside, double step, double groove, double bore) {
    Map<Dimension, Double> weights = new EnumMap<>(Dimension.class);
    for (Dimension dimension : List.of(Dimension.values())) {
      weights.put(
          dimension,
          switch (dimension.access()) {
            case OUTSIDE -> outside;
            case STEP -> step;
            case GROOVE -> groove;
            case BORE -> bore;
          });
    }
    return weights;
  }

  /** {@return the default: outside diameters 1, lengths and grooves 2, the bore 3; common practice, no source} */
  public static Effort usual() {
    return USUAL;
  }

  /** {@return the same weight for every dimension, so that only the doubt taken away counts} */
  public static Effort equal() {
    return EQUAL;
  }

  /**
   * Changes the weight of one dimension.
   *
   * @param dimension the dimension
   * @param weight its weight, in (0, 100]
   * @param judgement whose judgement the weights then are
   * @return weights with that one
   * @throws IllegalArgumentException if {@code weight} is outside its range
   */
  public Effort with(Dimension dimension, double weight, Source judgement) {
    Objects.requireNonNull(dimension, "dimension");
    Objects.requireNonNull(judgement, "judgement");
    Map<Dimension, Double> changed = new EnumMap<>(weights);
    changed.put(dimension, weight);
    return new Effort(changed, judgement);
  }

  /**
   * Obtains the weight of a dimension.
   *
   * @param dimension the dimension
   * @return its weight, 1 for an easy reading
   */
  public double of(Dimension dimension) {
    Objects.requireNonNull(dimension, "dimension");
    return Objects.requireNonNull(weights.get(dimension));
  }
}
