package org.airfit.select;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.airfit.internal.Capital;
import org.airfit.quantity.Temperature;
import org.airfit.working.UnitSystem;

/** What the rules about place, use and air answer for an assembly, and the sentences that say why. */
final class ServiceSentences {

  private static final String NOT_KNOWN = "not known";

  private ServiceSentences() {}

  private static String names(List<? extends Part> parts) {
    Set<String> names = new LinkedHashSet<>();
    parts.forEach(part -> names.add(part.name()));
    return String.join(", ", names);
  }

  private static String or(Set<Material> materials) {
    List<String> words = materials.stream().map(Material::toString).sorted().toList();
    int last = words.size() - 1;
    return last < 1
        ? String.join("", words)
        : String.join(", ", words.subList(0, last)) + " or " + words.get(last);
  }

  static RuleAnswer temperature(Assembly a, UnitSystem units) {
    Requirement job = a.requirement();
    String supply = "The air of the supply has " + units.say(job.supplyTemperature());
    Temperature coldest = PartChecks.coldest(job);
    Temperature hottest = PartChecks.hottest(job);
    String told = job.coldest().isPresent() || job.hottest().isPresent()
        ? ", and the job needs " + units.say(job.coldest().orElse(coldest)) + " to "
            + units.say(job.hottest().orElse(hottest))
        : "";
    List<Part> wrong = PartChecks.breaking(a, PartChecks::isOutOfTemperature);
    if (!wrong.isEmpty()) {
      return RuleAnswer.unmet(supply + told + "; not allowed by their makers: "
          + wrong.stream()
              .map(part -> allowed(part, coldest, hottest, units))
              .distinct()
              .collect(Collectors.joining(", "))
          + ".");
    }
    if (!PartChecks.isUnusuallyWarmOrCold(job)) {
      return RuleAnswer.doesNotApply(
          supply + ", which is usual, and the job names no other temperatures.");
    }
    List<Part> unknown = PartChecks.breaking(a, PartChecks::isOfUnknownTemperature);
    return unknown.isEmpty()
        ? RuleAnswer.met(supply + told + "; the makers of all parts allow that.")
        : RuleAnswer.open(
            supply + told + "; ask the makers whether they allow that of " + names(unknown) + ".");
  }

  private static String allowed(
      Part part, Temperature coldest, Temperature hottest, UnitSystem units) {
    return part.name()
        + part.facts()
            .coldest()
            .flatMap(low -> part.facts()
                .hottest()
                .map(high ->
                    " (" + units.say(low, coldest) + " to " + units.say(high, hottest) + ")"))
            .orElse("");
  }

  static RuleAnswer material(Assembly a, UnitSystem units) {
    Requirement job = a.requirement();
    if (PartChecks.hasNoMaterial(job)) {
      return RuleAnswer.unmet(
          "Couplings dropped on concrete need hardened steel, a sparking hazard needs brass:"
              + " one of the two must give.");
    }
    List<String> wrong = told(a, MaterialFit.OUT);
    if (!wrong.isEmpty()) {
      return RuleAnswer.unmet("Not suited" + where(job) + ": " + String.join(", ", wrong) + "."
          + eaten(a) + wanted(job));
    }
    List<String> asked = told(a, MaterialFit.ASK);
    String depends = asked.isEmpty()
        ? ""
        : dependsThere(job) + " depends on what was not told: " + String.join(", ", asked) + "."
            + questions(a);
    if (job.environment().isEmpty()) {
      return RuleAnswer.open("Ask where it will be used"
          + (job.isDropped() ? "." : ", and whether couplings are dropped on concrete.")
          + (depends.isEmpty() ? "" : " " + depends));
    }
    if (!MaterialFit.isAsked(job)) {
      return RuleAnswer.doesNotApply("Any material will do indoors.");
    }
    if (!asked.isEmpty()) {
      return RuleAnswer.open(depends + remarks(a));
    }
    return RuleAnswer.met((notJudged(a).isEmpty() ? "All parts suit" : "All parts to buy suit")
        + where(job) + "." + remarks(a));
  }

  /** The parts that fit so, each with what it is made of. */
  private static List<String> told(Assembly a, MaterialFit fit) {
    Requirement job = a.requirement();
    Set<String> told = new LinkedHashSet<>();
    for (Placed each : a.slotParts()) {
      Part part = each.part();
      if (MaterialFit.of(job, each.position(), part) != fit) {
        continue;
      }
      String body = part.facts().material().map(Material::toString).orElse(NOT_KNOWN);
      List<String> of = new ArrayList<>();
      if (MaterialFit.hasBody(part) && MaterialFit.ofBody(job, each.position(), part) == fit) {
        of.add(each.position().isHose() ? "end fittings: " + body : body);
      }
      if (MaterialFit.ofWall(job, part) == fit) {
        of.add("wall: "
            + (fit == MaterialFit.OUT
                ? "plastic"
                : MaterialFit.isCaustic(job)
                    ? "not known whether it stands the cleaner"
                    : NOT_KNOWN));
      }
      told.add(part.name() + " (" + String.join(", ", of) + ")");
    }
    return List.copyOf(told);
  }

  /** The beginning of a sentence, such as "Indoors it": only a place or a tool makes a part depend on something. */
  private static String dependsThere(Requirement job) {
    String where = where(job).trim();
    return Capital.first(where) + " it";
  }

  private static String where(Requirement job) {
    String place = job.environment()
        .map(environment -> switch (environment) {
          case INDOORS -> " indoors";
          case OUTDOORS -> " outdoors";
          case SALT_AIR -> " in salt air";
          case WASH_DOWN -> " where it is washed down";
          case WASH_DOWN_WITH_WATER -> " where it is washed down with water";
          case WASH_DOWN_WITH_CAUSTIC -> " where it is washed down with a caustic cleaner";
          case SPARKING_HAZARD -> " where sparks are a hazard";
        })
        .orElse("");
    return place
        + (job.isImpactTool() ? " on a percussion tool" : "")
        + (job.isDropped() ? " with couplings dropped on concrete" : "");
  }

  /** What a caustic cleaner does, and how far that is known. */
  private static String eaten(Assembly a) {
    return MaterialFit.isCaustic(a.requirement())
            && any(a, each -> isOf(each, Material.BRASS, Material.ALUMINIUM))
        ? " A caustic cleaner eats plain brass and aluminium (from memory)."
        : "";
  }

  /** What new parts must be of, for those who look for another. */
  private static String wanted(Requirement job) {
    Set<Material> couplings = MaterialFit.good(job, true);
    Set<Material> others = MaterialFit.good(job, false);
    return " New couplings must be of " + or(couplings)
        + (others.equals(couplings)
            ? ", and so must adapters and the end fittings of hoses."
            : ", adapters and the end fittings of hoses of " + or(others) + ".")
        + (job.isImpactTool() ? " The wall of the hose must not be of plastic." : "");
  }

  private static boolean any(Assembly a, Predicate<Placed> asked) {
    return a.slotParts().stream().anyMatch(asked);
  }

  private static boolean isOf(Placed each, Material... materials) {
    return MaterialFit.hasBody(each.part())
        && each.part().facts().material().filter(List.of(materials)::contains).isPresent();
  }

  private static String questions(Assembly a) {
    Requirement job = a.requirement();
    boolean unknown = any(
        a,
        each -> MaterialFit.of(job, each.position(), each.part()) == MaterialFit.ASK
            && (MaterialFit.ofWall(job, each.part()) == MaterialFit.ASK
                || each.part().facts().material().isEmpty()));
    boolean cleaner = job.environment().filter(Environment.WASH_DOWN::equals).isPresent()
        && any(a, each -> isOf(each, Material.BRASS, Material.ALUMINIUM));
    return (unknown ? " Ask the makers for what is not known." : "")
        + (cleaner
            ? " Ask whether the cleaner is caustic: that eats plain brass and aluminium (from memory)."
            : "");
  }

  private static String remarks(Assembly a) {
    Requirement job = a.requirement();
    StringBuilder remarks = new StringBuilder();
    boolean wet = job.environment()
        .filter(place -> place != Environment.INDOORS && place != Environment.SPARKING_HAZARD)
        .isPresent();
    if (wet && any(a, each -> isNew(each) && isOf(each, Material.PLATED_HARDENED_STEEL))) {
      remarks.append(" A plating on steel wears off where it is knocked: look for rust there.");
    }
    boolean caustic = job.environment()
        .filter(Set.of(Environment.WASH_DOWN, Environment.WASH_DOWN_WITH_CAUSTIC)::contains)
        .isPresent();
    if (caustic && any(a, each -> isOf(each, Material.PLATED_BRASS))) {
      remarks.append(" Plated brass stands a caustic cleaner only while its plating is whole"
          + " (from memory).");
    }
    List<Part> there = notJudged(a);
    if (!there.isEmpty()) {
      remarks
          .append(" There already, so not judged for rust and knocks: ")
          .append(names(there))
          .append('.');
    }
    if (wet && !MaterialFit.isCaustic(a.requirement())) {
      remarks.append(
          " The wall of the hose is not judged for weather and cleaners: ask its maker.");
    }
    return remarks.toString();
  }

  /** The parts that are there already and that, as far as is known, do not stand the weather and the knocks. */
  private static List<Part> notJudged(Assembly a) {
    Requirement job = a.requirement();
    boolean none = Stream.of(Material.values())
        .allMatch(material ->
            MaterialFit.stands(job, true, material) && MaterialFit.stands(job, false, material));
    return a.slotParts().stream()
        .filter(each -> !none && !isNew(each) && MaterialFit.hasBody(each.part()))
        .filter(each -> !each.part()
            .facts()
            .material()
            .map(material -> MaterialFit.stands(job, each.position().isCoupling(), material))
            .orElse(false))
        .map(Placed::part)
        .toList();
  }

  private static boolean isNew(Placed each) {
    return !each.part().facts().isExisting();
  }

  static RuleAnswer charge(Assembly a, UnitSystem units) {
    if (a.requirement()
        .environment()
        .filter(Environment.SPARKING_HAZARD::equals)
        .isEmpty()) {
      return RuleAnswer.doesNotApply("The job does not say that a spark could ignite something.");
    }
    List<Part> hoses = a.hoses().stream().map(Placed::part).toList();
    if (hoses.isEmpty()) {
      return RuleAnswer.doesNotApply("There is no hose in this run.");
    }
    List<Part> holding = PartChecks.breaking(a, PartChecks::keepsCharge);
    if (!holding.isEmpty()) {
      return RuleAnswer.unmet(
          names(holding) + " is not static-dissipative: it can hold a charge that sparks.");
    }
    List<Part> unknown = PartChecks.breaking(a, PartChecks::mayKeepCharge);
    return unknown.isEmpty()
        ? RuleAnswer.met(names(hoses) + " carries a charge off to its end fittings.")
        : RuleAnswer.open("Ask the maker whether " + names(unknown)
            + " is static-dissipative; sparks are a hazard here.");
  }

  static RuleAnswer whip(Assembly a, UnitSystem units) {
    Requirement job = a.requirement();
    if (!job.isImpactTool()) {
      return RuleAnswer.doesNotApply("The job does not say that the tool hammers.");
    }
    Placed last = a.placed().get(a.placed().size() - 1);
    if (last.position().kind() == Position.Kind.WHIP_HOSE) {
      return RuleAnswer.met(
          last.part().name() + " keeps the couplings from the shaking of the tool.");
    }
    if (last.position().isHose()) {
      return RuleAnswer.met(
          last.part().name() + " goes straight to the tool; no coupling sits on it.");
    }
    if (job.hasWhipHose()) {
      return RuleAnswer.met(
          "The tool hangs on a whip hose of its own; no coupling sits straight on it.");
    }
    String shaken = last.part().name() + " would sit on a percussion tool, which shakes"
        + (last.position().isCoupling() ? " a coupling" : " it")
        + " until it wears and lets go: a short whip hose must go between";
    return job.lacksWhipHose()
        ? RuleAnswer.unmet(shaken + ", and the tool has none of its own. " + placeWhip(a))
        : RuleAnswer.open(shaken + ". " + whips(a)
            + " then tell that, and the end of the whip hose as the tool's inlet.");
  }

  /** What to do where the tool has no whip hose of its own. */
  private static String placeWhip(Assembly a) {
    return misplacedWhip(a)
        .map(where -> where + ".")
        .orElse("Put one into the line, last, next to the tool.");
  }

  /** Which whip hose stands in the line, though not next to the tool, and what to ask. */
  private static String whips(Assembly a) {
    return misplacedWhip(a)
        .map(where -> where + "; or ask whether the tool has one of its own,")
        .orElse("None of these parts is a whip hose. Ask whether the tool has one,");
  }

  private static Optional<String> misplacedWhip(Assembly a) {
    return a.placed().stream()
        .filter(each -> each.position().kind() == Position.Kind.WHIP_HOSE)
        .findFirst()
        .map(whip -> whip.part().name() + " stands in front of "
            + a.placed().get(a.placed().size() - 1).part().name()
            + ": put the whip hose last in the line, next to the tool");
  }

  static RuleAnswer airKept(Assembly a, UnitSystem units) {
    Requirement job = a.requirement();
    return job.lubrication().map(kind -> airKept(a, kind)).orElseGet(() -> airUnknown(a.parts()));
  }

  /** What lines say together of which nobody told whether they have a lubricator: air of one kind feeds them all. */
  static Optional<RuleAnswer> unknownTogether(Assembly a) {
    List<Part> parts = new ArrayList<>();
    for (Assembly way : a.ways()) {
      if (way.requirement().lubrication().isEmpty()) {
        parts.addAll(way.parts());
      }
    }
    return Optional.of(airUnknown(parts)).filter(answer -> answer.outcome() == RuleOutcome.UNMET);
  }

  private static RuleAnswer airKept(Assembly a, Lubrication kind) {
    List<Part> other = PartChecks.breaking(a, PartChecks::isKeptForOtherAir);
    if (!other.isEmpty()) {
      return RuleAnswer.unmet(
          "The line is " + kind + ", kept for the other kind: " + names(other) + ".");
    }
    List<Part> untold = a.parts().stream()
        .filter(part -> part.facts().isExisting() && part.facts().lubrication().isEmpty())
        .toList();
    String old = kind == Lubrication.DRY && !untold.isEmpty()
        ? " There already, and not marked for either kind: " + names(untold)
            + "; see that no oiled air ever went through."
        : "";
    String mark = a.parts().stream().allMatch(part -> part.facts().isExisting())
        ? ""
        : " Mark the new ones"
            + a.requirement().marking().map(word -> ": " + word).orElse(" as your shop does")
            + ".";
    return RuleAnswer.met(
        "No part is marked as kept for other than " + kind + " air." + oilFree(a) + old + mark);
  }

  /** What is kept for dry air may stand in front of a lubricator; who looks at the line wonders why. */
  private static String oilFree(Assembly a) {
    String dry = a.placed().stream()
        .filter(each -> each.position().slot() != null
            && a.requirement().layout().isBeforeLubricator(each.position().slot()))
        .map(Placed::part)
        .filter(
            part -> part.facts().lubrication().filter(Lubrication.DRY::equals).isPresent())
        .map(Part::name)
        .collect(Collectors.joining(", "));
    return dry.isEmpty()
            || a.requirement().lubrication().filter(Lubrication.DRY::equals).isPresent()
        ? ""
        : " In front of the lubricator may stand what is kept for dry air: " + dry + ".";
  }

  private static RuleAnswer airUnknown(List<Part> parts) {
    List<Part> dry = keptFor(parts, Lubrication.DRY);
    List<Part> oiled = keptFor(parts, Lubrication.LUBRICATED);
    if (!dry.isEmpty() && !oiled.isEmpty()) {
      return RuleAnswer.unmet("Whatever the line carries, these do not belong on one line: "
          + names(dry) + ", kept for dry air, and " + names(oiled) + ", kept for lubricated air.");
    }
    String ask = "Ask whether the line has a lubricator";
    if (dry.isEmpty() && oiled.isEmpty()) {
      return RuleAnswer.open(ask + "; no part is marked as kept for either kind of air.");
    }
    return RuleAnswer.open(
        oiled.isEmpty()
            ? ask + ": if it has, these must not be used, they are kept for dry air: " + names(dry)
                + "."
            : ask + ": if it has none, these must not be used, they are kept for lubricated air: "
                + names(oiled) + ".");
  }

  private static List<Part> keptFor(List<Part> parts, Lubrication kind) {
    return parts.stream()
        .filter(part -> part.facts().lubrication().filter(kind::equals).isPresent())
        .toList();
  }
}
