package org.airfit.calls;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.junit.jupiter.api.Test;

class SelectCallTest {

  @SuppressWarnings("unchecked") // an answer is made of maps and lists
  private static List<Map<String, Object>> losses(Object of) {
    return (List<Map<String, Object>>) in(of, "losses");
  }

  private static Object in(Object answer, String field) {
    return Objects.requireNonNull(((Map<?, ?>) answer).get(field), field);
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
    Object proposal = ((List<?>) in(answer, "proposals")).get(0);
    Object way = ((List<?>) in(proposal, "ways")).get(0);
    Map<String, Object> first = losses(way).get(0);
    assertThat(first)
        .containsEntry("name", "regulator at the supply")
        .containsEntry("share", "")
        .containsEntry("gain", "")
        .containsEntry("fraction", 0.0);
    assertThat(String.valueOf(first.get("loss"))).endsWith(" psi");
    assertThat(in(first, "notes").toString()).contains("set to 125 psig");
    double sum =
        losses(way).stream().mapToDouble(loss -> (double) in(loss, "fraction")).sum();
    assertThat(sum).as("the shares are of the losses behind it").isCloseTo(1.0, within(1.0e-9));
    double outlet = (double) in(in(first, "outlet"), "bar");
    double inlet = (double) in(in(first, "inlet"), "bar");
    assertThat(inlet).isGreaterThan(outlet);
    assertThat(in(in(losses(way).get(1), "inlet"), "bar")).isEqualTo(outlet);
  }
}
