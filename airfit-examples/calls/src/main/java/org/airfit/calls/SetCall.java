package org.airfit.calls;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.airfit.drawing.PlugDrawing;
import org.airfit.drawing.PlugSheet;
import org.airfit.files.Csv;
import org.airfit.files.Document;
import org.airfit.files.MeasuredSet;
import org.airfit.files.Printable;
import org.airfit.files.ReferenceSetFile;
import org.airfit.files.WrongFileException;
import org.airfit.jobsheet.SetText;
import org.airfit.plug.Dimension;
import org.airfit.plug.KnownPlugs;
import org.airfit.plug.PlugProfile;
import org.airfit.plug.ReferenceSet;
import org.airfit.plug.UniversalSocket;

/** What a reference set is worth, and the set as a file. */
final class SetCall {

  private static final String SET =
      "the text of a set file (docs/reference-set-file.md), or an object";

  private SetCall() {}

  static Map<String, Object> answer(Asked asked) throws RefusedException {
    Object set = asked.value("set", SET);
    Optional<String> paper = asked.findText("paper", "A4, Letter");
    Optional<String> name = asked.findText("name", "a name for complaints");
    asked.requireNothingElse();
    Optional<PlugSheet.Paper> chosen =
        paper.isPresent() ? Optional.of(paper(paper.get())) : Optional.empty();
    MeasuredSet measured = read(set, name);
    return answer(measured, chosen);
  }

  /** Reads a set; whether its text is JSON is seen by how it begins. */
  static MeasuredSet read(Object set, Optional<String> called) throws RefusedException {
    boolean isTable = set instanceof String text && !Given.isJson(text);
    String name = called.orElse(isTable ? "set.csv" : "set.json");
    if (!(set instanceof String) && !(set instanceof Map)) {
      throw RefusedException.field("set", "was " + set, SET);
    }
    try {
      Object values = set instanceof String text ? Given.read(name, text, isTable) : set;
      return ReferenceSetFile.readMeasured(Document.of(name, values));
    } catch (WrongFileException e) {
      throw RefusedException.file(e);
    }
  }

  private static PlugSheet.Paper paper(String word) throws RefusedException {
    for (PlugSheet.Paper paper : PlugSheet.Paper.values()) {
      if (paper.name().equalsIgnoreCase(word)) {
        return paper;
      }
    }
    throw RefusedException.field("paper", "was \"" + word + "\"", "A4, Letter");
  }

  private static Map<String, Object> answer(MeasuredSet measured, Optional<PlugSheet.Paper> paper) {
    ReferenceSet set = measured.set();
    Map<String, Object> answer = new LinkedHashMap<>();
    answer.put("kind", "set");
    answer.putAll(IdentifyCall.set(set));
    List<Object> profiles = new ArrayList<>();
    set.profiles().forEach(profile -> profiles.add(profile(profile)));
    answer.put("profiles", profiles);
    List<Object> sockets = new ArrayList<>();
    for (UniversalSocket socket : set.sockets()) {
      Map<String, Object> told = new LinkedHashMap<>();
      told.put("name", socket.name());
      told.put("takes", List.copyOf(socket.profileIds()));
      sockets.add(told);
    }
    answer.put("sockets", sockets);
    List<Object> findings = new ArrayList<>();
    for (KnownPlugs record : measured.records()) {
      SetText.standing(record)
          .forEach(finding -> findings.add(record.profileId() + ": " + finding));
    }
    answer.put("findings", findings);
    answer.put("pairs", SetText.pairs(set));
    answer.put("text", SetText.of(measured));
    answer.put("csv", Csv.write(ReferenceSetFile.toRows(set)));
    answer.put("json", JsonText.write(ReferenceSetFile.toObject(set)));
    paper.ifPresent(
        chosen -> answer.put("page", Printable.lines(PlugSheet.of(set, chosen).html())));
    return answer;
  }

  private static Map<String, Object> profile(PlugProfile profile) {
    Map<String, Object> told = new LinkedHashMap<>();
    told.put("id", profile.id());
    told.put("name", profile.displayName());
    told.put("letters", List.copyOf(profile.aliases()));
    told.put("provenance", profile.provenance().toString());
    told.put(
        "sizes", profile.dimensions().keySet().stream().map(Dimension::label).toList());
    told.put(
        "missing", PlugDrawing.missing(profile).stream().map(Dimension::label).toList());
    return told;
  }
}
