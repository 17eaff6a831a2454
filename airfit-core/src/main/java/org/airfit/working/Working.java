package org.airfit.working;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.airfit.source.Source;

/**
 * The steps by which an answer was reached.
 *
 * <p>This class is immutable and thread-safe.
 */
public final class Working {

  /** About as much LaTeX as fills a printed line. */
  private static final int MOST_SIGNS_OF_A_LINE = 120;

  private final String title;
  private final List<Part> parts;

  /** What a working is made of: a step, a sentence, or the working of something it used. */
  private sealed interface Part {}

  private record Calculated(Step step) implements Part {}

  private record Said(String sentence) implements Part {}

  private record Used(Working working) implements Part {}

  private Working(String title, List<Part> parts) {
    this.title = title;
    this.parts = List.copyOf(parts);
  }

  /**
   * Starts a working.
   *
   * @param title what is worked out
   * @return a builder without steps
   * @throws IllegalArgumentException if {@code title} is blank
   */
  public static Builder titled(String title) {
    return new Builder(Markup.requireProse(title, "title of a working"));
  }

  /** {@return what is worked out} */
  public String title() {
    return title;
  }

  /** {@return all steps in order, those of included workings among them} */
  public List<Step> steps() {
    List<Step> steps = new ArrayList<>();
    for (Part part : parts) {
      if (part instanceof Calculated calculated) {
        steps.add(calculated.step());
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
      if (part instanceof Calculated calculated) {
        Step step = calculated.step();
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
      } else if (part instanceof Said said) {
        out.append(inner).append(said.sentence()).append('\n');
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
      if (part instanceof Calculated calculated) {
        Step step = calculated.step();
        out.append("**").append(Markup.markdown(step.what())).append("**\n\n");
        out.append("$$").append(step.latexInSymbols()).append("$$\n\n");
        out.append("$$").append(latexNumbers(step)).append("$$\n\n");
        out.append("*").append(Markup.markdown(step.source().toString())).append("*\n\n");
      } else if (part instanceof Said said) {
        out.append(Markup.markdown(said.sentence())).append("\n\n");
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
      if (part instanceof Calculated calculated) {
        Step step = calculated.step();
        out.append(Markup.latex(step.what()))
            .append(" (")
            .append(Markup.latex(step.source().toString()))
            .append("):\n");
        out.append("\\begin{gather*}\n").append(step.latexInSymbols()).append(" \\\\\n");
        out.append(latexLines(step)).append("\n\\end{gather*}\n");
      } else if (part instanceof Said said) {
        out.append(Markup.latex(said.sentence())).append("\\par\n");
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

    private final String title;
    private final List<Part> parts = new ArrayList<>();

    private Builder(String title) {
      this.title = title;
    }

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
     * Adds the working of something that was used.
     *
     * @param working the other working, whole
     * @return this builder
     */
    public Builder include(Working working) {
      parts.add(new Used(Objects.requireNonNull(working, "working")));
      return this;
    }

    /** {@return the working} */
    public Working build() {
      return new Working(title, parts);
    }
  }
}
