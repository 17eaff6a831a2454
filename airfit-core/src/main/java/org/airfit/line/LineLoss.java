package org.airfit.line;

import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import org.airfit.air.AirState;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.FrictionFactor;
import org.airfit.quantity.MassFlow;
import org.airfit.quantity.PressureDrop;
import org.airfit.quantity.Velocity;
import org.airfit.working.UnitSystem;
import org.airfit.working.Worked;
import org.airfit.working.Working;

/** What becomes of a flow along a conduit: it arrives with a loss, or it is more than the conduit lets through. */
public sealed interface LineLoss extends Worked {

  /**
   * Handles both cases.
   *
   * @param <R> what is made of them
   * @param flowing what to make of a flow that arrives
   * @param choked what to make of a flow that does not
   * @return what was made
   */
  <R> R fold(
      Function<? super Flowing, ? extends R> flowing, Function<? super Choked, ? extends R> choked);

  /**
   * The flow arrives.
   *
   * @param model the model that says so
   * @param conduit what the air ran through
   * @param massFlow the flow
   * @param inlet the air as it entered
   * @param outlet the air as it leaves
   * @param drop the pressure lost
   * @param reynolds the Reynolds number on the bore [-], 0 without flow
   * @param friction the friction factor; empty without flow and for formulas that have none
   * @param inletVelocity the mean velocity at the inlet
   * @param outletVelocity the mean velocity at the outlet
   * @param warnings where the model is near or outside what it holds for
   */
  record Flowing(
      LossModel model,
      Conduit conduit,
      MassFlow massFlow,
      AirState inlet,
      AirState outlet,
      PressureDrop drop,
      double reynolds,
      Optional<FrictionFactor> friction,
      Velocity inletVelocity,
      Velocity outletVelocity,
      List<String> warnings)
      implements LineLoss {

    /** {@return velocity over speed of sound at the inlet [-]} */
    public double inletMach() {
      return inletVelocity.metresPerSecond() / inlet.speedOfSound().metresPerSecond();
    }

    /** {@return velocity over speed of sound at the outlet [-]} */
    public double outletMach() {
      return outletVelocity.metresPerSecond() / outlet.speedOfSound().metresPerSecond();
    }

    @Override
    public <R> R fold(
        Function<? super Flowing, ? extends R> flowing,
        Function<? super Choked, ? extends R> choked) {
      return flowing.apply(this);
    }

    @Override
    public Working working(UnitSystem units) {
      return model.working(this, units);
    }
  }

  /**
   * The conduit chokes: the flow would have to pass the speed of sound. Models that do not know choking give this answer where nothing would be left of the
   * pressure; their largest flow is then too high.
   *
   * @param model the model that says so
   * @param conduit what the air runs through
   * @param massFlow the flow asked for
   * @param inlet the air as it enters
   * @param largest all that the conduit lets through from this inlet, as far as the model can tell
   * @param chokingPressure the pressure at the outlet at that flow; 0 for models that do not know choking
   */
  record Choked(
      LossModel model,
      Conduit conduit,
      MassFlow massFlow,
      AirState inlet,
      MassFlow largest,
      AbsolutePressure chokingPressure)
      implements LineLoss {

    @Override
    public <R> R fold(
        Function<? super Flowing, ? extends R> flowing,
        Function<? super Choked, ? extends R> choked) {
      return choked.apply(this);
    }

    @Override
    public Working working(UnitSystem units) {
      return model.working(this, units);
    }
  }
}
