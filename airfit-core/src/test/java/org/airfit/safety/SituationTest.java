package org.airfit.safety;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.Length;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SituationTest {

  private static final GaugePressure LINE = GaugePressure.ofPsi(120.0);

  @ParameterizedTest
  @CsvSource({"0,0 psig", "-5,-5 psig"})
  void a_rating_is_above_nothing(double psi, String printed) {
    GaugePressure rating = GaugePressure.ofPsi(psi);
    assertThatIllegalArgumentException()
        .isThrownBy(() -> Situation.describe().ratedParts(LINE, rating))
        .withMessage("lowest rating must be above 0 psig, was " + printed);
    assertThatIllegalArgumentException()
        .isThrownBy(() -> Situation.describe().receiver(rating, LINE))
        .withMessage("receiver rating must be above 0 psig, was " + printed);
  }

  @Test
  void couplers_of_the_federal_description_are_quick_couplers() {
    Situation situation = Situation.describe().federalCouplers(LINE).build();
    assertThat(Ruling.of(SafetyRule.DEPRESSURISE, situation).judgement())
        .isEqualTo(Judgement.REQUIRED);
  }

  @Test
  void a_situation_does_not_change_after_it_was_built() {
    Situation.Builder builder = Situation.describe();
    Situation before = builder.build();
    builder.quickCouplers().toolOnHose(Length.ofInches(1.0));
    assertThat(Ruling.cautions(before)).hasSize(1);
    assertThat(Ruling.cautions(builder.build())).hasSize(4);
  }
}
