package org.airfit.plant;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Size;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.MassFlow;
import org.airfit.quantity.Money;
import org.airfit.quantity.Power;
import org.airfit.quantity.Range;
import org.airfit.quantity.Temperature;
import org.airfit.quantity.Volume;

class LeakProperties {

  private static final AbsolutePressure AROUND = AbsolutePressure.ofBar(1.0);
  private static final Temperature WALLS = Temperature.ofCelsius(20.0);
  private static final GaugePressure AT = GaugePressure.ofBar(7.0);

  private static Range<GaugePressure> about(double bar, double error) {
    return new Range<>(GaugePressure.ofBar(bar - error), GaugePressure.ofBar(bar + error));
  }

  private static Range<MassFlow> fall(
      double p1,
      double p2,
      double gauge,
      double seconds,
      double watch,
      double volume,
      double cold) {
    return LeakTest.of(
            new LeakTest.Falling(
                new Range<>(Volume.ofCubicMetres(1.0 - volume), Volume.ofCubicMetres(1.0 + volume)),
                about(p1, gauge),
                about(p2, gauge),
                Duration.ofNanos(Math.round(1.0e9 * seconds)),
                Duration.ofNanos(Math.round(1.0e9 * watch)),
                WALLS,
                Optional.of(Temperature.ofKelvins(WALLS.kelvins() - cold))),
            AROUND,
            AT)
        .leak();
  }

  private static boolean holds(Range<MassFlow> wide, Range<MassFlow> narrow) {
    double hair = 1.0e-12 * wide.most().kilogramsPerSecond();
    return wide.least().kilogramsPerSecond() <= narrow.least().kilogramsPerSecond() + hair
        && wide.most().kilogramsPerSecond() >= narrow.most().kilogramsPerSecond() - hair;
  }

  /** Whatever may be wrong by more, the answer is a wider range around the narrower one. */
  @Property(tries = 300)
  void a_fall_that_is_read_less_well_is_a_wider_range(
      @ForAll @DoubleRange(min = 5.0, max = 9.0) double p1,
      @ForAll @DoubleRange(min = 2.0, max = 4.5) double p2,
      @ForAll @DoubleRange(min = 0.0, max = 0.2) double gauge,
      @ForAll @DoubleRange(min = 0.0, max = 5.0) double watch,
      @ForAll @DoubleRange(min = 0.0, max = 0.2) double volume,
      @ForAll @DoubleRange(min = 0.0, max = 40.0) double cold,
      @ForAll @IntRange(min = 0, max = 3) int which) {
    Range<MassFlow> narrow = fall(p1, p2, gauge, 300.0, watch, volume, cold);
    Range<MassFlow> wide = fall(
        p1,
        p2,
        gauge + (which == 0 ? 0.1 : 0.0),
        300.0,
        watch + (which == 1 ? 2.0 : 0.0),
        volume + (which == 2 ? 0.1 : 0.0),
        cold + (which == 3 ? 10.0 : 0.0));
    assertThat(holds(wide, narrow)).as("%s in %s", narrow, wide).isTrue();
  }

  /**
   * The bounds hold for whatever temperatures the air goes through between that of the walls and that of no heat: here a
   * path of steps, of which each cools with less than all the cold, warms or stays, integrated by itself.
   */
  @Property(tries = 300)
  void the_bounds_hold_for_any_way_in_which_the_walls_give_heat(
      @ForAll @DoubleRange(min = 2.0, max = 8.0) double p2,
      @ForAll @Size(12) List<@DoubleRange(min = 0.0, max = 1.0) Double> steps) {
    double p1 = 8.5;
    double fall = Math.log((p1 + 1.0) / (p2 + 1.0));
    // u = √(T1/T) grows at most as e^(x/7); heat from the walls lets it fall, to 1 at least
    int n = 1200;
    double dx = fall / n;
    double u = 1.0;
    double coldest = 1.0;
    double time = 0.0; // in units of τ
    for (int i = 0; i < n; i++) {
      double part = steps.get(i * steps.size() / n);
      double next = part < 0.3
          ? Math.max(1.0, u - 3.0 * part * dx)
          : Math.min(u * Math.exp(dx / 7.0), u * (1.0 + (part - 0.3) / 0.7 * dx / 7.0));
      // dt = (1 − ε) u dx with ε dx = 2 d ln u
      time += 0.5 * (u + next) * dx - 2.0 * (next - u);
      u = next;
      coldest = Math.max(coldest, u);
    }
    // 1 m³, τ = 100 s: the leak at 7 bar(g) is V p/(R T1 τ)
    double leak = 8.0e5 / (287.05287 * WALLS.kelvins() * 100.0);
    double seconds = 100.0 * time;
    Range<MassFlow> insulated = fall(p1, p2, 0.0, seconds, 0.0, 0.0, WALLS.kelvins() / 2.0);
    double cold = WALLS.kelvins() * (1.0 - 1.0 / (coldest * coldest));
    Range<MassFlow> told = fall(p1, p2, 0.0, seconds, 0.0, 0.0, cold);
    for (Range<MassFlow> bounds : List.of(insulated, told)) {
      assertThat(leak)
          .isBetween(
              bounds.least().kilogramsPerSecond() * (1.0 - 1.0e-6),
              bounds.most().kilogramsPerSecond() * (1.0 + 1.0e-6));
    }
  }

  @Property(tries = 300)
  void load_timing_that_is_read_less_well_is_a_wider_range(
      @ForAll @IntRange(min = 20, max = 300) int loaded,
      @ForAll @IntRange(min = 20, max = 300) int unloaded,
      @ForAll @IntRange(min = 1, max = 10) int cycles,
      @ForAll @DoubleRange(min = 0.0, max = 1.5) double watch,
      @ForAll @DoubleRange(min = 0.0, max = 1.0) double band,
      @ForAll @IntRange(min = 0, max = 2) int which) {
    Range<MassFlow> narrow = timed(loaded, unloaded, cycles, watch, band, 0.05);
    Range<MassFlow> wide = timed(
        loaded,
        unloaded,
        cycles,
        watch + (which == 0 ? 0.3 : 0.0),
        band + (which == 1 ? 0.2 : 0.0),
        which == 2 ? 0.1 : 0.05);
    assertThat(holds(wide, narrow)).isTrue();
    assertThat(holds(narrow, timed(loaded, unloaded, cycles, 0.0, 0.0, 0.0))).isTrue();
  }

  private static Range<MassFlow> timed(
      int loaded, int unloaded, int cycles, double watch, double band, double delivery) {
    return LeakTest.of(
            new LeakTest.Cycling(
                Duration.ofSeconds(loaded),
                Duration.ofSeconds(unloaded),
                cycles,
                Duration.ofNanos(Math.round(1.0e9 * watch)),
                new Range<>(
                    FreeAirFlow.ofAnrLitresPerSecond(50.0 * (1.0 - delivery)),
                    FreeAirFlow.ofAnrLitresPerSecond(50.0 * (1.0 + delivery))),
                about(7.0, band)),
            AROUND,
            AT)
        .leak();
  }

  /** Ranks against all orders that sizes within their ranges can have: every leak taken at either end. */
  @Property(tries = 200)
  void the_rank_of_a_leak_holds_all_ranks_that_it_can_have(
      @ForAll @Size(min = 1, max = 6) List<@DoubleRange(min = 0.0, max = 9.0) Double> least,
      @ForAll @Size(6) List<@DoubleRange(min = 0.0, max = 4.0) Double> more) {
    AirPrice price = new AirPrice(
        Power.ofKilowatts(10.0),
        Range.exactly(Power.ofKilowatts(2.0)),
        FreeAirFlow.ofAnrLitresPerSecond(30.0),
        Duration.ofHours(4000),
        Money.parse("0.2 EUR"));
    List<Leak> leaks = new ArrayList<>();
    for (int i = 0; i < least.size(); i++) {
      leaks.add(new Leak(
          "T" + i,
          "hall",
          "joint",
          LeakSize.ofFlow(new Range<>(
              FreeAirFlow.ofAnrLitresPerSecond(least.get(i)),
              FreeAirFlow.ofAnrLitresPerSecond(least.get(i) + more.get(i)))),
          Optional.of(Money.parse((i + 1) + " EUR")),
          Optional.empty(),
          Optional.empty()));
    }
    LeakLedger ledger = new LeakLedger(price, leaks);
    double cost = 0.0;
    for (LeakLedger.Entry entry : ledger.entries()) {
      int me = leaks.indexOf(entry.leak());
      int best = leaks.size();
      int worst = 1;
      for (int ends = 0; ends < 1 << leaks.size(); ends++) {
        int rank = 1;
        for (int i = 0; i < leaks.size(); i++) {
          rank += i != me && at(least, more, i, ends) > at(least, more, me, ends) ? 1 : 0;
        }
        best = Math.min(best, rank);
        worst = Math.max(worst, rank);
      }
      assertThat(entry.bestRank()).isEqualTo(best);
      assertThat(entry.worstRank()).isEqualTo(worst);
      cost += entry.least().orElseThrow().money().amount().doubleValue();
    }
    assertThat(ledger.lost().leastMoney().amount().doubleValue())
        .isCloseTo(cost, within(1.0e-9 * (1.0 + cost)));
    // the least saved of all is the sum of the least, and no repair that pays sooner stands later
    double latest = 0.0;
    for (LeakLedger.Entry entry : ledger.round().inOrder()) {
      double years = entry.payback().orElseThrow().longestYears().orElse(Double.POSITIVE_INFINITY);
      assertThat(years).isGreaterThanOrEqualTo(latest);
      latest = years;
    }
  }

  /** As mass: two volumes that differ by less than that tells are one. */
  private static double at(List<Double> least, List<Double> more, int i, int ends) {
    return FreeAirFlow.ofAnrLitresPerSecond(
            least.get(i) + ((ends >> i & 1) == 1 ? more.get(i) : 0.0))
        .massFlow()
        .kilogramsPerSecond();
  }
}
