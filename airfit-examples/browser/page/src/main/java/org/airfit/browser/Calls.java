package org.airfit.browser;

import java.util.Map;
import org.jspecify.annotations.Nullable;

/** What can be asked, by name, with plain values in and out; the same on the JVM and in a browser. */
final class Calls {

  private Calls() {}

  /** Answers a call. */
  static Map<String, Object> answer(String call, @Nullable Object given) throws RefusedException {
    Asked asked = Asked.of(given);
    try {
      return switch (call) {
        case "identify" -> IdentifyCall.answer(asked);
        case "willItGo" -> WillItGoCall.answer(asked);
        case "run" -> RunCall.answer(asked);
        case "select" -> SelectCall.answer(asked);
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
