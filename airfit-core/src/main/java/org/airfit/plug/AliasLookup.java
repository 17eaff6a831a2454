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

  /** Keeps a copy of the list.
   *
   * @param asked the letter or word as it was asked
   * @param profiles every profile it may mean; empty if none
   * @param warning why this is a hint and no identification
   */
  public AliasLookup {
    Objects.requireNonNull(asked, "asked");
    Objects.requireNonNull(profiles, "profiles");
    Objects.requireNonNull(warning, "warning");
    profiles = List.copyOf(profiles);
  }
}
