package org.airfit.safety;

import java.util.Objects;
import java.util.Optional;
import org.airfit.internal.Labels;
import org.airfit.source.Source;
import org.jspecify.annotations.Nullable;

/**
 * What a line is to carry. airfit is for compressed air that drives tools, and refuses everything else with the
 * reason.
 */
public enum Medium {
  /** Compressed air for tools, blowing and the like. */
  COMPRESSED_AIR(null),
  /** Air that somebody breathes. */
  BREATHING_AIR(new Caution(
      "Not for breathing air",
      "Breathing air needs its own supply, tests and couplings that fit no outlet of other air "
          + "or gas: ask the maker of the apparatus.",
      Source.handbook("29 CFR 1910.134 and CGA G-7.1-1989 Grade D, as in UFC 4-150-02"))),
  /** Oxygen. */
  OXYGEN(new Caution(
      "Not for oxygen",
      "Oil, grease and ordinary seals burn in oxygen. Nothing that has carried compressed air may be used for it.",
      Source.commonPractice("oxygen is kept apart from oil and from air fittings"))),
  /** Fuel gas or shielding gas for welding and cutting. */
  WELDING_GAS(new Caution(
      "Not for welding gas",
      "Couplings for welding gases must not connect with those for compressed air, even where dimensions match.",
      Source.standard("ISO 7289, as summarised on a public page"))),
  /** Nitrogen, alone or as what is left of air. */
  NITROGEN(new Caution(
      "Not for nitrogen",
      "Nitrogen takes the place of air where it leaks or is let out, and suffocates without a warning; its"
          + " cylinders stand far above the pressure of an air line. It needs its own couplings, rooms that are"
          + " watched and people who are taught.",
      Source.fromMemory(
          "nitrogen displaces oxygen and gives no warning; it is kept apart from air lines"))),
  /** Steam. */
  STEAM(new Caution(
      "Not for steam",
      "Steam scalds, and hoses and seals for air do not stand its heat.",
      Source.commonPractice("steam has hoses and couplings of its own"))),
  /** Oil under pressure for cylinders and motors. */
  HYDRAULIC_OIL(new Caution(
      "Not for hydraulic oil",
      "Couplings for hydraulic oil and those for compressed air must not be exchanged, even "
          + "where dimensions match: pressures, seals"
          + " and what is left inside differ.",
      Source.commonPractice("couplings for hydraulic oil are kept apart from those for air"))),
  /** Water or another liquid. */
  WATER(new Caution(
      "Not for water",
      "Couplers of the air interchanges are not meant for water or other fluids.",
      Source.handbook("A-A-59439 (30 Dec 1999), page 1"))),
  /** Whatever is none of these. */
  OTHER(new Caution(
      "Not for another medium",
      "What airfit computes is the flow of air, and what it judges are parts and rules for compressed air. Neither"
          + " holds for anything else: ask the maker of the parts, and whoever delivers the medium.",
      Source.derived("the laws of flow and the rules used here are those of compressed air")));

  private final @Nullable Caution refusal;

  Medium(@Nullable Caution refusal) {
    this.refusal = refusal;
  }

  /**
   * Tells in words why airfit does not advise on it: what is answered, before anything is computed, wherever it is
   * asked about.
   *
   * @return the refusal in one line; empty for compressed air
   */
  public Optional<String> refusalInWords() {
    return refusalInWords(toString());
  }

  /**
   * Tells the same of a medium that somebody calls otherwise.
   *
   * @param called what it is called, such as "\"argon\"", not blank
   * @return the refusal in one line; empty for compressed air
   * @throws IllegalArgumentException if {@code called} is blank
   */
  public Optional<String> refusalInWords(String called) {
    if (Objects.requireNonNull(called, "called").isBlank()) {
      throw new IllegalArgumentException(
          "name of a medium that is refused must not be blank, was \"" + called + "\"");
    }
    return refusal()
        .map(reason ->
            "airfit advises on compressed air for tools only, not on " + called + ". " + reason);
  }

  /**
   * Checks that it is compressed air, at the door of what computes the flow of air.
   *
   * @return this
   * @throws IllegalArgumentException with the reason if it is anything else
   */
  public Medium requireCompressedAir() {
    Optional<String> refused = refusalInWords();
    if (refused.isPresent()) {
      throw new IllegalArgumentException(
          "medium must be compressed air, was " + this + ": " + refused.get());
    }
    return this;
  }

  /** {@return why airfit does not advise on it; empty for compressed air} */
  public Optional<Caution> refusal() {
    return Optional.ofNullable(refusal);
  }

  /**
   * Reads a medium.
   *
   * @param text the medium in words, as {@link #toString} prints it
   * @return the medium
   * @throws IllegalArgumentException if {@code text} is no medium
   */
  public static Medium parse(String text) {
    return Labels.parse("medium", text, values());
  }

  /** {@return the medium in words, such as "breathing air" or "another medium"} */
  @Override
  public String toString() {
    return this == OTHER ? "another medium" : Labels.of(this);
  }
}
