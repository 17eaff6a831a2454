package org.airfit;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.airfit.run.WiderHose;
import org.airfit.select.Doubt;
import org.airfit.select.Offer;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class FuzzerTest {

  /** A type with one fault of each kind, and the same things documented. */
  public static final class Faulty {

    private final double number;

    private Faulty(double number) {
      this.number = number;
    }

    public static Faulty ofUndocumented(double number) {
      if (!(number > 0.0)) {
        throw new IllegalArgumentException("must be above 0");
      }
      return new Faulty(1.0);
    }

    public static Faulty ofDocumented(double number) {
      if (!(number > 0.0)) {
        throw new IllegalArgumentException("must be above 0");
      }
      return new Faulty(1.0);
    }

    public static Faulty parse(String text) {
      return new Faulty(Integer.parseInt(text, 36));
    }

    public double ratio() {
      return number / 0.0;
    }

    public double ratioDocumented() {
      return number / 0.0;
    }

    public int slow() {
      ThreadMXBean clock = ManagementFactory.getThreadMXBean();
      int sum = 0;
      for (long start = clock.getCurrentThreadCpuTime();
          clock.getCurrentThreadCpuTime() - start < 110_000_000L; ) {
        sum++;
      }
      return sum;
    }

    public Faulty broken() {
      return new Faulty(Double.NaN);
    }

    @Override
    public String toString() {
      return "faulty " + number;
    }
  }

  /**
   * No call returned these types in a million of each kind; without one to begin with their methods are never called.
   */
  @Test
  void the_values_to_begin_with_are_of_every_type_that_chance_does_not_make() {
    assertThat(FuzzSeeds.values().stream().map(Object::getClass))
        .contains(WiderHose.class, Doubt.class, Offer.class);
  }

  @Test
  void every_kind_of_fault_is_found_and_what_is_documented_is_not(@TempDir Path folder)
      throws IOException {
    Files.writeString(folder.resolve("FuzzerTest.java"), """
        class FuzzerTest {
          /** @throws IllegalArgumentException if it is not above 0 */
          public static Faulty ofDocumented(double number) {}

          /** {@return a ratio; infinite here} */
          public double ratioDocumented() {}
        }
        """);
    Fuzzer fuzzer = new Fuzzer(1L, List.of(Faulty.class), Documented.in(folder));
    Fuzzer.Count factories = fuzzer.run(Fuzzer.Kind.FACTORIES, 200L);
    assertThat(factories.calls()).isEqualTo(200L);
    assertThat(factories.answers()).isPositive();
    assertThat(factories.refusals()).isPositive();
    fuzzer.run(Fuzzer.Kind.PARSERS, 50L);
    fuzzer.run(Fuzzer.Kind.METHODS, 12L);
    assertThat(fuzzer.found().keySet().stream()
            .map(key -> key.replaceAll(" .*", ""))
            .distinct())
        .containsExactlyInAnyOrder(
            "FuzzerTest$Faulty.broken",
            "FuzzerTest$Faulty.ofUndocumented",
            "FuzzerTest$Faulty.parse",
            "FuzzerTest$Faulty.ratio");
    assertThat(fuzzer.slow().keySet()).containsExactly("FuzzerTest$Faulty.slow");
  }

  /** A small part of what the profile does: the layers from the quantities to the runs. */
  @Test
  void the_flow_of_air_gives_nothing_but_what_is_documented() {
    List<Class<?>> types = Fuzzer.publicTypes().stream()
        .filter(type -> Stream.of("quantity", "air", "flow", "line", "run")
            .anyMatch(name -> type.getPackageName().equals("org.airfit." + name)))
        .toList();
    Fuzzer fuzzer = new Fuzzer(13L, types, Documented.in(Path.of("src", "main", "java")));
    fuzzer.warmUp();
    for (Fuzzer.Kind kind : Fuzzer.Kind.values()) {
      assertThat(fuzzer.run(kind, 3_000L).answers()).as(kind.toString()).isGreaterThan(300L);
    }
    assertThat(fuzzer.found()).isEmpty();
  }

  @Test
  void what_is_left_of_a_rounding_is_known_from_what_people_type() {
    assertThat(Stream.of(
            "atmosphere of 101299.99999999999 Pa(a)",
            "was 0.30000000000000004",
            "was 4.700000000000001E-4 m"))
        .allMatch(Fuzzer::showsNoise);
    assertThat(Stream.of(
            "was 101300.0 Pa(a)",
            "was \"0.30000000000000004 mm\"",
            "was 1.0E11",
            "0.0000000000000001",
            "at most 9223372036854775807",
            "0.845154254729"))
        .noneMatch(Fuzzer::showsNoise);
  }

  /** The definition of a unit is exact, with as many digits as it has: a pound-force is 4.4482216152605 N. */
  private static final List<String> DEFINITIONS =
      List.of("quantity.Unit.definition ", "quantity.UnitScale.definition ");

  /**
   * A label reads back exactly, as toString does: a length that no unit has in few digits keeps them all. A chain names
   * its ends by their labels.
   */
  private static final List<String> READ_BACK = List.of(
      "quantity.Length.label ",
      "joint.End$Tube.label ",
      "joint.End$PushIn.label ",
      "joint.End$HoseEnd.label ",
      "joint.Chain.inWords ");

  /** Whoever types sizes of thousands of kilometres has them to the thousandth of a millimetre. */
  private static final List<String> TO_MICRONS =
      List.of("plug.SizeDifference.inWords ", "measure.SampleSize.inWords ");

  /** That an amount of money has too many decimals is told with all of them. */
  private static final String WITH_ITS_DECIMALS = "select.PartFacts.withPrice price of part ";

  /** Whoever types four digits is not told thirteen, by a refusal or in words. */
  @Test
  void no_refusal_and_no_sentence_shows_what_is_left_of_a_rounding() {
    Fuzzer fuzzer =
        new Fuzzer(7L, Fuzzer.publicTypes(), Documented.in(Path.of("src", "main", "java")));
    fuzzer.typeNumbers();
    fuzzer.warmUp();
    for (Fuzzer.Kind kind : Fuzzer.Kind.values()) {
      assertThat(fuzzer.run(kind, Long.getLong("airfit.fuzz.typed", 4_000L)).refusals())
          .as(kind.toString())
          .isGreaterThan(100L);
    }
    assertThat(fuzzer.noisy().keySet())
        .as(fuzzer.noisy().toString())
        .allMatch(text -> Stream.of(DEFINITIONS, READ_BACK, TO_MICRONS, List.of(WITH_ITS_DECIMALS))
            .flatMap(List::stream)
            .anyMatch(text::startsWith));
  }
}
