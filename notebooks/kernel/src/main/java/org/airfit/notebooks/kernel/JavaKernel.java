package org.airfit.notebooks.kernel;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import jdk.jshell.SourceCodeAnalysis.Completeness;
import jdk.jshell.SourceCodeAnalysis.Suggestion;
import org.dflib.jjava.jupyter.kernel.BaseKernel;
import org.dflib.jjava.jupyter.kernel.BaseKernelBuilder;
import org.dflib.jjava.jupyter.kernel.JupyterIO;
import org.dflib.jjava.jupyter.kernel.LanguageInfo;
import org.dflib.jjava.jupyter.kernel.ReplacementOptions;
import org.dflib.jjava.jupyter.kernel.comm.CommManager;
import org.dflib.jjava.jupyter.kernel.display.DisplayData;
import org.dflib.jjava.jupyter.kernel.display.Renderer;
import org.dflib.jjava.jupyter.kernel.magic.MagicParser;
import org.dflib.jjava.jupyter.kernel.magic.MagicTranspiler;
import org.dflib.jjava.jupyter.kernel.magic.MagicsRegistry;
import org.dflib.jjava.jupyter.kernel.util.PathsHandler;
import org.dflib.jjava.jupyter.kernel.util.StringStyler;
import org.jspecify.annotations.Nullable;

/** Java cells for Jupyter. */
public final class JavaKernel extends BaseKernel {

  private static final LanguageInfo JAVA = new LanguageInfo.Builder("Java")
      // The feature release only: notebooks would change with every patch of the JDK.
      .version(String.valueOf(Runtime.version().feature()))
      .mimetype("text/x-java-source")
      .fileExtension(".java")
      .pygments("java")
      .codemirror("java")
      .build();

  private final Shell shell;

  private JavaKernel(Builder builder, Shell shell) {
    super(
        "airfit-kernel",
        "1",
        JAVA,
        List.of(),
        null,
        builder.io(),
        builder.comms(),
        builder.renderer(),
        new MagicParser("(?<=(?:^|=))\\s*%", "%%", new MagicTranspiler()),
        builder.magics(),
        false,
        builder.styler());
    this.shell = shell;
  }

  /**
   * A kernel that sees some jars from its start.
   *
   * @param classpath folders and jars
   * @return the kernel, not started
   */
  public static JavaKernel of(List<String> classpath) {
    Shell shell = new Shell(classpath, Shell.USUAL);
    Builder builder = new Builder();
    builder.lineMagic("classpath", (kernel, paths) -> add(shell, paths));
    builder.lineMagic("jars", (kernel, paths) -> add(shell, paths));
    return new JavaKernel(builder, shell);
  }

  /**
   * A kernel that has what the notebooks of this repository need and nothing else: a notebook that runs in it runs in
   * every Java kernel that has as much.
   *
   * @param classpath folders and jars
   * @return the kernel, not started
   */
  public static JavaKernel smallest(List<String> classpath) {
    Shell shell = new Shell(classpath, Shell.NEEDED);
    Builder builder = new Builder();
    builder.lineMagic("jars", (kernel, paths) -> add(shell, paths));
    return new JavaKernel(builder, shell);
  }

  /**
   * A kernel that sees the jars named by the variables of the usual kernels.
   *
   * @param environment the variables; {@code IJAVA_CLASSPATH} and {@code JJAVA_CLASSPATH} are read
   * @return the kernel, not started
   */
  static JavaKernel withClasspathOf(Map<String, String> environment) {
    return of(Stream.of("IJAVA_CLASSPATH", "JJAVA_CLASSPATH")
        .flatMap(name -> matches(environment.getOrDefault(name, "")))
        .toList());
  }

  private static List<String> add(Shell shell, List<String> globs) {
    List<String> found = globs.stream().flatMap(JavaKernel::matches).toList();
    found.forEach(shell::addToClasspath);
    return found;
  }

  private static Stream<String> matches(String globs) {
    return PathsHandler.splitAndResolveGlobs(globs).stream()
        .map(Path::toAbsolutePath)
        .map(Path::toString);
  }

  @Override
  public @Nullable Object evalRaw(String source) {
    return shell.run(magicParser.resolveMagics(source));
  }

  @Override
  public @Nullable DisplayData eval(String source) {
    return super.eval(source);
  }

  @Override
  public @Nullable DisplayData inspect(String code, int at, boolean extraDetail) {
    List<String> signatures = shell.analysis().documentation(code, at, false).stream()
        .map(documentation -> documentation.signature())
        .toList();
    return signatures.isEmpty() ? null : new DisplayData(String.join("\n", signatures));
  }

  @Override
  public ReplacementOptions complete(String code, int at) {
    int[] anchor = {at};
    List<String> suggestions = shell.analysis().completionSuggestions(code, at, anchor).stream()
        .map(Suggestion::continuation)
        .distinct()
        .toList();
    return new ReplacementOptions(suggestions, anchor[0], at);
  }

  @Override
  public String isComplete(String code) {
    Completeness completeness = shell.analysis().analyzeCompletion(code).completeness();
    if (completeness == Completeness.UNKNOWN) {
      return IS_COMPLETE_BAD;
    }
    return completeness.isComplete() ? IS_COMPLETE_YES : "  ";
  }

  @Override
  public List<String> formatError(Throwable thrown) {
    String what =
        thrown instanceof CellException ? String.valueOf(thrown.getMessage()) : thrown.toString();
    return errorStyler.secondaryLines(what);
  }

  @Override
  public void interrupt() {
    shell.interrupt();
  }

  @Override
  public void onShutdown(boolean isRestarting) {
    super.onShutdown(isRestarting);
    shell.close();
  }

  /** The base class makes its parts through a builder only. */
  private static final class Builder extends BaseKernelBuilder<Builder, JavaKernel> {

    JupyterIO io() {
      return buildJupyterIO(StandardCharsets.UTF_8);
    }

    CommManager comms() {
      return buildCommManager();
    }

    Renderer renderer() {
      return buildRenderer();
    }

    MagicsRegistry magics() {
      return buildMagicsRegistry();
    }

    StringStyler styler() {
      return buildErrorStyler();
    }

    @Override
    public JavaKernel build() {
      throw new UnsupportedOperationException("made by JavaKernel.of");
    }
  }
}
