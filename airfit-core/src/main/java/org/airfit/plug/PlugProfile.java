package org.airfit.plug;

import static org.airfit.plug.Dimension.BORE;
import static org.airfit.plug.Dimension.COLLAR_DIAMETER;
import static org.airfit.plug.Dimension.GROOVE_DIAMETER;
import static org.airfit.plug.Dimension.GROOVE_WIDTH;
import static org.airfit.plug.Dimension.INSERTION_LENGTH;
import static org.airfit.plug.Dimension.TIP_DIAMETER;
import static org.airfit.plug.Dimension.TIP_LENGTH;
import static org.airfit.plug.Dimension.TIP_TO_COLLAR;

import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.airfit.internal.Digits;
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
  }

  /**
   * Starts a profile.
   *
   * @param id a short name, unique in its set, such as "demo-heron"
   * @return a builder for a compressed-air profile without dimensions
   * @throws IllegalArgumentException if {@code id} is blank
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

    private static final double MM_PER_INCH = 25.4;

    /** No length of an air-line plug is this short; this project's judgement, no source. Used to find slips only. */
    private static final double TOO_SHORT_MM = 1.0;

    private static final List<String> NOT_AIR =
        List.of("iso 7289", "en 561", "welding", "iso 7241", "iso 14541", "iso 16028", "hydraulic");

    private final String id;
    private String displayName;
    private final Set<String> aliases = new LinkedHashSet<>();
    private Medium medium = Medium.COMPRESSED_AIR;
    private @Nullable Provenance provenance;
    private @Nullable Source source;
    private final Map<Dimension, PartSpread> dimensions = new EnumMap<>(Dimension.class);
    private @Nullable GrooveForm grooveForm;
    private @Nullable GaugeBall tipLengthBall;
    private boolean unusualConfirmed;

    private Builder(String id) {
      if (id.isBlank()) {
        throw new IllegalArgumentException("id of a profile must not be blank, was \"" + id + "\"");
      }
      this.id = id;
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
      List<ProfileFinding> found = new ArrayList<>();
      requireBelow(found, BORE, GROOVE_DIAMETER, false, "a wall must remain under the groove");
      requireBelow(found, BORE, TIP_DIAMETER, false, "the tip needs a wall");
      requireBelow(
          found,
          TIP_DIAMETER,
          COLLAR_DIAMETER,
          true,
          "the collar is the largest diameter in front of the groove");
      requireBelow(
          found, GROOVE_DIAMETER, COLLAR_DIAMETER, false, "otherwise the balls cannot lock");
      if (tipLengthBall == null) { // by a ball the length may end before the edge
        requireBelow(found, TIP_TO_COLLAR, TIP_LENGTH, true, "the collar starts before it ends");
      }
      requireBelow(
          found, TIP_LENGTH, INSERTION_LENGTH, true, "the groove lies in front of the stop face");
      requireGrooveInFront(found);
      requirePieces(found);
      dimensions.forEach((dimension, spread) -> doubt(found, dimension, spread));
      doubtMedium(found);
      return List.copyOf(found);
    }

    private void requireBelow(
        List<ProfileFinding> found,
        Dimension lesser,
        Dimension greater,
        boolean equalToo,
        String reason) {
      PartSpread small = dimensions.get(lesser);
      PartSpread large = dimensions.get(greater);
      if (small == null || large == null) {
        return;
      }
      double a = small.nominal().millimetres();
      double b = large.nominal().millimetres();
      if (!(a < b || (equalToo && a == b))) {
        found.add(new ProfileFinding(
            Severity.IMPOSSIBLE,
            lesser + " must be " + (equalToo ? "at most the " : "below the ") + greater + " of "
                + mm(b) + ", was " + mm(a) + ": " + reason + unitHint(lesser, a, greater, b)));
      }
    }

    /**
     * One of the two was typed in the other unit where a factor of 25.4 would put them right; sizes of plugs tell
     * which.
     */
    private static String unitHint(Dimension lesser, double a, Dimension greater, double b) {
      if (!(b * MM_PER_INCH >= a && b * 4.0 < a)) {
        return "; check both, and that they were not exchanged";
      }
      return lesser.isUsual(a / MM_PER_INCH) && !greater.isUsual(b * MM_PER_INCH)
          ? "; the " + lesser.label() + " looks like millimetres typed as inches, "
              + number(a / MM_PER_INCH) + " mm"
          : "; the " + greater.label() + " looks like inches typed as millimetres, " + number(b)
              + " in is " + mm(b * MM_PER_INCH);
    }

    private void requireGrooveInFront(List<ProfileFinding> found) {
      PartSpread length = dimensions.get(TIP_LENGTH);
      PartSpread width = dimensions.get(GROOVE_WIDTH);
      PartSpread insertion = dimensions.get(INSERTION_LENGTH);
      if (length == null || width == null || insertion == null) {
        return;
      }
      double groove = width.nominal().millimetres();
      double room = insertion.nominal().millimetres() - length.nominal().millimetres();
      if (room >= 0.0 && !(groove <= room * (1.0 + 1.0e-12))) {
        found.add(new ProfileFinding(
            Severity.IMPOSSIBLE,
            GROOVE_WIDTH + " must be at most " + mm(room) + ", the " + INSERTION_LENGTH
                + " less the " + TIP_LENGTH + ", was " + mm(groove)
                + ": the groove lies in front of the stop face; check all three"));
      }
    }

    private void requirePieces(List<ProfileFinding> found) {
      if (provenance == null || provenance.kind() != Provenance.Kind.USER_MEASURED) {
        return;
      }
      int claimed = provenance.pieces();
      dimensions.forEach((dimension, spread) -> {
        if (spread instanceof PartSpread.Sample sample && sample.pieces() < claimed) {
          found.add(new ProfileFinding(
              Severity.IMPOSSIBLE,
              "pieces measured must be at least " + claimed
                  + " for every dimension, as the provenance claims, was " + sample.pieces()
                  + " for the " + dimension + "; measure the rest or claim fewer"));
        }
      });
    }

    private static void doubt(List<ProfileFinding> found, Dimension dimension, PartSpread spread) {
      double size = spread.nominal().millimetres();
      if (dimension.isUsual(size * MM_PER_INCH) || size < TOO_SHORT_MM) {
        found.add(new ProfileFinding(
            Severity.DOUBTFUL,
            dimension + " of an air-line plug is hardly " + mm(size)
                + ": it looks like inches typed as millimetres, " + number(size) + " in is "
                + mm(size * MM_PER_INCH) + "; type the unit, or confirm"));
      } else if (dimension.isUsual(size / MM_PER_INCH)) {
        found.add(new ProfileFinding(
            Severity.DOUBTFUL,
            dimension + " of an air-line plug is hardly " + mm(size)
                + ": it looks like millimetres typed as inches, " + number(size / MM_PER_INCH)
                + " mm; type the unit, or confirm"));
      }
      double deviation = spread.standardDeviation().millimetres();
      if (deviation > 0.1 * size) {
        found.add(new ProfileFinding(
            Severity.DOUBTFUL,
            "part-to-part spread of the " + dimension + " should be far below its size of "
                + mm(size) + ", was " + mm(deviation)
                + "; give the standard deviation, not a size, or confirm"));
      }
    }

    private void doubtMedium(List<ProfileFinding> found) {
      if (medium != Medium.COMPRESSED_AIR) {
        return;
      }
      String written = (displayName + " " + String.join(" ", aliases) + " "
              + (source == null ? "" : source.citation()))
          .toLowerCase(Locale.ROOT);
      for (String word : NOT_AIR) {
        if (written.contains(word)) {
          found.add(
              new ProfileFinding(
                  Severity.DOUBTFUL,
                  "medium of profile " + id
                      + " must not be compressed air if it is what its name or source says (\""
                      + word
                      + "\"): welding-gas and hydraulic plugs are never offered for air; set the medium, or confirm"));
          return;
        }
      }
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
      List<ProfileFinding> refused = findings().stream()
          .filter(finding -> finding.severity() == Severity.IMPOSSIBLE || !unusualConfirmed)
          .toList();
      if (!refused.isEmpty()) {
        throw new IllegalArgumentException("profile " + id + ": "
            + refused.stream().map(ProfileFinding::message).collect(Collectors.joining("; also ")));
      }
      return new PlugProfile(this, kind, place);
    }

    private static String mm(double value) {
      return number(value) + " mm";
    }

    private static String number(double value) {
      return Digits.significant(value, 4);
    }
  }
}
