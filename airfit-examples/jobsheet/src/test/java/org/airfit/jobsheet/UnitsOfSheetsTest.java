package org.airfit.jobsheet;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import org.airfit.files.Disk;
import org.airfit.files.Document;
import org.airfit.files.JobFile;
import org.airfit.files.Json;
import org.airfit.working.UnitSystem;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A sheet in the units of its job from the first line to the last; the other units stand in brackets alone. */
class UnitsOfSheetsTest {

  private static final Path JOBS = Path.of("../jobs");

  /** Units of the other system: behind a number, or by themselves where they are no other word. */
  private static final Pattern SI =
      Pattern.compile("\\d\\s?(?:m|mm|cm|µm|m²|m³|kg|K|J|Pa|kPa)(?![\\w²³/(·°])"
          + "|(?<!\\w)(?:m/s|kg/s|Pa·s|bar|mbar|kPa|Pa|L/s|L/min|dm³|m³/h|m³/s)(?!\\w)|°C");

  private static final Pattern US = Pattern.compile("\\d\\s?(?:in|ft|ft²|ft³|lb)(?![\\w²³/])"
      + "|(?<!\\w)(?:psi|psig|psia|scfm|cfm|ft/s|lb/s)(?!\\w)|°F|°R");

  private static final Pattern NAMES =
      Pattern.compile("\"(?:job|customer|name|catalogue|where|instrument)\":\\s*\"([^\"]*)\"");

  /** What people called things, in the job and in its catalogue: a name keeps its unit. */
  private static List<String> names(Path job) throws IOException {
    List<String> names = new ArrayList<>();
    for (Path file : List.of(job, job.resolveSibling("catalogue.json"))) {
      NAMES
          .matcher(Files.readString(file))
          .results()
          .map(found -> found.group(1))
          .forEach(names::add);
    }
    names.sort((one, other) -> other.length() - one.length());
    return names;
  }

  private static String withoutBrackets(String text) {
    StringBuilder out = new StringBuilder();
    int depth = 0;
    for (int i = 0; i < text.length(); i++) {
      char c = text.charAt(i);
      if (c == '(' || c == '[') {
        depth++;
      } else if ((c == ')' || c == ']') && depth > 0) {
        depth--;
      } else if (depth == 0) {
        out.append(c);
      }
    }
    return out.toString();
  }

  /** What a reader of a page sees, with a line for each element. */
  private static String seen(String page) {
    return page.replaceAll("(?s)<style>.*?</style>", "")
        .replaceAll("<[^>]*>", "\n")
        .replace("&lt;", "<")
        .replace("&gt;", ">")
        .replace("&quot;", "\"")
        .replace("&#39;", "'")
        .replace("&amp;", "&");
  }

  private static List<String> strange(String text, UnitSystem wanted, List<String> names) {
    String bare = text.replaceAll("\\s+", " ");
    for (String name : names) {
      bare = bare.replace(name, "…");
    }
    String shown = withoutBrackets(bare);
    return wanted
        .either(US, SI)
        .matcher(shown)
        .results()
        .map((MatchResult found) -> shown.substring(
            Math.max(0, found.start() - 60), Math.min(shown.length(), found.end() + 20)))
        .toList();
  }

  private static JobSheet sheet(Path job) throws Exception {
    return JobSheet.of(Disk.job(job));
  }

  @ParameterizedTest
  @CsvSource({
    "quarry-road/tire-shop.json, US",
    "boatyard/weak-sander.json, SI",
    "boatyard/blow-gun.json, SI",
  })
  void text_and_page_keep_to_the_units_of_the_job(String file, UnitSystem units) throws Exception {
    Path job = JOBS.resolve(file);
    JobSheet sheet = sheet(job);
    assertThat(sheet.units()).isEqualTo(units);
    assertThat(strange(TextSheet.of(sheet), units, names(job))).isEmpty();
    assertThat(strange(seen(PageSheet.of(sheet)), units, names(job))).isEmpty();
    assertThat(strange(seen(PageReasons.of(sheet)), units, names(job))).isEmpty();
  }

  /** The same jobs told in the other units, as their files may say. */
  @ParameterizedTest
  @CsvSource({
    "quarry-road/tire-shop.json, SI",
    "boatyard/weak-sander.json, US",
    "boatyard/blow-gun.json, US",
  })
  void a_job_that_says_its_units_is_told_in_them(String file, UnitSystem units) throws Exception {
    Path job = JOBS.resolve(file);
    String said = Files.readString(job).replaceFirst("\\{", "{ \"units\": \"" + units + "\",");
    Object catalogue =
        Json.read("catalogue.json", Files.readString(job.resolveSibling("catalogue.json")));
    JobSheet sheet = JobSheet.of(JobFile.read(new Document(
        "job.json", Json.read("job.json", said), path -> Document.of(path, catalogue))));
    assertThat(strange(TextSheet.of(sheet), units, names(job))).isEmpty();
    assertThat(strange(seen(PageSheet.of(sheet)), units, names(job))).isEmpty();
    assertThat(strange(seen(PageReasons.of(sheet)), units, names(job))).isEmpty();
    assertThat(TextSheet.of(sheet)).contains("Told in " + units + " units, as the file says.");
  }

  /** A sheet in the other units is full of what the search looks for, and one planted unit is found. */
  @ParameterizedTest
  @CsvSource({"quarry-road/tire-shop.json, SI", "boatyard/weak-sander.json, US"})
  void the_search_finds_a_planted_unit(String file, UnitSystem other) throws Exception {
    Path job = JOBS.resolve(file);
    String text = TextSheet.of(sheet(job));
    assertThat(strange(text, other, names(job))).hasSizeGreaterThan(100);
    String planted = text + " At the tool " + other.either("5.6 bar(g)", "81 psig") + ".";
    assertThat(strange(planted, other.other(), names(job))).hasSize(1);
  }

  @Test
  void what_was_typed_in_us_units_is_told_as_it_was_typed() throws Exception {
    String text =
        TextSheet.of(sheet(JOBS.resolve("quarry-road/tire-shop.json"))).replaceAll("\\s+", " ");
    assertThat(text)
        .contains("Told in US units, in which")
        .contains("takes 22 scfm (10.7 L/s ANR) of free air")
        .contains("needed 90 psig (6.21 bar(g))")
        .contains("35 ft of hose, 30 ft needed")
        .contains("35 ft of hose with 3/8 in of bore")
        .contains("its maker allows 120 psig")
        .contains("the job needs 20 °F to 110 °F")
        .contains("Wear of up to 0.004 in was allowed")
        .contains("tip diameter (D_t) reads 0.3085 in")
        .doesNotContain("scfm (60 °F)");
  }
}
