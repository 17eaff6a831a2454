package org.airfit.calls;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import org.airfit.files.Refusal;
import org.airfit.jobsheet.Answer;
import org.airfit.jobsheet.SheetParts;

/**
 * A sheet as plain values: in short, with its limits and cautions, as text and as a page where they are wanted.
 *
 * @param only which of text and page are wanted
 * @param text writes the text; a page in a browser, which shows none, holds no code for it
 */
record Wanted(Set<String> only, Function<SheetParts, String> text) {

  private static final String TEXT = "text";
  private static final String PAGE = "page";

  private static final Set<String> ALL = Set.of(TEXT, PAGE);

  /** What is asked for; both where nobody says. */
  static Wanted of(Asked asked, Function<SheetParts, String> text) throws RefusedException {
    Optional<Object> told = asked.find("only");
    if (told.isEmpty()) {
      return new Wanted(ALL, text);
    }
    Set<String> only = new LinkedHashSet<>();
    for (Object each : told.get() instanceof List<?> list ? list : List.of(told.get())) {
      if (!ALL.contains(String.valueOf(each))) {
        throw RefusedException.field("only", "was \"" + each + "\"", TEXT + ", " + PAGE);
      }
      only.add(String.valueOf(each));
    }
    return new Wanted(only, text);
  }

  Map<String, Object> refused(Refusal refusal) {
    return told("refused", refusal.reason(), SheetParts.of(refusal));
  }

  Map<String, Object> told(SheetParts sheet) {
    return told(
        "answered",
        sheet.inShort().stream()
            .findFirst()
            .map(line -> line.what() + ": " + line.answer())
            .orElse("Nothing can be told; what stands against it is told under the limits."),
        sheet);
  }

  private Map<String, Object> told(String kind, String headline, SheetParts sheet) {
    Map<String, Object> answer = new LinkedHashMap<>();
    List<Object> lines = new ArrayList<>();
    for (Answer line : sheet.inShort()) {
      Map<String, Object> told = new LinkedHashMap<>();
      told.put("what", line.what());
      told.put("text", line.answer());
      lines.add(told);
    }
    answer.put("kind", kind);
    answer.put("headline", headline);
    answer.put("title", sheet.title());
    answer.put("customer", sheet.customer());
    answer.put("inShort", lines);
    answer.put("limits", sheet.limits());
    answer.put("cautions", Shown.cautions(sheet.cautions()));
    answer.put(TEXT, only.contains(TEXT) ? text.apply(sheet) : "");
    answer.put(PAGE, only.contains(PAGE) ? sheet.page() : "");
    return answer;
  }
}
