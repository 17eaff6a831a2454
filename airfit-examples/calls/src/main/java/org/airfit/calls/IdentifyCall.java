package org.airfit.calls;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.airfit.drawing.ReadingOverlay;
import org.airfit.files.AtHand;
import org.airfit.files.Job;
import org.airfit.jobsheet.OnScreen;
import org.airfit.measure.Instrument;
import org.airfit.plug.Identification;
import org.airfit.plug.NextReading;
import org.airfit.plug.PlugVerdict;
import org.airfit.plug.ProfileCandidate;
import org.airfit.plug.ReferenceSet;
import org.airfit.plug.Residual;
import org.airfit.plug.SocketAnswer;
import org.airfit.safety.Caution;
import org.airfit.safety.SafetyRules;
import org.airfit.thread.ThreadIdentification;
import org.airfit.working.UnitSystem;

/** What the plug on the counter is. */
final class IdentifyCall {

  private static final Instrument USUAL = Instrument.DIGITAL_CALIPER;

  /** So many candidates are told: as many as a sheet lists. */
  private static final int MOST_CANDIDATES = 12;

  private static final String SET = "the text of a set file (docs/reference-set-file.md), or an"
      + " object; without one no plug can be named";

  private static final String READINGS =
      "an object such as {\"tip diameter\": \"11.2 mm\"}, or with a list of repeats";

  /** What is a list in every answer. */
  private static final List<String> LISTS =
      List.of("open", "candidates", "chances", "next", "slips", "takenForGranted");

  private IdentifyCall() {}

  static Map<String, Object> answer(Asked asked) throws RefusedException {
    AskedJob job = AskedJob.begun();
    job.place("atHand.instrument", "caliper");
    job.place("atHand.inUse", "profilesInUse");
    job.place("atHand.", "");
    Optional<String> caliper = asked.findText("caliper", calipers());
    Map<String, Object> hand = hand(asked, caliper);
    boolean isWithoutSet = asked.find("set").isEmpty()
        && !hand.containsKey("readings")
        && (hand.containsKey("thread") || isSocket(hand));
    if (!isWithoutSet) {
      job.profiles(asked.value("set", SET));
    }
    Optional<String> units = asked.findText("units", "SI, US");
    boolean worked = asked.flag("working");
    asked.requireNothingElse();
    job.units(units, hand);
    job.put("atHand", hand);
    Job read = job.read();
    Map<String, Object> answer = answer(read, worked);
    if (hand.containsKey("thread") && !hand.containsKey("readings") && !isSocket(hand)) {
      answer.put("headline", "Only its thread was read.");
    }
    if (isWithoutSet) {
      answer.remove("set");
      if (!hand.containsKey("socketOnly")) {
        tellThreadAlone(answer);
      }
    }
    if (caliper.isEmpty() && hand.containsKey("readings")) {
      tellCaliper(answer);
    }
    return answer;
  }

  private static boolean isSocket(Map<String, Object> hand) {
    return Boolean.TRUE.equals(hand.get("socketOnly"));
  }

  private static String calipers() {
    return String.join(
        ", ", List.of(Instrument.values()).stream().map(Instrument::label).toList());
  }

  /** What lies on the counter, as a job file tells it; sizes that were left blank are not read yet. */
  private static Map<String, Object> hand(Asked asked, Optional<String> caliper)
      throws RefusedException {
    Map<String, Object> hand = new LinkedHashMap<>();
    hand.put("where", "the counter");
    Map<String, Object> readings = Readings.filled(asked.object("readings", READINGS));
    if (!readings.isEmpty() || caliper.isPresent()) {
      hand.put("instrument", caliper.orElse(USUAL.label()));
    }
    if (!readings.isEmpty()) {
      hand.put("readings", readings);
    }
    for (String same : List.of("worn", "noNearCopies", "thread", "socketOnly")) {
      asked.find(same).ifPresent(value -> hand.put(same, value));
    }
    asked.find("profilesInUse").ifPresent(value -> hand.put("inUse", value));
    return hand;
  }

  /** Of a thread alone nothing is told of the plug: there was nothing to compare it with. */
  private static void tellThreadAlone(Map<String, Object> answer) {
    answer.put("kind", "threadOnly");
    for (String none : LISTS) {
      answer.put(none, List.of());
    }
  }

  private static void tellCaliper(Map<String, Object> answer) {
    if (answer.get("takenForGranted") instanceof List<?> granted) {
      List<Object> more = new ArrayList<>(granted);
      more.add(
          "The readings were taken as those of a " + USUAL.label() + ", as no caliper was told.");
      answer.put("takenForGranted", more);
    }
  }

  /** What a job's plug is; of a job without one, that nothing was read. */
  static Map<String, Object> answer(Job job, boolean worked) {
    UnitSystem units = job.units().system();
    Map<String, Object> answer = new LinkedHashMap<>();
    Optional<SocketAnswer> socket = job.atHand().flatMap(AtHand::socket);
    if (socket.isPresent()) {
      ofSocket(answer, socket.get(), units, worked);
    } else {
      ofPlug(answer, job.plug().orElseThrow(), units, worked);
    }
    job.atHand().flatMap(AtHand::thread).map(ThreadIdentification::of).ifPresent(thread -> {
      Map<String, Object> told = new LinkedHashMap<>();
      told.put("sentence", thread.inWords(units));
      told.put("read", thread.readings().inWords(units));
      answer.put("thread", told);
      add(answer, thread.cautions());
    });
    add(answer, List.of(SafetyRules.usFederal().deference()));
    answer.put("set", set(job.catalogue().profiles()));
    return answer;
  }

  private static void add(Map<String, Object> answer, List<Caution> more) {
    List<Object> cautions = new ArrayList<>((List<?>) answer.getOrDefault("cautions", List.of()));
    cautions.addAll(Shown.cautions(more));
    answer.put("cautions", cautions);
  }

  static Map<String, Object> set(ReferenceSet set) {
    Map<String, Object> told = new LinkedHashMap<>();
    told.put("name", set.name());
    told.put("provenance", set.weakestProvenance().toString());
    told.put("canIdentify", set.weakestProvenance().canIdentify());
    return told;
  }

  private static void ofSocket(
      Map<String, Object> answer, SocketAnswer socket, UnitSystem units, boolean worked) {
    answer.put("kind", "socketOnly");
    answer.put("headline", socket.reason());
    for (String none : LISTS) {
      answer.put(none, List.of());
    }
    List<String> ways = new ArrayList<>();
    socket.waysOut().forEach(way -> ways.add(way.toString()));
    answer.put("waysOut", ways);
    answer.put("cautions", Shown.cautions(socket.cautions()));
    if (worked) {
      answer.put("working", socket.working(units).toText());
    }
  }

  private static void ofPlug(
      Map<String, Object> answer, Identification plug, UnitSystem units, boolean worked) {
    answer.put("kind", Shown.kind(plug.verdict()));
    answer.put("headline", OnScreen.plugIs(plug, units));
    String asks = OnScreen.plugAsks(plug, units);
    answer.put("open", asks.isBlank() ? List.of() : List.of(asks));
    plug.profile().ifPresent(profile -> {
      Map<String, Object> told = new LinkedHashMap<>();
      told.put("id", profile.id());
      told.put("name", profile.displayName());
      answer.put("profile", told);
    });
    List<Object> candidates = new ArrayList<>();
    plug.candidates().stream()
        .limit(MOST_CANDIDATES)
        .forEach(candidate -> candidates.add(candidate(candidate, units)));
    answer.put("candidates", candidates);
    List<Object> chances = new ArrayList<>();
    OnScreen.chances(plug).forEach((what, probability) -> {
      Map<String, Object> chance = new LinkedHashMap<>();
      chance.put("what", what);
      chance.put("chance", OnScreen.percent(probability));
      chance.put("probability", probability);
      chances.add(chance);
    });
    answer.put("chances", chances);
    List<Object> next = new ArrayList<>();
    plug.nextReadings().forEach(each -> next.add(next(each)));
    answer.put("next", next);
    List<Object> slips = new ArrayList<>();
    plug.slips().forEach(slip -> slips.add(slip.inWords(units)));
    answer.put("slips", slips);
    answer.put("waysOut", List.of());
    List<Object> granted = new ArrayList<>();
    granted.add(OnScreen.takenForGranted(plug, units));
    answer.put("takenForGranted", granted);
    answer.put("cautions", Shown.cautions(plug.cautions()));
    if (isCompared(plug)) {
      answer.put("picture", Shown.picture(ReadingOverlay.of(plug).svg()));
    }
    if (worked) {
      answer.put("working", plug.working(units).toText());
    }
  }

  private static boolean isCompared(Identification plug) {
    return plug.verdict() != PlugVerdict.INSUFFICIENT_DATA
        || plug.likely().stream().anyMatch(candidate -> !candidate.residuals().isEmpty());
  }

  private static Map<String, Object> candidate(ProfileCandidate candidate, UnitSystem units) {
    Map<String, Object> told = new LinkedHashMap<>();
    told.put("profile", candidate.profile().id());
    told.put("name", candidate.profile().displayName());
    told.put("chance", OnScreen.percent(candidate.probability()));
    told.put("probability", candidate.probability());
    told.put("fits", candidate.fits());
    List<Object> why = new ArrayList<>();
    for (Residual residual : candidate.residuals()) {
      why.add(residual.inWords(units) + ".");
    }
    told.put("why", why);
    return told;
  }

  private static Map<String, Object> next(NextReading next) {
    Map<String, Object> told = new LinkedHashMap<>();
    told.put("size", next.dimension().label());
    told.put("text", next.inWords());
    told.put("how", next.dimension().howToMeasure());
    told.put("bits", next.expectedDropBits());
    return told;
  }
}
