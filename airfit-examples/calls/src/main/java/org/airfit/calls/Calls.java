package org.airfit.calls;

import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import org.airfit.files.CatalogueShelf;
import org.jspecify.annotations.Nullable;

/** What can be asked, by name, with plain values in and out; the same on the JVM and in a browser. */
public final class Calls {

  private Calls() {}

  /**
   * Answers a call.
   *
   * @param call its name, such as "identify"
   * @param given what is asked: maps, lists, texts, numbers and truth values; airfit.d.ts has the fields, and those of
   *     calls at the desk airfit-desk.d.ts
   * @return the answer, of the same
   * @throws RefusedException if what is asked cannot be used
   */
  public static Map<String, Object> answer(String call, @Nullable Object given)
      throws RefusedException {
    return answer(call, given, Optional.empty());
  }

  /**
   * Answers a call over the catalogue of a house: where a job names a file that was not given, that catalogue is asked
   * for.
   *
   * @param call its name, such as "select"
   * @param given what is asked: maps, lists, texts, numbers and truth values; airfit.d.ts has the fields, and those of
   *     calls at the desk airfit-desk.d.ts
   * @param house where the catalogue of the house stands
   * @return the answer, of the same
   * @throws RefusedException if what is asked cannot be used
   */
  public static Map<String, Object> answer(
      String call, @Nullable Object given, CatalogueShelf house) throws RefusedException {
    return answer(call, given, Optional.of(Objects.requireNonNull(house, "house")));
  }

  private static Map<String, Object> answer(
      String call, @Nullable Object given, Optional<CatalogueShelf> house) throws RefusedException {
    return DeskCalls.NAMES.contains(call)
        ? DeskCalls.answer(call, given, house)
        : CounterCalls.answer(call, given, house);
  }
}
