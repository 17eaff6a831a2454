package org.airfit.files;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.airfit.air.AirState;
import org.airfit.flow.FlowCapacity;
import org.airfit.plant.RegulatorElement;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.PressureDrop;
import org.airfit.quantity.Temperature;
import org.airfit.run.GaugeClass;
import org.airfit.run.GaugeReading;
import org.airfit.run.GaugeTest;
import org.airfit.run.PressureGauge;
import org.airfit.run.Run;
import org.airfit.run.Suspect;
import org.airfit.run.ToolDemand;
import org.airfit.run.ToolState;
import org.airfit.working.UnitSystem;

/** What a diagnosis file says, a JSON object; docs/diagnosis-file.md has the fields. */
public final class DiagnosisFile {

  private static final String VERSION = "airfitDiagnosis";

  private static final List<String> LINES = List.of("pipe", "tube", "hose", "whip hose");

  private static final List<String> KINDS = List.of(
      "pipe",
      "tube",
      "hose",
      "whip hose",
      "coupling",
      "filter",
      "lubricator",
      "valve",
      "reel",
      "part",
      "regulator");

  private static final String NAMED = "the name of an item of the line, \"supply\" for its droop,"
      + " \"tool\" for its air, or \"leak behind\" and a name";

  private static final String LEAK = "leak behind ";

  private final Field file;

  private DiagnosisFile(Field file) {
    this.file = file;
  }

  /**
   * Reads a run with readings of its gauges.
   *
   * @param document a JSON object
   * @return the run and the readings
   * @throws WrongFileException if a field is missing, misspelt or refused
   */
  public static DiagnosisJob read(Document document) throws WrongFileException {
    return new DiagnosisFile(FileForm.of(document, VERSION)).read();
  }

  private DiagnosisJob read() throws WrongFileException {
    String title = file.field("title", "what is asked").text();
    String customer = file.field("customer", "whose run it is").text();
    AbsolutePressure atmosphere = FlowFields.atmosphere(
        file.field("atmosphere", "an absolute pressure such as 1.013 bar(a)"));
    Temperature temperature =
        file.field("temperature", "a temperature such as 20 °C").as(Temperature::parse);
    Field supply = file.field("supply", "an object with a pressure");
    Field told = supply.field("pressure", Accepted.GAUGE);
    GaugePressure pressure = told.as(GaugePressure::parse);
    UnitSystem units = units(told);
    Run run = file.build(
        () -> Run.from(AirState.of(pressure.absolute(atmosphere), temperature), atmosphere));
    List<Field> items =
        file.field("line", "a list of what the air goes through").items();
    for (Field item : items) {
      run = through(run, item, atmosphere);
    }
    Run whole = run;
    ToolDemand tool = tool(file.field("tool", "an object with the air of the tool"), atmosphere);
    GaugeTest test = file.build(() -> GaugeTest.of(whole, tool));
    for (Field item : items) {
      test = known(test, item);
    }
    Optional<Field> holds = supply.find("holdsWithin");
    if (holds.isPresent()) {
      GaugeTest now = test;
      PressureDrop within = holds.get().as(PressureDrop::parse);
      test = holds.get().build(() -> now.withSupplyHolding(within));
    }
    supply.requireNothingElse();
    Optional<Field> air = file.field("tool", "").find("airKnownWithin");
    if (air.isPresent()) {
      GaugeTest now = test;
      double share = air.get().number();
      test = air.get().build(() -> now.withToolAirKnownWithin(share));
    }
    test = suspecting(test);
    List<GaugeReading> readings = readings();
    file.requireNothingElse();
    GaugeTest asked = test;
    file.build(() -> asked.read(readings));
    return new DiagnosisJob(title, customer, test, readings, units);
  }

  private UnitSystem units(Field pressure) throws WrongFileException {
    Optional<UnitSystem> told = TypedUnits.told(file);
    return told.isPresent() ? told.get() : TypedUnits.ofPressure(pressure);
  }

  private static String name(Field item, String kind) throws WrongFileException {
    Optional<Field> name = item.find("name");
    return name.isPresent() ? name.get().text().strip() : kind;
  }

  private static Run through(Run run, Field item, AbsolutePressure atmosphere)
      throws WrongFileException {
    String kind = item.field("kind", String.join(", ", KINDS)).oneOf(KINDS, word -> word);
    String name = name(item, kind);
    item.find("lossKnownWithin");
    item.find("unmarked");
    if (LINES.contains(kind)) {
      return item.build(() -> run.through(name, FlowFields.conduit(item)));
    }
    FlowCapacity capacity = FlowFields.ofRow(item);
    if (!kind.equals("regulator")) {
      return item.build(() -> run.through(name, capacity));
    }
    GaugePressure set = item.field("set", Accepted.GAUGE).as(GaugePressure::parse);
    RegulatorElement regulator =
        item.build(() -> RegulatorElement.of(capacity, set.absolute(atmosphere)));
    if (item.find("droop").isPresent() || item.find("droopAt").isPresent()) {
      PressureDrop droop = item.field(
              "droop", "by how much less it holds at droopAt, such as 6 psi")
          .as(PressureDrop::parse);
      JobLine.requireDroopBelow(item, droop, set);
      FreeAirFlow flow = item.field(
              "droopAt", "the free-air flow at which it droops, such as 20 scfm")
          .as(FreeAirFlow::parse);
      return item.build(() -> run.through(name, regulator.withDroop(droop, flow)));
    }
    return item.build(() -> run.through(name, regulator));
  }

  private static GaugeTest known(GaugeTest test, Field item) throws WrongFileException {
    String name = name(item, item.field("kind", "").oneOf(KINDS, word -> word));
    GaugeTest known = test;
    Optional<Field> within = item.find("lossKnownWithin");
    if (within.isPresent()) {
      double share = within.get().number();
      known = within.get().build(() -> test.withLossKnownWithin(name, share));
    }
    if (item.flag("unmarked")) {
      GaugeTest now = known;
      if (now.unmarkedElement().isPresent()) {
        throw item.wrong(
            "is a second one that is unmarked; keep one, and tell the other as well as you can");
      }
      known = item.build(() -> now.unmarked(name));
    }
    item.requireNothingElse();
    return known;
  }

  private static ToolDemand tool(Field tool, AbsolutePressure atmosphere)
      throws WrongFileException {
    String name = tool.field("name", "what the tool is").text();
    FreeAirFlow air = tool.field("air", "a free-air flow such as \"34 scfm\" or \"16 L/s ANR\"")
        .as(FreeAirFlow::parse);
    GaugePressure rated = tool.field("pressure", Accepted.GAUGE).as(GaugePressure::parse);
    Optional<Field> follows = tool.find("follows");
    tool.find("airKnownWithin");
    boolean following = follows.isEmpty() || follows.get().yes();
    ToolDemand demand = tool.build(() -> following
        ? ToolDemand.following(name, air, rated.absolute(atmosphere))
        : ToolDemand.fixed(name, air));
    tool.requireNothingElse();
    return demand;
  }

  private GaugeTest suspecting(GaugeTest test) throws WrongFileException {
    Optional<Field> told = file.find("suspects", "a list of names, or \"any\"");
    if (told.isEmpty() || (told.get().isText() && told.get().text().strip().equals("any"))) {
      return test;
    }
    List<Suspect> suspects = new ArrayList<>();
    for (Field item : told.get().items()) {
      suspects.add(suspect(test, item));
    }
    return told.get().build(() -> test.suspecting(suspects));
  }

  private static Suspect suspect(GaugeTest test, Field item) throws WrongFileException {
    String word = item.text().strip();
    return test.suspects().stream()
        .filter(suspect -> word(suspect).equals(word))
        .findFirst()
        .orElseThrow(() -> item.wrong("was \"" + word + "\"; accepted: " + NAMED));
  }

  /** What a suspect is called in a file. */
  private static String word(Suspect suspect) {
    return switch (suspect.kind()) {
      case LEAK -> LEAK + suspect.place();
      case NOTHING, PART, BORE, DROOP, TOOL_AIR, GAUGE, OTHER -> suspect.place();
    };
  }

  private List<GaugeReading> readings() throws WrongFileException {
    Map<String, PressureGauge> gauges = new LinkedHashMap<>();
    for (Field item : file.field("gauges", "a list of gauges").items()) {
      PressureGauge gauge = gauge(item);
      if (gauges.put(gauge.name(), gauge) != null) {
        throw item.wrong("is a second gauge called \"" + gauge.name() + "\"; call it otherwise");
      }
    }
    List<GaugeReading> readings = new ArrayList<>();
    for (Field item : file.field("readings", "a list of readings").items()) {
      Field named = item.field("gauge", "the name of a gauge");
      PressureGauge gauge = gauges.get(named.text().strip());
      if (gauge == null) {
        throw named.wrong("was \"" + named.text().strip() + "\"; accepted: "
            + String.join(", ", gauges.keySet()));
      }
      String place = item.field(
              "behind", "\"supply\", or the name of the item of the line behind which it was read")
          .text()
          .strip();
      read(item, "atRest", gauge, place, ToolState.AT_REST).ifPresent(readings::add);
      read(item, "running", gauge, place, ToolState.RUNNING).ifPresent(readings::add);
      item.requireNothingElse();
    }
    return readings;
  }

  private static Optional<GaugeReading> read(
      Field item, String field, PressureGauge gauge, String place, ToolState state)
      throws WrongFileException {
    Optional<Field> told = item.find(field, Accepted.GAUGE);
    if (told.isEmpty()) {
      return Optional.empty();
    }
    GaugePressure shown = told.get().as(GaugePressure::parse);
    return Optional.of(told.get().build(() -> new GaugeReading(gauge, place, state, shown)));
  }

  private static PressureGauge gauge(Field item) throws WrongFileException {
    String name = item.field("name", "what to call the gauge").text().strip();
    GaugePressure top =
        item.field("top", "the top of its scale, such as \"10 bar(g)\"").as(GaugePressure::parse);
    PressureDrop step =
        item.field("step", "to what it is read, such as \"0.1 bar\"").as(PressureDrop::parse);
    Optional<Field> accuracy = item.find("class", "the class on its dial, such as \"1.6\"");
    Optional<Field> limit = item.find("limit", "its limit of error, such as \"0.2 bar\"");
    if (accuracy.isPresent() == limit.isPresent()) {
      throw item.wrong("must have its class, such as \"1.6\", or its limit of error, such as"
          + " \"0.2 bar\", and not both");
    }
    PressureGauge gauge;
    if (accuracy.isPresent()) {
      GaugeClass read = accuracy.get().as(GaugeClass::parse);
      gauge = item.build(() -> PressureGauge.ofClass(name, read, top, step));
    } else {
      PressureDrop told = limit.orElseThrow().as(PressureDrop::parse);
      gauge = item.build(() -> new PressureGauge(name, top, told, step));
    }
    item.requireNothingElse();
    return gauge;
  }
}
