package org.airfit.files;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.function.Function;
import java.util.stream.Stream;
import org.airfit.flow.Rating;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.Length;
import org.airfit.quantity.Money;
import org.airfit.quantity.Power;
import org.airfit.quantity.PressureDrop;
import org.airfit.quantity.SonicConductance;
import org.airfit.quantity.Temperature;
import org.airfit.quantity.Volume;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

/** What no plant has is refused at the door of every file, and what one may have is not. */
class BoundsTest {

  private static final Path YARD = Path.of("..", "jobs", "boatyard");

  static Stream<Arguments> edges() {
    return Stream.of(
        edge(GaugePressure::parse, "3000 bar(g)", "3001 bar(g)"),
        edge(GaugePressure::parse, "-4.99 bar(g)", "-5.01 bar(g)"),
        edge(AbsolutePressure::parse, "3000 bar(a)", "3001 bar(a)"),
        edge(PressureDrop::parse, "3000 bar", "3001 bar"),
        edge(FreeAirFlow::parse, "1000000 L/s ANR", "1000100 L/s ANR"),
        edge(FreeAirFlow::parse, "0 scfm", "0.0000000001 L/s ANR"),
        edge(Length::parse, "1000000 m", "1000001 m"),
        edge(Length::parse, "0.0000000001 m", "0.00000000009 m"),
        edge(Temperature::parse, "2000 °C", "2001 °C"),
        edge(Temperature::parse, "-200 °C", "-201 °C"),
        edge(Volume::parse, "10000000 m3", "10000001 m3"),
        edge(SonicConductance::parse, "999999 dm3/(s bar)", "1000001 dm3/(s bar)"),
        edge(Rating::parse, "Cv 1.4", "Cv 1e12"),
        edge(Power::parse, "1000000 kW", "1000001 kW"),
        edge(Money::parse, "100000000 USD", "100000001 USD"));
  }

  private static Arguments edge(Function<String, ?> parser, String inside, String outside) {
    return Arguments.of(parser, inside, outside);
  }

  @ParameterizedTest(name = "{1} passes, {2} does not")
  @MethodSource("edges")
  void the_largest_passes_and_more_does_not(
      Function<String, ?> parser, String inside, String outside) {
    assertThatCode(() -> Bounds.within(parser.apply(inside))).doesNotThrowAnyException();
    Object beyond = parser.apply(outside);
    assertThatIllegalArgumentException()
        .isThrownBy(() -> Bounds.within(beyond))
        .withMessageMatching(".* must be .*in \\[.*\\].*; no plant has such a one, look at .*unit");
  }

  private static Job read(String job) throws WrongFileException {
    return Disk.job(
        YARD.resolve("job.json"), Document.fields(Json.read("job.json", job)), new ArrayList<>());
  }

  @ParameterizedTest(name = "{1} in {0}")
  @CsvSource({
    "air, 22 scfm, 1e200 scfm, tool.air, free-air flow",
    "air, 22 scfm, 20 to 1e200 scfm, tool.air, free-air flow",
    "air, 22 scfm, 0.0000000000001 scfm, tool.air, free-air flow",
    "pressure, 90 psig, 1e9 psig, tool.pressure, gauge pressure",
    "notAbove, 110 psig, 1e90 psig, tool.notAbove, gauge pressure",
    "pressure, 7.4 bar(g), 1e8 bar(g), supply.pressure, gauge pressure",
    "temperature, 15 °C, 1e5 °C, supply.temperature, temperature",
    "length, 38 m, 1e30 m, line[1].length, length",
    "reach, 10 m, 1e30 m, line[4].reach, length",
    "electricity, 0.16 USD, 1000000000000 USD, year.electricity, amount of money",
    "leakPerJoint, 0.05 scfm, 1e30 scfm, year.leakPerJoint, free-air flow"
  })
  void a_job_is_refused_with_its_field_and_the_range(
      String field, String typed, String instead, String place, String what) throws Exception {
    String job = Files.readString(YARD.resolve("three-offers.json"));
    String cell = "\"" + field + "\": \"" + typed + "\"";
    assertThat(job).contains(cell);
    WrongFileException wrong = catchThrowableOfType(
        WrongFileException.class,
        () -> read(job.replace(cell, "\"" + field + "\": \"" + instead + "\"")));
    assertThat(wrong).as(instead).isNotNull();
    assertThat(wrong.place()).isEqualTo(place);
    assertThat(wrong.complaint())
        .contains("\"" + instead + "\": " + what + " must be ", "in [", "no plant has such a one");
  }

  @Test
  void a_number_without_a_unit_is_bounded_too() throws Exception {
    String job = Files.readString(YARD.resolve("three-offers.json"));
    WrongFileException wrong = catchThrowableOfType(
        WrongFileException.class,
        () -> read(job.replace("\"fittings\": 6.0", "\"fittings\": 1e200")));
    assertThat(wrong.place()).isEqualTo("line[1].fittings");
    assertThat(wrong.complaint()).contains("number without a unit must be in [-1e9, 1e9]");
  }

  @Test
  void the_page_on_job_files_lists_all_of_them() throws Exception {
    String page =
        Files.readString(Path.of("..", "..", "docs", "job-file.md"), StandardCharsets.UTF_8);
    assertThat(Bounds.ALL).hasSize(11);
    for (Bounds each : Bounds.ALL) {
      assertThat(page).contains("| " + each.what() + " | " + each.inWords() + " |\n");
    }
  }
}
