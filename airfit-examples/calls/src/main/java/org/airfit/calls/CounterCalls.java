package org.airfit.calls;

import java.util.Map;
import java.util.Optional;
import org.airfit.files.CatalogueShelf;
import org.jspecify.annotations.Nullable;

/** What is asked with a customer at the counter. A page that asks these alone holds no code of others. */
public final class CounterCalls {

  private CounterCalls() {}

  /**
   * Answers a call.
   *
   * @param call its name, such as "identify"
   * @param given what is asked: maps, lists, texts, numbers and truth values; airfit.d.ts has the fields
   * @return the answer, of the same
   * @throws RefusedException if what is asked cannot be used
   */
  public static Map<String, Object> answer(String call, @Nullable Object given)
      throws RefusedException {
    return answer(call, given, Optional.empty());
  }

  static Map<String, Object> answer(
      String call, @Nullable Object given, Optional<CatalogueShelf> house) throws RefusedException {
    Asked asked = Asked.of(given);
    try {
      return switch (call) {
        case "identify" -> IdentifyCall.answer(asked);
        case "willItGo" -> WillItGoCall.answer(asked);
        case "run" -> RunCall.answer(asked);
        case "select" -> SelectCall.answer(asked, house);
        case "sheet" -> SheetCall.answer(asked);
        case "referenceSet" -> SetCall.answer(asked);
        case "measuring" -> MeasuringCall.answer(asked);
        case "outline" -> OutlineCall.answer(asked);
        case "choices" -> WordsCall.choices();
        case "stock" -> WordsCall.stock(asked);
        case "jobFile" -> WordsCall.jobFile(asked);
        default -> throw RefusedException.field("", "\"" + call + "\" is no call", "");
      };
    } catch (IllegalArgumentException e) {
      throw RefusedException.field("", String.valueOf(e.getMessage()), "");
    }
  }
}
