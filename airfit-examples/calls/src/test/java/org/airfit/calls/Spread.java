package org.airfit.calls;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Random;
import org.airfit.files.CatalogueFile;
import org.airfit.files.Document;
import org.airfit.files.Json;
import org.airfit.files.ReferenceSetFile;
import org.airfit.measure.Instrument;
import org.airfit.plug.Dimension;
import org.airfit.plug.PlugProfile;
import org.airfit.plug.ReferenceSet;

/** What is asked of both, the JVM and JavaScript: all that the examples hold, and more at random. */
final class Spread {

  private static final List<String> ENDS = List.of(
      "1/8 NPT male",
      "1/4 NPT male",
      "1/4 NPT female",
      "3/8 NPT female",
      "1/2 NPT male",
      "1/2 NPT female",
      "3/4 NPT female",
      "1/4 NPTF female",
      "1/2 NPTF male",
      "1/4 NPSM male",
      "R 1/4 male",
      "R 1/2 male",
      "Rc 1/4 female",
      "Rp 1/2 female",
      "G 1/4 male",
      "G 1/4 female",
      "G 1/2 female",
      "G 3/8 port",
      "G 1/4 male with washer",
      "M5 male",
      "10-32 male",
      "1/4 in barb",
      "3/8 in barb",
      "10 mm barb",
      "1/4 in hose",
      "3/8 in hose",
      "10 mm hose",
      "8 mm push-in",
      "8 mm tube",
      "9/16-18 O-ring port",
      "37° flare 7/16-20 male",
      "45° flare 7/16-20 nut",
      "two-lug claw",
      "European claw",
      "garden hose male",
      "R 1/4 female",
      "12 mm tube");

  /** A call and what it is given. */
  record Asking(String call, Map<String, Object> asked) {}

  private final List<Asking> askings = new ArrayList<>();

  private Spread() {}

  static List<Asking> askings() throws Exception {
    Spread spread = new Spread();
    spread.plugs();
    spread.ends();
    spread.runs();
    spread.jobs();
    spread.randomJobs();
    spread.others();
    return spread.askings;
  }

  /** Names and values in turn. */
  static Map<String, Object> of(Object... fields) {
    Map<String, Object> map = new LinkedHashMap<>();
    for (int i = 0; i < fields.length; i += 2) {
      map.put(String.valueOf(fields[i]), fields[i + 1]);
    }
    return map;
  }

  private void ask(String call, Object... fields) {
    askings.add(new Asking(call, of(fields)));
  }

  /** Every plug of every set: as it should be, worn, in part, in inches, with slips, with repeats. */
  private void plugs() throws Exception {
    Map<Object, ReferenceSet> sets = new LinkedHashMap<>();
    for (Path catalogue : Example.catalogues()) {
      Map<String, Object> plain = Example.plain(catalogue);
      if (plain.containsKey("profiles")) {
        Map<String, Object> profiles = of(
            "catalogue",
            Example.at(plain, "catalogue"),
            "profiles",
            Example.at(plain, "profiles"),
            "parts",
            List.of());
        sets.put(profiles, CatalogueFile.read(Document.of("c", profiles)).profiles());
      }
    }
    String workshop = Example.workshop();
    sets.put(workshop, SetCall.read(workshop, java.util.Optional.empty()).set());
    Random random = new Random(7);
    for (Map.Entry<Object, ReferenceSet> each : sets.entrySet()) {
      for (PlugProfile profile : each.getValue().profiles()) {
        for (Instrument caliper : Instrument.values()) {
          for (int variant = 0; variant < 12; variant++) {
            plug(each.getKey(), profile, caliper, variant, random);
          }
        }
      }
      ask("identify", "set", each.getKey());
      ask("identify", "set", each.getKey(), "socketOnly", true);
      ask("identify", "set", each.getKey(), "readings", of("tip diametr", "11 mm"));
      ask("identify", "set", each.getKey(), "readings", of("bore", "700 mm"));
    }
  }

  private void plug(
      Object set, PlugProfile profile, Instrument caliper, int variant, Random random) {
    Map<String, Object> readings = new LinkedHashMap<>();
    for (Dimension dimension : Dimension.values()) {
      boolean isRead = variant < 4 || random.nextInt(3) > 0;
      if (!isRead || profile.spread(dimension).isEmpty()) {
        continue;
      }
      double mm = profile.spread(dimension).orElseThrow().nominal().millimetres()
          + (variant == 0 ? 0.0 : 0.05 * random.nextGaussian())
          - (variant == 5 ? 0.2 : 0.0);
      readings.put(
          dimension.label(),
          switch (variant) {
            case 6 -> String.format(Locale.ROOT, "%.4f in", mm / 25.4);
            case 7 -> String.format(Locale.ROOT, "%.2f in", mm / 25.4 * 0.97);
            case 8 ->
              List.of(
                  String.format(Locale.ROOT, "%.2f mm", mm),
                  String.format(Locale.ROOT, "%.2f mm", mm + 0.03));
            case 9 -> String.format(Locale.ROOT, "%.3f mm", mm / 25.4);
            default -> String.format(Locale.ROOT, "%.2f mm", mm);
          });
    }
    Map<String, Object> asked = of("set", set, "readings", readings, "caliper", caliper.label());
    if (variant == 1 || variant == 10) {
      asked.put("worn", "as new");
    }
    if (variant == 2 || variant == 11) {
      asked.put("noNearCopies", true);
    }
    if (variant == 3) {
      asked.put("working", true);
    }
    if (variant == 4) {
      asked.put("units", "US");
    }
    askings.add(new Asking("identify", asked));
  }

  private void ends() {
    for (String one : ENDS) {
      for (String other : ENDS) {
        ask("willItGo", "one", one, "other", other);
      }
    }
    ask("willItGo", "one", "1/2 NPT mal", "other", "G 1/4 female");
    ask("willItGo", "one", "1/2 NPT male");
    ask("willItGo", "one", 5, "other", "x");
  }

  private void runs() {
    Random random = new Random(8);
    for (int i = 0; i < 260; i++) {
      List<Object> elements = new ArrayList<>();
      int count = 1 + random.nextInt(4);
      for (int j = 0; j < count; j++) {
        elements.add(element(j, random));
      }
      boolean us = random.nextBoolean();
      Map<String, Object> asked = of(
          "supply",
          us ? (60 + random.nextInt(90)) + " psig" : (4 + random.nextInt(8)) + ".5 bar(g)",
          "elements",
          elements,
          "flow",
          us ? (3 + random.nextInt(60)) + " scfm" : (2 + random.nextInt(30)) + " L/s ANR");
      if (random.nextInt(3) > 0) {
        asked.put("needed", us ? "80 psig" : "6 bar(g)");
      }
      if (random.nextInt(4) == 0) {
        asked.put("atmosphere", us ? "12.2 psia" : "0.9 bar(a)");
      }
      if (random.nextInt(4) == 0) {
        asked.put("working", true);
      }
      askings.add(new Asking("run", asked));
    }
    ask("run", "supply", "90", "elements", List.of(), "flow", "20 scfm");
    ask("run", "supply", "90 psig", "elements", List.of(of("name", "x")), "flow", "20 scfm");
    ask("run", "supply", "90 psig", "elements", "hose", "flow", "20");
  }

  private static Map<String, Object> element(int number, Random random) {
    String length = (2 + random.nextInt(40)) + " m";
    return switch (random.nextInt(4)) {
      case 0 ->
        of(
            "name",
            "hose " + number,
            "size",
            random.nextBoolean() ? "3/8 in hose" : "1/2 in hose",
            "length",
            length);
      case 1 ->
        of(
            "name",
            "pipe " + number,
            "bore",
            (6 + random.nextInt(30)) + " mm",
            "length",
            length,
            "wall",
            "galvanized");
      case 2 ->
        of(
            "name",
            "coupling " + number,
            "capacity",
            of(
                "conductance",
                (1 + random.nextInt(9)) + " dm3/(s bar)",
                "criticalPressureRatio",
                0.2));
      default ->
        of("name", "hose " + number, "bore", "1/4 in", "length", length, "roughness", "0.01 mm");
    };
  }

  private void jobs() throws Exception {
    for (Path job : Example.jobs()) {
      Map<String, String> files = Example.filesOf(job);
      String name = String.valueOf(job.getFileName());
      ask("sheet", "job", name, "files", files, "today", "2026-11-28");
      ask("select", "job", name, "files", files, "most", 2, "working", true);
    }
    Map<String, String> boatyard =
        Example.filesOf(Example.JOBS.resolve("boatyard").resolve("blow-gun.json"));
    ask("select", "job", "{\"airfitJob\": 2,", "files", boatyard);
    ask("select", "job", "{\"airfitJob\": 2, \"job\": 1.5e3}", "files", boatyard);
    ask("select", "job", "{\"airfitJob\": 2, \"airfitJob\": 2}", "files", boatyard);
    ask("select", "job", "blow-gun.json");
    for (String medium : List.of("breathing air", "oxygen", "argon")) {
      Map<String, Object> job =
          Example.plain(Example.JOBS.resolve("boatyard").resolve("blow-gun.json"));
      job.put("conditions", of("medium", medium));
      ask("select", "job", job, "files", boatyard);
      ask(
          "sheet",
          "job",
          "j.json",
          "files",
          of("j.json", Json.write(job), "catalogue.json", Example.boatyard()));
    }
  }

  /** Jobs at random: lines, tools, places, aims; some are refused, some have nothing that fits. */
  private void randomJobs() throws Exception {
    Random random = new Random(9);
    List<String> catalogues = new ArrayList<>();
    for (Path path : Example.catalogues()) {
      if (Example.plain(path).containsKey("profiles")) {
        catalogues.add(Files.readString(path));
      }
    }
    for (int i = 0; i < 40; i++) {
      String catalogue = catalogues.get(random.nextInt(catalogues.size()));
      ask("select", "job", job(random), "files", of("catalogue.json", catalogue), "most", 2);
    }
  }

  private static <T> T any(Random random, List<T> of) {
    return of.get(random.nextInt(of.size()));
  }

  private static Map<String, Object> job(Random random) {
    List<Object> line = new ArrayList<>();
    if (random.nextBoolean()) {
      line.add(of(
          "kind",
          "regulator",
          "name",
          "regulator of the bench",
          "set",
          any(random, List.of("6.3 bar(g)", "90 psig", "5 bar(g)"))));
    }
    if (random.nextBoolean()) {
      line.add(of(
          "kind",
          "pipe",
          "bore",
          any(random, List.of("0.82 in", "21 mm", "1/2 in")),
          "length",
          any(random, List.of("30 ft", "12 m")),
          "wall",
          "galvanized"));
    }
    line.add(of(
        "kind",
        "outlet",
        "end",
        any(random, List.of("1/2 NPT female", "3/8 NPT female", "G 1/2 female", "1/2 NPT male"))));
    line.add(of("kind", "coupling", "name", "coupling at the outlet"));
    line.add(of("kind", "hose", "reach", any(random, List.of("10 m", "25 ft", "15 m", "longest"))));
    if (random.nextInt(3) > 0) {
      line.add(of("kind", "coupling", "name", "coupling at the tool"));
    }
    Map<String, Object> tool = of(
        "name", any(random, List.of("Angle grinder", "Sander", "Blow gun")),
        "air", any(random, List.of("11 scfm", "5 L/s ANR", "25 scfm", "16 to 20 scfm")),
        "pressure", any(random, List.of("80 psig", "6 bar(g)", "90 psig")),
        "inlet", any(random, List.of("1/4 NPT female", "1/4 NPT male", "G 1/4 female")));
    if (random.nextBoolean()) {
      tool.put("notAbove", any(random, List.of("90 psig", "8 bar(g)", "120 psig")));
    }
    if (random.nextInt(3) == 0) {
      tool.put(any(random, List.of("hammers", "cleans", "paints", "blasts")), true);
    }
    Map<String, Object> job = of(
        "airfitJob",
        2,
        "job",
        "At random",
        "customer",
        "Nobody (invented)",
        "catalogue",
        "catalogue.json",
        "supply",
        of("pressure", any(random, List.of("100 to 125 psig", "8.5 bar(g)", "7 bar(g)"))),
        "line",
        line,
        "tool",
        tool);
    Map<String, Object> conditions = of(
        "place",
        any(
            random,
            List.of("indoors", "outdoors", "salt air", "wash down with water", "sparking hazard")));
    if (random.nextBoolean()) {
      conditions.put("dragged", true);
    }
    if (random.nextInt(4) == 0) {
      conditions.put("dropped", true);
    }
    if (random.nextInt(4) > 0) {
      job.put("conditions", conditions);
    }
    job.put("rankedBy", any(random, List.of("lowest price", "fewest pieces")));
    return job;
  }

  private void others() throws Exception {
    String measured = """
        record,id,name,from,pieces,source,basis,dimension,readings,caliper
        set,,Found in the drawer (invented),,,,,,,
        profile,a,Drawer A,measured,6,read at the bench (invented),measured,tip diameter,\
        11.91 mm | 11.93 mm | 11.90 mm | 11.92 mm | 11.94 mm | 11.91 mm,
        profile,a,,,,,,bore,7.60 mm | 7.62 mm | 7.58 mm | 7.61 mm | 7.59 mm | 7.60 mm,
        profile,b,Drawer B,measured,5,read at the bench (invented),measured,tip diameter,\
        9.21 mm | 9.19 mm | 9.20 mm | 9.22 mm | 9.90 mm,
        """;
    for (String paper : List.of("A4", "Letter")) {
      ask("referenceSet", "set", Example.workshop(), "paper", paper);
      ask("referenceSet", "set", measured, "paper", paper);
    }
    ask("referenceSet", "set", "set,name\n");
    ask("referenceSet", "set", Example.workshop(), "paper", "A3");
    ask(
        "referenceSet",
        "set",
        ReferenceSetFile.toObject(
            SetCall.read(Example.workshop(), java.util.Optional.empty()).set()));
    for (Dimension dimension : Dimension.values()) {
      ask("measuring", "size", dimension.label());
    }
    ask("measuring");
    ask("measuring", "size", "height");
    ask("choices");
    for (String profile : List.of("tern", "gannet", "skua", "auk")) {
      ask("outline", "set", Example.workshop(), "profile", profile);
    }
    Map<String, Object> readings = new LinkedHashMap<>();
    Iterator<String> sizes = List.of(
            "11.9", "15.1", "16.2", "26.4", "3.6", "10.7", "11.3", "13.6", "7.6")
        .iterator();
    for (Dimension dimension : Dimension.values()) {
      readings.put(dimension.label(), sizes.next() + " mm");
    }
    ask("outline", "readings", new LinkedHashMap<>(readings));
    readings.remove("bore");
    ask("outline", "readings", readings);
    for (Path catalogue : Example.catalogues()) {
      ask(
          "stock",
          "catalogue",
          "c.json",
          "files",
          of("c.json", Files.readString(catalogue), "workshop.csv", Example.workshop()));
    }
    ask("jobFile", "job", Example.plain(Example.jobs().get(0)));
  }
}
