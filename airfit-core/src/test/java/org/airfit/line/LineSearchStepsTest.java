package org.airfit.line;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.SplittableRandom;
import org.airfit.quantity.MassFlow;
import org.junit.jupiter.api.Test;

/** That the searches ask for the loss eight times on average where no jump is near, as {@link LossModel} says. */
class LineSearchStepsTest {

  private static final double ON_AVERAGE = 8.0;

  /** What a search does with one of the random lines. */
  private interface Search {
    void of(LossModel model, RandomLine line, MassFlow flow);
  }

  private static double mean(Search search) {
    SplittableRandom random = new SplittableRandom(10);
    int asked = 0;
    int away = 0;
    for (int i = 0; i < 80; i++) {
      RandomLine line = RandomLine.of(random);
      MassFlow flow = line.flowAbout(random);
      for (LossModel each : RandomLine.models()) {
        CountingModel model = new CountingModel(each);
        search.of(model, line, flow);
        if (!model.nearJump) {
          asked += model.count;
          away++;
        }
      }
    }
    assertThat(away).isGreaterThan(300);
    return (double) asked / away;
  }

  @Test
  void a_flow_is_found_in_eight_steps_on_average() {
    assertThat(
            mean((model, line, flow) -> model.flowFor(line.conduit(), line.inlet(), line.outlet())))
        .isLessThan(ON_AVERAGE);
  }

  @Test
  void a_bore_is_found_in_eight_steps_on_average() {
    assertThat(mean((model, line, flow) ->
            model.boreFor(line.conduit(), flow, line.inlet(), line.outlet())))
        .isLessThan(ON_AVERAGE);
  }

  @Test
  void a_length_is_found_in_eight_steps_on_average() {
    assertThat(mean((model, line, flow) ->
            model.lengthFor(line.conduit(), flow, line.inlet(), line.outlet())))
        .isLessThan(ON_AVERAGE);
  }
}
