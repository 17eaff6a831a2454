package org.airfit.plug;

import static org.airfit.plug.TipAndLength.S_LENGTH;
import static org.airfit.plug.TipAndLength.S_TIP;
import static org.airfit.plug.TipAndLength.both;
import static org.airfit.plug.TipAndLength.mm;
import static org.airfit.plug.TipAndLength.normal;
import static org.airfit.plug.TipAndLength.set;
import static org.airfit.plug.TipAndLength.tip;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;
import org.airfit.internal.Digits;
import org.airfit.measure.CaliperSlip;
import org.airfit.measure.PartSpread;
import org.airfit.measure.Reading;
import org.airfit.safety.Caution;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What keeps an answer open and what is said of it, and the chances of slips, worked out for two sizes of one or two. */
class VerdictByHandTest {

  private static final double U_TIP = 0.02;
  private static final double U_LENGTH = 0.05;
  private static final double SIGMA_TIP = Math.hypot(S_TIP, U_TIP);
  private static final double SIGMA_LENGTH = Math.hypot(S_LENGTH, U_LENGTH);

  private static PlugReading tipRead(double size) {
    return PlugReading.of(Dimension.TIP_DIAMETER, Reading.of(mm(size), mm(U_TIP)));
  }

  private static PlugReading length(double size) {
    return PlugReading.of(Dimension.TIP_LENGTH, Reading.of(mm(size), mm(U_LENGTH)));
  }

  private static final String SHOP = " the set \"shop\" (entered from a standard): ";

  /**
   * χ² of two readings is exceeded with the chance e^(−χ²/2), the larger of two scores with 1 − (1 − 2Q)². Where near
   * copies are about, both must reach 0.03, elsewhere 0.01.
   *
   * <p>2 Q(2.4) = 0.0164, 2 Q(2.5) = 0.0124, 2 Q(2.0) = 0.0455, from tables of the normal distribution.
   */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "2.4 | 0.0 | ",
        "2.5 | 0.0 | One reading lies 2.5 times the expected scatter away; read it again.",
        "0.0 | 2.5 | One reading lies 2.5 times the expected scatter away; read it again.",
        "2.0 | 2.0 | Only 1.8 % of its genuine plugs fit as badly in all readings together; read again.",
        "1.8 | 1.8 | "
      })
  void a_plug_that_fits_worse_than_97_of_100_stays_a_candidate_where_near_copies_are_about(
      double tipOff, double lengthOff, String open) {
    List<PlugReading> readings =
        List.of(tipRead(10.0 + tipOff * SIGMA_TIP), length(20.0 + lengthOff * SIGMA_LENGTH));
    Identifier identifier = Identifier.of(set(both("A", 10.0, 20.0))).withUnknownPrior(0.01);
    Identification answer = identifier.identify(readings);
    String chance = "A, " + Digits.percent(answer.best().probability()) + ".";
    assertThat(answer.inWords())
        .isEqualTo(
            open == null
                ? "Identified by" + SHOP + chance
                : "Candidate only in" + SHOP + chance + " " + open);
    assertThat(identifier.withoutNearCopies().identify(readings).verdict())
        .isEqualTo(PlugVerdict.IDENTIFIED);
  }

  /** B lies 3.3 standard deviations away: 0.4 % of the chance, and one genuine B in a thousand reads so. */
  @Test
  void a_profile_that_does_not_fit_is_not_named_beside_one_that_does() {
    Identification answer = Identifier.of(
            set(tip("A", 10.0).build(), tip("B", 10.12).build()))
        .withConfidence(0.999)
        .identify(List.of(tipRead(10.0)));
    assertThat(answer.likely()).extracting(each -> each.profile().id()).containsExactly("A", "B");
    assertThat(answer.likely().get(1).fits()).isFalse();
    double a = 0.475 * normal(0.0, SIGMA_TIP);
    double all =
        a + 0.475 * normal(0.12, SIGMA_TIP) + 0.0045 + 0.0025 * (1.0 + Math.exp(-0.12 / 0.5));
    assertThat(answer.inWords())
        .isEqualTo("Ambiguous in" + SHOP + "A, " + Digits.percent(a / all) + ".");
  }

  /** Two profiles of one chance hold 98 %, which is enough: elsewhere has more than is said otherwise, and is not named. */
  @Test
  void none_of_the_set_is_not_named_where_the_profiles_hold_the_confidence() {
    List<PlugReading> between = List.of(tipRead(10.025));
    Identifier identifier = Identifier.of(
            set(tip("A", 10.0).build(), tip("B", 10.05).build()))
        .withoutNearCopies()
        .withUnknownPrior(0.6);
    double each = 0.2 * normal(0.025, SIGMA_TIP);
    double all = 2.0 * each + 0.06;
    String half = Digits.percent(each / all);
    Identification answer = identifier.identify(between);
    assertThat(answer.elsewhereProbability()).isCloseTo(0.06 / all, within(1.0e-12));
    assertThat(answer.inWords())
        .isEqualTo("Ambiguous in" + SHOP + "A, " + half + ", B, " + half + ".");
    assertThat(identifier.withConfidence(0.99).identify(between).inWords())
        .isEqualTo("Ambiguous in" + SHOP + "A, " + half + ", B, " + half + ", or none of the set, "
            + Digits.percent(0.06 / all) + ".");
  }

  /** 10.72 may be 10.27 with two digits exchanged, one of three exchanges: 0.0025/3 of the plugs. */
  @Test
  void the_chance_of_a_slip_is_weighed_against_that_of_an_unknown_plug() {
    Identifier identifier =
        Identifier.of(set(both("A", 10.27, 20.0))).withoutNearCopies().withUnknownPrior(0.9);
    Identification answer = identifier.identify(List.of(tipRead(10.72), length(20.0)));
    double slip = 0.1 * 0.0025 / 3.0 * normal(0.0, SIGMA_TIP) * normal(0.0, SIGMA_LENGTH);
    assertThat(answer.slips()).hasSize(1);
    ReadingSlip told = answer.slips().get(0);
    assertThat(told.kind()).isEqualTo(CaliperSlip.DIGITS_EXCHANGED);
    assertThat(told.probability()).isCloseTo(slip / (slip + 0.9 / 100.0), within(1.0e-9));
    assertThat(answer.verdict()).isEqualTo(PlugVerdict.AMBIGUOUS);
    assertThat(answer.inWords())
        .isEqualTo("Ambiguous in" + SHOP
            + "One reading agrees with A; read the second again, the tip diameter (D_t): 10.72 mm looks"
            + " like 10.27 mm with two digits exchanged, as of A. If it reads the same again, it is"
            + " none of the set, > 99.9 %.");
  }

  /** 1.027 for 10.27: 0.0005, one of four shifts, and ten millimetres meant for each that was typed. */
  @Test
  void a_decimal_slip_moves_what_was_typed_by_its_power_of_ten() {
    Identification answer = Identifier.of(set(both("A", 10.27, 20.0)))
        .withoutNearCopies()
        .withUnknownPrior(0.9)
        .identify(List.of(tipRead(1.027), length(20.0)));
    double slip = 0.1 * 0.0005 / 4.0 * 10.0 * normal(0.0, SIGMA_TIP) * normal(0.0, SIGMA_LENGTH);
    ReadingSlip told = answer.slips().get(0);
    assertThat(told.kind()).isEqualTo(CaliperSlip.DECIMAL_POINT);
    assertThat(told.probability()).isCloseTo(slip / (slip + 0.9 / 100.0), within(1.0e-9));
    assertThat(told).hasToString(told.inWords());
  }

  private static PlugProfile three(String id, double tip) {
    return tip(id, tip)
        .dimension(Dimension.COLLAR_DIAMETER, PartSpread.normal(mm(14.0), mm(S_TIP)))
        .dimension(Dimension.TIP_LENGTH, PartSpread.normal(mm(20.0), mm(S_LENGTH)))
        .build();
  }

  /** The collar measured in place of the tip: 0.0025, and one of two other sizes. */
  @Test
  void another_size_is_one_of_those_the_set_knows() {
    Identification answer = Identifier.of(set(three("A", 10.27)))
        .withoutNearCopies()
        .withUnknownPrior(0.9)
        .identify(List.of(tipRead(14.0), length(20.0)));
    double slip = 0.1 * 0.0025 / 2.0 * normal(0.0, SIGMA_TIP) * normal(0.0, SIGMA_LENGTH);
    ReadingSlip told = answer.slips().get(0);
    assertThat(told.measured()).contains(Dimension.COLLAR_DIAMETER);
    assertThat(told.probability()).isCloseTo(slip / (slip + 0.9 / 100.0), within(1.0e-9));
  }

  /**
   * Of three readings one may also be misread, anywhere in ten millimetres, by a chance of 2 %: where as little is told,
   * the exchange is told with both chances.
   */
  @Test
  void a_slip_that_says_how_is_told_with_the_chance_that_the_reading_is_wrong() {
    PlugReading collar = PlugReading.of(Dimension.COLLAR_DIAMETER, Reading.of(mm(14.0), mm(U_TIP)));
    Identification answer = Identifier.of(set(three("A", 10.27)))
        .withoutNearCopies()
        .withUnknownPrior(0.99)
        .withConfidence(0.99)
        .identify(List.of(tipRead(10.72), length(20.0), collar));
    double others = 0.01 * normal(0.0, SIGMA_TIP) * normal(0.0, SIGMA_LENGTH);
    double exchanged = others * 0.0025 / 3.0 * normal(0.0, SIGMA_TIP);
    double misread = others * 0.002 / 10.0;
    ReadingSlip told = answer.slips().get(0);
    assertThat(told.kind()).isEqualTo(CaliperSlip.DIGITS_EXCHANGED);
    assertThat(told.agreeing()).isEqualTo(2);
    assertThat(told.probability())
        .isCloseTo((exchanged + misread) / (exchanged + misread + 0.99 / 1000.0), within(1.0e-9));
    assertThat(answer.slips()).hasSize(1);
  }

  /** 10.72 may be 10.27 or 17.02 with two digits exchanged: B lies at 17.05, and is less likely than A by its 0.03 mm. */
  @Test
  void of_two_profiles_that_a_slip_may_lead_to_the_likelier_is_told() {
    PlugProfile a = both("A", 10.27, 20.0);
    PlugProfile b = both("B", 17.05, 20.0);
    double atA = normal(0.0, SIGMA_TIP);
    double atB = normal(0.03, SIGMA_TIP);
    double each = 0.05 * 0.0025 / 3.0 * normal(0.0, SIGMA_LENGTH);
    for (ReferenceSet set : List.of(set(a, b), set(b, a))) {
      List<ReadingSlip> slips = Identifier.of(set)
          .withoutNearCopies()
          .withUnknownPrior(0.9)
          .identify(List.of(tipRead(10.72), length(20.0)))
          .slips();
      assertThat(slips).hasSize(1);
      assertThat(slips.get(0).profile()).isEqualTo(a);
      assertThat(slips.get(0).probability())
          .isCloseTo(each * atA / (each * (atA + atB) + 0.9 / 100.0), within(1.0e-9));
    }
  }

  /** All in inches: 0.002 of the plugs, and each millimetre meant is 25.4 of those typed. */
  @Test
  void the_chance_that_all_was_typed_in_inches_counts_every_reading() {
    double tip = 10.27 / 25.4;
    double length = 20.0 / 25.4;
    Identification answer = Identifier.of(set(both("A", 10.27, 20.0)))
        .withoutNearCopies()
        .withUnknownPrior(0.999)
        .identify(List.of(tipRead(tip), length(length)));
    double slip = 0.001 * 0.002 * 25.4 * 25.4 * normal(0.0, SIGMA_TIP) * normal(0.0, SIGMA_LENGTH);
    ReadingSlip told = answer.slips().get(0);
    assertThat(told.readings()).hasSize(2);
    assertThat(told.probability()).isCloseTo(slip / (slip + 0.999 / 100.0), within(1.0e-9));
    assertThat(told.inWords())
        .isEqualTo(
            "All readings look like inches: 0.4043 in is 10.27 mm, 0.7874 in is 20.00 mm, as of A."
                + " Type the unit.");
  }

  /**
   * 10.09 lies 2.5 standard deviations from A, and is B at its nominal with two digits exchanged: a chance of 3 % that
   * is not told, because A explains the reading as it stands.
   */
  @Test
  void a_slip_is_not_told_where_a_profile_explains_the_readings() {
    Identification answer = Identifier.of(set(both("A", 10.0, 20.0), both("B", 10.9, 20.0)))
        .withoutNearCopies()
        .withConfidence(0.98)
        .identify(List.of(tipRead(10.09), length(20.0)));
    double slip = 0.0025 / 2.0 * normal(0.0, SIGMA_TIP);
    assertThat(slip / (slip + normal(0.09, SIGMA_TIP))).isBetween(0.02, 0.04);
    assertThat(answer.best().profile().id()).isEqualTo("A");
    assertThat(answer.best().fits()).isTrue();
    assertThat(answer.unknownIsLikely()).isFalse();
    assertThat(answer.slips()).isEmpty();
  }

  @Test
  void only_a_marking_warns_of_markings() {
    List<PlugReading> readings = List.of(tipRead(10.0), length(20.0));
    Identifier identifier = Identifier.of(set(both("A", 10.0, 20.0)));
    assertThat(
            identifier.identify(readings, List.of(Clue.gauge("A", true, 0.9))).cautions())
        .extracting(Caution::title)
        .doesNotContain("Markings");
    assertThat(identifier
            .identify(readings, List.of(Clue.gauge("A", true, 0.9), Clue.marking("A", 0.9)))
            .cautions())
        .extracting(Caution::title)
        .contains("Markings");
  }

  /** The working of one profile that counts, with others that lie six standard deviations away and more. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "0 | ",
        "1 | Left out here: 1 profile with a chance below one in a million each.",
        "2 | Left out here: 2 profiles with a chance below one in a million each."
      })
  void profiles_without_a_chance_are_left_out_of_the_working(int far, String note) {
    double off = 6.0 * SIGMA_TIP;
    List<PlugProfile> profiles = new ArrayList<>(List.of(both("A", 10.0, 20.0)));
    for (int k = 0; k < far; k++) {
      profiles.add(both("far" + k, 10.0 + (k == 0 ? off : -off), 20.0));
    }
    String text = Identifier.of(ReferenceSet.of("shop", profiles))
        .withoutNearCopies()
        .identify(List.of(tipRead(10.0), length(20.0)))
        .working()
        .toText();
    assertThat(text)
        .contains("Read: tip diameter (D_t) 10.00 mm")
        .contains("Read: tip length (L_g) 20.00 mm")
        .contains("None of the set: what is left, ");
    if (note == null) {
      assertThat(text).doesNotContain("Left out here").doesNotContain("The profiles left out");
    } else {
      double weight = far * 0.95 / (far + 1.0) * Math.exp(-18.0);
      assertThat(text)
          .contains(note)
          .contains("The profiles left out weigh together "
              + Digits.read(Digits.significant(weight, ProfileWorking.DIGITS)) + ".");
    }
  }

  /** A caliper reads four digits: what is worked out from its readings is not worth more than two further ones. */
  @Test
  void the_working_prints_six_digits_of_a_number_at_most() {
    String text = Identifier.of(set(both("A", 10.0, 20.0)))
        .identify(List.of(tipRead(10.03), length(20.04)))
        .working()
        .toText();
    assertThat(Pattern.compile("\\d+(?:\\.\\d+)?")
            .matcher(text)
            .results()
            .map(number -> number.group().replaceFirst("^0?\\.?0*", "").replace(".", "")))
        .hasSizeGreaterThan(30)
        .allSatisfy(digits -> assertThat(digits).hasSizeLessThanOrEqualTo(6));
  }

  @Test
  void where_nothing_is_unknown_the_working_has_no_unknown() {
    String text = Identifier.of(set(both("A", 10.0, 20.0)))
        .withUnknownPrior(0.0)
        .identify(List.of(tipRead(10.0), length(20.0)))
        .working()
        .toText();
    assertThat(text).doesNotContain("None of the set").doesNotContain("ln Le");
  }
}
