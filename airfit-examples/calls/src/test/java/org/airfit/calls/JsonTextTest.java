package org.airfit.calls;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.stream.Stream;
import org.airfit.files.Json;
import org.airfit.files.WrongFileException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A page reads and writes JSON as the programs do: the library that reads it there is the other side. */
class JsonTextTest {

  private static boolean isRefused(String text, boolean byPage) {
    try {
      Object read = byPage ? JsonText.read("a.json", text) : Json.read("a.json", text);
      assertThat(read).isNotNull();
      return false;
    } catch (WrongFileException e) {
      assertThat(e.getMessage()).startsWith("a.json: ").doesNotContain("\n");
      return true;
    }
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "",
        " ",
        "null",
        "{",
        "}",
        "[",
        "]",
        "{}",
        "[]",
        "{} {}",
        "[1,]",
        "[,1]",
        "{,}",
        "[1 2]",
        "{\"a\":1,}",
        "{\"a\":1,\"a\":2}",
        "{\"a\":{\"b\":1,\"b\":1}}",
        "[{\"a\":1},{\"a\":1}]",
        "{\"a\" 1}",
        "{\"a\":}",
        "{a:1}",
        "{'a':1}",
        "{\"a\":'b'}",
        "\"a",
        "\"a\nb\"",
        "\"a\tb\"",
        "\"\\x\"",
        "\"\\u12\"",
        "\"\\u12G4\"",
        "\"\\u00e9\\n\\/\"",
        "01",
        "-",
        "-0",
        "-01",
        "1.",
        ".5",
        "+1",
        "1e",
        "1e+",
        "1E5",
        "1e999",
        "-1e-999",
        "0x1",
        "1_000",
        "NaN",
        "Infinity",
        "tru",
        "True",
        "nul",
        "true",
        "false",
        "truefalse",
        "12 mm",
        "12mm",
        "6,2",
        "[6,2]",
        "123456789012345678901234567890",
        "9223372036854775807",
        "9223372036854775808",
        "2147483648",
        "-2147483648",
        "-2147483649",
        "1.0",
        "100",
        "{\"a\":[1,{\"b\":[]}]}",
        "// remark\n{}",
        "/* */{}",
        "{}x",
        "\ufeff{}",
        "{\"\":1}",
        "{\"a\":\"\u201c\"}",
        "{\u201ca\u201d:1}",
        "\u00a0{}",
        "[1\u00a0]",
        "{\"a\":1;}",
        "\"\\ud83d\"",
        "\u000b1",
        "{\"a\":1}}",
        "[[1]",
        "{\"a\":[1}",
        "[\"a\",\"b\"",
        "nulll",
        "\"a\" \"b\"",
        "0",
        "0.0",
        "0e0"
      })
  void what_the_programs_refuse_a_page_refuses_and_reads_the_rest_alike(String text)
      throws Exception {
    assertThat(isRefused(text, true)).isEqualTo(isRefused(text, false));
    if (!isRefused(text, false)) {
      assertThat(JsonText.read("a.json", text)).isEqualTo(Json.read("a.json", text));
    }
  }

  @Test
  void depth_and_length_are_bounded_as_by_the_programs() {
    for (int deep : new int[] {JsonText.DEEPEST - 1, JsonText.DEEPEST, JsonText.DEEPEST + 1}) {
      String lists = "[".repeat(deep) + "]".repeat(deep);
      assertThat(isRefused(lists, true)).as("%s lists", deep).isEqualTo(isRefused(lists, false));
      String objects = "{\"a\":".repeat(deep) + "1" + "}".repeat(deep);
      assertThat(isRefused(objects, true)).isEqualTo(isRefused(objects, false));
    }
    for (int digits : new int[] {999, 1000, 1001}) {
      String whole = "1".repeat(digits);
      assertThat(isRefused(whole, true)).as("%s digits", digits).isEqualTo(isRefused(whole, false));
    }
  }

  @Test
  void a_complaint_says_where_and_what_to_type() {
    assertThatExceptionOfType(WrongFileException.class)
        .isThrownBy(() -> JsonText.read("a.json", "{\n  \"line\": [\n    {\"reach\": 12 mm}]}"))
        .withMessage(
            "a.json: line 3, column 18, at line[1].reach: is not JSON: a comma is missing");
    assertThatExceptionOfType(WrongFileException.class)
        .isThrownBy(() -> JsonText.read("a.json", "{\"a\": 12mm}"))
        .withMessageContaining("a value with its unit goes in quotation marks, such as \"12 mm\"");
    assertThatExceptionOfType(WrongFileException.class)
        .isThrownBy(() -> JsonText.read("a.json", "{\"tool\": {\"a\": 1, \"a\": 2}}"))
        .withMessageContaining("at tool.a: is not JSON: the field \"a\" stands twice");
  }

  @Test
  void every_file_of_the_examples_reads_as_by_the_programs_and_writes_so() throws Exception {
    int files = 0;
    try (Stream<Path> all = Files.walk(Example.JOBS)) {
      for (Path path : all.filter(each -> each.toString().endsWith(".json")).toList()) {
        String text = Files.readString(path);
        Object read = Json.read("a.json", text);
        assertThat(JsonText.read("a.json", text)).isEqualTo(read);
        assertThat(JsonText.write(read)).isEqualTo(Json.write(Example.plain(path)));
        files++;
      }
    }
    assertThat(files).isGreaterThan(40);
  }

  @Test
  void every_example_with_one_sign_less_or_another_is_refused_or_read_alike() throws Exception {
    String text = Files.readString(Example.JOBS.resolve("boatyard").resolve("blow-gun.json"));
    Random random = new Random(3);
    int refused = 0;
    for (int i = 0; i < 3000; i++) {
      int at = random.nextInt(text.length());
      char other = "{}[],:\"\\ 0a\n-.".charAt(random.nextInt(14));
      String changed = random.nextBoolean()
          ? text.substring(0, at) + text.substring(at + 1)
          : text.substring(0, at) + other + text.substring(at + 1);
      boolean byProgram = isRefused(changed, false);
      assertThat(isRefused(changed, true)).as(changed).isEqualTo(byProgram);
      if (byProgram) {
        refused++;
      } else {
        assertThat(JsonText.read("a", changed)).isEqualTo(Json.read("a", changed));
      }
    }
    assertThat(refused).isBetween(500, 2500);
  }

  @Test
  void what_is_written_reads_back() throws Exception {
    Random random = new Random(4);
    for (int i = 0; i < 300; i++) {
      Map<String, Object> value = new LinkedHashMap<>();
      value.put("a", any(random, 4));
      value.put("b \u00e9\"\\\u0001\u2028", any(random, 4));
      assertThat(JsonText.write(value)).isEqualTo(Json.write(value));
      assertThat(JsonText.read("a", JsonText.write(value))).isEqualTo(value);
    }
  }

  private static Object any(Random random, int deep) {
    return switch (random.nextInt(deep > 0 ? 7 : 5)) {
      case 0 -> random.nextInt();
      case 1 -> random.nextLong() >>> 1;
      case 2 -> random.nextGaussian() * Math.pow(10.0, random.nextInt(40) - 20);
      case 3 -> random.nextBoolean();
      case 4 -> text(random);
      case 5 -> {
        List<Object> list = new ArrayList<>();
        for (int i = random.nextInt(4); i > 0; i--) {
          list.add(any(random, deep - 1));
        }
        yield list;
      }
      default -> {
        Map<String, Object> map = new LinkedHashMap<>();
        for (int i = random.nextInt(4); i > 0; i--) {
          map.put("k" + i, any(random, deep - 1));
        }
        yield map;
      }
    };
  }

  private static String text(Random random) {
    StringBuilder text = new StringBuilder();
    for (int i = random.nextInt(12); i > 0; i--) {
      text.append((char) random.nextInt(0x300));
    }
    return text.toString();
  }
}
