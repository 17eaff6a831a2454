package org.airfit.files.json;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.airfit.air.AirState;
import org.airfit.line.Conduit;
import org.airfit.line.Wall;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.Length;
import org.airfit.quantity.Temperature;
import org.airfit.run.Run;
import org.airfit.run.RunResult;
import org.airfit.select.Part;
import org.junit.jupiter.api.Test;

/** The example of docs/embedding.md is this one, line by line, and answers what stands there. */
class EmbeddingTest {

  private static final Path DOCUMENT = Path.of("..", "..", "docs", "embedding.md");

  private static final String STORED = """
      {"kind": "plug", "id": "P-14", "name": "plug, 1/4 body", "price": "3.20 USD", "rated": "300 psig",
       "profile": "tern", "end": "1/4 NPT male"}""";

  @Test
  void the_example_answers_what_the_document_says() throws Exception {
    String stored = STORED;
    // begin
    JsonMapper json = AirfitModule.strictMapper();
    Part part = json.readValue(stored, Part.class);
    Conduit hose =
        Conduit.of(Length.parse("3/8 in"), Length.parse("50 ft"), Wall.SMOOTH_RUBBER_HOSE);
    AirState supply = AirState.of(AbsolutePressure.parse("104.7 psia"), Temperature.parse("68 °F"));
    RunResult arrived = Run.from(supply, AbsolutePressure.STANDARD_ATMOSPHERE)
        .through("hose", hose)
        .at(FreeAirFlow.parse("20 scfm (68 °F)"));
    String answer = json.writeValueAsString(arrived);
    String again = json.writeValueAsString(part);
    // end
    assertThat(json.readValue(again, Part.class)).isEqualTo(part);
    JsonNode told = json.readTree(answer);
    assertThat(told.get("kind").asText()).isEqualTo("delivered");
    assertThat(told.get("shares").get(0).get("name").asText()).isEqualTo("hose");
    assertThat(told.get("cautions").size()).isPositive();
  }

  private static List<String> plain(String code) {
    return code.lines().map(String::strip).filter(line -> !line.isEmpty()).toList();
  }

  @Test
  void the_document_has_the_example_of_this_test() throws IOException {
    String document = Files.readString(DOCUMENT);
    Matcher java = Pattern.compile("(?s)```java\n(.*?)```").matcher(document);
    assertThat(java.find()).isTrue();
    String test = Files.readString(
        Path.of("src", "test", "java", "org", "airfit", "files", "json", "EmbeddingTest.java"));
    String here = test.substring(test.indexOf("// begin") + 8, test.indexOf("// end"));
    assertThat(plain(java.group(1)).stream()
            .map(line -> line.replaceAll("\\s", ""))
            .reduce("", String::concat))
        .isEqualTo(plain(here).stream()
            .map(line -> line.replaceAll("\\s", ""))
            .reduce("", String::concat));
    assertThat(document.replaceAll("\\s", "")).contains(STORED.replaceAll("\\s", ""));
  }
}
