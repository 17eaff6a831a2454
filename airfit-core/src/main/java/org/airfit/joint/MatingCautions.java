package org.airfit.joint;

import java.util.ArrayList;
import java.util.List;
import org.airfit.safety.Caution;
import org.airfit.source.Source;

/** The warnings that go with threads that only pull, with claws, and with hose couplings for water. */
final class MatingCautions {

  private static final Caution SEAT = new Caution(
      "Seat or washer",
      "Both parts must carry the seat, or the washer or ring must lie between their faces. Without it the joint "
          + "leaks however far it is"
          + " turned.",
      Source.standard("ISO 228-1 scope; NPSM seats in trade articles"));

  private static final Caution CONES = new Caution(
      "Cone on cone",
      "Look at both cones before you connect: 37° and 45° share threads and do not seal on each other. Clean and whole "
          + "cones seal dry; do not tighten more to cure a leak.",
      Source.handbook("glossary and thread page of the trade on flare fittings"));

  private static final Caution O_RING = new Caution(
      "Ring in its place",
      "The ring must be there, whole, and the one of its port: only the ring seals, however far it is turned.",
      Source.commonPractice("assembly of ports with O-ring or elastomer ring"));

  private static final Caution CLIP = new Caution(
      "Clip or pin in every pair",
      "Put the retaining clip or pin in, and tie hose to hose with a restraint. The halves stay open when parted: "
          + "close the valve and vent the hose before you part them.",
      Source.handbook(
          "public note on claw couplings; 29 CFR 1926.302(b)(1) asks for positive means against parting"));

  private static final Caution TEN_BAR = new Caution(
      "10 bar at most",
      "A public note gives claw couplings of the European kind 10 bar by their standard: the maker's rating decides.",
      Source.standard("DIN 3489, as quoted in a public note"));

  /** Of ends of one thread and two forms. */
  static final Caution FORMS = new Caution(
      "The thread is not the joint",
      "Do not put pressure on it: the thread runs in, and nothing seals. Neither sealant nor force changes that. Use "
          + "an adapter that has the right form on each end.",
      Source.derived("forms of flares, cones and ports"));

  /** Of hose couplings for water. */
  static final Caution WATER = new Caution(
      "Water hose",
      "Never put compressed air on a garden or fire hose or its couplings: the air stored in it throws about what "
          + "bursts or parts.",
      Source.commonPractice("water hose is not used for compressed air"));

  private MatingCautions() {}

  static Caution onFace(Seal seal) {
    return switch (seal) {
      case CONE -> CONES;
      case RING_OF_PART -> O_RING;
      case THREAD_SEALANT, DRY_THREAD, SEAT, WASHER, CLAMP_OR_FERRULE -> SEAT;
    };
  }

  static List<Caution> claws(End head) {
    List<Caution> cautions = new ArrayList<>(List.of(CLIP));
    if (head instanceof End.Claw claw && claw.head() == ClawHead.EUROPEAN) {
      cautions.add(TEN_BAR);
    }
    return List.copyOf(cautions);
  }
}
