package org.airfit.run;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Comparator;
import java.util.SplittableRandom;
import java.util.concurrent.atomic.AtomicInteger;
import org.airfit.air.AirState;
import org.airfit.flow.FlowCapacity;
import org.airfit.flow.FlowElement;
import org.airfit.line.Conduit;
import org.airfit.plant.RegulatorElement;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.Length;
import org.airfit.quantity.SonicConductance;
import org.airfit.quantity.Temperature;
import org.junit.jupiter.api.Test;

/**
 * What a verdict on a run costs that asks for the pressure, all that is lost and what holds the tool back, as millions
 * of rows do; and that it is what the shares of all elements say.
 */
class VerdictEffortTest {

  private static final FreeAirFlow FLOW = FreeAirFlow.ofAnrLitresPerSecond(5.0);
  private static final GaugePressure NEEDED = GaugePressure.ofBar(6.0);

  private final AtomicInteger asked = new AtomicInteger();
  private final AtomicInteger askedForTheLargest = new AtomicInteger();

  /** Takes a part of the pressure, passes no more than a flow, and counts what it is asked. */
  private final class Counting implements FlowElement {
    private final double left;
    private final double most;

    Counting(double left, double most) {
      this.left = left;
      this.most = most;
    }

    @Override
    public double outlet(double flow, double pascals, double kelvins, double viscosity) {
      asked.incrementAndGet();
      return flow <= most ? pascals * left : Double.NaN;
    }

    @Override
    public double largest(double pascals, double kelvins, double viscosity) {
      askedForTheLargest.incrementAndGet();
      return most;
    }
  }

  private static Run fromEightBar() {
    return Run.from(
        AirState.of(AbsolutePressure.ofBar(8.0), Temperature.ofCelsius(20.0)),
        AbsolutePressure.STANDARD_ATMOSPHERE);
  }

  @Test
  void a_verdict_asks_each_element_once_and_again_for_what_each_in_front_of_it_costs() {
    Run run = fromEightBar();
    for (String name : new String[] {"pipe", "filter", "coupler", "hose"}) {
      run = run.through(name, new Counting(0.99, 1.0));
    }
    RunResult.Delivered found = delivered(run.at(FLOW));
    assertThat(asked).as("from the supply to the tool").hasValue(4);
    assertThat(found.lost().pascals()).isPositive();
    assertThat(found.justEnough(NEEDED)).isEmpty();
    assertThat(found.lessThanAGaugeShows(NEEDED)).isEmpty();
    assertThat(asked).as("no more for what is lost").hasValue(4);
    assertThat(found.bottleneck().gain().pascals()).isPositive();
    assertThat(asked).as("without each: 3, 2, 1 and none behind it").hasValue(4 + 6);
  }

  @Test
  void where_the_air_does_not_get_there_nothing_is_searched_before_it_is_asked_for() {
    RunResult.Starved found = fromEightBar()
        .through("pipe", new Counting(0.99, 1.0))
        .through("hose", new Counting(0.99, 0.001))
        .at(FLOW)
        .fold(
            delivered -> {
              throw new AssertionError(delivered);
            },
            starved -> starved);
    assertThat(found.element()).isEqualTo("hose");
    assertThat(asked).hasValue(2);
    assertThat(askedForTheLargest).hasValue(0);
    assertThat(found.largest().kilogramsPerSecond()).isEqualTo(0.001);
    assertThat(found.before()).hasSize(1);
    assertThat(askedForTheLargest).hasValue(1);
  }

  private static RunResult.Delivered delivered(RunResult result) {
    return result.fold(delivered -> delivered, starved -> {
      throw new AssertionError(starved);
    });
  }

  @Test
  void it_says_to_the_last_bit_what_the_shares_of_all_elements_say() {
    SplittableRandom random = new SplittableRandom(18);
    int justEnough = 0;
    for (int i = 0; i < 2000; i++) {
      Run run = fromEightBar();
      int count = 1 + random.nextInt(6);
      for (int element = 0; element < count; element++) {
        run = longer(run, "element " + element, random);
      }
      RunResult result = run.at(FreeAirFlow.ofAnrLitresPerSecond(random.nextDouble(0.1, 20.0)));
      justEnough += result.fold(this::sameAsOfShares, starved -> 0);
    }
    assertThat(justEnough).isBetween(50, 1950);
  }

  private static Run longer(Run run, String name, SplittableRandom random) {
    FlowCapacity capacity = FlowCapacity.of(
        SonicConductance.ofCubicDecimetresPerSecondBar(random.nextDouble(3.0, 12.0)), 0.3);
    return switch (random.nextInt(3)) {
      case 0 -> run.through(name, capacity);
      case 1 ->
        run.through(
            name,
            RegulatorElement.of(capacity, AbsolutePressure.ofBar(random.nextDouble(6.5, 8.5))));
      default ->
        run.through(
            name,
            Conduit.of(
                Length.ofMillimetres(random.nextDouble(6.0, 16.0)),
                Length.ofMetres(random.nextDouble(1.0, 20.0)),
                Length.ofMillimetres(0.01)));
    };
  }

  /** 1 where it is just enough. */
  private int sameAsOfShares(RunResult.Delivered found) {
    assertThat(found.bottleneck())
        .isEqualTo(
            found.shares().stream().max(Comparator.comparing(ElementLoss::gain)).orElseThrow());
    double regulated = found.shares().stream()
        .mapToDouble(share -> share.regulated().pascals())
        .sum();
    assertThat(Double.doubleToRawLongBits(found.lost().pascals()))
        .isEqualTo(Double.doubleToRawLongBits(
            Math.max(0.0, found.atSupply().dropTo(found.atTool()).pascals() - regulated)));
    double lost =
        found.shares().stream().mapToDouble(share -> share.lost().pascals()).sum();
    GaugePressure needed = GaugePressure.ofPascals(found.atToolGauge().pascals() - 0.1 * lost);
    double over = found.atToolGauge().pascals() - needed.pascals();
    assertThat(found.justEnough(needed).isPresent()).isEqualTo(over >= 0.0 && over < 0.1 * lost);
    return found.justEnough(needed).isPresent() ? 1 : 0;
  }
}
