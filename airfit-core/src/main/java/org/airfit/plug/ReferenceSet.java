package org.airfit.plug;

import java.util.Collection;
import java.util.EnumSet;
import java.util.HashSet;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.airfit.safety.Medium;

/**
 * The profiles a plug is compared with. All of them are for compressed air.
 *
 * <p>A marking is a hint, with a warning:
 *
 * <pre>{@code
 * import org.airfit.plug.DemoProfiles;
 * import org.airfit.plug.ReferenceSet;
 *
 * class MarkedHeron {
 *   public static void main(String[] args) {
 *     ReferenceSet birds = DemoProfiles.birds();
 *     System.out.println(birds.profiles().size()); // 4
 *     System.out.println(birds.lookUp("demo heron").profiles().get(0).id()); // demo-heron
 *   }
 * }
 * }</pre>
 *
 * <p>This class is immutable and thread-safe.
 */
public final class ReferenceSet {

  /** A message names no more profiles. */
  private static final int MOST_NAMED = 20;

  private final String name;
  private final List<PlugProfile> profiles;
  private final Provenance weakest;
  private final List<UniversalSocket> sockets;
  private final SizeTable sizes;

  private ReferenceSet(
      String name, List<PlugProfile> profiles, Provenance weakest, List<UniversalSocket> sockets) {
    this.name = name;
    this.profiles = profiles;
    this.weakest = weakest;
    this.sockets = sockets;
    this.sizes = new SizeTable(profiles);
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
    Objects.requireNonNull(name, "name");
    Objects.requireNonNull(profiles, "profiles");
    if (profiles.isEmpty()) {
      throw new IllegalArgumentException(
          "profiles of the set \"" + name + "\" must be at least one, were none");
    }
    Set<String> ids = new HashSet<>();
    Provenance weakest = Provenance.standardEntered();
    for (PlugProfile profile : profiles) {
      if (profile.medium() != Medium.COMPRESSED_AIR) {
        throw new IllegalArgumentException("medium of profile " + profile.id()
            + " must be compressed air in an air set, was " + profile.medium()
            + "; plugs for anything else are never offered for air, leave it out. "
            + profile.medium().refusalInWords().orElse(""));
      }
      if (!ids.add(profile.id())) {
        throw new IllegalArgumentException("id of each profile must be unique in the set \"" + name
            + "\", \"" + profile.id() + "\" stands twice; rename one");
      }
      weakest = weakest.weaker(profile.provenance());
    }
    return new ReferenceSet(name, List.copyOf(profiles), weakest, List.of());
  }

  /**
   * Adds the universal sockets the shop knows of. They take no part in an identification; {@link SocketAnswer} reads
   * them.
   *
   * @param known the sockets, replacing any before; no two of one name, each of profiles in this set
   * @return a set with these sockets
   * @throws IllegalArgumentException if a name stands twice, or a profile is not in this set
   */
  public ReferenceSet withSockets(Collection<UniversalSocket> known) {
    Objects.requireNonNull(known, "known");
    Set<String> names = new HashSet<>();
    for (UniversalSocket socket : known) {
      if (!names.add(socket.name())) {
        throw new IllegalArgumentException("name of each universal socket must be unique, \""
            + socket.name() + "\" stands twice; rename one");
      }
      for (String id : socket.profileIds()) {
        requireProfile(id, "universal socket \"" + socket.name() + "\"");
      }
    }
    return new ReferenceSet(name, profiles, weakest, List.copyOf(known));
  }

  /** Refuses an id that is not of this set. */
  void requireProfile(String id, String owner) {
    if (profile(id).isEmpty()) {
      throw new IllegalArgumentException("profile of the " + owner + " must be one of "
          + profiles.stream()
              .limit(MOST_NAMED)
              .map(PlugProfile::id)
              .collect(Collectors.joining(", "))
          + (profiles.size() > MOST_NAMED ? ", … (" + profiles.size() + " in all)" : "")
          + " of the set \"" + name + "\", was \"" + id + "\"; add the profile, or leave it out");
    }
  }

  /** The sizes as plain numbers. */
  SizeTable sizes() {
    return sizes;
  }

  /** {@return the universal sockets the set knows of, in the order given} */
  public List<UniversalSocket> sockets() {
    return sockets;
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
    Objects.requireNonNull(id, "id");
    return profiles.stream().filter(profile -> profile.id().equals(id)).findFirst();
  }

  /**
   * Finds what a trade letter or word may mean. Upper and lower case are alike.
   *
   * @param word the letter, word, name or id
   * @return every profile it may mean, with a warning
   * @throws IllegalArgumentException if {@code word} is blank
   */
  public AliasLookup lookUp(String word) {
    if (Objects.requireNonNull(word, "word").isBlank()) {
      throw new IllegalArgumentException("word to look up must not be blank, was \"" + word
          + "\"; give a letter, a trade word, a name or an id");
    }
    List<PlugProfile> meant =
        profiles.stream().filter(profile -> profile.isCalled(word)).toList();
    return new AliasLookup(word, meant, warning(word, meant));
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

  @Override
  public boolean equals(Object other) {
    return other instanceof ReferenceSet that
        && name.equals(that.name)
        && profiles.equals(that.profiles)
        && sockets.equals(that.sockets);
  }

  @Override
  public int hashCode() {
    return Objects.hash(name, profiles, sockets);
  }

  /** {@return the name, the count and the weakest provenance} */
  @Override
  public String toString() {
    return name + ": " + profiles.size() + (profiles.size() == 1 ? " profile, " : " profiles, ")
        + weakest;
  }
}
