package org.airfit.pinned;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalStateException;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Five hundred answers are as they were when a user last heard of them. They say changed, never right. */
class PinnedAnswersRegressionTest {

  private static final Path ROOT = Path.of("..");
  private static final Path FOLDER = ROOT.resolve(PinnedAnswers.FOLDER);

  private static final String ENTRY = "Cranes lift 2 % more than they did, 100 to 900 kg.";
  private static final String CHANGE_LOG = """
      ## Unreleased

      ### Fixed

      - A sentence about nothing that is long enough to be taken.

      ### Results changed

      - Cranes lift 2 % more than they did,
        100 to 900 kg.
      - Winches pull 1 % less at every load there is.

      ## 0.1.0

      ### Results changed

      - Hoists of that time held 5 % less than those before.
      """;

  private static Pin crane(String answer) {
    return new Pin("crane", "Load of a crane", answer, "kg");
  }

  private static final PinnedFile CRANES = new PinnedFile(
      List.of(
          new PinnedFile.Pinned(crane("100.0"), 0),
          new PinnedFile.Pinned(new Pin("crane", "Whether it stands", "YES", Pin.WORD), 0)),
      List.of());

  private static List<Pin> answers(String load, String standing) {
    return List.of(crane(load), new Pin("crane", "Whether it stands", standing, Pin.WORD));
  }

  @Test
  void no_answer_changed_without_an_entry_in_the_change_log() throws IOException {
    PinnedFile pinned = PinnedFile.in(FOLDER);
    pinned.requireEntriesIn(Files.readString(ROOT.resolve("CHANGELOG.md")));
    assertThat(pinned.changes(PinnedAnswers.now()))
        .as("write an entry under \"Results changed\", then .ci/pinned renew \"ENTRY\"")
        .isEmpty();
  }

  @Test
  void five_hundred_answers_of_every_part_of_the_library_are_pinned() throws IOException {
    List<PinnedFile.Pinned> pins = PinnedFile.in(FOLDER).pins();
    assertThat(pins).hasSizeGreaterThanOrEqualTo(500);
    assertThat(pins.stream().map(row -> row.pin().area()).collect(Collectors.toSet()))
        .containsExactlyInAnyOrder(
            "quantity",
            "air",
            "measure",
            "thread",
            "joint",
            "plug",
            "flow",
            "line",
            "plant",
            "run",
            "network",
            "select");
    assertThat(pins.stream().map(row -> row.pin().id())).doesNotHaveDuplicates();
  }

  @Test
  void a_number_is_the_same_within_its_last_digits_and_a_word_only_as_it_is() {
    assertThat(CRANES.changes(answers("100.00000000000001", "YES"))).isEmpty();
    assertThat(CRANES.changes(answers("100.000000001", "YES"))).hasSize(1);
    assertThat(CRANES.changes(answers("100.0", "NO"))).hasSize(1);
    assertThat(CRANES.changes(List.of(crane("100.0")))).hasSize(1);
    List<Pin> more = new ArrayList<>(answers("100.0", "YES"));
    more.add(new Pin("crane", "Its height", "7.0", "m"));
    assertThat(CRANES.changes(more)).singleElement().asString().contains("not pinned yet");
  }

  @Test
  void a_changed_answer_is_not_pinned_without_an_entry_of_its_own() {
    List<Pin> changed = answers("102.0", "YES");
    for (String entry : List.of(
        "",
        "Cranes",
        "Cranes lift 3 % more than they did, 100 to 900 kg.",
        "A sentence about nothing that is long enough to be taken.")) {
      assertThatIllegalStateException()
          .as(entry)
          .isThrownBy(() -> CRANES.renewed(changed, entry, CHANGE_LOG))
          .withMessageContaining("Results changed");
    }
    assertThatIllegalStateException()
        .isThrownBy(() -> CRANES.renewed(
            changed, "Hoists of that time held 5 % less than those before.", CHANGE_LOG))
        .withMessageContaining("earlier version");
    PinnedFile renewed = CRANES.renewed(changed, ENTRY, CHANGE_LOG);
    assertThat(renewed.changes(changed)).isEmpty();
    assertThat(renewed.entries()).containsExactly(ENTRY);
    assertThat(renewed.pins()).extracting(PinnedFile.Pinned::change).containsExactly(1, 0);
    assertThatIllegalStateException()
        .isThrownBy(() -> renewed.renewed(answers("103.0", "YES"), ENTRY, CHANGE_LOG))
        .withMessageContaining("earlier change");
    assertThatIllegalStateException().isThrownBy(() -> renewed.requireEntriesIn("## Unreleased\n"));
  }

  @Test
  void a_question_that_is_asked_no_more_needs_an_entry_too_and_its_row_stays() {
    List<Pin> fewer = List.of(crane("100.0"));
    assertThatIllegalStateException().isThrownBy(() -> CRANES.renewed(fewer, "", CHANGE_LOG));
    PinnedFile renewed = CRANES.renewed(fewer, ENTRY, CHANGE_LOG);
    assertThat(renewed.pins()).hasSize(2);
    assertThat(renewed.changes(fewer)).isEmpty();
    assertThat(renewed.renewed(fewer, "", CHANGE_LOG)).isEqualTo(renewed);
  }

  @Test
  void what_a_release_pinned_is_neither_gone_nor_changed_in_silence() {
    PinnedFile changed = CRANES.renewed(answers("102.0", "YES"), ENTRY, CHANGE_LOG);
    changed.requireAllOf(CRANES);
    PinnedFile silent = new PinnedFile(
        List.of(new PinnedFile.Pinned(crane("102.0"), 0), CRANES.pins().get(1)), List.of());
    assertThatIllegalStateException().isThrownBy(() -> silent.requireAllOf(CRANES));
    PinnedFile fewer = new PinnedFile(CRANES.pins().subList(0, 1), List.of());
    assertThatIllegalStateException().isThrownBy(() -> fewer.requireAllOf(CRANES));
  }

  @Test
  void an_answer_edited_by_hand_is_noticed(@TempDir Path folder) throws IOException {
    PinnedFile changed = CRANES.renewed(answers("102.0", "YES"), ENTRY, CHANGE_LOG);
    changed.writeTo(folder);
    assertThat(PinnedFile.in(folder)).isEqualTo(changed);
    Path answers = folder.resolve("answers.csv");
    Files.writeString(answers, Files.readString(answers).replace("102.0", "104.0"));
    assertThatIllegalStateException()
        .isThrownBy(() -> PinnedFile.in(folder))
        .withMessageContaining("by hand");
  }
}
