package org.airfit.working;

/** Writes a page as plain text, as Markdown and as LaTeX. */
final class PageWriter {

  /** About as much LaTeX as fills a printed line. */
  private static final int MOST_SIGNS_OF_A_LINE = 120;

  private PageWriter() {}

  /** One line to an equation. */
  static String text(Page page) {
    StringBuilder out = new StringBuilder();
    writeText(page, out, "");
    return out.toString();
  }

  private static void writeText(Page page, StringBuilder out, String indent) {
    out.append(indent).append(page.title()).append('\n');
    String inner = indent + "  ";
    for (Page.Item item : page.items()) {
      if (item instanceof Page.Equation equation) {
        writeText(equation.step(), out, inner);
      } else if (item instanceof Page.Sentence sentence) {
        out.append(inner).append(sentence.text()).append('\n');
      } else if (item instanceof Page.Included included) {
        writeText(included.page(), out, inner);
      }
    }
  }

  private static void writeText(Step step, StringBuilder out, String indent) {
    String result = step.result().symbol();
    String quantity = step.result().quantity();
    String inner = indent + "  ";
    out.append(indent).append(step.what()).append('\n');
    out.append(inner).append(step.inSymbols()).append('\n');
    if (step.implicit()) {
      out.append(inner).append("solved: ").append(result).append(" = ").append(quantity);
      out.append('\n');
      out.append(inner).append("check:  ").append(step.inNumbers()).append('\n');
    } else {
      String margin = inner + " ".repeat(Markup.width(result));
      out.append(margin).append(" = ").append(step.inNumbers()).append('\n');
      out.append(margin).append(" = ").append(quantity).append('\n');
    }
    out.append(inner).append("[").append(step.source()).append("]\n");
  }

  /** Formulas between dollar signs, the title as a heading of the third level. */
  static String markdown(Page page) {
    StringBuilder out = new StringBuilder();
    writeMarkdown(page, out, 3);
    return out.toString();
  }

  private static void writeMarkdown(Page page, StringBuilder out, int level) {
    out.append("#".repeat(Math.min(level, 6)))
        .append(' ')
        .append(Markup.markdown(page.title()))
        .append("\n\n");
    for (Page.Item item : page.items()) {
      if (item instanceof Page.Equation equation) {
        Step step = equation.step();
        out.append("**").append(Markup.markdown(step.what())).append("**\n\n");
        out.append("$$").append(step.latexInSymbols()).append("$$\n\n");
        out.append("$$").append(latexNumbers(step)).append("$$\n\n");
        out.append("*").append(Markup.markdown(step.source().toString())).append("*\n\n");
      } else if (item instanceof Page.Sentence sentence) {
        out.append(Markup.markdown(sentence.text())).append("\n\n");
      } else if (item instanceof Page.Included included) {
        writeMarkdown(included.page(), out, level + 1);
      }
    }
  }

  /** A fragment for a document that loads amsmath. */
  static String latex(Page page) {
    StringBuilder out = new StringBuilder();
    writeLatex(page, out);
    return out.toString();
  }

  private static void writeLatex(Page page, StringBuilder out) {
    out.append("\\paragraph{").append(Markup.latex(page.title())).append("}\n");
    for (Page.Item item : page.items()) {
      if (item instanceof Page.Equation equation) {
        Step step = equation.step();
        out.append(Markup.latex(step.what()))
            .append(" (")
            .append(Markup.latex(step.source().toString()))
            .append("):\n");
        out.append("\\begin{gather*}\n").append(step.latexInSymbols()).append(" \\\\\n");
        out.append(latexLines(step)).append("\n\\end{gather*}\n");
      } else if (item instanceof Page.Sentence sentence) {
        out.append(Markup.latex(sentence.text())).append("\\par\n");
      } else if (item instanceof Page.Included included) {
        writeLatex(included.page(), out);
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
}
