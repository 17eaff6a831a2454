package org.airfit.browser.runtime.regex;

import java.util.regex.MatchResult;
import org.jspecify.annotations.Nullable;
import org.teavm.jso.JSBody;
import org.teavm.jso.JSObject;

/** In place of {@link java.util.regex.Matcher}, with what airfit asks of it. */
public final class Matcher implements MatchResult {

  private final Pattern pattern;
  private final String text;
  private String window;
  private int from;
  private int last;
  private @Nullable JSObject match;

  Matcher(Pattern pattern, String text) {
    this.pattern = pattern;
    this.text = text;
    this.window = text;
  }

  /**
   * Writes a text so that it replaces as it is.
   *
   * @param text the text
   * @return a replacement
   */
  public static String quoteReplacement(String text) {
    return text.replace("\\", "\\\\").replace("$", "\\$");
  }

  /**
   * Matches in a part of the text only.
   *
   * @param start where it begins
   * @param end where it ends
   * @return this
   */
  public Matcher region(int start, int end) {
    window = text.substring(start, end);
    from = start;
    last = 0;
    match = null;
    return this;
  }

  /**
   * Begins anew.
   *
   * @return this
   */
  public Matcher reset() {
    return region(0, text.length());
  }

  /**
   * Tells whether all of it matches.
   *
   * @return whether it does
   */
  public boolean matches() {
    return keep(executed(pattern.whole(), window, 0));
  }

  /**
   * Tells whether it begins with a match.
   *
   * @return whether it does
   */
  public boolean lookingAt() {
    return keep(executed(pattern.beginning(), window, 0));
  }

  /**
   * Finds the next match.
   *
   * @return whether there is one
   */
  public boolean find() {
    int at = match != null && length(match) == 0 ? last + 1 : last;
    return keep(at > window.length() ? null : executed(pattern.searching(), window, at));
  }

  /**
   * Finds the first match from a place of the text on.
   *
   * @param start the place
   * @return whether there is one
   */
  public boolean find(int start) {
    reset();
    last = start;
    return find();
  }

  private boolean keep(@Nullable JSObject found) {
    match = found;
    last = found == null ? last : index(found) + length(found);
    return found != null;
  }

  private JSObject found() {
    if (match == null) {
      throw new IllegalStateException("No match found");
    }
    return match;
  }

  @Override
  public int start() {
    return from + index(found());
  }

  @Override
  public int end() {
    return start() + length(found());
  }

  @Override
  public int start(int group) {
    if (group != 0) {
      throw new UnsupportedOperationException("where a group begins is not known in a page");
    }
    return start();
  }

  @Override
  public int end(int group) {
    return start(group) + length(found());
  }

  @Override
  public String group() {
    return group(found(), 0);
  }

  @Override
  @SuppressWarnings(
      "NullAway") // none of java.util's own annotations: a group that took no part has no text
  public String group(int group) {
    if (group < 0 || group > groupCount()) {
      throw new IndexOutOfBoundsException("No group " + group);
    }
    return group(found(), group);
  }

  @Override
  public int groupCount() {
    return groups(found()) - 1;
  }

  /**
   * Replaces each match.
   *
   * @param replacement the text, with {@code $1} for a group
   * @return the text
   */
  public String replaceAll(String replacement) {
    return replaced(replacement, Integer.MAX_VALUE);
  }

  /**
   * Replaces the first match.
   *
   * @param replacement the text, with {@code $1} for a group
   * @return the text
   */
  public String replaceFirst(String replacement) {
    return replaced(replacement, 1);
  }

  private String replaced(String replacement, int most) {
    reset();
    StringBuilder out = new StringBuilder();
    int told = 0;
    for (int i = 0; i < most && find(); i++) {
      out.append(text, told, start());
      append(replacement, out);
      told = end();
    }
    return out.append(text, told, text.length()).toString();
  }

  private void append(String replacement, StringBuilder out) {
    int i = 0;
    while (i < replacement.length()) {
      char c = replacement.charAt(i++);
      if (c == '\\') {
        out.append(replacement.charAt(i++));
      } else if (c == '$') {
        int group = digit(replacement, i++);
        if (group < 0) {
          throw new IllegalArgumentException("Illegal group reference");
        }
        while (digit(replacement, i) >= 0 && group * 10 + digit(replacement, i) <= groupCount()) {
          group = group * 10 + digit(replacement, i++);
        }
        String told = group(group);
        out.append(told == null ? "" : told);
      } else {
        out.append(c);
      }
    }
  }

  private static int digit(String text, int at) {
    int digit = at < text.length() ? text.charAt(at) - '0' : -1;
    return digit > 9 ? -1 : digit;
  }

  @JSBody(
      params = {"expression", "text", "at"},
      script = "expression.lastIndex = at; return expression.exec(text);")
  private static native @Nullable JSObject executed(JSObject expression, String text, int at);

  @JSBody(params = "match", script = "return match.index;")
  private static native int index(JSObject match);

  @JSBody(params = "match", script = "return match[0].length;")
  private static native int length(JSObject match);

  @JSBody(params = "match", script = "return match.length;")
  private static native int groups(JSObject match);

  @JSBody(
      params = {"match", "group"},
      script = "var text = match[group]; return text === undefined ? null : text;")
  private static native String group(JSObject match, int group);
}
