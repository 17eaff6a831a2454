package org.airfit.run;

import java.util.List;
import org.airfit.air.AirState;
import org.airfit.air.Compression;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.MassFlow;
import org.airfit.quantity.PressureUnit;
import org.airfit.safety.Caution;
import org.airfit.source.Source;
import org.airfit.working.Term;
import org.airfit.working.Working;

/**
 * The pressure the supply would need for the tool to have its own, and what raising it costs.
 *
 * <p>Raising the supply is the costly way: every kilogram of air of the whole shop is then compressed further, and every leak and every tool without a regulator takes more, in proportion to
 * the absolute pressure. A rule of the trade says 0.5 % of the power per psi (7 % per bar) near 100 psig.
 *
 * @param massFlow the flow of the tool at its pressure
 * @param present the pressure of the supply at that flow; while nothing flows where it cannot give that much above the atmosphere
 * @param needed the pressure it would need
 * @param neededGauge the same as a gauge shows it
 * @param presentWork the work on the air at present, one adiabatic stage without losses
 * @param neededWork the work at the pressure needed
 * @param run how the run fares with that supply
 * @param cautions the warnings that go with it
 */
public record SupplyNeeded(
    MassFlow massFlow,
    AbsolutePressure present,
    AbsolutePressure needed,
    GaugePressure neededGauge,
    Compression presentWork,
    Compression neededWork,
    RunResult run,
    List<Caution> cautions) {

  private static final double RULE_PER_PSI = 0.005;

  private static final Source RULE = Source.handbook(
      "US DOE Compressed Air Challenge practice, quoted in trade articles: 0.5 percent per psi near 100 psig");

  /** {@return whether the present supply is enough} */
  public boolean isMet() {
    return needed.compareTo(present) <= 0;
  }

  /** {@return how much the pressure must rise [Pa]; negative where it may fall} */
  public double risePascals() {
    return needed.pascals() - present.pascals();
  }

  /** {@return the extra work on each kilogram of air over the present work [-]; negative where the pressure may fall, infinite where nothing is compressed at present} */
  public double extraWork() {
    if (presentWork.joulesPerKilogram() == 0.0) {
      return isMet() ? 0.0 : Double.POSITIVE_INFINITY;
    }
    return neededWork.joulesPerKilogram() / presentWork.joulesPerKilogram() - 1.0;
  }

  /** {@return the extra power by the rule of 0.5 % per psi [-], which holds near 100 psig} */
  public double extraWorkByRule() {
    return RULE_PER_PSI * psi();
  }

  /** {@return how much more leaks and unregulated tools would take over what they take now [-]} */
  public double extraUnregulatedFlow() {
    return needed.pascals() / present.pascals() - 1.0;
  }

  private double psi() {
    return needed.psi() - present.psi();
  }

  /** {@return how the pressure was found and what it costs} */
  public Working working() {
    Working.Builder working = Working.titled("Pressure needed at the supply")
        .note("The supply was raised until the tool had its pressure: "
            + needed.format(PressureUnit.BAR) + " instead of "
            + present.format(PressureUnit.BAR) + ".")
        .include(run.working())
        .include(presentWork.working())
        .include(neededWork.working());
    if (presentWork.joulesPerKilogram() == 0.0) {
      return working
          .note("Nothing is compressed at present: there is no work to compare with.")
          .build();
    }
    return working
        .step(
            "Extra work on each kilogram",
            "⟨x⟩ = ⟨w2⟩ / ⟨w1⟩ − 1",
            "⟨x⟩ = \\frac{⟨w2⟩}{⟨w1⟩} - 1",
            List.of(
                Term.of("w2", "w_2", neededWork.joulesPerKilogram(), "J/kg", 9),
                Term.of("w1", "w_1", presentWork.joulesPerKilogram(), "J/kg", 9)),
            Term.of("x", "x", extraWork(), "", 4),
            Source.derived("ratio of the two works"))
        .step(
            "The same by the rule of the trade",
            "⟨x⟩ = 0.005 × (⟨p2⟩ − ⟨p1⟩)",
            "⟨x⟩ = 0.005 (⟨p2⟩ - ⟨p1⟩)",
            List.of(
                Term.of("p2", "p_2", needed.psi(), "psia", 9),
                Term.of("p1", "p_1", present.psi(), "psia", 9)),
            Term.of("x", "x", extraWorkByRule(), "", 4),
            RULE)
        .step(
            "Extra flow of leaks and of tools without a regulator",
            "⟨y⟩ = ⟨p2⟩ / ⟨p1⟩ − 1",
            "⟨y⟩ = \\frac{⟨p2⟩}{⟨p1⟩} - 1",
            List.of(
                Term.of("p2", "p_2", needed.bar(), "bar(a)", 9),
                Term.of("p1", "p_1", present.bar(), "bar(a)", 9)),
            Term.of("y", "y", extraUnregulatedFlow(), "", 4),
            Source.derived("choked flow is in proportion to the absolute pressure"))
        .build();
  }

  static Compression work(AirState supply, AbsolutePressure atmosphere, AbsolutePressure to) {
    return Compression.adiabatic(supply.at(atmosphere), to);
  }
}
