package org.airfit.browser.compiler;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.File;
import java.net.URL;
import java.net.URLClassLoader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * The brackets that stand in JavaScript, as the renderer of this module writes them and as the one that TeaVM ships
 * does. Doubles are not associative, so that each dropped bracket is another number.
 */
class BracketsTest {

  /** The renderer of this module, seen from a folder of classes. */
  private static final String OURS =
      "org/teavm/backend/javascript/rendering/StatementRenderer.class";

  private static final Pattern FUNCTION =
      Pattern.compile("Brackets_(\\w+) = \\([^)]*\\) => \\{[^{}]*return ([^;]*);\\s*\\}");

  @TempDir
  private Path folder;

  @Test
  void none_is_dropped_by_the_renderer_of_this_module() throws Exception {
    Map<String, String> shapes = compiled(true);
    assertThat(shapes).hasSize(13);
    shapes.forEach((name, shape) -> assertThat(shape).as(name).isEqualTo(wanted(name)));
  }

  /** Fails when TeaVM has mended the fault: the copy of its renderer can be left out then. */
  @Test
  void some_are_dropped_by_the_renderer_that_teavm_ships() throws Exception {
    Map<String, String> shapes = compiled(false);
    List<String> dropped = new ArrayList<>();
    shapes.forEach((name, shape) -> {
      if (!shape.equals(wanted(name))) {
        dropped.add(name);
      }
    });
    assertThat(shapes).hasSize(13);
    assertThat(dropped)
        .as("if this is empty, TeaVM has mended the fault: leave out the copy of its renderer")
        .contains("sumOfDifference", "productOfQuotient", "remainderOfProduct");
  }

  /** A shape as it must stand, by its name. */
  private static String wanted(String name) {
    Map<String, String> signs = Map.of(
        "sum", "+", "difference", "-", "product", "*", "quotient", "/", "remainder", "%");
    int of = name.indexOf("Of");
    String inner = name.substring(of + 2).toLowerCase(java.util.Locale.ROOT);
    return "a " + signs.get(name.substring(0, of)) + " (b " + signs.get(inner) + " c)";
  }

  /** What the functions return in JavaScript, by their names; the parameters are called a, b and c. */
  private Map<String, String> compiled(boolean byOurs) throws Exception {
    List<URL> urls = new ArrayList<>();
    for (String entry : System.getProperty("java.class.path").split(File.pathSeparator, -1)) {
      Path path = Path.of(entry);
      boolean isOurs = Files.exists(path.resolve(OURS));
      if (byOurs || !isOurs) {
        urls.add(path.toUri().toURL());
      }
    }
    try (URLClassLoader loader = new URLClassLoader(
        urls.toArray(new URL[0]), ClassLoader.getPlatformClassLoader())) {
      compile(loader);
    }
    String code = Files.readString(folder.resolve("brackets.js"));
    Map<String, String> shapes = new LinkedHashMap<>();
    Matcher function = FUNCTION.matcher(code);
    while (function.find()) {
      if (function.group(1).contains("Of")) {
        shapes.put(function.group(1), function.group(2).replace("$", ""));
      }
    }
    return shapes;
  }

  /** By reflection, so that every class of the compiler comes from the one loader. */
  private void compile(ClassLoader loader) throws ReflectiveOperationException {
    Class<?> tools = loader.loadClass("org.teavm.tooling.TeaVMTool");
    Object tool = tools.getConstructor().newInstance();
    set(tool, "setTargetType", constant(loader, "org.teavm.tooling.TeaVMTargetType", "JAVASCRIPT"));
    set(tool, "setMainClass", Brackets.class.getName());
    set(tool, "setTargetDirectory", folder.toFile());
    set(tool, "setTargetFileName", "brackets.js");
    set(tool, "setObfuscated", false);
    set(
        tool,
        "setOptimizationLevel",
        constant(loader, "org.teavm.vm.TeaVMOptimizationLevel", "SIMPLE"));
    set(tool, "setFastDependencyAnalysis", true);
    set(tool, "setClassLoader", loader);
    tools.getMethod("generate").invoke(tool);
  }

  private static Object constant(ClassLoader loader, String type, String name)
      throws ReflectiveOperationException {
    return loader.loadClass(type).getMethod("valueOf", String.class).invoke(null, name);
  }

  private static void set(Object tool, String setter, Object value)
      throws ReflectiveOperationException {
    for (var method : tool.getClass().getMethods()) {
      if (method.getName().equals(setter) && method.getParameterCount() == 1) {
        method.invoke(tool, value);
        return;
      }
    }
    throw new NoSuchMethodException(setter);
  }
}
