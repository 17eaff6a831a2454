package org.airfit.safety;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.assertThatNullPointerException;

import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.Length;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

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
    assertThat(Ruling.of(Known.DEPRESSURISE, situation).judgement()).isEqualTo(Judgement.REQUIRED);
  }

  @Test
  void a_situation_does_not_change_after_it_was_built() {
    Situation.Builder builder = Situation.describe();
    Situation before = builder.build();
    builder.quickCouplers().toolOnHose(Length.ofInches(1.0));
    assertThat(SafetyRules.usFederal().cautions(before))
        .isEqualTo(SafetyRules.usFederal().cautions(Situation.describe().build()));
    assertThat(SafetyRules.usFederal().cautions(builder.build()))
        .hasSizeGreaterThan(SafetyRules.usFederal().cautions(before).size());
  }

  /** Where its own pressure was not told, the highest of the line is judged; one that was told comes first. */
  @Test
  void cleaning_and_automatic_feed_are_judged_at_the_pressure_of_the_line_unless_told() {
    Situation.Builder cleaning = Situation.describe().cleaning();
    assertThat(Ruling.of(Known.CLEANING_CONSTRUCTION, cleaning.build()).judgement())
        .as("no pressure is known at all")
        .isEqualTo(Judgement.DOES_NOT_APPLY);
    cleaning.linePressure(LINE);
    assertThat(Ruling.of(Known.CLEANING_CONSTRUCTION, cleaning.build()))
        .hasToString(
            "Cleaning pressure (construction): not allowed. 120 psig against less than 30 psig.");
    cleaning.cleaning(GaugePressure.ofPsi(20.0));
    assertThat(Ruling.of(Known.CLEANING_CONSTRUCTION, cleaning.build()).judgement())
        .isEqualTo(Judgement.ALLOWED);
    SafetyRule muzzle = SafetyRules.usFederal().rule("29 CFR 1926.302(b)(3)");
    Situation.Builder feed = Situation.describe().linePressure(LINE);
    assertThat(Ruling.of(muzzle, feed.build()).judgement())
        .as("nothing feeds fasteners")
        .isEqualTo(Judgement.DOES_NOT_APPLY);
    assertThat(Ruling.of(muzzle, feed.automaticFeed().build()).judgement())
        .isEqualTo(Judgement.REQUIRED);
    assertThat(Ruling.of(muzzle, feed.automaticFeed(GaugePressure.ofPsi(90.0)).build())
            .judgement())
        .isEqualTo(Judgement.NOT_REQUIRED);
    assertThat(Ruling.of(
                Known.CLEANING_CONSTRUCTION,
                Situation.describe().linePressure(LINE).build())
            .judgement())
        .isEqualTo(Judgement.DOES_NOT_APPLY);
  }

  @Test
  void two_situations_together_tell_what_either_tells_and_the_second_where_both_do() {
    Situation line = Situation.describe().quickCouplers().linePressure(LINE).build();
    Situation tool = Situation.describe().painting().build();
    assertThat(line.with(tool))
        .isEqualTo(
            Situation.describe().quickCouplers().linePressure(LINE).painting().build())
        .isEqualTo(tool.with(line));
    Situation lower =
        Situation.describe().linePressure(GaugePressure.ofPsi(90.0)).build();
    assertThat(line.with(lower))
        .isEqualTo(Situation.describe()
            .quickCouplers()
            .linePressure(GaugePressure.ofPsi(90.0))
            .build());
    assertThat(lower.with(line)).isEqualTo(line);
    assertThat(line).as("it stays as it is").isNotEqualTo(line.with(tool));
  }

  @Test
  void situations_and_rulings_compare_by_value() {
    Situation cleaning = Situation.describe().cleaning(LINE).build();
    assertThat(cleaning)
        .isEqualTo(Situation.describe().cleaning(LINE).build())
        .hasSameHashCodeAs(Situation.describe().cleaning(LINE).build())
        .isNotEqualTo(Situation.describe().cleaning(LINE).formsOrMillScale().build())
        .isNotEqualTo(Situation.describe().clothing(LINE).build())
        .isNotEqualTo("a situation");
    assertThat(cleaning.toString()).startsWith("Situation{").contains("cleaning pressure=");
    Ruling ruling = Ruling.of(Known.CLEANING_CONSTRUCTION, cleaning);
    assertThat(ruling)
        .isEqualTo(Ruling.of(Known.CLEANING_CONSTRUCTION, cleaning))
        .hasSameHashCodeAs(Ruling.of(Known.CLEANING_CONSTRUCTION, cleaning))
        .isNotEqualTo(Ruling.of(Known.CLEANING_MARINE_TERMINALS, cleaning))
        .isNotEqualTo(Ruling.of(
            Known.CLEANING_CONSTRUCTION,
            Situation.describe().cleaning(GaugePressure.ofPsi(121.0)).build()))
        .hasToString(
            "Cleaning pressure (construction): not allowed. 120 psig against less than 30 psig.");
  }

  @ParameterizedTest
  @EnumSource
  void a_judgement_reads_its_label(Judgement judgement) {
    assertThat(Judgement.parse(judgement.toString())).isEqualTo(judgement);
  }

  @ParameterizedTest
  @EnumSource
  void a_medium_reads_its_label(Medium medium) {
    assertThat(Medium.parse(medium.toString())).isEqualTo(medium);
  }

  @Test
  @SuppressWarnings("NullAway") // what a caller without null checks could pass
  void what_is_missing_is_named() {
    assertThatNullPointerException()
        .isThrownBy(() -> Ruling.of(Known.HOISTING, null))
        .withMessage("situation");
    assertThatNullPointerException()
        .isThrownBy(() -> SafetyRules.usFederal().cautions(null))
        .withMessage("situation");
    assertThatNullPointerException()
        .isThrownBy(() -> Situation.describe().ratedParts(LINE, null))
        .withMessage("lowest");
    assertThatNullPointerException()
        .isThrownBy(() -> Situation.describe().receiver(null, LINE))
        .withMessage("rating");
    assertThatNullPointerException().isThrownBy(() -> Medium.parse(null)).withMessage("text");
  }
}
