package org.airfit.browser.compiler;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.util.Base64;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class SingleFileTest {

  @TempDir
  Path folder;

  private Path file(String name, String text) throws IOException {
    return Files.writeString(folder.resolve(name), text);
  }

  private String made(String page, Path... further) throws IOException {
    Path out = folder.resolve("out/made.html");
    String[] args = new String[2 + further.length];
    args[0] = file("index.html", page).toString();
    args[1] = out.toString();
    for (int i = 0; i < further.length; i++) {
      args[2 + i] = further[i].toString();
    }
    SingleFile.main(args);
    return Files.readString(out);
  }

  private static String hash(String text) throws Exception {
    return Base64.getEncoder()
        .encodeToString(MessageDigest.getInstance("SHA-256")
            .digest(text.getBytes(StandardCharsets.UTF_8)));
  }

  private static String inside(String html, String element) {
    Matcher found = Pattern.compile("<" + element + "[^>]*>(.*?)</" + element + ">", Pattern.DOTALL)
        .matcher(html);
    assertThat(found.find()).isTrue();
    return found.group(1);
  }

  @Test
  void the_policy_has_the_hash_of_what_stands_in_the_page() throws Exception {
    file("style.css", "p { color: red; }\n");
    file("main.mjs", "const a = '1 < 2';\n");
    String html = made("<!-- policy -->\n<!-- style style.css -->\n<!-- script main.mjs -->\n");
    assertThat(html)
        .contains("script-src 'sha256-" + hash(inside(html, "script")) + "';")
        .contains("style-src 'sha256-" + hash(inside(html, "style")) + "';")
        .contains("default-src 'none';")
        .doesNotContain("<!--");
  }

  @Test
  void a_script_has_short_names_where_that_is_asked_for() throws Exception {
    file("a.mjs", """
        export function longName(other) {
          const kept = other * 2;
          return kept + kept;
        }
        """);
    file("main.mjs", """
        import { longName } from './a.mjs';
        class Kept {
          #held = 3;
          get it() {
            return this.#held;
          }
        }
        self.answer = longName(new Kept().it, '#held');
        """);
    String page = "<!-- policy -->\n<!-- script main.mjs -->\n";
    assertThat(inside(made(page), "script")).contains("longName");
    String html = made(page, Path.of("shorter"));
    assertThat(inside(html, "script")).contains("self.answer=", "\"#held\"").doesNotContain("longName", "kept", ".#held");
    assertThat(html).contains("script-src 'sha256-" + hash(inside(html, "script")) + "';");
  }

  @Test
  void modules_are_joined_once_each_behind_those_they_import() throws Exception {
    file("a.mjs", "export const a = 1;\n");
    file("b.mjs", "import { a } from './a.mjs';\nexport function b() {\n  return a;\n}\n");
    file(
        "main.mjs",
        "import {\n  a,\n} from './a.mjs';\nimport { b } from './b.mjs';\nexport class C {}\nb(a);\n");
    String script = inside(made("<!-- policy -->\n<!-- script main.mjs -->\n"), "script");
    assertThat(script)
        .isEqualTo("\nconst a = 1;\nfunction b() {\nreturn a;\n}\nclass C {}\nb(a);\n\n");
  }

  @Test
  void an_import_that_cannot_be_joined_is_refused() throws Exception {
    file("main.mjs", "import a from 'elsewhere';\n");
    assertThatThrownBy(() -> made("<!-- policy -->\n<!-- script main.mjs -->\n"))
        .isInstanceOf(IOException.class)
        .hasMessageContaining("main.mjs imports or exports in a way that cannot be joined");
  }

  @Test
  void a_library_is_an_object_of_what_it_exports() throws Exception {
    Path library = file("lib.mjs", "let x=1;let D=()=>x;\nexport{x as main,D as sheet};\n");
    String html = made("<!-- policy -->\n<!-- text library lib.mjs -->\n", library);
    assertThat(inside(html, "script"))
        .contains("const airfit = (() => {\nlet x=1;let D=()=>x;")
        .contains("return {main: x, sheet: D, };\n})();");
  }

  @Test
  void what_would_end_its_element_is_refused_and_data_is_written_so_that_it_does_not()
      throws Exception {
    for (String sign : new String[] {"</script>", "<!-- x", "<SCRIPT"}) {
      file("main.mjs", "const a = `" + sign + "`;\n");
      assertThatThrownBy(() -> made("<!-- policy -->\n<!-- script main.mjs -->\n"))
          .isInstanceOf(IOException.class)
          .hasMessageContaining("main.mjs holds <");
    }
    file("data.json", "{\"a\": \"</script><!--\"}");
    String html = made("<!-- policy -->\n<!-- text data data.json -->\n");
    assertThat(inside(html, "script")).contains("\\u003c/script>\\u003c!--");
  }

  @Test
  void what_is_in_front_of_a_line_is_left_out_of_the_page_and_of_data_but_not_of_a_text()
      throws Exception {
    file("data.json", "{\n  \"a\": \"x   y\",\n\n  \"b\": [\n    1\n  ]\n}\n");
    String html =
        made("<!-- policy -->\n<p>one\n    two   three</p>\n  <!-- text data data.json -->\n");
    assertThat(html).contains("<p>one\ntwo   three</p>\n<script");
    assertThat(inside(html, "script"))
        .isEqualTo("\n{\n\"a\": \"x   y\",\n\"b\": [\n1\n]\n}\n\n");
  }

  @Test
  void a_page_without_a_policy_or_with_a_part_that_is_not_there_is_refused() throws Exception {
    file("main.mjs", "\n");
    assertThatThrownBy(() -> made("<!-- script main.mjs -->\n")).hasMessageContaining("policy");
    assertThatThrownBy(() -> made("<!-- policy -->\n<!-- script none.mjs -->\n"))
        .hasMessageContaining("none.mjs was not given");
  }

  @Test
  void a_page_that_is_served_has_a_module_of_its_own_and_may_ask_its_server_and_no_other()
      throws Exception {
    file("source.mjs", "export const SOURCE = '';\n");
    file("main.mjs", "import { SOURCE } from './source.mjs';\nuse(SOURCE);\n");
    Path served = Files.createDirectories(folder.resolve("served")).resolve("source.mjs");
    Files.writeString(served, "export const SOURCE = 'stock';\n");
    String page = "<!-- policy -->\n<!-- script main.mjs -->\n";
    assertThat(made(page)).contains("const SOURCE = '';").doesNotContain("connect-src");
    assertThat(made(page, served, Path.of("connect-src 'self'")))
        .contains("const SOURCE = 'stock';")
        .contains("; connect-src 'self'; img-src data:");
  }

  @Test
  void comments_and_what_stands_in_front_of_lines_stay_out() throws Exception {
    file("style.css", "/* a\n   comment */\np {\n  color: red; /* kept */\n}\n");
    file("main.mjs", "// one\n/**\n * Many.\n */\nconst a = {\n  b: 'http://x', // kept\n\n\n  // gone\n  c: 2,\n};\n");
    String html = made("<!-- policy -->\n<!-- style style.css -->\n<!-- script main.mjs -->\n");
    assertThat(inside(html, "style")).isEqualTo("\n\np {\ncolor: red; /* kept */\n}\n");
    assertThat(inside(html, "script").strip())
        .isEqualTo("const a = {\nb: 'http://x', // kept\nc: 2,\n};");
  }

  @Test
  void a_text_over_several_lines_is_refused() throws Exception {
    file("main.mjs", "const a = `one\n  two`;\n");
    assertThatThrownBy(() -> made("<!-- policy -->\n<!-- script main.mjs -->\n"))
        .isInstanceOf(IOException.class)
        .hasMessageContaining("main.mjs has a text over several lines");
  }
}
