package org.airfit.browser;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import org.airfit.files.JobFile;
import org.airfit.files.WrongFileException;
import org.airfit.jobsheet.JobSheet;
import org.airfit.jobsheet.Letterhead;
import org.airfit.jobsheet.PageReasons;
import org.airfit.jobsheet.PageSheet;
import org.airfit.jobsheet.TextSheet;

/** What can be asked, with plain values in and out; the same on the JVM and in a browser. */
final class Calls {

  private Calls() {}

  /** Answers a job file: the sheet as text, as a page to hand over, and what it rests on as a page. */
  static Map<String, Object> sheet(String name, Given files) throws WrongFileException {
    JobSheet sheet = JobSheet.of(JobFile.read(files.open(name)));
    Map<String, Object> answer = new LinkedHashMap<>();
    answer.put("text", TextSheet.of(sheet));
    answer.put("page", PageSheet.of(sheet, Letterhead.BLANK, Optional.empty()));
    answer.put("reasons", PageReasons.of(sheet, Letterhead.BLANK));
    return answer;
  }
}
