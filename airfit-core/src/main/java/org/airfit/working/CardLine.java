package org.airfit.working;

import java.util.Objects;

/**
 * One line of a pencil card: a heading, a step with its numbers put in, a number read off a figure, or a sentence.
 *
 * <p>Only a {@link PencilCard.Builder} makes one. This class is immutable, thread-safe and value-based.
 */
public final class CardLine {

  /** What a line is. */
  public enum Kind {
    /** The name of what the lines below are about. */
    HEADING,
    /** A step that is worked out. */
    STEP,
    /** A number that is read off a figure. */
    READING,
    /** A sentence. */
    NOTE
  }

  private final Kind kind;
  private final String what;
  private final String symbols;
  private final String numbers;
  private final String result;

  private CardLine(Kind kind, String what, String symbols, String numbers, String result) {
    this.kind = kind;
    this.what = Markup.requireProse(what, "line of a card");
    this.symbols = symbols;
    this.numbers = numbers;
    this.result = result;
  }

  static CardLine heading(String what) {
    return new CardLine(Kind.HEADING, what, "", "", "");
  }

  static CardLine note(String sentence) {
    return new CardLine(Kind.NOTE, sentence, "", "", "");
  }

  static CardLine step(Step step) {
    return new CardLine(
        Kind.STEP,
        step.what(),
        step.inSymbols(),
        step.inBareNumbers(),
        step.result().quantity());
  }

  static CardLine reading(String what, Term from, Term to, int figure, String curve) {
    return new CardLine(
        Kind.READING,
        what,
        to.symbol() + " from figure " + figure + ", curve " + curve,
        "at " + from.symbol() + " = " + from.quantity(),
        to.quantity());
  }

  /** {@return what this line is} */
  public Kind kind() {
    return kind;
  }

  /** {@return what is found, or the heading or sentence itself} */
  public String what() {
    return what;
  }

  /** {@return the equation in symbols, such as "k = 1000 × λ × L / D + ΣK"; empty for a heading or a sentence} */
  public String symbols() {
    return symbols;
  }

  /** {@return the same with numbers put in, without units and the left side; empty for a heading or a sentence} */
  public String numbers() {
    return numbers;
  }

  /** {@return what comes out, as it is carried on, such as "26.4"; empty for a heading or a sentence} */
  public String result() {
    return result;
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof CardLine that
        && kind == that.kind
        && what.equals(that.what)
        && symbols.equals(that.symbols)
        && numbers.equals(that.numbers)
        && result.equals(that.result);
  }

  @Override
  public int hashCode() {
    return Objects.hash(kind, what, symbols, numbers, result);
  }

  /** {@return the line as it stands on a terminal, such as "Resistance: k = 1000 × λ × L / D + ΣK = … = 26.4"} */
  @Override
  public String toString() {
    return switch (kind) {
      case HEADING, NOTE -> what;
      case STEP -> what + ": " + symbols + " = " + numbers + " = " + result;
      case READING -> what + ": " + symbols + " " + numbers + ": " + result;
    };
  }
}
