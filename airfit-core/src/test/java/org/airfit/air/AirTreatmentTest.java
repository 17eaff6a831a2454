package org.airfit.air;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.airfit.Rows;
import org.airfit.Rows.Row;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.Density;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.PressureDrop;
import org.airfit.quantity.Range;
import org.airfit.quantity.Temperature;
import org.airfit.safety.SafetyRules;
import org.airfit.working.UnitSystem;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

class AirTreatmentTest {

  private static final AbsolutePressure AROUND = AbsolutePressure.ofBar(1.0);

  private static TreatmentSupply supply(String flow, String mist, String vapour) {
    DewPoint damp = new DewPoint(Temperature.ofCelsius(24.0), AROUND);
    return new TreatmentSupply(
        AROUND,
        new DewPoint(Temperature.ofCelsius(0.0), AROUND),
        damp,
        new Range<>(Temperature.ofCelsius(10.0), Temperature.ofCelsius(35.0)),
        new Range<>(GaugePressure.ofBar(7.0), GaugePressure.ofBar(8.0)),
        Optional.empty(),
        Range.parse(flow, FreeAirFlow::parse),
        mist.isEmpty() ? Optional.empty() : Optional.of(Density.parse(mist)),
        vapour.isEmpty() ? Optional.empty() : Optional.of(Density.parse(vapour)));
  }

  private static TreatmentSupply usual() {
    return supply("60 to 100 L/s ANR", "5 mg/m3", "0.005 mg/m3");
  }

  private static Range<Temperature> air(double least, double most) {
    return new Range<>(Temperature.ofCelsius(least), Temperature.ofCelsius(most));
  }

  private static TreatmentRating rating(String flow, double inlet) {
    return new TreatmentRating(
        FreeAirFlow.parse(flow),
        GaugePressure.ofBar(5.0),
        Temperature.ofCelsius(inlet),
        Optional.of(Temperature.ofCelsius(40.0)),
        List.of(),
        List.of(),
        List.of());
  }

  private static TreatmentStage cooler(boolean isDrained) {
    return new TreatmentStage(
        "cooler",
        TreatmentKind.COOLER,
        air(20.0, 40.0),
        isDrained,
        Optional.empty(),
        Optional.empty());
  }

  private static TreatmentStage pipe(String name, double least, double most, boolean isDrained) {
    return new TreatmentStage(
        name, TreatmentKind.PIPE, air(least, most), isDrained, Optional.empty(), Optional.empty());
  }

  private static TreatmentStage dryer(
      TreatmentKind kind, String dewPoint, TreatmentRating rating, String particles) {
    return new TreatmentStage(
        "dryer",
        kind,
        air(20.0, 35.0),
        false,
        Optional.of(new TreatmentStage.Duty(
            rating,
            dewPoint.isEmpty() ? Optional.empty() : Optional.of(Temperature.parse(dewPoint)),
            particles.isEmpty() ? Optional.empty() : Optional.of(PurityClass.parse(particles)),
            Optional.empty(),
            Optional.empty())),
        Optional.of(new TreatmentStage.Loss(
            FreeAirFlow.parse("100 L/s ANR"),
            GaugePressure.ofBar(6.0),
            PressureDrop.ofBar(0.2),
            PressureDrop.ofBar(0.2))));
  }

  private static TreatmentStage dryer(String dewPoint) {
    return dryer(TreatmentKind.REFRIGERATED_DRYER, dewPoint, rating("120 L/s ANR", 45.0), "");
  }

  private static Optional<TreatmentStage.Retention> leaves(String leaves, String of) {
    return leaves.isEmpty()
        ? Optional.empty()
        : Optional.of(new TreatmentStage.Retention(Density.parse(leaves), Density.parse(of)));
  }

  private static TreatmentStage filter(
      String name, TreatmentKind kind, String flow, String particles, String mist, String vapour) {
    return new TreatmentStage(
        name,
        kind,
        air(20.0, 40.0),
        true,
        Optional.of(new TreatmentStage.Duty(
            rating(flow, 45.0),
            Optional.empty(),
            particles.isEmpty() ? Optional.empty() : Optional.of(PurityClass.parse(particles)),
            leaves(mist, "10 mg/m3"),
            leaves(vapour, "0.02 mg/m3"))),
        Optional.of(new TreatmentStage.Loss(
            FreeAirFlow.parse("100 L/s ANR"),
            GaugePressure.ofBar(7.0),
            PressureDrop.ofBar(0.1),
            PressureDrop.ofBar(0.4))));
  }

  private static TreatmentStage fine() {
    return filter(
        "fine filter", TreatmentKind.COALESCING_FILTER, "120 L/s ANR", "1", "0.01 mg/m3", "");
  }

  private static TreatmentStage carbon() {
    return filter("carbon", TreatmentKind.CARBON_FILTER, "120 L/s ANR", "", "", "0.002 mg/m3");
  }

  private static TreatmentStage dustFilter() {
    return filter("dust filter", TreatmentKind.PARTICLE_FILTER, "120 L/s ANR", "1", "", "");
  }

  private static PurityAnswer judged(
      TreatmentSupply supply, String asked, TreatmentStage... stages) {
    return new AirTreatment(supply, List.of(stages)).judge(AirPurity.parse(asked), UnitSystem.SI);
  }

  private static String why(PurityAnswer.Part part) {
    return String.join(" ", part.reasons());
  }

  static Stream<Row> published() {
    return Rows.of(AirTreatmentTest.class, "trains_published.csv");
  }

  /** What a public page says a train reaches is told too, if its filters are warranted so. */
  @ParameterizedTest
  @MethodSource("published")
  void trains_of_a_public_page_reach_its_classes(Row row) {
    AirPurity classes = AirPurity.parse(row.text("classes"));
    double dewPoint = row.number("dew_point_degF");
    boolean isDesiccant = dewPoint < 32.0;
    List<TreatmentStage> stages = new ArrayList<>();
    stages.add(cooler(true));
    if (isDesiccant) {
      stages.add(filter(
          "prefilter", TreatmentKind.COALESCING_FILTER, "120 L/s ANR", "2", "0.1 mg/m3", ""));
    }
    stages.add(dryer(
        isDesiccant ? TreatmentKind.DESICCANT_DRYER : TreatmentKind.REFRIGERATED_DRYER,
        dewPoint + " °F",
        rating("120 L/s ANR", 45.0),
        ""));
    stages.add(filter(
        "particle filter",
        TreatmentKind.PARTICLE_FILTER,
        "120 L/s ANR",
        classes.particles().toString(),
        "",
        ""));
    if (classes.oil().compareTo(PurityClass.CLASS_3) < 0) {
      stages.add(filter(
          "fine filter", TreatmentKind.COALESCING_FILTER, "120 L/s ANR", "1", "0.005 mg/m3", ""));
    }
    boolean hasCarbon = row.text("has_carbon").equals("yes");
    if (hasCarbon) {
      stages.add(carbon());
      stages.add(filter(
          "last filter",
          TreatmentKind.PARTICLE_FILTER,
          "120 L/s ANR",
          classes.particles().toString(),
          "",
          ""));
    }
    TreatmentSupply supply =
        supply("60 to 100 L/s ANR", "4 mg/m3", hasCarbon ? "0.02 mg/m3" : "0.05 mg/m3");
    PurityAnswer answer =
        judged(supply, row.text("classes"), stages.toArray(new TreatmentStage[0]));
    assertThat(answer.verdict()).as(answer.toString()).isEqualTo(PurityVerdict.REACHED);
    assertThat(answer.water().told()).hasValue(classes.water());
    AirPurity drier = new AirPurity(
        classes.particles(),
        PurityClass.parse(String.valueOf(Integer.parseInt(classes.water().toString()) - 1)),
        classes.oil());
    assertThat(judged(supply, drier.toString(), stages.toArray(new TreatmentStage[0]))
            .verdict())
        .isEqualTo(PurityVerdict.NOT_REACHED);
  }

  @Test
  void a_usual_train_reaches_its_class_with_reasons() {
    PurityAnswer answer = judged(usual(), "[1:4:2]", cooler(true), dryer("3 °C"), fine());
    assertThat(answer.verdict()).isEqualTo(PurityVerdict.REACHED);
    assertThat(answer.oil().told()).hasValue(PurityClass.CLASS_2);
    assertThat(why(answer.oil()))
        .contains("Oil mist left at most: 0.01 mg/m³.", "Oil vapour left at most: 0.005 mg/m³.");
    assertThat(why(answer.water())).contains("dew point at the end is at most 2.");
    assertThat(why(answer.particles())).contains("Behind fine filter its maker warrants class 1.");
  }

  @Test
  void oil_is_mist_and_vapour_together() {
    assertThat(judged(usual(), "[-:-:1]", cooler(true), fine()).oil().verdict())
        .as("0.01 of mist and 0.005 of vapour are above 0.01 mg/m³")
        .isEqualTo(PurityVerdict.NOT_REACHED);
    PurityAnswer notTold =
        judged(supply("60 to 100 L/s ANR", "5 mg/m3", ""), "[-:-:2]", cooler(true), fine());
    assertThat(notTold.oil().verdict()).isEqualTo(PurityVerdict.NOT_TOLD);
    assertThat(notTold.oil().told()).isEmpty();
    assertThat(why(notTold.oil())).contains("A coalescing filter takes none out");
    assertThat(judged(supply("60 to 100 L/s ANR", "5 mg/m3", ""), "[-:-:4]", cooler(true))
            .oil()
            .verdict())
        .as("5 mg/m³ of mist and whatever vapour: not told")
        .isEqualTo(PurityVerdict.NOT_TOLD);
    assertThat(judged(supply("60 to 100 L/s ANR", "5.1 mg/m3", ""), "[-:-:4]", cooler(true))
            .oil()
            .verdict())
        .as("the mist alone is above 5 mg/m³")
        .isEqualTo(PurityVerdict.NOT_REACHED);
  }

  @Test
  void a_filter_counts_only_for_what_it_was_tested_with() {
    PurityAnswer more = judged(
        supply("60 to 100 L/s ANR", "11 mg/m3", "0.001 mg/m3"), "[-:-:2]", cooler(true), fine());
    assertThat(more.oil().verdict())
        .as("what a filter leaves of more than it is tested with, nobody told")
        .isEqualTo(PurityVerdict.NOT_TOLD);
    assertThat(more.oil().told()).isEmpty();
    assertThat(why(more.oil()))
        .contains("11 mg/m³ of oil mist can come to fine filter", "of 10 mg/m³ at most");
    PurityAnswer unknown =
        judged(supply("60 to 100 L/s ANR", "", "0.001 mg/m3"), "[-:-:2]", cooler(true), fine());
    assertThat(unknown.oil().verdict()).isEqualTo(PurityVerdict.NOT_TOLD);
    assertThat(why(unknown.oil())).contains("Nobody told how much oil mist comes to fine filter");
  }

  @Test
  void a_carbon_filter_counts_only_behind_a_coalescing_filter() {
    PurityAnswer bare = judged(
        supply("60 to 100 L/s ANR", "0.004 mg/m3", "0.02 mg/m3"),
        "[-:-:1]",
        cooler(true),
        carbon());
    assertThat(bare.oil().verdict()).isEqualTo(PurityVerdict.NOT_REACHED);
    assertThat(why(bare.oil())).contains("Oil mist can reach the carbon of carbon");
    PurityAnswer oilFree = judged(
        supply("60 to 100 L/s ANR", "0 mg/m3", "0.02 mg/m3"), "[-:-:1]", cooler(true), carbon());
    assertThat(oilFree.oil().told()).hasValue(PurityClass.CLASS_1);
  }

  @Test
  void dust_of_desiccant_and_carbon_wants_a_filter_behind_it() {
    TreatmentStage desiccant =
        dryer(TreatmentKind.DESICCANT_DRYER, "-40 °C", rating("120 L/s ANR", 45.0), "");
    PurityAnswer dusty =
        judged(usual(), "[2:2:-]", cooler(true), fine(), desiccant, pipe("hall", 10.0, 30.0, true));
    assertThat(dusty.particles().verdict()).isEqualTo(PurityVerdict.NOT_TOLD);
    assertThat(why(dusty.particles())).contains("Dust may come out of dryer, a desiccant dryer");
    PurityAnswer clean = judged(
        usual(),
        "[2:2:-]",
        cooler(true),
        fine(),
        desiccant,
        dustFilter(),
        pipe("hall", 10.0, 30.0, true));
    assertThat(clean.verdict()).isEqualTo(PurityVerdict.REACHED);
    assertThat(why(clean.particles()))
        .contains("rust and scale of what follows it are not counted");
    assertThat(judged(usual(), "[2:-:-]", cooler(true)).particles().reasons())
        .containsExactly("No filter is told with a class of particles.");
  }

  @ParameterizedTest
  @CsvSource({"100.0 L/s ANR, REACHED", "99.9 L/s ANR, NOT_REACHED"})
  void a_dryer_beyond_its_flow_counts_for_nothing(String rated, PurityVerdict expected) {
    PurityAnswer answer = judged(
        usual(),
        "[-:4:-]",
        cooler(true),
        dryer(TreatmentKind.REFRIGERATED_DRYER, "3 °C", rating(rated, 45.0), ""));
    assertThat(answer.water().verdict()).isEqualTo(expected);
    if (expected == PurityVerdict.NOT_REACHED) {
      assertThat(why(answer.water())).contains("Overloaded: dryer.", "100.1 %", "99.9 L/s ANR");
    }
  }

  /** The cooler leaves up to 40 °C: a dryer that is told up to 39 °C is not told for this air. */
  @Test
  void outside_of_what_the_maker_tells_nothing_is_told() {
    PurityAnswer answer = judged(
        usual(),
        "[-:4:-]",
        cooler(true),
        dryer(TreatmentKind.REFRIGERATED_DRYER, "3 °C", rating("120 L/s ANR", 39.0), ""));
    assertThat(answer.water().verdict()).isEqualTo(PurityVerdict.NOT_TOLD);
    assertThat(answer.verdict()).isEqualTo(PurityVerdict.NOT_TOLD);
    assertThat(why(answer.water())).contains("inlet temperature 40 °C, told up to 39 °C");
    PurityAnswer silent = judged(usual(), "[-:4:-]", cooler(true), dryer(""));
    assertThat(silent.water().verdict()).isEqualTo(PurityVerdict.NOT_TOLD);
    assertThat(why(silent.water())).contains("No pressure dew point is told of dryer.");
  }

  /** At change-out the filter in front takes 0.4 bar: 6.6 bar are left, and the dryer is rated from 6.7 bar on. */
  @Test
  void the_pressure_is_that_with_all_elements_at_change_out() {
    TreatmentRating tight = new TreatmentRating(
        FreeAirFlow.parse("120 L/s ANR"),
        GaugePressure.ofBar(6.7),
        Temperature.ofCelsius(45.0),
        Optional.of(Temperature.ofCelsius(40.0)),
        List.of(),
        List.of(),
        List.of());
    AirTreatment train = new AirTreatment(
        usual(),
        List.of(cooler(true), fine(), dryer(TreatmentKind.REFRIGERATED_DRYER, "3 °C", tight, "")));
    assertThat(train.along().get(2).inlet().least().bar()).isCloseTo(6.6, within(1.0e-9));
    PurityAnswer answer = train.judge(AirPurity.parse("[-:4:-]"), UnitSystem.SI);
    assertThat(answer.water().verdict()).isEqualTo(PurityVerdict.NOT_TOLD);
    assertThat(why(answer.water())).contains("inlet pressure 6.6 bar(g), told down to 6.7 bar(g)");
    assertThat(train.changeOutLoss().bar()).isCloseTo(0.4 + 0.2, within(1.0e-9));
    assertThat(train.cleanLoss().most().bar())
        .isCloseTo(0.1 * 8.0 / 8.0 + 0.2 * 7.0 / 7.6, within(1.0e-9));
    assertThat(train.along().get(2).hottest().orElseThrow().celsius())
        .isCloseTo(40.0, within(1.0e-9));
  }

  @Test
  void liquid_that_reaches_a_dryer_makes_it_count_for_nothing() {
    PurityAnswer answer = judged(usual(), "[-:4:-]", cooler(false), dryer("3 °C"));
    assertThat(answer.water().verdict()).isEqualTo(PurityVerdict.NOT_REACHED);
    assertThat(why(answer.water()))
        .contains("Liquid water can reach dryer from cooler, which is not told to be drained");
  }

  @Test
  void a_pipe_colder_than_the_dew_point_brings_liquid_to_the_end() {
    PurityAnswer wet =
        judged(usual(), "[-:4:-]", cooler(true), dryer("3 °C"), pipe("yard", -10.0, 20.0, false));
    assertThat(wet.water().verdict()).isEqualTo(PurityVerdict.NOT_REACHED);
    assertThat(wet.water().told()).hasValue(PurityClass.CLASS_8);
    assertThat(why(wet.water())).contains("Liquid water can arrive at the end, behind yard");
    PurityAnswer drained =
        judged(usual(), "[-:4:-]", cooler(true), dryer("3 °C"), pipe("yard", -10.0, 20.0, true));
    assertThat(drained.water().verdict())
        .as("no drain takes ice out")
        .isEqualTo(PurityVerdict.NOT_REACHED);
    assertThat(why(drained.water())).contains("Water can freeze in yard", "as cold as -10 °C");
    assertThat(
            judged(usual(), "[-:4:-]", cooler(true), dryer("3 °C"), pipe("cellar", 1.0, 20.0, true))
                .water()
                .verdict())
        .isEqualTo(PurityVerdict.REACHED);
  }

  /** By the ideal rule a dew point of 3 °C at about 4 bar(g) is higher at 7 bar(g): class 4 there, 5 or worse here. */
  @Test
  void where_public_texts_state_the_dew_point_at_another_pressure_both_are_told() {
    TreatmentSupply low = new TreatmentSupply(
        AROUND,
        new DewPoint(Temperature.ofCelsius(0.0), AROUND),
        new DewPoint(Temperature.ofCelsius(20.0), AROUND),
        air(10.0, 35.0),
        new Range<>(GaugePressure.ofBar(4.0), GaugePressure.ofBar(4.0)),
        Optional.empty(),
        Range.parse("60 L/s ANR", FreeAirFlow::parse),
        Optional.empty(),
        Optional.empty());
    TreatmentRating rating = new TreatmentRating(
        FreeAirFlow.parse("120 L/s ANR"),
        GaugePressure.ofBar(3.0),
        Temperature.ofCelsius(45.0),
        Optional.of(Temperature.ofCelsius(40.0)),
        List.of(),
        List.of(),
        List.of());
    PurityAnswer answer = judged(
        low, "[-:4:-]", cooler(true), dryer(TreatmentKind.REFRIGERATED_DRYER, "3 °C", rating, ""));
    assertThat(answer.water().verdict()).isEqualTo(PurityVerdict.REACHED);
    assertThat(why(answer.water()))
        .contains("One public text states the dew point at 7 bar", "Agree on the pressure.");
  }

  /** A dew point of 3 °C: water and ice gather in a cold yard and go on when it thaws, though the shop is warm. */
  @Test
  void water_that_stands_in_the_line_in_front_of_a_warm_end_is_not_dry_air() {
    TreatmentStage shop = pipe("shop", 18.0, 30.0, false);
    PurityAnswer frozen = judged(
        usual(), "[-:4:-]", cooler(true), dryer("3 °C"), pipe("yard", -15.0, 30.0, false), shop);
    assertThat(frozen.water().verdict()).isEqualTo(PurityVerdict.NOT_REACHED);
    assertThat(frozen.water().reasons().get(0)).contains("Water can freeze in yard");
    PurityAnswer stands = judged(
        usual(), "[-:4:-]", cooler(true), dryer("3 °C"), pipe("cellar", 1.0, 30.0, false), shop);
    assertThat(stands.water().verdict()).isEqualTo(PurityVerdict.NOT_REACHED);
    assertThat(stands.water().reasons().get(0))
        .contains("Water can stand in cellar, which is not told to be drained");
    assertThat(judged(
                usual(),
                "[-:8:-]",
                cooler(true),
                dryer("3 °C"),
                pipe("yard", -15.0, 30.0, false),
                shop)
            .water()
            .verdict())
        .as("how much liquid comes when it thaws, nobody told")
        .isEqualTo(PurityVerdict.NOT_TOLD);
    TreatmentStage desiccant =
        dryer(TreatmentKind.DESICCANT_DRYER, "-40 °C", rating("120 L/s ANR", 45.0), "");
    assertThat(judged(
                usual(),
                "[-:2:-]",
                cooler(true),
                fine(),
                pipe("yard", -15.0, 38.0, true),
                desiccant)
            .water()
            .verdict())
        .as("ice in front of a desiccant dryer")
        .isEqualTo(PurityVerdict.NOT_REACHED);
    assertThat(judged(
                usual(),
                "[-:2:-]",
                cooler(true),
                fine(),
                desiccant,
                pipe("yard", -15.0, 38.0, false))
            .water()
            .verdict())
        .isEqualTo(PurityVerdict.REACHED);
  }

  private static TreatmentSupply discharging(double least, double most) {
    TreatmentSupply usual = usual();
    return new TreatmentSupply(
        usual.atmosphere(),
        usual.driest(),
        usual.dampest(),
        usual.room(),
        usual.pressure(),
        Optional.of(air(least, most)),
        usual.flow(),
        usual.mist(),
        usual.vapour());
  }

  @Test
  void how_hot_the_air_comes_to_the_first_stage_has_to_be_told() {
    PurityAnswer untold = judged(usual(), "[-:4:-]", dryer("3 °C"));
    assertThat(untold.water().verdict()).isEqualTo(PurityVerdict.NOT_TOLD);
    assertThat(untold.water().reasons().get(0))
        .contains("Nobody told how hot the air comes from the compressor to dryer", "discharge");
    PurityAnswer hot = judged(discharging(75.0, 90.0), "[-:4:-]", dryer("3 °C"));
    assertThat(hot.water().verdict()).isEqualTo(PurityVerdict.NOT_TOLD);
    assertThat(why(hot.water())).contains("inlet temperature 90 °C, told up to 45 °C");
    TreatmentStage made =
        dryer(TreatmentKind.REFRIGERATED_DRYER, "3 °C", rating("120 L/s ANR", 90.0), "");
    assertThat(judged(discharging(75.0, 90.0), "[-:4:-]", made).water().verdict())
        .isEqualTo(PurityVerdict.REACHED);
    PurityAnswer wet = judged(discharging(30.0, 40.0), "[-:4:-]", made);
    assertThat(wet.water().verdict()).isEqualTo(PurityVerdict.NOT_REACHED);
    assertThat(why(wet.water()))
        .as("24 °C of dew point at 1 bar are about 67 °C at 9 bar")
        .contains("Liquid water can reach dryer from the compressor");
    assertThat(judged(usual(), "[1:-:-]", fine()).particles().verdict())
        .isEqualTo(PurityVerdict.NOT_TOLD);
    assertThatIllegalArgumentException()
        .isThrownBy(() -> discharging(75.0, 301.0))
        .withMessageContaining("[-100, 300] °C");
  }

  private static TreatmentStage undrained(TreatmentStage stage) {
    return new TreatmentStage(
        stage.name(), stage.kind(), stage.air(), false, stage.duty(), stage.loss());
  }

  @Test
  void a_coalescing_filter_without_a_drain_does_not_count() {
    PurityAnswer wet = judged(usual(), "[1:-:2]", cooler(true), undrained(fine()));
    assertThat(wet.oil().verdict()).isEqualTo(PurityVerdict.NOT_REACHED);
    assertThat(wet.particles().verdict()).isEqualTo(PurityVerdict.NOT_REACHED);
    assertThat(why(wet.oil())).contains("Water can gather in fine filter");
    PurityAnswer dry = judged(usual(), "[1:-:2]", cooler(true), dryer("3 °C"), undrained(fine()));
    assertThat(dry.oil().verdict()).isEqualTo(PurityVerdict.NOT_TOLD);
    assertThat(dry.particles().verdict()).isEqualTo(PurityVerdict.NOT_TOLD);
    assertThat(why(dry.oil())).contains("fine filter gathers oil, and no drain is told");
    PurityAnswer flooded = judged(usual(), "[1:-:2]", cooler(false), fine());
    assertThat(flooded.oil().verdict()).isEqualTo(PurityVerdict.NOT_TOLD);
    assertThat(why(flooded.oil()))
        .contains("Liquid water can reach fine filter from cooler", "drain that first");
  }

  @Test
  void oil_mist_spoils_a_desiccant_and_a_membrane() {
    for (TreatmentKind kind :
        List.of(TreatmentKind.DESICCANT_DRYER, TreatmentKind.MEMBRANE_DRYER)) {
      TreatmentStage dryer = dryer(kind, "-40 °C", rating("120 L/s ANR", 45.0), "");
      PurityAnswer oily = judged(usual(), "[-:2:-]", cooler(true), dryer, fine());
      assertThat(oily.water().verdict()).isEqualTo(PurityVerdict.NOT_REACHED);
      assertThat(oily.water().reasons().get(0)).contains("Oil mist can reach the");
      assertThat(why(oily.oil())).contains("from dryer, a dryer that does not count here");
      assertThat(judged(usual(), "[-:2:-]", cooler(true), fine(), dryer).water().verdict())
          .isEqualTo(PurityVerdict.REACHED);
      TreatmentSupply untold = supply("60 to 100 L/s ANR", "", "");
      PurityAnswer silent = judged(untold, "[-:2:-]", cooler(true), fine(), dryer);
      assertThat(silent.water().verdict()).isEqualTo(PurityVerdict.NOT_TOLD);
      assertThat(why(silent.water())).contains("Nobody told how much oil mist comes to the");
      TreatmentSupply more = supply("60 to 100 L/s ANR", "11 mg/m3", "");
      assertThat(judged(more, "[-:2:-]", cooler(true), fine(), dryer).water().verdict())
          .as("more than the filter is tested with")
          .isEqualTo(PurityVerdict.NOT_TOLD);
      TreatmentSupply none = supply("60 to 100 L/s ANR", "0 mg/m3", "");
      assertThat(judged(none, "[-:2:-]", cooler(true), dryer).water().verdict())
          .isEqualTo(PurityVerdict.REACHED);
    }
  }

  @Test
  void a_refrigerated_dryer_has_to_be_rated_for_a_room() {
    TreatmentRating silent = new TreatmentRating(
        FreeAirFlow.parse("120 L/s ANR"),
        GaugePressure.ofBar(5.0),
        Temperature.ofCelsius(45.0),
        Optional.empty(),
        List.of(),
        List.of(),
        List.of());
    PurityAnswer answer = judged(
        usual(),
        "[-:4:-]",
        cooler(true),
        dryer(TreatmentKind.REFRIGERATED_DRYER, "3 °C", silent, ""));
    assertThat(answer.water().verdict()).isEqualTo(PurityVerdict.NOT_TOLD);
    assertThat(why(answer.water())).contains("Tell the room that it is rated at");
    assertThat(judged(
                usual(),
                "[-:2:-]",
                cooler(true),
                fine(),
                dryer(TreatmentKind.DESICCANT_DRYER, "-40 °C", silent, ""))
            .water()
            .verdict())
        .isEqualTo(PurityVerdict.REACHED);
  }

  @ParameterizedTest
  @CsvSource({"-70 °C, 1", "-40 °C, 2", "-20 °C, 3", "-4 °F, 3"})
  void a_dew_point_at_a_limit_has_the_class_beside_it(String dewPoint, String expected) {
    PurityAnswer answer = judged(
        usual(),
        "[-:" + expected + ":-]",
        cooler(true),
        fine(),
        dryer(TreatmentKind.DESICCANT_DRYER, dewPoint, rating("120 L/s ANR", 45.0), ""));
    assertThat(answer.water().told()).hasValue(PurityClass.parse(expected));
    assertThat(answer.verdict()).isEqualTo(PurityVerdict.REACHED);
  }

  @Test
  void drains_in_a_room_below_freezing_are_not_told_to_work() {
    TreatmentSupply usual = usual();
    TreatmentSupply cold = new TreatmentSupply(
        usual.atmosphere(),
        usual.driest(),
        usual.dampest(),
        air(-20.0, 35.0),
        usual.pressure(),
        usual.discharge(),
        usual.flow(),
        usual.mist(),
        usual.vapour());
    PurityAnswer answer = judged(cold, "[1:4:2]", cooler(true), dryer("3 °C"), fine());
    assertThat(answer.water().verdict()).isEqualTo(PurityVerdict.NOT_TOLD);
    assertThat(answer.oil().verdict()).isEqualTo(PurityVerdict.NOT_TOLD);
    assertThat(answer.water().reasons().get(0))
        .contains("The room gets as cold as -20 °C", "at cooler may freeze");
  }

  /** What a maker has not told is no proof that the air is worse. */
  @Test
  void oil_behind_a_filter_outside_of_its_rating_is_not_told() {
    TreatmentStage cool = new TreatmentStage(
        "fine filter",
        TreatmentKind.COALESCING_FILTER,
        air(20.0, 40.0),
        true,
        Optional.of(new TreatmentStage.Duty(
            rating("120 L/s ANR", 30.0),
            Optional.empty(),
            Optional.of(PurityClass.CLASS_1),
            leaves("0.01 mg/m3", "10 mg/m3"),
            Optional.empty())),
        Optional.empty());
    PurityAnswer answer = judged(usual(), "[1:-:2]", cooler(true), cool);
    assertThat(answer.oil().verdict()).isEqualTo(PurityVerdict.NOT_TOLD);
    assertThat(answer.oil().told()).isEmpty();
    assertThat(answer.oil().reasons().get(0)).contains("told up to 30 °C");
    TreatmentSupply vapour = supply("60 to 100 L/s ANR", "5 mg/m3", "0.2 mg/m3");
    assertThat(judged(vapour, "[-:-:2]", cooler(true), cool).oil().verdict())
        .as("the vapour alone is above 0.1 mg/m³")
        .isEqualTo(PurityVerdict.NOT_REACHED);
    TreatmentStage later = filter(
        "last filter", TreatmentKind.COALESCING_FILTER, "120 L/s ANR", "1", "0.01 mg/m3", "");
    assertThat(judged(usual(), "[-:-:2]", cooler(true), cool, later).oil().verdict())
        .isEqualTo(PurityVerdict.REACHED);
  }

  @Test
  void a_coarser_filter_behind_a_finer_one_makes_the_class_not_told() {
    TreatmentStage coarse =
        filter("coarse filter", TreatmentKind.PARTICLE_FILTER, "120 L/s ANR", "4", "", "");
    PurityAnswer answer = judged(usual(), "[2:-:-]", cooler(true), fine(), coarse);
    assertThat(answer.particles().verdict()).isEqualTo(PurityVerdict.NOT_TOLD);
    assertThat(answer.particles().reasons().get(0))
        .contains("Behind fine filter its maker warrants class 1", "put the finer filter last");
    assertThat(
            judged(usual(), "[4:-:-]", cooler(true), fine(), coarse).particles().verdict())
        .isEqualTo(PurityVerdict.REACHED);
    assertThat(judged(usual(), "[2:-:-]", cooler(true), coarse).particles().verdict())
        .isEqualTo(PurityVerdict.NOT_REACHED);
  }

  /** A customer reads the first reason alone. */
  @Test
  void what_decides_stands_first_among_the_reasons() {
    TreatmentStage desiccant =
        dryer(TreatmentKind.DESICCANT_DRYER, "-40 °C", rating("120 L/s ANR", 45.0), "");
    assertThat(judged(usual(), "[2:-:-]", cooler(true), fine(), desiccant)
            .particles()
            .reasons()
            .get(0))
        .contains("Dust may come out of dryer");
    assertThat(judged(supply("60 to 100 L/s ANR", "0 mg/m3", ""), "[-:-:1]", cooler(true), fine())
            .oil()
            .reasons()
            .get(0))
        .contains("Nobody told how much oil vapour is left");
    assertThat(judged(usual(), "[0:-:-]", cooler(true), fine())
            .particles()
            .reasons()
            .get(0))
        .contains("Class 0 is what user and supplier agreed");
  }

  @Test
  void what_may_rust_behind_the_last_filter_is_named() {
    AirTreatment rusty = new AirTreatment(
        usual(), List.of(cooler(true), fine(), pipe("old pipe", 10.0, 35.0, true)));
    assertThat(rusty.lastBeforeRust()).hasValue(fine());
    assertThat(new AirTreatment(usual(), List.of(cooler(true), fine())).lastBeforeRust())
        .isEmpty();
    assertThat(new AirTreatment(usual(), List.of(cooler(true))).lastBeforeRust())
        .isEmpty();
  }

  @Test
  void dryers_that_do_not_count_are_told() {
    AirTreatment silent = new AirTreatment(usual(), List.of(cooler(true), dryer(""), fine()));
    assertThat(silent.idleDryers(UnitSystem.SI))
        .containsExactly("No pressure dew point is told of dryer.");
    assertThat(silent.water().most().get(1).need()).isEqualTo(DrainNeed.FITTED);
    assertThat(silent.judge(AirPurity.parse("[-:-:2]"), UnitSystem.SI).oil().verdict())
        .as("a refrigerated dryer has a drain, however far it dries")
        .isEqualTo(PurityVerdict.REACHED);
    assertThat(new AirTreatment(usual(), List.of(cooler(false), dryer("3 °C")))
            .idleDryers(UnitSystem.SI))
        .singleElement()
        .asString()
        .contains("Liquid water can reach dryer from cooler");
    assertThat(new AirTreatment(usual(), List.of(cooler(true), dryer("3 °C")))
            .idleDryers(UnitSystem.SI))
        .isEmpty();
  }

  @Test
  void damp_air_to_carbon_is_told() {
    TreatmentSupply oilFree = supply("60 to 100 L/s ANR", "0 mg/m3", "0.02 mg/m3");
    assertThat(why(judged(oilFree, "[-:-:1]", cooler(true), carbon()).oil()))
        .contains("damp carbon takes up less vapour");
    assertThat(why(
            judged(oilFree, "[-:-:1]", cooler(true), dryer("3 °C"), carbon()).oil()))
        .doesNotContain("damp");
  }

  @Test
  void class_0_is_reached_by_none_and_what_is_not_asked_by_all() {
    PurityAnswer answer = judged(usual(), "[0:-:0]", cooler(true), dryer("3 °C"), fine());
    assertThat(answer.particles().verdict()).isEqualTo(PurityVerdict.NOT_TOLD);
    assertThat(why(answer.particles())).contains("Class 0 is what user and supplier agreed");
    assertThat(answer.oil().verdict()).isEqualTo(PurityVerdict.NOT_TOLD);
    assertThat(answer.water().verdict()).isEqualTo(PurityVerdict.REACHED);
    assertThat(PurityVerdict.NOT_TOLD.label()).isEqualTo("not told");
  }

  @Test
  void doors_refuse_what_cannot_be() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new AirTreatment(usual(), List.of()))
        .withMessageContaining("[1, 20]");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new AirTreatment(usual(), List.of(fine(), fine())))
        .withMessageContaining("a name each");
    TreatmentStage throttle = new TreatmentStage(
        "choke",
        TreatmentKind.PIPE,
        air(10.0, 20.0),
        true,
        Optional.empty(),
        Optional.of(new TreatmentStage.Loss(
            FreeAirFlow.parse("1 L/s ANR"),
            GaugePressure.ofBar(7.0),
            PressureDrop.ofBar(1.0),
            PressureDrop.ofBar(1.0))));
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new AirTreatment(usual(), List.of(throttle)))
        .withMessageContaining("pressure behind choke must be above the atmosphere");
    assertThatIllegalArgumentException()
        .isThrownBy(
            () -> filter("f", TreatmentKind.PARTICLE_FILTER, "1 L/s ANR", "1", "", "0.001 mg/m3"))
        .withMessageContaining("carbon filter alone");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> filter("f", TreatmentKind.PARTICLE_FILTER, "1 L/s ANR", "X", "", ""))
        .withMessageContaining("must be 1 to 7");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> filter("f", TreatmentKind.PIPE, "1 L/s ANR", "1", "", ""))
        .withMessageContaining("a filter or a dryer");
    assertThatIllegalArgumentException()
        .isThrownBy(
            () -> dryer(TreatmentKind.PARTICLE_FILTER, "3 °C", rating("1 L/s ANR", 45.0), ""))
        .withMessageContaining("must belong to a dryer");
    assertThatIllegalArgumentException()
        .isThrownBy(
            () -> filter("f", TreatmentKind.PARTICLE_FILTER, "1 L/s ANR", "1", "0.01 mg/m3", ""))
        .withMessageContaining("coalescing filter alone");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> dryer("-40 °C"))
        .withMessageContaining("at least 0 °C")
        .withMessageContaining("was -40.0 °C");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> leaves("11 mg/m3", "10 mg/m3"))
        .withMessageContaining("tested with");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> pipe("pipe", -10.0, 101.0, true))
        .withMessageContaining("[-100, 100] °C");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> supply("0 L/s ANR", "", ""))
        .withMessageContaining("must be above 0");
    assertThat(new AirTreatment(usual(), List.of(fine())).cautions())
        .extracting(caution -> caution.title())
        .contains("Not for breathing air")
        .endsWith(SafetyRules.usFederal().deference().title());
  }
}
