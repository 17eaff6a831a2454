package org.airfit.working;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;

/**
 * The steps by which an answer was reached.
 *
 * <p>A working is complete by construction: every symbol of a step
 * is given or was found before, whatever is given or found is used or is the answer, and each result is what its
 * formula gives. A step left out is missed. Results have the digits that were asked for, mostly four, and where a step
 * below needs more of them they stand there with more. Where numbers are so small that a double keeps fewer digits of them
 * (below 2.2·10⁻³⁰⁸), the step stands there unchecked, and a sentence says so.
 *
 * <p>A working of one's own:
 *
 * <pre>{@code
 * import org.airfit.source.Source;
 * import org.airfit.working.Formula;
 * import org.airfit.working.Symbol;
 * import org.airfit.working.UnitSystem;
 * import org.airfit.working.ValueKind;
 * import org.airfit.working.Working;
 *
 * class AirInAReceiver {
 *   public static void main(String[] args) {
 *     Symbol pressure = Symbol.of("p", ValueKind.PRESSURE);
 *     Symbol constant = Symbol.of("R", ValueKind.HEAT_CAPACITY);
 *     Symbol temperature = Symbol.of("T", ValueKind.TEMPERATURE);
 *     Symbol density = Symbol.of("ρ", ValueKind.DENSITY);
 *     Formula gas = Formula.of(
 *         "Density",
 *         "⟨ρ⟩ = ⟨p⟩ / (⟨R⟩ × ⟨T⟩)",
 *         Source.handbook("ideal gas"),
 *         density,
 *         pressure,
 *         constant,
 *         temperature);
 *     Working working = Working.titled("Air in the receiver", UnitSystem.SI)
 *         .given(pressure, 800_000.0, 4)
 *         .given(constant, 287.05287, 5)
 *         .given(temperature, 293.15, 5)
 *         .step(gas, 800_000.0 / (287.05287 * 293.15), 4)
 *         .answer(density)
 *         .build();
 *     System.out.println(working.answers().size()); // 1
 *   }
 * }
 * }</pre>
 *
 * <p>This class is immutable and thread-safe.
 */
public final class Working {

  private static final String TOO_SMALL =
      "Numbers below 2.2e-308 have lost digits here: worked again by hand this step may give another result.";

  private final String title;
  private final UnitSystem units;
  private final List<Part> parts;
  private final List<Scope.Value> answers;

  /** What a working is made of: a step, a sentence, or the working of something it used. */
  private sealed interface Part {}

  private record Given(Symbol symbol, double value, int digits) implements Part {}

  /** A step with what it was made of. */
  private record Claimed(Formula formula, double value, int digits, CheckedStep.Made made)
      implements Part {}

  private record Said(String sentence) implements Part {}

  private record Used(Working working, List<Symbol> taken) implements Part {}

  private record Forgotten(List<Symbol> symbols) implements Part {}

  private record Answered(List<Symbol> symbols) implements Part {}

  private record AnsweredInWords(String sentence) implements Part {}

  private Working(String title, UnitSystem units, List<Part> parts, List<Scope.Value> answers) {
    this.title = title;
    this.units = units;
    this.parts = List.copyOf(parts);
    this.answers = List.copyOf(answers);
  }

  /**
   * Starts a working.
   *
   * @param title what is worked out
   * @param units the units to show numbers in
   * @return a builder without steps
   * @throws IllegalArgumentException if {@code title} is blank
   */
  public static Builder titled(String title, UnitSystem units) {
    Objects.requireNonNull(title, "title");
    return new Builder(
        Markup.requireProse(title, "title of a working"), Objects.requireNonNull(units, "units"));
  }

  /** {@return what is worked out} */
  public String title() {
    return title;
  }

  /** {@return the answers as printed, in the order they were named; none if it answers in words} */
  public List<Term> answers() {
    return answers.stream()
        .map(answer -> answer.symbol().term(answer.value(), answer.digits(), units))
        .toList();
  }

  /** The same without one of its own steps, counted from 0, made anew: to see that it is missed. */
  Working without(int step) {
    Builder builder = new Builder(title, units);
    int number = 0;
    for (Part part : parts) {
      if (!(part instanceof Claimed) || number++ != step) {
        builder.add(part);
      }
    }
    return builder.build();
  }

  /** How many steps of its own this has, made of formulas. */
  int ownSteps() {
    return (int) parts.stream().filter(part -> part instanceof Claimed).count();
  }

  List<Working> included() {
    List<Working> included = new ArrayList<>();
    for (Part part : parts) {
      if (part instanceof Used used) {
        included.add(used.working());
      }
    }
    return included;
  }

  private Page page() {
    List<Page.Item> items = new ArrayList<>();
    for (Part part : parts) {
      if (part instanceof Claimed claimed) {
        items.add(new Page.Equation(claimed.made().step()));
        if (claimed.made().tooSmall()) {
          items.add(new Page.Sentence(TOO_SMALL));
        }
      } else if (part instanceof Said said) {
        items.add(new Page.Sentence(said.sentence()));
      } else if (part instanceof AnsweredInWords answered) {
        items.add(new Page.Sentence(answered.sentence()));
      } else if (part instanceof Used used) {
        items.add(new Page.Included(used.working().page()));
      }
    }
    return new Page(title, items);
  }

  /** {@return all steps in order, those of included workings among them} */
  public List<Step> steps() {
    return page().steps();
  }

  /** {@return this working as plain text, one line to an equation, for a terminal or a printed sheet} */
  public String toText() {
    return PageWriter.text(page());
  }

  /** {@return this working as Markdown with formulas between dollar signs, for a notebook or a page} */
  public String toMarkdown() {
    return PageWriter.markdown(page());
  }

  /** {@return this working as a LaTeX fragment for a document that loads amsmath} */
  public String toLatex() {
    return PageWriter.latex(page());
  }

  /** {@return the plain text, as {@link #toText()} gives it} */
  @Override
  public String toString() {
    return toText();
  }

  /** Collects the steps of a working. Not thread-safe. */
  public static final class Builder {

    private final String title;
    private final UnitSystem units;
    private final Scope scope;
    private final List<Part> parts = new ArrayList<>();
    private final List<Scope.Value> answers = new ArrayList<>();
    private boolean answeredInWords;

    private Builder(String title, UnitSystem units) {
      this.title = title;
      this.units = units;
      this.scope = new Scope(title);
    }

    private void add(Part part) {
      if (part instanceof Given given) {
        given(given.symbol, given.value, given.digits);
      } else if (part instanceof Claimed claimed) {
        step(claimed.formula, claimed.value, claimed.digits);
      } else if (part instanceof Used used) {
        include(used.working, used.taken.toArray(new Symbol[0]));
      } else if (part instanceof Forgotten forgotten) {
        forget(forgotten.symbols.toArray(new Symbol[0]));
      } else if (part instanceof Answered answered) {
        answer(answered.symbols.toArray(new Symbol[0]));
      } else if (part instanceof AnsweredInWords answered) {
        answer(answered.sentence);
      } else {
        parts.add(part);
      }
    }

    /**
     * Gives a value that the steps below put in.
     *
     * @param symbol the symbol; a step may show it in another unit of the same quantity
     * @param value its value in the base of its kind, finite
     * @param digits the number of significant digits printed, but four at most: a number that six digits tell stands
     *     there as it was typed, and a step whose result needs more prints more
     * @return this builder
     * @throws IllegalArgumentException if {@code value} is not finite or {@code digits} is not in [1, 17]
     * @throws IllegalStateException if the symbol has a value
     */
    public Builder given(Symbol symbol, double value, int digits) {
      symbol.term(value, digits, units); // refuses what cannot be printed
      scope.bind(new Scope.Value(symbol, value, digits), Scope.Origin.GIVEN);
      parts.add(new Given(symbol, value, digits));
      return this;
    }

    /**
     * Adds a step: a formula of symbols given or found before, and the result that was computed.
     *
     * @param formula the formula
     * @param result the result computed, in the base of its kind, finite
     * @param digits the number of significant digits of it to print, from 1 to 17
     * @return this builder
     * @throws IllegalArgumentException if {@code result} is not finite or {@code digits} is out of range
     * @throws IllegalStateException if a symbol was not given or found before, if the result was, or if the formula
     *     gives another result: whoever made the working is wrong, not the data
     */
    public Builder step(Formula formula, double result, int digits) {
      return step(formula, result, digits, Scope.Origin.FOUND);
    }

    private Builder step(Formula formula, double result, int digits, Scope.Origin origin) {
      List<CheckedStep.Input> inputs = inputs(formula);
      int printed = PrintedDigits.ofResult(formula.result().kind(), result, digits);
      CheckedStep.Made made = CheckedStep.of(formula, units, inputs, result, printed);
      scope.bind(new Scope.Value(formula.result(), result, printed), origin);
      parts.add(new Claimed(formula, result, digits, made));
      return this;
    }

    private List<CheckedStep.Input> inputs(Formula formula) {
      List<CheckedStep.Input> inputs = new ArrayList<>();
      for (Symbol symbol : formula.inputs(units)) {
        inputs.add(scope.input(symbol, formula.what(), units));
      }
      return inputs;
    }

    /**
     * Adds a step of which only the working needs the result: the formula gives it. It is no answer.
     *
     * @param formula a formula whose result stands alone on the left
     * @param digits the number of significant digits of the result to print, from 1 to 17
     * @return this builder
     * @throws IllegalArgumentException if {@code digits} is out of range, or the result is not finite
     * @throws IllegalStateException if a symbol was not given or found before, if the result was, or if the formula
     *     is solved by trial
     */
    public Builder step(Formula formula, int digits) {
      Map<Symbol, Double> values = new HashMap<>();
      for (CheckedStep.Input input : inputs(formula)) {
        values.put(input.symbol(), input.value());
      }
      return step(formula, formula.evaluate(units, values), digits, Scope.Origin.BETWEEN);
    }

    /**
     * Ends the life of symbols, so that they may be given or found anew.
     *
     * @param symbols symbols given or found before, and used
     * @return this builder
     * @throws IllegalStateException if a symbol has no value or was not used
     */
    public Builder forget(Symbol... symbols) {
      for (Symbol symbol : symbols) {
        scope.forget(symbol);
      }
      parts.add(new Forgotten(List.of(symbols)));
      return this;
    }

    /**
     * Names what was asked: results of steps or of included workings.
     *
     * @param symbols one or more symbols found before
     * @return this builder
     * @throws IllegalStateException if a symbol was not found before
     */
    public Builder answer(Symbol... symbols) {
      for (Symbol symbol : symbols) {
        answers.add(scope.answer(symbol));
      }
      parts.add(new Answered(List.of(symbols)));
      return this;
    }

    /**
     * Answers in words, where there is nothing to calculate.
     *
     * @param sentence the answer, such as "Nothing flows, so nothing is lost."
     * @return this builder
     * @throws IllegalArgumentException if {@code sentence} is blank
     */
    public Builder answer(String sentence) {
      parts.add(new AnsweredInWords(Markup.requireProse(sentence, "answer of a working")));
      answeredInWords = true;
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
      parts.add(new Said(Markup.requireProse(sentence, "note in a working")));
      return this;
    }

    /**
     * Adds the working of something that was used. Its symbols are its own.
     *
     * @param working the other working, whole
     * @param taken the answers of it that steps below use, or that are the answer here too. One symbol that names
     *     none of them takes the only answer under its own name
     * @return this builder
     * @throws IllegalStateException if a symbol is no answer of {@code working}, or has a value here
     */
    public Builder include(Working working, Symbol... taken) {
      Objects.requireNonNull(working, "working");
      for (Symbol symbol : taken) {
        Scope.Value found = working.answerFor(symbol, taken.length);
        scope.bind(new Scope.Value(symbol, found.value(), found.digits()), Scope.Origin.FOUND);
      }
      parts.add(new Used(working, List.of(taken)));
      return this;
    }

    /**
     * {@return the working}
     *
     * @throws IllegalStateException if no answer was named, or something given or found is neither used nor the answer
     */
    public Working build() {
      if (answers.isEmpty() && !answeredInWords) {
        throw new IllegalStateException("\"" + title + "\" must name its answer");
      }
      scope.requireAllUsed();
      return new Working(title, units, parts, answers);
    }
  }

  /** The answer that a symbol names, or the only one. */
  private Scope.Value answerFor(Symbol symbol, int asked) {
    for (Scope.Value answer : answers) {
      if (answer.symbol().text().equals(symbol.text())) {
        return requireBase(answer, symbol);
      }
    }
    if (answers.size() != 1 || asked != 1) {
      throw new IllegalStateException(symbol + " must be an answer of \"" + title + "\"");
    }
    return requireBase(answers.get(0), symbol);
  }

  private Scope.Value requireBase(Scope.Value answer, Symbol symbol) {
    if (!answer.symbol().kind().base().equals(symbol.kind().base())) {
      throw new IllegalStateException(
          symbol + " must be in \"" + answer.symbol().kind().base() + "\" as in \"" + title
              + "\", was in \"" + symbol.kind().base() + "\"");
    }
    return answer;
  }
}
