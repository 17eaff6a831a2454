package org.airfit.plug;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.airfit.Pencil;
import org.airfit.measure.CaliperSlip;
import org.airfit.measure.Instrument;
import org.airfit.measure.PartSpread;
import org.airfit.quantity.Length;
import org.airfit.source.Source;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

class NearCopyTest {

  private static final Map<Dimension, Double> TERN = Map.of(
      Dimension.TIP_DIAMETER, 11.90,
      Dimension.COLLAR_DIAMETER, 15.10,
      Dimension.TIP_LENGTH, 16.27,
      Dimension.GROOVE_WIDTH, 3.60,
      Dimension.GROOVE_DIAMETER, 10.70);
  private static final Map<Dimension, Double> SKUA = Map.of(
      Dimension.TIP_DIAMETER, 9.20,
      Dimension.COLLAR_DIAMETER, 12.40,
      Dimension.TIP_LENGTH, 19.50,
      Dimension.GROOVE_WIDTH, 4.40,
      Dimension.GROOVE_DIAMETER, 8.30);

  private static Length mm(double value) {
    return Length.ofMillimetres(value);
  }

  private static PlugProfile.Builder profile(String id, Map<Dimension, Double> sizes) {
    PlugProfile.Builder builder = PlugProfile.builder(id)
        .displayName(id)
        .from(Provenance.standardEntered(), Source.demo("a set for a test"));
    sizes.forEach(
        (dimension, size) -> builder.dimension(dimension, PartSpread.normal(mm(size), mm(0.03))));
    return builder.deciding(sizes.keySet());
  }

  private static ReferenceSet set() {
    return ReferenceSet.of(
        "two", List.of(profile("Tern", TERN).build(), profile("Skua", SKUA).build()));
  }

  /** All sizes of a Tern at nominal, but for one. */
  private static List<PlugReading> tern(Dimension odd, double size) {
    List<PlugReading> readings = new ArrayList<>();
    for (Dimension dimension : Dimension.values()) {
      if (TERN.containsKey(dimension)) {
        readings.add(PlugReading.of(
            dimension,
            Instrument.DIGITAL_CALIPER,
            mm(dimension == odd ? size : PlugWorkshop.at(TERN, dimension))));
      }
    }
    return readings;
  }

  @Test
  void a_plug_is_identified_when_every_deciding_dimension_is_read_and_not_before() {
    List<PlugReading> all = tern(Dimension.TIP_DIAMETER, 11.90);
    Identifier identifier = Identifier.of(set());
    assertThat(identifier.expectsNearCopies()).isTrue();
    Identification most = identifier.identify(all.subList(0, 4));
    assertThat(most.verdict()).isEqualTo(PlugVerdict.CANDIDATE);
    assertThat(most.profile()).contains(set().profiles().get(0));
    assertThat(most.stillToRead()).containsExactly(Dimension.GROOVE_DIAMETER);
    assertThat(most.nextReadings().get(0).dimension()).isEqualTo(Dimension.GROOVE_DIAMETER);
    assertThat(most.inWords())
        .contains(
            "Candidate only",
            "a near copy may differ".replace("a near", "A near"),
            "read also the groove diameter (D_g)");
    Identification whole = identifier.identify(all);
    assertThat(whole.stillToRead()).isEmpty();
    assertThat(whole.verdict()).isEqualTo(PlugVerdict.IDENTIFIED);
    assertThat(whole.inWords()).contains("Tern, > 99.9 %").doesNotContain("100");
    Pencil.check(whole.working());
    assertThat(whole.working().toText()).contains("Near copies");
  }

  @Test
  void the_users_word_that_none_are_about_is_enough() {
    List<PlugReading> four = tern(Dimension.TIP_DIAMETER, 11.90).subList(0, 4);
    Identifier trusting = Identifier.of(set()).withoutNearCopies();
    assertThat(trusting.expectsNearCopies()).isFalse();
    assertThat(trusting.toString()).contains("no near copies");
    Identification answer = trusting.identify(four);
    assertThat(answer.verdict()).isEqualTo(PlugVerdict.IDENTIFIED);
    assertThat(answer.nearCopyProbability()).isZero();
    assertThat(answer.stillToRead()).isEmpty();
    assertThat(Identifier.of(set()).withUnknownPrior(0.0).identify(four).verdict())
        .isEqualTo(PlugVerdict.IDENTIFIED);
  }

  @Test
  void a_profile_may_name_the_dimensions_that_decide() {
    Set<Dimension> two = Set.of(Dimension.TIP_DIAMETER, Dimension.COLLAR_DIAMETER);
    PlugProfile tern = profile("Tern", TERN).deciding(two).build();
    assertThat(tern.decidingDimensions()).isEqualTo(two);
    assertThat(tern).isNotEqualTo(profile("Tern", TERN).build());
    Identification answer = Identifier.of(
            ReferenceSet.of("two", List.of(tern, profile("Skua", SKUA).build())))
        .identify(tern(Dimension.TIP_DIAMETER, 11.90).subList(0, 3));
    assertThat(answer.stillToRead()).isEmpty();
    assertThat(answer.verdict()).isEqualTo(PlugVerdict.IDENTIFIED);
    PlugProfile.Builder bore = profile("Tern", TERN).deciding(Set.of(Dimension.BORE));
    assertThatIllegalArgumentException().isThrownBy(bore::build).withMessageContaining("among");
    assertThatIllegalArgumentException().isThrownBy(() -> bore.deciding(Set.of()));
    for (Dimension dimension : Dimension.values()) {
      assertThat(dimension.whatItDecides()).isNotBlank();
    }
  }

  private static PlugProfile known(String id, Map<Dimension, Double> sizes, Dimension... those) {
    PlugProfile.Builder builder = PlugProfile.builder(id)
        .displayName(id)
        .from(Provenance.standardEntered(), Source.demo("a set for a test"));
    for (Dimension dimension : those) {
      builder.dimension(
          dimension, PartSpread.normal(mm(PlugWorkshop.at(sizes, dimension)), mm(0.03)));
    }
    return builder.build();
  }

  /** Every dimension decides something; what the set does not know, no reading tells. */
  @Test
  void a_set_that_knows_few_sizes_of_a_profile_leaves_its_plug_a_candidate() {
    Dimension[] three = {Dimension.TIP_DIAMETER, Dimension.COLLAR_DIAMETER, Dimension.TIP_LENGTH};
    PlugProfile tern = known("Tern", TERN, three);
    ReferenceSet set = ReferenceSet.of("few", List.of(tern, known("Skua", SKUA, three)));
    List<PlugReading> all = tern(Dimension.TIP_DIAMETER, 11.90).subList(0, 3);
    Identification answer = Identifier.of(set).identify(all);
    assertThat(tern.missingDimensions())
        .containsExactly(
            Dimension.INSERTION_LENGTH,
            Dimension.GROOVE_WIDTH,
            Dimension.GROOVE_DIAMETER,
            Dimension.TIP_TO_COLLAR,
            Dimension.SHOULDER_DIAMETER,
            Dimension.BORE);
    assertThat(profile("Tern", TERN).build())
        .as("the five known sizes are all that decides, by the user's word")
        .isNotEqualTo(known("Tern", TERN, TERN.keySet().toArray(new Dimension[0])));
    assertThat(answer.stillToRead()).isEmpty();
    assertThat(answer.notKnown()).containsExactlyElementsOf(tern.missingDimensions());
    assertThat(answer.verdict()).isEqualTo(PlugVerdict.CANDIDATE);
    assertThat(answer.profile()).contains(tern);
    assertThat(answer.inWords())
        .endsWith(" It fits in all three sizes that the set knows of it; the set does not know the"
            + " insertion length (L_i), groove width (W_g), groove diameter (D_g), tip to collar (L_c),"
            + " shoulder diameter (D_s), bore (d_b), on which the mating depends too; add these sizes to the"
            + " set.");
    Identification two = Identifier.of(set).identify(all.subList(0, 2));
    assertThat(two.inWords())
        .contains("read also the tip length (L_g). The set does not know the insertion length")
        .doesNotContain("It fits in");
  }

  @Test
  void one_size_that_the_set_does_not_know_is_enough_and_is_named() {
    Map<Dimension, Double> all = Map.of(
        Dimension.TIP_DIAMETER, 11.90,
        Dimension.COLLAR_DIAMETER, 15.10,
        Dimension.TIP_LENGTH, 16.27,
        Dimension.GROOVE_WIDTH, 3.60,
        Dimension.GROOVE_DIAMETER, 10.70,
        Dimension.INSERTION_LENGTH, 26.40,
        Dimension.TIP_TO_COLLAR, 11.30,
        Dimension.SHOULDER_DIAMETER, 13.60,
        Dimension.BORE, 7.60);
    for (Dimension gap : Dimension.values()) {
      Dimension[] others = EnumSet.complementOf(EnumSet.of(gap)).toArray(new Dimension[0]);
      List<PlugReading> readings = new ArrayList<>();
      all.forEach((dimension, size) ->
          readings.add(PlugReading.of(dimension, Instrument.DIGITAL_CALIPER, mm(size))));
      readings.removeIf(reading -> reading.dimension() == gap);
      Identification answer = Identifier.of(
              ReferenceSet.of("one", List.of(known("Tern", all, others))))
          .identify(readings);
      assertThat(answer.verdict()).as("%s", gap).isEqualTo(PlugVerdict.CANDIDATE);
      assertThat(answer.notKnown()).containsExactly(gap);
      assertThat(answer.inWords())
          .endsWith(
              " It fits in all eight sizes that the set knows of it; the set does not know the "
                  + gap + ", on which the mating depends too; add that size to the set.");
    }
    List<PlugReading> nine = new ArrayList<>();
    all.forEach((dimension, size) ->
        nine.add(PlugReading.of(dimension, Instrument.DIGITAL_CALIPER, mm(size))));
    Identification whole = Identifier.of(
            ReferenceSet.of("one", List.of(known("Tern", all, Dimension.values()))))
        .identify(nine);
    assertThat(whole.notKnown()).isEmpty();
    assertThat(whole.verdict()).isEqualTo(PlugVerdict.IDENTIFIED);
  }

  /**
   * One profile and two lengths: a plug from anywhere in the size class reads both as this one does in 2 of 100 cases
   * and more, and there is nothing else to read. The user's word that no near copies are about does not help against
   * that.
   */
  @Test
  void a_set_with_one_profile_does_not_identify_whatever_fits_it_by_chance() {
    List<PlugReading> lengths = tern(Dimension.TIP_DIAMETER, 11.90).subList(2, 4);
    Dimension[] two = {Dimension.TIP_LENGTH, Dimension.GROOVE_WIDTH};
    Identifier trusting = Identifier.of(ReferenceSet.of("one", List.of(known("Tern", TERN, two))))
        .withoutNearCopies();
    Identification answer = trusting.identify(lengths);
    assertThat(answer.chanceOfCoincidence()).isGreaterThan(0.02);
    assertThat(answer.verdict()).isEqualTo(PlugVerdict.CANDIDATE);
    assertThat(answer.notKnown()).isEmpty();
    assertThat(answer.inWords())
        .contains("of the plugs of its size class would agree with a profile of the set by chance;"
            + " the set knows no other size to read");
    Dimension[] three = {Dimension.TIP_DIAMETER, Dimension.COLLAR_DIAMETER, Dimension.TIP_LENGTH};
    assertThat(Identifier.of(ReferenceSet.of("one", List.of(known("Tern", TERN, three))))
            .withoutNearCopies()
            .identify(tern(Dimension.TIP_DIAMETER, 11.90).subList(0, 3))
            .verdict())
        .isEqualTo(PlugVerdict.IDENTIFIED);
  }

  /** Sizes 0.3 mm off and more: 9 standard deviations of a diameter, 4 of a length or groove. */
  @ParameterizedTest
  @EnumSource(
      value = Dimension.class,
      names = {"TIP_DIAMETER", "COLLAR_DIAMETER", "TIP_LENGTH", "GROOVE_WIDTH", "GROOVE_DIAMETER"})
  void a_copy_with_one_size_changed_is_not_identified_and_is_told(Dimension odd) {
    Identification answer =
        Identifier.of(set()).identify(tern(odd, PlugWorkshop.at(TERN, odd) - 0.4));
    assertThat(answer.verdict()).isIn(PlugVerdict.AMBIGUOUS, PlugVerdict.NO_MATCH);
    assertThat(answer.nearCopyProbability()).isGreaterThan(0.2);
    assertThat(answer.nearCopyProbability() + answer.elsewhereProbability())
        .isEqualTo(answer.unknownProbability());
    assertThat(answer.inWords()).contains("near copy of Tern");
    Pencil.check(answer.working());
  }

  @Test
  void inches_typed_as_millimetres_are_told_and_not_corrected() {
    Identification answer = Identifier.of(set()).identify(tern(Dimension.TIP_DIAMETER, 0.47));
    assertThat(answer.verdict()).isEqualTo(PlugVerdict.AMBIGUOUS);
    ReadingSlip slip = answer.slips().get(0);
    assertThat(slip.kind()).isEqualTo(CaliperSlip.INCHES_TYPED);
    assertThat(slip.agreeing()).isEqualTo(4);
    assertThat(slip.inWords())
        .contains(
            "Four readings agree with Tern; read the fifth again",
            "0.47 looks like inches",
            "0.47 in is 11.94 mm");
    assertThat(answer.inWords()).contains("0.47 looks like inches");
    assertThat(answer.readings().get(0).length()).isEqualTo(mm(0.47));
    Identification alone = Identifier.of(set())
        .identify(
            List.of(PlugReading.of(Dimension.TIP_DIAMETER, Instrument.DIGITAL_CALIPER, mm(0.47))));
    assertThat(alone.inWords()).contains("0.47 looks like inches");
  }

  @ParameterizedTest
  @CsvSource({"1.627, 1.627", "162.7, 162.7", "0.163, 0.163"})
  void a_decimal_slip_is_told_with_the_value_it_would_be(double typed, String told) {
    Identification answer = Identifier.of(set()).identify(tern(Dimension.TIP_LENGTH, typed));
    assertThat(answer.verdict()).isEqualTo(PlugVerdict.AMBIGUOUS);
    ReadingSlip slip = answer.slips().get(0);
    assertThat(slip.kind()).isEqualTo(CaliperSlip.DECIMAL_POINT);
    assertThat(slip.meant().orElseThrow().millimetres()).isBetween(16.22, 16.32);
    assertThat(slip.inWords())
        .contains("Four readings agree with Tern; read the fifth again, the tip length (L_g): "
            + told + " mm: a decimal slip? It would be 16.")
        .endsWith(" mm, as of Tern.");
    assertThat(answer.readings()).extracting(PlugReading::length).contains(mm(typed));
    assertThat(answer.slips().stream().mapToDouble(ReadingSlip::probability).sum())
        .isLessThanOrEqualTo(1.0);
  }

  @Test
  void all_readings_in_inches_are_told_at_once() {
    List<PlugReading> inches = tern(Dimension.TIP_DIAMETER, 11.90).stream()
        .map(reading -> PlugReading.of(
            reading.dimension(),
            Instrument.DIGITAL_CALIPER,
            mm(Math.rint(reading.length().millimetres() / 25.4 * 1000.0) / 1000.0)))
        .toList();
    Identification answer = Identifier.of(set()).identify(inches);
    assertThat(answer.verdict()).isEqualTo(PlugVerdict.AMBIGUOUS);
    assertThat(answer.slips().get(0).readings()).isEqualTo(inches);
    assertThat(answer.inWords()).contains("All readings look like inches", "as of Tern");
  }

  @Test
  void exchanged_digits_another_size_and_a_misreading_are_told() {
    ReadingSlip digits =
        Identifier.of(set()).identify(tern(Dimension.TIP_LENGTH, 12.67)).slips().get(0);
    assertThat(digits.kind()).isEqualTo(CaliperSlip.DIGITS_EXCHANGED);
    assertThat(digits.meant()).contains(mm(16.27));
    assertThat(digits.inWords()).contains("12.67 mm looks like 16.27 mm with two digits exchanged");
    ReadingSlip other = Identifier.of(set())
        .identify(tern(Dimension.GROOVE_WIDTH, 10.71))
        .slips()
        .get(0);
    assertThat(other.kind()).isEqualTo(CaliperSlip.OTHER_SIZE);
    assertThat(other.measured()).contains(Dimension.GROOVE_DIAMETER);
    assertThat(other.inWords()).contains("10.71 mm looks like the groove diameter (D_g) of Tern");
    Identification misread = Identifier.of(set()).identify(tern(Dimension.COLLAR_DIAMETER, 18.33));
    assertThat(misread.verdict()).isEqualTo(PlugVerdict.AMBIGUOUS);
    assertThat(misread.slips().get(0).kind()).isEqualTo(CaliperSlip.MISREAD);
    assertThat(misread.inWords())
        .contains(
            "Four readings agree with Tern; read the fifth again, the collar diameter (D_c)",
            "If it reads the same again");
  }

  @Test
  void readings_that_agree_have_no_slip_and_a_stranger_has_none_either() {
    assertThat(
            Identifier.of(set()).identify(tern(Dimension.TIP_DIAMETER, 11.90)).slips())
        .isEmpty();
    List<PlugReading> stranger = tern(Dimension.TIP_DIAMETER, 11.90).stream()
        .map(reading -> PlugReading.of(
            reading.dimension(),
            Instrument.DIGITAL_CALIPER,
            mm(1.13 * reading.length().millimetres())))
        .toList();
    Identification answer = Identifier.of(set()).identify(stranger);
    assertThat(answer.verdict()).isEqualTo(PlugVerdict.NO_MATCH);
    assertThat(answer.slips()).isEmpty();
    assertThat(answer.ifWorn()).isEmpty();
  }

  @Test
  void a_worn_plug_is_told_to_fit_if_worn_unless_it_is_said_to_be_as_new() {
    List<PlugReading> worn = new ArrayList<>(tern(Dimension.TIP_DIAMETER, 11.74));
    worn.set(1, PlugReading.of(Dimension.COLLAR_DIAMETER, Instrument.DIGITAL_CALIPER, mm(14.95)));
    worn.set(2, PlugReading.of(Dimension.TIP_LENGTH, Instrument.DIGITAL_CALIPER, mm(16.10)));
    Identification silent = Identifier.of(set()).identify(worn);
    assertThat(silent.verdict()).isEqualTo(PlugVerdict.AMBIGUOUS);
    assertThat(silent.ifWorn()).contains(set().profiles().get(0));
    assertThat(silent.inWords()).contains("Tern, if it is worn by up to 0.2 mm");
    assertThat(Identifier.of(set()).isWearTold()).isFalse();
    Identifier asNew = Identifier.of(set()).withWearAllowance(mm(0.0));
    assertThat(asNew.isWearTold()).isTrue();
    assertThat(asNew.identify(worn).verdict()).isEqualTo(PlugVerdict.NO_MATCH);
    Identifier allowed = Identifier.of(set()).withWearAllowance(Identifier.usualWear());
    Identification candidate = allowed.identify(worn);
    assertThat(candidate.verdict()).isEqualTo(PlugVerdict.CANDIDATE);
    assertThat(candidate.inWords()).contains("It fits with wear only");
    assertThat(allowed.withoutNearCopies().identify(worn).verdict())
        .isEqualTo(PlugVerdict.IDENTIFIED);
  }

  @Test
  void a_chance_agreement_keeps_two_readings_of_many_from_identifying() {
    Identifier trusting = Identifier.of(set()).withoutNearCopies();
    List<PlugReading> lengths = tern(Dimension.TIP_DIAMETER, 11.90).subList(2, 4);
    Identification two = trusting.identify(lengths);
    assertThat(two.chanceOfCoincidence()).isGreaterThan(0.01);
    assertThat(two.verdict()).isEqualTo(PlugVerdict.CANDIDATE);
    assertThat(two.inWords()).contains("by chance; read more");
    Identification four = trusting.identify(tern(Dimension.TIP_DIAMETER, 11.90).subList(0, 4));
    assertThat(four.chanceOfCoincidence()).isLessThan(0.001);
  }

  @Test
  void the_path_ends_with_what_is_still_to_be_read() {
    BenchPath path = BenchPath.of(Identifier.of(set()));
    int settled = 0;
    for (BenchPath.Step step : path.steps()) {
      for (BenchPath.Branch branch : step.branches()) {
        if (branch.settled()) {
          settled++;
          assertThat(path.restOf(step, branch)).hasSize(3).doesNotContain(step.dimension());
        } else {
          assertThat(path.restOf(step, branch)).isEmpty();
        }
      }
    }
    assertThat(settled).isEqualTo(2);
    assertThat(path.toText()).contains("To identify it read also ");
    BenchPath trusting = BenchPath.of(Identifier.of(set()).withoutNearCopies());
    assertThat(trusting.toText()).doesNotContain("read also");
    BenchPath.Step other = trusting.steps().get(0);
    BenchPath.Branch none = new BenchPath.Branch(mm(1.0), mm(2.0), List.of(), 0);
    assertThatIllegalArgumentException().isThrownBy(() -> path.restOf(other, none));
  }

  /** Normal scatter goes a short way; the long one is for any scatter. */
  @Test
  void the_short_way_to_a_near_copy_gives_what_the_long_one_does() {
    PlugWorkshop workshop = new PlugWorkshop(5);
    ReferenceSet drawn = workshop.set(4);
    for (int i = 0; i < 200; i++) {
      PlugProfile profile = drawn.profiles().get(i % 4);
      PlugWorkshop.Caliper one = workshop.caliper(Instrument.DIGITAL_CALIPER);
      PlugWorkshop.Caliper other = workshop.caliper(Instrument.VERNIER_CALIPER_0_05);
      List<PlugReading> taken = new ArrayList<>();
      Map<Dimension, Double> plug = workshop.copy(profile, 1 + i % 3, 0.05, 0.6);
      for (Dimension dimension : List.of(Dimension.values()).subList(0, 1 + i % 9)) {
        PlugReading reading = (i % 2 == 0 ? one : other).read(dimension, plug);
        taken.add(i % 5 == 0 && taken.size() == 1 ? reading.alone() : reading);
      }
      double log = ProfileFit.of(profile, taken, 0.0).logLikelihoodOfNearCopy();
      Scores scores = Scores.of(drawn.sizes(), taken, List.of(), 0.0, Double.POSITIVE_INFINITY);
      if (scores.mostAgree(i % 4)) {
        assertThat(scores.logLikelihoodOfNearCopy(i % 4, 0))
            .isCloseTo(log, org.assertj.core.api.Assertions.within(1.0e-8 * (1.0 + Math.abs(log))));
      }
    }
  }
}
