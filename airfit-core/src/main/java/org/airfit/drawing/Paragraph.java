package org.airfit.drawing;

import java.util.ArrayList;
import java.util.List;

/** Words broken into lines that fit a width; SVG itself breaks none. */
final class Paragraph {

  /** How wide a letter, digit or blank of Helvetica is in the mean of a sentence [em]; on the safe side. */
  private static final double MEAN_WIDTH = 0.54;

  private Paragraph() {}

  /** The lines of a text in letters of a size, none wider than asked unless one word is [mm]. */
  static List<String> lines(String text, double size, double width) {
    int most = Math.max(1, (int) (width / (MEAN_WIDTH * size)));
    List<String> lines = new ArrayList<>();
    StringBuilder line = new StringBuilder();
    for (String word : text.split(" ", -1)) {
      if (line.length() > 0 && line.length() + 1 + word.length() > most) {
        lines.add(line.toString());
        line.setLength(0);
      }
      line.append(line.length() == 0 ? "" : " ").append(word);
    }
    lines.add(line.toString());
    return lines;
  }
}
