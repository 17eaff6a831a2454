package org.airfit.jobsheet;

import org.airfit.files.Printable;

/** What all pages are written with. */
final class Html {

  private Html() {}

  /** A text in which no sign can be taken for markup, or shows nothing. */
  static String escaped(String text) {
    return Printable.lines(text)
        .replace("&", "&amp;")
        .replace("<", "&lt;")
        .replace(">", "&gt;")
        .replace("\"", "&quot;");
  }

  /** Writes a text in an element; the tag may carry attributes. */
  static void element(StringBuilder out, String tag, String text) {
    out.append('<').append(tag).append('>').append(escaped(text)).append("</");
    out.append(tag.replaceFirst(" .*", "")).append(">\n");
  }

  /** Begins a page that needs nothing but itself. */
  static void head(StringBuilder out, String title, String style, String heading, String forWhom) {
    out.append("<!doctype html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n");
    out.append("<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n");
    element(out, "title", title);
    out.append("<style>\n").append(style).append("</style>\n</head>\n<body>\n<main>\n<header>\n");
    element(out, "h1", heading);
    element(out, "div class=\"quiet\"", forWhom);
    out.append("</header>\n");
  }
}
