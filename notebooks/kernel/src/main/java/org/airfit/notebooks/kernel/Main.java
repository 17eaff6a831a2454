package org.airfit.notebooks.kernel;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.GeneralSecurityException;
import java.util.List;
import org.dflib.jjava.jupyter.channels.JupyterConnection;
import org.dflib.jjava.jupyter.kernel.KernelConnectionProperties;

/** Starts the kernel for Jupyter. */
public final class Main {

  private static final int WRONG_WORDS = 2;

  private static final String HELP = """
      airfit-kernel, a small Java kernel for Jupyter (notebooks/kernel/README.md)

        java -jar java-kernel.jar CONNECTION-FILE

      Jupyter starts it and writes the connection file. To let Jupyter know it:
        jupyter kernelspec install --user --replace --name java notebooks/kernel/target/kernels/java
      IJAVA_CLASSPATH or JJAVA_CLASSPATH names jars that every notebook sees.
        --help, -h   prints this
        --version    prints the version
      Exit code 0: ended by Jupyter; 1: it cannot listen; 2: it was called with words that it cannot use.
      """;

  private Main() {}

  /**
   * Serves the notebook whose connection file Jupyter wrote, until it is shut down.
   *
   * @param arguments one: the path of the connection file
   * @throws IOException if the connection file cannot be read
   * @throws GeneralSecurityException if the connection asks for a signature this Java does not know
   */
  public static void main(String[] arguments) throws IOException, GeneralSecurityException {
    List<String> words = List.of(arguments);
    if (words.contains("--help") || words.contains("-h")) {
      System.out.print(HELP);
      return;
    }
    if (words.equals(List.of("--version"))) {
      System.out.println("airfit-kernel " + version());
      return;
    }
    if (words.size() != 1 || words.get(0).startsWith("-")) {
      System.err.println(
          "the kernel wants one word, the connection file that Jupyter wrote; --help tells more");
      System.exit(WRONG_WORDS);
    }
    if (!Files.isReadable(Path.of(words.get(0)))) {
      System.err.println(
          words.get(0) + ": there is no such file to read; Jupyter gives its connection file here");
      System.exit(WRONG_WORDS);
    }
    KernelConnectionProperties properties =
        KernelConnectionProperties.parse(Files.readString(Path.of(words.get(0))));
    JupyterConnection connection = new JupyterConnection(properties);
    JavaKernel kernel = JavaKernel.withClasspathOf(System.getenv());
    kernel.becomeHandlerForConnection(connection);
    kernel.onStartup();
    try {
      connection.connect();
    } catch (RuntimeException portTaken) {
      // The sockets' threads would keep a kernel alive that nobody can reach, and Jupyter would
      // wait for it.
      System.err.println("the kernel cannot listen on its ports: " + portTaken);
      System.exit(1);
    }
    connection.waitUntilClose();
  }

  /** The version that the build filled in. */
  private static String version() throws IOException {
    try (InputStream in = Main.class.getResourceAsStream("version.txt")) {
      return in == null
          ? "of unknown version"
          : new String(in.readAllBytes(), StandardCharsets.UTF_8).strip();
    }
  }
}
