package org.airfit.browser.runtime.regex;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.teavm.jso.JSBody;
import org.teavm.jso.JSObject;

/** In place of {@link java.util.regex.Pattern}, with what airfit asks of it; made when it is first used. */
public final class Pattern {

  /** Letters A to Z match in either case. */
  public static final int CASE_INSENSITIVE = 2;

  /** A dot matches ends of lines too. */
  public static final int DOTALL = 32;

  private final String regex;
  private final int flags;
  private @Nullable Dialect dialect;
  private @Nullable JSObject searching;
  private @Nullable JSObject beginning;
  private @Nullable JSObject whole;

  private Pattern(String regex, int flags) {
    this.regex = regex;
    this.flags = flags;
  }

  /**
   * Obtains a pattern.
   *
   * @param regex the expression, in Java's way
   * @return the pattern
   */
  public static Pattern compile(String regex) {
    return new Pattern(regex, 0);
  }

  /**
   * Obtains a pattern.
   *
   * @param regex the expression, in Java's way
   * @param flags {@link #CASE_INSENSITIVE} and {@link #DOTALL}
   * @return the pattern
   */
  public static Pattern compile(String regex, int flags) {
    if ((flags & ~(CASE_INSENSITIVE | DOTALL)) != 0) {
      throw new IllegalArgumentException("flags must be CASE_INSENSITIVE or DOTALL, was " + flags);
    }
    return new Pattern(regex, flags);
  }

  /**
   * Tells whether a whole text matches.
   *
   * @param regex the expression
   * @param input the text
   * @return whether it does
   */
  public static boolean matches(String regex, CharSequence input) {
    return compile(regex).matcher(input).matches();
  }

  /**
   * Writes a text so that it stands for itself.
   *
   * @param text the text
   * @return an expression
   */
  public static String quote(String text) {
    StringBuilder out = new StringBuilder();
    for (int i = 0; i < text.length(); i++) {
      if ("^$\\.*+?()[]{}|".indexOf(text.charAt(i)) >= 0) {
        out.append('\\');
      }
      out.append(text.charAt(i));
    }
    return out.toString();
  }

  /**
   * Obtains what matches a text against this.
   *
   * @param input the text
   * @return the matcher
   */
  public Matcher matcher(CharSequence input) {
    return new Matcher(this, input.toString());
  }

  /**
   * Obtains the expression.
   *
   * @return the text that it was made of
   */
  public String pattern() {
    return regex;
  }

  /**
   * Splits a text around what matches; empty parts at the end are left out.
   *
   * @param input the text
   * @return the parts
   */
  public String[] split(CharSequence input) {
    return split(input, 0);
  }

  /**
   * Splits a text around what matches.
   *
   * @param input the text
   * @param limit the most parts; none if it is negative, nor if it is 0, which leaves out empty parts at the end
   * @return the parts
   */
  public String[] split(CharSequence input, int limit) {
    String text = input.toString();
    List<String> parts = new ArrayList<>();
    int told = 0;
    Matcher matcher = matcher(text);
    while ((limit <= 0 || parts.size() < limit - 1) && matcher.find()) {
      if (matcher.end() == 0) {
        continue; // nothing in front of the first sign
      }
      parts.add(text.substring(told, matcher.start()));
      told = matcher.end();
    }
    parts.add(text.substring(told));
    int many = parts.size();
    while (limit == 0 && told > 0 && many > 0 && parts.get(many - 1).isEmpty()) {
      many--;
    }
    return parts.subList(0, many).toArray(new String[0]);
  }

  @Override
  public String toString() {
    return regex;
  }

  /** What finds it anywhere, or where the last one ended if it says so. */
  JSObject searching() {
    if (searching == null) {
      searching = expression(dialect().source(), dialect().isSticky() ? "uy" : "ug");
    }
    return searching;
  }

  /** What finds it at one place. */
  JSObject beginning() {
    if (beginning == null) {
      beginning = expression(dialect().source(), "uy");
    }
    return beginning;
  }

  /** What finds it at one place if nothing stands behind. */
  JSObject whole() {
    if (whole == null) {
      whole = expression("(?:" + dialect().source() + ")$", "uy");
    }
    return whole;
  }

  private Dialect dialect() {
    if (dialect == null) {
      dialect = Dialect.of(regex, (flags & CASE_INSENSITIVE) != 0, (flags & DOTALL) != 0);
    }
    return dialect;
  }

  private static JSObject expression(String source, String flags) {
    return nativeExpression(source, flags);
  }

  @JSBody(
      params = {"source", "flags"},
      script = "return new RegExp(source, flags);")
  private static native JSObject nativeExpression(String source, String flags);
}
