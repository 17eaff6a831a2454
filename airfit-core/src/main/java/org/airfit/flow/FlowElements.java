package org.airfit.flow;

import java.util.List;
import java.util.Objects;
import org.airfit.air.AirState;
import org.airfit.quantity.Area;
import org.airfit.source.Source;

/** Makes elements of other elements, and elements of one's own from the sheet of a part. */
public final class FlowElements {

  private FlowElements() {}

  /**
   * Obtains several elements in a row as one. What one of them does not let pass does not pass.
   *
   * @param elements the elements in the order the air passes them; with none the air passes unchanged
   * @return all of them as one
   */
  public static FlowElement inSeries(List<? extends FlowElement> elements) {
    return new SeriesElement(List.copyOf(Objects.requireNonNull(elements, "elements")));
  }

  /**
   * Obtains a well rounded entrance from a tank or header into a bore: air at rest is sped up without loss.
   *
   * @param bore the clear section of the bore, above 0
   * @return the entrance; pressure and temperature behind it are those of the moving air
   * @throws IllegalArgumentException if there is no section
   */
  public static FlowElement entrance(Area bore) {
    if (!(bore.squareMetres() > 0.0)) {
      throw new IllegalArgumentException(
          "section of an entrance must be above 0, was " + bore.shown());
    }
    return new EntranceElement(bore.squareMetres());
  }

  /**
   * Obtains an element from a sheet of flows and drops at one inlet, such as that of a filter.
   *
   * <p>See {@link FlowTable} for what is taken between the points and at another inlet.
   *
   * @param inlet the air in front in the sheet
   * @param points the flows and drops, the flows rising from above 0, the drops never falling; at least one
   * @param source where the sheet comes from
   * @return the element
   * @throws IllegalArgumentException if the points break what is said above, or a drop leaves no pressure
   */
  public static FlowTable ofTable(AirState inlet, List<FlowLoss> points, Source source) {
    return FlowTable.of(inlet, points, source);
  }
}
