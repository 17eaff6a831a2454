package org.airfit.plug;

import java.util.Objects;

/**
 * Something wrong, or probably wrong, with the sizes typed in for a profile.
 *
 * @param severity whether it cannot be, or only should not be
 * @param message parameter, range, value and what to check
 */
public record ProfileFinding(Severity severity, String message) {
  /**
   * Checks that nothing is missing.
   *
   * @param severity whether it cannot be, or only should not be
   * @param message parameter, range, value and what to check
   */
  public ProfileFinding {
    Objects.requireNonNull(severity, "severity");
    Objects.requireNonNull(message, "message");
  }

  /** How sure a finding is. */
  public enum Severity {
    /** No plug can have these sizes. */
    IMPOSSIBLE,
    /** Looks like a slip; refused until {@link PlugProfile.Builder#confirmUnusual()}. */
    DOUBTFUL
  }

  /** {@return the message} */
  @Override
  public String toString() {
    return message;
  }
}
