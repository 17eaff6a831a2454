package org.airfit.working;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.airfit.source.Source;
import org.jspecify.annotations.Nullable;

/**
 * The steps by which an answer was reached.
 *
 * <p>A working {@linkplain #titled(String, UnitSystem) in units} is complete by construction: every symbol of a step
 * is given or was found before, whatever is given or found is used or is the answer, and each result is what its
 * formula gives. A step left out is missed.
 *
 * <pre>{@code
 * Working.titled("Velocity in the bore", units)
 *     .given(FLOW, massFlow.kilogramsPerSecond(), 8)
 *     .given(DENSITY, density.kilogramsPerCubicMetre(), 8)
 *     .given(BORE, bore.metres(), 8)
 *     .step(AREA_OF_BORE, area.squareMetres(), 6)     // ⟨A⟩ = π / 4 × ⟨D⟩²
 *     .step(VELOCITY_IN_BORE, velocity.metresPerSecond(), 4) // ⟨w⟩ = ⟨ṁ⟩ / (⟨ρ⟩ × ⟨A⟩)
 *     .answer(VELOCITY)
 *     .build();
 * }</pre>
 *
 * <p>This class is immutable and thread-safe.
 */
public final class Working {

  /** About as much LaTeX as fills a printed line. */
  private static final int MOST_SIGNS_OF_A_LINE = 120;

  private final String title;
  private final @Nullable UnitSystem units;
  private final List<Part> parts;
  private final List<Found> answers;

  /** What a working is made of: a step, a sentence, or the working of something it used. */
  private sealed interface Part {}

  private record Given(Symbol symbol, double value, int digits) implements Part {}

  private record Calculated(Step step) implements Part {}

  /** A step with what it was made of. */
  private record Claimed(Formula formula, double value, int digits, Step step) implements Part {}

  private record Said(String sentence) implements Part {}

  private record Used(Working working, List<Symbol> taken) implements Part {}

  private record Forgotten(List<Symbol> symbols) implements Part {}

  private record Answered(List<Symbol> symbols) implements Part {}

  private record AnsweredInWords(String sentence) implements Part {}

  /** A result: what it is worth, and how many digits of it are printed. */
  private record Found(Symbol symbol, double value, int digits) {}

  private Working(String title, @Nullable UnitSystem units, List<Part> parts, List<Found> answers) {
    this.title = title;
    this.units = units;
    this.parts = List.copyOf(parts);
    this.answers = List.copyOf(answers);
  }

  // Workings without units, with the LaTeX beside the text, stay until the last of them is written
  // as formulas.
  /**
   * Starts a working that is not checked for completeness.
   *
   * @param title what is worked out
   * @return a builder without steps
   * @throws IllegalArgumentException if {@code title} is blank
   */
  public static Builder titled(String title) {
    Objects.requireNonNull(title, "title");
    return new Builder(Markup.requireProse(title, "title of a working"), null);
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
    UnitSystem shown = units;
    return shown == null
        ? List.of()
        : answers.stream()
            .map(found -> found.symbol.term(found.value, found.digits, shown))
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

  private static @Nullable Step step(Part part) {
    if (part instanceof Claimed claimed) {
      return claimed.step();
    }
    return part instanceof Calculated calculated ? calculated.step() : null;
  }

  private static @Nullable String sentence(Part part) {
    if (part instanceof AnsweredInWords answered) {
      return answered.sentence();
    }
    return part instanceof Said said ? said.sentence() : null;
  }

  /** {@return all steps in order, those of included workings among them} */
  public List<Step> steps() {
    List<Step> steps = new ArrayList<>();
    for (Part part : parts) {
      Step step = step(part);
      if (step != null) {
        steps.add(step);
      } else if (part instanceof Used used) {
        steps.addAll(used.working().steps());
      }
    }
    return List.copyOf(steps);
  }

  /** {@return this working as plain text, one line to an equation, for a terminal or a printed sheet} */
  public String toText() {
    StringBuilder out = new StringBuilder();
    writeText(out, "");
    return out.toString();
  }

  private void writeText(StringBuilder out, String indent) {
    out.append(indent).append(title).append('\n');
    String inner = indent + "  ";
    for (Part part : parts) {
      Step step = step(part);
      String sentence = sentence(part);
      if (step != null) {
        String margin = " ".repeat(Markup.width(step.result().symbol()));
        out.append(inner).append(step.what()).append('\n');
        out.append(inner).append("  ").append(step.inSymbols()).append('\n');
        if (step.implicit()) {
          out.append(inner).append("  solved: ");
          out.append(step.result().symbol())
              .append(" = ")
              .append(step.result().quantity())
              .append('\n');
          out.append(inner).append("  check:  ").append(step.inNumbers()).append('\n');
        } else {
          out.append(inner)
              .append("  ")
              .append(margin)
              .append(" = ")
              .append(step.inNumbers())
              .append('\n');
          out.append(inner).append("  ").append(margin).append(" = ");
          out.append(step.result().quantity()).append('\n');
        }
        out.append(inner).append("  [").append(step.source()).append("]\n");
      } else if (sentence != null) {
        out.append(inner).append(sentence).append('\n');
      } else if (part instanceof Used used) {
        used.working().writeText(out, inner);
      }
    }
  }

  /** {@return this working as Markdown with formulas between dollar signs, for a notebook or a page} */
  public String toMarkdown() {
    StringBuilder out = new StringBuilder();
    writeMarkdown(out, 3);
    return out.toString();
  }

  private void writeMarkdown(StringBuilder out, int level) {
    out.append("#".repeat(Math.min(level, 6)))
        .append(' ')
        .append(Markup.markdown(title))
        .append("\n\n");
    for (Part part : parts) {
      Step step = step(part);
      String sentence = sentence(part);
      if (step != null) {
        out.append("**").append(Markup.markdown(step.what())).append("**\n\n");
        out.append("$$").append(step.latexInSymbols()).append("$$\n\n");
        out.append("$$").append(latexNumbers(step)).append("$$\n\n");
        out.append("*").append(Markup.markdown(step.source().toString())).append("*\n\n");
      } else if (sentence != null) {
        out.append(Markup.markdown(sentence)).append("\n\n");
      } else if (part instanceof Used used) {
        used.working().writeMarkdown(out, level + 1);
      }
    }
  }

  private static String latexNumbers(Step step) {
    String found = step.result().latex() + " = " + step.result().latexQuantity();
    return step.implicit()
        ? found + " \\quad\\text{check: } " + step.latexInNumbers()
        : step.result().latex() + " = " + step.latexInNumbers() + " = "
            + step.result().latexQuantity();
  }

  /** The same on two lines where one would not fit on a page. */
  private static String latexLines(Step step) {
    String numbers = step.latexInNumbers();
    if (numbers.length() <= MOST_SIGNS_OF_A_LINE) {
      return latexNumbers(step);
    }
    String result = step.result().latexQuantity();
    return step.implicit()
        ? step.result().latex() + " = " + result + " \\\\\n\\text{check: } " + numbers
        : step.result().latex() + " = " + numbers + " \\\\\n{} = " + result;
  }

  /** {@return this working as a LaTeX fragment for a document that loads amsmath} */
  public String toLatex() {
    StringBuilder out = new StringBuilder();
    writeLatex(out);
    return out.toString();
  }

  private void writeLatex(StringBuilder out) {
    out.append("\\paragraph{").append(Markup.latex(title)).append("}\n");
    for (Part part : parts) {
      Step step = step(part);
      String sentence = sentence(part);
      if (step != null) {
        out.append(Markup.latex(step.what()))
            .append(" (")
            .append(Markup.latex(step.source().toString()))
            .append("):\n");
        out.append("\\begin{gather*}\n").append(step.latexInSymbols()).append(" \\\\\n");
        out.append(latexLines(step)).append("\n\\end{gather*}\n");
      } else if (sentence != null) {
        out.append(Markup.latex(sentence)).append("\\par\n");
      } else if (part instanceof Used used) {
        used.working().writeLatex(out);
      }
    }
  }

  /** {@return the plain text, as {@link #toText()} gives it} */
  @Override
  public String toString() {
    return toText();
  }

  /** Collects the steps of a working. Not thread-safe. */
  public static final class Builder {

    /** Digits that an input has above those its value was printed with as a result. */
    private static final int MORE_DIGITS = 2;

    private final String title;
    private final @Nullable UnitSystem units;
    private final List<Part> parts = new ArrayList<>();
    private final Map<String, Binding> scope = new LinkedHashMap<>();
    private final List<Found> answers = new ArrayList<>();
    private boolean answeredInWords;

    /** A symbol with its value, from where it is given or found. */
    private static final class Binding {
      private final Found found;
      private final boolean given;
      private boolean used;

      /** Whether only the working needed it. */
      private boolean between;

      private Binding(Found found, boolean given) {
        this.found = found;
        this.given = given;
      }
    }

    private Builder(String title, @Nullable UnitSystem units) {
      this.title = title;
      this.units = units;
    }

    private UnitSystem requireUnits() {
      if (units == null) {
        throw new IllegalStateException("\"" + title + "\" must be started with its units");
      }
      return units;
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

    private void bind(Symbol symbol, double value, int digits, boolean given) {
      if (scope.containsKey(symbol.text())) {
        throw new IllegalStateException("a symbol must have one value in \"" + title + "\", "
            + symbol + " has two; forget the first where it ends");
      }
      scope.put(symbol.text(), new Binding(new Found(symbol, value, digits), given));
    }

    private Binding bound(Symbol symbol, String where) {
      Binding binding = scope.get(symbol.text());
      if (binding == null) {
        throw new IllegalStateException("every symbol must be given or found before, " + symbol
            + " of \"" + where + "\" was not");
      }
      String base = binding.found.symbol.kind().base();
      if (!base.equals(symbol.kind().base())) {
        throw new IllegalStateException(symbol + " of \"" + where + "\" must be in \"" + base
            + "\" as before, was in \"" + symbol.kind().base() + "\"");
      }
      binding.used = true;
      return binding;
    }

    /**
     * Gives a value that the steps below put in.
     *
     * @param symbol the symbol; a step may show it in another unit of the same quantity
     * @param value its value in the base of its kind, finite
     * @param digits the number of significant digits printed at least; a step whose result needs more prints more
     * @return this builder
     * @throws IllegalArgumentException if {@code value} is not finite or {@code digits} is not in [1, 17]
     * @throws IllegalStateException if the symbol has a value
     */
    public Builder given(Symbol symbol, double value, int digits) {
      symbol.term(value, digits, requireUnits()); // refuses what cannot be printed
      bind(symbol, value, digits, true);
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
      UnitSystem shown = requireUnits();
      List<CheckedStep.Input> inputs = new ArrayList<>();
      for (Symbol symbol : formula.inputs(shown)) {
        Found found = bound(symbol, formula.what()).found;
        inputs.add(new CheckedStep.Input(symbol, found.value, printedDigits(symbol)));
      }
      Step step = CheckedStep.of(formula, shown, inputs, result, digits);
      bind(formula.result(), result, digits, false);
      parts.add(new Claimed(formula, result, digits, step));
      return this;
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
      UnitSystem shown = requireUnits();
      Map<Symbol, Double> values = new HashMap<>();
      for (Symbol symbol : formula.inputs(shown)) {
        values.put(symbol, bound(symbol, formula.what()).found.value);
      }
      step(formula, formula.evaluate(shown, values), digits);
      Objects.requireNonNull(scope.get(formula.result().text())).between = true;
      return this;
    }

    private int printedDigits(Symbol symbol) {
      Binding binding = Objects.requireNonNull(scope.get(symbol.text()));
      return binding.given
          ? binding.found.digits
          : Math.min(17, binding.found.digits + MORE_DIGITS);
    }

    /**
     * Ends the life of symbols, so that they may be given or found anew.
     *
     * @param symbols symbols given or found before, and used
     * @return this builder
     * @throws IllegalStateException if a symbol has no value or was not used
     */
    public Builder forget(Symbol... symbols) {
      requireUnits();
      for (Symbol symbol : symbols) {
        Binding binding = scope.remove(symbol.text());
        if (binding == null || !binding.used) {
          throw new IllegalStateException("a symbol must be used before it is forgotten in \""
              + title + "\", " + symbol + " was not");
        }
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
      requireUnits();
      for (Symbol symbol : symbols) {
        Binding binding = bound(symbol, title);
        if (binding.given) {
          throw new IllegalStateException(
              "an answer must be found by a step, " + symbol + " of \"" + title + "\" was given");
        }
        if (binding.between) {
          throw new IllegalStateException("an answer must be computed by its owner, " + symbol
              + " of \"" + title + "\" is only what its formula gives");
        }
        answers.add(new Found(symbol, binding.found.value, binding.found.digits));
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
      requireUnits();
      parts.add(new AnsweredInWords(Markup.requireProse(sentence, "answer of a working")));
      answeredInWords = true;
      return this;
    }

    // This and solved stay until the last working with LaTeX beside the text is written as
    // formulas.
    /**
     * Adds a step whose result stands alone on the left.
     *
     * @param what what the step finds
     * @param equation the equation in plain text with its symbols in angle brackets
     * @param latex the same equation in LaTeX with the same symbols in angle brackets
     * @param given the symbols put in
     * @param result the symbol found
     * @param source where the equation comes from
     * @return this builder
     * @throws IllegalArgumentException if the equation and its terms do not fit, as {@link Step} tells
     */
    public Builder step(
        String what, String equation, String latex, List<Term> given, Term result, Source source) {
      parts.add(new Calculated(new Step(what, equation, latex, given, result, false, source)));
      return this;
    }

    /**
     * Adds a step whose result was found by trial, and is checked by putting it in.
     *
     * @param what what the step finds
     * @param equation the equation in plain text with its symbols in angle brackets
     * @param latex the same equation in LaTeX with the same symbols in angle brackets
     * @param given the symbols put in
     * @param result the symbol found, which the equation may hold anywhere
     * @param source where the equation comes from
     * @return this builder
     * @throws IllegalArgumentException if the equation and its terms do not fit, as {@link Step} tells
     */
    public Builder solved(
        String what, String equation, String latex, List<Term> given, Term result, Source source) {
      parts.add(new Calculated(new Step(what, equation, latex, given, result, true, source)));
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
        requireUnits();
        Found found = working.answerFor(symbol, taken.length);
        bind(symbol, found.value, found.digits, false);
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
      if (units != null) {
        if (answers.isEmpty() && !answeredInWords) {
          throw new IllegalStateException("\"" + title + "\" must name its answer");
        }
        scope.forEach((text, binding) -> {
          if (!binding.used) {
            throw new IllegalStateException("what is " + (binding.given ? "given" : "found")
                + " must be used or be the answer in \"" + title + "\", " + text + " is not");
          }
        });
      }
      return new Working(title, units, parts, answers);
    }
  }

  /** The answer that a symbol names, or the only one. */
  private Found answerFor(Symbol symbol, int asked) {
    for (Found answer : answers) {
      if (answer.symbol.text().equals(symbol.text())) {
        return requireBase(answer, symbol);
      }
    }
    if (answers.size() != 1 || asked != 1) {
      throw new IllegalStateException(symbol + " must be an answer of \"" + title + "\"");
    }
    return requireBase(answers.get(0), symbol);
  }

  private Found requireBase(Found answer, Symbol symbol) {
    if (!answer.symbol.kind().base().equals(symbol.kind().base())) {
      throw new IllegalStateException(
          symbol + " must be in \"" + answer.symbol.kind().base() + "\" as in \"" + title
              + "\", was in \"" + symbol.kind().base() + "\"");
    }
    return answer;
  }
}
