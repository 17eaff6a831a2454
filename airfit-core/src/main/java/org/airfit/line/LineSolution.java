package org.airfit.line;

import java.util.Objects;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.LengthUnit;
import org.airfit.quantity.MassFlow;
import org.airfit.working.UnitSystem;
import org.airfit.working.ValueKind;
import org.airfit.working.Worked;
import org.airfit.working.Working;

/**
 * The flow, bore or length that just leaves a wanted pressure at the outlet, with the loss it has there.
 *
 * <p>This class is immutable, thread-safe and value-based.
 */
public final class LineSolution implements Worked {

  /** What was looked for. */
  enum Unknown {
    FLOW,
    BORE,
    LENGTH
  }

  private final Unknown unknown;
  private final AbsolutePressure wanted;
  private final LineLoss.Flowing loss;
  private final boolean choked;

  LineSolution(Unknown unknown, AbsolutePressure wanted, LineLoss.Flowing loss, boolean choked) {
    this.unknown = unknown;
    this.wanted = wanted;
    this.loss = loss;
    this.choked = choked;
  }

  /** {@return the flow} */
  public MassFlow massFlow() {
    return loss.massFlow();
  }

  /** {@return the conduit, of the bore or length that was looked for} */
  public Conduit conduit() {
    return loss.conduit();
  }

  /** {@return the pressure wanted at the outlet} */
  public AbsolutePressure wanted() {
    return wanted;
  }

  /** {@return the loss of that flow in that conduit} */
  public LineLoss.Flowing loss() {
    return loss;
  }

  /**
   * {@return whether choking sets the limit: the pressure at the outlet lies above the one wanted, and yet no more
   * passes}
   */
  public boolean isLimitedByChoking() {
    return choked;
  }

  @Override
  public Working working(UnitSystem units) {
    return Working.titled(title(units), units)
        .note("Found by trial: " + (choked ? untilItChoked() : untilThePressureWasThere())
            + " The loss at the " + name() + " found:")
        .include(loss.working(units))
        .answer(sentence(units))
        .build();
  }

  private String untilThePressureWasThere() {
    return "the " + name() + " was moved until the pressure at the outlet was the one wanted.";
  }

  private String untilItChoked() {
    return switch (unknown) {
      case FLOW -> "the flow was raised until the line choked.";
      case BORE -> "the bore was made smaller until the line choked.";
      case LENGTH -> "the line was made longer until it choked.";
    };
  }

  private String name() {
    return switch (unknown) {
      case FLOW -> "flow";
      case BORE -> "bore";
      case LENGTH -> "length";
    };
  }

  private String title(UnitSystem units) {
    String pressure = wanted.format(units.pressureUnit());
    return switch (unknown) {
      case FLOW ->
        "Largest flow of air through " + conduit().in(units) + " that arrives at " + pressure;
      case BORE ->
        "Smallest bore through which " + flow(units) + " of air" + " arrives at " + pressure;
      case LENGTH ->
        "Longest line of " + conduit().bore().format(units.smallLengthUnit())
            + " bore through which " + flow(units) + " of air arrives at " + pressure;
    };
  }

  private String flow(UnitSystem units) {
    return ValueKind.MASS_FLOW.format(massFlow().kilogramsPerSecond(), 6, units);
  }

  private String sentence(UnitSystem units) {
    String found = switch (unknown) {
      case FLOW -> "The largest flow is " + flow(units);
      case BORE -> "The smallest bore is " + conduit().bore().format(units.smallLengthUnit(), 3);
      case LENGTH ->
        "The longest line is "
            + conduit().length().format(units.either(LengthUnit.METRE, LengthUnit.FOOT), 2);
    };
    return found
        + switch (unknown) {
          case FLOW ->
            choked ? ": the line chokes, and no more passes however low the pressure behind." : ".";
          case BORE -> choked ? ": the flow chokes in a smaller one." : ".";
          case LENGTH -> choked ? ": the flow chokes in a longer one." : ".";
        };
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof LineSolution that
        && unknown == that.unknown
        && wanted.equals(that.wanted)
        && loss.equals(that.loss)
        && choked == that.choked;
  }

  @Override
  public int hashCode() {
    return Objects.hash(unknown, wanted, loss, choked);
  }

  /** {@return the answer in words} */
  @Override
  public String toString() {
    return sentence(UnitSystem.SI);
  }
}
