package org.airfit.calls;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.airfit.files.Document;
import org.airfit.files.Job;
import org.airfit.files.JobFile;
import org.airfit.files.JobLabel;
import org.airfit.files.Refusal;
import org.airfit.files.Shop;
import org.airfit.files.WrongFileException;
import org.airfit.jobsheet.JobSheet;
import org.airfit.jobsheet.Letterhead;
import org.airfit.jobsheet.OnScreen;
import org.airfit.jobsheet.PageReasons;
import org.airfit.jobsheet.PageSheet;
import org.airfit.jobsheet.TextSheet;

/** The sheet of a job, as the program writes it. */
final class SheetCall {

  private static final Pattern DAY = Pattern.compile("(\\d{4})-(\\d{2})-(\\d{2})");
  private static final String A_DAY = "a day such as \"2026-11-28\"";

  private static final Set<String> ALL = Set.of("text", "page", "reasons");

  private SheetCall() {}

  static Map<String, Object> answer(Asked asked) throws RefusedException {
    String name = asked.text("job", "the name of a job file among the files");
    Given files = Given.files(asked.object("files", "texts of files by name"));
    Optional<String> letterhead =
        asked.findText("letterhead", "the name of a letterhead file among the files");
    Optional<String> day = asked.findText("today", A_DAY);
    Set<String> only = only(asked.find("only"));
    asked.requireNothingElse();
    Optional<LocalDate> today = day.isPresent() ? Optional.of(day(day.get())) : Optional.empty();
    try {
      Optional<Shop> shop = letterhead.isPresent()
          ? Optional.of(Shop.read(files.open(letterhead.get())))
          : Optional.empty();
      return answer(files.open(name), shop, today, only);
    } catch (WrongFileException e) {
      throw RefusedException.file(e);
    }
  }

  private static Map<String, Object> answer(
      Document document, Optional<Shop> shop, Optional<LocalDate> today, Set<String> only)
      throws WrongFileException {
    Map<String, Object> answer = new LinkedHashMap<>();
    Optional<Refusal> refusal = Refusal.of(document);
    if (refusal.isPresent()) {
      answer.put("text", OnScreen.text(refusal.get()));
      answer.put("page", OnScreen.page(refusal.get(), head(shop, refusal.get().label(), today)));
      answer.put("reasons", "");
      return answer;
    }
    Job job = JobFile.read(document);
    JobSheet sheet = JobSheet.of(job);
    Letterhead head = head(shop, job.label(), today);
    answer.put("text", only.contains("text") ? TextSheet.of(sheet) : "");
    answer.put("page", only.contains("page") ? PageSheet.of(sheet, head, Optional.empty()) : "");
    answer.put("reasons", only.contains("reasons") ? PageReasons.of(sheet, head) : "");
    return answer;
  }

  private static Letterhead head(Optional<Shop> shop, JobLabel label, Optional<LocalDate> today) {
    return new Letterhead(shop, label.number(), label.date().or(() -> today));
  }

  /** Which of the three are wanted; all where nobody says. */
  private static Set<String> only(Optional<Object> told) throws RefusedException {
    if (told.isEmpty()) {
      return ALL;
    }
    Set<String> only = new LinkedHashSet<>();
    for (Object each : told.get() instanceof List<?> list ? list : List.of(told.get())) {
      if (!ALL.contains(String.valueOf(each))) {
        throw RefusedException.field("only", "was \"" + each + "\"", "text, page, reasons");
      }
      only.add(String.valueOf(each));
    }
    return only;
  }

  private static LocalDate day(String text) throws RefusedException {
    Matcher day = DAY.matcher(text.strip());
    try {
      if (day.matches()) {
        return LocalDate.of(
            Integer.parseInt(day.group(1)),
            Integer.parseInt(day.group(2)),
            Integer.parseInt(day.group(3)));
      }
    } catch (DateTimeException e) {
      throw RefusedException.field("today", "was \"" + text + "\"", A_DAY);
    }
    throw RefusedException.field("today", "was \"" + text + "\"", A_DAY);
  }
}
