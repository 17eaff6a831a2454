package org.airfit.calls;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

class SelectCallTest {

  @SuppressWarnings("unchecked") // an answer is made of maps and lists
  private static List<Map<String, Object>> losses(Object of) {
    return (List<Map<String, Object>>) ((Map<String, Object>) of).get("losses");
  }

  /** The job has a regulator first of all, set to 125 psig, which droops in a straight line. */
  @Test
  void the_regulator_at_the_supply_stands_first_among_the_losses_of_an_answer() throws Exception {
    Path job = Example.jobs().stream()
        .filter(each -> each.endsWith(Path.of("tyre-bay", "two-regulators-and-reel.json")))
        .findFirst()
        .orElseThrow();
    Map<String, Object> asked = new LinkedHashMap<>();
    asked.put("job", String.valueOf(job.getFileName()));
    asked.put("files", Example.filesOf(job));
    Map<?, ?> answer = Calls.answer("select", asked);
    Object proposal = ((List<?>) answer.get("proposals")).get(0);
    Object way = ((List<?>) ((Map<?, ?>) proposal).get("ways")).get(0);
    Map<String, Object> first = losses(way).get(0);
    assertThat(first)
        .containsEntry("name", "regulator at the supply")
        .containsEntry("share", "")
        .containsEntry("gain", "")
        .containsEntry("fraction", 0.0);
    assertThat(String.valueOf(first.get("loss"))).endsWith(" psi");
    assertThat(first.get("notes").toString()).contains("set to 125 psig");
    double sum =
        losses(way).stream().mapToDouble(loss -> (double) loss.get("fraction")).sum();
    assertThat(sum).as("the shares are of the losses behind it").isCloseTo(1.0, within(1.0e-9));
    double outlet = (double) ((Map<?, ?>) first.get("outlet")).get("bar");
    double inlet = (double) ((Map<?, ?>) first.get("inlet")).get("bar");
    assertThat(inlet).isGreaterThan(outlet);
    assertThat(((Map<?, ?>) losses(way).get(1).get("inlet")).get("bar")).isEqualTo(outlet);
  }
}
