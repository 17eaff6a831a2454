package org.airfit.plug;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Collectors;
import org.airfit.internal.Capital;
import org.airfit.internal.Digits;
import org.airfit.quantity.Length;
import org.airfit.safety.Caution;
import org.airfit.working.PencilCard;
import org.airfit.working.UnitSystem;
import org.airfit.working.Worked;
import org.airfit.working.Working;

/**
 * What readings say about a plug: a ranking, a verdict, what to measure next, and the warnings that go with it.
 *
 * <p>The probabilities hold for plugs of the kinds in the set, equally common, and for unknown ones with the chance
 * given. Together they are 1.
 *
 * <p>This class is immutable and thread-safe.
 */
public final class Identification implements Worked {

  /** One dimension alone names no profile. This project's rule. */
  static final int FEWEST_READINGS = 2;

  /**
   * Where near copies are about, a genuine plug that fits worse than 97 of 100 is left a candidate; this project's
   * choice between the copies that pass and the genuine plugs that do not.
   */
  private static final double FIRM_ABOVE = 0.03;

  /** What is less likely is not said. */
  private static final double SAID_ABOVE = 0.005;

  private final Evidence evidence;
  private final PlugVerdict verdict;

  private Identification(Evidence evidence) {
    this.evidence = evidence;
    this.verdict = judge();
  }

  static Identification of(
      ReferenceSet set,
      Assumptions assumptions,
      Map<Dimension, PlugReading> readings,
      List<Clue> clues) {
    return new Identification(new Evidence(set, assumptions, readings, clues));
  }

  private PlugVerdict judge() {
    if (evidence.nothingCompared()) {
      return PlugVerdict.INSUFFICIENT_DATA;
    }
    if (noneFits()) {
      return slips().isEmpty() && ifWorn().isEmpty() ? PlugVerdict.NO_MATCH : PlugVerdict.AMBIGUOUS;
    }
    if (likely().size() > 1 || unknownIsLikely()) {
      return PlugVerdict.AMBIGUOUS;
    }
    if (likely().get(0).degreesOfFreedom() < FEWEST_READINGS) {
      return PlugVerdict.INSUFFICIENT_DATA;
    }
    return weakestProvenance().canIdentify() && nothingOpen()
        ? PlugVerdict.IDENTIFIED
        : PlugVerdict.CANDIDATE;
  }

  private boolean noneFits() {
    for (ProfileCandidate candidate : likely()) {
      if (candidate.fits()) {
        return false;
      }
    }
    return true;
  }

  /** What costs least to find out is asked first. */
  private boolean nothingOpen() {
    return notKnown().isEmpty()
        && stillToRead().isEmpty()
        && fitsFirmly()
        && !mayBeChance()
        && !needsWear();
  }

  private static double firmAbove(boolean nearCopies) {
    return nearCopies ? FIRM_ABOVE : ProfileCandidate.REJECTED_BELOW;
  }

  private boolean fitsFirmly() {
    return best().fitsThroughout(firmAbove(expectsNearCopies()));
  }

  private boolean mayBeChance() {
    PlugProfile profile = best().profile();
    boolean allAgree =
        evidence.notRead(profile).isEmpty() && profile.missingDimensions().isEmpty();
    return unknownPrior() > 0.0
        && !allAgree
        && chanceOfCoincidence() > ProfileCandidate.REJECTED_BELOW;
  }

  private boolean needsWear() {
    return expectsNearCopies()
        && wearAllowance().metres() > 0.0
        && fitsFirmly()
        && !evidence.fitsAsNew(best(), firmAbove(expectsNearCopies()));
  }

  /**
   * What keeps the profile that stands out from being identified, but for where the set comes from.
   *
   * @param isOnCard whether it is told as a reason on a card, where no chances are reckoned and nothing more is read
   */
  private List<String> openPoints(boolean isOnCard) {
    List<String> open = new ArrayList<>();
    if (!fitsFirmly()) {
      open.add(isOnCard ? "the readings fit it badly" : badFit(best()));
    }
    if (mayBeChance()) {
      open.add(
          isOnCard
              ? "another plug of its size may agree by chance in so few readings"
              : Digits.percent(chanceOfCoincidence())
                  + " of the plugs of its size class would agree with a profile of the set by chance; "
                  + (evidence.allRead() ? "the set knows no other size to read" : "read more"));
    }
    if (!stillToRead().isEmpty()) {
      open.add("a near copy may differ in what was not read"
          + (isOnCard ? ", the " : "; read also the ") + listed(stillToRead()));
    }
    if (!notKnown().isEmpty()) {
      open.add(
          isOnCard
              ? "a near copy may differ in what is not known of it, the " + listed(notKnown())
              : notKnownInWords());
    }
    if (needsWear()) {
      open.add("it fits with wear only, and a near copy may be smaller there");
    }
    return open;
  }

  private String badFit(ProfileCandidate best) {
    return best.largestMisfitProbability() < firmAbove(expectsNearCopies())
        ? "one reading lies " + Digits.fixed(best.largestMisfit(), 1)
            + " times the expected scatter away; read it again"
        : "only " + Digits.percent(best.tailProbability())
            + " of its genuine plugs fit as badly in all readings together; read again";
  }

  /** Why one profile alone that the limits leave is not identified, for a card. */
  private List<String> openOnCard() {
    if (evidence.nothingCompared()) {
      return List.of();
    }
    List<String> open = new ArrayList<>();
    if (verdict == PlugVerdict.INSUFFICIENT_DATA) {
      open.add("one dimension alone names none");
    }
    if (verdict == PlugVerdict.AMBIGUOUS) {
      open.add("by the chances others remain likely");
    }
    if (verdict == PlugVerdict.NO_MATCH) {
      open.add("all readings together fit none that is known here");
    }
    if (!weakestProvenance().canIdentify()) {
      open.add("the sizes known here are " + weakestProvenance());
    }
    if (verdict == PlugVerdict.CANDIDATE) {
      open.addAll(openPoints(/* isOnCard= */ true));
    }
    return open;
  }

  /** Two of three sizes read is no agreement in all that the set knows, and is not called so. */
  private String notKnownInWords() {
    int known = best().profile().dimensions().size();
    String agrees = stillToRead().isEmpty() && best().degreesOfFreedom() == known
        ? "it fits in " + (known == 2 ? "both" : "all " + ReadingSlip.NUMBERS.get(known))
            + " sizes that the set knows of it; "
        : "";
    return agrees + "the set does not know the " + listed(notKnown())
        + ", on which the mating depends too; add "
        + (notKnown().size() == 1 ? "that size" : "these sizes") + " to the set";
  }

  private static String listed(Collection<Dimension> dimensions) {
    return dimensions.stream().map(Dimension::toString).collect(Collectors.joining(", "));
  }

  /** {@return the verdict; handle every one of them} */
  public PlugVerdict verdict() {
    return verdict;
  }

  /**
   * {@return the profile that stands out, for {@link PlugVerdict#IDENTIFIED} and {@link PlugVerdict#CANDIDATE} only}
   */
  public Optional<PlugProfile> profile() {
    return verdict == PlugVerdict.IDENTIFIED || verdict == PlugVerdict.CANDIDATE
        ? Optional.of(best().profile())
        : Optional.empty();
  }

  /**
   * {@return the likeliest profile, the first of the {@link #candidates}; it may not fit, and the unknown may be
   * likelier}
   */
  public ProfileCandidate best() {
    return evidence.best();
  }

  /** {@return every profile of the set, the likeliest first} */
  public List<ProfileCandidate> candidates() {
    return evidence.candidates();
  }

  /** {@return the chance that the plug is of no profile in the set: from elsewhere, or a near copy} */
  public double unknownProbability() {
    return evidence.unknownProbability();
  }

  /** {@return the chance that the plug is from elsewhere in the size class, like no profile in the set} */
  public double elsewhereProbability() {
    return evidence.elsewhereProbability();
  }

  /**
   * {@return the chance that the plug is a near copy: most sizes are those of a profile, some are not; 0 where none is
   * about}
   */
  public double nearCopyProbability() {
    return evidence.nearCopyProbability();
  }

  /** {@return whether near copies were taken to be about} */
  public boolean expectsNearCopies() {
    return evidence.assumptions().nearCopiesCount();
  }

  /**
   * Obtains the dimensions that decide the mating of the likeliest profile and were not read. A near copy may differ in
   * them, so identification waits for them.
   *
   * @return the dimensions in the order of {@link Dimension}; empty where no near copies are about
   */
  public List<Dimension> stillToRead() {
    return expectsNearCopies() ? evidence.notRead(best().profile()) : List.of();
  }

  /**
   * Obtains the dimensions on which the mating depends and whose size the set does not know for the likeliest
   * profile. A near copy may differ in them and no reading tells, so the answer is a candidate at most.
   *
   * @return the {@link PlugProfile#missingDimensions} in the order of {@link Dimension}; empty where no near copies are
   *     about
   */
  public List<Dimension> notKnown() {
    return expectsNearCopies() ? List.copyOf(best().profile().missingDimensions()) : List.of();
  }

  /**
   * Obtains how often a plug from anywhere in the size class would agree with some profile of the set, by chance, in
   * all that was read. Above 0.01 no plug is called identified, unless every dimension on which the mating depends was
   * read.
   *
   * <pre>
   *   Σ over the profiles of Π (width in which 99 of 100 genuine plugs read) / (width of the size class)
   * </pre>
   *
   * @return the chance; the width of the size class is guessed from the sizes of the set, up to 10 mm, and of fewer
   *     than six profiles from 2 mm on, which is this project's choice
   */
  public double chanceOfCoincidence() {
    return evidence.coincidence();
  }

  /**
   * Obtains the slips that may explain readings that agree with no profile, such as inches typed as millimetres.
   *
   * @return the slips at least as likely as the confidence leaves room for, the likeliest first; empty where a profile
   *     explains the readings as they stand
   */
  public List<ReadingSlip> slips() {
    return noneFits() || unknownIsLikely() ? evidence.slips() : List.of();
  }

  /**
   * {@return the profile that the readings fit if the plug is worn, where none fits as it is and nobody said how worn
   * it is}
   */
  public Optional<PlugProfile> ifWorn() {
    return noneFits() ? evidence.ifWorn() : Optional.empty();
  }

  /** {@return the fewest profiles that, with the unknown where it is likely, hold the confidence asked for} */
  public List<ProfileCandidate> likely() {
    return evidence.likely();
  }

  /** {@return whether "of none in the set" is among what remains likely} */
  public boolean unknownIsLikely() {
    return evidence.unknownIsLikely();
  }

  /** {@return the weakest provenance among the profiles compared, on which the whole ranking rests} */
  public Provenance weakestProvenance() {
    return referenceSet().weakestProvenance();
  }

  /** {@return the readings, in the order of {@link Dimension}} */
  public List<PlugReading> readings() {
    return evidence.readings();
  }

  /** {@return the clues that were counted, in the order given} */
  public List<Clue> clues() {
    return evidence.clues();
  }

  /** {@return the profiles the plug was compared with} */
  public ReferenceSet referenceSet() {
    return evidence.set();
  }

  /** {@return the chance, before any reading, that the plug is of no profile in the set} */
  public double unknownPrior() {
    return evidence.assumptions().unknownPrior();
  }

  /** {@return the chance a profile had to reach to stand out} */
  public double confidence() {
    return evidence.assumptions().confidence();
  }

  /** {@return the most that wear was allowed to have taken away} */
  public Length wearAllowance() {
    return evidence.assumptions().wear();
  }

  /**
   * {@return which size classes the readings leave open, from memory; empty unless {@link Identifier#withSizeClasses}
   * asked for it}
   */
  public Optional<SizeClasses> sizeClasses() {
    return evidence.assumptions().sizeClasses()
        ? Optional.of(SizeClasses.of(readings()))
        : Optional.empty();
  }

  /** {@return the doubt that is left [bit]; one bit is the doubt between two equals} */
  public double doubtBits() {
    return evidence.doubtBits();
  }

  /**
   * Obtains the dimensions not read yet, the one that is expected to take away most doubt first.
   *
   * @return the next readings; empty if everything the set knows was read
   */
  public List<NextReading> nextReadings() {
    return evidence.nextReadings();
  }

  /** {@return the warnings that go with this answer} */
  public List<Caution> cautions() {
    List<Caution> cautions = new ArrayList<>(PlugCautions.forAnswer(
        weakestProvenance(), clues().stream().anyMatch(clue -> clue.kind() == Clue.Kind.MARKING)));
    sizeClasses().ifPresent(sizes -> cautions.addAll(sizes.cautions()));
    return List.copyOf(cautions);
  }

  /** {@return the answer in a few plain sentences, with what to measure next where that is open} */
  public String inWords() {
    return inWords(UnitSystem.SI);
  }

  /**
   * Tells the same with lengths in millimetres or inches.
   *
   * @param units the units
   * @return the answer in a few plain sentences
   */
  public String inWords(UnitSystem units) {
    Objects.requireNonNull(units, "units");
    String answer = clues().isEmpty()
        ? answer(units)
        : answer(units) + " Counted as clues: "
            + clues().stream().map(Clue::toString).collect(Collectors.joining(", ")) + ".";
    answer += sizeClasses().map(sizes -> " " + sizes.inWords()).orElse("");
    boolean open = (verdict == PlugVerdict.AMBIGUOUS && slips().isEmpty())
        || verdict == PlugVerdict.INSUFFICIENT_DATA;
    return open && !nextReadings().isEmpty()
        ? answer + " " + nextReadings().get(0).inWords()
        : answer;
  }

  private String answer(UnitSystem units) {
    ProfileCandidate best = best();
    String set = "the set \"" + referenceSet().name() + "\" (" + weakestProvenance() + ")";
    return switch (verdict) {
      case IDENTIFIED -> "Identified by " + set + ": " + chance(best) + ".";
      case CANDIDATE -> candidate(set, best);
      case AMBIGUOUS -> "Ambiguous in " + set + ": " + ambiguous(units) + ".";
      case NO_MATCH -> "No match in " + set + ": " + noMatch(best) + ".";
      case INSUFFICIENT_DATA -> insufficient(best);
    };
  }

  private String candidate(String set, ProfileCandidate best) {
    String open = openPoints(/* isOnCard= */ false).stream()
        .map(Identification::sentence)
        .collect(Collectors.joining());
    return (weakestProvenance().canIdentify()
            ? "Candidate only in " + set + ": "
            : "Candidate only, because of what " + set + " rests on: ")
        + chance(best) + "." + open;
  }

  private static String sentence(String point) {
    return " " + Capital.first(point) + ".";
  }

  private String ambiguous(UnitSystem units) {
    if (!slips().isEmpty()) {
      String slip = slips().get(0).inWords(units);
      return slip.substring(0, slip.length() - 1) + ". If it reads the same again, it is "
          + remaining();
    }
    return ifWorn()
        .map(profile -> profile.displayName() + ", if it is worn by up to "
            + units.saySmall(Length.ofMillimetres(Assumptions.USUAL_WEAR_MM))
            + ": look at it, and allow for that wear. If it is as new, it is " + remaining())
        .orElseGet(this::remaining);
  }

  private String remaining() {
    List<String> left = new ArrayList<>();
    likely().stream()
        .filter(candidate -> candidate.fits() || candidate.degreesOfFreedom() == 0)
        .map(Identification::chance)
        .forEach(left::add);
    if (unknownIsLikely() || left.isEmpty()) {
      if (nearCopyProbability() >= SAID_ABOVE) {
        left.add("a near copy of " + evidence.copied().displayName() + ", "
            + Digits.percent(nearCopyProbability()));
      }
      if (elsewhereProbability() >= SAID_ABOVE || left.isEmpty()) {
        left.add("none of the set, " + Digits.percent(elsewhereProbability()));
      }
    }
    return left.size() == 1 || !unknownIsLikely()
        ? String.join(", ", left)
        : String.join(", ", left.subList(0, left.size() - 1)) + ", or " + left.get(left.size() - 1);
  }

  private String noMatch(ProfileCandidate best) {
    String nearest = "the nearest is " + best.profile().displayName() + ", and "
        + Digits.percent(best.tailProbability()) + " of its genuine plugs fit as badly";
    return nearCopyProbability() > elsewhereProbability()
        ? "it is most likely a near copy of " + evidence.copied().displayName() + "; " + nearest
        : nearest;
  }

  private String insufficient(ProfileCandidate best) {
    if (readings().isEmpty()) {
      return "Nothing was read yet.";
    }
    if (best.degreesOfFreedom() == 0) {
      return "Not enough readings: nothing was read that the set \""
          + referenceSet().name() + "\" knows.";
    }
    return "Not enough readings: " + best.profile().displayName()
        + " is the likeliest, but one dimension alone names no profile.";
  }

  private static String chance(ProfileCandidate candidate) {
    return candidate.profile().displayName() + ", " + Digits.percent(candidate.probability());
  }

  /**
   * Obtains the chi-square and the posterior arithmetic, step by step.
   *
   * @param units the units to show lengths in: millimetres or inches
   * @return the working
   */
  @Override
  public Working working(UnitSystem units) {
    return IdentificationWorking.of(evidence, inWords(units), units);
  }

  /**
   * Obtains the comparisons behind the answer on one page for a pencil: each reading against the limits of the profiles
   * it may belong to, rounded so that every comparison turns out as with exact numbers, and which profiles are left.
   *
   * <p>The chances stand there in words only. What {@link #cautions} says goes with the card too.
   *
   * @param units the units to show lengths in: millimetres or inches
   * @return the card; it answers in words
   */
  public PencilCard pencilCard(UnitSystem units) {
    return PlugCard.of(
        new PlugCard.Answered(
            readings(),
            wearAllowance(),
            clues(),
            candidates(),
            unknownProbability(),
            verdict(),
            slips(),
            ifWorn(),
            openOnCard()),
        Objects.requireNonNull(units, "units"));
  }

  /** {@return the answer in words} */
  @Override
  public String toString() {
    return inWords();
  }

  /** Answers are equal when the set, the settings, the readings and the clues are. */
  @Override
  public boolean equals(Object other) {
    return other instanceof Identification that
        && referenceSet().equals(that.referenceSet())
        && evidence.assumptions().equals(that.evidence.assumptions())
        && readings().equals(that.readings())
        && clues().equals(that.clues());
  }

  @Override
  public int hashCode() {
    return Objects.hash(referenceSet(), evidence.assumptions(), readings(), clues());
  }
}
