package org.airfit.notebooks.kernel;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.dflib.jjava.jupyter.kernel.BaseKernel;
import org.dflib.jjava.jupyter.kernel.display.DisplayData;
import org.dflib.jjava.jupyter.kernel.display.mime.MIMEType;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class JavaKernelTest {

  private final JavaKernel kernel = JavaKernel.of(List.of());

  JavaKernelTest() {
    kernel.onStartup();
  }

  @AfterEach
  void shut_down() {
    kernel.onShutdown(false);
  }

  @Test
  void a_cell_gives_the_value_of_its_last_snippet() {
    assertThat(kernel.evalRaw("int a = 2;\nint b = 3; // two\na * b")).isEqualTo(6);
  }

  @Test
  void a_value_keeps_its_identity() {
    kernel.evalRaw("var list = new ArrayList<String>();");
    assertThat(kernel.evalRaw("list")).isSameAs(kernel.evalRaw("list"));
  }

  @Test
  void declarations_and_assignments_show_nothing() {
    assertThat(kernel.evalRaw("int a = 2;")).isNull();
    assertThat(kernel.evalRaw("a = 3;")).isNull();
    assertThat(kernel.evalRaw("record Point(int x, int y) {}")).isNull();
    assertThat(kernel.evalRaw("// nothing")).isNull();
    assertThat(kernel.eval("a = 4;")).isNull();
  }

  @Test
  void a_later_cell_may_define_what_an_earlier_one_uses() {
    kernel.evalRaw(
        "int twice(int x) { return plus(x, x); }\nint plus(int x, int y) { return x + y; }");
    kernel.evalRaw("sealed interface Shape permits Round {}\nrecord Round() implements Shape {}");
    assertThat(kernel.evalRaw("twice(4)")).isEqualTo(8);
    assertThat(kernel.evalRaw("new Round() instanceof Shape")).isEqualTo(true);
  }

  @Test
  void a_cell_may_define_anew() {
    kernel.evalRaw("int a = 2;");
    kernel.evalRaw("String a = \"two\";");
    assertThat(kernel.evalRaw("a")).isEqualTo("two");
  }

  @Test
  void an_exception_of_the_cell_leaves_unchanged() {
    assertThatThrownBy(() -> kernel.evalRaw("throw new java.io.IOException(\"no air\");"))
        .isInstanceOf(java.io.IOException.class)
        .hasMessage("no air");
  }

  @Test
  void an_error_of_the_cell_does_not_end_the_kernel() {
    assertThatThrownBy(() -> kernel.evalRaw("throw new AssertionError(\"wrong number\");"))
        .isInstanceOf(CellException.class)
        .hasMessageContaining("wrong number");
    assertThat(kernel.evalRaw("1 + 1")).isEqualTo(2);
  }

  @Test
  void a_cell_that_is_not_java_is_refused_with_the_reason() {
    assertThatThrownBy(() -> kernel.evalRaw("int a = \"two\";"))
        .isInstanceOf(CellException.class)
        .hasMessageContaining("incompatible types");
    assertThatThrownBy(() -> kernel.evalRaw("if (true) {"))
        .isInstanceOf(CellException.class)
        .hasMessageContaining("ends in the middle");
  }

  @Test
  void a_name_that_is_nowhere_defined_is_named() {
    kernel.evalRaw("int twice(int x) { return nowhere(x); }");
    assertThatThrownBy(() -> kernel.evalRaw("twice(4)"))
        .isInstanceOf(CellException.class)
        .hasMessageContaining("nowhere");
    assertThat(kernel.formatError(new CellException(List.of("not defined: nowhere"))))
        .anyMatch(line -> line.contains("nowhere"));
  }

  @Test
  void notebook_functions_render_a_drawing() {
    DisplayData shown =
        DisplayData.emptyIfNull(kernel.eval("render(\"<svg/>\", \"image/svg+xml\")"));
    assertThat(shown.getData(MIMEType.parse("image/svg+xml"))).isEqualTo("<svg/>");
    assertThat(BaseKernel.notebookKernel()).isSameAs(kernel);
  }

  @Test
  void jars_that_are_not_there_are_no_error() {
    assertThat(kernel.evalRaw("%jars none-here*.jar\n1 + 1")).isEqualTo(2);
  }

  @Test
  void the_classpath_comes_from_the_usual_variables(@TempDir Path folder) throws Exception {
    Files.writeString(folder.resolve("hello.txt"), "hello");
    JavaKernel other = JavaKernel.withClasspathOf(Map.of("IJAVA_CLASSPATH", folder.toString()));
    assertThat(other.evalRaw(
            "Thread.currentThread().getContextClassLoader().getResource(\"hello.txt\")"))
        .isNotNull();
  }

  @Test
  void the_editor_is_helped() {
    assertThat(kernel.complete("System.ou", 9).getReplacements()).contains("out");
    assertThat(kernel.isComplete("int a = 2;")).isEqualTo(BaseKernel.IS_COMPLETE_YES);
    assertThat(kernel.isComplete("if (true) {")).isBlank();
    assertThat(kernel.isComplete("int = = ;")).isEqualTo(BaseKernel.IS_COMPLETE_BAD);
    assertThat(kernel.inspect("Math.abs(", 9, false)).isNotNull();
    assertThat(kernel.inspect("int a", 5, false)).isNull();
  }
}
