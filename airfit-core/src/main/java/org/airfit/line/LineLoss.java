package org.airfit.line;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.function.Function;
import org.airfit.air.AirState;
import org.airfit.internal.Digits;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.FrictionFactor;
import org.airfit.quantity.MassFlow;
import org.airfit.quantity.PressureDrop;
import org.airfit.quantity.Velocity;
import org.airfit.source.Source;
import org.airfit.working.UnitSystem;
import org.airfit.working.Worked;
import org.airfit.working.Working;

/** What becomes of a flow along a conduit: it arrives with a loss, or it is more than the conduit lets through. */
public sealed interface LineLoss extends Worked {

  /** What an answer needs of the model that gave it: to name it, to judge it and to show how it was reached. */
  interface Explainer {

    /** {@return what the model is called} */
    String title();

    /** {@return what the model holds for, in plain words} */
    String validity();

    /** {@return what the model was fitted to} */
    String fitBasis();

    /** {@return how far it usually lies from the isothermal answer on shop lines} */
    String bias();

    /** {@return where the model stands} */
    Source source();

    /**
     * Tells how this model reached a loss.
     *
     * @param loss a loss this model gave
     * @param units in which units; a formula of a handbook keeps those it was published in
     * @return its working
     * @throws IllegalArgumentException if another model gave the loss
     * @throws IllegalStateException if the numbers of the loss are not those that the model gives
     */
    Working working(LineLoss loss, UnitSystem units);
  }

  /**
   * Makes the answer where nothing flows and nothing is lost.
   *
   * @param model the model that says so
   * @param conduit what the air stands in
   * @param inlet the air at the inlet
   * @return the answer
   */
  static Flowing still(Explainer model, Conduit conduit, AirState inlet) {
    return new Flowing(
        model,
        conduit,
        MassFlow.ofKilogramsPerSecond(0.0),
        inlet,
        inlet,
        PressureDrop.ofPascals(0.0),
        Optional.empty(),
        List.of());
  }

  /**
   * Makes the answer of a flow that arrives; Reynolds number, velocities and the warning of a high one are added.
   *
   * @param model the model that says so
   * @param conduit what the air ran through
   * @param massFlow the flow
   * @param inlet the air as it entered
   * @param outlet the air as it leaves
   * @param drop the pressure lost
   * @param friction the friction factor; empty for models that have none
   * @param warnings where the model is near or outside what it holds for
   * @return the answer
   */
  static Flowing flowing(
      Explainer model,
      Conduit conduit,
      MassFlow massFlow,
      AirState inlet,
      AirState outlet,
      PressureDrop drop,
      Optional<FrictionFactor> friction,
      List<String> warnings) {
    return new Flowing(model, conduit, massFlow, inlet, outlet, drop, friction, warnings);
  }

  /**
   * Makes the answer of a flow that is more than the conduit lets through.
   *
   * @param model the model that says so
   * @param conduit what the air would run through
   * @param massFlow the flow asked for
   * @param inlet the air as it enters
   * @param largest all that the conduit lets through from this inlet, as far as the model can tell
   * @param chokingPressure the pressure at the outlet at that flow; 0 for models that do not know choking
   * @return the answer
   * @throws IllegalArgumentException if {@code massFlow} is below {@code largest}
   */
  static Choked choked(
      Explainer model,
      Conduit conduit,
      MassFlow massFlow,
      AirState inlet,
      MassFlow largest,
      AbsolutePressure chokingPressure) {
    return new Choked(model, conduit, massFlow, inlet, largest, chokingPressure);
  }

  /** {@return the model that says so} */
  Explainer model();

  /** {@return what the air runs through} */
  Conduit conduit();

  /** {@return the flow asked for} */
  MassFlow massFlow();

  /** {@return the air as it enters} */
  AirState inlet();

  /** {@return where the model, or that of the air, is near or outside what it holds for} */
  default List<String> warnings() {
    return warnings(UnitSystem.SI);
  }

  /**
   * Tells the same with the numbers in other units.
   *
   * @param units the units
   * @return where the model, or that of the air, is near or outside what it holds for
   */
  List<String> warnings(UnitSystem units);

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

  /** The flow arrives. */
  final class Flowing implements LineLoss {

    /** The Mach number at the outlet above which the answer carries a warning. */
    private static final double FAST = 0.3;

    private final Explainer model;
    private final Conduit conduit;
    private final MassFlow massFlow;
    private final AirState inlet;
    private final AirState outlet;
    private final PressureDrop drop;
    private final Optional<FrictionFactor> friction;
    /** Those of the model alone; what the air and the speed add follows from the rest. */
    private final List<String> ofModel;

    private Flowing(
        Explainer model,
        Conduit conduit,
        MassFlow massFlow,
        AirState inlet,
        AirState outlet,
        PressureDrop drop,
        Optional<FrictionFactor> friction,
        List<String> warnings) {
      this.model = Objects.requireNonNull(model, "model");
      this.conduit = Objects.requireNonNull(conduit, "conduit");
      this.massFlow = Objects.requireNonNull(massFlow, "massFlow");
      this.inlet = Objects.requireNonNull(inlet, "inlet");
      this.outlet = Objects.requireNonNull(outlet, "outlet");
      this.drop = Objects.requireNonNull(drop, "drop");
      this.friction = Objects.requireNonNull(friction, "friction");
      this.ofModel = List.copyOf(Objects.requireNonNull(warnings, "warnings"));
    }

    @Override
    public Explainer model() {
      return model;
    }

    @Override
    public Conduit conduit() {
      return conduit;
    }

    @Override
    public MassFlow massFlow() {
      return massFlow;
    }

    @Override
    public AirState inlet() {
      return inlet;
    }

    /** {@return the air as it leaves} */
    public AirState outlet() {
      return outlet;
    }

    /** {@return the pressure lost} */
    public PressureDrop drop() {
      return drop;
    }

    /** {@return the Reynolds number on the bore [-], 0 without flow} */
    public double reynolds() {
      return PipeElement.reynolds(
          massFlow.kilogramsPerSecond(),
          conduit.bore().metres(),
          inlet.viscosity().pascalSeconds());
    }

    /** {@return the friction factor; empty without flow and for formulas that have none} */
    public Optional<FrictionFactor> friction() {
      return friction;
    }

    @Override
    public List<String> warnings(UnitSystem units) {
      List<String> all = new ArrayList<>(ofModel);
      all.addAll(inlet.warnings(units));
      if (outletMach() > FAST) {
        all.add(
            "Mach " + Digits.significant(outletMach(), 3)
                + " at the outlet: close to choking, where isothermal and adiabatic answers lie a few percent apart.");
      }
      return List.copyOf(all);
    }

    /** What the model alone says, for a model that builds on another. */
    List<String> warningsOfModel() {
      return ofModel;
    }

    /** {@return the mean velocity at the inlet} */
    public Velocity inletVelocity() {
      return velocity(inlet);
    }

    /** {@return the mean velocity at the outlet} */
    public Velocity outletVelocity() {
      return velocity(outlet);
    }

    private Velocity velocity(AirState air) {
      double flux = massFlow.kilogramsPerSecond() / conduit.area().squareMetres();
      return Velocity.ofMetresPerSecond(flux / air.density().kilogramsPerCubicMetre());
    }

    /** {@return velocity over speed of sound at the inlet [-]} */
    public double inletMach() {
      return inletVelocity().metresPerSecond() / inlet.speedOfSound().metresPerSecond();
    }

    /** {@return velocity over speed of sound at the outlet [-]} */
    public double outletMach() {
      return outletVelocity().metresPerSecond() / outlet.speedOfSound().metresPerSecond();
    }

    @Override
    public <R> R fold(
        Function<? super Flowing, ? extends R> flowing,
        Function<? super Choked, ? extends R> choked) {
      Objects.requireNonNull(choked, "choked");
      return Objects.requireNonNull(flowing, "flowing").apply(this);
    }

    /**
     * Tells how the model reached this answer.
     *
     * @param units the units to show numbers in
     * @return the working
     * @throws IllegalStateException if an answer made by hand holds other numbers than the model gives
     */
    @Override
    public Working working(UnitSystem units) {
      return model.working(this, units);
    }

    @Override
    public boolean equals(Object other) {
      return other instanceof Flowing that
          && model.equals(that.model)
          && conduit.equals(that.conduit)
          && massFlow.equals(that.massFlow)
          && inlet.equals(that.inlet)
          && outlet.equals(that.outlet)
          && drop.equals(that.drop)
          && friction.equals(that.friction)
          && ofModel.equals(that.ofModel);
    }

    @Override
    public int hashCode() {
      return Objects.hash(model, conduit, massFlow, inlet, outlet, drop, friction, ofModel);
    }

    /** {@return the flow, the line and what is lost, such as "0.01 kg/s along 10 m of 9.5 mm bore loses 0.2 bar"} */
    @Override
    public String toString() {
      return massFlow.shown() + " along " + conduit + " loses " + drop.shown() + " ("
          + model.title() + ")";
    }
  }

  /**
   * The conduit chokes: the flow would have to pass the speed of sound. Models that do not know choking give this
   * answer where nothing would be left of the pressure; their largest flow is then too high.
   */
  final class Choked implements LineLoss {

    private final Explainer model;
    private final Conduit conduit;
    private final MassFlow massFlow;
    private final AirState inlet;
    private final MassFlow largest;
    private final AbsolutePressure chokingPressure;

    private Choked(
        Explainer model,
        Conduit conduit,
        MassFlow massFlow,
        AirState inlet,
        MassFlow largest,
        AbsolutePressure chokingPressure) {
      this.model = Objects.requireNonNull(model, "model");
      this.conduit = Objects.requireNonNull(conduit, "conduit");
      this.massFlow = Objects.requireNonNull(massFlow, "massFlow");
      this.inlet = Objects.requireNonNull(inlet, "inlet");
      this.largest = Objects.requireNonNull(largest, "largest");
      this.chokingPressure = Objects.requireNonNull(chokingPressure, "chokingPressure");
      // the largest flow is known to the tolerance of a search
      if (largest.kilogramsPerSecond() > massFlow.kilogramsPerSecond() * (1.0 + 1.0e-9)) {
        throw new IllegalArgumentException("flow that chokes a line must be at least the largest "
            + largest.shown() + ", was " + massFlow.shown());
      }
    }

    @Override
    public Explainer model() {
      return model;
    }

    @Override
    public Conduit conduit() {
      return conduit;
    }

    @Override
    public MassFlow massFlow() {
      return massFlow;
    }

    @Override
    public AirState inlet() {
      return inlet;
    }

    @Override
    public List<String> warnings(UnitSystem units) {
      return inlet.warnings(units);
    }

    /** {@return all that the conduit lets through from this inlet, as far as the model can tell} */
    public MassFlow largest() {
      return largest;
    }

    /** {@return the pressure at the outlet at that flow; 0 for models that do not know choking} */
    public AbsolutePressure chokingPressure() {
      return chokingPressure;
    }

    @Override
    public <R> R fold(
        Function<? super Flowing, ? extends R> flowing,
        Function<? super Choked, ? extends R> choked) {
      Objects.requireNonNull(flowing, "flowing");
      return Objects.requireNonNull(choked, "choked").apply(this);
    }

    /**
     * Tells how the model reached this answer.
     *
     * @param units the units to show numbers in
     * @return the working
     * @throws IllegalStateException if an answer made by hand holds other numbers than the model gives
     */
    @Override
    public Working working(UnitSystem units) {
      return model.working(this, units);
    }

    @Override
    public boolean equals(Object other) {
      return other instanceof Choked that
          && model.equals(that.model)
          && conduit.equals(that.conduit)
          && massFlow.equals(that.massFlow)
          && inlet.equals(that.inlet)
          && largest.equals(that.largest)
          && chokingPressure.equals(that.chokingPressure);
    }

    @Override
    public int hashCode() {
      return Objects.hash(model, conduit, massFlow, inlet, largest, chokingPressure);
    }

    /** {@return the flow, the line and what passes, such as "1 kg/s along 10 m of 9.5 mm bore chokes at 0.1 kg/s"} */
    @Override
    public String toString() {
      return massFlow.shown() + " along " + conduit + " chokes at " + largest.shown() + " ("
          + model.title() + ")";
    }
  }
}
