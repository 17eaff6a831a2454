package org.airfit.select;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import org.airfit.line.Wall;
import org.airfit.safety.SafetyRule;
import org.airfit.safety.SafetyRules;

/**
 * Rules of an invented works, some at a time, and what they say of a job and a part told once more in plain
 * comparisons: broken (-), to be asked (?), kept or without bearing (+).
 */
final class OwnRules {

  private static final String HEADING =
      "jurisdiction,citation,text,quantity,operator,limit,unit,asks,when,unless,source,basis\n";

  /** By citation; what each says of a job and a part stands below. */
  private static final List<String> TABLE = List.of(
      "Works,line,no more than 130 psi,line pressure,<=,130,psi,forbids,,,board,read",
      "Works,bore,no hose of 12 mm or more,hose bore,<,12,mm,forbids,,,board,read",
      "Works,share,no more than 70 %,share of lowest rating,<=,70,percent,forbids,,,board,read",
      "Works,plastic,no plastic,,,,,forbids,plastic pipe,,board,read",
      "Works,oil,no lubricator,,,,,forbids,lubricated line,,board,read",
      "Works,mine,not in a mine,,,,,forbids,mine,,board,read",
      "Works,mined bore,in a mine below 9 mm,mine hose bore,<,9,mm,forbids,,,board,read");

  private OwnRules() {}

  static SafetyRules some(Random random) {
    List<String> rows = new ArrayList<>(TABLE);
    while (rows.size() > 1 + random.nextInt(2)) {
      rows.remove(random.nextInt(rows.size()));
    }
    return SafetyRules.usFederal()
        .with(SafetyRules.ofTable(HEADING + String.join("\n", rows) + "\n"));
  }

  private static Set<String> of(Requirement job) {
    Set<String> citations = new HashSet<>();
    for (SafetyRule rule : job.rules().rules()) {
      if (rule.jurisdiction().equals("Works")) {
        citations.add(rule.citation());
      }
    }
    return citations;
  }

  private static char worst(String said) {
    return said.contains("-") ? '-' : said.contains("?") ? '?' : '+';
  }

  /** What a job breaks or leaves open whatever its parts; of general practice that paint and oil do not go together. */
  static char ofJob(Requirement job) {
    Set<String> rules = of(job);
    Optional<Lubrication> air = job.lubrication();
    char oil = air.isEmpty() ? '?' : air.get() == Lubrication.LUBRICATED ? '-' : '+';
    String said = "";
    said += rules.contains("line") && job.highest().pascals() > 130.0 * 6894.757 ? "-" : "+";
    said += rules.contains("oil") || job.isPainting() ? oil : '+';
    said += rules.contains("mine") ? "?" : "+";
    boolean hasPipe = !job.pipeNames().isEmpty();
    said += rules.contains("plastic") && hasPipe ? "?" : "+"; // the jumble's pipe has no known wall
    return worst(said);
  }

  /** What each of those says of a part that single parts decide. */
  static String ofPart(Requirement job, Part part) {
    Set<String> rules = of(job);
    StringBuilder said = new StringBuilder("+");
    if (rules.contains("share")) {
      said.append(part.facts()
          .rating()
          .map(rating -> job.highest().pascals() > 0.7 * rating.pascals() ? '-' : '+')
          .orElse('?'));
    }
    if (part instanceof Part.Hose hose) {
      double bore = hose.conduitRange().most().bore().metres(); // it may be so wide
      said.append(rules.contains("bore") && bore >= 12.0e-3 ? '-' : '+');
      said.append(rules.contains("mined bore") && bore >= 9.0e-3 ? '?' : '+');
    }
    if (rules.contains("plastic")) {
      said.append(plastic(part));
    }
    return said.toString();
  }

  private static char plastic(Part part) {
    if (part instanceof Part.Hose hose) {
      Optional<Wall> wall = hose.conduit().wall();
      return wall.isEmpty() ? '?' : wall.get() == Wall.SMOOTH_PLASTIC ? '-' : '+';
    }
    if (part instanceof Part.Adapter) {
      Optional<Material> body =
          part.facts().material(); // no adapter of the jumble has a known wall
      return body.isEmpty() ? '?' : body.get() == Material.PLASTIC ? '-' : '+';
    }
    return '+';
  }
}
