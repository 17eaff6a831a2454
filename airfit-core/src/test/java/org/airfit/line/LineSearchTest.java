package org.airfit.line;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.SplittableRandom;
import org.airfit.quantity.Length;
import org.airfit.quantity.MassFlow;
import org.junit.jupiter.api.Test;

/** How often the searches ask, and that they find the last flow, bore or length that arrives. */
class LineSearchTest {

  private static final int AWAY_FROM_JUMPS = 15;
  private static final int ANYWHERE = 60;

  private static void assertFewAsked(CountingModel model) {
    assertThat(model.count)
        .as(model.title())
        .isLessThanOrEqualTo(model.nearJump ? ANYWHERE : AWAY_FROM_JUMPS);
  }

  @Test
  void the_last_flow_that_arrives_is_found_in_few_steps() {
    SplittableRandom random = new SplittableRandom(7);
    int away = 0;
    for (int i = 0; i < 1_500; i++) {
      RandomLine line = RandomLine.of(random);
      for (LossModel each : RandomLine.models()) {
        CountingModel model = new CountingModel(each);
        LineSolution found = model.flowFor(line.conduit(), line.inlet(), line.outlet());
        assertFewAsked(model);
        away += model.nearJump ? 0 : 1;
        double flow = found.massFlow().kilogramsPerSecond();
        assertThat(line.arrives(each, line.conduit(), flow * (1.0 - 1.0e-12))).isTrue();
        assertThat(line.arrives(each, line.conduit(), flow * (1.0 + 1.0e-12))).isFalse();
      }
    }
    assertThat(away).as("cases away from jumps").isGreaterThan(5_000);
  }

  @Test
  void the_first_bore_that_arrives_is_found_in_few_steps() {
    SplittableRandom random = new SplittableRandom(8);
    int away = 0;
    for (int i = 0; i < 1_500; i++) {
      RandomLine line = RandomLine.of(random);
      double flow = line.flowAbout(random).kilogramsPerSecond();
      for (LossModel each : RandomLine.models()) {
        CountingModel model = new CountingModel(each);
        LineSolution found = model
            .boreFor(
                line.conduit(), MassFlow.ofKilogramsPerSecond(flow), line.inlet(), line.outlet())
            .orElse(null);
        assertFewAsked(model);
        away += model.nearJump ? 0 : 1;
        if (found == null) {
          assertThat(line.arrives(each, line.conduit().withBore(Length.ofMetres(10.0)), flow))
              .isFalse();
          continue;
        }
        double bore = found.conduit().bore().metres();
        Conduit wider = line.conduit().withBore(Length.ofMetres(bore * (1.0 + 1.0e-12)));
        assertThat(line.arrives(each, wider, flow)).isTrue();
        double narrower = bore * (1.0 - 1.0e-12);
        if (narrower
            > Math.max(1.0e-5, 20.0 * line.conduit().roughness().metres() * (1.0 + 1.0e-11))) {
          assertThat(line.arrives(each, line.conduit().withBore(Length.ofMetres(narrower)), flow))
              .isFalse();
        }
      }
    }
    assertThat(away).as("cases away from jumps").isGreaterThan(5_000);
  }

  @Test
  void the_last_length_that_arrives_is_found_in_few_steps() {
    SplittableRandom random = new SplittableRandom(9);
    int away = 0;
    for (int i = 0; i < 1_500; i++) {
      RandomLine line = RandomLine.of(random);
      double flow = line.flowAbout(random).kilogramsPerSecond();
      for (LossModel each : RandomLine.models()) {
        CountingModel model = new CountingModel(each);
        LineSolution found = model
            .lengthFor(
                line.conduit(), MassFlow.ofKilogramsPerSecond(flow), line.inlet(), line.outlet())
            .orElse(null);
        assertFewAsked(model);
        away += model.nearJump ? 0 : 1;
        if (found == null) {
          assertThat(line.arrives(each, line.conduit().withLength(Length.ofMetres(0.0)), flow))
              .isFalse();
          continue;
        }
        double length = found.conduit().length().metres();
        Conduit shorter = line.conduit().withLength(Length.ofMetres(length * (1.0 - 1.0e-12)));
        assertThat(line.arrives(each, shorter, flow)).isTrue();
        Conduit longer = line.conduit().withLength(Length.ofMetres(length * (1.0 + 1.0e-12)));
        assertThat(line.arrives(each, longer, flow)).isFalse();
      }
    }
    assertThat(away).as("cases away from jumps").isGreaterThan(5_000);
  }
}
