package org.airfit.plug;

import java.util.List;
import java.util.Objects;

/**
 * What a letter or a word may mean in one set.
 *
 * @param asked the letter or word as it was asked
 * @param profiles every profile it may mean; empty if none
 * @param warning why this is a hint and no identification
 */
public record AliasLookup(String asked, List<PlugProfile> profiles, String warning) {

  /**
   * Checks the components and keeps a copy of the list.
   *
   * @param asked the letter or word as it was asked
   * @param profiles every profile it may mean; empty if none
   * @param warning why this is a hint and no identification
   * @throws IllegalArgumentException if the word or the warning is blank
   */
  public AliasLookup {
    Objects.requireNonNull(asked, "asked");
    Objects.requireNonNull(profiles, "profiles");
    Objects.requireNonNull(warning, "warning");
    if (asked.isBlank() || warning.isBlank()) {
      throw new IllegalArgumentException("word and warning of a look-up must say something, were \""
          + asked + "\" and \"" + warning + "\"");
    }
    profiles = List.copyOf(profiles);
  }
}
