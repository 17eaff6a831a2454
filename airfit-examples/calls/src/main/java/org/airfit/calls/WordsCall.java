package org.airfit.calls;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.airfit.files.JobFile;
import org.airfit.files.ShopCatalogue;
import org.airfit.files.WrongFileException;
import org.airfit.measure.Instrument;
import org.airfit.plug.Dimension;
import org.airfit.plug.PlugProfile;
import org.airfit.select.Environment;

/** The words that fields accept, what a stock file holds, and a job as a file. */
final class WordsCall {

  private WordsCall() {}

  static Map<String, Object> choices() {
    Map<String, Object> answer = new LinkedHashMap<>();
    List<Object> sizes = new ArrayList<>();
    for (Dimension dimension : Dimension.values()) {
      sizes.add(size(dimension));
    }
    answer.put("sizes", sizes);
    answer.put(
        "calipers", List.of(Instrument.values()).stream().map(Instrument::label).toList());
    answer.put(
        "places",
        List.of(Environment.values()).stream().map(Environment::toString).toList());
    return answer;
  }

  static Map<String, Object> size(Dimension dimension) {
    Map<String, Object> size = new LinkedHashMap<>();
    size.put("size", dimension.label());
    size.put("symbol", dimension.symbol());
    size.put("definition", dimension.definition());
    size.put("how", dimension.howToMeasure());
    size.put("decides", dimension.whatItDecides());
    return size;
  }

  static Map<String, Object> stock(Asked asked) throws RefusedException {
    String name = asked.text("catalogue", "the name of a catalogue file among the files");
    Given files = Given.files(asked.object("files", "texts of files by name"));
    asked.requireNothingElse();
    try {
      ShopCatalogue catalogue = files.catalogue(name);
      Map<String, Object> answer = new LinkedHashMap<>();
      answer.put("kind", "stock");
      answer.put("name", catalogue.name());
      answer.put("parts", catalogue.parts().parts().size());
      answer.put("accessories", catalogue.parts().accessories().size());
      List<Object> profiles = new ArrayList<>();
      for (PlugProfile profile : catalogue.profiles().profiles()) {
        Map<String, Object> told = new LinkedHashMap<>();
        told.put("id", profile.id());
        told.put("name", profile.displayName());
        profiles.add(told);
      }
      answer.put("profiles", profiles);
      answer.put("remarks", catalogue.remarks());
      return answer;
    } catch (WrongFileException e) {
      throw RefusedException.file(e);
    }
  }

  static Map<String, Object> jobFile(Asked asked) throws RefusedException {
    Map<String, Object> answer = new LinkedHashMap<>();
    answer.put(
        "text",
        JsonText.write(
            JobFile.toObject(asked.object("job", "the fields of a job, docs/job-file.md"))));
    asked.requireNothingElse();
    return answer;
  }
}
