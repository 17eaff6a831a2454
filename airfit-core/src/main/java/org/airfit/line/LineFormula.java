package org.airfit.line;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.airfit.air.AirState;
import org.airfit.flow.FlowElement;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.MassFlow;
import org.airfit.quantity.PressureDrop;
import org.airfit.source.Source;
import org.airfit.working.Formula;
import org.airfit.working.UnitSystem;
import org.airfit.working.Working;

/**
 * The empirical formulas of the handbooks for air and gas in pipes.
 *
 * <p>Each has a friction of its own built in: the roughness of the conduit does not enter. Most were fitted to long
 * gas mains and miss on shop lines; {@link #bias()} says by how much. They are here so that a calculation made with
 * one can be followed. They do not know choking. Fittings, which none of them knows, are added as K G² R T to p1² −
 * p2², or as K G²/(2 ρ1) to a drop.
 */
public enum LineFormula implements LossModel {
  /**
   * Harris.
   *
   * <pre>
   *   Δp = 0.1025 L q² / (r d^5.31)   (psi, ft, ft³/s of free air, r = p1/14.7 psia, in)
   * </pre>
   *
   * <p>The flow is counted per second. The exponent 5.31 was recalled.
   */
  HARRIS(
      "Harris",
      "drops below a tenth of the inlet pressure, steel pipe, ordinary shop temperatures",
      "compressed-air pipe of its time, rougher than clean steel",
      "12 to 26 % high",
      Source.handbook("E. G. Harris, Compressed Air (1910), formula 28; exponent recalled"),
      "⟨Δpw⟩ = 0.1025 × ⟨L⟩ × ⟨q⟩² / (⟨p1⟩ / 14.7 × ⟨d⟩^5.31)",
      0.0,
      0.1),
  /**
   * Unwin's friction with the coefficient of Arson for air.
   *
   * <pre>
   *   Δp = 0.04839 K (1 + 3.6/d) w² L / (ρ d⁵),  K = 0.005   (psi, in, lb/min, ft, mean density in lb/ft³)
   * </pre>
   */
  UNWIN(
      "Unwin, K 0.005 (Arson)",
      "bores of 4 in and more",
      "Arson's tests on air mains; others found K from 0.0026 to 0.005, a spread of 1.8",
      "170 to 270 % high in bores of 1 to 2 in",
      Source.handbook("Steam: Its Generation and Use, formulas 38 and 43"),
      "⟨S⟩ = 2 × ⟨RT⟩ × 0.04839 × 0.005 × (1 + 3.6 / ⟨d⟩) × ⟨w⟩² × ⟨L⟩ / ⟨d⟩^5",
      4.0 * 0.0254,
      1.0),
  /**
   * Babcock: Unwin's friction with the coefficient found for steam.
   *
   * <pre>
   *   Δp = 0.04839 K (1 + 3.6/d) w² L / (ρ d⁵),  K = 0.0027   (psi, in, lb/min, ft, mean density in lb/ft³)
   * </pre>
   */
  BABCOCK(
      "Babcock, K 0.0027",
      "bores of 4 in and more",
      "steam pipes of 4 in and more",
      "twice too high at 1 in, 46 % at 2 in, 17 % at 4 in",
      Source.handbook("Steam: Its Generation and Use, formulas 43 to 45"),
      "⟨S⟩ = 2 × ⟨RT⟩ × 0.04839 × 0.0027 × (1 + 3.6 / ⟨d⟩) × ⟨w⟩² × ⟨L⟩ / ⟨d⟩^5",
      4.0 * 0.0254,
      1.0),
  /**
   * Weymouth, efficiency 1.
   *
   * <pre>
   *   Q = 137.32958 (Ts/Ps) ( (p1² − p2²)/(L T) )^0.5 D^2.667   (SI, gas of the density of air)
   * </pre>
   */
  WEYMOUTH(
      "Weymouth",
      "long gas mains of 4 in and more",
      "gas mains",
      "20 to 40 % high",
      menon(),
      "⟨S⟩ = ⟨L⟩ × ⟨T⟩ × (⟨Q⟩ × ⟨Ps⟩ / (137.32958 × ⟨Ts⟩ × ⟨D⟩^2.667))²",
      4.0 * 0.0254,
      1.0),
  /**
   * Panhandle A, efficiency 0.92.
   *
   * <pre>
   *   Q = 158.02053 · 0.92 (Ts/Ps)^1.0788 ( (p1² − p2²)/(L T) )^0.5394 D^2.6182   (SI, gas of the density of air)
   * </pre>
   */
  PANHANDLE_A(
      "Panhandle A, efficiency 0.92",
      "long gas mains of 4 in and more",
      "smooth large gas mains",
      "28 to 39 % low",
      menon(),
      "⟨S⟩ = ⟨L⟩ × ⟨T⟩ × (⟨Q⟩ / (158.02053 × 0.92 × (⟨Ts⟩ / ⟨Ps⟩)^1.0788 × ⟨D⟩^2.6182))^(1 / 0.5394)",
      4.0 * 0.0254,
      1.0),
  /**
   * Spitzglass, high pressure.
   *
   * <pre>
   *   Q = 125.1060 (Ts/Ps) ( (p1² − p2²)/(L T (1 + 0.09144/D + 150 D/127)) )^0.5 D^2.5   (SI, gas of the density of
   *   air)
   * </pre>
   */
  SPITZGLASS_HIGH(
      "Spitzglass, high pressure",
      "gas mains of 4 in and more",
      "town gas mains",
      "38 % high at 4 in, 70 % at 2 in, 200 % at 1/2 in",
      menon(),
      "⟨S⟩ = ⟨L⟩ × ⟨T⟩ × (1 + 0.09144 / ⟨D⟩ + 150 × ⟨D⟩ / 127) × (⟨Q⟩ × ⟨Ps⟩ / (125.1060 × ⟨Ts⟩ × ⟨D⟩^2.5))²",
      4.0 * 0.0254,
      1.0),
  /**
   * Spitzglass, low pressure.
   *
   * <pre>
   *   h = L (1 + 3.6/d + 0.03 d) (Q/3550)² / d⁵   (in of water, ft, in, ft³/h of air)
   * </pre>
   *
   * <p>The constant 3550 was recalled and agrees with a form in SI that was read.
   */
  SPITZGLASS_LOW(
      "Spitzglass, low pressure",
      "drops below about 1 psi near atmospheric pressure; it does not know the inlet pressure",
      "town gas in house pipes",
      "high by the ratio of the line's pressure to the atmosphere: of no use in a compressed-air line",
      Source.fromMemory("Spitzglass low-pressure formula, constant 3550"),
      "⟨Δpw⟩ = ⟨psi/inH2O⟩ × ⟨L⟩ × (1 + 3.6 / ⟨d⟩ + 0.03 × ⟨d⟩) × (3600 × ⟨q⟩ / 3550)² / ⟨d⟩^5",
      0.0,
      1.0),
  /**
   * Oliphant.
   *
   * <pre>
   *   Q = 84.5872 (D^2.5 + 0.20915 D³) (Ts/Ps) ( (p1² − p2²)/(L T) )^0.5   (SI, gas of the density of air)
   * </pre>
   */
  OLIPHANT(
      "Oliphant",
      "from vacuum to 100 psi",
      "gas mains",
      "14 % low at 1/2 in to 30 % high at 4 in",
      menon(),
      "⟨S⟩ = ⟨L⟩ × ⟨T⟩ × (⟨Q⟩ × ⟨Ps⟩ / (84.5872 × ⟨Ts⟩ × (⟨D⟩^2.5 + 0.20915 × ⟨D⟩³)))²",
      0.0,
      1.0),
  /**
   * Fritzsche.
   *
   * <pre>
   *   Q = 93.500 (Ts/Ps) ( (p1² − p2²)/(L T) )^0.538 D^2.69   (SI, gas of the density of air)
   * </pre>
   */
  FRITZSCHE(
      "Fritzsche",
      "compressed air and gas in pipes",
      "compressed-air pipes",
      "within 9 %",
      menon(),
      "⟨S⟩ = ⟨L⟩ × ⟨T⟩ × (⟨Q⟩ × ⟨Ps⟩ / (93.500 × ⟨Ts⟩ × ⟨D⟩^2.69))^(1 / 0.538)",
      0.0,
      1.0),
  /**
   * The metric form with the exponent 1.85.
   *
   * <pre>
   *   Δp = 1.6·10³ q^1.85 L / (D⁵ p1)   (SI; q is free air)
   * </pre>
   *
   * <p>It is also printed as 1.6·10¹² with kPa, m³/s and mm, and as 450 with bar, L/s and mm; 450 is 0.2 % lower. Its
   * free air is taken as ANR.
   */
  METRIC_185(
      "metric form, exponent 1.85",
      "drops below a tenth of the inlet pressure",
      "compressed-air pipes; source of the fit not known",
      "1 to 15 % high, more in small pipes",
      Source.commonPractice("1.6e12 q^1.85 L/(d^5 p) as read on an engineering page"),
      "⟨Δpw⟩ = 1600 × ⟨Q⟩^1.85 × ⟨L⟩ / (⟨D⟩^5 × ⟨p1⟩)",
      0.0,
      0.1);

  private final String title;
  private final String validity;
  private final String fitBasis;
  private final String bias;
  private final Source source;
  private final Formula formula;
  private final FormulaLaw law;
  private final double leastBoreMetres;
  private final double mostDropShare;

  LineFormula(
      String title,
      String validity,
      String fitBasis,
      String bias,
      Source source,
      String definition,
      double leastBoreMetres,
      double mostDropShare) {
    this.title = title;
    this.validity = validity;
    this.fitBasis = fitBasis;
    this.bias = bias;
    this.source = source;
    this.formula = FormulaWorking.formula(definition, source);
    this.law = FormulaLaw.valueOf(name());
    this.leastBoreMetres = leastBoreMetres;
    this.mostDropShare = mostDropShare;
  }

  private static Source menon() {
    return Source.handbook(
        "Menon, Gas Pipeline Hydraulics (2005) and others, in SI as an open library of fluid mechanics has it");
  }

  @Override
  public LineLoss loss(Conduit conduit, MassFlow massFlow, AirState inlet) {
    double flow = massFlow.kilogramsPerSecond();
    if (PipeElement.countsAsNone(flow)) {
      return PipeModel.losesNothing(this, conduit, massFlow, inlet);
    }
    FormulaElement element = new FormulaElement(law, conduit);
    double p1 = inlet.pressure().pascals();
    double t = inlet.temperature().kelvins();
    double share = PipeElement.passesNowhere(flow) ? 1.0 : element.dropShare(flow, p1, t);
    AbsolutePressure p2 = AbsolutePressure.ofPascals(Math.max(0.0, p1 * (1.0 - share)));
    if (p2.pascals() == 0.0) {
      double largest = Math.min(
          Math.min(flow, PipeElement.MOST_FLOW),
          element.largest(p1, t, inlet.viscosity().pascalSeconds()));
      return LineLoss.choked(
          this, conduit, massFlow, inlet, MassFlow.ofKilogramsPerSecond(largest), p2);
    }
    return LineLoss.flowing(
        this,
        conduit,
        massFlow,
        inlet,
        inlet.at(p2),
        PressureDrop.ofPascals(share * p1),
        Optional.empty(),
        warnings(conduit, inlet, share));
  }

  @Override
  public FlowElement element(Conduit conduit) {
    return new FormulaElement(law, Objects.requireNonNull(conduit, "conduit"));
  }

  private List<String> warnings(Conduit conduit, AirState inlet, double share) {
    List<String> warnings = new ArrayList<>();
    AbsolutePressure p1 = inlet.pressure();
    boolean outside = switch (this) {
      case SPITZGLASS_LOW -> share * p1.psi() > 1.0 || p1.bar() > 1.2;
      case OLIPHANT -> p1.psi() > 114.7;
      default -> conduit.bore().metres() < leastBoreMetres || share > mostDropShare;
    };
    if (outside) {
      warnings.add("Outside what this formula holds for (" + validity
          + "). On shop lines it is usually off: " + bias + ".");
    }
    if (conduit.fittingLoss() > 0.0) {
      warnings.add("The formula knows no fittings; their K was added to it.");
    }
    return warnings;
  }

  @Override
  public Working working(LineLoss loss, UnitSystem units) {
    PipeModel.requireOwn(this, loss);
    return loss.fold(flowing -> flowing(flowing, units), choked -> choked(choked, units));
  }

  private Working choked(LineLoss.Choked loss, UnitSystem units) {
    return Working.titled(
            "No answer for air in " + loss.conduit().in(units) + " (" + title + ")", units)
        .answer(PipeWorking.nothingLeft(loss, "This formula", units))
        .build();
  }

  private Working flowing(LineLoss.Flowing loss, UnitSystem units) {
    String heading = PipeWorking.title(loss, units);
    double flow = loss.massFlow().kilogramsPerSecond();
    if (PipeElement.countsAsNone(flow)) {
      return PipeWorking.nothingLost(heading, flow, units);
    }
    if (PipeWorking.hardlyAnythingLeft(loss, units)) {
      return PipeWorking.hardlyAnythingLeft(heading, loss, units);
    }
    double wall = law.wall(
        loss.conduit().length().metres(),
        loss.conduit().bore().metres(),
        flow,
        loss.inlet().pressure().pascals(),
        loss.inlet().temperature().kelvins());
    return FormulaWorking.of(heading, loss, formula, law.freeAir(flow), wall, units);
  }

  @Override
  public String title() {
    return title;
  }

  @Override
  public String validity() {
    return validity;
  }

  @Override
  public String fitBasis() {
    return fitBasis;
  }

  @Override
  public String bias() {
    return bias;
  }

  @Override
  public Source source() {
    return source;
  }
}
