package org.airfit.safety;

import java.util.function.Function;
import org.airfit.internal.Digits;
import org.airfit.internal.Labels;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.Length;
import org.airfit.source.Source;
import org.jspecify.annotations.Nullable;

/**
 * The rules airfit knows, each with what it demands and where it stands.
 *
 * <p>They are reminders, not a legal code: other rules apply in other places, and makers' ratings come before all of
 * them. Where
 * rules differ at their bound (exactly 30 psi for cleaning), each is a constant of its own and each is shown.
 */
public enum SafetyRule {
  /** Quick couplers let go of pressurised air when uncoupled. */
  DEPRESSURISE(
      "Depressurise before uncoupling",
      "Shut the supply and let the air out downstream before a coupling is parted; a vented "
          + "coupling lets it out by itself.",
      Source.standard("ISO 4414:1998 clause 9.6, quick-action couplings"),
      s -> s.is(Situation.QUICK_COUPLERS)
          ? answer(Judgement.REQUIRED, "quick couplers are in the line.")
          : silent("no quick coupler was named.")),

  /** No part above its maker's rating. */
  RATED_PRESSURE(
      "Rated pressure",
      "No part may see more than its maker's rating; the weakest part rates the line.",
      Source.handbook("29 CFR 1926.302(b)(5), maker's safe operating pressure"),
      s -> {
        GaugePressure line = s.get(Situation.LINE_PRESSURE);
        GaugePressure rating = s.get(Situation.LOWEST_RATING);
        if (line == null || rating == null) {
          return silent("pressure or rating was not told.");
        }
        String compared =
            psi(line, rating) + " in the line, weakest part rated " + psi(rating, line) + ".";
        return answer(
            line.compareTo(rating) <= 0 ? Judgement.ALLOWED : Judgement.NOT_ALLOWED, compared);
      }),

  /** Large hoses on construction tools need a device that cuts the air when they burst. */
  HOSE_FAILURE(
      "Hose failure protection",
      "A hose of more than 1/2 in inside diameter needs a device at the source or branch that cuts the flow if it fails"
          + " (US construction work).",
      Source.handbook("29 CFR 1926.302(b)(7) and OSHA letter of 1983-06-06"),
      s -> {
        Length bore = s.get(Situation.HOSE_BORE);
        if (bore == null) {
          return silent("no hose bore was told.");
        }
        Length limit = Length.ofInches(0.5);
        return answer(
            bore.compareTo(limit) > 0 ? Judgement.REQUIRED : Judgement.NOT_REQUIRED,
            telling(bore.inches(), limit.inches()) + " in bore against a limit of 0.5 in.");
      }),

  /** Surface coal mines: large hoses are chained. */
  HOSE_CHAIN_COAL(
      "Hose restraint (surface coal mines)",
      "Safety chains or locking devices at high-pressure hose lines of 1 in inside diameter or more.",
      Source.handbook("30 CFR 77.412(d)"),
      s -> chained(s.get(Situation.MINE_HOSE_BORE), 1.0)),

  /** Metal and nonmetal mines: hoses are chained from 3/4 in on. */
  HOSE_CHAIN_METAL(
      "Hose restraint (metal and nonmetal mines)",
      "Safety chains or locking devices at the connections of high-pressure hose lines of 3/4 in "
          + "inside diameter or more, unless automatic"
          + " shut-off valves are used.",
      Source.fromMemory("30 CFR 56.13021"),
      s -> chained(s.get(Situation.MINE_HOSE_BORE), 0.75)),

  /** Nobody works on what is still under pressure. */
  ENERGY_ISOLATION(
      "Energy isolation",
      "Before somebody works on the line or machine: shut off, lock the valve, let the air out "
          + "of every part, receivers too, and prove it"
          + " empty.",
      Source.fromMemory("29 CFR 1910.147, control of hazardous energy"),
      s -> s.is(Situation.MAINTENANCE)
          ? answer(Judgement.REQUIRED, "somebody works on the line or the machine.")
          : silent("no work on the line itself was named.")),

  /** Tools must not part from their hose by accident. */
  CONNECTION_RESTRAINT(
      "Connection restraint",
      "Secure the tool to its hose or whip by a positive means, so that it cannot come off by accident.",
      Source.handbook("29 CFR 1926.302(b)(1); 29 CFR 1915.131(e)"),
      s -> s.is(Situation.TOOL_ON_HOSE)
          ? answer(Judgement.REQUIRED, "a pneumatic tool hangs on a hose.")
          : silent("no tool on a hose was named.")),

  /** Percussion tools throw their attachments and shake couplers apart. */
  IMPACT_RETAINER(
      "Retainer on percussion tools",
      "Fit a safety clip or retainer so that attachments cannot be expelled.",
      Source.handbook("29 CFR 1926.302(b)(2)"),
      s -> s.is(Situation.IMPACT_TOOL)
          ? answer(Judgement.REQUIRED, "the tool is a percussion tool.")
          : silent("no percussion tool was named.")),

  /** A coupler straight on a hammering tool wears and lets go. */
  WHIP_HOSE(
      "Whip hose",
      "Put a short whip hose between a percussion tool and its coupler; a coupler straight on "
          + "the tool is shaken and wears.",
      Source.commonPractice("whip hose between percussion tool and coupler"),
      s -> s.is(Situation.IMPACT_TOOL) && s.is(Situation.QUICK_COUPLERS)
          ? answer(Judgement.REQUIRED, "a percussion tool meets a quick coupler.")
          : silent("no percussion tool with a quick coupler was named.")),

  /** Fasteners that feed by themselves. */
  MUZZLE_CONTACT(
      "Muzzle contact safety",
      "A tool that feeds its fasteners by itself and runs above 100 psi needs a safety device at the muzzle.",
      Source.handbook("29 CFR 1926.302(b)(3)"),
      s -> {
        GaugePressure tool = s.get(Situation.AUTOMATIC_FEED_PRESSURE);
        if (tool == null) {
          return silent("no tool with automatic feed was named.");
        }
        GaugePressure limit = GaugePressure.ofPsi(100);
        boolean above = tool.compareTo(limit) > 0;
        return answer(
            above ? Judgement.REQUIRED : Judgement.NOT_REQUIRED,
            psi(tool, limit) + " at the tool against a limit of 100 psig.");
      }),

  /** Cleaning air in general industry: less than 30 psi. */
  CLEANING_GENERAL_INDUSTRY(
      "Cleaning pressure (general industry)",
      "Air for cleaning must be below 30 psi when the nozzle is blocked, with chip guards and personal protection."
          + " Never point it at a person.",
      Source.handbook("29 CFR 1910.242(b) and the OSHA letter on it"),
      s -> {
        GaugePressure nozzle = s.get(Situation.CLEANING_PRESSURE);
        if (nozzle == null) {
          return silent("no cleaning was named.");
        }
        GaugePressure limit = GaugePressure.ofPsi(30);
        boolean below = nozzle.compareTo(limit) < 0;
        return answer(
            below ? Judgement.ALLOWED : Judgement.NOT_ALLOWED,
            psi(nozzle, limit) + " against less than 30 psig.");
      }),

  /** Cleaning air in construction: reduced to 30 psi. */
  CLEANING_CONSTRUCTION(
      "Cleaning pressure (construction)",
      "Air for cleaning must be reduced to 30 psi, with chip guards and personal protection; "
          + "concrete forms, mill scale and the"
          + " like are excepted.",
      Source.handbook("29 CFR 1926.302(b)(4)"),
      s -> {
        GaugePressure nozzle = s.get(Situation.CLEANING_PRESSURE);
        if (nozzle == null) {
          return silent("no cleaning was named.");
        }
        if (s.is(Situation.FORMS_OR_MILL_SCALE)) {
          return silent("the limit does not apply to concrete forms, mill scale and the like.");
        }
        return atMostThirtyPsi(nozzle);
      }),

  /** Cleaning air at marine terminals: not above 30 psi. */
  CLEANING_MARINE_TERMINALS(
      "Cleaning pressure (marine terminals)",
      "Air for cleaning must not be above 30 psi, with chip guards and personal protection, and never cleans people.",
      Source.handbook("29 CFR 1917.154"),
      s -> atMostThirtyPsi(s.get(Situation.CLEANING_PRESSURE))),

  /** California: hardly any air on clothing that is worn. */
  CLOTHING(
      "Air on clothing",
      "Air above 10 psi must not blow dirt from clothing that somebody wears (California); better never at all.",
      Source.handbook("California Code of Regulations, Title 8, section 3301(a)"),
      s -> {
        GaugePressure nozzle = s.get(Situation.CLOTHING_PRESSURE);
        if (nozzle == null) {
          return silent("no air on clothing was named.");
        }
        GaugePressure limit = GaugePressure.ofPsi(10);
        return answer(
            nozzle.compareTo(limit) <= 0 ? Judgement.ALLOWED : Judgement.NOT_ALLOWED,
            psi(nozzle, limit) + " against at most 10 psig.");
      }),

  /** A pressure within the limits does not make cleaning with air safe by itself. */
  CLEANING_PROTECTION(
      "Guards when cleaning with air",
      "At any pressure, clean with air only behind chip guards and with personal protection, and "
          + "never point it at a person.",
      Source.handbook("29 CFR 1910.242(b); 29 CFR 1926.302(b)(4); 29 CFR 1917.154"),
      s -> s.get(Situation.CLEANING_PRESSURE) == null
          ? silent("no cleaning was named.")
          : answer(Judgement.REQUIRED, "air is used for cleaning.")),

  /** Receivers are guarded by a safety valve. */
  RECEIVER(
      "Receiver protection",
      "A receiver carries a gauge and a spring-loaded safety valve with no valve between, which "
          + "holds it to at most 110 % of its"
          + " rated pressure.",
      Source.handbook("29 CFR 1910.169(b)(3); 29 CFR 1917.155"),
      s -> {
        GaugePressure rating = s.get(Situation.RECEIVER_RATING);
        GaugePressure reaches = s.get(Situation.RECEIVER_REACHES);
        if (rating == null || reaches == null) {
          return silent("no receiver was named.");
        }
        GaugePressure limit = GaugePressure.ofPascals(rating.pascals() * 11.0 / 10.0);
        // both pressures and the product are rounded: exactly 110 % stays allowed
        boolean within = reaches.pascals() <= limit.pascals() + 2.0 * Math.ulp(limit.pascals());
        return answer(
            within ? Judgement.ALLOWED : Judgement.NOT_ALLOWED,
            "safety valve lets " + psi(reaches, limit) + " stand on a receiver rated "
                + psi(rating, rating) + ", of which 110 % are " + psi(limit, reaches) + ".");
      }),

  /** Hoses are not ropes. */
  HOISTING(
      "Hoisting by the hose",
      "A hose must not hoist or lower a tool.",
      Source.handbook("29 CFR 1926.302(b)(6)"),
      s -> s.is(Situation.HOISTED_BY_HOSE)
          ? answer(Judgement.NOT_ALLOWED, "the tool hangs by its hose.")
          : silent("no hoisting was named.")),

  /** The federal item description of couplers ends at 16 bar. */
  FEDERAL_COUPLERS(
      "Coupler working pressure",
      "Couplers of this description are for air only, to 232 psi (16 bar).",
      Source.handbook("A-A-59439 (30 Dec 1999), page 1"),
      s -> {
        GaugePressure highest = s.get(Situation.COUPLER_PRESSURE);
        if (highest == null) {
          return silent("no coupler of this description was named.");
        }
        GaugePressure limit = GaugePressure.ofPsi(232);
        boolean within = highest.compareTo(limit) <= 0;
        return answer(
            within ? Judgement.ALLOWED : Judgement.NOT_ALLOWED,
            psi(highest, limit) + " against at most 232 psig.");
      });

  /** What a rule says of a situation, before its name is put on it. */
  record Answer(Judgement judgement, String reason) {}

  private final String title;
  private final String demand;
  private final Source source;
  private final Function<Situation, Answer> judging;

  SafetyRule(String title, String demand, Source source, Function<Situation, Answer> judging) {
    this.title = title;
    this.demand = demand;
    this.source = source;
    this.judging = judging;
  }

  /** {@return what the rule is about, in a few words} */
  public String title() {
    return title;
  }

  /** {@return what the rule demands, in plain words} */
  public String demand() {
    return demand;
  }

  /** {@return where the rule stands} */
  public Source source() {
    return source;
  }

  /** What this rule alone says of a situation. */
  Answer judge(Situation situation) {
    return judging.apply(situation);
  }

  private static Answer answer(Judgement judgement, String reason) {
    return new Answer(judgement, reason);
  }

  private static Answer silent(String reason) {
    return answer(Judgement.DOES_NOT_APPLY, reason);
  }

  private static Answer chained(@Nullable Length bore, double fromInches) {
    if (bore == null) {
      return silent("no hose in a mine was named.");
    }
    Length limit = Length.ofInches(fromInches);
    return answer(
        bore.compareTo(limit) >= 0 ? Judgement.REQUIRED : Judgement.NOT_REQUIRED,
        telling(bore.inches(), limit.inches()) + " in bore, asked for from "
            + Digits.plain(fromInches) + " in on.");
  }

  private static Answer atMostThirtyPsi(@Nullable GaugePressure nozzle) {
    if (nozzle == null) {
      return silent("no cleaning was named.");
    }
    GaugePressure limit = GaugePressure.ofPsi(30);
    return answer(
        nozzle.compareTo(limit) <= 0 ? Judgement.ALLOWED : Judgement.NOT_ALLOWED,
        psi(nozzle, limit) + " against at most 30 psig.");
  }

  private static String psi(GaugePressure pressure, GaugePressure other) {
    return telling(pressure.psi(), other.psi()) + " psig";
  }

  /**
   * Four digits, or as many as tell the value from what it is compared with: "30 against less than 30" would be no
   * reason.
   */
  private static String telling(double value, double other) {
    for (int digits = 4; digits < 17; digits++) {
      String text = Digits.significant(value, digits);
      if (value == other || !text.equals(Digits.significant(other, digits))) {
        return text;
      }
    }
    return Digits.plain(value);
  }

  @Override
  public String toString() {
    return Labels.of(this);
  }
}
