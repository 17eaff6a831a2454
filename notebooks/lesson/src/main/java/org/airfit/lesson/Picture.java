package org.airfit.lesson;

import java.util.Objects;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** A drawing together with a sentence for a person who cannot see it. */
public final class Picture {

  private static final Pattern OPENING = Pattern.compile("<svg[^>]*>");

  private Picture() {}

  /**
   * Gives a drawing the text that stands for it.
   *
   * @param svg the drawing
   * @param shows what it shows
   * @return the drawing that says so; what it said before is replaced
   * @throws IllegalArgumentException if {@code svg} is no SVG
   */
  public static String saying(String svg, String shows) {
    Objects.requireNonNull(shows, "shows");
    Matcher opening = OPENING.matcher(Objects.requireNonNull(svg, "svg"));
    if (!opening.find()) {
      throw new IllegalArgumentException("svg must hold an element <svg>, was \"" + svg + "\"");
    }
    String silent =
        opening.group().replaceAll("\\s(role|aria-label)=\"[^\"]*\"", "").replaceAll(">$", "");
    String text = shows
        .replace("&", "&amp;")
        .replace("<", "&lt;")
        .replace(">", "&gt;")
        .replace("\"", "&quot;");
    return svg.substring(0, opening.start())
        + silent
        + " role=\"img\" aria-label=\"" + text + "\">"
        + svg.substring(opening.end());
  }
}
