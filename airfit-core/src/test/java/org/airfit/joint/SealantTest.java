package org.airfit.joint;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.airfit.Rows;
import org.airfit.Rows.Row;
import org.airfit.quantity.NominalThreadSize;
import org.airfit.safety.Caution;
import org.airfit.source.Basis;
import org.airfit.thread.NptThread;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** What a joint's notes say, beside {@code sealing_practice.csv}. */
class SealantTest {

  /** What we say on a topic, and a phrase that must be in it for the row to be met. */
  private record Said(Supplier<String> ours, String phrase) {}

  private static final Map<String, Said> OURS = new LinkedHashMap<>();

  private static Mating mating(String male, String female) {
    return Mating.of(End.parse(male + " male"), End.parse(female + " female"));
  }

  private static String notes(String male, String female) {
    Mating mating = mating(male, female);
    return Stream.concat(mating.sealantNotes().stream(), mating.cautions().stream())
            .map(Caution::text)
            .collect(Collectors.joining(" "))
        + " " + mating.reason() + " " + mating.verdict().label();
  }

  static {
    Supplier<String> npt = () -> notes("NPT 1/2", "NPT 1/2");
    Supplier<String> large = () -> notes("NPT 2-1/2", "NPT 2-1/2");
    Supplier<String> g = () -> notes("G 1/2", "G 1/2");
    OURS.put("NPT taper threads are made up", new Said(npt, "wrench tight with a sealant"));
    OURS.put(
        "a jointing medium is used", new Said(() -> notes("R 1/2", "Rc 1/2"), "jointing medium"));
    OURS.put("the thread does not seal", new Said(g, "on a face"));
    OURS.put(
        "crests and roots are truncated",
        new Said(() -> notes("NPTF 1/2", "NPTF 1/2"), "No sealant is needed; a lubricant"));
    OURS.put(
        "nominal wrench make-up beyond hand tight",
        new Said(
            () -> mating("NPT 2", "NPT 2").engagement().orElseThrow().toString(),
            "3 turns by wrench"));
    OURS.put("usual workshop advice", new Said(npt, "two to three turns past hand tight"));
    OURS.put("hand tight means the L1 plane", new Said(npt, "up to two turns"));
    OURS.put("a taper joint turned back", new Said(npt, "undo it, clean both threads"));
    OURS.put("wrap the male thread", new Said(npt, "clockwise, seen from the open end"));
    OURS.put("start at or one thread back", new Said(npt, "keep the first thread bare"));
    OURS.put("sizes to 2: about four wraps", new Said(npt, "About four wraps"));
    OURS.put("other advice found", new Said(npt, "from two to eight"));
    OURS.put("sizes 2-1/2 and larger", new Said(large, "Eight wraps, or paste"));
    OURS.put("has no sealing purpose", new Said(g, "Tape has no purpose"));
    OURS.put(
        "sealant does not make an NPT-BSP pair safe",
        new Said(() -> notes("NPT 1/2", "G 1/2"), "the parts can separate"));
  }

  static Stream<Row> practice() {
    return Rows.of(SealantTest.class, "sealing_practice.csv").filter(row -> key(row) != null);
  }

  private static @org.jspecify.annotations.Nullable String key(Row row) {
    return OURS.keySet().stream()
        .filter(row.text("statement")::startsWith)
        .findFirst()
        .orElse(null);
  }

  @ParameterizedTest(name = "{0}, {index}")
  @MethodSource("practice")
  void the_notes_say_what_standards_and_the_trade_say(Row row) {
    Said said = Objects.requireNonNull(OURS.get(Objects.requireNonNull(key(row))));
    assertThat(said.ours().get())
        .as("%s (%s)", row.text("statement"), row.source())
        .contains(said.phrase());
  }

  /** Nobody's tape is prescribed, and how many threads trade advice finds normal is no nominal figure. */
  @Test
  void all_but_the_tape_specifications_and_one_figure_are_said() {
    assertThat(Rows.of(SealantTest.class, "sealing_practice.csv")
            .filter(row -> key(row) == null)
            .map(row -> row.text("statement")))
        .hasSize(3)
        .allMatch(text -> text.startsWith("MIL-T-27730A")
            || text.startsWith("A-A-58092")
            || text.startsWith("total engaged threads"));
  }

  @Test
  void advice_on_tape_is_marked_common_practice() {
    assertThat(mating("NPT 1/2", "NPT 1/2").sealantNotes())
        .filteredOn(note -> note.title().contains("tape"))
        .isNotEmpty()
        .allSatisfy(note -> assertThat(note.source().basis()).isEqualTo(Basis.COMMON_PRACTICE));
    for (NominalThreadSize size :
        List.of(NominalThreadSize.TWO, NominalThreadSize.TWO_AND_A_HALF)) {
      assertThat(NptThread.of(size).wrenchTurns()).isEqualTo(size == NominalThreadSize.TWO ? 3 : 2);
    }
  }
}
