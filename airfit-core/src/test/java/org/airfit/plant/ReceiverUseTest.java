package org.airfit.plant;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.assertThatNullPointerException;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import java.util.Optional;
import org.airfit.Comparison;
import org.airfit.Pencil;
import org.airfit.Rows;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.MassFlow;
import org.airfit.quantity.Range;
import org.airfit.quantity.ReferenceState;
import org.airfit.quantity.Temperature;
import org.airfit.quantity.Volume;
import org.airfit.quantity.VolumeFlowUnit;
import org.airfit.source.Source;
import org.airfit.working.Completeness;
import org.airfit.working.UnitSystem;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ReceiverUseTest {

  private static final Temperature COUNTED = Temperature.ofFahrenheit(60.0);
  private static final double R = 287.05287;

  /** A receiver in US units whose atmosphere is that at which its flows are counted. */
  private static ReceiverUse us(
      double gallons, double psig1, double psig2, double taken, double delivered, double psia) {
    return new ReceiverUse(
        Volume.ofUsGallons(gallons),
        GaugePressure.ofPsi(psig1),
        GaugePressure.ofPsi(psig2),
        AbsolutePressure.ofPsi(psia),
        COUNTED,
        Range.exactly(cubicFeet(taken, psia)),
        delivered > 0.0 ? Optional.of(Range.exactly(cubicFeet(delivered, psia))) : Optional.empty(),
        Duration.ofSeconds(60),
        Duration.ofHours(1));
  }

  private static FreeAirFlow cubicFeet(double flow, double psia) {
    ReferenceState here = ReferenceState.of(
        "site", COUNTED, AbsolutePressure.ofPsi(psia), 0.0, Source.derived("the site"));
    return FreeAirFlow.of(flow, VolumeFlowUnit.CUBIC_FOOT_PER_MINUTE, here);
  }

  private static double seconds(Optional<Duration> time) {
    return time.orElseThrow().toNanos() * 1.0e-9;
  }

  /** A receiver of 1 m³ at 8 bar(a), which may fall to 7: it gives 1e5/(R T) kg at a constant temperature. */
  private static ReceiverUse of(
      Range<FreeAirFlow> taken, Optional<Range<FreeAirFlow>> delivered, long draw, long every) {
    return new ReceiverUse(
        Volume.ofCubicMetres(1.0),
        GaugePressure.ofBar(7.0),
        GaugePressure.ofBar(6.0),
        AbsolutePressure.ofBar(1.0),
        Temperature.ofCelsius(20.0),
        taken,
        delivered,
        Duration.ofSeconds(draw),
        Duration.ofSeconds(every));
  }

  private static Range<FreeAirFlow> litres(double flow) {
    return Range.exactly(
        FreeAirFlow.of(flow, VolumeFlowUnit.LITRE_PER_SECOND, ReferenceState.COMPRESSOR_INLET));
  }

  private static Range<FreeAirFlow> litres(double least, double most) {
    return new Range<>(litres(least).least(), litres(most).least());
  }

  @Test
  void the_longest_time_is_that_of_the_tables_of_receivers() {
    Rows.of(ReceiverUseTest.class, "receiver_cases.csv").forEach(row -> {
      ReceiverUse use = us(
          row.number("volume_gal"),
          row.number("p1_psig"),
          row.number("p2_psig"),
          row.number("demand_scfm"),
          row.number("compressor_scfm"),
          row.number("pa_psia"));
      Comparison.of(
              "Plant: receivers",
              row.text("id") + ", how long a receiver carries a demand",
              row.number("time_s"),
              "s",
              row.evidence("time_s"))
          .isMetBy(
              seconds(use.carriesAtMost()),
              1.0e-5 * row.number("time_s"),
              "six digits of the table");
      Pencil.check(use);
      Completeness.check(use);
    });
  }

  /** Loading is filling with what the others leave, unloading is a draw without the compressor. */
  @Test
  void filling_and_drawing_are_the_load_and_unload_times_of_the_tables() {
    Rows.of(ReceiverUseTest.class, "cycle_times.csv").forEach(row -> {
      double left = row.number("compressor_scfm") - row.number("demand_scfm");
      double band = row.number("band_psi");
      double gallons = row.number("volume_gal");
      ReceiverUse fills = us(gallons, 90.0 + band, 90.0, 1000.0, left, row.number("pa_psia"));
      Comparison.of(
              "Plant: receivers",
              row.text("id") + ", load time",
              row.number("load_s"),
              "s",
              row.evidence("load_s"))
          .isMetBy(
              seconds(fills.filling()), 1.0e-5 * row.number("load_s"), "six digits of the table");
      ReceiverUse drawn =
          us(gallons, 90.0 + band, 90.0, row.number("demand_scfm"), 0.0, row.number("pa_psia"));
      Comparison.of(
              "Plant: receivers",
              row.text("id") + ", unload time",
              row.number("unload_s"),
              "s",
              row.evidence("unload_s"))
          .isMetBy(
              seconds(drawn.carriesAtMost()),
              1.0e-5 * row.number("unload_s"),
              "six digits of the table");
    });
  }

  /** Engineering sheet: out 350 cfm, in 250 cfm, 5 min, 100 to 60 psig: 183.75 ft³ (1374.5 US gal). */
  @Test
  void a_published_surge_tank_carries_its_five_minutes_at_best() {
    ReceiverUse use = us(1374.55, 100.0, 60.0, 350.0, 250.0, 14.7);
    assertThat(seconds(use.carriesAtMost())).isCloseTo(300.0, within(0.02));
    assertThat(seconds(use.carriesAtLeast())).isBetween(220.0, 280.0);
  }

  /**
   * The balance of mass and energy of a receiver, stepped with heat from its walls: between no heat and much of it the
   * time always lies between the two limits, and reaches them. Air comes in as warm as the receiver was.
   */
  @Test
  void whatever_heat_the_walls_give_the_time_lies_between_the_two_limits() {
    for (double delivered : new double[] {0.0, 12.0}) {
      ReceiverUse use = of(
          litres(40.0),
          delivered > 0.0 ? Optional.of(litres(delivered)) : Optional.empty(),
          20,
          600);
      double shortest = seconds(use.carriesAtLeast());
      double longest = seconds(use.carriesAtMost());
      double before = 0.0;
      for (double conductance : new double[] {0.0, 5.0, 50.0, 500.0, 5.0e4}) {
        double stepped = stepped(40.0, delivered, conductance);
        assertThat(stepped)
            .as("%s W/K", conductance)
            .isBetween(shortest * (1.0 - 1.0e-3), longest * (1.0 + 1.0e-3))
            .isGreaterThan(before);
        before = stepped;
      }
      if (delivered == 0.0) {
        assertThat(stepped(40.0, 0.0, 0.0)).isCloseTo(shortest, within(1.0e-3 * shortest));
      }
      assertThat(before).isCloseTo(longest, within(5.0e-3 * longest));
    }
  }

  /** Seconds until 1 m³ at 8 bar(a) and 20 °C has fallen to 7, by small steps of mass and energy. */
  private static double stepped(double taken, double delivered, double wattsPerKelvin) {
    double warm = 293.15;
    double cv = R / 0.4;
    double cp = 1.4 * cv;
    double out = taken * 1.0e-3 * 1.0e5 / (R * warm); // ISO 1217: 20 °C, 1 bar, dry
    double in = delivered * 1.0e-3 * 1.0e5 / (R * warm);
    double mass = 8.0e5 / (R * warm);
    double energy = mass * cv * warm;
    double step = 2.0e-4;
    double time = 0.0;
    while (energy * 0.4 > 7.0e5) {
      double kelvins = energy / (mass * cv);
      energy += step * (in * cp * warm - out * cp * kelvins + wattsPerKelvin * (warm - kelvins));
      mass += step * (in - out);
      time += step;
    }
    return time;
  }

  /** 1 m³ from 8 to 7 bar(a) gives 1 m³ of air of 1 bar and 20 °C: 1000 L, at 40 L/s for 25 s if it stays warm. */
  @Test
  void the_verdict_turns_where_the_receiver_just_carries_and_where_it_is_just_filled() {
    Optional<Range<FreeAirFlow>> none = Optional.empty();
    Optional<Range<FreeAirFlow>> much = Optional.of(litres(10.0));
    // 8 (1 − (7/8)^(1/1.4)) = 0.7277 m³ of air where no heat comes in
    double cold = 8.0 * (1.0 - Math.pow(7.0 / 8.0, 1.0 / 1.4));
    assertThat(seconds(of(litres(40.0), none, 20, 600).carriesAtLeast()))
        .isCloseTo(1000.0 * cold / 40.0, within(1.0e-6));
    assertThat(of(litres(40.0), none, 25, 600).verdict()).isEqualTo(ReceiverVerdict.DEPENDS);
    assertThat(of(litres(40.0), none, 26, 600).verdict()).isEqualTo(ReceiverVerdict.TOO_SMALL);
    assertThat(of(litres(40.0), none, 10, 600).verdict())
        .as("what the compressor delivers is not known")
        .isEqualTo(ReceiverVerdict.DEPENDS);
    assertThat(of(litres(40.0), much, 20, 600).verdict()).isEqualTo(ReceiverVerdict.MET);
    // 40 L/s for 20 s are 800 L, which 10 L/s deliver in 80 s
    assertThat(of(litres(40.0), much, 20, 80).verdict()).isEqualTo(ReceiverVerdict.MET);
    assertThat(of(litres(40.0), much, 20, 79).verdict()).isEqualTo(ReceiverVerdict.NOT_FILLED);
    // 8 (1 − …)/30 L/s is 24.2 s without heat, 33.3 s with
    assertThat(of(litres(40.0), much, 24, 600).verdict()).isEqualTo(ReceiverVerdict.MET);
    assertThat(of(litres(40.0), much, 25, 600).verdict()).isEqualTo(ReceiverVerdict.DEPENDS);
    assertThat(of(litres(40.0), much, 34, 600).verdict()).isEqualTo(ReceiverVerdict.TOO_SMALL);
  }

  /** Too small by itself: what the compressor delivers may still mend that, and is asked. */
  @Test
  void where_the_compressor_is_not_known_it_is_asked_whatever_the_receiver_does() {
    for (int draw : new int[] {10, 26}) {
      ReceiverUse use = of(litres(40.0), Optional.empty(), draw, 600);
      assertThat(use.inWords(UnitSystem.SI).get(2))
          .contains("To be asked: what does the compressor deliver?");
    }
  }

  @Test
  void flows_that_are_ranges_are_judged_at_both_ends() {
    Optional<Range<FreeAirFlow>> ten = Optional.of(litres(10.0));
    assertThat(of(litres(30.0, 40.0), ten, 24, 600).verdict()).isEqualTo(ReceiverVerdict.MET);
    assertThat(of(litres(30.0, 60.0), ten, 24, 600).verdict()).isEqualTo(ReceiverVerdict.DEPENDS);
    assertThat(of(litres(60.0, 90.0), ten, 24, 600).verdict()).isEqualTo(ReceiverVerdict.TOO_SMALL);
    assertThat(of(litres(40.0), Optional.of(litres(5.0, 10.0)), 20, 80).verdict())
        .isEqualTo(ReceiverVerdict.DEPENDS);
    ReceiverUse wide = of(litres(30.0, 60.0), Optional.of(litres(5.0, 10.0)), 24, 600);
    assertThat(seconds(wide.carriesAtMost())).isCloseTo(1000.0 / (30.0 - 10.0), within(1.0e-6));
    assertThat(seconds(wide.filling())).isCloseTo(1000.0 / 5.0, within(1.0e-6));
    Pencil.check(wide);
    Completeness.check(wide);
  }

  @Test
  void a_compressor_that_keeps_up_needs_no_receiver() {
    ReceiverUse use = of(litres(10.0), Optional.of(litres(12.0)), 20, 600);
    assertThat(use.carriesAtLeast()).isEmpty();
    assertThat(use.verdict()).isEqualTo(ReceiverVerdict.MET);
    assertThat(use.needed().cubicMetres()).isZero();
    assertThat(use.bringingBack()).contains(Duration.ZERO);
    assertThat(use.inWords(UnitSystem.SI).get(0)).contains("without end", "keeps up");
    Pencil.check(use);
  }

  /** The receiver that would do is one that does, and one a little smaller does not in any case. */
  @Test
  void the_receiver_that_is_needed_is_the_smallest_that_carries() {
    ReceiverUse use = of(litres(80.0), Optional.of(litres(10.0)), 60, 3600);
    assertThat(use.verdict()).isEqualTo(ReceiverVerdict.TOO_SMALL);
    for (double factor : new double[] {0.999, 1.001}) {
      ReceiverUse other = new ReceiverUse(
          Volume.ofCubicMetres(factor * use.needed().cubicMetres()),
          use.start(),
          use.least(),
          use.atmosphere(),
          use.temperature(),
          use.demand(),
          use.delivery(),
          use.draw(),
          use.every());
      assertThat(other.verdict())
          .isEqualTo(factor > 1.0 ? ReceiverVerdict.MET : ReceiverVerdict.DEPENDS);
    }
  }

  /** 1000 L of air of 1 bar over 30 L/s are 33.3 s, 0.7277 m³ 24.2 s; 10 L/s fill 1000 L in 100 s. */
  @Test
  void the_answer_is_told_in_sentences() {
    ReceiverUse use = of(litres(40.0), Optional.of(litres(10.0)), 30, 600);
    assertThat(use.inWords(UnitSystem.SI))
        .containsExactly(
            "From 7 bar(g) down to 6 bar(g) the receiver of 1000 L carries a draw of 40 L/s ISO 1217 for"
                + " 24.2 s to 33.3 s, with the compressor running; it is needed for 30 s. The shorter time is that"
                + " of air that gets colder as it expands, the longer one that of air that the walls keep warm.",
            "The compressor delivers 10 L/s ISO 1217 and fills it from 6 bar(g) to 7 bar(g) in 100 s; what"
                + " one draw takes it brings back in 90 s, and from draw to draw there are 9 min 30 s.",
            "The receiver for this user: depends on what is not known. A receiver of 1300 L carries the draw in"
                + " any case between these pressures.");
    ReceiverUse unknown = of(litres(40.0), Optional.empty(), 10, 600);
    assertThat(String.join(" ", unknown.inWords(UnitSystem.US)))
        .contains("264.2 US gal", "101.5 psig", "ask what it delivers", "what does the compressor");
    assertThat(use.cautions())
        .hasSize(1)
        .allSatisfy(caution -> assertThat(caution.text()).contains("safety valve"));
  }

  @Test
  @SuppressWarnings("NullAway") // what a caller without null checks could pass
  void null_is_refused_by_name() {
    ReceiverUse use = of(litres(1.0), Optional.empty(), 10, 60);
    assertThatNullPointerException()
        .isThrownBy(() -> new ReceiverUse(
            null,
            use.start(),
            use.least(),
            use.atmosphere(),
            use.temperature(),
            use.demand(),
            use.delivery(),
            use.draw(),
            use.every()))
        .withMessage("receiver");
    assertThatNullPointerException()
        .isThrownBy(() -> new ReceiverUse(
            use.receiver(),
            use.start(),
            use.least(),
            use.atmosphere(),
            use.temperature(),
            use.demand(),
            use.delivery(),
            use.draw(),
            null))
        .withMessage("every");
  }

  @Test
  void a_use_that_is_none_is_refused() {
    for (double gallons :
        new double[] {0.0, Double.MIN_VALUE, 2.6e-4, 2.7e11}) { // 0.98 cm³, 1.02 km³
      assertThatIllegalArgumentException()
          .isThrownBy(() -> us(gallons, 100.0, 80.0, 20.0, 0.0, 14.7))
          .withMessageStartingWith("volume of the receiver must be in [1e-6, 1e9] m³, was ")
          .withMessageEndingWith("; check its unit");
    }
    for (double gallons : new double[] {2.7e-4, 2.6e11}) {
      ReceiverUse at = us(gallons, 100.0, 80.0, 20.0, 0.0, 14.7);
      assertThat(at.needed().cubicMetres()).isBetween(0.1, 10.0);
      assertThat(at.working().toText()).isNotBlank();
    }
    assertThatIllegalArgumentException()
        .isThrownBy(() -> us(80.0, 100.0, 100.0, 20.0, 0.0, 14.7))
        .withMessageStartingWith("least pressure must be below that at the start");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> of(litres(1.0), Optional.empty(), 0, 60))
        .withMessage("draw must last more than 0 s, was 0 s");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> of(litres(1.0), Optional.empty(), 60, 60))
        .withMessage("time from draw to draw must be longer than the draw of 60 s, was 60 s");
  }

  /** A filling that ends, of a compressor so small that what a draw takes is never brought back. */
  @Test
  void what_no_time_brings_back_is_told() {
    ReceiverUse use = new ReceiverUse(
        Volume.ofCubicMetres(1.0e-3),
        GaugePressure.ofBar(7.0),
        GaugePressure.ofBar(6.0),
        AbsolutePressure.ofBar(1.0),
        Temperature.ofCelsius(20.0),
        Range.exactly(FreeAirFlow.ofAnrLitresPerSecond(10.0)),
        Optional.of(Range.exactly(FreeAirFlow.ofAnrLitresPerSecond(1.0e-18))),
        Duration.ofSeconds(1000),
        Duration.ofHours(1));
    assertThat(use.filling()).isPresent();
    assertThat(use.bringingBack()).isEmpty();
    assertThat(use.inWords(UnitSystem.SI).get(1))
        .contains(
            "; what one draw takes it does not bring back in any time, and from draw to draw");
  }

  /** At 8 and 7 bar(a) a cubic metre gives p1 (1 − (p2/p1)^(1/1.4))/(R T), and 1e9 m³ so often as much. */
  @Test
  void a_draw_up_to_that_of_a_cubic_kilometre_is_judged() {
    double bound = 1.0e9 * 8.0e5 * (1.0 - Math.pow(7.0 / 8.0, 1.0 / 1.4)) / (R * 293.15);
    assertThat(drawing(bound * (1.0 - 1.0e-9)).verdict()).isEqualTo(ReceiverVerdict.TOO_SMALL);
    assertThatIllegalArgumentException()
        .isThrownBy(() -> drawing(bound * (1.0 + 1.0e-9)))
        .withMessageStartingWith("draw must be one that a receiver of 1e9 m³ carries, was 1 s of ");
  }

  private static ReceiverUse drawing(double kilograms) {
    return new ReceiverUse(
        Volume.ofCubicMetres(1.0),
        GaugePressure.ofBar(7.0),
        GaugePressure.ofBar(6.0),
        AbsolutePressure.ofBar(1.0),
        Temperature.ofCelsius(20.0),
        Range.exactly(
            FreeAirFlow.from(MassFlow.ofKilogramsPerSecond(kilograms), ReferenceState.ANR)),
        Optional.empty(),
        Duration.ofSeconds(1),
        Duration.ofHours(1));
  }

  /** Two pressures so near that no number tells the receiver between them. */
  @Test
  void a_draw_that_no_receiver_carries_is_refused() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new ReceiverUse(
            Volume.ofLitres(500.0),
            GaugePressure.ofBar(7.0),
            GaugePressure.ofPascals(Math.nextDown(GaugePressure.ofBar(7.0).pascals())),
            AbsolutePressure.ofBar(1.0),
            Temperature.ofCelsius(20.0),
            Range.exactly(FreeAirFlow.ofAnrLitresPerSecond(10.0)),
            Optional.empty(),
            Duration.ofSeconds(60),
            Duration.ofHours(1)))
        .withMessageStartingWith("draw must be one that a receiver of 1e9 m³ carries, was 60 s of ")
        .withMessageEndingWith("check the units of the flow and of the two pressures");
  }

  /** From draw to draw there are as many seconds as told, after a draw of 10 s. */
  @ParameterizedTest
  @CsvSource({
    "119, 119 s",
    "120, 2 min",
    "570, 9 min 30 s",
    "7199, 119 min 59 s",
    "7200, 2 h",
    "9000, 2 h 30 min"
  })
  void a_time_is_told_as_people_say_it(long rest, String words) {
    ReceiverUse use = of(litres(40.0), Optional.of(litres(10.0)), 10, 10 + rest);
    assertThat(use.inWords(UnitSystem.SI).get(1))
        .endsWith(" from draw to draw there are " + words + ".");
  }

  /** By hand: 40 L/s for 10 s of 50 s are 8 L/s on the average, more than 5 to 6 L/s. */
  @Test
  void what_the_draws_take_on_the_average_is_told_where_it_is_not_delivered() {
    ReceiverUse use = of(litres(40.0), Optional.of(litres(5.0, 6.0)), 10, 50);
    assertThat(use.verdict()).isEqualTo(ReceiverVerdict.NOT_FILLED);
    assertThat(use.inWords(UnitSystem.SI).get(2))
        .contains(
            " On the average the draws take 8 L/s ISO 1217, which the compressor must deliver");
    assertThat(use.inWords(UnitSystem.SI).get(1))
        .startsWith("The compressor delivers 5 L/s ISO 1217 to 6 L/s ISO 1217 and fills it from ");
    assertThat(use.inWords(UnitSystem.SI).get(0)).contains(", each with what the flows may be.");
    // 8 L/s are just delivered
    assertThat(of(litres(40.0), Optional.of(litres(8.0)), 10, 50)
            .inWords(UnitSystem.SI)
            .get(2))
        .doesNotContain("On the average");
    assertThat(of(litres(40.0), Optional.of(litres(0.0)), 10, 50)
            .inWords(UnitSystem.SI)
            .get(1))
        .isEqualTo("The compressor delivers nothing for it, and nothing fills it again.");
  }

  /** The least and the most of one cubic metre and of the temperature and pressure that air can have. */
  @Test
  void a_receiver_at_its_bounds_is_judged() {
    for (double volume : new double[] {1.0e-6, 1.0e9}) {
      assertThat(new ReceiverUse(
                  Volume.ofCubicMetres(volume),
                  GaugePressure.ofBar(7.0),
                  GaugePressure.ofBar(-1.0),
                  AbsolutePressure.ofBar(1.0),
                  Temperature.ofCelsius(20.0),
                  litres(40.0),
                  Optional.empty(),
                  Duration.ofSeconds(10),
                  Duration.ofSeconds(60))
              .receiver()
              .cubicMetres())
          .isEqualTo(volume);
    }
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new ReceiverUse(
            Volume.ofCubicMetres(1.0),
            GaugePressure.ofBar(7.0),
            GaugePressure.ofBar(6.0),
            AbsolutePressure.ofBar(1.0),
            Temperature.ofKelvins(0.0),
            litres(40.0),
            Optional.empty(),
            Duration.ofSeconds(10),
            Duration.ofSeconds(60)))
        .withMessage("temperature must be above 0 K, was 0 K");
  }

  /** Each answer stands in the working for which there is one, and no other. */
  @Test
  void the_working_has_the_steps_of_what_is_asked() {
    String keepsUp = of(litres(10.0), Optional.of(litres(12.0)), 20, 600)
        .working(UnitSystem.SI)
        .toText();
    assertThat(keepsUp).contains("The compressor keeps up with the draw.");
    String lacks = of(litres(40.0), Optional.of(litres(10.0)), 20, 600)
        .working(UnitSystem.SI)
        .toText();
    assertThat(lacks).doesNotContain("keeps up");
    ReceiverUse brought = of(litres(40.0), Optional.of(litres(10.0)), 20, 600);
    // exact flows need one step for the longest time, ranges another with both flows at their other
    // ends
    ReceiverUse range = of(litres(30.0, 40.0), Optional.of(litres(5.0, 10.0)), 20, 600);
    assertThat(range.working(UnitSystem.SI).steps().size())
        .isEqualTo(brought.working(UnitSystem.SI).steps().size());
    ReceiverUse perhaps = of(litres(10.0, 40.0), Optional.of(litres(5.0, 10.0)), 20, 600);
    assertThat(perhaps.carriesAtMost()).isEmpty();
    assertThat(perhaps.working(UnitSystem.SI).steps().size())
        .as("no longest time")
        .isEqualTo(range.working(UnitSystem.SI).steps().size() - 1);
    assertThat(of(litres(0.0), Optional.empty(), 20, 600).working(UnitSystem.SI).toText())
        .contains("Nothing is drawn.");
  }
}
