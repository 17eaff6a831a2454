package org.airfit.files;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.airfit.air.AirState;
import org.airfit.flow.FlowCapacity;
import org.airfit.line.ConduitRange;
import org.airfit.network.DayPrice;
import org.airfit.network.DemandTimes;
import org.airfit.network.LineReceiver;
import org.airfit.network.PlantDay;
import org.airfit.network.TimedUse;
import org.airfit.plant.PressureBand;
import org.airfit.plant.RegulatorElement;
import org.airfit.plant.SharedBand;
import org.airfit.plant.TimedCompressor;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.Money;
import org.airfit.quantity.Power;
import org.airfit.quantity.PressureDrop;
import org.airfit.quantity.Range;
import org.airfit.quantity.ReferenceState;
import org.airfit.quantity.Temperature;
import org.airfit.quantity.Volume;
import org.airfit.run.Run;
import org.airfit.run.ToolDemand;
import org.airfit.source.Source;
import org.airfit.working.UnitSystem;

/** What a day file says, JSON, with recordings as tables beside it; docs/day-file.md has the fields. */
public final class DayFile {

  /** The version of the form that is read. */
  private static final int VERSION = 1;

  private static final List<String> RECORDING = List.of("time", "flow");

  private static final String FLOW = "a free-air flow such as \"34 scfm\" or \"16 L/s ANR\"";

  /** Where nobody tells what a compressor takes idling: the middle of what is told of screws. */
  private static final double USUAL_IDLE = 0.35;

  /** The least and the most that is told of screws: published shares of the loaded power disagree so far. */
  private static final double LEAST_IDLE = 0.15;

  private static final double MOST_IDLE = 0.6;

  private static final int LEAP_YEAR = 366;

  private final Document document;
  private final List<String> remarks = new ArrayList<>();
  private final List<DayPrice.IdlePower> idlePowers = new ArrayList<>();
  private final AbsolutePressure atmosphere;
  private final Temperature temperature;
  private final Duration begins;
  private final Duration length;

  private DayFile(Document document, Field root) throws WrongFileException {
    this.document = document;
    this.atmosphere = FlowFields.atmosphere(
        root.field("atmosphere", "an absolute pressure such as \"1.013 bar(a)\""));
    this.temperature =
        root.field("temperature", "a temperature such as \"20 °C\"").as(Temperature::parse);
    Optional<Field> from = root.find("begins", ClockField.MOMENT);
    this.begins = from.isPresent() ? ClockField.clock(from.get()) : Duration.ZERO;
    Optional<Field> lasts = root.find("lasts", "a time such as \"24 h\"");
    this.length = lasts.isPresent() ? TimeField.of(lasts.get()) : Duration.ofDays(1);
  }

  /**
   * Reads a day.
   *
   * @param document a JSON object
   * @return the day
   * @throws WrongFileException if a field is missing, misspelt or refused
   */
  public static DayJob read(Document document) throws WrongFileException {
    Refusal.requireNone(document);
    Field root = Field.of(document);
    Field version = root.field("airfitDay", "the number " + VERSION);
    if (version.wholeNumber() != VERSION) {
      throw version.wrong("must be " + VERSION + ", was " + version.wholeNumber());
    }
    return new DayFile(document, root).read(root);
  }

  private DayJob read(Field root) throws WrongFileException {
    String title = root.field("title", "what to call the plant").text();
    String customer = root.field("customer", "whose plant it is").text();
    root.find("medium"); // refused above unless it is compressed air
    Optional<Field> units = root.find("units", "SI or US");
    PlantDay.Builder plant = PlantDay.at(atmosphere, temperature).lasting(length);
    Field receivers = root.field("receivers", "a list of receivers, in the order the air goes");
    for (Field item : receivers.items()) {
      plant.receiver(receiver(item));
    }
    Optional<Field> shared = root.find("sharedBand", "an object with cutIn, cutOut and pause");
    if (shared.isPresent()) {
      Field field = shared.get();
      PressureBand band = band(field);
      Duration pause = ClockField.span(field.field("pause", ClockField.SPAN));
      plant.sharedBand(field.build(() -> new SharedBand(band, pause)));
      field.requireNothingElse();
    }
    for (Field item : root.field("compressors", "a list of compressors").items()) {
      plant.compressor(compressor(item, shared.isPresent()));
    }
    Optional<Field> regulator = root.find("regulator", "the regulator in front of the header");
    if (regulator.isPresent()) {
      plant.regulator(regulator(regulator.get()));
    }
    for (Field item : root.field("uses", "a list of what takes air").items()) {
      plant.use(use(item));
    }
    UnitSystem system = units.isPresent()
        ? units.get().oneOf(List.of(UnitSystem.values()), UnitSystem::name)
        : typed(receivers);
    Optional<DayPrice> price = price(root);
    root.requireNothingElse();
    PlantDay day = root.build(plant::build);
    return new DayJob(title, customer, day, begins, price, system, remarks);
  }

  /** What electricity costs and how often such a day comes; both are told, or neither. */
  private Optional<DayPrice> price(Field root) throws WrongFileException {
    Optional<Field> electricity =
        root.find("electricity", "the price of a kWh, such as \"0.15 USD\"");
    Optional<Field> times = root.find("timesInYear");
    if (electricity.isEmpty()) {
      if (times.isPresent()) {
        throw times
            .get()
            .wrong("is told, but no price under electricity; give the price of a kWh, or leave"
                + " both out");
      }
      return Optional.empty();
    }
    Money rate = PriceField.of(electricity.get());
    Field told = root.field(
        "timesInYear", "how often such a day comes in a year, a whole number such as 230");
    int often = told.wholeNumber();
    long most = Duration.ofDays(LEAP_YEAR).toNanos() / length.toNanos();
    if (often > most) {
      throw told.wrong("must be at most " + most
          + ", as all such days together are no longer than a year; was " + often);
    }
    return Optional.of(told.build(() -> new DayPrice(rate, often, idlePowers)));
  }

  private static UnitSystem typed(Field receivers) throws WrongFileException {
    List<Field> items = receivers.items();
    return !items.isEmpty()
            && items.get(0).field("start", Accepted.GAUGE).text().contains("psi")
        ? UnitSystem.US
        : UnitSystem.SI;
  }

  private static String name(Field item) throws WrongFileException {
    return item.field("name", "what to call it").text().strip();
  }

  private LineReceiver receiver(Field item) throws WrongFileException {
    String name = name(item);
    Volume volume =
        item.field("volume", "a volume such as \"500 L\" or \"240 US gal\"").least(Volume::parse);
    GaugePressure start = item.field("start", Accepted.GAUGE).as(GaugePressure::parse);
    Optional<Run> join = run(item, "join");
    item.requireNothingElse();
    return item.build(() -> new LineReceiver(name, join, volume, start));
  }

  /** Elements in a row from something that holds its pressure. */
  private Optional<Run> run(Field item, String field) throws WrongFileException {
    Optional<Field> list =
        item.find(field, "a list such as [{\"name\": \"dryer\", \"capacity\": \"Cv 12\"}]");
    if (list.isEmpty()) {
      return Optional.empty();
    }
    Run run = Run.from(AirState.of(atmosphere, temperature), atmosphere);
    for (Field element : list.get().items()) {
      run = longer(run, element);
    }
    if (run.names().isEmpty()) {
      throw list.get().wrong("is empty; name what the air goes through, or leave it out");
    }
    return Optional.of(run);
  }

  private Run longer(Run run, Field element) throws WrongFileException {
    String name = name(element);
    Run longer;
    if (element.find("set").isPresent()) {
      RegulatorElement regulator = regulatorOf(element);
      longer = element.build(() -> run.through(name, regulator));
    } else if (element.find("length").isPresent()) {
      ConduitRange conduit = FlowFields.conduitOfOneLength(element);
      longer = element.build(() -> run.through(name, conduit.least()));
    } else {
      FlowCapacity capacity = FlowFields.ofRow(element);
      longer = element.build(() -> run.through(name, capacity));
    }
    element.requireNothingElse();
    return longer;
  }

  private RegulatorElement regulator(Field field) throws WrongFileException {
    RegulatorElement regulator = regulatorOf(field);
    field.requireNothingElse();
    return regulator;
  }

  private RegulatorElement regulatorOf(Field field) throws WrongFileException {
    GaugePressure set = field.field("set", Accepted.GAUGE).as(GaugePressure::parse);
    FlowCapacity valve = FlowFields.ofRow(field);
    RegulatorElement plain =
        field.build(() -> RegulatorElement.of(valve, set.absolute(atmosphere)));
    Optional<Field> droop = field.find("droop", "a pressure loss such as \"0.3 bar\"");
    if (droop.isEmpty()) {
      remarks.add(
          "The droop of the regulator set to " + set.inFewestDigits()
              + " is not told: it counts as none. It may take up to 1 bar (common practice, no source).");
      return plain;
    }
    PressureDrop drop = droop.get().most(PressureDrop::parse);
    FreeAirFlow at = field.field("droopAt", FLOW).least(FreeAirFlow::parse);
    return field.build(() -> plain.withDroop(drop, at));
  }

  private static PressureBand band(Field field) throws WrongFileException {
    GaugePressure cutIn = field.field("cutIn", Accepted.GAUGE).as(GaugePressure::parse);
    GaugePressure cutOut = field.field("cutOut", Accepted.GAUGE).as(GaugePressure::parse);
    return field.build(() -> new PressureBand(cutIn, cutOut));
  }

  private TimedCompressor compressor(Field item, boolean shares) throws WrongFileException {
    String name = name(item);
    FreeAirFlow delivery = delivery(item, name);
    Optional<PressureBand> band = shares ? Optional.empty() : Optional.of(band(item));
    Duration startDelay = ClockField.span(item.field("startDelay", ClockField.SPAN));
    Duration loadDelay = ClockField.span(item.field("loadDelay", ClockField.SPAN));
    Field runOn = item.field(
        "runOn", "how long it idles before it stops, such as \"10 min\", \"0 s\", or never");
    Optional<Duration> idles = runOn.text().strip().equals("never")
        ? Optional.empty()
        : Optional.of(ClockField.span(runOn));
    Optional<Field> blowDown = item.find("blowDown", ClockField.SPAN);
    Duration falls = blowDown.isPresent() ? ClockField.span(blowDown.get()) : Duration.ZERO;
    Power loaded =
        item.field("loadedPower", "an electric power such as \"22 kW\"").as(Power::parse);
    Optional<Field> idle = item.find("idlePower", "an electric power such as \"7 kW\"");
    Range<Power> between = idle.isPresent()
        ? idle.get().range(Power::parse)
        : new Range<>(
            Power.ofWatts(LEAST_IDLE * loaded.watts()), Power.ofWatts(MOST_IDLE * loaded.watts()));
    Power idling = idle.isPresent()
        ? Power.ofWatts(0.5 * (between.least().watts() + between.most().watts()))
        : Power.ofWatts(USUAL_IDLE * loaded.watts());
    if (idle.isEmpty()) {
      remarks.add("What " + name + " takes idling is not told: " + Math.round(100.0 * USUAL_IDLE)
          + " % of its loaded power is taken; what is told of screws runs from 15 to 60 %, and money"
          + " is told for all of that.");
    } else if (!between.isExact()) {
      remarks.add(
          "What " + name + " takes idling is told as " + idle.get().text().strip()
              + ": energy is counted with the middle of that, and money is told for all of it.");
    }
    if (!between.isExact()) {
      if (between.most().compareTo(loaded) > 0) {
        throw item.field("idlePower", "an electric power")
            .refused("it must be at most the loaded power");
      }
      idlePowers.add(item.build(() -> new DayPrice.IdlePower(name, between)));
    }
    GaugePressure ratedAt = item.field("ratedAt", Accepted.GAUGE).as(GaugePressure::parse);
    item.requireNothingElse();
    return item.build(() -> new TimedCompressor(
        name, delivery, band, startDelay, loadDelay, idles, falls, loaded, idling, ratedAt));
  }

  /** A maker's figure counts air as it stands at the inlet of the machine, unless it says otherwise. */
  private FreeAirFlow delivery(Field item, String name) throws WrongFileException {
    Field delivers =
        item.field("delivers", "a free-air flow such as \"120 cfm\" or \"55 L/s ANR\"");
    Optional<Field> counted =
        item.find("countedAt", "inlet, where the figure counts air as it is there");
    if (counted.isPresent()) {
      counted.get().oneOf(List.of("inlet"), word -> word);
      double volume = delivers.as(text -> FreeAirFlow.parse(text + " ANR")).cubicMetresPerSecond();
      ReferenceState here = ReferenceState.of(
          "inlet of " + name,
          temperature,
          atmosphere,
          0.0,
          Source.derived("the atmosphere and the temperature of the file"));
      return FreeAirFlow.from(
          org.airfit.quantity.MassFlow.ofKilogramsPerSecond(
              volume * here.density().kilogramsPerCubicMetre()),
          here);
    }
    return AirField.readings(delivers, AirState.of(atmosphere, temperature), remarks)
        .least();
  }

  private TimedUse use(Field item) throws WrongFileException {
    String name = name(item);
    Optional<Run> drop = run(item, "drop");
    Optional<Field> recording = item.find("recording", "an object with file and averagedOver");
    if (recording.isPresent()) {
      return recorded(item, name, drop, recording.get());
    }
    Range<FreeAirFlow> air =
        AirField.readings(item.field("air", FLOW), AirState.of(atmosphere, temperature), remarks);
    Optional<Field> leaksAt = item.find(
        "leaksAt", "the gauge pressure at which a leak was measured, such as \"100 psig\"");
    Optional<GaugePressure> need = leaksAt.isPresent() ? Optional.empty() : Optional.of(need(item));
    boolean follows = leaksAt.isPresent() || follows(item);
    GaugePressure at =
        leaksAt.isPresent() ? leaksAt.get().as(GaugePressure::parse) : need.orElseThrow();
    ToolDemand tool = item.build(() -> follows
        ? ToolDemand.following(name, air.most(), at.absolute(atmosphere))
        : ToolDemand.fixed(name, air.most()));
    DemandTimes when = times(item);
    item.requireNothingElse();
    return item.build(() -> new TimedUse(name, drop, tool, need, when));
  }

  private static GaugePressure need(Field item) throws WrongFileException {
    return item.field("needs", Accepted.GAUGE + "; or leaksAt for what only leaks")
        .most(GaugePressure::parse);
  }

  private static boolean follows(Field item) throws WrongFileException {
    Field follows = item.field(
        "follows", "true where it takes more air at more pressure, false where it is regulated");
    return follows.yes();
  }

  private DemandTimes times(Field item) throws WrongFileException {
    if (item.flag("always")) {
      return DemandTimes.always();
    }
    Optional<Field> repeated = item.find("repeated", "an object with from, to, lasting and every");
    if (repeated.isPresent()) {
      Field field = repeated.get();
      Duration first = ClockField.since(field.field("from", ClockField.MOMENT), begins);
      Duration until = end(field.field("to", ClockField.MOMENT), first);
      Duration lasting = TimeField.of(field.field("lasting", "a time such as \"40 s\""));
      Duration every = TimeField.of(field.field("every", "a time such as \"10 min\""));
      field.requireNothingElse();
      return field.build(() -> DemandTimes.repeated(first, lasting, every, until));
    }
    Field times = item.field(
        "times",
        "a list such as [{\"from\": \"07:00\", \"to\": \"09:30\"}]; or repeated, or always");
    List<DemandTimes.Span> spans = new ArrayList<>();
    for (Field span : times.items()) {
      Duration from = ClockField.since(span.field("from", ClockField.MOMENT), begins);
      Duration to = end(span.field("to", ClockField.MOMENT), from);
      Optional<Field> load = span.find("load", "the part of the air that is taken, such as 0.6");
      double part = load.isPresent() ? load.get().number() : 1.0;
      span.requireNothingElse();
      spans.add(span.build(() -> new DemandTimes.Span(from, to, part)));
    }
    return times.build(() -> DemandTimes.of(spans));
  }

  /** The moment at which something ends that began at another. */
  private Duration end(Field field, Duration from) throws WrongFileException {
    Duration to = ClockField.since(field, begins);
    return to.compareTo(from) <= 0 ? to.plus(Duration.ofDays(1)) : to;
  }

  private TimedUse recorded(Field item, String name, Optional<Run> drop, Field recording)
      throws WrongFileException {
    GaugePressure need = need(item);
    Field file = recording.field("file", "the name of a table with the columns time and flow");
    Duration interval =
        TimeField.of(recording.field("averagedOver", "how long an interval is, such as \"5 min\""));
    FreeAirFlow most =
        recording.field("most", "the largest flow that can be, " + FLOW).most(FreeAirFlow::parse);
    recording.requireNothingElse();
    item.requireNothingElse();
    List<DemandTimes.Span> spans = new ArrayList<>();
    Document table = document.shelf().open(file.text());
    for (Field row : Table.rows(table, RECORDING)) {
      Duration from = ClockField.since(row.field("time", ClockField.MOMENT), begins);
      Field flow = row.field("flow", FLOW);
      double load = flow.as(FreeAirFlow::parse).massFlow().kilogramsPerSecond()
          / most.massFlow().kilogramsPerSecond();
      if (!(load <= 1.0)) {
        throw flow.wrong(
            "was \"" + flow.text().strip()
                + "\", above recording.most; give there the largest flow that can be, not the largest average");
      }
      row.requireNothingElse();
      spans.add(row.build(() -> new DemandTimes.Span(from, from.plus(interval), load)));
    }
    if (spans.isEmpty()) {
      throw file.wrong("holds no row below its heading; record time and flow");
    }
    ToolDemand tool = item.build(() -> ToolDemand.fixed(name, most));
    DemandTimes when = recording.build(() -> DemandTimes.recorded(spans, interval));
    return item.build(() -> new TimedUse(name, drop, tool, Optional.of(need), when));
  }
}
