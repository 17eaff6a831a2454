package org.airfit.flow;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.assertj.core.api.Assertions.assertThatNullPointerException;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Locale;
import org.airfit.Rows;
import org.airfit.air.AirState;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.Area;
import org.airfit.quantity.DecimalMark;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.PressureDrop;
import org.airfit.quantity.QuantityFormatException;
import org.airfit.quantity.ReferenceState;
import org.airfit.quantity.SonicConductance;
import org.airfit.quantity.Temperature;
import org.airfit.quantity.ValveCoefficient;
import org.airfit.source.Basis;
import org.airfit.source.Source;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class RatingTest {

  private static final Temperature SHOP = Temperature.ofCelsius(20.0);
  private static final AbsolutePressure ATMOSPHERE = AbsolutePressure.STANDARD_ATMOSPHERE;
  private static final String GAUGE = "gauge pressures of the rating counted from 1.01325 bar(a)";
  private static final String WARM = "air of the rating taken as 20 °C";
  private static final String ANY_B = "b not told: from 0 to 0.528, that of a loss-free nozzle";

  private static CapacityRange capacity(String text) {
    return Rating.parse(text).capacity();
  }

  private static List<String> assumed(String text) {
    return Rating.parse(text).assumptions().stream().map(Source::citation).toList();
  }

  private static FlowCapacity part(double c, double b) {
    return FlowCapacity.of(SonicConductance.ofCubicDecimetresPerSecondBar(c), b);
  }

  private static double c(FlowCapacity part) {
    return part.conductance().cubicDecimetresPerSecondBar();
  }

  private static void areAlike(CapacityRange one, CapacityRange other) {
    assertThat(c(one.least())).isCloseTo(c(other.least()), within(1.0e-12 * c(other.least())));
    assertThat(c(one.most())).isCloseTo(c(other.most()), within(1.0e-12 * c(other.most())));
    assertThat(one.least().criticalPressureRatio())
        .isCloseTo(other.least().criticalPressureRatio(), within(1.0e-12));
    assertThat(one.most().criticalPressureRatio())
        .isCloseTo(other.most().criticalPressureRatio(), within(1.0e-12));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "Cv 1.4",
        "CV = 1.4",
        "Cv: 1.4",
        "1.4 Cv",
        "cv1.4",
        "flow coefficient Cv 1.4",
        " C_v 1.4 "
      })
  void a_cv_is_read_however_it_is_written(String text) {
    Rating rating = Rating.parse(text);
    assertThat(rating.kind()).isEqualTo(RatingKind.COEFFICIENT);
    areAlike(rating.capacity(), CapacityRange.ofValveCoefficient(ValveCoefficient.ofCv(1.4)));
    assertThat(assumed(text)).containsExactly("xT not told: from 0.2, that of a ball valve, to 1");
  }

  @ParameterizedTest
  @ValueSource(strings = {"Kv 1.2", "1.2 Kv", "kvs 1.2", "Kv 1.2 m3/h", "Kv = 20 L/min", "K_v 1.2"})
  void a_kv_is_read_however_it_is_written(String text) {
    areAlike(capacity(text), CapacityRange.ofValveCoefficient(ValveCoefficient.ofKv(1.2)));
  }

  @Test
  void a_coefficient_with_its_factor_leaves_nothing_open() {
    Rating rating = Rating.parse("Cv 1.4, xT 0.7");
    assertThat(rating.capacity())
        .isEqualTo(CapacityRange.exactly(
            FlowCapacity.ofValveCoefficient(ValveCoefficient.ofCv(1.4), 0.7)));
    assertThat(rating.assumptions()).isEmpty();
    assertThat(rating.residual()).isEmpty();
    assertThat(Rating.parse("Kv 1.2 xT 0.7").capacity().isExact()).isTrue();
  }

  /** Textbook examples, whose valves no factor is told of, lie in the range of their coefficient. */
  @Test
  void the_examples_of_textbooks_lie_in_the_range() {
    AirState eighty = AirState.of(
        GaugePressure.ofPsi(80.0).absolute(AbsolutePressure.ofPsi(14.7)),
        Temperature.ofFahrenheit(80.0));
    CapacityRange large = capacity("Cv 7.4");
    // Esposito, Fluid Power with Applications, ex. 13-10: at most 341 scfm
    double choked = FreeAirFlow.ofScfm60F(341.0).massFlow().kilogramsPerSecond();
    assertThat(choked)
        .isBetween(
            large.least().chokedFlow(eighty).kilogramsPerSecond(),
            large.most().chokedFlow(eighty).kilogramsPerSecond());
    // Sullivan, Fluid Power Theory and Applications, ex. 16.5: 35 cfm from 90 to 80 psig by Cv 1.14
    CapacityRange small = capacity("Cv 1.14");
    AirState ninety = AirState.of(AbsolutePressure.ofPsi(104.7), Temperature.ofFahrenheit(80.0));
    AbsolutePressure behind = AbsolutePressure.ofPsi(94.7);
    assertThat(FreeAirFlow.ofScfm60F(35.0).massFlow().kilogramsPerSecond())
        .isBetween(
            small.least().flow(ninety, behind).massFlow().kilogramsPerSecond(),
            small.most().flow(ninety, behind).massFlow().kilogramsPerSecond());
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "40 scfm at 100 psig, 5 psi drop",
        "40 SCFM @ 100 PSIG, 5 PSI DROP",
        "40 scfm at 100 psig with a 5 psi pressure drop",
        "40 scfm at 100 psig and 5 psi drop",
        "40 scfm, 100 psig inlet, 5 psi drop",
        "40 scfm at 100 psig inlet pressure, pressure drop of 5 psi",
        "40 scfm 5 psi drop at 100 psig",
        "40 scfm at 100 psig, Δp 5 psi",
        "40 scfm at 100 psig, Δp = 5 psi",
        "40 scfm at 100 psig, 5 psid",
        "40 scfm at 100 psig, 5 psi diff",
        "40 scfm at 100 psig, pressure loss: 5 psi",
        "nominal flow 40 scfm, p1 100 psig, dp 5 psi",
        "40 scfm from 100 psig to 95 psig",
        "40 scfm, inlet 100 psig, outlet 95 psig",
        "40 scfm (60 °F) at 100 psig, 5 psi drop",
        "40 scfm @ 60 °F, 100 psig inlet, 5 psi drop",
        "40 cfm @60F at 100 psig, 5 psi drop"
      })
  void a_trade_rating_is_read_however_it_is_written(String text) {
    Rating rating = Rating.parse(text);
    assertThat(rating.kind()).isEqualTo(RatingKind.RATED_FLOW);
    areAlike(
        rating.capacity(),
        CapacityRange.ofRatedFlow(
            FreeAirFlow.ofScfm60F(40.0),
            GaugePressure.ofPsi(100.0).absolute(ATMOSPHERE),
            PressureDrop.ofPsi(5.0),
            SHOP));
    assertThat(assumed(text)).containsExactly(GAUGE, WARM, ANY_B);
    assertThat(rating.capacity().assumption())
        .isEqualTo(Source.commonPractice(GAUGE + "; " + WARM + "; " + ANY_B));
  }

  @Test
  void what_is_told_is_not_assumed() {
    assertThat(assumed("40 scfm at 114.7 psia, 5 psi drop, 68 °F, b 0.3")).isEmpty();
    assertThat(capacity("40 scfm at 114.7 psia, 5 psi drop, 68 °F, b 0.3"))
        .isEqualTo(CapacityRange.exactly(FlowCapacity.ofRatedFlow(
            FreeAirFlow.ofScfm60F(40.0),
            AbsolutePressure.ofPsi(114.7),
            PressureDrop.ofPsi(5.0),
            Temperature.ofFahrenheit(68.0),
            0.3)));
    assertThat(assumed("40 scfm from 114.7 psia to 109.7 psia")).containsExactly(WARM, ANY_B);
    assertThat(assumed("40 scfm from 114.7 psia to 95 psig")).containsExactly(GAUGE, WARM, ANY_B);
    assertThat(assumed("16 L/s ANR at 7 bar(a), 0.3 bar drop, 20 °C")).containsExactly(ANY_B);
  }

  /** Rows computed by another program: from the flow, both pressures and b comes the C they were computed with. */
  @Test
  void the_flows_of_reference_cases_tell_their_c() {
    Rows.of(RatingTest.class, "iso6358.csv")
        .filter(row -> row.number("m") == 0.5 && row.number("dp_cracking_bar") == 0.0)
        .filter(row -> row.number("q_anr_l_min") > 0.0)
        .forEach(row -> {
          String text = row.text("q_anr_l_min") + " L/min ANR from " + row.text("p1_bar_abs")
              + " bar(a) to " + row.text("p2_bar_abs") + " bar(a), " + row.text("t1_k") + " K, b "
              + row.text("b");
          CapacityRange range = capacity(text);
          assertThat(range.isExact()).as(text).isTrue();
          // next to p2 = p1 the last digit printed of p2 decides
          double near = 1.0 - row.number("p2_over_p1");
          assertThat(c(range.least()))
              .as(text)
              .isCloseTo(row.number("c_dm3_s_bar_anr"), within(1.0e-12 + 1.0e-14 / near));
        });
  }

  @Test
  void a_state_of_ones_own_belongs_to_the_flow() {
    areAlike(
        capacity("16 L/s at shop (15 °C, 100 kPa(a), dry) at 7 bar(a), drop 0.5 bar"),
        CapacityRange.ofRatedFlow(
            FreeAirFlow.parse("16 L/s at shop (15 °C, 100 kPa(a), dry)"),
            AbsolutePressure.ofBar(7.0),
            PressureDrop.ofBar(0.5),
            SHOP));
  }

  @Test
  void a_flow_that_does_not_tell_its_state_has_every_usual_reading() {
    String text = "40 cfm at 100 psig, 5 psi drop, b 0.3";
    assertThat(c(capacity(text).most()))
        .isCloseTo(c(capacity("40 scfm at 100 psig, 5 psi drop, b 0.3").most()), within(1.0e-12));
    assertThat(c(capacity(text).least()))
        .isCloseTo(
            c(capacity("40 cfm ANR at 100 psig, 5 psi drop, b 0.3").least()), within(1.0e-12));
    assertThat(assumed(text))
        .containsExactly(
            GAUGE,
            "flow does not tell where the air is counted: read as standard cubic feet at 60 °F or"
                + " standard cubic feet at 68 °F or ISO 8778 (ANR)",
            WARM);
    assertThat(c(capacity("400 l/min at 6 bar(g), 1 bar drop, b 0.3").most()))
        .isCloseTo(
            c(capacity("400 l/min DIN 1343 at 6 bar(g), 1 bar drop, b 0.3").most()),
            within(1.0e-12));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "40 scfm full flow at 90 psig",
        "40 scfm at 90 psig free discharge",
        "free flow 40 scfm at 90 psig",
        "40 scfm, wide open, 90 psig inlet",
        "40 scfm to atmosphere from 90 psig"
      })
  void full_flow_goes_into_the_open(String text) {
    Rating rating = Rating.parse(text);
    assertThat(rating.kind()).isEqualTo(RatingKind.FULL_FLOW);
    areAlike(
        rating.capacity(),
        CapacityRange.ofRatedFlow(
            FreeAirFlow.ofScfm60F(40.0),
            GaugePressure.ofPsi(90.0).absolute(ATMOSPHERE),
            PressureDrop.ofPsi(90.0),
            SHOP));
    assertThat(assumed(text)).containsExactly(GAUGE, WARM, ANY_B);
  }

  /** By hand: 40 scfm are 1.2236 kg/m³ × 0.018878 m³/s; choked at 7.2186 bar(a): 0.023100/(1.185 × 721 860). */
  @Test
  void a_full_flow_that_chokes_tells_c_whatever_the_little_that_b_leaves() {
    CapacityRange range = capacity("40 scfm full flow at 90 psig, b 0.3");
    assertThat(c(range.least())).isCloseTo(2.700, within(0.003));
    assertThat(c(capacity("40 scfm full flow at 90 psig").most()) / c(range.least()))
        .as("b = 0 passes √(1 − (1.01325/7.2185)²) of its choked flow")
        .isCloseTo(1.0 / Math.sqrt(1.0 - 0.14037 * 0.14037), within(1.0e-5));
  }

  @Test
  void a_flow_whose_drop_is_not_told_is_a_wide_range() {
    Rating alone = Rating.parse("40 scfm");
    assertThat(alone.kind()).isEqualTo(RatingKind.BARE_FLOW);
    areAlike(alone.capacity(), CapacityRange.ofRatedFlow(FreeAirFlow.ofScfm60F(40.0)));
    assertThat(assumed("40 scfm"))
        .containsExactly(WARM, "inlet taken as 100 psig, drop from 5 psi to all of it; " + ANY_B);
    assertThat(assumed("40 scfm at 80 psig"))
        .as("what the file tells is not said to be taken")
        .contains(WARM, "inlet at 80 psig as told, drop taken from 5 psi to all of it; " + ANY_B);
    areAlike(
        capacity("40 scfm at 80 psig"),
        CapacityRange.ofRatedFlow(
            FreeAirFlow.ofScfm60F(40.0), GaugePressure.ofPsi(80.0).absolute(ATMOSPHERE), SHOP));
    CapacityRange bare = capacity("40 cfm");
    assertThat(bare.most()).isEqualTo(alone.capacity().most());
    assertThat(c(bare.least())).isLessThan(c(alone.capacity().least()));
    assertThat(assumed("40 cfm").get(0)).startsWith("flow does not tell where the air is counted");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "C 3.5 dm³/(s·bar), b 0.25",
        "C 3.5 dm3/(s bar) b 0.25",
        "c=3.5 L/s/bar, b=.25",
        "3.5 dm3/(s bar), b 0.25",
        "sonic conductance 210 L/(min bar), b 0.25"
      })
  void c_and_b_leave_nothing_open(String text) {
    Rating rating = Rating.parse(text);
    assertThat(rating.kind()).isEqualTo(RatingKind.CONDUCTANCE);
    areAlike(rating.capacity(), CapacityRange.exactly(part(3.5, 0.25)));
    assertThat(rating.capacity().isExact()).isTrue();
    assertThat(rating.assumptions()).isEmpty();
  }

  @Test
  void what_a_capacity_prints_is_a_rating() {
    for (FlowCapacity capacity : List.of(
        part(3.5, 0.25),
        part(3.5, 0.25).withSubsonicIndex(0.4),
        part(3.5, 0.25).withCrackingPressure(PressureDrop.ofBar(0.2)),
        part(3.5, 0.0).withSubsonicIndex(1.0).withCrackingPressure(PressureDrop.ofBar(0.2)))) {
      assertThat(capacity(capacity.toString())).isEqualTo(CapacityRange.exactly(capacity));
    }
    assertThat(capacity("C 3.5 dm3/(s bar), b 0.25, opens at 0.2 bar, m 0.4"))
        .isEqualTo(CapacityRange.exactly(
            part(3.5, 0.25).withSubsonicIndex(0.4).withCrackingPressure(PressureDrop.ofBar(0.2))));
  }

  @Test
  void c_alone_leaves_every_b() {
    Rating rating = Rating.parse("C 6 dm3/(s bar)");
    areAlike(
        rating.capacity(), CapacityRange.ofConductance(SonicConductance.parse("6 dm3/(s bar)")));
    assertThat(rating.assumptions()).containsExactly(CapacityRange.ANY_B);
    CapacityRange check = capacity("C 6 dm3/(s bar), opens at 0.2 bar");
    assertThat(check.least().crackingPressure()).isEqualTo(PressureDrop.ofBar(0.2));
    assertThat(check.most().crackingPressure()).isEqualTo(PressureDrop.ofBar(0.2));
    assertThat(check.isExact()).isFalse();
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "S 12 mm²",
        "12 mm2",
        "effective area 12 mm2",
        "12 mm² effective area",
        "Ae = 0.12 cm²"
      })
  void an_effective_area_is_the_section_of_a_nozzle(String text) {
    Rating rating = Rating.parse(text);
    assertThat(rating.kind()).isEqualTo(RatingKind.EFFECTIVE_AREA);
    areAlike(rating.capacity(), CapacityRange.ofEffectiveArea(Area.ofSquareMillimetres(12.0)));
    assertThat(assumed(text))
        .containsExactly("S is the section of a loss-free nozzle of the same choked flow", ANY_B);
    assertThat(rating.capacity().assumption().basis()).isEqualTo(Basis.COMMON_PRACTICE);
  }

  @Test
  void an_effective_area_with_b_is_one_capacity() {
    Rating rating = Rating.parse("S 12 mm2, b 0.3");
    assertThat(rating.capacity().least())
        .isEqualTo(FlowCapacity.ofEffectiveArea(Area.ofSquareMillimetres(12.0), 0.3));
    assertThat(rating.capacity().isExact()).isTrue();
    assertThat(rating.capacity().assumption().basis()).isEqualTo(Basis.DERIVED);
  }

  /** A point of the curve of a capacity, as text with all digits. */
  private static String point(FlowCapacity part, double bar, double drop) {
    AirState air = AirState.of(AbsolutePressure.ofBar(bar), SHOP);
    double flow = FreeAirFlow.from(
            part.flow(air, AbsolutePressure.ofBar(bar - drop)).massFlow(), ReferenceState.ANR)
        .litresPerSecond();
    return flow + " L/s ANR at " + bar + " bar(a), " + drop + " bar drop, 20 °C";
  }

  /** From points of one curve at drops large enough to tell b, b and C come out; within what 2 % leaves open. */
  @Test
  void points_of_one_curve_tell_it() {
    FlowCapacity true1 = part(5.0, 0.3);
    String text =
        point(true1, 7.0, 0.5) + "; " + point(true1, 8.0, 3.0) + "; " + point(true1, 7.0, 5.5);
    Rating rating = Rating.parse(text);
    assertThat(rating.kind()).isEqualTo(RatingKind.POINTS);
    assertThat(rating.residual().orElseThrow()).isCloseTo(0.0, within(1.0e-9));
    CapacityRange range = rating.capacity();
    assertThat(c(range.least())).isBetween(4.9, 5.0);
    assertThat(c(range.most())).isBetween(5.0, 5.15);
    assertThat(range.least().criticalPressureRatio()).isBetween(0.2, 0.3);
    assertThat(range.most().criticalPressureRatio()).isBetween(0.3, 0.4);
    assertThat(range.assumption().citation())
        .matches(
            "fitted to 3 points, which lie within [0-9.e-]+ % of one curve; b from 0\\.2[0-9] to 0\\.3[0-9]");
    assertThat(range.assumption().basis()).isEqualTo(Basis.DERIVED);
  }

  /**
   * By hand: where both points choke the second C is 1.21 times the first. They come nearest to one curve at b = 0,
   * where 1.21 √(1 − 0.14286²)/√(1 − 0.07143²) = 1.20064 is left, 1.0957 to either side.
   */
  @Test
  void points_off_one_curve_say_how_far() {
    String text = point(part(5.0, 0.3), 7.0, 6.0) + "; " + point(part(6.05, 0.3), 7.0, 6.5);
    Rating rating = Rating.parse(text);
    assertThat(rating.residual().orElseThrow()).isCloseTo(0.0957, within(1.0e-4));
    assertThat(c(rating.capacity().least())).isCloseTo(5.0, within(0.06));
    assertThat(c(rating.capacity().most())).isCloseTo(6.05, within(0.06));
    assertThat(rating.capacity().assumption().citation())
        .startsWith("fitted to 2 points, which lie within 9.6 % of one curve; b from 0 to 0.53");
  }

  @Test
  void a_table_may_tell_its_inlet_once_before_between_or_behind_its_points() {
    CapacityRange full =
        capacity("20 scfm at 100 psig, 1 psi drop, 20 °C; 40 scfm at 100 psig, 4 psi drop, 20 °C");
    for (String text : List.of(
        "20 scfm at 100 psig, 1 psi drop, 20 °C; 40 scfm, 4 psi drop",
        "20 scfm, 1 psi drop; 40 scfm, 4 psi drop at 100 psig, 20 °C",
        "at 100 psig, 20 °C: 20 scfm, 1 psi drop; 40 scfm, 4 psi drop",
        "at 100 psig, 20 °C; 20 scfm, 1 psi drop; 40 scfm, 4 psi drop",
        "at 100 psig, 20 °C\n20 scfm, 1 psi drop\n\n40 scfm, 4 psi drop;",
        "40 scfm, 4 psi drop; 20 scfm at 100 psig, 20 °C, 1 psi drop")) {
      areAlike(capacity(text), full);
      assertThat(assumed(text)).as(text).hasSize(2).contains(GAUGE);
    }
    assertThat(Rating.parse("at 100 psig; 40 scfm, 4 psi drop").kind())
        .as("one point is a rated flow")
        .isEqualTo(RatingKind.RATED_FLOW);
  }

  @Test
  void points_without_a_state_have_every_reading() {
    CapacityRange bare = capacity("20 cfm at 100 psig, 1 psi drop; 40 cfm, 4 psi drop");
    CapacityRange most = capacity("20 scfm at 100 psig, 1 psi drop; 40 scfm, 4 psi drop");
    CapacityRange least = capacity("20 cfm ANR at 100 psig, 1 psi drop; 40 cfm ANR, 4 psi drop");
    areAlike(
        new CapacityRange(bare.least(), bare.most(), bare.assumption()),
        new CapacityRange(least.least(), most.most(), bare.assumption()));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      value = {
        "|0|the rating is missing",
        " ; |0|the rating is missing",
        "40 scfm, 5 psi drop|0|a pressure drop without the pressure in front of the part: add it, such as \"at"
            + " 100 psig\"",
        "40 scfm, outlet 5 bar(g)|0|a pressure drop without the pressure in front of the part: add it, such as"
            + " \"at 100 psig\"",
        "40 scfm, outlet 5 bar(a)|0|a pressure drop without the pressure in front of the part: add it, such as"
            + " \"at 100 psig\"",
        "40 scfm full flow|0|a full flow without the pressure in front of the part: add it, such as \"at 90 psig\"",
        "40 scfm at 100 psi, 5 psi drop|11|\"100 psi\" does not tell from where the pressure counts: say psig or bar(g)"
            + " for a gauge reading, psia or bar(a) for an absolute one, and \"5 psi drop\" for a pressure drop",
        "40 scfm at 100 psig, 5 psi|21|\"5 psi\" does not tell from where the pressure counts: say psig or bar(g) for a"
            + " gauge reading, psia or bar(a) for an absolute one, and \"5 psi drop\" for a pressure drop",
        "40 scfm at 100 psig, 5 psig drop|23|\"psig\" marks a pressure against the atmosphere; a drop between"
            + " two places"
            + " has no such mark: say psi",
        "40 scfm at 100 psig, 120 psi drop|0|the pressure drop of 120 psi (8.274 bar) must be at most the inlet of 100"
            + " psig (6.895 bar(g))",
        "40 scfm at 114.7 psia, 114.7 psi drop|0|the pressure drop of 114.7 psi (7.908 bar) must be below the inlet of"
            + " 114.7 psia (7.908 bar(a))",
        "40 scfm at 100 psig, 0 psi drop|0|the pressure drop must be above 0",
        "0 scfm at 100 psig, 5 psi drop|0|rated flow must be above 0, was 0.0 m³/s (60 °F); a part that passes"
            + " nothing has"
            + " no capacity",
        "C 3.5 dm3/(s bar), b 1.2|21|critical pressure ratio b must be between 0 and 1, was 1.2",
        "C 3.5 dm3/(s bar), b 1|0|critical pressure ratio must be in [0, 1), was 1.0",
        "C 3.5 dm3/(s bar), b -0.2|21|critical pressure ratio b is a plain number such as 0.3",
        "C 3.5 dm3/(s bar), b .|21|critical pressure ratio b is a plain number such as 0.3",
        "C 3.5 dm3/(s bar), b|20|critical pressure ratio b is a plain number such as 0.3",
        "C 3.5 dm3/(s bar), b 0.3, m 2|28|subsonic index m must be between 0 and 1, was 2.0",
        "C 3,5 dm3/(s bar), b 0.2|3|a comma means different things in different places: write 6.2 with a point and 1200"
            + " without a mark",
        "C 0 dm3/(s bar), b 0.2|0|sonic conductance must be above 0, was 0.0 m³/(s·Pa)",
        "C 3.5, b 0.3|5|the unit is missing",
        "Cv|2|the number is missing",
        "Cv 0|3|Kv must be finite and above 0 m³/h, was 0.0 m³/h",
        "Cv abc|3|this is no number",
        "Cv 1.4, xT 1.1|11|pressure ratio factor xT must be between 0 and 1, was 1.1",
        "Cv 1.4, xT 0|0|pressure ratio factor xT must be in (0, 1], was 0.0",
        "Cv 1.4, b 0.3|0|beside a flow coefficient only xT may stand",
        "Cv 1.4, m 0.3|0|beside a flow coefficient only xT may stand",
        "Cv 1.4, opens 1 psi|0|beside a flow coefficient only xT may stand",
        "Cv 1.4, S 3 mm2|0|beside a flow coefficient only xT may stand",
        "Cv 1.4, C 3 dm3/(s bar)|0|beside a flow coefficient only xT may stand",
        "Cv 1.4, 20 scfm|0|beside a flow coefficient only xT may stand",
        "Cv 1.4 at 100 psig|0|beside a flow coefficient only xT may stand",
        "Cv 1.4, 5 psi drop|0|beside a flow coefficient only xT may stand",
        "Cv 1.4 full flow|0|beside a flow coefficient only xT may stand",
        "Cv 1.4, outlet 5 bar(g)|0|beside a flow coefficient only xT may stand",
        "Cv 1.4, outlet 5 bar(a)|0|beside a flow coefficient only xT may stand",
        "Cv 1.4, 20 °C|0|beside a flow coefficient only xT may stand",
        "C 3 dm3/(s bar), S 3 mm2|0|beside a sonic conductance C only b, m and \"opens at\" may stand",
        "C 3 dm3/(s bar), 20 scfm|0|beside a sonic conductance C only b, m and \"opens at\" may stand",
        "S 3 mm2, 20 scfm|0|beside an effective area S only b may stand",
        "40 scfm at 100 psig, 5 psi drop, xT 0.7|0|xT belongs to a flow coefficient: give Cv or Kv",
        "40 scfm at 100 psig, 5 psi drop, m 0.4|0|m and \"opens at\" belong to C and b of ISO 6358: give C",
        "S 12 mm2, opens at 1 psi|0|m and \"opens at\" belong to C and b of ISO 6358: give C",
        "S 12|4|the unit is missing",
        "b 0.3|0|the flow, Cv, Kv, C or S is missing",
        "at 100 psig|0|the flow, Cv, Kv, C or S is missing",
        "foo|0|\"foo\" is nothing a rating has",
        "40 scfm at 100 psig, red|21|\"red\" is nothing a rating has",
        "40 scfm at 100 psig, 20 scfm|21|a second flow: put a semicolon between the points of a table",
        "40 cfm at 100 psig, 20 scfm|20|a second flow: put a semicolon between the points of a table",
        "40 scfm at 100 psig, 95 psig|21|a second pressure in front of the part: say \"from 6 bar(g) to 5 bar(g)\" or"
            + " \"5 psi drop\"",
        "40 scfm at 100 psia, 95 psig|21|a second pressure in front of the part: say \"from 6 bar(g) to 5 bar(g)\" or"
            + " \"5 psi drop\"",
        "40 scfm to 5 bar(g) to 4 bar(g)|23|a second pressure behind the part",
        "40 scfm to 5 bar(a) to 4 bar(g)|23|a second pressure behind the part",
        "40 scfm at 100 psig, 5 psi drop, 6 psi drop|33|a second pressure drop",
        "Cv 1.4, Kv 1.2|8|a second flow coefficient",
        "S 1 mm2, S 2 mm2|9|a second effective area S",
        "1 mm2, 2 mm2|7|a second effective area S",
        "40 scfm, 20 °C, 30 °C|16|a second temperature",
        "40 scfm from 5 bar(g) to 6 bar(g)|0|the pressure behind the part must be below that in front",
        "40 scfm from 5 bar(a) to 5 bar(a)|0|the pressure behind the part must be below that in front",
        "40 scfm at 100 psig, 5 psi drop, full flow|0|a pressure drop, a pressure behind the part and full"
            + " flow: only one"
            + " of them may stand",
        "40 scfm at 100 psig to 95 psig, 5 psi drop|0|a pressure drop, a pressure behind the part and full"
            + " flow: only one"
            + " of them may stand",
        "40 scfm full flow at 0 psig|0|full flow goes into the open, so the inlet must be above 1.01325 bar(a)",
        "40 scfm at -2 bar(g), 5 psi drop|0|gauge pressure must be at least minus the atmosphere of 1.01325"
            + " bar(a), was -2"
            + " bar(g)",
        "40 scfm at 5 psig|0|inlet of a rating without a drop must be above 19.7 psia, was 135798.786466 Pa(a)",
        "20 scfm at 100 psig, 4 psi drop; 40 scfm, 1 psi drop|32|from the same inlet this flow is larger than that of"
            + " point 1 and loses less: look at both again",
        "20 scfm, 1 psi drop; 40 scfm, 4 psi drop|0|a pressure drop without the pressure in front of the part: add it,"
            + " such as \"at 100 psig\"",
        "20 scfm at 100 psig, 1 psi drop; 40 scfm|32|the pressure drop of this point is missing",
        "20 scfm at 100 psig, 1 psi drop; 4 psi drop|32|the flow of this point is missing",
        "20 scfm at 100 psig, 1 psi drop; 0 scfm, 4 psi drop|32|rated flow must be above 0, was 0.0 m³/s (60"
            + " °F); a part"
            + " that passes nothing has no capacity",
        "20 scfm at 100 psig, 1 psi drop; 40 scfm, 4 psi drop, b 0.3|32|a table has points of a flow, an inlet pressure"
            + " and a pressure drop only",
        "Cv 1.4; Cv 1.5|0|a table has points of a flow, an inlet pressure and a pressure drop only"
      })
  void a_mistake_is_told_in_one_line_with_its_place(String text, int position, String problem) {
    String typed = text == null ? "" : text;
    assertThatExceptionOfType(QuantityFormatException.class)
        .isThrownBy(() -> Rating.parse(typed))
        .satisfies(wrong -> {
          assertThat(wrong.problem()).isEqualTo(problem);
          assertThat(wrong.position()).isEqualTo(position);
          assertThat(wrong.text()).isEqualTo(typed);
          assertThat(wrong.accepted()).isEqualTo(RatingRow.ACCEPTED);
          assertThat(wrong.getMessage()).doesNotContain("\n");
        });
  }

  @Test
  @SuppressWarnings("NullAway") // what a caller without null checks could pass
  void a_text_longer_than_any_rating_is_refused_unread() {
    String longest = "Cv 1.4" + " ".repeat(394);
    assertThat(Rating.parse(longest).toString()).isEqualTo("Cv 1.4");
    assertThatExceptionOfType(QuantityFormatException.class)
        .isThrownBy(() -> Rating.parse(longest + " "))
        .withMessageContaining("this text is longer than 400 characters");
    assertThatNullPointerException().isThrownBy(() -> Rating.parse(null)).withMessage("text");
  }

  @Test
  void what_it_prints_is_what_was_typed_and_reads_back() {
    for (String text : List.of(
        "Cv 1.4",
        "40 scfm at 100 psig, 5 psi drop",
        "C 6 dm3/(s bar)",
        "20 scfm at 100 psig, 1 psi drop; 40 scfm, 4 psi drop")) {
      Rating rating = Rating.parse("  " + text + " ");
      assertThat(rating).hasToString(text);
      assertThat(Rating.parse(rating.toString())).isEqualTo(rating).hasSameHashCodeAs(rating);
    }
    assertThat(Rating.parse("Cv 1.4"))
        .isEqualTo(Rating.parse("CV = 1.40"))
        .isNotEqualTo(Rating.parse("Cv 1.5"))
        .isNotEqualTo("Cv 1.4");
    assertThat(Rating.parse("40 scfm full flow at 90 psig, b 0.3"))
        .as("another kind")
        .isNotEqualTo(Rating.parse("40 scfm at 90 psig, 90 psi drop, b 0.3"));
  }

  @Test
  void decimal_commas_are_read_by_who_knows_that_they_are() {
    assertThat(DecimalMark.COMMA.read("Cv 1,4", Rating::parse)).isEqualTo(Rating.parse("Cv 1.4"));
  }

  @Test
  void every_kind_has_its_words() {
    for (RatingKind kind : RatingKind.values()) {
      assertThat(kind.label()).isNotBlank().isEqualTo(kind.label().toLowerCase(Locale.ROOT));
    }
    assertThat(RatingKind.RATED_FLOW.label()).isEqualTo("flow at a pressure drop");
  }
}
