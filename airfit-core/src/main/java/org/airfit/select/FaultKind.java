package org.airfit.select;

import java.util.Objects;
import org.airfit.internal.Labels;

/** What can be wrong with articles of a price list. */
public enum FaultKind {
  /** A part is rated below another that it is told to be sold with, or below a half that it goes with. */
  RATING_BELOW(FaultEffect.UNSAFE, "rating below what it is sold with"),
  /** A part is rated for more than parts for shop air are: most likely a slip of the decimal point or of the unit. */
  RATING_BEYOND_USE(FaultEffect.UNSAFE, "rating beyond use"),
  /** The sonic conductance and the flow coefficient of one part do not go together. */
  C_AGAINST_CV(FaultEffect.WRONG_ANSWER, "C against Cv"),
  /** A flow or a conductance is above what the bore, or the conductance of the part itself, lets through choked. */
  ABOVE_CHOKING(FaultEffect.WRONG_ANSWER, "flow above choking"),
  /** A bore is far wider than the ends of its part. */
  BORE_BEYOND_ENDS(FaultEffect.WRONG_ANSWER, "bore beyond its ends"),
  /** A plug of one profile is too easily taken for one of another with the caliper in use. */
  PROFILES_TOO_ALIKE(FaultEffect.WRONG_ANSWER, "profiles too alike"),
  /** A price is far from those of the same kind and size. */
  PRICE_OUT_OF_LINE(FaultEffect.WRONG_ANSWER, "price out of line"),
  /** A part costs the shop as much as it is sold for, or more. */
  PRICE_NOT_ABOVE_COST(FaultEffect.WRONG_ANSWER, "price not above cost"),
  /** One article stands in the list more than once. */
  ARTICLE_TWICE(FaultEffect.WRONG_ANSWER, "article twice"),
  /** One part, by all its data, stands in the list at two prices. */
  TWO_PRICES(FaultEffect.WRONG_ANSWER, "two prices"),
  /** What a part lets through, or by how much a regulator droops, is only known as a range. */
  AIR_FIGURE_OPEN(FaultEffect.ANSWER_OPEN, "figure of the air not told"),
  /** Nobody told the rating of a part. */
  RATING_NOT_TOLD(FaultEffect.ANSWER_OPEN, "rating not told"),
  /** Nobody told the price of a part. */
  PRICE_NOT_TOLD(FaultEffect.ANSWER_OPEN, "price not told"),
  /** A half of a coupling of which the list has no other half. */
  NO_OTHER_HALF(FaultEffect.UNTIDY, "no other half"),
  /** No chain of parts and usual ends uses an adapter. */
  ORPHAN_ADAPTER(FaultEffect.UNTIDY, "orphan adapter"),
  /** Two articles have the same data. */
  SAME_DATA(FaultEffect.UNTIDY, "same data under two articles");

  private final FaultEffect effect;
  private final String label;

  FaultKind(FaultEffect effect, String label) {
    this.effect = effect;
    this.label = label;
  }

  /** {@return what such a fault does, if it is one: {@link ListFault#effect} knows what is only to be checked} */
  public FaultEffect effect() {
    return effect;
  }

  /**
   * Reads a kind.
   *
   * @param text the kind in words, as {@link #toString} prints it
   * @return the kind
   * @throws IllegalArgumentException if {@code text} is no kind of fault
   */
  public static FaultKind parse(String text) {
    return Labels.parse("kind of fault", Objects.requireNonNull(text, "text"), values());
  }

  /** {@return the kind in words, such as "flow above choking"} */
  @Override
  public String toString() {
    return label;
  }
}
