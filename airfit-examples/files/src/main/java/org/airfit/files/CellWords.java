package org.airfit.files;

import java.util.ArrayList;
import java.util.List;

/** Several words in one cell of a table, with a bar between; a bar of a word's own stands behind a backslash. */
final class CellWords {

  private CellWords() {}

  /** The words of a cell, without the blanks around them. */
  static List<String> split(String cell) {
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

  /** Several words for one cell. */
  static String join(Iterable<String> words) {
    StringBuilder cell = new StringBuilder();
    for (String word : words) {
      cell.append(cell.length() == 0 ? "" : " | ")
          .append(word.replace("\\", "\\\\").replace("|", "\\|"));
    }
    return cell.toString();
  }
}
