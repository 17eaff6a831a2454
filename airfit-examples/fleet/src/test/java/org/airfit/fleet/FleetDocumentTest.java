package org.airfit.fleet;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;

/** docs/fleet.md tells of every column that goes in and comes out, and of every verdict. */
class FleetDocumentTest {

  @Test
  void every_column_and_verdict_is_told() throws Exception {
    String page = Files.readString(Path.of("..", "..", "docs", "fleet.md"));
    List<String> words = new ArrayList<>(DropFields.LABELS);
    words.addAll(DropFields.PLACE.paths());
    words.addAll(DropFields.TOOL.paths());
    for (String item : DropFields.ITEM.paths()) {
      assertThat(page).containsAnyOf("`now[1]." + item + "`", "`." + item + "`");
    }
    for (String column : DropAnswers.SCHEMA.fieldNames()) {
      if (!column.equals(Outcome.COLUMN)) {
        words.add(column);
      }
    }
    for (DropVerdict verdict : DropVerdict.values()) {
      words.add(verdict.word());
    }
    for (String word : words) {
      assertThat(page).as(word.toLowerCase(Locale.ROOT)).contains("`" + word + "`");
    }
  }
}
