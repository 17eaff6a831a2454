package org.airfit.calls;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import org.airfit.files.Document;
import org.airfit.files.Job;
import org.airfit.jobsheet.JobSheet;
import org.airfit.jobsheet.OnScreen;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.GaugePressure;
import org.airfit.run.ElementLoss;
import org.airfit.run.RunResult;
import org.airfit.safety.Caution;
import org.airfit.safety.Situation;
import org.airfit.select.RuleOutcome;
import org.airfit.select.RunNow;
import org.airfit.working.UnitSystem;

/** What arrives at the end of a run. */
final class RunCall {

  private static final String SUPPLY =
      "a gauge pressure such as \"90 psig\", or an object such as {\"pressure\": \"90 to 110 psig\"}";

  private static final String ELEMENTS =
      "a list such as [{\"name\": \"hose\", \"bore\": \"3/8 in\","
          + " \"length\": \"25 ft\", \"wall\": \"rubber hose\"}]";

  private static final String FLOW = "free air such as \"34 scfm\" or \"16 L/s ANR\"";

  /** Where nobody says what the tool needs: read, and told nowhere. */
  private static final String ANY_NEED = "6 bar(g)";

  /** The places of a job by what they are called in the call. */
  private static final Map<String, String> PLACES = places();

  private RunCall() {}

  private static Map<String, String> places() {
    Map<String, String> places = new LinkedHashMap<>();
    places.put("now", "elements");
    places.put("tool.air", "flow");
    places.put("tool.pressure", "needed");
    return places;
  }

  static Map<String, Object> answer(Asked asked) throws RefusedException {
    AskedJob job = AskedJob.begun();
    PLACES.forEach(job::place);
    Map<String, Object> supply = supply(asked.value("supply", SUPPLY));
    Optional<String> atmosphere =
        asked.findText("atmosphere", "an absolute pressure such as \"1.013 bar(a)\"");
    if (atmosphere.isPresent()) {
      if (supply.containsKey("atmosphere")) {
        throw RefusedException.field("atmosphere", "stands in supply too; keep one of the two", "");
      }
      supply.put("atmosphere", atmosphere.get());
      job.place("supply.atmosphere", "atmosphere");
    } else {
      job.place("supply.pressure", "supply");
    }
    Object elements = asked.value("elements", ELEMENTS);
    if (elements instanceof List<?> list && list.isEmpty()) {
      throw RefusedException.field("elements", "holds nothing that the air goes through", ELEMENTS);
    }
    String flow = asked.text("flow", FLOW);
    Optional<String> needed = asked.findText("needed", "a gauge pressure such as \"90 psig\"");
    Optional<Object> catalogue = asked.find("catalogue");
    Optional<String> units = asked.findText("units", "SI, US");
    boolean worked = asked.flag("working");
    asked.requireNothingElse();
    List<Object> typed = new ArrayList<>(List.of(supply, elements, flow));
    needed.ifPresent(typed::add);
    job.units(units, typed);
    job.put("supply", supply);
    job.put("now", elements);
    job.put("tool", AskedJob.tool(flow, needed.orElse(ANY_NEED)));
    catalogue.ifPresent(job::catalogue);
    JobSheet sheet = sheet(job.read());
    return answer(sheet, lowestRating(elements, sheet), needed.isPresent(), worked);
  }

  /** The lowest rating of the parts of a catalogue that the air goes through; empty where none is known. */
  private static Optional<GaugePressure> lowestRating(Object elements, JobSheet sheet) {
    return ((List<?>) elements)
        .stream()
            .map(element -> element instanceof Map<?, ?> fields ? fields.get("part") : null)
            .filter(Objects::nonNull)
            .flatMap(id -> sheet.job().catalogue().parts().part(String.valueOf(id)).stream())
            .flatMap(part -> part.facts().rating().stream())
            .min(Comparator.naturalOrder());
  }

  private static Map<String, Object> supply(Object told) throws RefusedException {
    if (told instanceof String text) {
      return AskedJob.supply(text);
    }
    if (told instanceof Map) {
      return Document.fields(told);
    }
    throw RefusedException.field("supply", "was " + told, SUPPLY);
  }

  /** The sheet of a job of which only the run counts. */
  private static JobSheet sheet(Job job) {
    return new JobSheet(
        job,
        job.requirement(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        job.now().map(RunNow::result),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty());
  }

  private static Map<String, Object> answer(
      JobSheet sheet, Optional<GaugePressure> lowestRating, boolean isNeedTold, boolean worked) {
    RunResult result = sheet.now().orElseThrow();
    UnitSystem units = sheet.units();
    Map<String, Object> answer = new LinkedHashMap<>();
    answer.put("kind", kind(sheet, result, isNeedTold));
    answer.put(
        "sentence", isNeedTold ? OnScreen.arrivesNow(sheet) : OnScreen.arrivesWithoutNeed(sheet));
    AbsolutePressure atmosphere = sheet.job().atmosphere();
    answer.put("atSupply", Shown.pressure(atSupply(result), atmosphere, units));
    result.fold(
        delivered -> answer.put("atTool", Shown.pressure(delivered.atTool(), atmosphere, units)),
        starved -> starved);
    answer.put("losses", Shown.losses(sheet, result));
    answer.put(
        "biggest",
        result.<String>fold(
            delivered -> delivered.bottleneck().name(), RunResult.Starved::element));
    answer.put("carries", isNeedTold ? OnScreen.carriesNow(sheet) : "");
    answer.put(
        "helps",
        isNeedTold ? OnScreen.widerHose(sheet, result).map(List::of).orElse(List.of()) : List.of());
    List<Object> remarks = new ArrayList<>();
    sheet.job().remarks().forEach(remark -> remarks.add(inOwnWords(remark)));
    answer.put("remarks", remarks);
    Situation.Builder situation = Situation.describe();
    lowestRating.ifPresent(rating -> situation.ratedParts(sheet.requirement().highest(), rating));
    List<Caution> cautions = new ArrayList<>(result.cautions(units));
    cautions.addAll(sheet.requirement().rules().toldIn(units).cautions(situation.build()));
    answer.put("cautions", Shown.cautions(cautions));
    String title = "The run";
    answer.put(
        "picture",
        Shown.chart(
            isNeedTold
                ? OnScreen.chart(sheet, title, result)
                : OnScreen.chartWithoutNeed(sheet, title, result)));
    if (worked) {
      answer.put("working", result.working(units).toText());
    }
    return answer;
  }

  private static String kind(JobSheet sheet, RunResult result, boolean isNeedTold) {
    RunNow now = sheet.job().now().orElseThrow();
    boolean isStarved = result.fold(delivered -> false, starved -> true);
    boolean isStarvedAtBest = now.resultAtBest().fold(delivered -> false, starved -> true);
    if (isNeedTold ? now.airOutcome() == RuleOutcome.OPEN : isStarved && !isStarvedAtBest) {
      return "depends";
    }
    return isStarvedAtBest
        ? "starved"
        : !isNeedTold ? "delivered" : now.airOutcome() == RuleOutcome.MET ? "enough" : "tooLittle";
  }

  private static AbsolutePressure atSupply(RunResult result) {
    List<ElementLoss> shares = Shown.shares(result);
    return shares.isEmpty()
        ? result.fold(RunResult.Delivered::atSupply, RunResult.Starved::inlet)
        : shares.get(0).inlet();
  }

  /** A remark speaks of the fields of a job. */
  private static String inOwnWords(String remark) {
    String told = remark;
    for (Map.Entry<String, String> place : PLACES.entrySet()) {
      String ofJob = place.getKey().equals("now") ? "now[" : place.getKey();
      told = told.replace(ofJob, place.getKey().equals("now") ? "elements[" : place.getValue());
    }
    return told;
  }
}
