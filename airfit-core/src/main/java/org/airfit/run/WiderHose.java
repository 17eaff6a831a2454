package org.airfit.run;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.airfit.joint.HoseSize;
import org.airfit.line.Conduit;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.Length;
import org.airfit.quantity.MassFlow;
import org.airfit.working.UnitSystem;

/**
 * A run with a hose of a size that exists in place of one that is too narrow, solved as a run of its own.
 *
 * <p>The new hose has the length, the roughness and the fittings of the old one and the bore that its name says.
 * Nothing is estimated from the old run.
 *
 * <p>This class is immutable, thread-safe and value-based.
 */
public final class WiderHose {

  private record Values(HoseSize size, Run run, RunResult result, GaugePressure least) {}

  private final Values values;

  private WiderHose(Values values) {
    this.values = values;
  }

  /**
   * Tries the sizes wider than a hose, one after another, until the tool has its pressure.
   *
   * @param run the run as it is
   * @param hose the name of the hose in the run
   * @param demand the flow the tool takes
   * @param least the least pressure at the tool, not below the atmosphere
   * @param units whether to propose sizes in millimetres or in inches
   * @return those tried, narrowest first: only the last may be enough; empty where there is no wider size, or the
   *     element is no hose but a part
   * @throws IllegalArgumentException if the run has no such element, or {@code least} is negative
   */
  public static List<WiderHose> tried(
      Run run, String hose, MassFlow demand, GaugePressure least, UnitSystem units) {
    Objects.requireNonNull(units, "units");
    return tried(run, hose, demand, least, bore -> HoseSize.widerThan(bore, units));
  }

  /**
   * Tries every size, from the narrowest on, until the tool has its pressure: the last is the least bore that does.
   *
   * @param run the run as it is
   * @param hose the name of the hose in the run
   * @param demand the flow the tool takes
   * @param least the least pressure at the tool, not below the atmosphere
   * @param units whether to try sizes in millimetres or in inches
   * @return those tried, narrowest first: only the last may be enough; empty where the element is no hose but a part
   * @throws IllegalArgumentException if the run has no such element, or {@code least} is negative
   */
  public static List<WiderHose> triedFromNarrowest(
      Run run, String hose, MassFlow demand, GaugePressure least, UnitSystem units) {
    Objects.requireNonNull(units, "units");
    return tried(run, hose, demand, least, bore -> HoseSize.all(units));
  }

  private static List<WiderHose> tried(
      Run run,
      String hose,
      MassFlow demand,
      GaugePressure least,
      Function<Length, List<HoseSize>> sizes) {
    Objects.requireNonNull(demand, "demand");
    Run.requireNoVacuum(Objects.requireNonNull(least, "least"));
    List<WiderHose> tried = new ArrayList<>();
    Conduit old = Objects.requireNonNull(run, "run").conduit(hose).orElse(null);
    if (old == null) {
      return List.of();
    }
    for (HoseSize size : sizes.apply(old.bore())) {
      Run wider = run.replacing(hose, old.withBore(size.bore()));
      WiderHose next = new WiderHose(new Values(size, wider, wider.at(demand), least));
      tried.add(next);
      if (next.isEnough()) {
        break;
      }
    }
    return List.copyOf(tried);
  }

  /** {@return the size of the new hose} */
  public HoseSize size() {
    return values.size;
  }

  /** {@return the run with it} */
  public Run run() {
    return values.run;
  }

  /** {@return what arrives at the tool then} */
  public RunResult result() {
    return values.result;
  }

  /** {@return whether the tool has its least pressure then, at a jump of friction on its lower side too} */
  public boolean isEnough() {
    return values.run.keeps(values.least, values.result);
  }

  /**
   * Tells what the sizes tried bring.
   *
   * @param tried what {@link #tried} gave
   * @param units the units
   * @return one sentence, such as "With a 3/8 in hose of the same length the tool has 84.4 psig: too little; with a 1/2
   *     in hose 97.1 psig: enough."; empty for none tried
   */
  public static String inWords(List<WiderHose> tried, UnitSystem units) {
    Objects.requireNonNull(units, "units");
    return Objects.requireNonNull(tried, "tried").stream()
            .map(each -> each.inWords(each.equals(tried.get(0)), units))
            .collect(Collectors.joining("; "))
        + (tried.isEmpty() ? "" : ".");
  }

  private String inWords(boolean first, UnitSystem units) {
    String with =
        (first ? "With a " : "with a ") + values.size + (first ? " of the same length" : "");
    return values.result.fold(
        delivered -> with
            + (first ? " the tool has " : " ")
            + units.say(delivered.atToolGauge(), values.least)
            + (isEnough() ? ": enough" : ": too little"),
        starved -> with + " too little air still gets through: no pressure is left at the tool");
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof WiderHose that && values.equals(that.values);
  }

  @Override
  public int hashCode() {
    return values.hashCode();
  }

  /** {@return the size and what it brings, such as "1/2 in hose: 0.012 kg/s at 6.2 bar(g)"} */
  @Override
  public String toString() {
    return values.size + ": " + values.result;
  }
}
