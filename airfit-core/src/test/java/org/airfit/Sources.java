package org.airfit;

import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * The sources of the numbers we compare with, each once, with its key: {@code sources.csv}.
 *
 * <p>Keys: S for threads, pipe and hose, E for other ends, P for plugs, H for all else. A row of a table names its source by a key, or by
 * the words that a key stands for.
 */
final class Sources {

  private static final Pattern KEY = Pattern.compile("\\b[SPE][0-9]{2}[a-z]?\\b");
  private static final Map<String, Rows.Row> BY_KEY = new LinkedHashMap<>();

  static {
    Rows.of(Evidence.class, "sources.csv").forEach(row -> BY_KEY.put(row.text("key"), row));
  }

  private Sources() {}

  /**
   * Puts links where keys stand.
   *
   * @param source the source as a row says it
   * @return Markdown, with a link to every key
   * @throws IllegalArgumentException if the list knows neither a key in the text nor its words
   */
  static String links(String source) {
    Matcher key = KEY.matcher(source);
    if (key.find()) {
      return key.reset().replaceAll(found -> link(known(found.group(), source)));
    }
    String best = "";
    for (Map.Entry<String, Rows.Row> entry : BY_KEY.entrySet()) {
      String words = entry.getValue().text("source");
      if (source.startsWith(words)
          && (best.isEmpty() || words.length() > BY_KEY.get(best).text("source").length())) {
        best = entry.getKey();
      }
    }
    return link(known(best, source))
        + source.substring(BY_KEY.get(best).text("source").length());
  }

  private static String known(String key, String source) {
    if (!BY_KEY.containsKey(key)) {
      throw new IllegalArgumentException(
          "sources.csv must list every source that is compared with, was \"" + source + "\"");
    }
    return key;
  }

  private static String link(String key) {
    return "[" + key + "](../sources.md#" + key.toLowerCase(Locale.ROOT) + ")";
  }

  /** {@return the page that lists them all} */
  static String page() {
    StringBuilder out = new StringBuilder("""
        # Sources

        Every source of the numbers that the tests compare with, once, with the key by which the
        [verification report](verification.md) names it. The tests write this page; nobody edits it. What a library's
        answer rests on stands in its working, in words.

        S: threads, pipe, tube and hose. E: other threads and ends. P: plugs and calipers. H: air, flow, lines, plant,
        statistics.

        | key | source | what was seen |
        |---|---|---|
        """);
    BY_KEY.forEach((key, row) -> out.append("| <a id=\"")
        .append(key.toLowerCase(Locale.ROOT))
        .append("\"></a>")
        .append(key)
        .append(" | ")
        .append(Comparison.cell(row.text("source")))
        .append(" | ")
        .append(Comparison.cell(row.text("seen")))
        .append(" |\n"));
    return out.toString();
  }
}
