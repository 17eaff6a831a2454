package org.airfit.run;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.MassFlow;
import org.airfit.quantity.PressureDrop;
import org.airfit.safety.Caution;
import org.airfit.working.UnitSystem;
import org.airfit.working.Worked;
import org.airfit.working.Working;

/** What becomes of a flow on its way to the tool: it is delivered at a pressure, or an element stops it. */
public sealed interface RunResult extends Worked {

  /**
   * Handles both cases.
   *
   * @param <R> what is made of them
   * @param delivered what to make of a flow that arrives
   * @param starved what to make of a flow that does not
   * @return what was made
   */
  <R> R fold(
      Function<? super Delivered, ? extends R> delivered,
      Function<? super Starved, ? extends R> starved);

  /** {@return the warnings that go with it} */
  List<Caution> cautions();

  /**
   * The flow arrives.
   *
   * @param massFlow the flow
   * @param supply the pressure at the supply
   * @param atTool the pressure at the tool
   * @param atToolGauge the pressure at the tool as a gauge there shows it
   * @param shares what each element takes, in order from the supply
   * @param cautions the warnings that go with it
   * @param ends what the supply gives and the tool takes, where that is not plain
   */
  record Delivered(
      MassFlow massFlow,
      AbsolutePressure supply,
      AbsolutePressure atTool,
      GaugePressure atToolGauge,
      List<ElementLoss> shares,
      List<Caution> cautions,
      List<Worked> ends)
      implements RunResult {

    /** {@return all that is lost between supply and tool} */
    public PressureDrop lost() {
      return supply.dropTo(atTool);
    }

    /** {@return the element without which the tool would gain most: the one that holds it back} */
    public ElementLoss bottleneck() {
      return shares.stream().max(Comparator.comparing(ElementLoss::gain)).orElseThrow();
    }

    /** {@return what each element takes, the largest drop first} */
    public List<ElementLoss> ranked() {
      return shares.stream()
          .sorted(Comparator.comparing(ElementLoss::drop).reversed())
          .toList();
    }

    /** {@return the element that chokes, if one does} */
    public Optional<ElementLoss> choking() {
      return shares.stream().filter(ElementLoss::chokes).findFirst();
    }

    @Override
    public <R> R fold(
        Function<? super Delivered, ? extends R> delivered,
        Function<? super Starved, ? extends R> starved) {
      return delivered.apply(this);
    }

    @Override
    public Working working(UnitSystem units) {
      Working.Builder working = Working.titled("Pressure from supply to tool");
      ends.forEach(end -> working.include(end.working(units)));
      for (ElementLoss share : shares) {
        working.note(share.name() + ": from " + share.inlet().format(units.pressureUnit()) + " to "
            + share.outlet().format(units.pressureUnit()));
        working.include(share.working(units));
        if (share.chokes()) {
          working.note(
              share.name()
                  + " chokes: it lets no more through, and the pressure behind it is what the tool leaves of the flow.");
        }
      }
      return working.build();
    }
  }

  /**
   * The flow can't pass, whatever the tool does: an element chokes, or would need less than the atmosphere behind it, or the supply does not give that much.
   *
   * @param massFlow the flow asked for
   * @param element the element that stops it; "supply" where that gives no more
   * @param inlet the pressure in front of it; of a supply, while nothing flows
   * @param largest the largest flow it lets through from that pressure into the open
   * @param before what the elements before it take; their gain is told as 0
   * @param reached the answer of line, part or supply that says so
   * @param cautions the warnings that go with it
   */
  record Starved(
      MassFlow massFlow,
      String element,
      AbsolutePressure inlet,
      MassFlow largest,
      List<ElementLoss> before,
      Worked reached,
      List<Caution> cautions)
      implements RunResult {

    @Override
    public <R> R fold(
        Function<? super Delivered, ? extends R> delivered,
        Function<? super Starved, ? extends R> starved) {
      return starved.apply(this);
    }

    @Override
    public Working working(UnitSystem units) {
      return reached.working(units);
    }
  }
}
