package org.airfit.calls;

import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.airfit.jobsheet.JobSheet;
import org.airfit.jobsheet.OnScreen;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.GaugePressure;
import org.airfit.run.ElementLoss;
import org.airfit.run.RunResult;
import org.airfit.safety.Caution;
import org.airfit.working.UnitSystem;

/** What several answers are made of, as plain values. */
final class Shown {

  private static final String LABEL = "aria-label=\"";

  private Shown() {}

  /** The name of a constant as a word of JavaScript, such as "noMatch". */
  static String kind(Enum<?> constant) {
    StringBuilder out = new StringBuilder();
    for (String word : constant.name().split("_", -1)) {
      out.append(out.length() == 0 ? "" : word.substring(0, 1));
      out.append(word.substring(out.length() == 0 ? 0 : 1).toLowerCase(Locale.ROOT));
    }
    return out.toString();
  }

  static Map<String, Object> caution(Caution caution) {
    Map<String, Object> told = new LinkedHashMap<>();
    told.put("title", caution.title());
    told.put("text", caution.text());
    told.put("source", caution.source().toString());
    return told;
  }

  static List<Object> cautions(Collection<Caution> cautions) {
    List<Object> told = new ArrayList<>();
    cautions.forEach(each -> told.add(caution(each)));
    return told;
  }

  /** A drawing with what its label says. */
  static Map<String, Object> picture(String svg) {
    Map<String, Object> told = new LinkedHashMap<>();
    told.put("svg", svg);
    told.put("alt", alt(svg));
    return told;
  }

  static Map<String, Object> chart(OnScreen.Chart chart) {
    Map<String, Object> told = new LinkedHashMap<>();
    told.put("wide", chart.wide());
    told.put("narrow", chart.narrow());
    told.put("alt", alt(chart.wide()));
    return told;
  }

  /** The label of a drawing, as plain text. */
  static String alt(String svg) {
    int from = svg.indexOf(LABEL);
    if (from < 0) {
      return "";
    }
    int to = svg.indexOf('"', from + LABEL.length());
    return svg.substring(from + LABEL.length(), to)
        .replace("&lt;", "<")
        .replace("&gt;", ">")
        .replace("&quot;", "\"")
        .replace("&amp;", "&");
  }

  /** A pressure above the atmosphere. */
  static Map<String, Object> pressure(
      AbsolutePressure pressure, AbsolutePressure atmosphere, UnitSystem units) {
    GaugePressure above = GaugePressure.of(pressure, atmosphere);
    Map<String, Object> told = new LinkedHashMap<>();
    told.put("text", units.say(above));
    told.put("bar", above.bar());
    return told;
  }

  /** What each element loses; in front of them the regulator at the supply, which has no share of what they lose. */
  static List<Object> losses(JobSheet sheet, RunResult result) {
    UnitSystem units = sheet.units();
    AbsolutePressure atmosphere = sheet.job().atmosphere();
    List<Object> losses = new ArrayList<>();
    OnScreen.atSupply(sheet, result).ifPresent(regulator -> {
      Map<String, Object> loss = new LinkedHashMap<>();
      loss.put("name", regulator.name());
      loss.put("loss", regulator.loss());
      loss.put("share", "");
      loss.put("fraction", 0.0);
      loss.put("gain", "");
      loss.put("inlet", pressure(regulator.set().absolute(atmosphere), atmosphere, units));
      loss.put("outlet", pressure(shares(result).get(0).inlet(), atmosphere, units));
      loss.put("notes", List.of(regulator.note()));
      losses.add(loss);
    });
    for (ElementLoss share : shares(result)) {
      Map<String, Object> loss = new LinkedHashMap<>();
      loss.put("name", share.name());
      loss.put("loss", units.say(share.lost()));
      loss.put("share", OnScreen.share(share.fraction()));
      loss.put("fraction", share.fraction());
      loss.put("gain", units.say(share.gain()));
      loss.put("inlet", pressure(share.inlet(), atmosphere, units));
      loss.put("outlet", pressure(share.outlet(), atmosphere, units));
      loss.put("notes", OnScreen.notes(sheet, share));
      losses.add(loss);
    }
    return losses;
  }

  static List<ElementLoss> shares(RunResult result) {
    return result.fold(RunResult.Delivered::shares, RunResult.Starved::before);
  }

  /** Puts a value where there is one. */
  static void put(Map<String, Object> told, String name, Optional<?> value) {
    value.ifPresent(present -> told.put(name, present));
  }
}
