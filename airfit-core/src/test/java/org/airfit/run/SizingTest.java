package org.airfit.run;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.airfit.Pencil;
import org.airfit.air.AirState;
import org.airfit.flow.FlowCapacity;
import org.airfit.line.Conduit;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.Length;
import org.airfit.quantity.MassFlow;
import org.airfit.quantity.Money;
import org.airfit.quantity.PressureDrop;
import org.airfit.quantity.ReferenceState;
import org.airfit.quantity.SonicConductance;
import org.airfit.quantity.Temperature;
import org.airfit.working.Completeness;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class SizingTest {

  private static final AbsolutePressure ATMOSPHERE = AbsolutePressure.ofBar(1.0);
  private static final AirState EIGHT =
      AirState.of(AbsolutePressure.ofBar(8.0), Temperature.ofCelsius(20.0));
  private static final ToolDemand TOOL = ToolDemand.following(
      "wrench",
      FreeAirFlow.from(MassFlow.ofKilogramsPerSecond(0.014), ReferenceState.COMPRESSOR_INLET),
      AbsolutePressure.ofBar(7.2));
  private static final Run RUN =
      Run.from(EIGHT, ATMOSPHERE).through("coupler", part(6.0)).through("hose", hose(9.5));

  private static FlowCapacity part(double c) {
    return FlowCapacity.of(SonicConductance.ofCubicDecimetresPerSecondBar(c), 0.3);
  }

  private static Conduit hose(double boreMm) {
    return Conduit.of(
        Length.ofMillimetres(boreMm), Length.ofMetres(10.0), Length.ofMillimetres(0.01));
  }

  private static Sizing sizing(double leastBar) {
    Sizing sizing = Sizing.of(RUN, TOOL, GaugePressure.ofBar(leastBar));
    double[] bores = {6.3, 8.0, 9.5, 12.7};
    double[] prices = {10.0, 16.0, 20.0, 30.0};
    double[] conductances = {3.0, 6.0, 12.0};
    for (int i = 0; i < bores.length; i++) {
      sizing = sizing.with("hose", bores[i] + " mm", hose(bores[i]), usd(prices[i]));
    }
    for (int i = 0; i < conductances.length; i++) {
      sizing =
          sizing.with("coupler", "C " + conductances[i], part(conductances[i]), usd(5.0 * (i + 1)));
    }
    return sizing;
  }

  private static Money usd(double amount) {
    return Money.parse("1 USD").times(amount);
  }

  private static Sizing.Solutions fitting(Sizing sizing) {
    return (Sizing.Solutions) sizing.solve();
  }

  /** Tried one by one here, the cheapest that keeps the tool at pressure is the one found. */
  @ParameterizedTest
  @ValueSource(doubles = {4.0, 5.5, 6.0, 6.4, 6.6})
  void the_cheapest_is_the_cheapest_of_all_that_fit(double least) {
    Sizing.Solutions fitting = fitting(sizing(least));
    double cheapest = Double.POSITIVE_INFINITY;
    double most = Double.NEGATIVE_INFINITY;
    double[][] hoses = {{6.3, 10.0}, {8.0, 16.0}, {9.5, 20.0}, {12.7, 30.0}};
    double[][] couplers = {{3.0, 5.0}, {6.0, 10.0}, {12.0, 15.0}};
    int fit = 0;
    for (double[] hose : hoses) {
      for (double[] coupler : couplers) {
        double bar = ((RunResult.Delivered) Run.from(EIGHT, ATMOSPHERE)
                .through("coupler", part(coupler[0]))
                .through("hose", hose(hose[0]))
                .balance(TOOL))
            .atToolGauge()
            .bar();
        if (bar >= least) {
          fit++;
          cheapest = Math.min(cheapest, hose[1] + coupler[1]);
          most = Math.max(most, bar);
        }
      }
    }
    assertThat(fitting.options()).hasSize(fit);
    assertThat(fitting.cheapest().price()).isEqualTo(usd(cheapest));
    assertThat(fitting.mostMargin().margin().pascals())
        .isCloseTo((most - least) * 1.0e5, within(1.0e-6));
    assertThat(fitting.mostMargin().lack().pascals()).isZero();
    assertThat(fitting.mostMargin().chosen())
        .containsEntry("hose", "12.7 mm")
        .containsEntry("coupler", "C 12.0");
  }

  @Test
  void no_candidate_off_the_front_is_as_good_as_one_on_it() {
    Sizing.Solutions fitting = fitting(sizing(4.0));
    List<SizingOption> front = fitting.pareto();
    assertThat(front).contains(fitting.cheapest()).hasSizeGreaterThan(2);
    assertThat(front.get(front.size() - 1).margin())
        .isEqualTo(fitting.mostMargin().margin());
    for (SizingOption candidate : fitting.options()) {
      boolean beaten = fitting.options().stream()
          .anyMatch(other -> !other.equals(candidate)
              && other.price().compareTo(candidate.price()) <= 0
              && other.margin().compareTo(candidate.margin()) >= 0);
      assertThat(front.contains(candidate)).as(candidate.chosen().toString()).isEqualTo(!beaten);
    }
  }

  @Test
  void a_margin_for_wear_asks_for_more() {
    Sizing.Solutions clean = fitting(sizing(6.0));
    Sizing.Solutions worn = fitting(sizing(6.0).withLossFactor(2.0));
    assertThat(worn.options()).hasSizeLessThan(clean.options().size());
    assertThat(worn.cheapest().price()).isGreaterThan(clean.cheapest().price());
    SizingOption chosen = worn.cheapest();
    double again = ((RunResult.Delivered) chosen.run().withLossFactor(2.0).balance(TOOL))
        .atToolGauge()
        .pascals();
    assertThat(chosen.margin().pascals()).isEqualTo(again - 6.0e5);
    assertThatIllegalArgumentException()
        .isThrownBy(() -> sizing(6.0).withLossFactor(0.5))
        .withMessage("factor on the loss must be in [1, 10], was 0.5");
  }

  @Test
  void nothing_fits_with_the_nearest_miss() {
    Sizing.Result result = sizing(6.95).solve();
    assertThat(result.<Boolean>fold(fitting -> false, nothing -> true)).isTrue();
    Sizing.NoSolution nothing = (Sizing.NoSolution) result;
    assertThat(nothing.nearest().chosen())
        .containsEntry("hose", "12.7 mm")
        .containsEntry("coupler", "C 12.0");
    assertThat(nothing.nearest().keepsPressure()).isFalse();
    assertThat(nothing.nearest().margin().pascals()).isZero();
    assertThat(nothing.nearest().lack().pascals())
        .isEqualTo(6.95e5 - nothing.nearest().atTool().orElseThrow().pascals());
    assertThat(nothing.working().toText()).startsWith("Nothing keeps the tool at pressure");
    assertThat(nothing.cautions()).isNotEmpty();
  }

  @Test
  void a_tool_that_cannot_be_fed_is_the_farthest_miss() {
    ToolDemand gun = ToolDemand.fixed("gun", TOOL.rated().times(5.0));
    Sizing.NoSolution nothing = (Sizing.NoSolution) Sizing.of(RUN, gun, GaugePressure.ofBar(6.9))
        .with("hose", "thin", hose(5.0), usd(1.0))
        .with("hose", "thick", hose(19.0), usd(2.0))
        .with("coupler", "wide", part(30.0), usd(3.0))
        .solve();
    assertThat(nothing.nearest().chosen()).containsEntry("hose", "thick");
    assertThat(nothing.working().toText())
        .contains("Nearest: " + nothing.nearest() + ".")
        .doesNotContain("Chosen");
  }

  @Test
  void the_printed_numbers_give_the_printed_answer() {
    Sizing.Result result = sizing(6.0).solve();
    Pencil.check(result);
    Completeness.check(result);
    assertThat(result.working().toText())
        .containsPattern("Chosen: hose [^{}=]+ for [0-9.]+ USD\\.");
    assertThat(result.cautions()).isNotEmpty();
    assertThat(result.<Boolean>fold(fitting -> true, nothing -> false)).isTrue();
  }

  @Test
  void what_is_no_offer_is_refused() {
    Sizing none = Sizing.of(RUN, TOOL, GaugePressure.ofBar(6.0));
    assertThatExceptionOfType(IllegalStateException.class)
        .isThrownBy(none::solve)
        .withMessage("a sizing needs options, say with(…)");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> none.with("pipe", "any", hose(9.5), usd(1.0)))
        .withMessageStartingWith("name must be that of a line of this run");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> none.with("hose", "any", part(3.0), usd(1.0)))
        .withMessageStartingWith("name must be that of a part of this run");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> none.with("hose", "gift", hose(9.5), usd(-1.0)))
        .withMessage("price of gift must be at least 0, was -1 USD");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> none.with("hose", "one", hose(9.5), usd(1.0))
            .with("coupler", "other", part(3.0), Money.parse("1 EUR")))
        .withMessageContaining("currency must be");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> Sizing.of(RUN, TOOL, GaugePressure.ofBar(-0.1)))
        .withMessageStartingWith("pressure at the tool must be at least 0 Pa(g)");
  }

  /** At just what arrives it is kept, and a part that is there already costs nothing. */
  @Test
  void at_exactly_the_pressure_asked_for_the_tool_keeps_it() {
    GaugePressure has = ((RunResult.Delivered) RUN.balance(TOOL)).atToolGauge();
    Sizing.Solutions kept =
        fitting(Sizing.of(RUN, TOOL, has).with("hose", "old", hose(9.5), usd(0.0)));
    assertThat(kept.cheapest().margin().pascals()).isZero();
    assertThat(kept.cheapest().price()).isEqualTo(usd(0.0));
    GaugePressure more = GaugePressure.ofPascals(has.pascals() + 0.001);
    assertThat(
            Sizing.of(RUN, TOOL, more).with("hose", "old", hose(9.5), usd(0.0)).solve())
        .isInstanceOf(Sizing.NoSolution.class);
  }

  /** What cannot be fed misses all of its pressure, and is further off than what arrives with nothing left. */
  @Test
  void a_tool_that_cannot_be_fed_lacks_all_of_its_pressure() {
    ToolDemand gun = ToolDemand.fixed("gun", FreeAirFlow.ofAnrLitresPerSecond(60.0));
    SizingOption nearest = ((Sizing.NoSolution) Sizing.of(RUN, gun, GaugePressure.ofBar(6.0))
            .with("hose", "thin", hose(4.0), usd(1.0))
            .solve())
        .nearest();
    assertThat(nearest.atTool()).isEmpty();
    assertThat(nearest.lack()).isEqualTo(PressureDrop.ofBar(6.0));
    assertThat(nearest.margin().pascals()).isZero();
    assertThat(nearest.marginPascals()).isLessThan(-6.0e5);
  }

  @Test
  void a_hundred_thousand_combinations_are_not_too_many() {
    Sizing sizing = Sizing.of(RUN, TOOL, GaugePressure.ofBar(6.0));
    for (int i = 0; i < 250; i++) {
      sizing = sizing.with("hose", "h" + i, hose(9.5), usd(1.0));
    }
    for (int i = 0; i < 400; i++) {
      sizing = sizing.with("coupler", "c" + i, part(6.0), usd(1.0));
    }
    assertThat(sizing).hasToString("2 places for wrench to have 6 bar(g)");
  }

  @Test
  void too_many_combinations_are_refused_before_they_are_computed() {
    Sizing sizing = Sizing.of(RUN, TOOL, GaugePressure.ofBar(6.0));
    for (int i = 0; i < 316; i++) {
      sizing = sizing
          .with("hose", "h" + i, hose(9.5), usd(1.0))
          .with("coupler", "c" + i, part(6.0), usd(1.0));
    }
    Sizing full = sizing;
    assertThatIllegalArgumentException()
        .isThrownBy(() -> full.with("hose", "one", hose(9.5), usd(1.0)))
        .withMessage("combinations of the options must be at most 100000, was 100172");
  }
}
