package org.airfit.select;

import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.LengthUnit;
import org.airfit.quantity.PressureUnit;
import org.airfit.quantity.Temperature;
import org.airfit.quantity.TemperatureUnit;
import org.airfit.quantity.VolumeFlowUnit;
import org.airfit.safety.Judgement;
import org.airfit.safety.Ruling;
import org.airfit.safety.SafetyRule;
import org.airfit.safety.Situation;
import org.airfit.select.Finding.Verdict;
import org.airfit.source.Source;
import org.jspecify.annotations.Nullable;

/** The rules a proposal is judged by, each with what it rests on. */
public enum Rule {
  /** Plug and socket are of one profile. */
  PROFILE_MATES(
      "Profiles mate",
      Source.commonPractice(
          "a socket takes the plugs of the profiles it is made for, and no others"),
      Rule::profile),

  /** Where plugs of several profiles are in use, the socket on the wall takes them all. */
  PROFILES_IN_USE(
      "Socket takes every plug in use",
      Source.commonPractice("a universal socket where several profiles are in use"),
      Rule::inUse) {
    @Override
    boolean isBrokenBy(Requirement job, Slot seat, Part part) {
      return seat == Slot.WALL_SOCKET && !takes(part).containsAll(job.profilesInUse());
    }
  },

  /** Threads and barbs go together, directly or through adapters. */
  ENDS_MATE(
      "Ends mate",
      Source.standard("ASME B1.20.1, ISO 7-1 and ISO 228-1, pair by pair as the joints say"),
      Rule::ends),

  /** No part sees more than its maker allows. */
  PARTS_RATED(
      "Parts are rated",
      Source.handbook("29 CFR 1926.302(b)(5): not above the maker's safe operating pressure"),
      Rule::rated) {
    @Override
    boolean isBrokenBy(Requirement job, Slot seat, Part part) {
      return isTooWeak(job, part) || isUnmarkedToBuy(part);
    }
  },

  /** No part is colder or hotter than its maker allows. */
  TEMPERATURE_SUITS(
      "Temperature suits the parts",
      Source.standard("ISO 4414:2010 clause 5.2.1: components operate within their rated limits"),
      Rule::temperature) {
    @Override
    boolean isBrokenBy(Requirement job, Slot seat, Part part) {
      return isNamed(job) && !isAllowed(job, part);
    }
  },

  /** The tool sees no more than its maker allows, when it takes no air. */
  TOOL_RATED(
      "Tool is not over-pressured",
      Source.commonPractice("at rest the whole supply pressure stands at the tool"),
      Rule::toolRated) {
    @Override
    boolean isBrokenBy(Requirement job) {
      return job.toolRating()
          .filter(rating -> atRest(job).compareTo(rating) > 0)
          .isPresent();
    }
  },

  /** A blow gun is kept to the pressure that the safety rules allow at a blocked nozzle. */
  CLEANING_PRESSURE(
      "Cleaning pressure is kept down",
      Source.handbook("29 CFR 1910.242(b), 1926.302(b)(4) and 1917.154, as their rules say"),
      Rule::cleaning) {
    @Override
    boolean isBrokenBy(Requirement job) {
      List<Ruling> rulings = cleaningRulings(job);
      return !rulings.isEmpty() && rulings.stream().noneMatch(Rule::isAllowed);
    }
  },

  /** The tool has its air at its pressure. */
  AIR_AT_TOOL(
      "Air at the tool", Source.derived("the run from the supply, element by element"), Rule::air),

  /** The hose is long enough. */
  HOSE_REACHES("Hose reaches", Source.commonPractice("the hose reaches the work"), Rule::reach) {
    @Override
    boolean isBrokenBy(Requirement job, Slot seat, Part part) {
      return part instanceof Part.Hose hose && hose.conduit().length().compareTo(job.reach()) < 0;
    }
  },

  /** The couplings stand the place and the knocks. */
  MATERIAL_SUITS(
      "Material suits the place",
      Source.commonPractice(
          "hardened steel where couplings are dropped on concrete, brass or stainless where rust matters, brass where sparks could ignite"),
      Rule::material) {
    @Override
    boolean isBrokenBy(Requirement job) {
      return job.suited().isEmpty();
    }

    @Override
    boolean isBrokenBy(Requirement job, Slot seat, Part part) {
      return seat.isCoupling() && !part.facts().isAlreadyThere() && !isOf(job.suited(), part);
    }
  },

  /** A dragged socket does not open on an edge. */
  SLEEVE_GUARDED(
      "Sleeve is guarded",
      Source.commonPractice("a guarded sleeve where the hose is dragged"),
      Rule::sleeve) {
    @Override
    boolean isBrokenBy(Requirement job, Slot seat, Part part) {
      return job.isDragged() && seat == Slot.TOOL_SOCKET && !part.facts().isSleeveGuarded();
    }
  },

  /** Where asked for, couplings let the air out before they part. */
  VENTED(
      "Couplings are vented",
      Source.standard("ISO 4414:1998 clause 9.6, quick-action couplings"),
      Rule::vented) {
    @Override
    boolean isBrokenBy(Requirement job, Slot seat, Part part) {
      return job.isVentRequired() && seat.isSocket() && !part.facts().isVented();
    }
  },

  /** Dry and lubricated air stay apart. */
  AIR_KEPT_APART(
      "Dry and lubricated air stay apart",
      Source.commonPractice("hoses and couplings of lubricated lines are not used on dry ones"),
      Rule::airKept) {
    @Override
    boolean isBrokenBy(Requirement job, Slot seat, Part part) {
      return job.air().isPresent()
          && part.facts().air().filter(kept -> kept != job.air().get()).isPresent();
    }
  };

  /** A verdict with its reason, before the rule's name is put on it. */
  private record Saying(Verdict verdict, String reason) {}

  /** The rules that one part can break on its own. */
  private static final List<Rule> OF_ONE_PART = List.of(
      PROFILES_IN_USE,
      PARTS_RATED,
      TEMPERATURE_SUITS,
      HOSE_REACHES,
      MATERIAL_SUITS,
      SLEEVE_GUARDED,
      VENTED,
      AIR_KEPT_APART);

  private static final Map<Rule, Integer> BITS = new EnumMap<>(Rule.class);

  static {
    for (Rule rule : values()) {
      BITS.put(rule, 1 << BITS.size());
    }
  }

  private final String title;
  private final Source source;
  private final Function<Proposal, Saying> judging;

  Rule(String title, Source source, Function<Proposal, Saying> judging) {
    this.title = title;
    this.source = source;
    this.judging = judging;
  }

  /** {@return what the rule asks, in a few words} */
  public String title() {
    return title;
  }

  /** {@return what the rule rests on} */
  public Source source() {
    return source;
  }

  /** Judges a proposal. */
  Finding judge(Proposal proposal) {
    Saying saying = judging.apply(proposal);
    return new Finding(this, saying.verdict(), saying.reason(), source);
  }

  /** Whether the job itself breaks this rule, whatever parts are taken. */
  boolean isBrokenBy(Requirement job) {
    return false;
  }

  /**
   * Whether one part breaks this rule, whatever the others are. {@link #judge} asks the same, so that a search which leaves such parts
   * out loses nothing; what takes two parts or the whole run to tell is not told here.
   */
  boolean isBrokenBy(Requirement job, Slot seat, Part part) {
    return false;
  }

  /** This rule as a bit, so that a set of rules is a number. */
  int bit() {
    return BITS.getOrDefault(this, 0);
  }

  /** The rules one part breaks, as bits. */
  static int brokenBy(Requirement job, Slot seat, Part part) {
    int broken = 0;
    for (Rule rule : OF_ONE_PART) {
      if (rule.isBrokenBy(job, seat, part)) {
        broken |= rule.bit();
      }
    }
    return broken;
  }

  /** The rules the job itself breaks, as bits. */
  static int brokenBy(Requirement job) {
    int broken = 0;
    for (Rule rule : BITS.keySet()) {
      if (rule.isBrokenBy(job)) {
        broken |= rule.bit();
      }
    }
    return broken;
  }

  private List<Part> breaking(Proposal p) {
    return p.seated().stream()
        .filter(seated -> isBrokenBy(p.requirement(), seated.seat(), seated.part()))
        .map(Proposal.Seated::part)
        .toList();
  }

  private static Saying met(String reason) {
    return new Saying(Verdict.MET, reason);
  }

  private static Saying unmet(String reason) {
    return new Saying(Verdict.UNMET, reason);
  }

  private static Saying open(String reason) {
    return new Saying(Verdict.OPEN, reason);
  }

  private static Saying notConcerned(String reason) {
    return new Saying(Verdict.NOT_CONCERNED, reason);
  }

  private static String bar(GaugePressure pressure) {
    return pressure.format(PressureUnit.BAR, 2);
  }

  private static String names(List<? extends Part> parts) {
    return parts.stream().map(Part::name).distinct().collect(Collectors.joining(", "));
  }

  private static Saying profile(Proposal p) {
    List<String> strangers = new ArrayList<>();
    Optional<String> wanted = p.requirement().profile();
    pair(p.wallSocket(), p.hosePlug(), wanted, strangers);
    pair(p.toolSocket(), p.toolPlug(), wanted, strangers);
    return strangers.isEmpty()
        ? met("At the wall profile " + p.hosePlug().profile() + ", at the tool profile "
            + p.toolPlug().profile() + ".")
        : unmet(String.join(" ", strangers));
  }

  private static void pair(
      Part.Socket socket, Part.Plug plug, Optional<String> wanted, List<String> strangers) {
    if (!socket.profiles().contains(plug.profile())) {
      strangers.add(socket.name() + " does not take profile " + plug.profile() + ".");
    }
    if (wanted.isPresent() && !wanted.get().equals(plug.profile())) {
      strangers.add(plug.name() + " is of profile " + plug.profile() + ", the shop uses "
          + wanted.get() + ".");
    }
  }

  private static Saying ends(Proposal p) {
    String joints = p.joints().stream().map(Joint::inWords).collect(Collectors.joining("; ")) + ".";
    if (!p.joints().stream().allMatch(Joint::isSound)) {
      return unmet(joints);
    }
    return p.joints().stream().anyMatch(Joint::isForLowPressure)
        ? open(
            joints
                + " A straight coupling thread is meant for low pressure: ask its maker for a rating for compressed air.")
        : met(joints);
  }

  private static Set<String> takes(Part part) {
    return part instanceof Part.Socket socket ? socket.profiles() : Set.of();
  }

  private static Saying inUse(Proposal p) {
    Set<String> wanted = p.requirement().profilesInUse();
    if (wanted.isEmpty()) {
      return notConcerned("Several profiles were not named.");
    }
    List<String> left = wanted.stream()
        .filter(profile -> !p.wallSocket().profiles().contains(profile))
        .sorted()
        .toList();
    return PROFILES_IN_USE.breaking(p).isEmpty()
        ? met(p.wallSocket().name() + " takes them all.")
        : unmet(p.wallSocket().name() + " does not take " + String.join(", ", left) + ".");
  }

  private static boolean isNamed(Requirement job) {
    return job.coldest().isPresent() && job.hottest().isPresent();
  }

  /** What its maker does not tell does not break the rule; it is asked for. */
  private static boolean isAllowed(Requirement job, Part part) {
    Temperature coldest = job.coldest().orElseThrow();
    Temperature hottest = job.hottest().orElseThrow();
    return part.facts().coldest().map(t -> t.compareTo(coldest) <= 0).orElse(true)
        && part.facts().hottest().map(t -> t.compareTo(hottest) >= 0).orElse(true);
  }

  private static Saying temperature(Proposal p) {
    Requirement job = p.requirement();
    if (!isNamed(job)) {
      return notConcerned("Temperatures out of the ordinary were not named.");
    }
    String range = job.coldest().orElseThrow().format(TemperatureUnit.CELSIUS) + " to "
        + job.hottest().orElseThrow().format(TemperatureUnit.CELSIUS);
    List<Part> wrong = TEMPERATURE_SUITS.breaking(p);
    if (!wrong.isEmpty()) {
      return unmet("Needed from " + range + "; not allowed by the maker of " + names(wrong) + ".");
    }
    List<Part> unknown =
        p.parts().stream().filter(part -> part.facts().coldest().isEmpty()).toList();
    return unknown.isEmpty()
        ? met("All parts are allowed from " + range + ".")
        : open("Needed from " + range + "; ask the makers of " + names(unknown) + ".");
  }

  private static boolean isTooWeak(Requirement job, Part part) {
    return part.facts().rating().map(r -> r.compareTo(job.highest()) < 0).orElse(false);
  }

  private static boolean isUnmarkedToBuy(Part part) {
    return part.facts().rating().isEmpty() && !part.facts().isAlreadyThere();
  }

  private static Saying rated(Proposal p) {
    GaugePressure highest = p.requirement().highest();
    List<Part> weak =
        p.parts().stream().filter(part -> isTooWeak(p.requirement(), part)).toList();
    if (!weak.isEmpty()) {
      return unmet("Up to " + bar(highest) + " can occur; too weak: " + names(weak) + ".");
    }
    List<Part> bought = p.parts().stream().filter(Rule::isUnmarkedToBuy).toList();
    if (!bought.isEmpty()) {
      return unmet("No rating is known of " + names(bought) + "; ask the maker before selling it.");
    }
    List<Part> unmarked =
        p.parts().stream().filter(part -> part.facts().rating().isEmpty()).toList();
    if (!unmarked.isEmpty()) {
      return open("No rating is known of " + names(unmarked)
          + ", there already: find the marking, ask the maker, or replace it.");
    }
    GaugePressure lowest = p.lowestRating().orElseThrow();
    return met("Weakest part " + bar(lowest) + ", up to " + bar(highest) + " can occur.");
  }

  private static GaugePressure atRest(Requirement job) {
    return GaugePressure.ofPascals(job.toOutlet().stillAir().pressure().pascals()
        - job.toOutlet().atmosphere().pascals());
  }

  private static Saying toolRated(Proposal p) {
    Requirement job = p.requirement();
    GaugePressure atRest = atRest(job);
    return job.toolRating()
        .map(rating -> !TOOL_RATED.isBrokenBy(job)
            ? met("At rest " + bar(atRest) + " stands at the tool, its maker allows " + bar(rating)
                + ".")
            : unmet("At rest " + bar(atRest) + " stands at the tool, its maker allows "
                + bar(rating) + ": regulate the supply down, no part cures that."))
        .orElseGet(() -> open("Ask for the highest pressure the tool's maker allows; at rest "
            + bar(atRest) + " stands at it."));
  }

  private static List<Ruling> cleaningRulings(Requirement job) {
    return job.cleaningDeadEnd()
        .map(deadEnd -> Situation.describe().cleaning(deadEnd).build())
        .map(situation -> Stream.of(
                SafetyRule.CLEANING_GENERAL_INDUSTRY,
                SafetyRule.CLEANING_CONSTRUCTION,
                SafetyRule.CLEANING_MARINE_TERMINALS)
            .map(rule -> rule.judge(situation))
            .toList())
        .orElse(List.of());
  }

  private static boolean isAllowed(Ruling ruling) {
    return ruling.judgement() != Judgement.NOT_ALLOWED;
  }

  private static Saying cleaning(Proposal p) {
    List<Ruling> rulings = cleaningRulings(p.requirement());
    if (rulings.isEmpty()) {
      return notConcerned("The tool was not told to clean with air.");
    }
    String each = rulings.stream()
        .map(ruling -> ruling.rule().title() + ": "
            + (isAllowed(ruling) ? "allowed, " : "not allowed, ") + ruling.reason())
        .collect(Collectors.joining(" "));
    if (CLEANING_PRESSURE.isBrokenBy(p.requirement())) {
      return unmet(
          each
              + " Take a gun that lets the pressure off when its nozzle is blocked, or regulate the supply down: no part between cures that.");
    }
    return rulings.stream().allMatch(Rule::isAllowed)
        ? met(each)
        : open(each + " The rules differ here: ask which of them holds at this place.");
  }

  private static Saying air(Proposal p) {
    Requirement job = p.requirement();
    String wanted =
        bar(job.least()) + " at " + job.demand().format(VolumeFlowUnit.LITRE_PER_SECOND);
    return p.result()
        .fold(
            delivered -> delivered.atToolGauge().compareTo(job.least()) >= 0
                ? met("The tool has " + bar(delivered.atToolGauge()) + ", it needs " + wanted + ".")
                : unmet("The tool has only " + bar(delivered.atToolGauge()) + ", it needs " + wanted
                    + "; " + delivered.bottleneck().name() + " takes most."),
            starved -> unmet("The tool starves: " + starved.element()
                + " does not let the air through, it needs " + wanted + "."));
  }

  private static Saying reach(Proposal p) {
    String compared = p.hose().conduit().length().format(LengthUnit.METRE) + " of hose, "
        + p.requirement().reach().format(LengthUnit.METRE) + " needed.";
    return HOSE_REACHES.breaking(p).isEmpty() ? met(compared) : unmet(compared);
  }

  private static Saying material(Proposal p) {
    Requirement job = p.requirement();
    Set<Material> good = job.suited();
    if (good.isEmpty()) {
      return unmet("Dropped on concrete asks for hardened steel, a sparking hazard for brass: "
          + "one of the two must give.");
    }
    if (good.size() == Material.values().length) {
      return job.place().isEmpty()
          ? open("Ask where it will be used, and whether couplings are dropped on concrete.")
          : notConcerned("Any material will do " + job.place().get() + ".");
    }
    String wanted =
        good.stream().map(Material::toString).sorted().collect(Collectors.joining(" or "));
    List<Part> wrong = MATERIAL_SUITS.breaking(p);
    return wrong.isEmpty()
        ? met("The new couplings are of " + wanted + ".")
        : unmet("Wanted is " + wanted + "; not of it, or not known: " + names(wrong) + ".");
  }

  /** Any material will do where all are good, known or not. */
  private static boolean isOf(Set<Material> good, Part part) {
    return good.size() == Material.values().length
        || part.facts().material().map(good::contains).orElse(false);
  }

  static Set<Material> suited(@Nullable Environment place, boolean isDropped) {
    Set<Material> good = EnumSet.allOf(Material.class);
    if (isDropped) {
      good.retainAll(Set.of(Material.HARDENED_STEEL, Material.STAINLESS_STEEL));
    }
    if (place == Environment.OUTDOORS || place == Environment.WASH_DOWN) {
      good.retainAll(Set.of(Material.STAINLESS_STEEL, Material.BRASS));
    } else if (place == Environment.SPARKING_HAZARD) {
      good.retainAll(Set.of(Material.BRASS));
    }
    return Collections.unmodifiableSet(good);
  }

  private static Saying sleeve(Proposal p) {
    if (!p.requirement().isDragged()) {
      return notConcerned("The hose is not dragged, as told.");
    }
    Part.Socket socket = p.toolSocket();
    return SLEEVE_GUARDED.breaking(p).isEmpty()
        ? met(socket.name() + " has a guarded sleeve.")
        : unmet(socket.name() + " has an open sleeve that an edge can pull back.");
  }

  private static Saying vented(Proposal p) {
    if (!p.requirement().isVentRequired()) {
      return notConcerned(
          "Vented couplings were not asked for; shut off and let the air out before parting one.");
    }
    List<Part> closed = VENTED.breaking(p);
    return closed.isEmpty()
        ? met("Both sockets let the air out before they part.")
        : unmet("Not vented: " + names(closed) + ".");
  }

  private static Saying airKept(Proposal p) {
    Optional<Lubrication> kind = p.requirement().air();
    if (kind.isEmpty()) {
      return open("Ask whether the line has a lubricator.");
    }
    List<Part> other = AIR_KEPT_APART.breaking(p);
    return other.isEmpty()
        ? met("No part is kept for other than " + kind.get()
            + " air; mark the new ones "
            + p.requirement().marking().map(mark -> "with " + mark).orElse("as your shop does")
            + ".")
        : unmet("The line is " + kind.get() + ", kept for the other kind: " + names(other) + ".");
  }
}
