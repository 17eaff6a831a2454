package org.airfit.files;

import java.util.ArrayList;
import java.util.List;

/** Several words in one cell of a table, with a bar between; a bar of a word's own stands behind a backslash. */
public final class CellWords {

  private CellWords() {}

  /**
   * Obtains the words of a cell.
   *
   * @param cell the text of the cell
   * @return its words, without the blanks around them; a word between two bars may be empty
   */
  public static List<String> split(String cell) {
    List<String> words = new ArrayList<>();
    StringBuilder word = new StringBuilder();
    for (int i = 0; i < cell.length(); i++) {
      char c = cell.charAt(i);
      if (c == '\\' && i + 1 < cell.length()) {
        i++;
        word.append(cell.charAt(i));
      } else if (c == '|') {
        words.add(word.toString().strip());
        word.setLength(0);
      } else {
        word.append(c);
      }
    }
    words.add(word.toString().strip());
    return words;
  }

  /**
   * Joins several words for one cell.
   *
   * @param words the words
   * @return the text of the cell, which {@link #split} takes apart again
   */
  public static String join(Iterable<String> words) {
    StringBuilder cell = new StringBuilder();
    for (String word : words) {
      cell.append(cell.length() == 0 ? "" : " | ")
          .append(word.replace("\\", "\\\\").replace("|", "\\|"));
    }
    return cell.toString();
  }
}
