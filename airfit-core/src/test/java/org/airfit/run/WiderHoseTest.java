package org.airfit.run;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.assertThatNullPointerException;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.airfit.air.AirState;
import org.airfit.flow.FlowCapacity;
import org.airfit.line.Conduit;
import org.airfit.line.FrictionLaw;
import org.airfit.line.LossModels;
import org.airfit.line.PipeEquation;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.Length;
import org.airfit.quantity.MassFlow;
import org.airfit.quantity.SonicConductance;
import org.airfit.quantity.Temperature;
import org.airfit.working.UnitSystem;
import org.junit.jupiter.api.Test;

class WiderHoseTest {

  private static final AbsolutePressure ATMOSPHERE = AbsolutePressure.ofPsi(14.7);
  private static final AirState SUPPLY =
      AirState.of(AbsolutePressure.ofPsi(119.7), Temperature.ofFahrenheit(68));
  private static final Conduit OLD =
      Conduit.of(Length.parse("1/4 in"), Length.parse("50 ft"), Length.parse("0.0004 in"));
  private static final Run RUN = Run.from(SUPPLY, ATMOSPHERE)
      .through("coupler", FlowCapacity.of(SonicConductance.parse("6 dm³/(s·bar)"), 0.3))
      .through("old hose", OLD);
  private static final MassFlow WEAK = FreeAirFlow.parse("22 scfm").massFlow();
  private static final GaugePressure LEAST = GaugePressure.parse("100 psig");

  @Test
  void sizes_are_tried_until_one_is_enough() {
    List<WiderHose> tried = WiderHose.tried(RUN, "old hose", WEAK, LEAST, UnitSystem.US);
    assertThat(tried)
        .extracting(each -> each.size().toString())
        .containsExactly("3/8 in hose", "1/2 in hose");
    assertThat(tried).extracting(WiderHose::isEnough).containsExactly(false, true);
    assertThat(WiderHose.tried(RUN, "old hose", WEAK, LEAST, UnitSystem.SI))
        .extracting(each -> each.size().toString())
        .containsExactly("8 mm hose", "10 mm hose", "13 mm hose");
  }

  /** A 3/8 in hose is today's, and still the sizes are tried from 1/4 in on: the last is the least bore. */
  @Test
  void the_least_bore_is_searched_from_the_narrowest_size_on() {
    Run wide = RUN.replacing("old hose", OLD.withBore(Length.parse("3/8 in")));
    List<WiderHose> tried =
        WiderHose.triedFromNarrowest(wide, "old hose", WEAK, LEAST, UnitSystem.US);
    assertThat(tried)
        .extracting(each -> each.size().toString())
        .containsExactly("1/4 in hose", "3/8 in hose", "1/2 in hose");
    assertThat(tried).extracting(WiderHose::isEnough).containsExactly(false, false, true);
    assertThat(WiderHose.triedFromNarrowest(RUN, "coupler", WEAK, LEAST, UnitSystem.US))
        .isEmpty();
  }

  /** Each is solved with the bore of its name: the loss of the hose alone, by another model of line, agrees. */
  @Test
  void each_size_is_solved_with_the_bore_that_its_name_says() {
    for (WiderHose each : WiderHose.tried(RUN, "old hose", WEAK, LEAST, UnitSystem.US)) {
      Conduit conduit = each.run().conduit("old hose").orElseThrow();
      assertThat(conduit.bore()).isEqualTo(each.size().bore());
      assertThat(conduit.length()).isEqualTo(OLD.length());
      RunResult.Delivered delivered = (RunResult.Delivered) each.result();
      double adiabatic = LossModels.of(PipeEquation.ADIABATIC, FrictionLaw.HAALAND)
          .loss(conduit, WEAK, SUPPLY.at(delivered.share("old hose").inlet()))
          .fold(flowing -> flowing.drop().pascals(), choked -> Double.NaN);
      assertThat(delivered.share("old hose").drop().pascals())
          .isCloseTo(adiabatic, within(0.02 * adiabatic));
    }
  }

  @Test
  void the_sizes_are_told_in_one_sentence() {
    List<WiderHose> tried = WiderHose.tried(RUN, "old hose", WEAK, LEAST, UnitSystem.US);
    String first = UnitSystem.US.say(((RunResult.Delivered) tried.get(0).result()).atToolGauge());
    String second = UnitSystem.US.say(((RunResult.Delivered) tried.get(1).result()).atToolGauge());
    assertThat(WiderHose.inWords(tried, UnitSystem.US))
        .isEqualTo("With a 3/8 in hose of the same length the tool has " + first
            + ": too little; with a 1/2 in hose " + second + ": enough.");
    assertThat(WiderHose.inWords(List.of(), UnitSystem.US)).isEmpty();
    assertThat(tried.get(0)).hasToString("3/8 in hose: " + tried.get(0).result());
  }

  @Test
  void a_flow_that_no_hose_passes_starves_with_every_size() {
    List<WiderHose> tried = WiderHose.tried(
        RUN, "old hose", FreeAirFlow.parse("2000 scfm").massFlow(), LEAST, UnitSystem.US);
    assertThat(tried).hasSize(3).noneMatch(WiderHose::isEnough);
    assertThat(WiderHose.inWords(tried.subList(0, 1), UnitSystem.US))
        .isEqualTo("With a 3/8 in hose of the same length too little air still gets through: no pressure is left at the tool.");
  }

  @Test
  void a_part_is_no_hose_and_the_widest_has_no_wider() {
    assertThat(WiderHose.tried(RUN, "coupler", WEAK, LEAST, UnitSystem.US)).isEmpty();
    Run wide = RUN.replacing("old hose", OLD.withBore(Length.parse("1 in")));
    assertThat(WiderHose.tried(wide, "old hose", WEAK, LEAST, UnitSystem.US)).isEmpty();
    assertThatIllegalArgumentException()
        .isThrownBy(() -> WiderHose.tried(RUN, "new hose", WEAK, LEAST, UnitSystem.US))
        .withMessageContaining("of [coupler, old hose], was \"new hose\"");
    assertThatIllegalArgumentException()
        .isThrownBy(() ->
            WiderHose.tried(RUN, "old hose", WEAK, GaugePressure.parse("-1 psig"), UnitSystem.US))
        .withMessageContaining("at least 0 Pa(g)");
  }

  @Test
  void equal_questions_have_equal_answers() {
    List<WiderHose> tried = WiderHose.tried(RUN, "old hose", WEAK, LEAST, UnitSystem.US);
    assertThat(WiderHose.tried(RUN, "old hose", WEAK, LEAST, UnitSystem.US))
        .isEqualTo(tried)
        .hasSameHashCodeAs(tried);
    assertThat(tried.get(0)).isNotEqualTo(tried.get(1));
  }

  @Test
  @SuppressWarnings("NullAway") // what a caller without null checks could pass
  void what_is_null_is_named() {
    assertThatNullPointerException()
        .isThrownBy(() -> WiderHose.tried(RUN, null, WEAK, LEAST, UnitSystem.US))
        .withMessage("name");
    assertThatNullPointerException()
        .isThrownBy(() -> WiderHose.tried(RUN, "old hose", null, LEAST, UnitSystem.US))
        .withMessage("demand");
    assertThatNullPointerException()
        .isThrownBy(() -> WiderHose.tried(RUN, "old hose", WEAK, null, UnitSystem.US))
        .withMessage("least");
    assertThatNullPointerException()
        .isThrownBy(() -> WiderHose.tried(RUN, "old hose", WEAK, LEAST, null))
        .withMessage("units");
  }
}
