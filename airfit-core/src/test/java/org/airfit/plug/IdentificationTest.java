package org.airfit.plug;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.SplittableRandom;
import java.util.stream.Stream;
import org.airfit.Comparison;
import org.airfit.Rows;
import org.airfit.Rows.Row;
import org.airfit.internal.ReadingDensity;
import org.airfit.measure.Conformity;
import org.airfit.measure.Instrument;
import org.airfit.measure.PartSpread;
import org.airfit.measure.Reading;
import org.airfit.quantity.Length;
import org.airfit.safety.Caution;
import org.airfit.source.Source;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

class IdentificationTest {

  private static final Source HERE = Source.demo("a set for a test");
  private static final Map<String, Dimension> SYMBOLS = Map.of(
      "D_t", Dimension.TIP_DIAMETER,
      "D_c", Dimension.COLLAR_DIAMETER,
      "L_g", Dimension.TIP_LENGTH,
      "d_b", Dimension.BORE);

  private static Length mm(double value) {
    return Length.ofMillimetres(value);
  }

  /** The vectors count with the whole σ in the profile, so the reading's own u is made nothing beside it. */
  private static PlugReading exact(Dimension dimension, double mm) {
    return PlugReading.of(dimension, Reading.of(mm(mm), mm(1.0e-7)));
  }

  private static ReferenceSet vectors() {
    Map<String, PlugProfile.Builder> builders = new LinkedHashMap<>();
    Rows.of(IdentificationTest.class, "demo_profiles_synthetic.csv")
        .forEach(row -> builders
            .computeIfAbsent(
                row.text("profile_id"),
                id -> PlugProfile.builder(id).from(Provenance.synthetic(), HERE).confirmUnusual())
            .dimension(
                Objects.requireNonNull(SYMBOLS.get(row.text("symbol"))),
                PartSpread.normal(mm(row.number("nominal_mm")), mm(row.number("sigma_mm")))));
    return ReferenceSet.of(
        "vectors", builders.values().stream().map(PlugProfile.Builder::build).toList());
  }

  static Stream<Row> classifier_rows() {
    return Rows.of(IdentificationTest.class, "worked_vectors_classifier.csv");
  }

  private static Identification identify(Row row) {
    List<PlugReading> readings = new ArrayList<>();
    SYMBOLS.forEach((symbol, dimension) -> {
      if (row.has(symbol + "_mm")) {
        readings.add(exact(dimension, row.number(symbol + "_mm")));
      }
    });
    // the vectors know one density of the unknown
    Identifier identifier = Identifier.of(vectors()).withoutNearCopies();
    return (row.text("with_unknown").equals("yes") ? identifier : identifier.withUnknownPrior(0.0))
        .identify(readings);
  }

  private static void compare(Row row, String column, double ours) {
    double printed = row.number(column);
    Comparison.of(
            "Plugs: classifier vectors",
            row.text("vector") + ", " + row.text("profile") + ", " + column,
            printed,
            "-",
            row.evidence(column))
        .isMetBy(
            ours,
            Math.max(1.0e-12, Math.max(1.0e-5 * Math.abs(printed), row.halfDigit(column))),
            "1e-5, as the table's README advises; below 1e-12 counts as zero");
  }

  @ParameterizedTest
  @MethodSource("classifier_rows")
  void classifier_vectors_agree(Row row) {
    Identification answer = identify(row);
    if (row.text("profile").equals("UNKNOWN")) {
      compare(row, "posterior", answer.unknownProbability());
      return;
    }
    ProfileCandidate candidate = answer.candidates().stream()
        .filter(c -> c.profile().id().equals(row.text("profile")))
        .findFirst()
        .orElseThrow();
    compare(row, "chi2", candidate.chiSquare());
    compare(row, "chi2_upper_tail_p", candidate.tailProbability());
    compare(row, "log_likelihood", candidate.logLikelihood());
    compare(row, "posterior", candidate.probability());
  }

  static Stream<Row> guard_rows() {
    return Rows.of(IdentificationTest.class, "worked_vectors_guardband.csv");
  }

  @ParameterizedTest
  @MethodSource("guard_rows")
  void guard_band_vectors_agree(Row row) {
    PartSpread.Limits limits =
        new PartSpread.Limits(mm(row.number("limit_low_mm")), mm(row.number("limit_high_mm")));
    Reading reading = Reading.of(mm(row.number("reading_mm")), mm(row.number("u_mm")));
    Conformity judged = Conformity.of(limits, reading);
    Comparison.of(
            "Plugs: guard band vectors",
            row + ", conformance",
            row.number("conformance_probability"),
            "-",
            row.evidence("conformance_probability"))
        .isMetBy(
            judged.probability(),
            Math.max(1.0e-12, 1.0e-5 * row.number("conformance_probability")),
            "1e-5, as the table's README advises");
    assertThat(judged.verdict().label()).isEqualTo(row.text("guarded_verdict_U_2u"));
    double density =
        Math.exp(CaliperGroup.density(limits, row.number("u_mm"), 0.0, Dimension.TIP_DIAMETER)
            .logDensity(row.number("reading_mm")));
    Comparison.of(
            "Plugs: guard band vectors",
            row + ", density",
            row.number("density_uniform_part_per_mm"),
            "1/mm",
            row.evidence("density_uniform_part_per_mm"))
        .isMetBy(
            density,
            Math.max(1.0e-6, 1.0e-5 * row.number("density_uniform_part_per_mm")),
            "six decimals printed, 1e-5 as advised");
  }

  @Test
  void the_measured_set_vector_agrees() {
    Row row = Rows.of(IdentificationTest.class, "worked_vector_user_measured.csv")
        .findFirst()
        .orElseThrow();
    List<Length> readings = Stream.of(row.text("readings_mm").split(" ", -1))
        .map(text -> mm(Double.parseDouble(text)))
        .toList();
    PartSpread.Sample sample = (PartSpread.Sample) PartSpread.measured(readings);
    assertThat(sample.pieces()).isEqualTo(5);
    assertThat(sample.degreesOfFreedom()).isEqualTo(4);
    vector(row, "mean_mm", sample.mean());
    vector(row, "s_mm", sample.sampleDeviation());
    vector(row, "predictive_scale_mm", sample.standardDeviation());
    PartSpread.Limits next = sample.nextPiece(0.95);
    vector(row, "interval_low_mm", next.low());
    vector(row, "interval_high_mm", next.high());
  }

  private static void vector(Row row, String column, Length ours) {
    Comparison.of(
            "Plugs: measured set vector", column, row.number(column), "mm", row.evidence(column))
        .isMetBy(ours.millimetres(), 1.01 * row.halfDigit(column), "half the last digit printed");
  }

  static Stream<Row> combined_rows() {
    return Rows.of(IdentificationTest.class, "sigma_combined_examples.csv");
  }

  /**
   * Each component is read off the table it names, and the sum of squares is that of the code that weighs a reading.
   */
  @ParameterizedTest
  @MethodSource("combined_rows")
  void combined_uncertainties_agree(Row row) {
    String[] names = row.text("formula").replace("root sum of squares of ", "").split(" \\+ ", -1);
    double part = component(names[2]);
    double u = Math.hypot(component(names[0]), component(names[1]));
    ReadingDensity expected =
        CaliperGroup.density(PartSpread.normal(mm(10.0), mm(part)), u, 0.0, Dimension.TIP_DIAMETER);
    Comparison.of(
            "Plugs: combined uncertainties",
            row.toString(),
            row.number("sigma_mm"),
            "mm",
            row.evidence("sigma_mm"))
        .isMetBy(
            expected.sigma(),
            1.5 * row.halfDigit("sigma_mm"),
            "last digit printed; components are printed to five decimals");
  }

  private static double component(String id) {
    return Rows.of(IdentificationTest.class, "sigma_components.csv")
        .filter(row -> row.text("component_id").equals(id))
        .findFirst()
        .orElseThrow()
        .number("sigma_mm");
  }

  /** Components of DIN 862 and of technique, as sigma_components.csv has them: MPE/√3 and a/√3, added in squares. */
  @Test
  void instruments_hold_the_components_of_the_table() {
    assertThat(Instrument.DIGITAL_CALIPER
            .standardUncertainty(Dimension.TIP_DIAMETER.access())
            .millimetres())
        .isCloseTo(Math.hypot(component("CAL_EXT_DIG"), component("REPEAT")), within(1.0e-5));
    assertThat(Instrument.DIGITAL_CALIPER
            .standardUncertainty(Dimension.TIP_LENGTH.access())
            .millimetres())
        .isCloseTo(Math.hypot(component("CAL_DEP_DIG"), component("TECH_STEP")), within(1.0e-5));
    assertThat(Instrument.VERNIER_CALIPER_0_05
            .standardUncertainty(Dimension.COLLAR_DIAMETER.access())
            .millimetres())
        .isCloseTo(Math.hypot(component("CAL_EXT_V05"), component("REPEAT")), within(1.0e-5));
    assertThat(Instrument.VERNIER_CALIPER_0_05
            .standardUncertainty(Dimension.GROOVE_WIDTH.access())
            .millimetres())
        .isCloseTo(Math.hypot(component("CAL_DEP_V05"), component("TECH_GROOVE")), within(1.0e-5));
    assertThat(Instrument.VERNIER_CALIPER_0_02
            .standardUncertainty(Dimension.BORE.access())
            .millimetres())
        .isCloseTo(Math.hypot(component("CAL_DEP_DIG"), component("TECH_BORE")), within(1.0e-5));
    assertThat(Instrument.DIGITAL_CALIPER.label()).contains("0.01");
  }

  private static PlugReading digital(Dimension dimension, double mm) {
    return PlugReading.of(dimension, Instrument.DIGITAL_CALIPER, mm(mm));
  }

  private static Identification birds(PlugReading... readings) {
    return Identifier.of(DemoProfiles.birds()).identify(List.of(readings));
  }

  @Test
  void nearly_equal_tip_lengths_lead_to_measure_the_width_and_then_to_an_answer() {
    Identification doubt =
        birds(digital(Dimension.TIP_DIAMETER, 18.78), digital(Dimension.TIP_LENGTH, 21.05));
    assertThat(doubt.verdict()).isEqualTo(PlugVerdict.AMBIGUOUS);
    assertThat(doubt.profile()).isEmpty();
    assertThat(doubt.likely())
        .extracting(c -> c.profile().id())
        .containsExactlyInAnyOrder("demo-curlew", "demo-plover");
    NextReading next = doubt.nextReadings().get(0);
    assertThat(next.dimension()).isIn(Dimension.GROOVE_WIDTH, Dimension.TIP_TO_COLLAR);
    assertThat(doubt.nextReadings())
        .extracting(NextReading::dimension)
        .contains(Dimension.GROOVE_WIDTH);
    assertThat(next.chanceOfSettling()).isGreaterThan(0.9);
    assertThat(doubt.inWords()).contains("Ambiguous", "Measure the");
    Identification settled = birds(
        digital(Dimension.TIP_DIAMETER, 18.78),
        digital(Dimension.TIP_LENGTH, 21.05),
        digital(Dimension.GROOVE_WIDTH, 6.55));
    assertThat(settled.verdict()).isEqualTo(PlugVerdict.CANDIDATE);
    assertThat(settled.profile().map(PlugProfile::id)).contains("demo-plover");
    assertThat(settled.inWords()).startsWith("Candidate only");
    assertThat(settled).hasToString(settled.inWords());
  }

  @Test
  void the_next_reading_drops_the_doubt_by_what_was_expected_of_it_on_average() {
    Identification doubt =
        birds(digital(Dimension.TIP_DIAMETER, 18.78), digital(Dimension.TIP_LENGTH, 21.05));
    double expected = doubt.nextReadings().stream()
        .filter(next -> next.dimension() == Dimension.GROOVE_WIDTH)
        .findFirst()
        .orElseThrow()
        .expectedDropBits();
    SplittableRandom random = new SplittableRandom(11);
    int tries = 2000;
    double u = Instrument.DIGITAL_CALIPER
        .standardUncertainty(Dimension.GROOVE_WIDTH.access())
        .millimetres();
    double sum = 0.0;
    double squares = 0.0;
    for (int i = 0; i < tries; i++) {
      double draw = random.nextDouble();
      double at = 0.0;
      double width = random.nextDouble(0.5, 10.5); // of an unknown plug
      for (ProfileCandidate candidate : doubt.candidates()) {
        at += candidate.probability();
        if (draw < at) {
          PartSpread spread = candidate.profile().spread(Dimension.GROOVE_WIDTH).orElseThrow();
          width = spread.nominal().millimetres()
              + spread.standardDeviation().millimetres() * random.nextGaussian();
          break;
        }
      }
      Identification after = birds(
          digital(Dimension.TIP_DIAMETER, 18.78),
          digital(Dimension.TIP_LENGTH, 21.05),
          digital(Dimension.GROOVE_WIDTH, width + u * random.nextGaussian()));
      double drop = doubt.doubtBits() - after.doubtBits();
      sum += drop;
      squares += drop * drop;
    }
    double mean = sum / tries;
    double error = Math.sqrt((squares / tries - mean * mean) / tries);
    assertThat(mean)
        .as("seed 11, four standard errors")
        .isCloseTo(expected, within(4.0 * error + 0.003));
  }

  /** Of plugs drawn as the prior says, answers given at p are right in p of the cases. */
  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3})
  void probabilities_are_calibrated(long seed) {
    SplittableRandom random = new SplittableRandom(seed);
    List<PlugProfile> profiles = DemoProfiles.birds().profiles();
    List<Dimension> measured = List.of(Dimension.TIP_DIAMETER, Dimension.TIP_LENGTH);
    double promised = 0.0;
    double variance = 0.0;
    int right = 0;
    double doubtfulPromised = 0.0;
    double doubtfulVariance = 0.0;
    int doubtfulRight = 0;
    for (int i = 0; i < 4000; i++) {
      PlugProfile truth = profiles.get(random.nextInt(profiles.size()));
      List<PlugReading> readings = new ArrayList<>();
      for (Dimension dimension : measured) {
        PartSpread spread = truth.spread(dimension).orElseThrow();
        Length u = Instrument.DIGITAL_CALIPER.standardUncertainty(dimension.access());
        readings.add(PlugReading.of(
            dimension,
            Reading.of(
                mm(spread.nominal().millimetres()
                    + spread.standardDeviation().millimetres() * random.nextGaussian()
                    + u.millimetres() * random.nextGaussian()),
                u)));
      }
      ProfileCandidate best = Identifier.of(DemoProfiles.birds())
          .withUnknownPrior(0.0)
          .identify(readings)
          .candidates()
          .get(0);
      double p = best.probability();
      boolean hit = best.profile().id().equals(truth.id());
      promised += p;
      variance += p * (1.0 - p);
      right += hit ? 1 : 0;
      if (p < 0.95) {
        doubtfulPromised += p;
        doubtfulVariance += p * (1.0 - p);
        doubtfulRight += hit ? 1 : 0;
      }
    }
    assertThat((double) right)
        .as("seed " + seed + ", four standard deviations of a sum of Bernoulli draws")
        .isCloseTo(promised, within(4.0 * Math.sqrt(variance)));
    assertThat((double) doubtfulRight)
        .as("only answers below 95 %, seed " + seed)
        .isCloseTo(doubtfulPromised, within(4.0 * Math.sqrt(doubtfulVariance)));
  }

  @Test
  void an_unknown_plug_is_no_match() {
    Identification answer = birds(
        digital(Dimension.TIP_DIAMETER, 14.0),
        digital(Dimension.COLLAR_DIAMETER, 17.0),
        digital(Dimension.TIP_LENGTH, 12.0));
    assertThat(answer.verdict()).isEqualTo(PlugVerdict.NO_MATCH);
    assertThat(answer.unknownProbability()).isGreaterThan(0.999);
    assertThat(answer.unknownIsLikely()).isTrue();
    assertThat(answer.inWords()).contains("No match");
  }

  @Test
  void nothing_read_and_one_reading_are_not_enough() {
    assertThat(birds().verdict()).isEqualTo(PlugVerdict.INSUFFICIENT_DATA);
    assertThat(birds().inWords()).startsWith("Nothing was read yet.");
    assertThat(birds().doubtBits()).isGreaterThan(2.0);
    Identification one = birds(digital(Dimension.TIP_DIAMETER, 23.6));
    assertThat(one.verdict()).isEqualTo(PlugVerdict.INSUFFICIENT_DATA);
    assertThat(one.inWords()).contains("one dimension alone names no profile");
  }

  private static PlugProfile pair(String id, Provenance provenance, double tip) {
    return PlugProfile.builder(id)
        .from(provenance, HERE)
        .dimension(Dimension.TIP_DIAMETER, PartSpread.normal(mm(tip), mm(0.02)))
        .dimension(Dimension.TIP_LENGTH, PartSpread.normal(mm(20.0), mm(0.05)))
        .deciding(List.of(Dimension.TIP_DIAMETER, Dimension.TIP_LENGTH))
        .build();
  }

  private static PlugVerdict verdict(Provenance one, Provenance other) {
    return Identifier.of(
            ReferenceSet.of("set", List.of(pair("a", one, 10.0), pair("b", other, 12.0))))
        .identify(
            List.of(digital(Dimension.TIP_DIAMETER, 10.0), digital(Dimension.TIP_LENGTH, 20.0)))
        .verdict();
  }

  @Test
  void only_a_standard_or_five_measured_pieces_identify_and_the_weakest_counts() {
    assertThat(verdict(Provenance.standardEntered(), Provenance.standardEntered()))
        .isEqualTo(PlugVerdict.IDENTIFIED);
    assertThat(verdict(Provenance.userMeasured(5), Provenance.standardEntered()))
        .isEqualTo(PlugVerdict.IDENTIFIED);
    assertThat(verdict(Provenance.userMeasured(4), Provenance.standardEntered()))
        .isEqualTo(PlugVerdict.CANDIDATE);
    assertThat(verdict(Provenance.standardEntered(), Provenance.nominalUnverified()))
        .isEqualTo(PlugVerdict.CANDIDATE);
    assertThat(verdict(Provenance.standardEntered(), Provenance.synthetic()))
        .isEqualTo(PlugVerdict.CANDIDATE);
  }

  @Test
  void wear_makes_a_worn_plug_fit_and_a_plug_that_grew_none_the_better() {
    Identifier worn = Identifier.of(DemoProfiles.birds()).withWearAllowance(mm(0.3));
    List<PlugReading> thin = List.of(
        digital(Dimension.TIP_DIAMETER, 23.40),
        digital(Dimension.COLLAR_DIAMETER, 29.10),
        digital(Dimension.GROOVE_WIDTH, 5.8));
    assertThat(birds(thin.toArray(new PlugReading[0])).candidates().get(0).fits())
        .isFalse();
    ProfileCandidate allowed = worn.identify(thin).candidates().get(0);
    assertThat(allowed.fits()).isTrue();
    assertThat(allowed.residuals()).allSatisfy(r -> assertThat(r.inWords()).contains("agrees"));
    assertThat(allowed.residuals().get(0).inWords()).endsWith("agrees, if worn by that much");
    // the heron's tip is 23.60 mm: a fiftieth less is no sign of wear
    assertThat(worn.identify(List.of(digital(Dimension.TIP_DIAMETER, 23.58)))
            .candidates()
            .get(0)
            .residuals()
            .get(0)
            .inWords())
        .endsWith("times the expected scatter as new");
    ProfileCandidate grown = worn.identify(List.of(
            digital(Dimension.TIP_DIAMETER, 23.90), digital(Dimension.COLLAR_DIAMETER, 29.60)))
        .candidates()
        .get(0);
    assertThat(grown.fits()).isFalse();
    assertThat(grown.residuals().get(0).inWords())
        .contains("does not agree", "wear changes it the other way");
  }

  @Test
  void cautions_always_go_with_an_answer() {
    assertThat(birds().cautions())
        .extracting(Caution::title)
        .containsExactly("Reference set", "Mating check", "Pressure rating", "Compressed air only");
    Identification sure = Identifier.of(
            ReferenceSet.of("set", List.of(pair("a", Provenance.standardEntered(), 10.0))))
        .identify(List.of());
    assertThat(sure.cautions()).extracting(Caution::title).doesNotContain("Reference set");
  }

  @Test
  void the_working_shows_chi_square_and_posterior_of_the_best() {
    Identification answer =
        birds(digital(Dimension.TIP_DIAMETER, 18.78), digital(Dimension.TIP_LENGTH, 21.05));
    assertThat(answer.working().toText()).contains("χ²", "ln L", "exp(", "None of the set");
    assertThat(answer.working().toLatex()).contains("\\chi");
    assertThat(birds().working().toText()).isNotBlank();
    assertThat(birds(digital(Dimension.TIP_DIAMETER, 60.0), digital(Dimension.TIP_LENGTH, 90.0))
            .working()
            .toText())
        .contains("unknown");
  }

  @Test
  void sets_given_by_limits_and_by_samples_are_weighed_too() {
    PlugProfile limits = PlugProfile.builder("limits")
        .from(Provenance.standardEntered(), HERE)
        .dimension(Dimension.TIP_DIAMETER, PartSpread.limits(mm(9.95), mm(10.05)))
        .dimension(Dimension.TIP_LENGTH, PartSpread.limits(mm(19.9), mm(20.1)))
        .build();
    PlugProfile sample = PlugProfile.builder("sample")
        .from(Provenance.userMeasured(5), HERE)
        .dimension(
            Dimension.TIP_DIAMETER,
            PartSpread.measured(List.of(mm(11.98), mm(12.0), mm(12.03), mm(11.99), mm(12.01))))
        .dimension(
            Dimension.TIP_LENGTH,
            PartSpread.measured(List.of(mm(20.0), mm(20.1), mm(19.9), mm(20.05), mm(19.95))))
        .deciding(List.of(Dimension.TIP_DIAMETER, Dimension.TIP_LENGTH))
        .build();
    Identifier identifier = Identifier.of(ReferenceSet.of("mixed", List.of(limits, sample)));
    Identification one = identifier.identify(
        List.of(digital(Dimension.TIP_DIAMETER, 10.01), digital(Dimension.TIP_LENGTH, 20.0)));
    assertThat(one.profile().map(PlugProfile::id)).contains("limits");
    assertThat(one.candidates().get(0).residuals().get(0).inWords()).contains("inside the limits");
    assertThat(one.working().toText()).isNotBlank();
    Identification other = identifier
        .withWearAllowance(mm(0.05))
        .identify(
            List.of(digital(Dimension.TIP_DIAMETER, 11.97), digital(Dimension.TIP_LENGTH, 20.0)));
    assertThat(other.profile().map(PlugProfile::id)).contains("sample");
    assertThat(other.working().toText()).isNotBlank();
    assertThat(other.verdict()).isEqualTo(PlugVerdict.IDENTIFIED);
    assertThat(identifier.identify(List.of(digital(Dimension.BORE, 8.0))).verdict())
        .isEqualTo(PlugVerdict.INSUFFICIENT_DATA);
  }

  @Test
  void an_identifier_tells_its_settings_and_refuses_wrong_ones() {
    Identifier identifier = Identifier.of(DemoProfiles.birds())
        .withConfidence(0.9)
        .withUnknownPrior(0.1)
        .withWearAllowance(mm(0.1))
        .withInstrument(Instrument.VERNIER_CALIPER_0_05);
    assertThat(identifier.confidence()).isEqualTo(0.9);
    assertThat(identifier.unknownPrior()).isEqualTo(0.1);
    assertThat(identifier.wearAllowance()).isEqualTo(mm(0.1));
    assertThat(identifier.instrument()).isEqualTo(Instrument.VERNIER_CALIPER_0_05);
    assertThat(identifier.referenceSet()).isSameAs(DemoProfiles.birds());
    Identification answer = identifier.identify(List.of());
    assertThat(answer.referenceSet()).isSameAs(identifier.referenceSet());
    assertThat(answer.confidence()).isEqualTo(0.9);
    assertThat(answer.unknownPrior()).isEqualTo(0.1);
    assertThat(answer.wearAllowance()).isEqualTo(mm(0.1));
    assertThat(answer.nextReadings().get(0).instrument())
        .isEqualTo(Instrument.VERNIER_CALIPER_0_05);
    for (double wrong : new double[] {-0.1, 1.0, Double.NaN}) {
      assertThatIllegalArgumentException().isThrownBy(() -> identifier.withUnknownPrior(wrong));
    }
    for (double wrong : new double[] {0.0, 1.0, Double.NaN}) {
      assertThatIllegalArgumentException().isThrownBy(() -> identifier.withConfidence(wrong));
    }
    assertThatIllegalArgumentException().isThrownBy(() -> identifier.withWearAllowance(mm(20.0)));
    assertThatIllegalArgumentException()
        .isThrownBy(() -> identifier.identify(
            List.of(digital(Dimension.BORE, 8.0), digital(Dimension.BORE, 8.1))));
  }
}
