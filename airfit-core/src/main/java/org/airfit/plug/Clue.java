package org.airfit.plug;

import java.util.List;
import java.util.Objects;
import java.util.stream.Stream;
import org.airfit.internal.Digits;

/**
 * Something seen or tried that is no length: what a profile gauge said, what is stamped on the plug, how its groove
 * looks.
 *
 * <pre>
 *   P(clue | profile) = r  if it points at the profile,  1 − r  if at others,  1/2  if the profile says nothing of it
 *   P(clue | unknown) = 1/2
 * </pre>
 *
 * <p>A clue moves the chances and never identifies: a verdict above {@link PlugVerdict#INSUFFICIENT_DATA} still needs
 * dimensions. The reliability r is the user's own judgement; no source gives one. That an unknown plug shows a clue as
 * often as not is this project's choice.
 *
 * @param kind what was seen or tried
 * @param sign the id of the gauge's profile, the marking as it stands on the plug, or the name of the
 *     {@link GrooveForm}
 * @param reliability r, in [0.5, 1): how often such a clue speaks the truth; 0.5 says nothing
 */
public record Clue(Kind kind, String sign, double reliability) {

  /** How often an unknown plug shows a clue. */
  static final double BY_CHANCE = 0.5;

  /** What kind of clue. */
  public enum Kind {
    /** A gauge or a mating half known to be of one profile takes the plug. */
    GAUGE_TAKES_IT,
    /** A gauge or a mating half known to be of one profile does not take the plug. */
    GAUGE_REFUSES_IT,
    /** A letter or word is stamped on the plug. */
    MARKING,
    /** The locking groove has a form. */
    GROOVE_FORM
  }

  /**
   * Checks the components.
   *
   * @param kind what was seen or tried
   * @param sign the id of the gauge's profile, the marking as it stands on the plug, or the name of the
   *     {@link GrooveForm}
   * @param reliability r, in [0.5, 1): how often such a clue speaks the truth; 0.5 says nothing
   * @throws IllegalArgumentException if {@code reliability} is outside its range, or the sign is blank or no groove
   *     form
   */
  public Clue {
    Objects.requireNonNull(kind, "kind");
    Objects.requireNonNull(sign, "sign");
    if (!(reliability >= 0.5 && reliability < 1.0)) {
      throw new IllegalArgumentException("reliability of a clue must be in [0.5, 1), was "
          + reliability + "; no clue is certain, and one that is mostly wrong is none");
    }
    if (sign.isBlank()) {
      throw new IllegalArgumentException(
          "sign of a clue must not be blank, was \"" + sign + "\"; leave the clue out");
    }
    if (kind == Kind.GROOVE_FORM
        && Stream.of(GrooveForm.values()).noneMatch(form -> form.name().equals(sign))) {
      throw new IllegalArgumentException("sign of a groove form must be one of "
          + List.of(GrooveForm.values()) + ", was \"" + sign + "\"");
    }
  }

  /**
   * Takes down the answer of a profile gauge, or of a known mating half tried without pressure.
   *
   * @param profileId the profile the gauge is made for
   * @param takesIt whether it takes the plug
   * @param reliability how often it speaks the truth, in [0.5, 1)
   * @return the clue
   * @throws IllegalArgumentException if {@code reliability} is outside its range
   */
  public static Clue gauge(String profileId, boolean takesIt, double reliability) {
    Objects.requireNonNull(profileId, "profileId");
    return new Clue(takesIt ? Kind.GAUGE_TAKES_IT : Kind.GAUGE_REFUSES_IT, profileId, reliability);
  }

  /**
   * Takes down what is stamped on the plug. It points at every profile the set lets it mean.
   *
   * @param word the letter or word
   * @param reliability how often such a marking means what the set takes it to mean, in [0.5, 1)
   * @return the clue
   * @throws IllegalArgumentException if {@code reliability} is outside its range, or the word is blank
   */
  public static Clue marking(String word, double reliability) {
    Objects.requireNonNull(word, "word");
    return new Clue(Kind.MARKING, word, reliability);
  }

  /**
   * Takes down the form of the locking groove.
   *
   * @param form the form
   * @param reliability how often it is what it looks like, in [0.5, 1)
   * @return the clue
   * @throws IllegalArgumentException if {@code reliability} is outside its range
   */
  public static Clue grooveForm(GrooveForm form, double reliability) {
    Objects.requireNonNull(form, "form");
    return new Clue(Kind.GROOVE_FORM, form.name(), reliability);
  }

  /** How often a plug of the profile shows this clue. */
  double chance(PlugProfile profile) {
    return switch (kind) {
      case GAUGE_TAKES_IT -> chance(profile.id().equals(sign));
      case GAUGE_REFUSES_IT -> chance(!profile.id().equals(sign));
      case MARKING -> profile.aliases().isEmpty() ? BY_CHANCE : chance(profile.isCalled(sign));
      case GROOVE_FORM ->
        profile.grooveForm().map(form -> chance(form.name().equals(sign))).orElse(BY_CHANCE);
    };
  }

  private double chance(boolean pointsAtIt) {
    return pointsAtIt ? reliability : 1.0 - reliability;
  }

  /** What it tells of: no two clues of one answer may tell of the same. */
  String subject() {
    return switch (kind) {
      case GAUGE_TAKES_IT, GAUGE_REFUSES_IT -> "gauge for " + sign;
      case MARKING -> "marking \"" + sign + "\"";
      case GROOVE_FORM -> "groove form";
    };
  }

  boolean isOfGauge() {
    return kind == Kind.GAUGE_TAKES_IT || kind == Kind.GAUGE_REFUSES_IT;
  }

  /** {@return the clue in words, such as "marked \"M\" (reliability 0.8)"} */
  @Override
  public String toString() {
    String what = switch (kind) {
      case GAUGE_TAKES_IT -> "the gauge for " + sign + " takes it";
      case GAUGE_REFUSES_IT -> "the gauge for " + sign + " does not take it";
      case MARKING -> "marked \"" + sign + "\"";
      case GROOVE_FORM -> "its groove is " + GrooveForm.valueOf(sign).label();
    };
    return what + " (reliability " + Digits.significant(reliability, 3) + ")";
  }
}
