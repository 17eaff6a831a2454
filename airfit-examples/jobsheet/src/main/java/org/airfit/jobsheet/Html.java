package org.airfit.jobsheet;

import java.util.Arrays;
import java.util.function.Function;
import java.util.regex.MatchResult;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.airfit.files.Printable;
import org.airfit.plug.Dimension;

/** What all pages are written with. */
final class Html {

  /** The symbols of a plug's sizes, such as "D_c": no other text has a letter, a line and a letter. */
  private static final Pattern SYMBOL = Pattern.compile("\\b("
      + Arrays.stream(Dimension.values()).map(Dimension::symbol).collect(Collectors.joining("|"))
      + ")\\b");

  private Html() {}

  /** A text in which no sign can be taken for markup, or shows nothing. */
  static String escaped(String text) {
    return Printable.lines(text)
        .replace("&", "&amp;")
        .replace("<", "&lt;")
        .replace(">", "&gt;")
        .replace("\"", "&quot;");
  }

  /** A text as it is shown, the index of a symbol set low. */
  static String shown(String text) {
    if (text.indexOf('_') < 0) {
      return escaped(text); // most texts: spares them the search for a pattern at every sign
    }
    return replaced(escaped(text), SYMBOL, symbol -> {
      String found = symbol.group(1);
      return found.charAt(0) + "<sub>" + found.substring(2) + "</sub>";
    });
  }

  /** A text with other words for what is found in it; Matcher's own method is not there in a browser. */
  static String replaced(String text, Pattern wanted, Function<MatchResult, String> other) {
    Matcher found = wanted.matcher(text);
    StringBuilder out = new StringBuilder();
    int told = 0;
    while (found.find()) {
      out.append(text, told, found.start()).append(other.apply(found));
      told = found.end();
    }
    return out.append(text, told, text.length()).toString();
  }

  /** Writes a text in an element; the tag may carry attributes. */
  static void element(StringBuilder out, String tag, String text) {
    out.append('<').append(tag).append('>').append(shown(text)).append("</");
    int name = tag.indexOf(' ');
    out.append(name < 0 ? tag : tag.substring(0, name)).append(">\n");
  }

  /** Writes a list of facts: a name and what is said of it. */
  static void fact(StringBuilder out, String name, String said) {
    out.append("<dt>")
        .append(shown(name))
        .append("</dt><dd>")
        .append(shown(said))
        .append("</dd>\n");
  }

  /** Begins a page that needs nothing but itself; its top stands open. */
  static void head(StringBuilder out, String title, String style) {
    out.append("<!doctype html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n");
    out.append("<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n");
    out.append("<title>").append(escaped(title)).append("</title>\n");
    out.append("<style>\n").append(style).append("</style>\n</head>\n<body>\n");
  }
}
