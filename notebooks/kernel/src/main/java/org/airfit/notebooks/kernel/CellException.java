package org.airfit.notebooks.kernel;

import java.util.List;

/** A cell that could not be compiled, or that ended in an {@link Error}. */
public final class CellException extends RuntimeException {

  private static final long serialVersionUID = 1L;

  /**
   * A cell that is not Java.
   *
   * @param complaints what the compiler said
   */
  CellException(List<String> complaints) {
    super(String.join("\n", complaints));
  }

  /**
   * A cell that ended in an error.
   *
   * @param error what it threw
   */
  CellException(Throwable error) {
    super(error.toString(), error);
  }
}
