package org.airfit.notebooks.kernel;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.GeneralSecurityException;
import org.dflib.jjava.jupyter.channels.JupyterConnection;
import org.dflib.jjava.jupyter.kernel.KernelConnectionProperties;

/** Starts the kernel for Jupyter. */
public final class Main {

  private Main() {}

  /**
   * Serves the notebook whose connection file Jupyter wrote, until it is shut down.
   *
   * @param arguments one: the path of the connection file
   * @throws IOException if the connection file cannot be read
   * @throws GeneralSecurityException if the connection asks for a signature this Java does not know
   */
  public static void main(String[] arguments) throws IOException, GeneralSecurityException {
    if (arguments.length != 1) {
      throw new IllegalArgumentException(
          "one argument wanted, Jupyter's connection file, were " + arguments.length);
    }
    KernelConnectionProperties properties =
        KernelConnectionProperties.parse(Files.readString(Path.of(arguments[0])));
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
}
