package org.airfit.plant;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.airfit.Comparison;
import org.airfit.Pencil;
import org.airfit.Rows;
import org.airfit.Rows.Row;
import org.airfit.air.AirState;
import org.airfit.air.Compression;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.MassFlow;
import org.airfit.quantity.Money;
import org.airfit.quantity.Power;
import org.airfit.quantity.Range;
import org.airfit.quantity.Temperature;
import org.airfit.safety.Caution;
import org.airfit.working.Completeness;
import org.airfit.working.UnitSystem;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class LeakLedgerTest {

  private static final String CHAPTER = "Plant: leaks";

  private static Power kilowatts(double value) {
    return Power.ofKilowatts(value);
  }

  private static FreeAirFlow scfm(double value) {
    return FreeAirFlow.ofScfm60F(value);
  }

  /** 100 scfm take 20 kW for 5000 h at 0.10 USD: a scfm costs 100 USD in a year. Unloaded it takes 5 to 10 kW. */
  private static final AirPrice PRICE = new AirPrice(
      kilowatts(20.0),
      new Range<>(kilowatts(5.0), kilowatts(10.0)),
      scfm(100.0),
      Duration.ofHours(5000),
      Money.parse("0.10 USD"));

  private static LeakSize flow(double least, double most) {
    return LeakSize.ofFlow(new Range<>(scfm(least), scfm(most)));
  }

  private static Leak leak(String tag, LeakSize size, String repair) {
    return new Leak(
        tag,
        "hall",
        "hose clamp",
        size,
        repair.isEmpty() ? Optional.empty() : Optional.of(Money.parse(repair)),
        Optional.empty(),
        Optional.empty());
  }

  private static final LocalDate MARCH = LocalDate.of(2026, 3, 2);

  private static Leak repaired(Leak leak, LocalDate day) {
    return new Leak(
        leak.tag(),
        leak.place(),
        leak.what(),
        leak.found(),
        leak.repair(),
        Optional.of(day),
        Optional.empty());
  }

  private static Leak checked(Leak leak, LocalDate day, LeakSize left) {
    return new Leak(
        leak.tag(),
        leak.place(),
        leak.what(),
        leak.found(),
        leak.repair(),
        leak.repairedOn(),
        Optional.of(new Leak.Check(day, left)));
  }

  private static double scfm(MassFlow flow) {
    return flow.kilogramsPerSecond() / scfm(1.0).massFlow().kilogramsPerSecond();
  }

  private static double dollars(Money money) {
    return money.amount().doubleValue();
  }

  static Stream<Row> published() {
    return Rows.of(LeakLedgerTest.class, "leak_costs.csv");
  }

  /** The printed answers are recalled; the arithmetic stands beside them, recomputed by another program. */
  @ParameterizedTest
  @MethodSource("published")
  void a_year_of_leaks_costs_what_the_examples_say(Row row) {
    AirPrice price = new AirPrice(
        kilowatts(100.0 * row.number("kw_per_cfm")),
        Range.exactly(kilowatts(0.0)),
        scfm(100.0),
        Duration.ofHours((long) row.number("hours")),
        Money.parse(row.text("usd_per_kwh") + " USD"));
    YearlyCost cost = price.cost("leaks", scfm(row.number("flow_cfm")).massFlow());
    String why = "flow rounded to 0.01 cfm, and the last digit";
    if (row.has("published_usd")) {
      Comparison.of(
              CHAPTER,
              row.text("id") + ", printed",
              row.number("published_usd"),
              "USD/yr",
              row.evidence("published_usd"))
          .isMetBy(dollars(cost.money()), 1.0, why);
    }
    Comparison.of(
            CHAPTER,
            row.text("id") + ", arithmetic",
            row.number("recomputed_usd"),
            "USD/yr",
            row.evidence("recomputed_usd"))
        .isMetBy(dollars(cost.money()), row.halfDigit("recomputed_usd") + 0.4, why);
    Pencil.check(cost);
    Completeness.check(cost);
  }

  /** By hand: of 20 kW for 100 scfm 5 to 10 kW go on unloaded, so a scfm less saves 50 to 75 of its 100 USD. */
  @Test
  void a_repair_saves_less_than_the_air_costs_where_the_compressor_idles() {
    MassFlow one = scfm(1.0).massFlow();
    assertThat(dollars(PRICE.cost("leak", one).money())).isCloseTo(100.0, within(1.0e-9));
    assertThat(dollars(PRICE.leastSaved("leak", one).money())).isCloseTo(50.0, within(1.0e-9));
    assertThat(dollars(PRICE.mostSaved("leak", one).money())).isCloseTo(75.0, within(1.0e-9));
    Pencil.check(PRICE.leastSaved("leak", one));
    Completeness.check(PRICE.leastSaved("leak", one));
  }

  @Test
  void the_price_of_a_plant_is_that_of_its_compression() {
    AirPlant plant = new AirPlant(
        Compression.adiabatic(
            AirState.of(AbsolutePressure.ofPsi(14.7), Temperature.ofFahrenheit(60.0)),
            AbsolutePressure.ofPsi(114.7)),
        0.75,
        0.92,
        Duration.ofHours(5000),
        Money.parse("0.10 USD"));
    AirPrice price = AirPrice.of(plant, scfm(100.0), Range.exactly(kilowatts(0.0)));
    MassFlow leak = scfm(3.0).massFlow();
    assertThat(dollars(price.cost("leak", leak).money()))
        .isCloseTo(dollars(plant.ofFlow("leak", leak).money()), within(1.0e-6));
  }

  @Test
  void a_price_that_no_plant_has_is_refused() {
    Money rate = Money.parse("0.10 USD");
    Duration year = Duration.ofHours(5000);
    Range<Power> none = Range.exactly(kilowatts(0.0));
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new AirPrice(kilowatts(0.0), none, scfm(1.0), year, rate))
        .withMessageStartingWith("loaded power must be above 0 kW");
    assertThatIllegalArgumentException()
        .isThrownBy(() ->
            new AirPrice(kilowatts(1.0), Range.exactly(kilowatts(1.1)), scfm(1.0), year, rate))
        .withMessageStartingWith("unloaded power must be at most the loaded power");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new AirPrice(kilowatts(1.0), none, scfm(0.0), year, rate))
        .withMessageStartingWith("delivery of the compressor must be above 0");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new AirPrice(kilowatts(1.0), none, scfm(1.0), Duration.ofHours(-1), rate))
        .withMessageStartingWith("time in the year must be at least 0 h");
  }

  /** By hand: 4 to 6, 5 to 10, 1 to 2 scfm and one that nobody measured. */
  @Test
  void the_dearest_stands_first_and_its_rank_is_as_uncertain_as_its_size() {
    LeakLedger ledger = new LeakLedger(
        PRICE,
        List.of(
            leak("A", flow(4.0, 6.0), ""),
            leak("B", LeakSize.notMeasured(), ""),
            leak("C", flow(5.0, 10.0), ""),
            leak("D", flow(1.0, 2.0), "")));
    List<LeakLedger.Entry> entries = ledger.entries();
    assertThat(entries).extracting(entry -> entry.leak().tag()).containsExactly("C", "A", "D", "B");
    assertThat(entries)
        .extracting(entry -> entry.bestRank() + " to " + entry.worstRank())
        // A may be larger than C and B than any; D is the least of the measured ones for certain
        .containsExactly("1 to 3", "1 to 3", "3 to 4", "1 to 4");
    assertThat(dollars(entries.get(0).least().orElseThrow().money()))
        .isCloseTo(500.0, within(1.0e-9));
    assertThat(dollars(entries.get(0).most().orElseThrow().money()))
        .isCloseTo(1000.0, within(1.0e-9));
    assertThat(entries.get(3).least()).isEmpty();
  }

  @Test
  void what_nobody_measured_makes_the_total_a_least_without_a_most_and_never_a_zero() {
    Leak a = leak("A", flow(4.0, 6.0), "");
    Leak b = leak("B", LeakSize.notMeasured(), "");
    LeakLedger.Total known = new LeakLedger(PRICE, List.of(a)).lost();
    assertThat(scfm(known.least())).isCloseTo(4.0, within(1.0e-9));
    assertThat(scfm(known.most().orElseThrow())).isCloseTo(6.0, within(1.0e-9));
    assertThat(dollars(known.mostMoney().orElseThrow())).isCloseTo(600.0, within(1.0e-9));
    LeakLedger.Total open = new LeakLedger(PRICE, List.of(a, b)).lost();
    assertThat(scfm(open.least())).isCloseTo(4.0, within(1.0e-9));
    assertThat(open.most()).isEmpty();
    assertThat(open.mostMoney()).isEmpty();
    assertThat(open.notMeasured()).containsExactly("B");
  }

  @Test
  void a_repair_is_done_only_after_it_was_checked_again() {
    Leak open = leak("A", flow(4.0, 6.0), "30 USD");
    Leak repaired = repaired(open, MARCH);
    Leak tight = checked(repaired, MARCH.plusDays(7), flow(0.0, 0.0));
    Leak still = checked(repaired, MARCH, flow(0.5, 1.0));
    Leak unknown = checked(repaired, MARCH, LeakSize.notMeasured());
    Leak perhaps = checked(repaired, MARCH, flow(0.0, 0.5));
    assertThat(open.state()).isEqualTo(LeakState.OPEN);
    assertThat(repaired.state()).isEqualTo(LeakState.TO_BE_CHECKED);
    assertThat(tight.state()).isEqualTo(LeakState.DONE);
    assertThat(still.state()).isEqualTo(LeakState.STILL_LEAKS);
    assertThat(unknown.state()).isEqualTo(LeakState.STILL_LEAKS);
    assertThat(perhaps.state()).as("it may still leak").isEqualTo(LeakState.STILL_LEAKS);
    // repaired and not checked it loses anything up to what was found, and nothing is saved yet
    Range<MassFlow> now = repaired.flow().orElseThrow();
    assertThat(now.least().kilogramsPerSecond()).isZero();
    assertThat(scfm(now.most())).isCloseTo(6.0, within(1.0e-9));
    assertThat(repaired.saved()).isEmpty();
    LeakLedger.Total none = new LeakLedger(PRICE, List.of(repaired)).saved();
    assertThat(dollars(none.leastMoney())).isZero();
    assertThat(none.most().orElseThrow().kilogramsPerSecond()).isZero();
    // by hand: 4 − 1 to 6 − 0.5 scfm, of which 50 to 75 USD are saved each
    LeakLedger.Total saved = new LeakLedger(PRICE, List.of(still)).saved();
    assertThat(dollars(saved.leastMoney())).isCloseTo(150.0, within(1.0e-9));
    assertThat(dollars(saved.mostMoney().orElseThrow())).isCloseTo(412.5, within(1.0e-9));
    assertThat(new LeakLedger(PRICE, List.of(unknown)).saved().most()).isEmpty();
    assertThat(new LeakLedger(PRICE, List.of(tight)).entries()).isEmpty();
    assertThat(
            new LeakLedger(PRICE, List.of(tight)).lost().most().orElseThrow().kilogramsPerSecond())
        .isZero();
  }

  /** By hand: 1 scfm for 25 USD saves 50 to 75 USD, 10 scfm for 1000 USD 500 to 750; the dearest pays later. */
  @Test
  void the_round_says_which_repairs_pay_first() {
    LeakLedger ledger = new LeakLedger(
        PRICE,
        List.of(
            leak("large", flow(10.0, 10.0), "1000 USD"),
            leak("small", flow(1.0, 1.0), "25 USD"),
            leak("unpriced", flow(3.0, 3.0), ""),
            leak("unmeasured", LeakSize.notMeasured(), "20 USD"),
            leak("maybe nothing", flow(0.0, 1.0), "20 USD"),
            repaired(leak("paid", flow(9.0, 9.0), "20 USD"), MARCH)));
    LeakLedger.Round round = ledger.round();
    assertThat(round.inOrder())
        .extracting(entry -> entry.leak().tag())
        .containsExactly("small", "large", "maybe nothing");
    Payback small = round.inOrder().get(0).payback().orElseThrow();
    assertThat(small.shortestYears().orElseThrow()).isCloseTo(1.0 / 3.0, within(1.0e-9));
    assertThat(small.longestYears().orElseThrow()).isCloseTo(0.5, within(1.0e-9));
    assertThat(small.inWords()).isEqualTo("17 to 26 weeks");
    Payback maybe = round.inOrder().get(2).payback().orElseThrow();
    assertThat(maybe.longestYears()).isEmpty();
    assertThat(maybe.inWords()).isEqualTo("at least 14 weeks");
    // 1045 USD; 50 + 500 + 0 to 75 + 750 + 75 USD
    Payback together = round.together().orElseThrow();
    assertThat(together.longestYears().orElseThrow()).isCloseTo(1.9, within(1.0e-9));
    assertThat(together.shortestYears().orElseThrow()).isCloseTo(1045.0 / 900.0, within(1.0e-9));
    assertThat(round.leftOut()).containsExactly("unpriced", "unmeasured");
    Pencil.check(together);
    Completeness.check(together);
    Pencil.check(maybe);
    assertThat(new LeakLedger(PRICE, List.of()).round().together()).isEmpty();
  }

  @Test
  void a_payback_in_words() {
    Money none = Money.parse("0 USD");
    Money ten = Money.parse("10 USD");
    assertThat(new Payback("it", none, none, none).inWords()).isEqualTo("at once");
    assertThat(new Payback("it", ten, none, none).inWords()).isEqualTo("never");
    assertThat(new Payback("it", ten, none, none).working(UnitSystem.SI).toText())
        .contains("saves too little");
    assertThat(new Payback("it", ten, Money.parse("1000 USD"), Money.parse("2000 USD")).inWords())
        .isEqualTo("under a week");
    assertThat(new Payback("it", ten, ten, ten).inWords()).isEqualTo("1 year");
    assertThat(new Payback("it", ten, Money.parse("5 USD"), Money.parse("7 USD")).inWords())
        .isEqualTo("1.4 to 2 years");
    assertThat(new Payback("it", ten, Money.parse("5 USD"), Money.parse("20 USD")).inWords())
        .isEqualTo("26 weeks to 2 years");
    assertThat(new Payback("it", ten, Money.parse("100 USD"), Money.parse("1000 USD")).inWords())
        .isEqualTo("under a week to 5.2 weeks");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new Payback("it", ten, ten, none))
        .withMessageStartingWith("least saved in a year must be at most");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new Payback("it", Money.parse("-1 USD"), none, none))
        .withMessage("cost of a payback must be at least 0, was -1.00 USD");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new Payback("it", ten, Money.parse("-1 USD"), none));
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new Payback("it", Money.parse("1 EUR"), none, none))
        .withMessageContaining("currency");
  }

  /** A test of which everything is exact but the stop-watch: 40 to 60 scfm. */
  private static LeakTest between(double least, double most) {
    GaugePressure at = GaugePressure.ofPsi(100.0);
    return LeakTest.of(
        new LeakTest.Cycling(
            Duration.ofSeconds(100),
            Duration.ofSeconds(100),
            1,
            Duration.ZERO,
            new Range<>(scfm(2.0 * least), scfm(2.0 * most)),
            Range.exactly(at)),
        AbsolutePressure.ofPsi(14.7),
        at);
  }

  /** By hand: 20 to 24 of 40 to 50 scfm are 40 to 60 %, and 16 to 30 scfm are missing. */
  @Test
  void the_ledger_explains_a_part_of_what_the_test_shows() {
    List<Leak> leaks =
        new ArrayList<>(List.of(leak("A", flow(12.0, 14.0), ""), leak("B", flow(8.0, 10.0), "")));
    LeakLedger.Explained part =
        new LeakLedger(PRICE, leaks).against(between(40.0, 50.0), Optional.empty());
    assertThat(part.coverage()).isEqualTo(LeakLedger.Coverage.LOOK_ON);
    assertThat(part.inWords())
        .isEqualTo("The measured leaks explain 40 to 60 % of what the test shows: look on.");
    assertThat(scfm(part.missing().least())).isCloseTo(16.0, within(1.0e-9));
    assertThat(scfm(part.missing().most())).isCloseTo(30.0, within(1.0e-9));
    leaks.add(leak("C", LeakSize.notMeasured(), ""));
    assertThat(new LeakLedger(PRICE, leaks)
            .against(between(40.0, 50.0), Optional.empty())
            .inWords())
        .isEqualTo(
            "The measured leaks explain 40 to 60 % of what the test shows: look on, and first"
                + " measure what is found. A leak is not measured: C.");
    leaks.add(leak("D", flow(18.0, 26.0), ""));
    LeakLedger.Explained all =
        new LeakLedger(PRICE, leaks).against(between(40.0, 50.0), Optional.empty());
    assertThat(all.coverage()).isEqualTo(LeakLedger.Coverage.MAY_BE_ALL);
    assertThat(all.inWords())
        .startsWith("The measured leaks explain 76 to 125 % of what the test"
            + " shows: within the errors they may be all.");
    assertThat(all.missing().least().kilogramsPerSecond()).isZero();
    leaks.add(leak("E", flow(15.0, 15.0), ""));
    LeakLedger.Explained more =
        new LeakLedger(PRICE, leaks).against(between(40.0, 50.0), Optional.empty());
    assertThat(new LeakLedger(PRICE, leaks)
            .against(between(40.0, 54.0), Optional.empty())
            .coverage())
        .as("at least 53 of at most 54")
        .isEqualTo(LeakLedger.Coverage.MAY_BE_ALL);
    assertThat(more.coverage()).isEqualTo(LeakLedger.Coverage.MORE_THAN_TEST);
    assertThat(more.inWords()).contains("which cannot be");
    LeakLedger.Explained nothing =
        new LeakLedger(PRICE, leaks).against(between(0.0, 100.0), Optional.empty());
    assertThat(nothing.mostShare()).isEmpty();
    assertThat(nothing.inWords()).startsWith("The measured leaks explain at least 53 % of");
  }

  /** What was repaired after the test lost its air during it. */
  @Test
  void on_the_day_of_the_test_only_what_was_repaired_by_then_is_off() {
    Leak done = checked(
        repaired(leak("A", flow(12.0, 14.0), ""), MARCH), MARCH.plusDays(1), flow(0.0, 0.0));
    LeakLedger ledger = new LeakLedger(PRICE, List.of(done));
    LeakTest test = between(40.0, 50.0);
    assertThat(scfm(
            ledger.against(test, Optional.of(MARCH.minusDays(1))).measured().least()))
        .isCloseTo(12.0, within(1.0e-9));
    assertThat(ledger.against(test, Optional.of(MARCH)).measured().most().kilogramsPerSecond())
        .isZero();
    assertThat(ledger.against(test, Optional.empty()).measured().most().kilogramsPerSecond())
        .isZero();
    Leak unchecked = repaired(leak("A", flow(12.0, 14.0), ""), MARCH);
    Range<MassFlow> anything = new LeakLedger(PRICE, List.of(unchecked))
        .against(test, Optional.of(MARCH))
        .measured();
    assertThat(anything.least().kilogramsPerSecond()).isZero();
    assertThat(scfm(anything.most())).isCloseTo(14.0, within(1.0e-9));
  }

  @Test
  void a_ledger_that_contradicts_itself_is_refused() {
    Leak a = leak("A", flow(1.0, 1.0), "3 EUR");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new LeakLedger(PRICE, List.of(a)))
        .withMessage(
            "cost of the repair of leak A must be in USD as the price of electricity, was 3.00 EUR");
    Leak b = leak("A", flow(1.0, 1.0), "");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new LeakLedger(PRICE, List.of(b, b)))
        .withMessage("tag A must stand once, stands twice; give each leak its own");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> leak(" ", flow(1.0, 1.0), ""))
        .withMessage("tag of a leak must say something, was \" \"");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> leak("A", flow(1.0, 1.0), "-1 USD"))
        .withMessage("cost of the repair of leak A must be at least 0, was -1.00 USD");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> checked(b, MARCH, flow(0.0, 0.0)))
        .withMessage("leak A must be repaired before it is checked again, was checked on 2026-03-02"
            + " and not repaired");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> checked(repaired(b, MARCH), MARCH.minusDays(1), flow(0.0, 0.0)))
        .withMessageEndingWith("was checked on 2026-03-01 and repaired on 2026-03-02");
    List<Leak> many = new ArrayList<>();
    for (int i = 0; i <= 10_000; i++) {
      many.add(leak("T" + i, flow(1.0, 1.0), ""));
    }
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new LeakLedger(PRICE, many))
        .withMessage("leaks of a ledger must be at most 10000, were 10001");
  }

  @Test
  void no_hand_looks_for_a_leak_and_nobody_repairs_under_pressure() {
    List<Caution> cautions = new LeakLedger(PRICE, List.of()).cautions(UnitSystem.US);
    assertThat(cautions)
        .extracting(Caution::title)
        .contains("Never feel for a leak with a hand", "Energy isolation")
        .anyMatch(title -> title.startsWith("Wear hearing protection"));
    assertThat(cautions).doesNotHaveDuplicates();
  }

  /** Those that may lose nothing stand in the order of what they may lose, and in front of those nobody measured. */
  @Test
  void where_the_least_is_nothing_the_most_decides() {
    LeakLedger ledger = new LeakLedger(
        PRICE,
        List.of(
            leak("A", LeakSize.notMeasured(), ""),
            leak("B", flow(0.0, 1.0), ""),
            leak("C", flow(0.0, 3.0), ""),
            leak("D", LeakSize.notMeasured(), ""),
            leak("E", flow(0.0, 2.0), ""),
            leak("F", flow(0.5, 0.6), "")));
    assertThat(ledger.entries())
        .extracting(entry -> entry.leak().tag())
        .containsExactly("F", "C", "E", "B", "A", "D");
  }

  /** Two repairs that may save nothing: both may never pay, and the one that may pay sooner comes first. */
  @Test
  void of_repairs_that_may_never_pay_the_one_that_may_pay_sooner_comes_first() {
    LeakLedger ledger = new LeakLedger(
        PRICE,
        List.of(
            leak("slow", flow(0.0, 4.0), "400 USD"),
            leak("sooner", flow(0.0, 1.0), "20 USD"),
            leak("soon", flow(0.0, 2.0), "100 USD")));
    assertThat(ledger.round().inOrder())
        .extracting(entry -> entry.leak().tag())
        .containsExactly("sooner", "soon", "slow");
  }

  @Test
  void ten_thousand_leaks_are_a_ledger_and_a_repair_may_be_free() {
    List<Leak> many = new ArrayList<>();
    for (int i = 0; i < 10_000; i++) {
      many.add(leak("T" + i, flow(1.0, 1.0), i == 0 ? "0 USD" : ""));
    }
    LeakLedger ledger = new LeakLedger(PRICE, many);
    assertThat(ledger.leaks()).hasSize(10_000);
    assertThat(ledger.round().together().orElseThrow().inWords()).isEqualTo("at once");
  }

  /** What was found and what is left count together: either alone could be told in money, both cannot. */
  @Test
  void more_than_money_tells_is_refused() {
    AirPrice dear = new AirPrice(
        kilowatts(20.0),
        Range.exactly(kilowatts(5.0)),
        scfm(100.0),
        Duration.ofHours(5000),
        Money.parse("1000000000000000000 USD")); // 10^21 USD for a scfm in a year
    Leak found = leak("A", flow(6.0e8, 6.0e8), "");
    assertThat(new LeakLedger(dear, List.of(found)).lost().leastMoney().amount())
        .isPositive();
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new LeakLedger(dear, List.of(found, leak("B", flow(6.0e8, 6.0e8), ""))));
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new LeakLedger(
            dear, List.of(checked(repaired(found, MARCH), MARCH, flow(5.0e8, 6.0e8)))));
  }

  /** At exactly the least, or the most, of the test the measured leaks may be all of it. */
  @Test
  void at_its_bounds_the_test_may_be_explained() {
    LeakTest test = between(40.0, 40.0);
    Range<MassFlow> leak = test.leak();
    LeakSize same = LeakSize.ofFlow(
        Range.exactly(FreeAirFlow.from(leak.least(), org.airfit.quantity.ReferenceState.SCFM_60F)));
    LeakLedger.Explained all =
        new LeakLedger(PRICE, List.of(leak("A", same, ""))).against(test, Optional.empty());
    assertThat(all.measured()).as("nothing is rounded on the way").isEqualTo(leak);
    assertThat(all.coverage()).isEqualTo(LeakLedger.Coverage.MAY_BE_ALL);
    assertThat(all.inWords())
        .isEqualTo("The measured leaks explain 100 % of what the test shows: within the errors"
            + " they may be all.");
    assertThat(all).hasToString(all.inWords());
    LeakLedger.Explained nothing = new LeakLedger(PRICE, List.of(leak("A", flow(1.0, 1.0), "")))
        .against(between(0.0, 0.0), Optional.empty());
    assertThat(nothing.leastShare()).as("of nothing").isZero();
  }

  @Test
  void leaks_totals_and_rounds_are_told_in_one_line() {
    Leak open = leak("101", flow(1.0, 2.0), "25 USD");
    Leak exact = leak("102", flow(1.0, 1.0), "");
    assertThat(open.toString())
        .startsWith("leak 101, hall, hose clamp: ")
        .contains(" to ")
        .endsWith("; open");
    assertThat(exact.toString()).doesNotContain(" to ");
    Leak still = checked(repaired(open, MARCH), MARCH, flow(0.5, 1.0));
    assertThat(still.toString()).contains("; still leaks, left ");
    LeakLedger ledger =
        new LeakLedger(PRICE, List.of(open, exact, leak("103", LeakSize.notMeasured(), "")));
    assertThat(ledger.entries().toString())
        .contains("; rank 1 to ", "; at least 100.00 USD; paid back in ", "; cost not known");
    assertThat(
            ledger.entries().get(0).least().orElseThrow().working(UnitSystem.US).toText())
        .contains("leak 10");
    assertThat(ledger.lost().toString())
        .startsWith("at least ")
        .contains(" and 200.00 USD in a year")
        .endsWith("; not measured: 103");
    assertThat(new LeakLedger(PRICE, List.of(open)).lost().toString())
        .contains(" and 100.00 USD in a year, at most ")
        .endsWith(" and 200.00 USD");
    assertThat(ledger.round().toString())
        .startsWith("repairs: 1, paid back in ")
        .endsWith("; left out: 102, 103");
    assertThat(new LeakLedger(PRICE, List.of()).round()).hasToString("repairs: 0");
  }

  @Test
  void idling_may_take_as_much_as_loaded() {
    AirPrice price = new AirPrice(
        kilowatts(20.0),
        Range.exactly(kilowatts(20.0)),
        scfm(100.0),
        Duration.ofHours(5000),
        Money.parse("0.10 USD"));
    // a compressor that idles at full power saves nothing for sure
    assertThat(dollars(price.leastSaved("leak", scfm(1.0).massFlow()).money())).isZero();
  }

  @Test
  void shares_of_a_test_are_finite_and_rise() {
    LeakTest test = between(40.0, 50.0);
    for (double[] shares : new double[][] {
      {-0.1, 0.5}, {0.6, 0.5}, {Double.NaN, 0.5}, {0.1, Double.POSITIVE_INFINITY}, {0.1, Double.NaN}
    }) {
      assertThatIllegalArgumentException()
          .isThrownBy(() -> new LeakLedger.Explained(
              test,
              test.leak(),
              List.of(),
              shares[0],
              java.util.OptionalDouble.of(shares[1]),
              test.leak(),
              LeakLedger.Coverage.MAY_BE_ALL))
          .withMessageStartingWith("shares of a test must be finite, at least 0 and rise, were ");
    }
  }
}
