package org.airfit.run;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.assertThatNullPointerException;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.airfit.air.AirState;
import org.airfit.flow.FlowCapacity;
import org.airfit.line.Conduit;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.Length;
import org.airfit.quantity.LengthUnit;
import org.airfit.quantity.MassFlow;
import org.airfit.quantity.SonicConductance;
import org.airfit.quantity.Temperature;
import org.airfit.working.UnitSystem;
import org.junit.jupiter.api.Test;

class LongestHoseTest {

  private static final AbsolutePressure ATMOSPHERE = AbsolutePressure.ofPsi(14.7);
  private static final AirState SUPPLY =
      AirState.of(AbsolutePressure.ofPsi(119.7), Temperature.ofCelsius(20.0));
  private static final Conduit HOSE =
      Conduit.of(Length.parse("3/8 in"), Length.parse("25 ft"), Length.parse("0.01 mm"));
  private static final Run RUN = Run.from(SUPPLY, ATMOSPHERE).through("hose", HOSE);
  private static final MassFlow TAKEN = FreeAirFlow.ofScfm60F(22.0).massFlow();
  private static final GaugePressure LEAST = GaugePressure.ofPsi(90.0);

  private static List<LongestHose> longest(UnitSystem units) {
    return LongestHose.ofEverySize(RUN, "hose", TAKEN, LEAST, units);
  }

  /** The foot that is told leaves enough, and one foot more does not. */
  @Test
  void one_more_foot_is_too_long() {
    for (LongestHose each : longest(UnitSystem.US)) {
      if (each.isWithoutEnd()) {
        continue;
      }
      Length told = each.length().orElseThrow();
      assertThat(atTool(each, told)).isGreaterThanOrEqualTo(90.0);
      assertThat(atTool(each, told.plus(Length.of(1.0, LengthUnit.FOOT)))).isLessThan(90.0);
    }
  }

  @Test
  void the_run_with_a_hose_at_its_longest_comes_with_its_working() {
    for (LongestHose each : longest(UnitSystem.US)) {
      RunResult.Delivered there = (RunResult.Delivered) each.result().orElseThrow();
      assertThat(there.atToolGauge().psi())
          .isEqualTo(atTool(each, each.length().orElseThrow()))
          .isGreaterThanOrEqualTo(90.0);
      assertThat(there.working(UnitSystem.US).toText()).contains("psi");
      assertThat(there.working(UnitSystem.SI).toText()).contains("Pa");
    }
  }

  private static double atTool(LongestHose each, Length length) {
    return RUN.replacing("hose", HOSE.withBore(each.size().bore()).withLength(length))
        .at(TAKEN)
        .fold(delivered -> delivered.atToolGauge().psi(), starved -> 0.0);
  }

  /**
   * The isothermal equation of handbooks without its small logarithm, p1² − p2² = f L/D R T (ṁ/A)², with the explicit
   * friction factor of Haaland (1983), gives the length within 3 %.
   */
  @Test
  void the_length_is_that_of_the_isothermal_equation() {
    for (LongestHose each : longest(UnitSystem.SI)) {
      double d = each.size().bore().metres();
      double area = Math.PI / 4.0 * d * d;
      double flux = TAKEN.kilogramsPerSecond() / area;
      double re = flux * d / 1.82e-5;
      double f = Math.pow(-1.8 * Math.log10(6.9 / re + Math.pow(1.0e-5 / d / 3.7, 1.11)), -2.0);
      double p1 = 119.7 * 6894.757;
      double p2 = 104.7 * 6894.757;
      double metres = (p1 * p1 - p2 * p2) * d / (f * 287.05287 * 293.15 * flux * flux);
      if (metres > 310.0) {
        assertThat(each.isWithoutEnd()).as(each.toString()).isTrue();
      } else {
        assertThat(each.length().orElseThrow().metres())
            .as(each.toString())
            .isCloseTo(Math.floor(metres), within(1.0 + 0.03 * metres));
      }
    }
  }

  @Test
  void a_wider_hose_may_be_longer() {
    List<LongestHose> all = longest(UnitSystem.US);
    assertThat(all)
        .extracting(each -> each.size().toString())
        .containsExactly("1/4 in hose", "3/8 in hose", "1/2 in hose", "3/4 in hose");
    for (int i = 1; i < all.size(); i++) {
      assertThat(all.get(i).length().orElseThrow())
          .isGreaterThanOrEqualTo(all.get(i - 1).length().orElseThrow());
    }
  }

  @Test
  void what_loses_too_much_before_the_hose_leaves_none() {
    Run narrow = Run.from(SUPPLY, ATMOSPHERE)
        .through("coupler", FlowCapacity.of(SonicConductance.parse("1.5 dm³/(s·bar)"), 0.3))
        .through("hose", HOSE);
    List<LongestHose> none = LongestHose.ofEverySize(narrow, "hose", TAKEN, LEAST, UnitSystem.US);
    assertThat(none).allSatisfy(each -> assertThat(each.length()).isEmpty());
    assertThat(none).allSatisfy(each -> assertThat(each.result()).isEmpty());
    assertThat(LongestHose.inWords(none, UnitSystem.US))
        .startsWith("1/4 in hose: too narrow at any length; 3/8 in hose: too");
    assertThat(LongestHose.ofEverySize(narrow, "coupler", TAKEN, LEAST, UnitSystem.US))
        .isEmpty();
    assertThat(LongestHose.inWords(List.of(), UnitSystem.US)).isEmpty();
  }

  /** Of two tools on one hose the one that needs more allows less of every size. */
  @Test
  void for_all_tools_the_shortest_of_every_size_counts() {
    List<LongestHose> easy = longest(UnitSystem.US);
    List<LongestHose> hard =
        LongestHose.ofEverySize(RUN, "hose", TAKEN, GaugePressure.ofPsi(95.0), UnitSystem.US);
    List<LongestHose> both = LongestHose.forAll(List.of(easy, hard));
    assertThat(LongestHose.forAll(List.of(hard, easy))).isEqualTo(both);
    assertThat(both).isNotEqualTo(easy);
    for (int i = 0; i < both.size(); i++) {
      assertThat(both.get(i).length()).isEqualTo(hard.get(i).length());
    }
    assertThat(LongestHose.forAll(List.of())).isEmpty();
    assertThatIllegalArgumentException()
        .isThrownBy(() -> LongestHose.forAll(List.of(easy, longest(UnitSystem.SI))))
        .withMessageContaining("obtain all of them in the same units");
    assertThatNullPointerException()
        .isThrownBy(() -> LongestHose.forAll(null))
        .withMessage("ofEach");
  }

  @Test
  @SuppressWarnings("NullAway") // what a caller without null checks could pass
  void null_is_refused_by_name() {
    assertThatNullPointerException()
        .isThrownBy(() -> LongestHose.ofEverySize(null, "hose", TAKEN, LEAST, UnitSystem.US))
        .withMessage("run");
    assertThatNullPointerException()
        .isThrownBy(() -> LongestHose.ofEverySize(RUN, null, TAKEN, LEAST, UnitSystem.US))
        .withMessage("hose");
    assertThatNullPointerException()
        .isThrownBy(() -> LongestHose.ofEverySize(RUN, "hose", null, LEAST, UnitSystem.US))
        .withMessage("demand");
    assertThatNullPointerException()
        .isThrownBy(() -> LongestHose.ofEverySize(RUN, "hose", TAKEN, null, UnitSystem.US))
        .withMessage("least");
    assertThatNullPointerException()
        .isThrownBy(() -> LongestHose.ofEverySize(RUN, "hose", TAKEN, LEAST, null))
        .withMessage("units");
    assertThatNullPointerException()
        .isThrownBy(() -> WiderHose.triedFromNarrowest(null, "hose", TAKEN, LEAST, UnitSystem.US))
        .withMessage("run");
  }

  @Test
  void they_are_told_in_whole_feet_and_are_values() {
    List<LongestHose> all = longest(UnitSystem.US);
    assertThat(LongestHose.inWords(all, UnitSystem.US))
        .matches(
            "1/4 in hose: up to [0-9]+ ft; 3/8 in hose: up to [0-9]+ ft; 1/2 in hose: up to [0-9]+ ft;"
                + " 3/4 in hose: 1000 ft and more\\.");
    assertThat(all).isEqualTo(longest(UnitSystem.US)).hasSameHashCodeAs(longest(UnitSystem.US));
    assertThat(all.get(0)).isNotEqualTo(all.get(1));
  }
}
