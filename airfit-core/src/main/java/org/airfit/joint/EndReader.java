package org.airfit.joint;

import java.util.Objects;
import org.airfit.quantity.QuantityFormatException;

/** Reads an end as people write it: by its words it is a form, a claw, a hose, a tube, or else a pipe thread. */
final class EndReader {

  private static final int MOST_CHARACTERS = 200;

  private EndReader() {}

  /** Reads a text; refuses with a {@link QuantityFormatException} what is no end. */
  static EndWords read(String text) {
    Objects.requireNonNull(text, "text");
    if (text.length() > MOST_CHARACTERS) {
      throw new QuantityFormatException(
          text,
          MOST_CHARACTERS,
          "longer than " + MOST_CHARACTERS + " characters",
          EndScanner.EXAMPLES);
    }
    return FormReader.read(text)
        .or(() -> HoseTubeReader.read(text))
        .orElseGet(() -> PipeReader.read(text, text));
  }
}
