package org.airfit.select;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.function.BiFunction;
import java.util.function.Predicate;
import org.airfit.source.Source;
import org.airfit.working.UnitSystem;

/** The rules a proposal is judged by, each with what it rests on. */
public enum Rule {
  /** Plug and socket are of one profile. */
  PROFILE_MATES(
      "Profiles mate",
      Source.commonPractice(
          "a socket takes the plugs of the profiles it is made for, and no others"),
      RuleSentences::profile),

  /** Where plugs of several profiles are in use, the socket at the outlet takes them all. */
  PROFILES_IN_USE(
      "Socket takes every plug in use",
      Source.commonPractice("a universal socket where several profiles are in use"),
      PartChecks::takesNotAllInUse,
      RuleSentences::inUse),

  /** Threads and barbs go together, directly or through adapters. */
  ENDS_MATE(
      "Ends mate",
      Source.standard("ASME B1.20.1, ISO 7-1 and ISO 228-1, pair by pair as the joints say"),
      RuleSentences::ends),

  /** No part sees more than its maker allows. */
  PARTS_RATED(
      "Parts are rated",
      Source.handbook("29 CFR 1926.302(b)(5): not above the maker's safe operating pressure"),
      PartChecks::isNotRated,
      RuleSentences::rated),

  /** No part is colder or hotter than its maker allows, by the air in it or by the place. */
  TEMPERATURE_SUITS(
      "Temperature suits the parts",
      Source.standard("ISO 4414:2010 clause 5.2.1: components operate within their rated limits"),
      PartChecks::isOutOfTemperature,
      ServiceSentences::temperature),

  /** The tool sees no more than its maker allows, when it takes no air and the supply stands at its highest. */
  TOOL_RATED(
      "Tool is not over-pressured",
      Source.commonPractice(
          "the dead-end pressure at the tool is the highest that can occur; a regulator can fail open"),
      Broken.byJob(PartChecks::isToolOverPressured),
      (assembly, units) -> RuleSentences.toolRated(assembly.requirement(), units)),

  /** A blow gun is kept to the pressure that the safety rules allow at a blocked nozzle. */
  CLEANING_PRESSURE(
      "Cleaning pressure is kept down",
      Source.handbook("29 CFR 1910.242(b), 1926.302(b)(4) and 1917.154, as their rules say"),
      Broken.byJob(PartChecks::isCleaningForbidden),
      (assembly, units) -> RuleSentences.cleaning(assembly.requirement(), units)),

  /** No safety rule that the job is judged by forbids it: those of a place, of practice, and of one's own. */
  SAFETY_RULES_ALLOW(
      "Safety rules allow it",
      Source.derived(
          "the safety rules of the job that forbid something, each cited where it decides"),
      new Broken(PartChecks::isForbidden, PartChecks::isForbidden),
      ForbiddenSentences::of),

  /** The tool has its air at its pressure. */
  AIR_AT_TOOL(
      "Air at the tool",
      Source.derived("the run from the supply, element by element"),
      RuleSentences::air),

  /** The hose is long enough. */
  HOSE_REACHES(
      "Hose reaches",
      Source.commonPractice("the hose reaches the work"),
      PartChecks::isTooShort,
      RuleSentences::reach),

  /** A hose is not longer than it may be: a whip hose is short. */
  HOSE_SHORT_ENOUGH(
      "Hose is short enough",
      Source.commonPractice("a whip hose is at most about 10 ft (3 m) long"),
      PartChecks::isTooLong,
      RuleSentences::shortEnough),

  /** Couplings, adapters and hoses stand the place, the knocks and the tool. */
  MATERIAL_SUITS(
      "Material suits the place",
      Source.commonPractice(
          "hardened steel where couplings are dropped on concrete; brass, stainless or, out of salt air, plated "
              + "hardened steel where rust matters; brass where sparks could ignite; no plastic on percussion tools; "
              + "no plain brass under caustic cleaners (that one from memory)"),
      new Broken(PartChecks::hasNoMaterial, PartChecks::isOfWrongMaterial),
      ServiceSentences::material),

  /** Where a spark could ignite something, the hose holds no charge. */
  STATIC_CARRIED_OFF(
      "Hose carries static off",
      Source.commonPractice("a static-dissipative hose where sparks could ignite"),
      PartChecks::keepsCharge,
      ServiceSentences::charge),

  /** No coupling sits straight on a tool that hammers. */
  WHIP_HOSE(
      "Whip hose before a percussion tool",
      Source.commonPractice("a whip hose between percussion tool and coupling"),
      ServiceSentences::whip),

  /** A dragged socket does not open on an edge. */
  SLEEVE_GUARDED(
      "Sleeve is guarded",
      Source.commonPractice("a guarded sleeve where the hose is dragged"),
      PartChecks::isUnguarded,
      RuleSentences::sleeve),

  /** Where asked for, couplings let the air out before they part. */
  VENTED(
      "Couplings are vented",
      Source.standard("ISO 4414:1998 clause 9.6, quick-action couplings"),
      PartChecks::isUnvented,
      RuleSentences::vented),

  /** Dry and lubricated air stay apart. */
  AIR_KEPT_APART(
      "Dry and lubricated air stay apart",
      Source.commonPractice("hoses and couplings of lubricated lines are not used on dry ones"),
      PartChecks::isKeptForOtherAir,
      ServiceSentences::airKept);

  /**
   * What breaks a rule whatever else is chosen: the job itself, or one part in its slot. What takes two parts or the
   * whole run to tell is not told here.
   */
  private record Broken(Predicate<Requirement> byJob, PartChecks.OfPart byPart) {

    static final Broken NEVER = byJob(job -> false);

    static Broken byJob(Predicate<Requirement> byJob) {
      return new Broken(byJob, PartChecks.NEVER);
    }

    static Broken byPart(PartChecks.OfPart byPart) {
      return new Broken(job -> false, byPart);
    }
  }

  private static final Map<Rule, Integer> BITS = new EnumMap<>(Rule.class);

  /** Those that single parts break, asked of every part of a catalogue. */
  private static final List<Rule> BY_PART = new ArrayList<>();

  static {
    for (Rule rule : values()) {
      BITS.put(rule, 1 << BITS.size());
      if (rule.broken.byPart() != PartChecks.NEVER) {
        BY_PART.add(rule);
      }
    }
  }

  private final String title;
  private final Source source;
  private final Broken broken;
  private final BiFunction<Assembly, UnitSystem, RuleAnswer> judging;

  Rule(String title, Source source, BiFunction<Assembly, UnitSystem, RuleAnswer> judging) {
    this(title, source, Broken.NEVER, judging);
  }

  Rule(
      String title,
      Source source,
      PartChecks.OfPart byPart,
      BiFunction<Assembly, UnitSystem, RuleAnswer> judging) {
    this(title, source, Broken.byPart(byPart), judging);
  }

  Rule(
      String title,
      Source source,
      Broken broken,
      BiFunction<Assembly, UnitSystem, RuleAnswer> judging) {
    this.title = title;
    this.source = source;
    this.broken = broken;
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

  /**
   * Judges an assembly. Not met where {@link #brokenBy} tells this rule of the job or of one of the parts; a search
   * that leaves those out loses nothing.
   */
  RuleAnswer judge(Assembly assembly, UnitSystem units) {
    return judging.apply(assembly, units);
  }

  /** This rule as a bit, so that a set of rules is a number. */
  int bit() {
    return BITS.getOrDefault(this, 0);
  }

  /** The rules one part breaks in a position, as bits. */
  static int brokenBy(Requirement job, Position position, Part part) {
    int bits = 0;
    for (Rule rule : BY_PART) {
      if (rule.broken.byPart().isBroken(job, position, part)) {
        bits |= rule.bit();
      }
    }
    return bits;
  }

  /** The rules the job itself breaks, as bits. */
  static int brokenBy(Requirement job) {
    int bits = 0;
    for (Rule rule : BITS.keySet()) {
      if (rule.broken.byJob().test(job)) {
        bits |= rule.bit();
      }
    }
    return bits;
  }
}
