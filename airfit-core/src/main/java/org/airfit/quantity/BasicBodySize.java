package org.airfit.quantity;

import java.util.List;

/**
 * The class of a quick coupler by how much air it is built to pass: 1/4, 3/8 or 1/2.
 *
 * <p>A class, not a measure. It is neither the size of the thread on the coupler nor the bore of the hose behind it,
 * and turns into neither.
 */
public enum BasicBodySize {
  /** 1/4, the class of small hand tools. */
  ONE_QUARTER("1/4"),
  /** 3/8, the class of medium tools. */
  THREE_EIGHTHS("3/8"),
  /** 1/2, the class of large tools. */
  ONE_HALF("1/2");

  private static final SizeNames<BasicBodySize> NAMES = new SizeNames<>(
      "basic body size",
      values(),
      BasicBodySize::label,
      List.of("body", "in", "in body", "\"", "\" body", "body size", "basic body size"));

  private final String label;

  BasicBodySize(String label) {
    this.label = label;
  }

  /**
   * Reads a body size as people write it.
   *
   * @param text "1/4", "3/8" or "1/2", with or without "body" behind it
   * @return the size
   * @throws QuantityFormatException if there is no such size; it lists those there are
   */
  public static BasicBodySize parse(String text) {
    return NAMES.parse(text);
  }

  /** {@return the size as the trade writes it, such as "3/8"} */
  public String label() {
    return label;
  }

  /** {@return the size with its kind, such as "3/8 body"} */
  @Override
  public String toString() {
    return label + " body";
  }
}
