package org.airfit.working;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.airfit.internal.Digits;

/**
 * An answer that is worked out again with a pencil, a ruler and a pocket calculator: rounded values, steps of at most
 * six operations, figures to read from, and how far the result can be from the exact one.
 *
 * <p>The distance is proved, for whoever keeps to what {@link #rules} states: within a step all digits of a pocket
 * calculator are kept, its result is carried with {@link #DIGITS} digits, four where the first is 1, rounded or cut
 * off, so that it is off by at most one unit of the last of them; a figure is read to {@link ChartAxis#READING} mm on
 * either axis. The given numbers are taken as they are printed. For each step all results that such a reader can come
 * to are enclosed by interval arithmetic with outward rounding; a symbol that stands in an equation more than once is
 * cut into pieces. The exact answer is one number. So whatever the card leaves out of the exact calculation is part of
 * the distance.
 *
 * <p>A card of one step:
 *
 * <pre>{@code
 * import org.airfit.source.Source;
 * import org.airfit.working.Formula;
 * import org.airfit.working.PencilCard;
 * import org.airfit.working.Symbol;
 * import org.airfit.working.UnitSystem;
 * import org.airfit.working.ValueKind;
 *
 * class BehindTheFilter {
 *   public static void main(String[] args) {
 *     Symbol in = Symbol.of("p1", ValueKind.PRESSURE);
 *     Symbol drop = Symbol.of("Δp", ValueKind.PRESSURE);
 *     Symbol out = Symbol.of("p2", ValueKind.PRESSURE);
 *     Formula behind = Formula.of(
 *         "Pressure behind", "⟨p2⟩ = ⟨p1⟩ − ⟨Δp⟩", Source.handbook("balance of pressures"), out, in, drop);
 *     PencilCard card = PencilCard.titled("Pressure behind the filter", UnitSystem.SI)
 *         .given(in, 7.314e5)
 *         .given(drop, 0.2164e5)
 *         .step(behind)
 *         .answer(out, 7.0976e5)
 *         .build();
 *     System.out.println(card.answers().get(0).apart().isPresent()); // true
 *   }
 * }
 * }</pre>
 *
 * <p>This class is immutable and thread-safe.
 */
public final class PencilCard {

  /** So many operations a step takes at most. */
  public static final int MOST_OPERATIONS = 6;

  /** So many digits are carried, one more where the first is 1, as on a slide rule; common practice, no source. */
  public static final int DIGITS = 3;

  private final String title;
  private final UnitSystem units;
  private final List<Term> given;
  private final List<CardLine> lines;
  private final List<PencilChart> charts;
  private final List<CardTable> tables;
  private final List<CardAnswer> answers;
  private final List<String> answersInWords;

  private PencilCard(Builder builder) {
    this.title = builder.title;
    this.units = builder.units;
    this.given = List.copyOf(builder.given);
    this.lines = List.copyOf(builder.lines);
    this.charts = List.copyOf(builder.charts);
    this.tables = List.copyOf(builder.tables);
    this.answers = List.copyOf(builder.answers);
    this.answersInWords = List.copyOf(builder.answersInWords);
  }

  /**
   * Starts a card.
   *
   * @param title what is worked out
   * @param units the units to show numbers in
   * @return a builder without steps
   * @throws IllegalArgumentException if {@code title} is blank
   */
  public static Builder titled(String title, UnitSystem units) {
    Objects.requireNonNull(title, "title");
    return new Builder(
        Markup.requireProse(title, "title of a card"), Objects.requireNonNull(units, "units"));
  }

  /** {@return what is worked out} */
  public String title() {
    return title;
  }

  /** {@return the units of its numbers} */
  public UnitSystem units() {
    return units;
  }

  /** {@return the numbers it begins with, rounded} */
  public List<Term> given() {
    return given;
  }

  /** {@return its lines, from top to bottom} */
  public List<CardLine> lines() {
    return lines;
  }

  /** {@return its figures; the first is figure 1} */
  public List<PencilChart> charts() {
    return charts;
  }

  /** {@return its tables} */
  public List<CardTable> tables() {
    return tables;
  }

  /** {@return what it comes to, in numbers; none for a card that answers in words} */
  public List<CardAnswer> answers() {
    return answers;
  }

  /** {@return what it comes to, in sentences: the distance of each number, or what a table leaves} */
  public List<String> inWords() {
    List<String> all = new ArrayList<>();
    answers.forEach(answer -> all.add(answer.inWords()));
    all.addAll(answersInWords);
    return List.copyOf(all);
  }

  /** {@return what a reader must keep to so that the distances hold, in sentences} */
  public List<String> rules() {
    List<String> rules = new ArrayList<>();
    rules.add("Within a step keep all digits of a pocket calculator; of its result carry " + DIGITS
        + " digits, 4 where the first is 1; round, or cut off.");
    if (!charts.isEmpty()) {
      rules.add("Read a figure to " + Digits.significant(ChartAxis.READING, 2) + " mm"
          + units.either("", ", or 1/64 in,") + " on either axis.");
    }
    rules.add(
        "Every result that a reader can come to so is enclosed by interval arithmetic, step by"
            + " step. How well the numbers given are known is no part of it.");
    return List.copyOf(rules);
  }

  /** {@return the card as plain text, without its figures} */
  public String toText() {
    StringBuilder out = new StringBuilder(title).append("\n\n");
    if (!given.isEmpty()) {
      out.append("Given:\n");
      given.forEach(term -> out.append("  ").append(term).append('\n'));
    }
    for (CardLine line : lines) {
      out.append(line.kind() == CardLine.Kind.HEADING ? "\n" : "  ")
          .append(line)
          .append('\n');
    }
    for (int i = 0; i < charts.size(); i++) {
      out.append("\nFigure ")
          .append(i + 1)
          .append(", to read from: ")
          .append(charts.get(i).title());
      out.append('\n');
    }
    for (CardTable table : tables) {
      out.append('\n').append(table).append('\n');
    }
    out.append('\n');
    inWords().forEach(answer -> out.append(answer).append('\n'));
    rules().forEach(rule -> out.append("  ").append(rule).append('\n'));
    return out.toString();
  }

  /** {@return the card as plain text, without its figures} */
  @Override
  public String toString() {
    return toText();
  }

  /** Collects the lines of a card. Not thread-safe. */
  public static final class Builder {

    /** A number of so many whole digits is written out. */
    private static final int LONGEST = 9;

    private final String title;
    private final UnitSystem units;
    private final List<Term> given = new ArrayList<>();
    private final List<CardLine> lines = new ArrayList<>();
    private final List<PencilChart> charts = new ArrayList<>();
    private final List<CardTable> tables = new ArrayList<>();
    private final List<CardAnswer> answers = new ArrayList<>();
    private final List<String> answersInWords = new ArrayList<>();
    private final Map<String, Known> known = new HashMap<>();

    /** A number of the card in the unit printed, what it may be with another reader, and how it is printed. */
    private record Known(double shown, Interval possible, Term term, ValueKind kind) {}

    private Builder(String title, UnitSystem units) {
      this.title = title;
      this.units = units;
    }

    /**
     * Gives a value, rounded as all numbers of the card.
     *
     * @param symbol the symbol
     * @param value its value in the base of its kind, finite
     * @return this builder
     * @throws IllegalArgumentException if {@code value} is not finite
     * @throws IllegalStateException if the symbol has a value
     */
    public Builder given(Symbol symbol, double value) {
      return given(symbol, value, DIGITS);
    }

    /**
     * Gives a value with more digits than the rest, as a gauge shows it.
     *
     * @param symbol the symbol
     * @param value its value in the base of its kind, finite
     * @param digits the significant digits printed, one more where the first is 1, in [1, 12]
     * @return this builder
     * @throws IllegalArgumentException if {@code value} is not finite or {@code digits} is out of range
     * @throws IllegalStateException if the symbol has a value
     */
    public Builder given(Symbol symbol, double value, int digits) {
      if (!(digits >= 1 && digits <= 12)) {
        throw new IllegalArgumentException("digits must be in [1, 12], was " + digits);
      }
      Term term = printed(
          Objects.requireNonNull(symbol, "symbol"), symbol.kind().shown(value, units), digits);
      double shown = Double.parseDouble(term.value());
      know(symbol, new Known(shown, Interval.ofPrinted(shown), term, symbol.kind()));
      given.add(term);
      return this;
    }

    /** A number with the digits that are carried, zeros at its end too; large ones are written out. */
    private Term printed(Symbol symbol, double shown, int digits) {
      int carried = carried(shown, digits);
      double rounded = Double.parseDouble(Digits.rounded(shown, carried));
      int whole = rounded == 0.0 ? 1 : 1 + (int) Math.floor(Math.log10(Math.abs(rounded)));
      boolean isLong = whole > carried && whole <= LONGEST;
      return Term.of(
          symbol.text(),
          symbol.latex(),
          isLong ? rounded : shown,
          symbol.kind().unit(units),
          isLong ? whole : carried);
    }

    /** One digit more where the first is 1. */
    private static int carried(double value, int digits) {
      if (value == 0.0) {
        return digits;
      }
      double first = Math.abs(value) / Math.pow(10.0, Math.floor(Math.log10(Math.abs(value))));
      return first < 2.0 ? digits + 1 : digits;
    }

    /** One unit of the last digit carried of any number of an interval: it grows with the number's size. */
    private static double lastDigit(Interval values) {
      double size = Math.max(Math.abs(values.lo()), Math.abs(values.hi()));
      if (size == 0.0) {
        return 0.0;
      }
      int exponent = (int) Math.floor(Math.log10(size) + 1.0e-12);
      return Math.pow(10.0, exponent - carried(size * (1.0 + 1.0e-12), DIGITS) + 1);
    }

    private void know(Symbol symbol, Known value) {
      if (known.put(symbol.text(), value) != null) {
        throw new IllegalStateException(
            "a symbol must have one value in \"" + title + "\", " + symbol + " has two");
      }
    }

    private Known known(String symbol) {
      Known value = known.get(symbol);
      if (value == null) {
        throw new IllegalStateException("every symbol must be given or found before in \"" + title
            + "\", " + symbol + " is not");
      }
      return value;
    }

    /**
     * Adds a heading.
     *
     * @param text what the lines below are about
     * @return this builder
     * @throws IllegalArgumentException if {@code text} is blank
     */
    public Builder heading(String text) {
      lines.add(CardLine.heading(Objects.requireNonNull(text, "text")));
      return this;
    }

    /**
     * Adds a sentence.
     *
     * @param sentence what a reader must know at this place
     * @return this builder
     * @throws IllegalArgumentException if {@code sentence} is blank
     */
    public Builder note(String sentence) {
      lines.add(CardLine.note(Objects.requireNonNull(sentence, "sentence")));
      return this;
    }

    /**
     * Adds a step: a formula of symbols given or found before. Its result is worked out with the rounded numbers, and
     * rounded.
     *
     * @param formula a formula whose result stands alone on the left
     * @return this builder
     * @throws IllegalStateException if a symbol has no value or the result has one, if the formula takes more than six
     *     operations or is solved by trial, or if it has no result for the numbers of the card
     */
    public Builder step(Formula formula) {
      Objects.requireNonNull(formula, "formula");
      if (formula.isSolved() || formula.operations(units) > MOST_OPERATIONS) {
        throw new IllegalStateException("a step of a card must be worked out in at most "
            + MOST_OPERATIONS + " operations, \"" + formula.toText(units)
            + "\" must be split into named steps");
      }
      Map<String, Double> shown = new HashMap<>();
      Map<String, Interval> possible = new HashMap<>();
      List<Term> terms = new ArrayList<>();
      boolean isThere = true;
      for (Symbol symbol : formula.inputs(units)) {
        Known value = known(symbol.text());
        if (!value.kind.equals(symbol.kind())) {
          throw new IllegalStateException("a symbol must have one unit on a card, " + symbol
              + " of \"" + formula + "\" has two");
        }
        shown.put(symbol.text(), value.shown);
        possible.put(symbol.text(), value.possible);
        terms.add(value.term);
        isThere &= value.possible.isThere();
      }
      double found = formula.right(units, shown);
      if (!Double.isFinite(found)) {
        throw new IllegalStateException(
            "\"" + formula + "\" must have a result for the numbers of the card, had none");
      }
      Interval results = isThere ? formula.bounds(units, possible) : Interval.NONE;
      Known result = carriedOn(formula.result(), found, results);
      know(formula.result(), result);
      lines.add(CardLine.step(new Step(formula, units, terms, result.term)));
      return this;
    }

    private Known carriedOn(Symbol symbol, double found, Interval results) {
      Term printed = printed(symbol, found, DIGITS);
      int digits = carried(found, DIGITS);
      boolean isLong = Math.abs(Double.parseDouble(printed.value())) >= Math.pow(10.0, digits);
      Term term = isLong ? printed : printed.padded(digits);
      Interval carried = results.isThere() ? results.widened(lastDigit(results)) : Interval.NONE;
      return new Known(Double.parseDouble(term.value()), carried, term, symbol.kind());
    }

    /**
     * Adds a number read off a figure.
     *
     * @param what what is found, such as "Friction factor"
     * @param chart the figure; it is shown once, however often it is read
     * @param curve the curve of it
     * @param from the symbol of the lower axis, given or found before
     * @param to the symbol that is read
     * @return this builder
     * @throws IllegalArgumentException if the figure has no such curve, or {@code what} is blank
     * @throws IllegalStateException if {@code from} has no value, or {@code to} has one
     */
    public Builder read(String what, PencilChart chart, String curve, Symbol from, Symbol to) {
      Objects.requireNonNull(what, "what");
      Objects.requireNonNull(chart, "chart");
      Objects.requireNonNull(curve, "curve");
      Known at = known(Objects.requireNonNull(from, "from").text());
      double found = chart.read(curve, at.shown);
      Known result =
          carriedOn(Objects.requireNonNull(to, "to"), found, chart.read(curve, at.possible));
      know(to, result);
      if (!charts.contains(chart)) {
        charts.add(chart);
      }
      lines.add(CardLine.reading(what, at.term, result.term, 1 + charts.indexOf(chart), curve));
      return this;
    }

    /**
     * Compares a number of the card with two limits: these get as many decimals as the comparison needs to turn out as
     * that of the exact numbers.
     *
     * @param symbol the number, given or found before
     * @param exact its exact value in the base of its kind
     * @param least the exact lower limit in the base of its kind
     * @param most the exact upper limit in the base of its kind, not below {@code least}
     * @param decimals the decimals of the limits at least, in the unit printed, in [0, 7]
     * @return the limits as printed, and whether the number lies between them
     * @throws IllegalArgumentException if {@code most} is below {@code least}, a number is not finite or
     *     {@code decimals} is out of range
     * @throws IllegalStateException if the symbol has no value
     */
    public CardComparison compare(
        Symbol symbol, double exact, double least, double most, int decimals) {
      if (!(least <= most
          && Double.isFinite(exact)
          && Double.isFinite(least)
          && Double.isFinite(most))) {
        throw new IllegalArgumentException(
            "limits must be finite, the upper not below the lower, were " + Digits.told(least)
                + " and " + Digits.told(most) + " for " + Digits.told(exact));
      }
      if (!(decimals >= 0 && decimals <= 7)) {
        throw new IllegalArgumentException("decimals must be in [0, 7], was " + decimals);
      }
      Known value = known(Objects.requireNonNull(symbol, "symbol").text());
      return CardComparison.of(
          value.possible,
          value.kind.shown(exact, units),
          value.kind.shown(least, units),
          value.kind.shown(most, units),
          decimals);
    }

    /**
     * Adds a table.
     *
     * @param table the table
     * @return this builder
     */
    public Builder table(CardTable table) {
      tables.add(Objects.requireNonNull(table, "table"));
      return this;
    }

    /**
     * Names a result of the card.
     *
     * @param symbol a symbol given or found before
     * @param exact the exact answer in the base of its kind
     * @return this builder
     * @throws IllegalArgumentException if {@code exact} is not finite
     * @throws IllegalStateException if the symbol has no value
     */
    public Builder answer(Symbol symbol, double exact) {
      if (!Double.isFinite(exact)) {
        throw new IllegalArgumentException("exact answer must be finite, was " + exact);
      }
      Known value = known(Objects.requireNonNull(symbol, "symbol").text());
      answers.add(new CardAnswer(value.term, value.kind.shown(exact, units), value.possible));
      return this;
    }

    /**
     * Answers in words, as a table does.
     *
     * @param sentence the answer
     * @return this builder
     * @throws IllegalArgumentException if {@code sentence} is blank
     */
    public Builder answer(String sentence) {
      Objects.requireNonNull(sentence, "sentence");
      answersInWords.add(Markup.requireProse(sentence, "answer of a card"));
      return this;
    }

    /**
     * Says of the comparisons of the card whether they turn out the same with exact numbers.
     *
     * @param unsettled how many lie so near to a limit that rounding settles them, as the tables tell
     * @return this builder
     * @throws IllegalArgumentException if {@code unsettled} is below 0
     */
    public Builder answerOfComparisons(int unsettled) {
      if (unsettled < 0) {
        throw new IllegalArgumentException(
            "comparisons that rounding settles must be at least 0, were " + unsettled);
      }
      return answer(
          unsettled == 0
              ? "With exact numbers each comparison of the table turns out the same: proved for"
                  + " every reader of the card."
              : "Of the comparisons " + unsettled
                  + " lie so near to a limit that rounding settles them; the table tells which. All"
                  + " others turn out the same with exact numbers.");
    }

    /**
     * {@return the card}
     *
     * @throws IllegalStateException if no answer was named
     */
    public PencilCard build() {
      if (answers.isEmpty() && answersInWords.isEmpty()) {
        throw new IllegalStateException("\"" + title + "\" must name its answer");
      }
      return new PencilCard(this);
    }
  }
}
