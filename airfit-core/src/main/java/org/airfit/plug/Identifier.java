package org.airfit.plug;

import java.util.Collection;
import java.util.EnumMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import org.airfit.measure.Instrument;
import org.airfit.quantity.Length;
import org.airfit.quantity.LengthUnit;
import org.jspecify.annotations.Nullable;

/**
 * Compares readings of a plug with a reference set.
 *
 * <pre>
 *   P(k) ∝ p(k) Π f_k(y_j),    f_k(y) = exp(−(y − µ)²/(2σ²)) / (σ√(2π)),    σ² = s² + u²
 *   elsewhere: p = 0.045, f = 1/10 per mm
 *   near copy of k: p = 0.005 over all k, f = 0.7 f_k(y) + 0.3 g(y),  g(y) = exp(−|y − µ|/a)/(2a),  a = 0.5 mm
 * </pre>
 *
 * <table class="striped">
 * <caption>Symbols</caption>
 * <thead><tr><th>symbol</th><th>meaning</th><th>unit</th></tr></thead>
 * <tbody>
 * <tr><td>P, p</td><td>chance of profile k after and before the readings; before: equal, less the
 * unknown</td><td>-</td></tr>
 * <tr><td>y, u</td><td>a reading and its standard uncertainty</td><td>mm</td></tr>
 * <tr><td>µ, s</td><td>nominal of the profile and its standard deviation from part to part</td><td>mm</td></tr>
 * </tbody>
 * </table>
 *
 * <p>Limits a…b have the density (Φ((y−a)/u) − Φ((y−b)/u))/(b−a). Measured pieces have Student's t with the predictive
 * scale s√(1+1/n), widened by u and with the degrees of freedom of Welch and Satterthwaite (GUM G.4). Wear, if allowed,
 * is an amount evenly likely from nothing to the allowance, taken away only: f(y) = (1/w) ∫₀ʷ f₀(y + δ) dδ where wear
 * shrinks, with minus where it widens a groove, and the dimension untouched where nothing rubs. It therefore never
 * speaks for a profile that is smaller than what was read. A dimension that a profile does not know counts for it with
 * the density of the unknown.
 *
 * <p><b>Unknown plugs</b> are of two kinds. Nine in ten are <em>elsewhere within the size class</em>: any size is
 * as likely as any other in a width of 10 mm. The tenth is a <em>near copy</em>: most sizes are those of a known
 * profile, some were changed. Each size was changed with a chance of 0.3, by 0.5 mm on average, one at least of all
 * those that the profile knows; only profiles with half of the sizes read within reach count. {@link
 * #withoutNearCopies} takes the user's word that there are none; then all unknown plugs are elsewhere. All these
 * numbers are this project's choice.
 *
 * <p><b>Identified</b> needs more than the chance. The fit must hold, χ² of all readings and the largest misfit among
 * them, allowed for their number: a genuine plug fits so badly once in a hundred times at most, or three times where
 * near copies are about. A plug from anywhere in the size class must agree by chance once in a hundred times at most.
 * And where near copies are about, every dimension that decides the mating must be read, see {@link
 * PlugProfile#decidingDimensions}, and must fit with nothing worn: what was not read may differ. So may what the set
 * does not know of the profile, see {@link PlugProfile#missingDimensions}: without it the plug is a candidate at most,
 * however many profiles there are to tell it from.
 *
 * <p><b>Slips</b>, such as inches typed as millimetres, another dimension measured or digits exchanged, are weighed
 * against unknown plugs where no profile explains the readings as they stand, see {@link ReadingSlip}. They change no
 * chance of a profile, and no reading is corrected.
 *
 * <p><b>Fit.</b> The misfits, to the nearest size allowed by limits and wear, give χ²; its upper tail with as many
 * degrees of freedom as dimensions compared must not be below 0.01, else the profile is the best of a bad lot and does
 * not match.
 *
 * <p><b>One caliper.</b> Readings that name their {@link PlugReading#caliper} share its error: one e, normal with the
 * caliper's common uncertainty c, is in all of them. The product of densities then stands under an integral over e, and
 * χ² takes e along:
 *
 * <pre>
 *   ∫ φ(e/c)/c Π f_k(y_j − e) de,    χ² = min over e of Σ z_j² + (e/c)²
 * </pre>
 *
 * <p>which for normal scatter is the multivariate normal with covariance c² between any two. It is the rule here
 * because the errors of one caliper are common to its readings in part at least; how far they are along its scale is in
 * no source.
 *
 * <p><b>Next readings</b> by the same caliper take along what the readings so far tell of its error, profile by
 * profile: its mean and variance, e and c²/(1 + c² Σ 1/σ²) for normal scatter. Otherwise the two are the moments under
 * the integral, and what is left of the error is taken as normal. Between two profiles that differ as an error of the
 * caliper would, a next reading was found worth from 0.1 to 1.0 bit where independent errors would promise from 0.15 to
 * 0.36: neither more nor less in general.
 *
 * <p><b>Source:</b> Bayes' rule with Gaussian scatter; the prior and the density of the unknown are this project's
 * choice; GUM 5.2.2.
 *
 * <p>What is taken for granted can be told:
 *
 * <pre>{@code
 * import java.util.List;
 * import org.airfit.measure.Instrument;
 * import org.airfit.plug.DemoProfiles;
 * import org.airfit.plug.Dimension;
 * import org.airfit.plug.Identifier;
 * import org.airfit.plug.PlugReading;
 * import org.airfit.quantity.Length;
 *
 * class NoNearCopies {
 *   public static void main(String[] args) {
 *     Identifier trusting = Identifier.of(DemoProfiles.birds()).withoutNearCopies();
 *     PlugReading tip =
 *         PlugReading.of(Dimension.TIP_DIAMETER, Instrument.DIGITAL_CALIPER, Length.parse("18.78 mm"));
 *     System.out.println(trusting.identify(List.of(tip)).nearCopyProbability()); // 0.0
 *   }
 * }
 * }</pre>
 *
 * <p>This class is immutable and thread-safe.
 */
public final class Identifier {

  private final ReferenceSet set;
  private final Assumptions assumptions;

  /**
   * The answer to no readings, which is the same for every plug; worked out when first asked for, equal whoever does
   * it.
   */
  private volatile @Nullable Identification withoutReadings;

  private Identifier(ReferenceSet set, Assumptions assumptions) {
    this.set = Objects.requireNonNull(set, "set");
    this.assumptions = assumptions;
  }

  /**
   * Obtains an identifier: chance of an unknown plug 0.05, near copies about, confidence 0.95, wear not told, next
   * readings by digital caliper.
   *
   * @param set the profiles to compare with
   * @return the identifier
   */
  public static Identifier of(ReferenceSet set) {
    Objects.requireNonNull(set, "set");
    return new Identifier(set, Assumptions.USUAL);
  }

  /**
   * Changes the chance, before any reading, that a plug is of no profile in the set.
   *
   * @param prior the chance, in [0, 1); 0 only if every other plug, near copies among them, is ruled out by other means
   * @return an identifier with that chance
   * @throws IllegalArgumentException if {@code prior} is outside its range
   */
  public Identifier withUnknownPrior(double prior) {
    return new Identifier(set, assumptions.withUnknownPrior(prior));
  }

  /**
   * Changes the chance a profile must reach to stand out.
   *
   * @param chance the chance, in [0.5, 1)
   * @return an identifier with that confidence
   * @throws IllegalArgumentException if {@code chance} is outside its range
   */
  public Identifier withConfidence(double chance) {
    return new Identifier(set, assumptions.withConfidence(chance));
  }

  /**
   * Takes the user's word that no near copies are about, because the plugs all come from a source he knows. Then a plug
   * may be identified before every dimension that decides the mating is read.
   *
   * @return an identifier for which an unknown plug is like no profile of the set
   */
  public Identifier withoutNearCopies() {
    return new Identifier(set, assumptions.withoutNearCopies());
  }

  /** {@return whether near copies are taken to be about; they are, unless the user gives his word} */
  public boolean expectsNearCopies() {
    return assumptions.nearCopiesCount();
  }

  /** {@return whether the user said how worn the plug may be, if only that it is as new} */
  public boolean isWearTold() {
    return assumptions.wearTold();
  }

  /** {@return what a plug is usually worn by at most, where nobody looked; this project's choice, no source} */
  public static Length usualWear() {
    return Length.ofMillimetres(Assumptions.USUAL_WEAR_MM);
  }

  /**
   * Allows for wear. Without it a plug is compared as new; a worn one that would not fit so is told to be one that fits
   * if it is worn, see {@link Identification#ifWorn}. No published amount was found; judge by the look of the plug.
   *
   * @param allowance the most that can have gone from a dimension that wears, at most 2 mm; zero for a plug as new
   * @return an identifier with that allowance
   * @throws IllegalArgumentException if {@code allowance} is above 2 mm
   */
  public Identifier withWearAllowance(Length allowance) {
    return new Identifier(
        set, assumptions.withWear(Objects.requireNonNull(allowance, "allowance")));
  }

  /**
   * Changes what the next reading is expected to be taken with.
   *
   * @param next the instrument
   * @return an identifier that ranks next readings for that instrument
   */
  public Identifier withInstrument(Instrument next) {
    return new Identifier(set, assumptions.withInstrument(Objects.requireNonNull(next, "next")));
  }

  /**
   * Takes the errors of all readings as independent, also of those by one caliper. For comparing with a calculation
   * that does so, or where every dimension was read with another caliper of the class.
   *
   * @return an identifier that shares no error between readings
   */
  public Identifier withIndependentErrors() {
    return new Identifier(set, assumptions.withIndependentErrors());
  }

  /** {@return whether the error of a caliper is taken as independent from reading to reading; not unless asked for} */
  public boolean takesErrorsAsIndependent() {
    return assumptions.independent();
  }

  /**
   * Lets the answer also say which size class the readings leave open, by ranges from memory. It changes no chance and
   * no verdict.
   *
   * @return an identifier whose answers tell the size class
   */
  public Identifier withSizeClasses() {
    return new Identifier(set, assumptions.withSizeClasses());
  }

  /** {@return whether answers also tell the size class; not unless {@link #withSizeClasses} asked for it} */
  public boolean usesSizeClasses() {
    return assumptions.sizeClasses();
  }

  /**
   * Compares readings with the set.
   *
   * @param readings the readings in any order, each dimension once; none gives {@link PlugVerdict#INSUFFICIENT_DATA}
   *     and what to measure first
   * @return the answer
   * @throws IllegalArgumentException if a dimension stands twice
   */
  public Identification identify(Collection<PlugReading> readings) {
    Objects.requireNonNull(readings, "readings");
    return identify(readings, List.of());
  }

  /**
   * Compares readings, and clues that are no lengths, with the set.
   *
   * @param readings the readings in any order, each dimension once
   * @param clues what a gauge said, what is stamped on the plug, how its groove looks; each thing once
   * @return the answer; clues alone give {@link PlugVerdict#INSUFFICIENT_DATA}
   * @throws IllegalArgumentException if a dimension or a clue stands twice, or a gauge is of a profile outside the set
   */
  public Identification identify(Collection<PlugReading> readings, Collection<Clue> clues) {
    Objects.requireNonNull(readings, "readings");
    Objects.requireNonNull(clues, "clues");
    Map<Dimension, PlugReading> byDimension = new EnumMap<>(Dimension.class);
    for (PlugReading reading : readings) {
      if (byDimension.put(
              reading.dimension(), assumptions.independent() ? reading.alone() : reading)
          != null) {
        throw new IllegalArgumentException("readings of the " + reading.dimension()
            + " must be one, were two or more; take PlugReading.of all repeats, the caliper's own error stays in "
            + "it");
      }
    }
    Set<String> seen = clues.isEmpty() ? Set.of() : new HashSet<>();
    for (Clue clue : clues) {
      // two tries of one gauge, or two looks at one groove, are no independent witnesses
      if (!seen.add(clue.subject())) {
        throw new IllegalArgumentException("clues must tell of different things, were two of the "
            + clue.subject() + "; keep the one you trust");
      }
      if (clue.isOfGauge() && set.profile(clue.sign()).isEmpty()) {
        throw new IllegalArgumentException("profile of a gauge must be in the set \"" + set.name()
            + "\", was \"" + clue.sign() + "\"; add the profile, or leave the clue out");
      }
    }
    if (byDimension.isEmpty() && clues.isEmpty()) {
      return withoutReadings();
    }
    return Identification.of(set, assumptions, byDimension, List.copyOf(clues));
  }

  private Identification withoutReadings() {
    Identification known = withoutReadings;
    if (known == null) {
      known = Identification.of(set, assumptions, new EnumMap<>(Dimension.class), List.of());
      withoutReadings = known;
    }
    return known;
  }

  /** {@return the profiles compared with} */
  public ReferenceSet referenceSet() {
    return set;
  }

  /** {@return the chance, before any reading, that a plug is of no profile in the set} */
  public double unknownPrior() {
    return assumptions.unknownPrior();
  }

  /** {@return the chance a profile must reach to stand out} */
  public double confidence() {
    return assumptions.confidence();
  }

  /** {@return the most that wear is allowed to have taken away} */
  public Length wearAllowance() {
    return assumptions.wear();
  }

  /** {@return what next readings are expected to be taken with} */
  public Instrument instrument() {
    return assumptions.instrument();
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof Identifier that
        && set.equals(that.set)
        && assumptions.equals(that.assumptions);
  }

  @Override
  public int hashCode() {
    return Objects.hash(set, assumptions);
  }

  /** {@return the set and the settings} */
  @Override
  public String toString() {
    return "Identifier by the set " + set + ", unknown plug " + unknownPrior() + ", confidence "
        + confidence() + (expectsNearCopies() ? "" : ", no near copies") + ", wear up to "
        + wearAllowance().format(LengthUnit.MILLIMETRE)
        + ", next readings by " + instrument();
  }
}
