package org.airfit.jobsheet;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.airfit.working.Step;
import org.airfit.working.Term;
import org.airfit.working.Working;

/**
 * A working as lines of a page, the index of every symbol of its formulas set low. What is longer than a line goes on
 * under its beginning, and a step is not parted by the end of a side.
 */
final class WorkingHtml {

  /** The index of a symbol in LaTeX: one sign, or several in braces. */
  private static final Pattern INDEX = Pattern.compile("_(?:\\{([^{}]*)\\}|(\\S))");

  /** So many letters in from its beginning goes on what is longer than a line. */
  private static final int HANGING = 4;

  /** Where a step stands already. */
  private static final int SETTLED = -9;

  /** Letters and digits, raised and lowered ones and fractions too; a browser has no class of all of them. */
  private static final String WORD =
      "\\p{javaLetterOrDigit}_\\u00b2\\u00b3\\u00b9\\u00bc-\\u00be\\u2070-\\u2089";

  /** What a symbol does not begin behind. */
  private static final Pattern JOINED = Pattern.compile("[" + WORD + ".&/]");

  private WorkingHtml() {}

  /** The working; its lines and the sources of its equations have places that links lead to. */
  static String of(Working working, WorkingLinks links) {
    String text = working.toText();
    return lines(text.split("\n"), symbols(working, text).split("\n"), links);
  }

  private static String symbols(Working working, String told) {
    Map<String, String> symbols = new TreeMap<>();
    for (Step step : working.steps()) {
      List<Term> terms = new ArrayList<>(step.given());
      terms.add(step.result());
      terms.forEach(term -> low(term, symbols));
    }
    String text = Html.shown(told);
    if (symbols.isEmpty()) {
      return text;
    }
    String any = symbols.keySet().stream()
        .sorted((one, other) -> other.length() - one.length())
        .map(Pattern::quote)
        .collect(Collectors.joining("|"));
    // a symbol stands by itself: neither a letter, a digit nor a point goes before or behind it
    return Html.replaced(
        text,
        Pattern.compile("(?:" + any + ")(?![" + WORD + "])"),
        found -> standsApart(text, found.start())
            ? symbols.getOrDefault(found.group(), found.group())
            : found.group());
  }

  /** Whether neither a letter, a digit nor a point goes before; asked behind the match, for that is much faster. */
  private static boolean standsApart(String text, int start) {
    if (start == 0) {
      return true;
    }
    char before = text.charAt(start - 1);
    return !JOINED.matcher(String.valueOf(before)).matches();
  }

  /** Each line by itself, those of a step together: it ends with its source in square brackets. */
  private static String lines(String[] told, String[] lines, WorkingLinks links) {
    List<String> parts = new ArrayList<>();
    List<Integer> indents = new ArrayList<>();
    List<String> begun = new ArrayList<>();
    for (int i = 0; i < lines.length; i++) {
      String said = lines[i].strip();
      int indent = lines[i].length() - lines[i].stripLeading().length();
      boolean heads = i + 1 < lines.length && lines[i + 1].startsWith(" ".repeat(indent + 1));
      String place =
          links.place(told[i].strip()).map(id -> " id=\"" + id + "\"").orElse("");
      int first = said.startsWith("[") && said.endsWith("]") ? indents.lastIndexOf(indent - 2) : -1;
      if (first >= 0) {
        String citation = told[i].strip();
        String source =
            links.source(citation.substring(1, citation.length() - 1), begun.get(first));
        said = "<a href=\"#" + source + "\">" + said + "</a>";
      }
      parts.add("<span class=\"l" + (heads ? " h" : "") + "\"" + place + " style=\"padding-left:"
          + (indent + HANGING) + "ch\">" + said + "</span>");
      indents.add(indent);
      begun.add(told[i].strip());
      if (first >= 0) {
        String step = "<span class=\"step\">" + String.join("", parts.subList(first, parts.size()))
            + "</span>";
        parts.subList(first, parts.size()).clear();
        indents.subList(first, indents.size()).clear();
        begun.subList(first, begun.size()).clear();
        parts.add(step);
        indents.add(SETTLED);
        begun.add("");
      }
    }
    return String.join("", parts);
  }

  /** Notes a symbol whose index its text has behind it, such as "p1" of the LaTeX p_1. */
  private static void low(Term term, Map<String, String> symbols) {
    Matcher index = INDEX.matcher(term.latex());
    if (!index.find()) {
      return;
    }
    String low = (index.group(1) == null ? index.group(2) : index.group(1))
        .replaceAll("\\\\[a-z]+ ?", "")
        .strip();
    String symbol = term.symbol();
    int at = symbol.lastIndexOf(low);
    if (!low.isEmpty() && at > 0) {
      int end = symbol.charAt(at - 1) == '_' ? at - 1 : at;
      symbols.put(
          Html.escaped(symbol),
          Html.escaped(symbol.substring(0, end)) + "<sub>" + Html.escaped(low) + "</sub>"
              + Html.escaped(symbol.substring(at + low.length())));
    }
  }
}
