package org.airfit.calls;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import org.airfit.files.CatalogueShelf;
import org.airfit.files.DayFile;
import org.airfit.files.DiagnosisFile;
import org.airfit.files.InventoryFile;
import org.airfit.files.JobFile;
import org.airfit.files.PriceListFile;
import org.airfit.files.WaterFile;
import org.airfit.jobsheet.SheetParts;
import org.jspecify.annotations.Nullable;

/**
 * What is asked at a desk, of a plant or of a shop: each file with its sheet, and two questions with a few numbers. A
 * page that asks these alone holds no code of others.
 */
public final class DeskCalls {

  /** The names of the calls. */
  static final List<String> NAMES = List.of(
      "day",
      "diagnosis",
      "water",
      "leaks",
      "inventory",
      "priceList",
      "cards",
      "condensate",
      "leak");

  private DeskCalls() {}

  /**
   * Answers a call.
   *
   * @param call its name, such as "day"
   * @param given what is asked: maps, lists, texts, numbers and truth values; airfit-desk.d.ts has the fields
   * @return the answer, of the same
   * @throws RefusedException if what is asked cannot be used
   */
  public static Map<String, Object> answer(String call, @Nullable Object given)
      throws RefusedException {
    return answer(call, given, Optional.empty());
  }

  /**
   * Answers a call without the sheet as text, whatever is asked for: for a page, which shows none.
   *
   * @param call its name, such as "day"
   * @param given what is asked: maps, lists, texts, numbers and truth values; airfit-desk.d.ts has the fields
   * @return the answer, of the same
   * @throws RefusedException if what is asked cannot be used
   */
  public static Map<String, Object> answerWithoutText(String call, @Nullable Object given)
      throws RefusedException {
    return answer(call, given, Optional.empty(), sheet -> "");
  }

  static Map<String, Object> answer(
      String call, @Nullable Object given, Optional<CatalogueShelf> house) throws RefusedException {
    return answer(call, given, house, SheetParts::text);
  }

  private static Map<String, Object> answer(
      String call,
      @Nullable Object given,
      Optional<CatalogueShelf> house,
      Function<SheetParts, String> text)
      throws RefusedException {
    Asked asked = Asked.of(given);
    Wanted wanted = Wanted.of(asked, text);
    try {
      return switch (call) {
        case "day" ->
          FileCall.answer(
              asked, house, wanted, "day.json", file -> SheetParts.of(DayFile.read(file)));
        case "diagnosis" ->
          FileCall.answer(
              asked,
              house,
              wanted,
              "diagnosis.json",
              file -> SheetParts.of(DiagnosisFile.read(file)));
        case "water" ->
          FileCall.answer(
              asked, house, wanted, "water.json", file -> SheetParts.of(WaterFile.read(file)));
        case "leaks" -> LeakCall.ledger(asked, house, wanted);
        case "inventory" ->
          FileCall.answer(
              asked,
              house,
              wanted,
              "inventory.json",
              file -> SheetParts.of(InventoryFile.read(file)));
        case "priceList" ->
          FileCall.answer(
              asked, house, wanted, "check.json", file -> SheetParts.of(PriceListFile.read(file)));
        case "cards" ->
          FileCall.answer(
              asked, house, wanted, "job.json", file -> SheetParts.cards(JobFile.read(file)));
        case "condensate" -> CondensateCall.answer(asked, wanted);
        case "leak" -> LeakCall.answer(asked, wanted);
        default -> throw RefusedException.field("", "\"" + call + "\" is no call", "");
      };
    } catch (IllegalArgumentException e) {
      throw RefusedException.field("", String.valueOf(e.getMessage()), "");
    }
  }
}
