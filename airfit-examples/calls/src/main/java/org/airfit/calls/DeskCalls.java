package org.airfit.calls;

import java.util.List;
import java.util.Map;
import java.util.Optional;
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

  static Map<String, Object> answer(
      String call, @Nullable Object given, Optional<CatalogueShelf> house) throws RefusedException {
    Asked asked = Asked.of(given);
    try {
      return switch (call) {
        case "day" ->
          FileCall.answer(asked, house, "day.json", file -> SheetParts.of(DayFile.read(file)));
        case "diagnosis" ->
          FileCall.answer(
              asked, house, "diagnosis.json", file -> SheetParts.of(DiagnosisFile.read(file)));
        case "water" ->
          FileCall.answer(asked, house, "water.json", file -> SheetParts.of(WaterFile.read(file)));
        case "leaks" -> LeakCall.ledger(asked, house);
        case "inventory" ->
          FileCall.answer(
              asked, house, "inventory.json", file -> SheetParts.of(InventoryFile.read(file)));
        case "priceList" ->
          FileCall.answer(
              asked, house, "check.json", file -> SheetParts.of(PriceListFile.read(file)));
        case "cards" ->
          FileCall.answer(asked, house, "job.json", file -> SheetParts.cards(JobFile.read(file)));
        case "condensate" -> CondensateCall.answer(asked);
        case "leak" -> LeakCall.answer(asked);
        default -> throw RefusedException.field("", "\"" + call + "\" is no call", "");
      };
    } catch (IllegalArgumentException e) {
      throw RefusedException.field("", String.valueOf(e.getMessage()), "");
    }
  }
}
