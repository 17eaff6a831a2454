package org.airfit;

import static org.assertj.core.api.Assertions.assertThat;

import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.Method;
import java.lang.reflect.Modifier;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.Deque;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.airfit.working.Working;
import org.junit.jupiter.api.Test;

/**
 * Whatever the library says in words says something: no public method of any value answers with a blank text,
 * or with one into which a NaN or a null slipped, and no working is called by a number alone.
 *
 * <p>The walk begins with the samples and goes on to whatever their methods without arguments answer.
 */
class WordsTest {

  /** How many values of a class are asked; of workings many, because each class writes its own. */
  private static final int ENOUGH = 12;

  private static final int ENOUGH_WORKINGS = 300;

  /** Signs of a value that slipped into a text. */
  private static final Pattern SLIP =
      Pattern.compile("NaN|\\bnull\\b|Optional[.\\[]|@[0-9a-f]{5,}");

  private static final Pattern WORD = Pattern.compile("\\p{L}{3}");

  /** The units of pure numbers. */
  private static final List<String> MAY_BE_EMPTY =
      List.of("org.airfit.working.Term.unit: ", "org.airfit.working.ValueKind.base: ");

  @Test
  void every_text_says_something() {
    Map<Class<?>, List<Object>> asked = new HashMap<>();
    Deque<Object> waiting = new ArrayDeque<>();
    for (Class<?> type : PublicTypes.all()) {
      Samples.of(type).forEach(waiting::add);
    }
    TreeSet<String> blank = new TreeSet<>();
    int texts = 0;
    while (!waiting.isEmpty()) {
      Object value = waiting.poll();
      List<Object> before = asked.computeIfAbsent(value.getClass(), type -> new ArrayList<>());
      int enough = value instanceof Working ? ENOUGH_WORKINGS : ENOUGH;
      if (before.size() >= enough || before.contains(value)) {
        continue;
      }
      before.add(value);
      for (Method method : questions(value)) {
        for (Object answer : flat(answer(value, method))) {
          if (answer instanceof String text) {
            texts++;
            if (text.isBlank()
                || SLIP.matcher(text).find()
                || isNumberForTitle(value, method, text)) {
              blank.add(value.getClass().getName() + "." + method.getName() + ": " + text);
            }
          } else if (answer.getClass().getName().startsWith("org.airfit.")) {
            waiting.add(answer);
          }
        }
      }
    }
    assertThat(blank).isSubsetOf(MAY_BE_EMPTY);
    // the walk went somewhere
    assertThat(asked).hasSizeGreaterThan(150);
    assertThat(texts).isGreaterThan(1000);
  }

  /** Whether a working is called by a value alone. */
  private static boolean isNumberForTitle(Object value, Method method, String text) {
    return value instanceof Working
        && "title".equals(method.getName())
        && !WORD.matcher(text).find();
  }

  private static List<Method> questions(Object value) {
    return Stream.of(value.getClass().getMethods())
        .filter(method -> method.getParameterCount() == 0)
        .filter(method -> !Modifier.isStatic(method.getModifiers()))
        .filter(method -> method.getReturnType() != void.class)
        .filter(method -> method.getDeclaringClass() != Object.class)
        .sorted(Comparator.comparing(Method::getName).thenComparing(Method::toString))
        .toList();
  }

  private static List<?> flat(Object answer) {
    if (answer instanceof Optional<?> optional) {
      return optional.stream().toList();
    }
    if (answer instanceof Map<?, ?> map) {
      return Stream.concat(map.keySet().stream(), map.values().stream()).toList();
    }
    return answer instanceof Collection<?> several ? List.copyOf(several) : List.of(answer);
  }

  private static Object answer(Object value, Method method) {
    try {
      method.setAccessible(true);
      Object answer = method.invoke(value);
      return answer == null ? Optional.empty() : answer;
    } catch (InvocationTargetException refused) {
      return Optional.empty();
    } catch (IllegalAccessException e) {
      throw new LinkageError("a public method cannot be called", e);
    }
  }
}
