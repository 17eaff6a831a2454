package org.airfit.line;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import org.airfit.air.AirState;
import org.airfit.internal.Digits;
import org.airfit.quantity.MassFlow;

/**
 * Several models on one line, side by side.
 *
 * @param losses what each model says, in the order asked for
 * @param reference what {@link LossModel#isothermal()} says, which the others are held against
 */
public record LossComparison(List<LineLoss> losses, LineLoss reference) {

  /**
   * Copies the list.
   *
   * @param losses what each model says, in the order asked for
   * @param reference what {@link LossModel#isothermal()} says, which the others are held against
   */
  public LossComparison {
    losses = List.copyOf(losses);
  }

  /**
   * Runs models on a line.
   *
   * @param models the models, at least one; {@link LossModel#all()} for all there are
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
    return new LossComparison(losses, LossModel.isothermal().loss(conduit, massFlow, inlet));
  }

  private static OptionalDouble drop(LineLoss loss) {
    return loss.fold(
        flowing -> OptionalDouble.of(flowing.drop().pascals()), choked -> OptionalDouble.empty());
  }

  private static LossModel model(LineLoss loss) {
    return loss.fold(LineLoss.Flowing::model, LineLoss.Choked::model);
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
    double least = Double.POSITIVE_INFINITY;
    double most = 0.0;
    for (LineLoss loss : losses) {
      OptionalDouble drop = drop(loss);
      if (drop.isPresent()) {
        least = Math.min(least, drop.getAsDouble());
        most = Math.max(most, drop.getAsDouble());
      }
    }
    return most > 0.0 && least > 0.0 ? OptionalDouble.of(most / least) : OptionalDouble.empty();
  }

  /** {@return a table in Markdown: model, drop, deviation from the isothermal answer, what it was fitted to and how it is usually off} */
  public String toMarkdown() {
    StringBuilder out = new StringBuilder(
        "| model | drop [bar] | against isothermal | fitted to | usually, on shop lines |\n|---|--:|--:|---|---|\n");
    for (LineLoss loss : losses) {
      LossModel model = model(loss);
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
                  ? String.format(Locale.ROOT, "%+.1f %%", 100.0 * deviation.getAsDouble())
                  : "-")
          .append(" | ")
          .append(model.fitBasis())
          .append(" | ")
          .append(model.bias())
          .append(" |\n");
    }
    return out.toString();
  }
}
