package org.airfit.air;

import java.util.List;
import java.util.Objects;
import java.util.Optional;

/**
 * Whether a train of filters and dryers reaches a purity, for particles, water and oil, and why.
 *
 * @param asked the purity asked for
 * @param particles the answer for particles
 * @param water the answer for water
 * @param oil the answer for oil
 */
public record PurityAnswer(AirPurity asked, Part particles, Part water, Part oil) {

  /**
   * The answer for one of the three.
   *
   * @param asked the class asked for
   * @param verdict whether it is reached
   * @param told the class that the air has by what was told; empty where that gives none
   * @param reasons why, in sentences
   */
  public record Part(
      PurityClass asked, PurityVerdict verdict, Optional<PurityClass> told, List<String> reasons) {

    /**
     * Refuses what is null, and copies the list.
     *
     * @param asked the class asked for
     * @param verdict whether it is reached
     * @param told the class that the air has by what was told
     * @param reasons why, in sentences
     */
    public Part {
      Objects.requireNonNull(asked, "asked");
      Objects.requireNonNull(verdict, "verdict");
      Objects.requireNonNull(told, "told");
      reasons = List.copyOf(Objects.requireNonNull(reasons, "reasons"));
    }

    /** The verdict of what was told, and of what is known of it for certain; it may add to the reasons. */
    static Part judged(
        PurityClass asked,
        Optional<PurityClass> told,
        boolean isWorseForCertain,
        boolean isBeyondHere,
        List<String> reasons) {
      PurityVerdict verdict;
      if (asked == PurityClass.NOT_SPECIFIED || (told.isPresent() && told.get().meets(asked))) {
        verdict = PurityVerdict.REACHED;
      } else if (asked == PurityClass.CLASS_0) {
        verdict = PurityVerdict.NOT_TOLD;
        reasons.add(
            0, "Class 0 is what user and supplier agreed: hold their figures against these.");
      } else if (told.isPresent() || isWorseForCertain || isBeyondHere) {
        verdict = PurityVerdict.NOT_REACHED;
      } else {
        verdict = PurityVerdict.NOT_TOLD;
      }
      return new Part(asked, verdict, told, reasons);
    }

    /** {@return the answer in one line, such as "asked 4, told 5, not reached"} */
    @Override
    public String toString() {
      return "asked " + asked + told.map(known -> ", told " + known).orElse(", none told") + ", "
          + verdict.label() + (reasons.isEmpty() ? "" : ": " + String.join(" ", reasons));
    }
  }

  /**
   * Refuses what is null.
   *
   * @param asked the purity asked for
   * @param particles the answer for particles
   * @param water the answer for water
   * @param oil the answer for oil
   */
  public PurityAnswer {
    Objects.requireNonNull(asked, "asked");
    Objects.requireNonNull(particles, "particles");
    Objects.requireNonNull(water, "water");
    Objects.requireNonNull(oil, "oil");
  }

  /** {@return not reached if one of the three is not, else not told if one is not, else reached} */
  public PurityVerdict verdict() {
    List<PurityVerdict> all = List.of(particles.verdict(), water.verdict(), oil.verdict());
    if (all.contains(PurityVerdict.NOT_REACHED)) {
      return PurityVerdict.NOT_REACHED;
    }
    return all.contains(PurityVerdict.NOT_TOLD) ? PurityVerdict.NOT_TOLD : PurityVerdict.REACHED;
  }

  /** {@return the answers in one line} */
  @Override
  public String toString() {
    return asked + " " + verdict().label() + "; particles " + particles + "; water " + water
        + "; oil " + oil;
  }
}
