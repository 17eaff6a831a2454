package org.airfit.notebooks.kernel;

import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.Method;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import jdk.jshell.EvalException;
import jdk.jshell.JShell;
import jdk.jshell.JShellException;
import jdk.jshell.Snippet;
import jdk.jshell.SnippetEvent;
import jdk.jshell.SourceCodeAnalysis;
import jdk.jshell.SourceCodeAnalysis.Completeness;
import jdk.jshell.SourceCodeAnalysis.CompletionInfo;
import jdk.jshell.UnresolvedReferenceException;
import jdk.jshell.execution.DirectExecutionControl;
import jdk.jshell.spi.ExecutionControl;
import jdk.jshell.spi.ExecutionControlProvider;
import jdk.jshell.spi.ExecutionEnv;
import org.jspecify.annotations.Nullable;

/** Runs cells, one after another, in this very Java virtual machine. */
final class Shell implements AutoCloseable {

  /** What the notebooks of this repository need of a kernel: its README lists it, and tells why. */
  static final List<String> NEEDED = List.of(
      "import java.util.*;",
      "import static org.dflib.jjava.jupyter.kernel.BaseNotebookStatics.render;");

  /** What the usual kernel imports, and its notebook functions. */
  static final List<String> USUAL = List.of(
      "import java.io.*;",
      "import java.math.*;",
      "import java.net.*;",
      "import java.util.*;",
      "import java.util.concurrent.*;",
      "import java.util.prefs.*;",
      "import java.util.regex.*;",
      "import static org.dflib.jjava.jupyter.kernel.BaseNotebookStatics.*;");

  /** A declaration or an assignment shows nothing; these do. */
  private static final Set<Snippet.SubKind> SHOWN = Set.of(
      Snippet.SubKind.VAR_VALUE_SUBKIND,
      Snippet.SubKind.OTHER_EXPRESSION_SUBKIND,
      Snippet.SubKind.TEMP_VAR_EXPRESSION_SUBKIND);

  private final InThisMachine execution = new InThisMachine();
  private final JShell shell;

  Shell(List<String> classpath, List<String> imports) {
    shell = JShell.builder()
        .executionEngine(new Provider(execution), Map.of())
        .out(System.out)
        .err(System.err)
        .build();
    classpath.forEach(this::addToClasspath);
    imports.forEach(this::run);
  }

  void addToClasspath(String path) {
    shell.addToClasspath(path);
  }

  SourceCodeAnalysis analysis() {
    return shell.sourceCodeAnalysis();
  }

  void interrupt() {
    execution.interrupt();
  }

  @Override
  public void close() {
    shell.close();
  }

  /**
   * Runs a cell.
   *
   * @param cell the cell's text, without magics
   * @return the value of its last snippet, or null if that has none to show
   * @throws CellException if the text is not Java
   */
  @Nullable
  Object run(String cell) {
    @Nullable Object value = null;
    String rest = cell;
    while (true) {
      CompletionInfo next = analysis().analyzeCompletion(rest);
      if (next.completeness() == Completeness.EMPTY) {
        return value;
      }
      if (next.completeness() == Completeness.DEFINITELY_INCOMPLETE) {
        throw new CellException(List.of("the cell ends in the middle of: " + rest.strip()));
      }
      value = null;
      for (SnippetEvent event : shell.eval(next.source())) {
        if (event.causeSnippet() == null) {
          value = valueOf(event);
        }
      }
      rest = next.remaining();
    }
  }

  private @Nullable Object valueOf(SnippetEvent event) {
    if (event.status() == Snippet.Status.REJECTED) {
      throw new CellException(shell
          .diagnostics(event.snippet())
          .map(diagnostic -> diagnostic.getMessage(Locale.ROOT) + "\n  in: "
              + event.snippet().source().strip())
          .toList());
    }
    JShellException thrown = event.exception();
    if (thrown instanceof UnresolvedReferenceException unresolved) {
      throw new CellException(shell
          .unresolvedDependencies(unresolved.getSnippet())
          .map(missing -> "not defined: " + missing)
          .toList());
    }
    if (thrown instanceof EvalException) {
      throw rethrown(execution.thrown());
    }
    return SHOWN.contains(event.snippet().subKind()) ? execution.value() : null;
  }

  /**
   * An exception of the user's leaves unchanged, so that the cell shows its own name; an error would end the kernel.
   */
  private static RuntimeException rethrown(@Nullable Throwable thrown) {
    if (thrown instanceof Exception exception) {
      throw Shell.<RuntimeException>unchecked(exception);
    }
    return new CellException(
        thrown == null ? new IllegalStateException("the cell ended abruptly") : thrown);
  }

  @SuppressWarnings({"unchecked", "TypeParameterUnusedInFormals"})
  private static <T extends Exception> T unchecked(Exception exception) throws T {
    throw (T) exception;
  }

  private record Provider(InThisMachine execution) implements ExecutionControlProvider {

    @Override
    public String name() {
      return "in this machine";
    }

    @Override
    public ExecutionControl generate(ExecutionEnv environment, Map<String, String> parameters) {
      return execution;
    }
  }

  /** JShell itself keeps only the text of a value; this keeps the value. */
  private static final class InThisMachine extends DirectExecutionControl {

    private volatile @Nullable Thread running;
    private @Nullable Object value;
    private @Nullable Throwable thrown;

    @Nullable
    Object value() {
      return value;
    }

    @Nullable
    Throwable thrown() {
      return thrown;
    }

    void interrupt() {
      Thread thread = running;
      if (thread != null) {
        thread.interrupt();
      }
    }

    @Override
    protected String invoke(Method snippet) throws Exception {
      Thread thread = Thread.currentThread();
      // Service loaders and drivers in the notebook's jars are found through it.
      thread.setContextClassLoader(snippet.getDeclaringClass().getClassLoader());
      running = thread;
      value = null;
      thrown = null;
      try {
        value = snippet.invoke(null);
        return "";
      } catch (InvocationTargetException failed) {
        thrown = failed.getCause();
        throw failed;
      } finally {
        running = null;
      }
    }
  }
}
