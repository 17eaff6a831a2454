package org.airfit.calls;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * What is typed into a form of the desk page and cannot be used is refused at the field where it was typed, as it was
 * typed, with what to type instead.
 */
class DeskFormsTest {

  private static final Map<String, Map<String, Object>> ASKED = Map.of(
      "leak",
      Spread.of(
          "hole", "1/16 in",
          "edge", "well rounded entrance",
          "pressure", "70 psig",
          "atmosphere", "14.7 psia",
          "temperature", "20 °C",
          "loadedPower", "37 kW",
          "unloadedPower", "0 kW",
          "delivery", "200 scfm",
          "hours", "4000",
          "electricity", "0.10 USD",
          "repairCost", "25 USD",
          "units", "US"),
      "condensate",
      Spread.of(
          "temperature", "80 °F",
          "humidity", "75 %",
          "pressure", "100 psig",
          "air", "500 scfm",
          "cooled", "100 °F",
          "time", "8 h",
          "atmosphere", "14.7 psia",
          "units", "US"));

  /** Each field with words, a negative value, one too large, a wrong unit, a range; what is taken stands after "=". */
  private static final String TYPED = """
      leak       | hole          | big   | -2 mm      | 100 mm         | 2 kg      | = 1 to 2 mm
      leak       | edge          | blunt | -1         | 1e9            | 1 mm      | sharp to rounded
      leak       | pressure      | high  | -5 psig    | 50000 psig     | 70 psia   | = 60 to 70 psig
      leak       | atmosphere    | air   | -1 psia    | 100 bar(a)     | 14.7 psig | 14 to 15 psia
      leak       | temperature   | warm  | -400 °F    | 600 °F         | 20 bar    | 10 to 20 °C
      leak       | loadedPower   | much  | -37 kW     | 37000000 kW    | 37 scfm   | 30 to 37 kW
      leak       | unloadedPower | much  | -1 kW      | 40 kW          | 4 scfm    | = 0 to 5 kW
      leak       | delivery      | lots  | -200 scfm  | 1e12 scfm      | 200 cfm   | 180 to 200 scfm
      leak       | hours         | long  | -4         | 9000           | 4000 h    | 3000 to 4000
      leak       | electricity   | cheap | -0.10 USD  | 1000000000 USD | 10 c/kWh  | 0.10 to 0.15 USD
      leak       | repairCost    | cheap | -25 USD    | 1000000000 USD | 25 EUR    | 20 to 40 USD
      leak       | units         | feet  | -1         | 1e9            | psi       | US to SI
      condensate | temperature   | warm  | -60 °F     | 500 °F         | 80 psig   | = 60 to 80 °F
      condensate | humidity      | damp  | -5 %       | 130 %          | 75 °F     | 30 to 75 %
      condensate | pressure      | high  | -5 psig    | 50000 psig     | 100 psia  | = 90 to 100 psig
      condensate | air           | lots  | -500 scfm  | 1e12 scfm      | 500 cfm   | = 400 to 500 scfm
      condensate | cooled        | cold  | -200 °F    | 300 °F         | 100 psig  | = 90 to 100 °F
      condensate | time          | day   | -8 h       | 9000 h         | 8 psig    | 6 to 8 h
      condensate | atmosphere    | air   | -1 psia    | 100 bar(a)     | 14.7 psig | 14 to 15 psia
      condensate | units         | feet  | -1         | 1e9            | psi       | US to SI
      """;

  /** What nobody types in these units: they are those of the library. */
  private static final Pattern OF_THE_LIBRARY =
      Pattern.compile("[0-9] (Pa|Pa[(][ag][)]|W|K|m|kg/s|m³/s)(?![a-z/³])");

  /** A field as it was filled, and whether it must be taken. */
  record Filled(String call, String field, String typed, boolean isTaken) {
    @Override
    public String toString() {
      return call + "." + field + " \"" + typed + "\"";
    }
  }

  static List<Filled> everyFieldFilledWrongly() {
    List<Filled> all = new ArrayList<>();
    for (String line : TYPED.lines().toList()) {
      String[] cells = line.strip().split(" *[|] *", -1);
      assertThat(cells).as(line).hasSize(7);
      all.add(new Filled(cells[0], cells[1], "", /* isTaken= */ false));
      for (int i = 2; i < cells.length; i++) {
        boolean isTaken = cells[i].startsWith("= ");
        all.add(
            new Filled(cells[0], cells[1], isTaken ? cells[i].substring(2) : cells[i], isTaken));
      }
    }
    for (String line : """
        leak | hole | 2 m
        leak | hole | 0 mm
        leak | pressure | 0 psig
        leak | loadedPower | 0 kW
        leak | delivery | 0 scfm
        condensate | humidity | 0 %
        condensate | humidity | 70
        condensate | humidity | 1
        condensate | humidity | 1.0
        condensate | pressure | 0 psig
        condensate | air | 0 scfm
        condensate | time | 0 h
        """.lines().toList()) {
      String[] cells = line.strip().split(" *[|] *", -1);
      all.add(new Filled(cells[0], cells[1], cells[2], /* isTaken= */ false));
    }
    return all;
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("everyFieldFilledWrongly")
  void what_is_typed_is_taken_or_refused_at_its_own_field(Filled filled) throws RefusedException {
    Map<String, Object> asked = new LinkedHashMap<>(ASKED.get(filled.call()));
    asked.put(filled.field(), filled.typed());
    if (filled.isTaken()) {
      assertThat(DeskCalls.answer(filled.call(), asked)).containsEntry("kind", "answered");
      return;
    }
    RefusedException refused =
        catchThrowableOfType(RefusedException.class, () -> DeskCalls.answer(filled.call(), asked));
    assertThat(refused).as(filled.toString()).isNotNull();
    assertThat(refused.field()).as(refused.getMessage()).isEqualTo(filled.field());
    assertThat(refused)
        .hasMessageStartingWith(filled.field() + ": ")
        .hasMessageContaining(filled.typed().isEmpty() ? "is empty" : filled.typed());
    String complaint = String.valueOf(refused.getMessage())
        .replaceFirst("accepted: .*", "")
        .replace("\"" + filled.typed() + "\"", "");
    assertThat(OF_THE_LIBRARY.matcher(complaint).find())
        .as(refused.getMessage())
        .isFalse();
    assertThat(refused.getMessage())
        .as("what to type")
        .containsPattern("accepted: |; |must be|wanted");
  }

  @Test
  void no_field_of_the_page_is_left_out_here() throws Exception {
    String page = Files.readString(Path.of("../browser/page/src/main/desk/index.html"));
    Map<String, List<String>> onPage = new LinkedHashMap<>();
    Matcher form = Pattern.compile("(?s)<form id=\"([a-z]+)\".*?</form>").matcher(page);
    while (form.find()) {
      List<String> fields = new ArrayList<>();
      Matcher field = Pattern.compile("data-field=\"([A-Za-z]+)\"").matcher(form.group());
      while (field.find()) {
        fields.add(field.group(1));
      }
      onPage.put(form.group(1), fields);
    }
    assertThat(onPage).containsOnlyKeys("leak", "condensate");
    onPage.forEach((call, fields) ->
        assertThat(Objects.requireNonNull(ASKED.get(call)).keySet()).as(call).containsAll(fields));
    ASKED.forEach((call, asked) -> assertThat(everyFieldFilledWrongly().stream()
            .filter(filled -> filled.call().equals(call))
            .map(Filled::field))
        .as(call)
        .containsAll(asked.keySet()));
  }
}
