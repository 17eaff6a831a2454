package org.airfit.plug;

import java.util.Collection;
import java.util.Collections;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.airfit.internal.Ids;
import org.airfit.measure.PartSpread;
import org.airfit.plug.ProfileFinding.Severity;
import org.airfit.quantity.Length;
import org.airfit.safety.Medium;
import org.airfit.source.Source;
import org.jspecify.annotations.Nullable;

/**
 * The outside shape of one interchange family of plugs: its dimensions, how they vary, and where they are known from.
 *
 * <p>Trade letters and words are aliases, and nothing more: one letter may mean several profiles.
 *
 * <p>A profile entered by hand:
 *
 * <pre>{@code
 * import org.airfit.measure.PartSpread;
 * import org.airfit.plug.Dimension;
 * import org.airfit.plug.PlugProfile;
 * import org.airfit.plug.Provenance;
 * import org.airfit.quantity.Length;
 * import org.airfit.source.Source;
 *
 * class EnteredProfile {
 *   public static void main(String[] args) {
 *     PlugProfile profile = PlugProfile.builder("demo-stork")
 *         .from(Provenance.synthetic(), Source.demo("invented"))
 *         .dimension(
 *             Dimension.TIP_DIAMETER,
 *             PartSpread.normal(Length.parse("16 mm"), Length.parse("0.03 mm")))
 *         .build();
 *     System.out.println(profile.spread(Dimension.TIP_DIAMETER).isPresent()); // true
 *     System.out.println(profile.missingDimensions().size()); // 8
 *   }
 * }
 * }</pre>
 *
 * <p>This class is immutable and thread-safe. Two profiles are equal when all they say is equal.
 */
public final class PlugProfile {

  private final String id;
  private final String displayName;
  private final Set<String> aliases;
  private final Medium medium;
  private final Provenance provenance;
  private final Source source;
  private final Map<Dimension, PartSpread> dimensions;
  private final @Nullable GrooveForm grooveForm;
  private final @Nullable GaugeBall tipLengthBall;
  private final TipLength sizes;
  private final Set<Dimension> deciding;
  private final Set<Dimension> missing;

  private PlugProfile(Builder builder, Provenance provenance, Source source) {
    this.id = builder.id;
    this.displayName = builder.displayName;
    this.aliases = Collections.unmodifiableSet(new LinkedHashSet<>(builder.aliases));
    this.medium = builder.medium;
    this.provenance = provenance;
    this.source = source;
    this.dimensions = Collections.unmodifiableMap(new EnumMap<>(builder.dimensions));
    this.grooveForm = builder.grooveForm;
    this.tipLengthBall = builder.tipLengthBall;
    this.sizes = new TipLength(dimensions, Optional.ofNullable(tipLengthBall));
    Set<Dimension> decide = EnumSet.copyOf(dimensions.keySet());
    if (!builder.deciding.isEmpty()) {
      decide.retainAll(builder.deciding);
    }
    this.deciding = Collections.unmodifiableSet(decide);
    Set<Dimension> without = EnumSet.noneOf(Dimension.class);
    if (builder.deciding.isEmpty()) {
      without = EnumSet.complementOf(EnumSet.copyOf(dimensions.keySet()));
    }
    this.missing = Collections.unmodifiableSet(without);
  }

  /**
   * Starts a profile.
   *
   * @param id a short name, unique in its set, such as "demo-heron"
   * @return a builder for a compressed-air profile without dimensions
   * @throws IllegalArgumentException if {@code id} is blank or holds a comma
   */
  public static Builder builder(String id) {
    Objects.requireNonNull(id, "id");
    return new Builder(id);
  }

  /** {@return the short name, unique in its set} */
  public String id() {
    return id;
  }

  /** {@return the name for people} */
  public String displayName() {
    return displayName;
  }

  /** {@return the letters and words the trade uses for it, as they were given} */
  public Set<String> aliases() {
    return aliases;
  }

  /** {@return what its couplings carry} */
  public Medium medium() {
    return medium;
  }

  /** {@return what kind of place the dimensions come from} */
  public Provenance provenance() {
    return provenance;
  }

  /** {@return the place itself} */
  public Source source() {
    return source;
  }

  /** {@return the known dimensions in the order of {@link Dimension}} */
  public Map<Dimension, PartSpread> dimensions() {
    return dimensions;
  }

  /**
   * Obtains one dimension.
   *
   * @param dimension which
   * @return its spread, empty if it is not known
   */
  public Optional<PartSpread> spread(Dimension dimension) {
    Objects.requireNonNull(dimension, "dimension");
    return Optional.ofNullable(dimensions.get(dimension));
  }

  /**
   * Obtains the known dimensions that decide whether a plug mates as this profile does. A near copy that differs in one
   * of them is another plug, so all must be read before a plug is called identified, see {@link Identifier}.
   *
   * @return every known dimension, unless {@link Builder#deciding} named some of them
   */
  public Set<Dimension> decidingDimensions() {
    return deciding;
  }

  /**
   * Obtains the dimensions on which the mating depends too and whose size is not known. Every {@link Dimension} decides
   * something, see {@link Dimension#whatItDecides}; so a near copy may differ where this profile says nothing, and no
   * reading of the others tells it.
   *
   * @return every dimension that is not known; empty where {@link Builder#deciding} named those that decide
   */
  public Set<Dimension> missingDimensions() {
    return missing;
  }

  /** {@return the form of the locking groove, empty if it is not known} */
  public Optional<GrooveForm> grooveForm() {
    return Optional.ofNullable(grooveForm);
  }

  /**
   * Obtains the nominal tip length to the edge, for drawing.
   *
   * @return the nominal tip length to the edge, or the stated one where the profile cannot tell the edge
   * @throws java.util.NoSuchElementException if the profile has no tip length
   */
  public Length tipLengthToEdge() {
    PartSpread stated = spread(Dimension.TIP_LENGTH).orElseThrow();
    return sizes.spread(Dimension.TIP_LENGTH, Optional.empty()).orElse(stated).nominal();
  }

  /** The sizes, with the tip length as it is wanted. */
  TipLength sizes() {
    return sizes;
  }

  /** {@return the ball its tip length is stated by, see {@link GaugeBall}; empty for the edge} */
  public Optional<GaugeBall> tipLengthBall() {
    return Optional.ofNullable(tipLengthBall);
  }

  /**
   * Says whether the trade may mean this profile by a letter or word. Upper and lower case are alike.
   *
   * @param word the letter, word, name or id
   * @return whether it is the id, the name or an alias of this profile
   */
  public boolean isCalled(String word) {
    Objects.requireNonNull(word, "word");
    String wanted = folded(word);
    return folded(id).equals(wanted)
        || folded(displayName).equals(wanted)
        || aliases.stream().anyMatch(alias -> folded(alias).equals(wanted));
  }

  private static String folded(String word) {
    return word.strip().toLowerCase(Locale.ROOT);
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof PlugProfile that
        && id.equals(that.id)
        && displayName.equals(that.displayName)
        && aliases.equals(that.aliases)
        && medium == that.medium
        && provenance.equals(that.provenance)
        && source.equals(that.source)
        && dimensions.equals(that.dimensions)
        && deciding.equals(that.deciding)
        && missing.equals(that.missing)
        && grooveForm == that.grooveForm
        && Objects.equals(tipLengthBall, that.tipLengthBall);
  }

  @Override
  public int hashCode() {
    return Objects.hash(
        id,
        displayName,
        aliases,
        medium,
        provenance,
        source,
        dimensions,
        deciding,
        missing,
        grooveForm,
        tipLengthBall);
  }

  /** {@return the name and the provenance, such as "Demo Heron (invented, of no real plug)"} */
  @Override
  public String toString() {
    return displayName + " (" + provenance + ")";
  }

  /** Collects a profile and checks what was typed. Not thread-safe. */
  public static final class Builder {

    private final String id;
    private String displayName;
    private final Set<String> aliases = new LinkedHashSet<>();
    private Medium medium = Medium.COMPRESSED_AIR;
    private @Nullable Provenance provenance;
    private @Nullable Source source;
    private final Map<Dimension, PartSpread> dimensions = new EnumMap<>(Dimension.class);
    private final Set<Dimension> deciding = EnumSet.noneOf(Dimension.class);
    private @Nullable GrooveForm grooveForm;
    private @Nullable GaugeBall tipLengthBall;
    private boolean unusualConfirmed;

    private Builder(String id) {
      this.id = Ids.require("id of a profile", id);
      this.displayName = id;
    }

    /**
     * Names the profile for people.
     *
     * @param name the name
     * @return this builder
     */
    public Builder displayName(String name) {
      Objects.requireNonNull(name, "name");
      this.displayName = name;
      return this;
    }

    /**
     * Adds letters or words the trade uses. They are data: the same one may stand on other profiles too.
     *
     * @param words the letters or words
     * @return this builder
     * @throws IllegalArgumentException if one is blank
     */
    public Builder aliases(String... words) {
      Objects.requireNonNull(words, "words");
      for (String word : words) {
        if (word.isBlank()) {
          throw new IllegalArgumentException(
              "alias of profile " + id + " must not be blank, was \"" + word + "\"");
        }
        aliases.add(word.strip());
      }
      return this;
    }

    /**
     * Says what couplings of this profile carry. Compressed air unless said otherwise.
     *
     * @param carried the medium
     * @return this builder
     */
    public Builder medium(Medium carried) {
      Objects.requireNonNull(carried, "carried");
      this.medium = carried;
      return this;
    }

    /**
     * Says where the dimensions come from.
     *
     * @param kind what kind of place
     * @param place the place itself: edition and table, or who measured with what
     * @return this builder
     */
    public Builder from(Provenance kind, Source place) {
      Objects.requireNonNull(kind, "kind");
      Objects.requireNonNull(place, "place");
      this.provenance = kind;
      this.source = place;
      return this;
    }

    /**
     * Adds a dimension, or replaces it.
     *
     * @param dimension which
     * @param spread its nominal and how it varies
     * @return this builder
     */
    public Builder dimension(Dimension dimension, PartSpread spread) {
      Objects.requireNonNull(dimension, "dimension");
      Objects.requireNonNull(spread, "spread");
      dimensions.put(dimension, spread);
      return this;
    }

    /**
     * Says which dimensions decide the mating, where a standard or a trial tells that the others do not matter. Without
     * it every {@link Dimension} decides, also those whose size is not known, see
     * {@link PlugProfile#missingDimensions}.
     *
     * @param those the dimensions, one at least, each to be given a spread as well
     * @return this builder
     * @throws IllegalArgumentException if there is none
     */
    public Builder deciding(Collection<Dimension> those) {
      Objects.requireNonNull(those, "those");
      if (those.isEmpty()) {
        throw new IllegalArgumentException("deciding dimensions of profile " + id
            + " must be at least one, were none; leave the call out where all decide");
      }
      deciding.clear();
      deciding.addAll(those);
      return this;
    }

    /**
     * Says how the locking groove looks. A hint only, see {@link Clue#grooveForm}.
     *
     * @param form the form
     * @return this builder
     */
    public Builder grooveForm(GrooveForm form) {
      Objects.requireNonNull(form, "form");
      this.grooveForm = form;
      return this;
    }

    /**
     * Says that the tip length is stated by a ball in the groove and not to the edge. Readings to the edge or by
     * another ball are converted before they are compared, where the profile knows its collar and groove diameters.
     *
     * @param ball the ball
     * @return this builder
     */
    public Builder tipLengthBy(GaugeBall ball) {
      Objects.requireNonNull(ball, "ball");
      this.tipLengthBall = ball;
      return this;
    }

    /**
     * States that doubtful sizes were looked at again and are meant. What is impossible stays refused.
     *
     * @return this builder
     */
    public Builder confirmUnusual() {
      this.unusualConfirmed = true;
      return this;
    }

    /**
     * Looks for what cannot be or should not be in the sizes so far, above all inches typed as millimetres.
     *
     * @return everything found, the impossible first; empty if all is well
     */
    public List<ProfileFinding> findings() {
      String written = displayName + " " + String.join(" ", aliases) + " "
          + (source == null ? "" : source.citation());
      return ProfileFinding.search(
          id, written, medium, provenance, dimensions, tipLengthBall == null);
    }

    /**
     * Obtains the profile.
     *
     * @return the profile
     * @throws IllegalArgumentException if there is no provenance or no dimension, if sizes are impossible, or if they
     *     are doubtful and not confirmed; the message holds every finding
     */
    public PlugProfile build() {
      Provenance kind = provenance;
      Source place = source;
      if (kind == null || place == null) {
        throw new IllegalArgumentException("provenance of profile " + id
            + " must be given, was missing; say from(provenance, source)");
      }
      if (dimensions.isEmpty()) {
        throw new IllegalArgumentException(
            "dimensions of profile " + id + " must be at least one, were none");
      }
      if (!dimensions.keySet().containsAll(deciding)) {
        throw new IllegalArgumentException("deciding dimensions of profile " + id
            + " must be among those it knows, " + dimensions.keySet() + ", were " + deciding
            + "; give the others a size or leave them out");
      }
      List<ProfileFinding> refused = findings().stream()
          .filter(finding -> finding.severity() == Severity.IMPOSSIBLE || !unusualConfirmed)
          .toList();
      if (!refused.isEmpty()) {
        throw new IllegalArgumentException("profile " + id + ": "
            + refused.stream().map(ProfileFinding::message).collect(Collectors.joining("; also ")));
      }
      return new PlugProfile(this, kind, place);
    }
  }
}
