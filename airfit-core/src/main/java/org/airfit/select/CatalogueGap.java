package org.airfit.select;

import java.util.List;
import java.util.Objects;
import org.airfit.working.UnitSystem;

/**
 * A part that a catalogue lacks, or a figure that it does not tell, with the jobs that it alone would solve. Each of
 * them was solved again with it.
 *
 * @param kind what is lacking
 * @param part the part that would be added; of a figure the part that would tell it
 * @param jobs the numbers of the jobs that it solves, every rule met
 * @param share the share of all jobs of the mix that it solves
 */
public record CatalogueGap(Kind kind, Part part, List<Integer> jobs, JobShare share) {

  /** What can be lacking; of what solves as much, that comes first which costs least. */
  public enum Kind {
    /** The rating of a part of the catalogue. */
    RATING,
    /** What decides the air through a part of the catalogue. */
    AIR_FIGURE,
    /** An adapter of a standard shape. */
    ADAPTER,
    /** A hose of a standard bore. */
    HOSE
  }

  /**
   * Copies the list.
   *
   * @param kind what is lacking
   * @param part the part that would be added; of a figure the part that would tell it
   * @param jobs the numbers of the jobs that it solves, every rule met
   * @param share the share of all jobs of the mix that it solves
   */
  public CatalogueGap {
    Objects.requireNonNull(kind, "kind");
    Objects.requireNonNull(part, "part");
    jobs = List.copyOf(Objects.requireNonNull(jobs, "jobs"));
    Objects.requireNonNull(share, "share");
  }

  /** {@return what is lacking, in SI units} */
  public String inWords() {
    return inWords(UnitSystem.SI);
  }

  /**
   * Tells what is lacking.
   *
   * @param units the units
   * @return such as "Hose 1/2 in, 15 m, with 3/8 NPT male at both ends"
   */
  public String inWords(UnitSystem units) {
    Objects.requireNonNull(units, "units");
    return switch (kind) {
      case ADAPTER -> "Adapter: " + part.name();
      case HOSE -> {
        Part.Hose hose = (Part.Hose) part;
        yield "Hose " + hose.bore().label() + ", " + units.say(hose.longest()) + ", "
            + hose.upstream().label()
            + (hose.upstream().equals(hose.downstream())
                ? " at both ends"
                : " and " + hose.downstream().label());
      }
      case RATING ->
        "Rating of " + part.facts() + ", if it is "
            + units.say(part.facts().rating().orElseThrow()) + " or more";
      case AIR_FIGURE ->
        "Figure of the air of " + part.facts() + ", if it lies at the top of what is open";
    };
  }

  /** {@return what is lacking and how many jobs it solves} */
  @Override
  public String toString() {
    return inWords() + ": " + share;
  }
}
