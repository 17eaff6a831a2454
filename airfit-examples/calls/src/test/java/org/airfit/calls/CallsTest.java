package org.airfit.calls;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.airfit.files.Disk;
import org.airfit.files.Json;
import org.airfit.jobsheet.JobSheet;
import org.airfit.jobsheet.TextSheet;
import org.junit.jupiter.api.Test;

/**
 * What a page answers is what the program prints. The answers of the JVM to a wide spread of calls are left in
 * target/answers.json, with which a script compares those of the JavaScript.
 */
class CallsTest {

  @Test
  void every_job_is_answered_as_by_the_program() throws Exception {
    List<Path> jobs = Example.jobs();
    assertThat(jobs).hasSizeGreaterThan(30);
    for (Path job : jobs) {
      Map<String, Object> asked = new LinkedHashMap<>();
      asked.put("job", String.valueOf(job.getFileName()));
      asked.put("files", Example.filesOf(job));
      assertThat(Calls.answer("sheet", asked).get("text"))
          .as("%s", job)
          .isEqualTo(TextSheet.of(JobSheet.of(Disk.job(job))));
    }
  }

  @Test
  void the_answers_to_a_wide_spread_of_calls_are_left_for_the_script() throws Exception {
    List<Object> answers = new ArrayList<>();
    Map<String, Integer> counts = new LinkedHashMap<>();
    for (Spread.Asking asking : Spread.askings()) {
      Map<String, Object> told = new LinkedHashMap<>();
      told.put("call", asking.call());
      told.put("asked", asking.asked());
      try {
        told.put("answer", Calls.answer(asking.call(), asking.asked()));
      } catch (RefusedException e) {
        Map<String, Object> refused = new LinkedHashMap<>();
        refused.put("name", e.name());
        refused.put("message", e.getMessage());
        refused.put("file", e.file());
        refused.put("field", e.field());
        refused.put("accepted", e.accepted());
        told.put("refused", refused);
      }
      counts.merge(
          asking.call() + (told.containsKey("refused") ? " refused" : ""), 1, Integer::sum);
      answers.add(told);
    }
    Files.writeString(Path.of("target", "answers.json"), Json.write(Map.of("answers", answers)));
    assertThat(counts.get("identify")).isGreaterThan(300);
    assertThat(counts.get("willItGo")).isGreaterThan(1000);
    assertThat(counts.get("run")).isGreaterThan(200);
    assertThat(counts.get("select")).isGreaterThan(70);
    assertThat(counts.get("sheet")).isGreaterThan(30);
    assertThat(counts.get("select refused")).isEqualTo(4);
    assertThat(counts.get("identify refused")).isEqualTo(8);
  }
}
