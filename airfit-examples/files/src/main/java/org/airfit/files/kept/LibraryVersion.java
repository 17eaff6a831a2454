package org.airfit.files.kept;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import org.airfit.run.Run;

/** Which version of airfit-core computes here, as its build says. */
public final class LibraryVersion {

  private static final String RESOURCE = "/META-INF/airfit/core-version.txt";

  private LibraryVersion() {}

  /**
   * Tells the version of the library, as a program prints it and an answer that is kept notes it.
   *
   * @return the version, such as "0.1.0"
   * @throws IllegalStateException if the library was not built by Maven, which fills the version in
   */
  public static String ofCore() {
    try (InputStream in = Run.class.getResourceAsStream(RESOURCE)) {
      if (in == null) {
        throw new IllegalStateException(
            "airfit-core must hold " + RESOURCE + ", but does not; take the jar as it was built");
      }
      String version = new String(in.readAllBytes(), StandardCharsets.UTF_8).strip();
      if (version.isEmpty() || version.startsWith("${")) {
        throw new IllegalStateException(
            RESOURCE + " of airfit-core must tell a version, was " + version + "; build by Maven");
      }
      return version;
    } catch (IOException e) {
      throw new IllegalStateException(RESOURCE + " of airfit-core cannot be read", e);
    }
  }
}
