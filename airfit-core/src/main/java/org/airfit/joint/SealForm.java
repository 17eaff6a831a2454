package org.airfit.joint;

import java.util.Objects;
import org.airfit.source.Source;
import org.airfit.thread.Gender;
import org.jspecify.annotations.Nullable;

/**
 * What seals beside a parallel thread that only pulls. The thread is not the joint: 37° and 45° flares and ports with
 * O-ring share threads, and only ends of one form seal on each other.
 */
public enum SealForm {
  /** A metal cone of 37° to the axis: the flare of a tube is pressed on a nose. */
  FLARE_37(
      "37° flare",
      Gender.FEMALE,
      Source.standard("SAE J514 / ISO 8434-2, as told on a thread page of the trade")),
  /** A metal cone of 45° to the axis. */
  FLARE_45(
      "45° flare",
      Gender.FEMALE,
      Source.handbook("trade glossary on flare fittings: 37° and 45° are incompatible")),
  /** A 45° flare turned inside out: the nut is male and presses the flare of the tube into a female body. */
  INVERTED_FLARE(
      "inverted flare",
      Gender.MALE,
      Source.fromMemory("SAE J512: inverted flare, the male nut on the tube")),
  /** A metal cone of 24° in the body, onto which a nut presses a cutting ring or a welded nipple of the tube. */
  CONE_24(
      "24° cone",
      Gender.FEMALE,
      Source.fromMemory("ISO 8434-1: title and contents were seen, its table was not")),
  /** An O-ring on the male part, pressed into a cone at the mouth of the female one. */
  O_RING(
      "O-ring",
      null,
      Source.standard(
          "SAE J1926-1 / ISO 11926-1 and ISO 6149, as charted in a public source file and on a trade page")),
  /** The flat face around a female thread, onto which a washer or ring is pressed. */
  FLAT_FACE(
      "flat face",
      null,
      Source.standard(
          "ISO 1179-1, chart in a public source file; ISO 9974, named on a trade page")),
  /** A male thread with a flat shoulder and a loose sealing washer or bonded seal. */
  WASHER("washer", null, Source.standard("ISO 228-1, scope: a seal between two faces")),
  /** A male thread with a flat shoulder and an elastomer ring that is held in it. */
  RING("ring", null, Source.fromMemory("ISO 1179: stud ends with an elastomer ring")),
  /** The flat washer at the bottom of a hose coupling for water: not for air. */
  WATER(
      "hose coupling for water",
      Gender.FEMALE,
      Source.handbook(
          "encyclopedia article on garden hose threads; Machinery's Handbook, 27th ed."));

  private final String label;
  private final @Nullable Gender nut;
  private final Source source;

  SealForm(String label, @Nullable Gender nut, Source source) {
    this.label = label;
    this.nut = nut;
    this.source = source;
  }

  /** {@return the form in the words of the trade, such as "37° flare"} */
  public String label() {
    return label;
  }

  /** {@return where it was read that it seals so} */
  public Source source() {
    return source;
  }

  /**
   * Says whether a part is by rule a nut, which turns freely on its tube or hose.
   *
   * @param gender the gender of its thread
   * @return whether parts of that gender are nuts
   */
  public boolean isNut(Gender gender) {
    return Objects.requireNonNull(gender, "gender") == nut;
  }

  /** Whether metal cones seal, and sealant has no place. */
  boolean isCone() {
    return this == FLARE_37 || this == FLARE_45 || this == INVERTED_FLARE || this == CONE_24;
  }
}
