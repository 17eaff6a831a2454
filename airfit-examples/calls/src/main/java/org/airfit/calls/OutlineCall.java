package org.airfit.calls;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.airfit.drawing.PlugDrawing;
import org.airfit.files.AtHand;
import org.airfit.measure.PartSpread;
import org.airfit.plug.Dimension;
import org.airfit.plug.PlugProfile;
import org.airfit.plug.PlugReading;
import org.airfit.plug.Provenance;
import org.airfit.plug.ReferenceSet;
import org.airfit.source.Source;

/** The outline of a plug, true to size: a profile of a set, or the plug at hand as it was read. */
final class OutlineCall {

  private static final String PROFILE = "the id of a profile of the set";

  private OutlineCall() {}

  static Map<String, Object> answer(Asked asked) throws RefusedException {
    Optional<Object> set = asked.find("set");
    Optional<String> id = asked.findText("profile", PROFILE);
    Map<String, Object> readings =
        Readings.filled(asked.object("readings", "an object: size and length"));
    asked.requireNothingElse();
    if (id.isPresent() == !readings.isEmpty()) {
      throw RefusedException.field("profile", "or readings must be given, one of the two", PROFILE);
    }
    return id.isPresent() ? answer(ofSet(set, id.get())) : answer(readings);
  }

  private static PlugProfile ofSet(Optional<Object> given, String id) throws RefusedException {
    if (given.isEmpty()) {
      throw RefusedException.field("set", "is missing", "the text of a set file, or an object");
    }
    AskedJob job = AskedJob.begun();
    job.profiles(given.get());
    ReferenceSet set = job.read().catalogue().profiles();
    return set.profile(id)
        .orElseThrow(() -> RefusedException.field(
            "profile",
            "\"" + id + "\" is none of the set",
            String.join(", ", set.profiles().stream().map(PlugProfile::id).toList())));
  }

  private static Map<String, Object> answer(Map<String, Object> readings) throws RefusedException {
    AskedJob job = AskedJob.begun();
    job.place("atHand.", "");
    job.put(
        "atHand",
        Map.of(
            "where", "the counter", "instrument", "digital caliper 0.01 mm", "readings", readings));
    PlugProfile.Builder plug = PlugProfile.builder("at-hand")
        .displayName("Plug at hand")
        .from(Provenance.nominalUnverified(), Source.measured("readings of the plug at hand"))
        .confirmUnusual();
    for (PlugReading reading : job.read().atHand().map(AtHand::readings).orElse(List.of())) {
      plug.dimension(
          reading.dimension(), PartSpread.normal(reading.length(), reading.standardUncertainty()));
    }
    return answer(plug.build());
  }

  private static Map<String, Object> answer(PlugProfile profile) {
    Set<Dimension> missing = PlugDrawing.missing(profile);
    Map<String, Object> answer = new LinkedHashMap<>();
    if (missing.isEmpty()) {
      PlugDrawing drawing = PlugDrawing.of(profile).onScreen();
      answer.put("picture", Shown.picture(drawing.svg()));
      answer.put("width", drawing.width().millimetres());
      answer.put("height", drawing.height().millimetres());
    }
    answer.put("missing", missing.stream().map(Dimension::label).toList());
    return answer;
  }
}
