package org.airfit.counter;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.PrintStream;
import java.nio.file.Path;
import java.util.concurrent.atomic.AtomicReference;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A short load; the long one is .ci/load. */
class LoadTest {

  @Test
  void twenty_clients_get_right_answers_for_three_seconds(@TempDir Path folder) throws Exception {
    PrintStream out = System.out;
    Load.Tally tally = Load.run(
        folder,
        /* clients= */ 20,
        /* seconds= */ 3,
        /* warmUp= */ 0,
        /* each= */ 3,
        /* seed= */ 7,
        out);
    assertThat(tally.wrong()).isEmpty();
    assertThat(tally.answered()).isGreaterThan(20);
  }

  @Test
  void an_answer_with_another_mark_or_another_number_is_found() throws Exception {
    LoadCases.Case one = new LoadCases.Case(
        "/select",
        "{}",
        LoadCases.MAPPER.readTree("{\"title\": \"" + LoadCases.MARK + "\", \"bar\": 6.2}"),
        new AtomicReference<>(""));
    assertThat(one.isAnswered("mark-0000007", "{\"bar\":6.2,\"title\":\"mark-0000007\"}"))
        .isTrue();
    assertThat(one.isAnswered("mark-0000008", "{\"bar\":6.2,\"title\":\"mark-0000007\"}"))
        .isFalse();
    assertThat(one.isAnswered("mark-0000007", "{\"bar\":6.3,\"title\":\"mark-0000007\"}"))
        .isFalse();
  }
}
