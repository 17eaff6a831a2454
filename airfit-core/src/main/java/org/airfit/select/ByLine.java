package org.airfit.select;

import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.airfit.internal.Capital;

/** Words on the lines of a job of several tools, each of which begins with its line: a list names a line once. */
final class ByLine {

  private ByLine() {}

  /**
   * Lists what is said, each line named once in front of all that is said of it. What is said of no line stands first.
   *
   * @param a the assembly whose lines they are
   * @param said what is said, of a line beginning with its name and a colon
   * @param separator what stands between two things said of one line
   * @return the list, a semicolon between two lines
   */
  static String joined(Assembly a, Collection<String> said, String separator) {
    Map<String, List<String>> ofLine = new LinkedHashMap<>();
    ofLine.put("", new ArrayList<>());
    for (String each : said) {
      String line = line(a, each);
      ofLine.computeIfAbsent(line, any -> new ArrayList<>()).add(each.substring(line.length()));
    }
    List<String> lists = new ArrayList<>();
    ofLine.forEach((line, things) -> {
      if (!things.isEmpty()) {
        lists.add(line + String.join(separator, things));
      }
    });
    return String.join("; ", lists);
  }

  /** The same as the beginning of a sentence. */
  static String sentence(Assembly a, Collection<String> said) {
    String joined = joined(a, said, "; ");
    return joined.isEmpty() ? "" : Capital.first(joined);
  }

  /** Says of joints what is done to them: "joins" and "line 2, ratchet: plug to tool" is "line 2, ratchet: joins plug …". */
  static String saying(Assembly a, String verb, String where) {
    String line = line(a, where);
    return line + verb + " " + where.substring(line.length());
  }

  /** The line with which something begins; empty where it is said of none. */
  static String line(Assembly a, String said) {
    return a.lines().stream().filter(said::startsWith).findFirst().orElse("");
  }
}
