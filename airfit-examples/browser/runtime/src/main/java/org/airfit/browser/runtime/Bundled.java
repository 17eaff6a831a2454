package org.airfit.browser.runtime;

import java.io.ByteArrayInputStream;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import org.jspecify.annotations.Nullable;

/** The tables that a page carries, as texts: the class library would write them in base 64, a third longer. */
final class Bundled {

  private Bundled() {}

  /** Opens a table by its name alone, in place of {@link Class#getResourceAsStream}. */
  static @Nullable InputStream open(Class<?> beside, String file) {
    String text = text(file);
    return text == null ? null : new ByteArrayInputStream(text.getBytes(StandardCharsets.UTF_8));
  }

  /** The compiler's plugin writes the body. */
  private static native @Nullable String text(String file);
}
