package org.airfit.plug;

import java.util.Collection;
import java.util.EnumSet;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * The profiles a plug is compared with. All of them are for compressed air.
 *
 * <p>This class is immutable and thread-safe.
 */
public final class ReferenceSet {

  private final String name;
  private final List<PlugProfile> profiles;
  private final Provenance weakest;

  private ReferenceSet(String name, List<PlugProfile> profiles, Provenance weakest) {
    this.name = name;
    this.profiles = profiles;
    this.weakest = weakest;
  }

  /**
   * Obtains a set.
   *
   * @param name what to call the set in an answer
   * @param profiles the profiles, one at least, all for compressed air, no two with one id
   * @return the set
   * @throws IllegalArgumentException if there is none, if an id stands twice, or if a profile is not for compressed air
   */
  public static ReferenceSet of(String name, Collection<PlugProfile> profiles) {
    if (profiles.isEmpty()) {
      throw new IllegalArgumentException(
          "profiles of the set \"" + name + "\" must be at least one, were none");
    }
    Set<String> ids = new HashSet<>();
    Provenance weakest = Provenance.standardEntered();
    for (PlugProfile profile : profiles) {
      if (profile.medium() != Medium.COMPRESSED_AIR) {
        throw new IllegalArgumentException("medium of profile " + profile.id()
            + " must be compressed air in an air set, was " + profile.medium().label()
            + "; welding-gas and hydraulic plugs are never offered for air, leave it out");
      }
      if (!ids.add(profile.id())) {
        throw new IllegalArgumentException("id of each profile must be unique in the set \"" + name
            + "\", \"" + profile.id() + "\" stands twice; rename one");
      }
      weakest = weakest.weaker(profile.provenance());
    }
    return new ReferenceSet(name, List.copyOf(profiles), weakest);
  }

  /** {@return the name} */
  public String name() {
    return name;
  }

  /** {@return the profiles in the order they were given} */
  public List<PlugProfile> profiles() {
    return profiles;
  }

  /** {@return the weakest provenance in the set; every comparison with the set rests on it} */
  public Provenance weakestProvenance() {
    return weakest;
  }

  /** {@return every dimension that at least one profile knows} */
  public Set<Dimension> dimensions() {
    Set<Dimension> known = EnumSet.noneOf(Dimension.class);
    profiles.forEach(profile -> known.addAll(profile.dimensions().keySet()));
    return known;
  }

  /**
   * Finds a profile by its id.
   *
   * @param id the id
   * @return the profile, empty if the set has none of that id
   */
  public Optional<PlugProfile> profile(String id) {
    return profiles.stream().filter(profile -> profile.id().equals(id)).findFirst();
  }

  /**
   * Finds what a trade letter or word may mean. Upper and lower case are alike.
   *
   * @param word the letter, word, name or id
   * @return every profile it may mean, with a warning
   */
  public Lookup lookUp(String word) {
    List<PlugProfile> meant =
        profiles.stream().filter(profile -> profile.isCalled(word)).toList();
    return new Lookup(word, meant, warning(word, meant));
  }

  private String warning(String word, List<PlugProfile> meant) {
    String hint =
        "Letters and trade names mean different profiles in different places; measure the plug.";
    if (meant.isEmpty()) {
      return "\"" + word + "\" names no profile in the set \"" + name + "\". " + hint;
    }
    String which = meant.stream().map(PlugProfile::displayName).collect(Collectors.joining(" or "));
    return "\"" + word + "\" may mean " + which + " in the set \"" + name
        + "\", and others outside it. " + hint;
  }

  /** {@return the name, the count and the weakest provenance} */
  @Override
  public String toString() {
    return name + ": " + profiles.size() + (profiles.size() == 1 ? " profile, " : " profiles, ")
        + weakest;
  }
}
