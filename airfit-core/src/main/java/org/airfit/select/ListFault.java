package org.airfit.select;

import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.function.Function;
import org.airfit.working.UnitSystem;

/**
 * A fault of a price list: of which articles, what is wrong, with the figures, and what to do.
 *
 * <p>This class is immutable, thread-safe and value-based.
 */
public final class ListFault {

  /** The worst effect first, then by kind, what cannot be before what must be checked, then by article. */
  static final Comparator<ListFault> WORST_FIRST = Comparator.comparing(ListFault::effect)
      .thenComparing(ListFault::kind)
      .thenComparing(fault -> !fault.isImpossible())
      .thenComparing(fault -> String.join("\n", fault.articles()))
      .thenComparing(fault -> fault.inWords());

  private final FaultKind kind;
  private final FaultEffect effect;
  private final boolean isImpossible;
  private final List<String> articles;
  private final String inSi;
  private final String inUs;
  private final String toDo;

  private ListFault(
      FaultKind kind,
      FaultEffect effect,
      boolean isImpossible,
      List<String> articles,
      Function<UnitSystem, String> said,
      String toDo) {
    this.kind = kind;
    this.effect = effect;
    this.isImpossible = isImpossible;
    this.articles = List.copyOf(articles);
    this.inSi = said.apply(UnitSystem.SI);
    this.inUs = said.apply(UnitSystem.US);
    this.toDo = toDo;
  }

  /** A fault that somebody should look at. */
  static ListFault of(
      FaultKind kind, List<String> articles, Function<UnitSystem, String> said, String toDo) {
    return new ListFault(kind, kind.effect(), /* isImpossible= */ false, articles, said, toDo);
  }

  /** What can be so, and is no fault until somebody has looked. */
  static ListFault toCheck(
      FaultKind kind, List<String> articles, Function<UnitSystem, String> said, String toDo) {
    return new ListFault(
        kind, FaultEffect.TO_BE_CHECKED, /* isImpossible= */ false, articles, said, toDo);
  }

  /** A fault of figures that no part can have together. */
  static ListFault impossible(
      FaultKind kind, List<String> articles, Function<UnitSystem, String> said, String toDo) {
    return new ListFault(kind, kind.effect(), /* isImpossible= */ true, articles, said, toDo);
  }

  /** {@return what is wrong} */
  public FaultKind kind() {
    return kind;
  }

  /** {@return what it does to whoever relies on the list; {@link FaultEffect#TO_BE_CHECKED} where it may be right} */
  public FaultEffect effect() {
    return effect;
  }

  /** {@return whether no part can be so; otherwise somebody must look whether it is meant so} */
  public boolean isImpossible() {
    return isImpossible;
  }

  /** {@return the ids of the articles it speaks of, or of the profiles where those are too alike; at least one} */
  public List<String> articles() {
    return articles;
  }

  /** {@return what is wrong, in plain words with the figures} */
  public String inWords() {
    return inWords(UnitSystem.SI);
  }

  /**
   * Tells the same with the numbers in other units.
   *
   * @param units the units
   * @return what is wrong, in plain words with the figures
   */
  public String inWords(UnitSystem units) {
    return Objects.requireNonNull(units, "units").either(inSi, inUs);
  }

  /** {@return what to do about it} */
  public String toDo() {
    return toDo;
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof ListFault that
        && kind == that.kind
        && effect == that.effect
        && isImpossible == that.isImpossible
        && articles.equals(that.articles)
        && inSi.equals(that.inSi)
        && inUs.equals(that.inUs)
        && toDo.equals(that.toDo);
  }

  @Override
  public int hashCode() {
    return Objects.hash(kind, isImpossible, articles, inSi);
  }

  /** {@return kind, articles and what is wrong, in one line} */
  @Override
  public String toString() {
    return kind + " (" + String.join(", ", articles) + "): " + inSi;
  }
}
