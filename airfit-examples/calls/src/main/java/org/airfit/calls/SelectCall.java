package org.airfit.calls;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.airfit.files.CatalogueShelf;
import org.airfit.files.Document;
import org.airfit.files.JobFile;
import org.airfit.files.Refusal;
import org.airfit.files.WrongFileException;
import org.airfit.jobsheet.Answer;
import org.airfit.jobsheet.JobSheet;
import org.airfit.jobsheet.OnScreen;
import org.airfit.quantity.Money;
import org.airfit.run.ElementLoss;
import org.airfit.run.RunResult;
import org.airfit.safety.SafetyRules;
import org.airfit.select.BillLine;
import org.airfit.select.BillOfMaterials;
import org.airfit.select.Finding;
import org.airfit.select.Proposal;
import org.airfit.select.RuleOutcome;
import org.airfit.select.Selection;
import org.airfit.working.UnitSystem;

/** Which parts of a catalogue do a job. */
final class SelectCall {

  private static final int USUAL = 3;

  /** The name of a job that was given as an object or as a text. */
  private static final String JOB = "job.json";

  private static final String ACCEPTED =
      "a job file (docs/job-file.md): its text, an object, or its name among the files";

  private SelectCall() {}

  static Map<String, Object> answer(Asked asked, Optional<CatalogueShelf> house)
      throws RefusedException {
    Object job = asked.value("job", ACCEPTED);
    Given files = Given.files(asked.object("files", "texts of files by name")).over(house);
    int most = asked.number("most", USUAL, 1, Selection.LISTED);
    boolean worked = asked.flag("working");
    asked.requireNothingElse();
    boolean isName = job instanceof String text && files.has(text);
    if (!isName && !(job instanceof Map) && !(job instanceof String)) {
      throw RefusedException.field("job", "was " + job, ACCEPTED);
    }
    if (!isName && job instanceof String text && !text.contains("{") && text.endsWith(".json")) {
      throw RefusedException.field("job", "\"" + text + "\" is not among the files", ACCEPTED);
    }
    String name = isName ? String.valueOf(job) : JOB;
    Given given = isName ? files : files.with(name, job);
    try {
      Document document = given.open(name);
      Optional<Refusal> refusal = Refusal.of(document);
      return refusal.isPresent()
          ? refused(refusal.get())
          : answer(JobSheet.of(JobFile.read(document)), most, worked);
    } catch (WrongFileException e) {
      throw job instanceof Map
          ? RefusedException.asked(e, JOB, Map.of())
          : RefusedException.file(e);
    }
  }

  private static Map<String, Object> refused(Refusal refusal) {
    Map<String, Object> answer = new LinkedHashMap<>();
    answer.put("kind", "refused");
    answer.put("headline", refusal.reason());
    answer.put("title", refusal.title());
    answer.put("customer", refusal.customer());
    answer.put("units", UnitSystem.SI.name());
    for (String none :
        List.of("found", "proposals", "toGive", "questions", "wrong", "remarks", "offers")) {
      answer.put(none, List.of());
    }
    answer.put(
        "cautions",
        Shown.cautions(List.of(refusal.caution(), SafetyRules.usFederal().deference())));
    return answer;
  }

  private static Map<String, Object> answer(JobSheet sheet, int most, boolean worked) {
    if (sheet.refusal().isPresent()) {
      return refused(sheet.refusal().get());
    }
    UnitSystem units = sheet.units();
    Map<String, Object> answer = new LinkedHashMap<>();
    answer.put(
        "kind",
        sheet
            .selection()
            .map(selection -> selection.<String>fold(fitting -> "fits", nothing -> "nothingFits"))
            .orElse("profileNotKnown"));
    answer.put("headline", headline(sheet));
    answer.put("title", sheet.job().title());
    answer.put("customer", sheet.job().customer());
    answer.put("units", units.name());
    answer.put("found", told(OnScreen.found(sheet)));
    List<Object> proposals = new ArrayList<>();
    proposals(sheet).stream()
        .limit(most)
        .forEach(proposal -> proposals.add(proposal(sheet, proposal)));
    answer.put("proposals", proposals);
    answer.put(
        "toGive",
        sheet
            .selection()
            .map(selection -> selection.<List<String>>fold(
                fitting -> List.of(), nothing -> nothing.toGive(units)))
            .orElse(List.of()));
    answer.put("questions", OnScreen.open(sheet));
    answer.put("wrong", OnScreen.wrong(sheet));
    answer.put("remarks", told(OnScreen.remarks(sheet)));
    answer.put("offers", OnScreen.offers(sheet));
    answer.put("cautions", Shown.cautions(OnScreen.cautions(sheet)));
    sheet.now().ifPresent(now -> answer.put("now", now(sheet, now)));
    if (sheet.job().atHand().isPresent()) {
      answer.put("plug", IdentifyCall.answer(sheet.job(), false));
    }
    if (worked && sheet.selection().isPresent()) {
      answer.put("working", sheet.selection().get().working(units).toText());
    }
    return answer;
  }

  private static String headline(JobSheet sheet) {
    UnitSystem units = sheet.units();
    return sheet
        .selection()
        .map(selection -> selection.<String>fold(
            fitting -> fitting.whyBest(units), nothing -> "Nothing in the catalogue fits."))
        .orElse("Not chosen yet: the profile must be known first.");
  }

  private static List<Proposal> proposals(JobSheet sheet) {
    return sheet
        .selection()
        .map(selection -> selection.<List<Proposal>>fold(
            Selection.Proposals::proposals, Selection.NothingFits::nearest))
        .orElse(List.of());
  }

  private static List<Object> told(List<Answer> answers) {
    List<Object> told = new ArrayList<>();
    for (Answer answer : answers) {
      Map<String, Object> line = new LinkedHashMap<>();
      line.put("what", answer.what());
      line.put("text", answer.answer());
      told.add(line);
    }
    return told;
  }

  private static Map<String, Object> now(JobSheet sheet, RunResult now) {
    Map<String, Object> told = new LinkedHashMap<>();
    told.put("sentence", OnScreen.arrivesNow(sheet));
    told.put("carries", OnScreen.carriesNow(sheet));
    told.put("losses", Shown.losses(sheet, now));
    told.put("picture", Shown.chart(OnScreen.chart(sheet, "Now", now)));
    told.put("helps", OnScreen.widerHose(sheet, now).map(List::of).orElse(List.of()));
    return told;
  }

  private static Map<String, Object> proposal(JobSheet sheet, Proposal proposal) {
    UnitSystem units = sheet.units();
    BillOfMaterials bill = OnScreen.bill(sheet, proposal);
    Map<String, Object> told = new LinkedHashMap<>();
    List<Object> parts = new ArrayList<>();
    bill.lines().forEach(line -> parts.add(line(line, proposal, units)));
    told.put("parts", parts);
    told.put("price", OnScreen.together(bill, proposal).orElse(""));
    told.put("atTool", OnScreen.arrives(sheet, proposal));
    List<Object> open = new ArrayList<>();
    List<Object> rules = new ArrayList<>();
    for (Finding finding : proposal.findings(units)) {
      if (finding.outcome() == RuleOutcome.OPEN) {
        open.add(finding.reason());
      }
      rules.add(rule(finding));
    }
    open.addAll(bill.questions());
    told.put("open", open);
    told.put("rules", rules);
    List<Object> ways = new ArrayList<>();
    proposal.toEachTool().forEach(way -> ways.add(way(sheet, way)));
    told.put("ways", ways);
    told.put("cautions", Shown.cautions(proposal.cautions(units)));
    return told;
  }

  private static Map<String, Object> way(JobSheet sheet, Proposal way) {
    Optional<String> to = way.requirement().way();
    Map<String, Object> told = new LinkedHashMap<>();
    told.put("to", to.orElse(""));
    told.put("losses", Shown.losses(sheet, way.result()));
    told.put(
        "picture",
        Shown.chart(OnScreen.chart(
            sheet, "With these parts" + to.map(name -> ", " + name).orElse(""), way.result())));
    return told;
  }

  private static Map<String, Object> rule(Finding finding) {
    Map<String, Object> rule = new LinkedHashMap<>();
    rule.put("rule", finding.rule().title());
    rule.put("outcome", Shown.kind(finding.outcome()));
    rule.put("said", finding.outcomeInWords());
    rule.put("sentence", finding.reason());
    rule.put("source", finding.source().toString());
    return rule;
  }

  private static Map<String, Object> line(BillLine line, Proposal proposal, UnitSystem units) {
    Map<String, Object> told = new LinkedHashMap<>();
    told.put("kind", line.kind().toString());
    told.put("quantity", line.quantity());
    Shown.put(told, "id", line.id().filter(id -> !id.equals(line.name())));
    told.put("name", line.name());
    told.put("existing", line.existing());
    Shown.put(told, "priceEach", line.priceEach().map(SelectCall::money));
    Shown.put(told, "price", line.price().map(SelectCall::money));
    String loss = loss(line, proposal, units);
    if (!loss.isEmpty()) {
      told.put("loss", loss);
    }
    told.put("reason", line.reason());
    return told;
  }

  private static String money(Money amount) {
    return amount.format(2);
  }

  /** What a part loses, by its name in the run; of several alike what each loses. */
  private static String loss(BillLine line, Proposal proposal, UnitSystem units) {
    if (line.kind() != BillLine.Kind.PART && line.kind() != BillLine.Kind.ADAPTER) {
      return "";
    }
    List<ElementLoss> all = new ArrayList<>();
    proposal.toEachTool().forEach(way -> all.addAll(Shown.shares(way.result())));
    return all.stream()
        .filter(share -> isOf(share.name(), line.name()))
        .map(share -> units.say(share.lost()))
        .distinct()
        .collect(Collectors.joining(", "));
  }

  /** A socket is called by its place too; the second of a name has its number behind it. */
  private static boolean isOf(String element, String part) {
    return element.equals(part) || element.endsWith(", " + part);
  }
}
