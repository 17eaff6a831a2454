package org.airfit.line;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.DoubleSummaryStatistics;
import java.util.List;
import java.util.OptionalDouble;
import org.airfit.air.AirState;
import org.airfit.internal.Digits;
import org.airfit.quantity.MassFlow;

/**
 * Several models on one line, side by side.
 *
 * <p>A formula of the handbooks beside the equation to use:
 *
 * <pre>{@code
 * import java.util.List;
 * import java.util.Locale;
 * import org.airfit.air.AirState;
 * import org.airfit.line.Conduit;
 * import org.airfit.line.LineFormula;
 * import org.airfit.line.LossComparison;
 * import org.airfit.line.LossModels;
 * import org.airfit.line.Wall;
 * import org.airfit.quantity.AbsolutePressure;
 * import org.airfit.quantity.FreeAirFlow;
 * import org.airfit.quantity.Length;
 * import org.airfit.quantity.Temperature;
 *
 * class BesideAFormula {
 *   public static void main(String[] args) {
 *     Conduit pipe = Conduit.of(Length.parse("1 in"), Length.parse("100 ft"), Wall.COMMERCIAL_STEEL);
 *     AirState inlet = AirState.of(AbsolutePressure.parse("114.7 psia"), Temperature.parse("60 °F"));
 *     LossComparison both = LossComparison.of(
 *         List.of(LossModels.isothermal(), LineFormula.HARRIS),
 *         pipe,
 *         FreeAirFlow.parse("100 scfm").massFlow(),
 *         inlet);
 *     System.out.printf(
 *         Locale.ROOT, "%+.0f %%%n", 100.0 * both.deviation(both.losses().get(1)).orElseThrow()); // +27 %
 *   }
 * }
 * }</pre>
 *
 * <p>This class is immutable, thread-safe and value-based.
 */
public final class LossComparison {

  private final List<LineLoss> losses;
  private final LineLoss reference;

  private LossComparison(List<LineLoss> losses, LineLoss reference) {
    this.losses = List.copyOf(losses);
    this.reference = reference;
  }

  /**
   * Runs models on a line.
   *
   * @param models the models, at least one; {@link LossModels#all()} for all there are
   * @param conduit what the air runs through
   * @param massFlow the flow
   * @param inlet the air as it enters
   * @return what they say
   * @throws IllegalArgumentException if there is no model
   */
  public static LossComparison of(
      List<LossModel> models, Conduit conduit, MassFlow massFlow, AirState inlet) {
    if (models.isEmpty()) {
      throw new IllegalArgumentException("models to compare must be at least 1, was 0");
    }
    List<LineLoss> losses = new ArrayList<>();
    for (LossModel model : models) {
      losses.add(model.loss(conduit, massFlow, inlet));
    }
    return new LossComparison(losses, LossModels.isothermal().loss(conduit, massFlow, inlet));
  }

  /** {@return what each model says, in the order asked for} */
  public List<LineLoss> losses() {
    return losses;
  }

  /** {@return what {@link LossModels#isothermal()} says, which the others are held against} */
  public LineLoss reference() {
    return reference;
  }

  private static String percent(double share) {
    return Digits.fixed(100.0 * share, 1) + " %";
  }

  private static OptionalDouble drop(LineLoss loss) {
    return loss.fold(
        flowing -> OptionalDouble.of(flowing.drop().pascals()), choked -> OptionalDouble.empty());
  }

  /**
   * Tells how far a loss lies from the reference.
   *
   * @param loss one of the losses
   * @return its drop over that of the reference, less 1 [-]; empty where one of the two chokes or nothing is lost
   */
  public OptionalDouble deviation(LineLoss loss) {
    OptionalDouble own = drop(loss);
    OptionalDouble other = drop(reference);
    return own.isPresent() && other.isPresent() && other.getAsDouble() > 0.0
        ? OptionalDouble.of(own.getAsDouble() / other.getAsDouble() - 1.0)
        : OptionalDouble.empty();
  }

  /** {@return the largest drop over the smallest [-]; empty where all choke or nothing is lost} */
  public OptionalDouble spread() {
    return spread(losses);
  }

  private static OptionalDouble spread(List<LineLoss> losses) {
    DoubleSummaryStatistics drops = losses.stream()
        .mapToDouble(loss -> drop(loss).orElse(0.0))
        .filter(drop -> drop > 0.0)
        .summaryStatistics();
    return drops.getCount() > 0
        ? OptionalDouble.of(drops.getMax() / drops.getMin())
        : OptionalDouble.empty();
  }

  /**
   * Explains the spread: which models lie at its ends and why, and how much of it is the equation, how much the
   * friction.
   *
   * @return sentences; none where fewer than two models give a drop
   */
  public List<String> explanation() {
    List<LineLoss> given = losses.stream()
        .filter(loss -> drop(loss).orElse(0.0) > 0.0)
        .sorted(Comparator.comparingDouble(loss -> drop(loss).orElseThrow()))
        .toList();
    if (given.size() < 2) {
      return List.of();
    }
    LineLoss least = given.get(0);
    LineLoss most = given.get(given.size() - 1);
    List<String> sentences = new ArrayList<>();
    sentences.add("The drops lie between " + inBar(least) + " (" + least.model().title() + ") and "
        + inBar(most) + " (" + most.model().title() + "): a factor of "
        + Digits.significant(spread().orElseThrow(), 3) + ".");
    List<LineLoss> equations =
        given.stream().filter(LossComparison::hasFriction).toList();
    if (equations.size() > 1) {
      sentences.add(
          "Those that calculate with the wall's own roughness differ by "
              + percent(spread(equations).orElseThrow() - 1.0)
              + ": that is what the equations do with air that expands on its way, and the laws of friction.");
    }
    for (LineLoss end : List.of(least, most)) {
      if (!hasFriction(end)) {
        LineLoss.Explainer model = end.model();
        sentences.add(model.title() + " has a friction of its own, fitted to " + model.fitBasis()
            + ". It is meant for " + model.validity() + ". On shop lines it is usually "
            + model.bias() + ".");
      }
    }
    return List.copyOf(sentences);
  }

  private static boolean hasFriction(LineLoss loss) {
    return loss.fold(flowing -> flowing.friction().isPresent(), choked -> false);
  }

  private static String inBar(LineLoss loss) {
    return Digits.significant(drop(loss).orElseThrow() / 1.0e5, 3) + " bar";
  }

  /**
   * {@return a table in Markdown: model, drop, deviation from the isothermal answer, what it was fitted to and how it
   * is usually off; and the spread explained}
   */
  public String toMarkdown() {
    StringBuilder out = new StringBuilder(
        "| model | drop [bar] | against isothermal | fitted to | usually, on shop lines |\n|---|--:|--:|---|---|\n");
    for (LineLoss loss : losses) {
      LineLoss.Explainer model = loss.model();
      OptionalDouble drop = drop(loss);
      OptionalDouble deviation = deviation(loss);
      out.append("| ")
          .append(model.title())
          .append(" | ")
          .append(
              drop.isPresent()
                  ? Digits.significant(drop.getAsDouble() / 1.0e5, 4)
                  : "does not pass")
          .append(" | ")
          .append(
              deviation.isPresent()
                  ? (deviation.getAsDouble() < 0.0 ? "" : "+") + percent(deviation.getAsDouble())
                  : "-")
          .append(" | ")
          .append(model.fitBasis())
          .append(" | ")
          .append(model.bias())
          .append(" |\n");
    }
    List<String> explanation = explanation();
    if (!explanation.isEmpty()) {
      out.append('\n').append(String.join(" ", explanation)).append('\n');
    }
    return out.toString();
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof LossComparison that
        && losses.equals(that.losses)
        && reference.equals(that.reference);
  }

  @Override
  public int hashCode() {
    return 31 * losses.hashCode() + reference.hashCode();
  }

  /** {@return the models and their drops} */
  @Override
  public String toString() {
    return losses.toString();
  }
}
