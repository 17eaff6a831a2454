package org.airfit.safety;

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
      Source.handbook("A-A-59439 (30 Dec 1999), page 1")));

  private final @Nullable Caution refusal;

  Medium(@Nullable Caution refusal) {
    this.refusal = refusal;
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

  /** {@return the medium in words, such as "breathing air"} */
  @Override
  public String toString() {
    return Labels.of(this);
  }
}
