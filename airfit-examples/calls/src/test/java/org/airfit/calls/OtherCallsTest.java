package org.airfit.calls;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.airfit.files.Disk;
import org.airfit.files.ShopCatalogue;
import org.airfit.files.WrongFileException;
import org.airfit.jobsheet.JobSheet;
import org.airfit.jobsheet.Letterhead;
import org.airfit.jobsheet.PageSheet;
import org.airfit.plug.Dimension;
import org.junit.jupiter.api.Test;

/** Ends, parts, sets, drawings and files. */
class OtherCallsTest {

  private static Map<String, Object> answer(String call, Object... fields) throws RefusedException {
    return Calls.answer(call, Spread.of(fields));
  }

  /** NPT and BSP start in each other and must not be relied on; common practice, and README of the thread data. */
  @Test
  void what_the_trade_knows_of_ends() throws Exception {
    Map<String, Object> sound =
        answer("willItGo", "one", "1/4 NPT male", "other", "1/4 NPT female");
    assertThat(sound)
        .containsEntry("kind", "sealsWithSealant")
        .containsEntry("sound", true)
        .containsEntry("joined", "direct")
        .containsEntry("between", List.of());
    Map<String, Object> mixed = answer("willItGo", "one", "1/4 NPT male", "other", "G 1/4 female");
    assertThat(mixed)
        .containsEntry("kind", "startsAndJams")
        .containsEntry("sound", false)
        .containsEntry("joined", "throughAdapters");
    assertThat(String.valueOf(mixed.get("cautions"))).contains("Do not put pressure on it");
    assertThat((List<?>) mixed.get("joints")).hasSize(2);
    assertThatExceptionOfType(RefusedException.class)
        .isThrownBy(() -> answer("willItGo", "one", "1/4 NPT mal", "other", "G 1/4 female"))
        .satisfies(refused -> {
          assertThat(refused.field()).isEqualTo("one");
          assertThat(refused.accepted()).startsWith("an end such as");
        });
  }

  @Test
  void every_line_of_the_answer_stands_on_the_sheet_to_hand_over() throws Exception {
    for (Path job : Example.jobs()) {
      JobSheet sheet = JobSheet.of(Disk.job(job));
      String page = PageSheet.of(
              sheet,
              new Letterhead(
                  java.util.Optional.empty(),
                  sheet.job().label().number(),
                  sheet.job().label().date()),
              java.util.Optional.empty())
          .replaceAll("<[^>]*>", "")
          .replace("&quot;", "\"")
          .replace("&gt;", ">")
          .replace("&lt;", "<")
          .replace("&amp;", "&");
      Map<String, Object> told =
          answer("select", "job", String.valueOf(job.getFileName()), "files", Example.filesOf(job));
      if (Example.at(told, "kind").equals("refused")) {
        continue;
      }
      List<Object> lines = new ArrayList<>();
      Example.list(told, "found").forEach(line -> lines.add(((Map<?, ?>) line).get("text")));
      lines.addAll((List<?>) told.get("questions"));
      lines.addAll((List<?>) told.get("wrong"));
      for (Object line : lines) {
        assertThat(page)
            .as("%s", job)
            .contains(String.valueOf(line).replaceAll("\\b([DLWd])_(.)\\b", "$1$2"));
      }
      if (Example.at(told, "kind").equals("fits")) {
        Map<?, ?> best = (Map<?, ?>) Example.list(told, "proposals").get(0);
        for (Object part : Example.list(best, "parts")) {
          assertThat(page).as("%s", job).contains(String.valueOf(((Map<?, ?>) part).get("name")));
        }
        assertThat(page).contains(String.valueOf(best.get("atTool")));
      }
    }
  }

  @Test
  void another_medium_is_refused_before_anything_else_is_read() throws Exception {
    Map<String, Object> refused =
        answer("select", "job", Spread.of("conditions", Spread.of("medium", "breathing air")));
    assertThat(refused).containsEntry("kind", "refused").containsEntry("proposals", List.of());
    assertThat(String.valueOf(refused.get("headline"))).contains("breathing air");
    Map<String, Object> sheet = answer(
        "sheet",
        "job",
        "a.json",
        "files",
        Map.of("a.json", "{\"conditions\": {\"medium\": \"oxygen\"}}"));
    assertThat(String.valueOf(sheet.get("page"))).contains("Nothing was computed");
  }

  /** A shop files a refusal as any other job; a day that is none is no reason to lose the refusal. */
  @Test
  void the_sheet_of_a_refusal_keeps_number_day_and_shop() throws Exception {
    String job = "{\"conditions\": {\"medium\": \"oxygen\"}, \"number\": \"2041-B\","
        + " \"date\": \"2026-03-05\"}";
    String shop = "{\"name\": \"Harbour Counter\", \"phone\": \"555 0100\"}";
    Map<String, Object> asked = new LinkedHashMap<>();
    asked.put("job", "a.json");
    asked.put("files", Map.of("a.json", job, "shop.json", shop));
    asked.put("letterhead", "shop.json");
    asked.put("today", "2026-11-29");
    assertThat(String.valueOf(Calls.answer("sheet", asked).get("page")))
        .contains("2041-B", "2026-03-05", "Harbour Counter")
        .doesNotContain("2026-11-29");
    asked.put("files", Map.of("a.json", job.replace("03-05", "02-31"), "shop.json", shop));
    assertThat(String.valueOf(Calls.answer("sheet", asked).get("page")))
        .contains("Refused", "2041-B", "2026-11-29");
  }

  @Test
  void a_field_of_a_job_is_named_by_its_place() throws Exception {
    Map<String, Object> job =
        Example.plain(Example.JOBS.resolve("boatyard").resolve("blow-gun.json"));
    castToMap(Example.list(job, "line").get(3)).put("reach", "10");
    assertThatExceptionOfType(RefusedException.class)
        .isThrownBy(() ->
            answer("select", "job", job, "files", Map.of("catalogue.json", Example.boatyard())))
        .satisfies(refused -> {
          assertThat(refused.name()).isEqualTo("WrongField");
          assertThat(refused.field()).isEqualTo("line[4].reach");
        });
    assertThatExceptionOfType(RefusedException.class)
        .isThrownBy(() -> answer("select", "job", job))
        .withMessage("catalogue.json: is not here yet; open that file too")
        .satisfies(refused -> assertThat(refused.name()).isEqualTo("WrongFile"));
  }

  @SuppressWarnings("unchecked")
  private static Map<String, Object> castToMap(Object value) {
    return (Map<String, Object>) value;
  }

  @Test
  void a_file_that_is_too_large_is_refused_with_one_line() throws Exception {
    Given large = Given.files(Map.of("a.csv", " ".repeat(Given.MOST_LETTERS + 1)));
    assertThatExceptionOfType(WrongFileException.class)
        .isThrownBy(() -> large.open("a.csv"))
        .withMessageStartingWith("a.csv: is larger than 10 MB");
    assertThat(Given.files(Map.of("a.csv", " ".repeat(Given.MOST_LETTERS))).open("a.csv"))
        .isNotNull();
    Map<String, Object> catalogue = new LinkedHashMap<>();
    catalogue.put("parts", Collections.nCopies(Given.MOST_PARTS + 1, Map.of()));
    assertThatExceptionOfType(WrongFileException.class)
        .isThrownBy(() -> Given.files(Map.of()).with("c.json", catalogue).open("c.json"))
        .withMessageStartingWith("c.json: parts: holds 100001 parts");
    catalogue.put("parts", Collections.nCopies(Given.MOST_PARTS, Map.of()));
    assertThat(Given.files(Map.of()).with("c.json", catalogue).open("x/c.json")).isNotNull();
  }

  /** What is typed next is judged by the stock that was read; another text is another stock, also of the set alone. */
  @Test
  void a_catalogue_is_read_again_only_when_its_texts_are_others() throws Exception {
    String catalogue = Files.readString(Example.JOBS.resolve("boatyard/catalogue.json"));
    String named = catalogue.substring(0, catalogue.indexOf("\"profiles\""))
        + "\"profileSet\": \"set.csv\", "
        + catalogue.substring(catalogue.indexOf("\"parts\""));
    Map<String, String> texts = new LinkedHashMap<>();
    texts.put("catalogue.json", named);
    texts.put("set.csv", Example.workshop());
    ShopCatalogue first = Given.files(texts).catalogue("catalogue.json");
    texts.put("job.json", "{}");
    assertThat(Given.files(texts).catalogue("catalogue.json")).isSameAs(first);

    texts.put("set.csv", Example.workshop().replace("Ferry Lane workshop", "Pier workshop"));
    ShopCatalogue second = Given.files(texts).catalogue("catalogue.json");
    assertThat(second.profiles().name()).startsWith("Pier workshop");
    texts.put("catalogue.json", named.replace("38.90", "39.90"));
    ShopCatalogue third = Given.files(texts).catalogue("catalogue.json");
    assertThat(third.parts()).isNotEqualTo(second.parts());
    assertThat(Given.files(texts).catalogue("catalogue.json")).isSameAs(third);
  }

  @Test
  void every_size_has_its_mark_on_the_drawing_and_its_jaws() throws Exception {
    String all = String.valueOf(answer("measuring").get("svg"));
    for (Dimension dimension : Dimension.values()) {
      assertThat(all).contains("data-size=\"" + dimension.label() + "\"");
      Map<String, Object> one = answer("measuring", "size", dimension.label());
      assertThat(String.valueOf(one.get("svg")))
          .contains("class=\"jaws\"", "class=\"size chosen\"");
      assertThat(String.valueOf(one.get("size"))).contains(dimension.howToMeasure());
    }
    assertThat(all).doesNotContain("jaws");
  }

  @Test
  void an_outline_is_true_to_size_and_tells_what_is_missing() throws Exception {
    Map<String, Object> tern = answer("outline", "set", Example.workshop(), "profile", "tern");
    assertThat(String.valueOf(tern.get("picture")))
        .contains("width=\"" + plain(Example.at(tern, "width")) + "mm\"")
        .contains("stretch it until they match")
        .doesNotContain("print again");
    assertThat(tern.get("missing")).isEqualTo(List.of());
    Map<String, Object> part = answer("outline", "readings", Map.of("bore", "7.6 mm"));
    assertThat(part).doesNotContainKey("picture");
    assertThat((List<?>) part.get("missing")).hasSize(8);
  }

  private static String plain(Object number) {
    double value = (Double) number;
    return value == Math.rint(value) ? String.valueOf((long) value) : String.valueOf(value);
  }

  @Test
  void a_set_reads_back_from_what_is_written() throws Exception {
    Map<String, Object> set = answer("referenceSet", "set", Example.workshop(), "paper", "A4");
    assertThat(answer("referenceSet", "set", Example.at(set, "csv")))
        .containsEntry("json", set.get("json"));
    assertThat(answer("referenceSet", "set", Example.at(set, "json")))
        .containsEntry("csv", set.get("csv"));
    assertThat(String.valueOf(set.get("page"))).containsIgnoringCase("<!doctype html>");
    assertThat((List<?>) set.get("pairs")).hasSize(3);
  }

  @Test
  void a_job_is_written_in_the_order_of_its_documentation() throws Exception {
    assertThat(answer("jobFile", "job", Spread.of("tool", Map.of(), "job", "x")).get("text"))
        .isEqualTo("{\n  \"airfitJob\" : 2,\n  \"job\" : \"x\",\n  \"tool\" : { }\n}\n");
  }

  @Test
  void a_set_is_read_by_how_it_begins_whatever_it_is_called() throws Exception {
    String csv = Example.workshop();
    Object json = Example.at(answer("referenceSet", "set", csv), "json");
    assertThat(answer("referenceSet", "set", csv, "name", "drawer")).containsEntry("json", json);
    assertThat(answer("referenceSet", "set", json, "name", "drawer.csv"))
        .containsEntry("json", json);
    assertThatExceptionOfType(RefusedException.class)
        .isThrownBy(() -> answer("referenceSet", "set", "a,b", "name", "drawer"))
        .withMessageStartingWith("drawer: row 1");
  }

  @Test
  void a_job_that_is_named_must_be_among_the_files() {
    assertThatExceptionOfType(RefusedException.class)
        .isThrownBy(() -> answer("select", "job", "gate.json"))
        .withMessageStartingWith("job: \"gate.json\" is not among the files");
  }
}
