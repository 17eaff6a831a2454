package org.airfit.lesson;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.IntStream;
import org.airfit.air.AirPurity;
import org.airfit.air.AirState;
import org.airfit.air.DewPoint;
import org.airfit.flow.FlowCapacity;
import org.airfit.line.FrictionLaw;
import org.airfit.measure.Instrument;
import org.airfit.measure.PartSpread;
import org.airfit.plant.ReceiverSize;
import org.airfit.plug.Dimension;
import org.airfit.plug.PlugProfile;
import org.airfit.plug.PlugReading;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.Length;
import org.airfit.quantity.MassFlow;
import org.airfit.quantity.NominalThreadSize;
import org.airfit.quantity.ReferenceState;
import org.airfit.quantity.SonicConductance;
import org.airfit.quantity.Temperature;
import org.airfit.quantity.Volume;
import org.airfit.select.SpareStock;
import org.airfit.thread.BsptThread;
import org.airfit.thread.Gender;
import org.airfit.thread.NptThread;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The variants are reckoned without the library; here the library reckons them once more. */
class VariantsTest {

  private static final int SEEDS = 300;
  private static final Pattern NUMBER = Pattern.compile("-?\\d+(?:\\.\\d+)?");

  private static double first(String text) {
    Matcher number = NUMBER.matcher(text);
    assertThat(number.find()).as(text).isTrue();
    return Double.parseDouble(number.group());
  }

  private static List<Double> numbers(String text) {
    return NUMBER
        .matcher(text)
        .results()
        .map(found -> Double.parseDouble(found.group()))
        .toList();
  }

  private static List<Variant> all(String id) {
    int lesson = Exercises.lessonOf(id);
    return IntStream.range(0, SEEDS)
        .mapToObj(seed -> Variants.of(lesson, seed))
        .flatMap(List::stream)
        .filter(one -> one.id().equals(id))
        .toList();
  }

  @ParameterizedTest
  @ValueSource(ints = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13})
  void each_exercise_of_a_lesson_has_variants_that_differ_and_one_seed_gives_one_sheet(int lesson) {
    List<String> ids = Exercises.of(lesson).ids();
    Set<List<Variant>> sheets = new HashSet<>();
    for (long seed = 0; seed < SEEDS; seed++) {
      List<Variant> sheet = Variants.of(lesson, seed);
      assertThat(sheet).extracting(Variant::id).isEqualTo(ids);
      assertThat(Variants.of(lesson, seed)).isEqualTo(sheet);
      assertThat(sheet.toString()).doesNotContain("NaN", "Infinity", "null", "%%");
      sheets.add(sheet);
    }
    assertThat(sheets).hasSizeGreaterThan(SEEDS * 9 / 10);
  }

  @Test
  void the_numbers_of_a_sheet_are_the_same_on_every_computer() {
    // Drawn in another language, by a few lines after the specification of java.util.Random.
    assertThat(numbers(Variants.of(3, 2027L).get(0).question())).containsExactly(125.0, 13.7);
    assertThat(numbers(Variants.of(3, 7L).get(0).question())).containsExactly(120.0, 14.7);
  }

  /** The yard's sizes and the caliper's uncertainty come from the library. */
  @Test
  void the_kinds_that_one_reading_leaves_are_those_within_two_standard_deviations() {
    Set<Long> counts = new HashSet<>();
    assertThat(all("1b")).allSatisfy(one -> {
      Dimension read = Arrays.stream(Dimension.values())
          .filter(dimension -> one.question().contains("its " + dimension.label() + " is "))
          .findFirst()
          .orElseThrow();
      Length size = Length.ofMillimetres(first(one.question()));
      double u = PlugReading.of(read, Instrument.DIGITAL_CALIPER, size)
          .standardUncertainty()
          .millimetres();
      List<String> left = Boatyard.profiles().profiles().stream()
          .filter(profile -> {
            PartSpread spread = profile.spread(read).orElseThrow();
            double off = size.millimetres() - spread.nominal().millimetres();
            return Math.abs(off) <= 2.0 * Math.hypot(spread.standardDeviation().millimetres(), u);
          })
          .map(PlugProfile::displayName)
          .toList();
      assertThat(one.answer().replaceFirst(";.*", "").split(" and "))
          .as(one.question())
          .containsExactlyInAnyOrderElementsOf(left);
      assertThat(one.answer().contains("groove width")).isEqualTo(left.size() > 1);
      counts.add((long) left.size());
    });
    assertThat(counts).contains(1L, 2L);
  }

  @Test
  void a_piece_is_left_out_for_a_cause_only_and_the_rest_gives_mean_and_spread() {
    Set<String> said = new HashSet<>();
    assertThat(all("9d")).allSatisfy(one -> {
      boolean kept = one.answer().startsWith("keep it");
      List<Length> pieces = numbers(one.question()).stream()
          .limit(kept ? 6 : 5)
          .map(Length::ofMillimetres)
          .toList();
      PartSpread.Sample sample = (PartSpread.Sample) PartSpread.measured(pieces);
      assertThat(numbers(one.answer()))
          .containsExactly(
              Math.round(1000.0 * sample.mean().millimetres()) / 1000.0,
              Math.round(1000.0 * sample.sampleDeviation().millimetres()) / 1000.0);
      assertThat(kept)
          .isEqualTo(
              one.question().contains("catalogue") || one.question().contains("nothing is wrong"));
      said.add(one.answer().replaceFirst(":.*", ""));
    });
    assertThat(said).containsExactlyInAnyOrder("keep it", "leave it out");
  }

  @Test
  void the_density_is_that_of_the_library() {
    assertThat(all("4a")).allSatisfy(one -> {
      List<Double> told = numbers(one.question());
      double density = AirState.of(
              GaugePressure.ofPsi(told.get(0)).absolute(AbsolutePressure.ofPsi(14.7)),
              Temperature.ofFahrenheit(told.get(1)))
          .density()
          .poundsPerCubicFoot();
      assertThat(first(one.answer())).isCloseTo(density, within(0.0015));
    });
  }

  @Test
  void the_pressure_loss_of_a_part_is_that_of_the_library() {
    assertThat(all("3c")).allSatisfy(one -> {
      List<Double> told = numbers(one.question().replace("p2", "").replace("dm³", ""));
      double gauge = told.get(3);
      AirState inlet = AirState.of(
          GaugePressure.ofPsi(gauge).absolute(AbsolutePressure.ofPsi(14.7)),
          Temperature.ofCelsius(20));
      double loss = FlowCapacity.of(
              SonicConductance.ofCubicDecimetresPerSecondBar(told.get(0)), told.get(1))
          .passage(MassFlow.ofKilogramsPerSecond(told.get(2) / 1000.0), inlet)
          .fold(flowing -> flowing.drop().psi(), choked -> Double.NaN);
      assertThat(first(one.answer()))
          .as(one.question())
          .isCloseTo(loss, within(0.06 + 0.005 * loss));
    });
  }

  @Test
  void two_rounds_of_colebrook_come_near_the_library() {
    assertThat(all("4e")).allSatisfy(one -> {
      List<Double> told = numbers(one.question());
      double exact = FrictionLaw.COLEBROOK.factor(told.get(1), told.get(2)).darcy();
      assertThat(first(one.answer())).isCloseTo(exact, within(0.0003));
    });
  }

  @Test
  void the_first_crests_are_those_of_the_library() {
    assertThat(MeasuringVariants.threads()).allSatisfy(thread -> {
      NominalThreadSize size = NominalThreadSize.parse(thread.name().replaceAll("[A-Z ]", ""));
      double crest = thread.name().endsWith("NPT")
          ? NptThread.of(size).firstThreadCrestDiameter().millimetres()
          : BsptThread.of(size)
              .section(
                  Gender.MALE,
                  thread.tapered()
                      ? Length.ofMillimetres(0.0)
                      : BsptThread.of(size).gaugeLength())
              .crest(Gender.MALE)
              .millimetres();
      assertThat(thread.crest()).as(thread.name()).isCloseTo(crest, within(0.02));
    });
  }

  /** t √(1 + 1/n) for one further reading, two-sided at 0.05: derived from Student's t, by a program of statistics. */
  @ParameterizedTest
  @CsvSource({"4, 3.5581", "5, 3.0414", "8, 2.5081"})
  void the_next_piece_lies_as_far_as_students_t_says(int count, double factor) {
    assertThat(MeasuringVariants.next(count, 1.0)).isCloseTo(factor, within(0.0006));
  }

  @ParameterizedTest
  @ValueSource(ints = {4, 5, 6, 7, 8})
  void the_next_piece_lies_as_far_as_the_library_says(int count) {
    PartSpread.Limits next = new PartSpread.Sample(
            count, Length.ofMillimetres(10.0), Length.ofMillimetres(0.1))
        .nextPiece(0.95);
    assertThat(MeasuringVariants.next(count, 0.1))
        .isCloseTo(0.5 * next.high().minus(next.low()).millimetres(), within(0.00006));
  }

  @Test
  void a_thread_has_no_double_among_those_of_its_pitch() {
    assertThat(all("2b")).allSatisfy(one -> {
      List<Double> told = numbers(one.question());
      double perInch = 5.0 * 25.4 / told.get(2);
      boolean tapered = told.get(1) - told.get(0) > 0.2;
      assertThat(MeasuringVariants.threads().stream()
              .filter(thread -> Math.abs(thread.perInch() - perInch) < 0.3)
              .filter(thread -> thread.tapered() == tapered)
              .filter(thread -> Math.abs(thread.crest() - told.get(0)) < 0.1)
              .map(thread -> thread.name() + " male"))
          .containsExactly(one.answer());
    });
  }

  @Test
  void a_run_never_chokes_and_the_coupling_gains_more_than_it_loses() {
    assertThat(all("6a")).allSatisfy(one -> assertThat(first(one.answer())).isBetween(20.0, 125.0));
    assertThat(all("6d"))
        .allSatisfy(one -> assertThat(first(one.answer()))
            .isGreaterThan(0.0)
            .isGreaterThanOrEqualTo(first(one.way().replaceFirst(".*itself loses ", "")) - 0.051));
  }

  @Test
  void a_nozzle_of_the_variants_chokes() {
    assertThat(all("5d"))
        .allSatisfy(
            one -> assertThat(first(one.way().replaceFirst(".* = ", ""))).isLessThan(0.528));
  }

  @Test
  void the_c_of_a_coupling_that_loses_a_pressure_is_that_of_the_library() {
    assertThat(all("10c")).allSatisfy(one -> {
      List<Double> told = numbers(one.question());
      AirState inlet = AirState.of(AbsolutePressure.ofBar(told.get(1)), Temperature.ofCelsius(20));
      double conductance = first(one.answer());
      AbsolutePressure behind = AbsolutePressure.ofBar(told.get(1) - told.get(2));
      MassFlow flow = FlowCapacity.of(
              SonicConductance.ofCubicDecimetresPerSecondBar(conductance), told.get(0))
          .flow(inlet, behind)
          .massFlow();
      assertThat(FreeAirFlow.from(flow, ReferenceState.ANR).litresPerSecond() / told.get(3))
          .as(one.question())
          .isCloseTo(1.0, within(0.0051 / conductance));
    });
  }

  @Test
  void the_water_in_air_is_that_of_the_library() {
    assertThat(all("12a")).allSatisfy(one -> {
      List<Double> told = numbers(one.question());
      double grams = 1000.0
          * DewPoint.of(
                  AirState.of(
                      AbsolutePressure.ofKilopascals(101.3), Temperature.ofCelsius(told.get(0))),
                  told.get(1) / 100.0)
              .humidityRatio();
      assertThat(first(one.answer()))
          .as(one.question())
          .isCloseTo(grams, within(0.01 + 0.001 * grams));
    });
  }

  @Test
  void the_vapour_that_is_let_out_and_the_class_of_water_are_those_of_the_library() {
    assertThat(all("12c")).allSatisfy(one -> {
      List<Double> told = numbers(one.question());
      double out = new DewPoint(
              Temperature.ofCelsius(told.get(1)), AbsolutePressure.ofBar(told.get(0)))
          .at(AbsolutePressure.ofBar(1.0))
          .vapourPressure()
          .kilopascals();
      assertThat(first(one.answer()))
          .as(one.question())
          .isCloseTo(out, within(0.001 + 0.001 * out));
    });
    Set<String> classes = new HashSet<>();
    assertThat(all("12d")).allSatisfy(one -> {
      DewPoint dewPoint = new DewPoint(
          Temperature.ofFahrenheit(first(one.question())), AbsolutePressure.ofBar(8.0));
      assertThat(one.answer())
          .as(one.question())
          .isEqualTo(
              AirPurity.ofWater(dewPoint).map(found -> "class " + found).orElse("none of them"));
      classes.add(one.answer());
    });
    assertThat(classes).hasSize(4);
  }

  @Test
  void one_spare_piece_is_enough_where_the_chance_says_so() {
    assertThat(all("13c")).allSatisfy(one -> {
      List<Double> told = numbers(one.question());
      double mean = told.get(0) * told.get(1) / 100.0 * told.get(2) / 365.0;
      double risk = first(one.answer()) / 100.0;
      if (risk > 0.002 && risk < 0.49) {
        assertThat(SpareStock.least(mean, risk + 0.001)).as(one.question()).isLessThanOrEqualTo(1);
        assertThat(SpareStock.least(mean, risk - 0.001)).as(one.question()).isGreaterThan(1);
      }
    });
  }

  /** A nozzle without loss passes 0.6847 p A / √(R T), counted at 1.185 kg/m³ and 20 °C. */
  @Test
  void a_bore_passes_what_a_nozzle_without_loss_does() {
    double each = 0.6847 * 1.0e-6 / (1.185 * Math.sqrt(287.05 * 293.15)) * 1.0e8;
    Set<Boolean> said = new HashSet<>();
    assertThat(all("13d")).allSatisfy(one -> {
      List<Double> told = numbers(one.question());
      double most = each * Math.PI / 4.0 * told.get(0) * told.get(0);
      assertThat(first(one.answer()))
          .as(one.question())
          .isCloseTo(most, within(0.006 + 0.001 * most));
      assertThat(one.answer().endsWith(": yes")).as(one.question()).isEqualTo(told.get(1) < most);
      said.add(one.answer().endsWith(": yes"));
    });
    assertThat(said).hasSize(2);
  }

  @Test
  void a_receiver_of_the_variants_is_that_of_the_library() {
    assertThat(all("11b")).allSatisfy(one -> {
      List<Double> told = numbers(one.question());
      AbsolutePressure around = AbsolutePressure.ofPsi(14.7);
      double volume = new ReceiverSize(
              FreeAirFlow.ofScfm60F(told.get(0)),
              FreeAirFlow.ofScfm60F(told.get(2)),
              Duration.ofSeconds(Math.round(60.0 * told.get(1))),
              GaugePressure.ofPsi(told.get(3)).absolute(around),
              GaugePressure.ofPsi(told.get(4)).absolute(around),
              Temperature.ofFahrenheit(60.0),
              Volume.ofLitres(0.0))
          .volume()
          .cubicFeet();
      assertThat(first(one.answer())).as(one.question()).isCloseTo(volume, within(0.06));
    });
  }

  @Test
  void a_page_holds_the_questions_then_the_key_and_loads_nothing() {
    String page = Variants.html(List.of(4, 8), 7L);
    assertThat(page)
        .contains("4a.", "8d.", "Key of sheet 7")
        .doesNotContain("http", "<script", "1a.");
    assertThat(page.indexOf("8d.")).isLessThan(page.indexOf("Key of sheet 7"));
    assertThat(Variants.html(List.of(4, 8), 7L)).isEqualTo(page);
    assertThat(Variants.html(List.of(4, 8), 8L)).isNotEqualTo(page);
  }

  @Test
  void a_page_sets_subscripts_as_subscripts() {
    String page = Variants.html(List.of(2, 6, 8), 1L);
    assertThat(page)
        .contains("E<sub>0</sub>", "p<sub>2</sub>² = p<sub>1</sub>²", "C<sub>d</sub>")
        .doesNotContainPattern("\\b[pTEL][0-5]\\b");
  }

  @Test
  void a_lesson_that_does_not_exist_is_refused() {
    assertThatIllegalArgumentException().isThrownBy(() -> Variants.of(14, 1L));
  }
}
