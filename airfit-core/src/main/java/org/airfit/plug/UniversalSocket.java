package org.airfit.plug;

import java.util.Collection;
import java.util.Collections;
import java.util.LinkedHashSet;
import java.util.Objects;
import java.util.Set;
import org.airfit.source.Source;

/**
 * A socket of which it is stated that it takes plugs of several profiles.
 *
 * @param name what to call it
 * @param profileIds the ids of the profiles it takes, two at least
 * @param source who says so: its maker's sheet, or the shop's own trial with leak and pull check
 */
public record UniversalSocket(String name, Set<String> profileIds, Source source) {

  /**
   * Keeps a copy of the ids in the order given.
   *
   * @param name what to call it
   * @param profileIds the ids of the profiles it takes, two at least
   * @param source who says so: its maker's sheet, or the shop's own trial with leak and pull check
   * @throws IllegalArgumentException if the name is blank or there are fewer than two profiles
   */
  public UniversalSocket {
    Objects.requireNonNull(name, "name");
    Objects.requireNonNull(profileIds, "profileIds");
    Objects.requireNonNull(source, "source");
    if (name.isBlank()) {
      throw new IllegalArgumentException(
          "name of a universal socket must not be blank, was \"" + name + "\"");
    }
    if (profileIds.size() < 2) {
      throw new IllegalArgumentException("profiles of the universal socket \"" + name
          + "\" must be at least 2, were " + profileIds.size()
          + "; a socket of one profile is an ordinary one, leave it out");
    }
    profileIds = Collections.unmodifiableSet(new LinkedHashSet<>(profileIds));
  }

  /**
   * Says whether it takes every one of some profiles.
   *
   * @param ids the ids of the profiles in use
   * @return whether all of them are among those it is stated to take
   */
  public boolean takesAll(Collection<String> ids) {
    Objects.requireNonNull(ids, "ids");
    return profileIds.containsAll(ids);
  }
}
