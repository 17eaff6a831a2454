package org.airfit.internal;

import java.util.Arrays;
import java.util.Locale;
import java.util.Objects;
import java.util.stream.Collectors;

/** The labels of enum constants: how they are printed, and the same read back. */
public final class Labels {

  private Labels() {}

  /**
   * Obtains the label of a constant from its name.
   *
   * @param constant a constant such as HARDENED_STEEL
   * @return its label, such as "hardened steel"
   */
  public static String of(Enum<?> constant) {
    return constant.name().toLowerCase(Locale.ROOT).replace('_', ' ');
  }

  /**
   * Reads a label back, in whatever case and with blanks around it.
   *
   * @param <E> the type of the constants
   * @param what what is read, such as "material", for the message
   * @param text the label, as {@link Object#toString} of the constant prints it
   * @param constants the constants it may be
   * @return the constant of that label
   * @throws IllegalArgumentException if no constant has that label
   */
  public static <E extends Enum<E>> E parse(String what, String text, E[] constants) {
    String label = Objects.requireNonNull(text, "text").strip();
    for (E constant : constants) {
      if (constant.toString().equalsIgnoreCase(label)) {
        return constant;
      }
    }
    throw new IllegalArgumentException(what + " must be one of "
        + Arrays.stream(constants).map(Object::toString).collect(Collectors.joining(", "))
        + ", was \"" + text + "\"");
  }
}
