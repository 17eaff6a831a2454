package org.airfit;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.lang.reflect.Constructor;
import java.lang.reflect.Executable;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * What the javadoc of the core promises, read from its sources: the exceptions of each method, and whether its text
 * speaks of an infinite number or NaN.
 *
 * <p>Methods are told apart by class and name, not by their parameters: what one overload documents counts for all.
 */
final class Documented {

  /** A comment, then the member's name before its parameters, or before the body of a compact constructor. */
  private static final Pattern COMMENT = Pattern.compile(
      "/\\*\\*([^*]*+(?:\\*(?!/)[^*]*+)*+)\\*/\\s*+(?:@Override\\s++)?[^;{}()=/]*?(\\w+)\\s*+[({]");

  private static final Pattern THROWS = Pattern.compile("@throws\\s+(?:\\w+\\.)*(\\w+)");

  /** By "Type.name", the comments before the members of that name. */
  private final Map<String, List<String>> comments = new HashMap<>();

  private Documented() {}

  /** Reads all sources below a folder. */
  static Documented in(Path folder) {
    Documented all = new Documented();
    try (Stream<Path> files = Files.walk(folder)) {
      files.filter(file -> file.toString().endsWith(".java")).forEach(all::read);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return all;
  }

  private void read(Path file) {
    String text;
    try {
      text = Files.readString(file);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    Matcher matcher = COMMENT.matcher(text);
    while (matcher.find()) {
      // members of nested types count for the file, because an indentation does not tell whose they
      // are
      String name = file.getFileName().toString().replace(".java", "") + "." + matcher.group(2);
      comments.computeIfAbsent(name, n -> new ArrayList<>()).add(matcher.group(1));
    }
  }

  /** The comments on an executable and on the methods that it implements. */
  private List<String> of(Executable member) {
    List<String> found = new ArrayList<>();
    String name = member instanceof Constructor<?>
        ? member.getDeclaringClass().getSimpleName()
        : member.getName();
    add(found, member.getDeclaringClass(), name);
    return found;
  }

  private void add(List<String> found, Class<?> type, String name) {
    Class<?> outer = type;
    while (outer.getEnclosingClass() != null) {
      outer = outer.getEnclosingClass();
    }
    found.addAll(comments.getOrDefault(outer.getSimpleName() + "." + name, List.of()));
    for (Class<?> parent : type.getInterfaces()) {
      add(found, parent, name);
    }
    if (type.getSuperclass() != null && type.getName().startsWith("org.airfit.")) {
      add(found, type.getSuperclass(), name);
    }
  }

  /**
   * Whether a member documents an exception, or one above it.
   *
   * @param receiver the value it was called on, whose own class may say more
   */
  boolean allows(Executable member, @Nullable Object receiver, Throwable thrown) {
    List<String> all = of(member);
    if (receiver != null) {
      add(all, receiver.getClass(), member.getName());
    }
    for (String comment : all) {
      Matcher matcher = THROWS.matcher(comment);
      while (matcher.find()) {
        for (Class<?> type = thrown.getClass(); type != Object.class; type = type.getSuperclass()) {
          if (type.getSimpleName().equals(matcher.group(1))) {
            return true;
          }
        }
      }
    }
    return false;
  }

  /** Whether the text on a member speaks of a word, such as "infinite". */
  boolean speaksOf(Executable member, String... words) {
    return of(member).stream()
        .anyMatch(comment -> Stream.of(words).anyMatch(word -> comment.contains(word)));
  }
}
