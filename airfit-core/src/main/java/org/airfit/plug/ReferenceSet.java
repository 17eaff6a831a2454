package org.airfit.plug;

import java.util.ArrayList;
import java.util.Collection;
import java.util.EnumSet;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.airfit.measure.Instrument;
import org.airfit.measure.PartSpread;
import org.airfit.safety.Medium;
import org.airfit.source.Source;

/**
 * The profiles a plug is compared with. All of them are for compressed air.
 *
 * <p>This class is immutable and thread-safe.
 */
public final class ReferenceSet {

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
            + "; welding-gas and hydraulic plugs are never offered for air, leave it out");
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
   * Adds the universal sockets the shop knows of. They take no part in an identification; {@link SocketAnswer} reads them.
   *
   * @param known the sockets, replacing any before; no two of one name, each of profiles in this set
   * @return a set with these sockets
   * @throws IllegalArgumentException if a name stands twice, or a profile is not in this set
   */
  public ReferenceSet withSockets(Collection<UniversalSocket> known) {
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
          + profiles.stream().map(PlugProfile::id).collect(Collectors.joining(", "))
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
    return profiles.stream().filter(profile -> profile.id().equals(id)).findFirst();
  }

  /**
   * Compares this set with another, profile by profile, by their ids.
   *
   * @param other the other set
   * @param instrument what measured pieces were measured with, or the coarser of two
   * @return where they agree and where not
   */
  public SetComparison comparedWith(ReferenceSet other, Instrument instrument) {
    return SetComparison.of(this, other, instrument);
  }

  /**
   * Joins two sets. A profile of one id in both must be measured in both and agree; its pieces then count together, in the dimensions
   * both know. Names, aliases of both, the groove form of this set, and the universal sockets of both are kept.
   *
   * @param newName what to call the joint set
   * @param other the other set, of other pieces
   * @param instrument what the pieces were measured with, or the coarser of two
   * @return the joint set
   * @throws IllegalArgumentException if a profile of one id is not measured in both, or the two do not agree
   */
  public ReferenceSet mergedWith(String newName, ReferenceSet other, Instrument instrument) {
    SetComparison comparison = comparedWith(other, instrument);
    if (!comparison.agrees()) {
      throw new IllegalArgumentException("profiles of one id must agree in both sets, but "
          + comparison.inWords() + "; they are two profiles, rename one, or measure again");
    }
    List<PlugProfile> joint = new ArrayList<>();
    profiles.forEach(profile ->
        joint.add(other.profile(profile.id()).map(that -> joined(profile, that)).orElse(profile)));
    other.profiles.stream().filter(profile -> profile(profile.id()).isEmpty()).forEach(joint::add);
    List<UniversalSocket> known = new ArrayList<>(sockets);
    other.sockets.stream().filter(socket -> !sockets.contains(socket)).forEach(known::add);
    return of(newName, joint).withSockets(known);
  }

  private static PlugProfile joined(PlugProfile one, PlugProfile other) {
    PlugProfile.Builder builder = PlugProfile.builder(one.id())
        .displayName(one.displayName())
        .aliases(one.aliases().toArray(new String[0]))
        .aliases(other.aliases().toArray(new String[0]))
        .confirmUnusual();
    if (!one.tipLengthBall().equals(other.tipLengthBall())) {
      throw new IllegalArgumentException("tip length of profile " + one.id()
          + " must be taken alike in both sets, was by "
          + one.tipLengthBall().map(GaugeBall::toString).orElse("the edge") + " and by "
          + other.tipLengthBall().map(GaugeBall::toString).orElse("the edge")
          + "; convert one, or leave it out");
    }
    one.tipLengthBall().ifPresent(builder::tipLengthBy);
    one.grooveForm().or(other::grooveForm).ifPresent(builder::grooveForm);
    Provenance mine = one.provenance();
    Provenance theirs = other.provenance();
    boolean measured = mine.kind() == Provenance.Kind.USER_MEASURED
        && theirs.kind() == Provenance.Kind.USER_MEASURED;
    one.dimensions()
        .forEach((dimension, spread) -> other.spread(dimension).ifPresent(that -> {
          if (measured
              && spread instanceof PartSpread.Sample sample
              && that instanceof PartSpread.Sample more) {
            builder.dimension(dimension, sample.joinedWith(more));
          } else {
            throw new IllegalArgumentException(
                "profile of one id in two sets must be measured in both, "
                    + one.id() + " is " + mine + " and " + theirs + " in its " + dimension
                    + "; keep the better one, or rename one");
          }
        }));
    String citation = one.source().citation().equals(other.source().citation())
        ? one.source().citation()
        : one.source().citation() + "; " + other.source().citation();
    return builder
        .from(
            measured ? Provenance.userMeasured(mine.pieces() + theirs.pieces()) : mine,
            new Source(one.source().basis().weaker(other.source().basis()), citation))
        .build();
  }

  /**
   * Finds what a trade letter or word may mean. Upper and lower case are alike.
   *
   * @param word the letter, word, name or id
   * @return every profile it may mean, with a warning
   */
  public AliasLookup lookUp(String word) {
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

  /** {@return the name, the count and the weakest provenance} */
  @Override
  public String toString() {
    return name + ": " + profiles.size() + (profiles.size() == 1 ? " profile, " : " profiles, ")
        + weakest;
  }
}
