package org.airfit.flow;

import java.util.List;
import java.util.Objects;
import java.util.OptionalDouble;
import org.airfit.quantity.QuantityFormatException;
import org.airfit.source.Source;

/**
 * What a catalogue prints of how much air a part lets through, such as 'Cv 1.4' or '40 scfm at 100 psig, 5 psi drop'.
 *
 * <table class="striped">
 * <caption>What is read</caption>
 * <thead><tr><th>printed</th><th>further figures, if told</th></tr></thead>
 * <tbody>
 * <tr><td>Cv 1.4, Kv 1.2</td><td>xT 0.7</td></tr>
 * <tr><td>C 3.5 dm³/(s·bar)</td><td>b 0.3, m 0.5, opens at 0.2 bar</td></tr>
 * <tr><td>S 12 mm²</td><td>b 0.3</td></tr>
 * <tr><td>40 scfm at 100 psig, 5 psi drop</td><td>b 0.3, 68 °F</td></tr>
 * <tr><td>1000 L/min ANR from 6 bar(g) to 5 bar(g)</td><td>b 0.3, 20 °C</td></tr>
 * <tr><td>40 scfm full flow at 90 psig</td><td>b 0.3, 20 °C</td></tr>
 * <tr><td>40 scfm at 100 psig; 40 scfm</td><td>b 0.3, 20 °C</td></tr>
 * <tr><td>20 scfm at 100 psig, 1 psi drop; 40 scfm, 4 psi drop</td><td>20 °C</td></tr>
 * </tbody>
 * </table>
 *
 * <p>What is not told is a range, or taken as it usually is; {@link #assumptions} says which. Gauge pressures of a
 * rating count from 1.01325 bar(a), air without a temperature has 20 °C, both our own choice. A flow that does not
 * tell where it is counted, such as 40 cfm, has every usual reading of {@link org.airfit.quantity.UnmarkedFlow}.
 *
 * <p>A rating without b is a range of capacities:
 *
 * <pre>{@code
 * import org.airfit.flow.Rating;
 * import org.airfit.working.UnitSystem;
 *
 * class PrintedRating {
 *   public static void main(String[] args) {
 *     Rating rating = Rating.parse("40 scfm at 100 psig, 5 psi drop");
 *     System.out.println(rating.capacity().isExact()); // false
 *     System.out.println(UnitSystem.SI.say(rating.capacity().least().conductance())); // 5.868 dm³/(s·bar)
 *     System.out.println(UnitSystem.SI.say(rating.capacity().most().conductance())); // 8.436 dm³/(s·bar)
 *   }
 * }
 * }</pre>
 *
 * <p>This class is immutable, thread-safe and value-based.
 */
public final class Rating {

  private final String text;
  private final RatingFigures figures;

  private Rating(String text, RatingFigures figures) {
    this.text = text;
    this.figures = figures;
  }

  /**
   * Reads what a catalogue prints.
   *
   * @param text the rating, such as "Cv 1.4", "40 scfm at 100 psig, 5 psi drop" or "C 3.5 dm3/(s bar), b 0.3"; points
   *     of a table stand between semicolons
   * @return the rating
   * @throws QuantityFormatException if the text is no rating; it tells where and what would be accepted
   */
  public static Rating parse(String text) {
    Objects.requireNonNull(text, "text");
    return new Rating(text.strip(), RatingReader.read(text));
  }

  /** {@return what the rating is made of} */
  public RatingKind kind() {
    return figures.kind();
  }

  /** {@return the capacity, as well as the rating tells it} */
  public CapacityRange capacity() {
    return figures.capacity();
  }

  /** {@return what was taken for what the rating does not tell, with what each rests on; empty if nothing} */
  public List<Source> assumptions() {
    return figures.assumptions();
  }

  /** {@return how far the points of a table lie to either side of the nearest curve [-]; empty of other ratings} */
  public OptionalDouble residual() {
    return figures.residual();
  }

  /** Ratings are equal that are of one kind and come to the same capacity, however they are written. */
  @Override
  public boolean equals(Object other) {
    return other instanceof Rating that && figures.equals(that.figures);
  }

  @Override
  public int hashCode() {
    return figures.hashCode();
  }

  /** {@return the rating as it was typed, which {@code parse} reads back} */
  @Override
  public String toString() {
    return text;
  }
}
