package org.airfit.line;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;

/** The models of line loss there are. {@link #isothermal()} is the one to use where nothing else is asked for. */
public final class LossModels {

  private static final LossModel ISOTHERMAL = of(PipeEquation.ISOTHERMAL, FrictionLaw.COLEBROOK);

  private LossModels() {}

  /**
   * Obtains the isothermal model with exact Colebrook friction: the one to use where nothing else is asked for.
   *
   * @return the model
   */
  public static LossModel isothermal() {
    return ISOTHERMAL;
  }

  /**
   * Obtains an equation of pipe flow with a law of friction.
   *
   * @param equation the equation
   * @param law the law of friction
   * @return the model
   */
  public static LossModel of(PipeEquation equation, FrictionLaw law) {
    return new PipeModel(
        Objects.requireNonNull(equation, "equation"), Objects.requireNonNull(law, "law"));
  }

  /**
   * Obtains the adiabatic model for a conduit that draws air at rest from a tank or header: the air is sped up into the
   * bore without loss, cools by it, and then loses pressure by friction.
   *
   * <pre>
   *   ṁ √(R T0)/(A p0) = √γ M1 (1 + (γ−1)/2 M1²)^(−(γ+1)/(2(γ−1)))
   *   p1 = p0 (1 + (γ−1)/2 M1²)^(−γ/(γ−1)),  then as {@link PipeEquation#ADIABATIC}
   * </pre>
   *
   * <p>The inlet asked for is the air at rest. In the answer the inlet is the air where it has entered the bore, and
   * the drop is counted from rest. A sharp entrance loses more: give its K with the fittings. <b>Source:</b> Shapiro,
   * <cite>Compressible Fluid Flow</cite> (1953), chapters 4 and 6.
   *
   * @param law the law of friction
   * @return the model
   */
  public static LossModel fromReservoir(FrictionLaw law) {
    return new ReservoirModel(Objects.requireNonNull(law, "law"));
  }

  /** {@return all models there are, the equations with Colebrook friction first} */
  public static List<LossModel> all() {
    List<LossModel> all = new ArrayList<>();
    for (PipeEquation equation : PipeEquation.values()) {
      all.add(of(equation, FrictionLaw.COLEBROOK));
    }
    all.addAll(List.of(LineFormula.values()));
    return List.copyOf(all);
  }
}
