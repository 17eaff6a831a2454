package org.airfit.files;

import java.time.Duration;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.airfit.air.AirState;
import org.airfit.flow.Orifice;
import org.airfit.flow.OrificeEdge;
import org.airfit.plant.AirPrice;
import org.airfit.plant.Leak;
import org.airfit.plant.LeakLedger;
import org.airfit.plant.LeakSize;
import org.airfit.plant.LeakTest;
import org.airfit.plant.UltrasonicRelation;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.Length;
import org.airfit.quantity.MassFlow;
import org.airfit.quantity.Money;
import org.airfit.quantity.Power;
import org.airfit.quantity.PressureDrop;
import org.airfit.quantity.Range;
import org.airfit.quantity.ReferenceState;
import org.airfit.quantity.Temperature;
import org.airfit.quantity.Volume;
import org.airfit.working.UnitSystem;
import org.jspecify.annotations.Nullable;

/** What a ledger of leaks says, a table; docs/leak-ledger-file.md has the columns. */
public final class LeakFile {

  private static final List<String> TYPED = List.of(
      "record",
      "name",
      "customer",
      "atmosphere",
      "temperature",
      "units",
      "medium",
      "hours",
      "electricity",
      "loadedPower",
      "unloadedPower",
      "delivery",
      "timing",
      "gauge",
      "day",
      "at",
      "loaded",
      "unloaded",
      "stopped",
      "cycles",
      "cutIn",
      "cutOut",
      "volume",
      "start",
      "end",
      "coldest",
      "tag",
      "place",
      "what",
      "pressure",
      "hole",
      "edge",
      "coefficient",
      "bag",
      "time",
      "rotameter",
      "scalePressure",
      "scaleTemperature",
      "air",
      "decibels",
      "repairCost",
      "repaired",
      "checked",
      "left");

  /** What is written anew whenever the ledger is, and not read. */
  private static final List<String> COMPUTED =
      List.of("state", "rank", "leastAir", "mostAir", "leastCost", "mostCost", "payback");

  private static final List<String> RECORDS = List.of("plant", "relation", "test", "leak");

  private static final List<String> WAYS = List.of("hole", "bag", "rotameter", "air");

  private static final int MOST_HOURS = 8784;

  /** The temperatures that the core takes for air [°C]. */
  private static final int COLDEST = -100;

  private static final int HOTTEST = 300;

  private static final String HOLE = "its diameter, such as 2 mm or 1/16 to 1/8 in";
  private static final String FLOW = "a free-air flow such as 3 scfm or 1 to 2 L/s ANR";
  private static final String DAY = "a day such as 2026-11-28";
  private static final String TIMING =
      "by how much a time that was taken may be wrong, such as 0.5 s";
  private static final String GAUGE = "by how much the gauge may be wrong, such as 0.1 bar";

  private final String file;
  private final List<Leak> leaks = new ArrayList<>();
  private final Set<String> tags = new HashSet<>();
  private final List<LeakJob.Test> tests = new ArrayList<>();
  private final List<UltrasonicRelation.Point> points = new ArrayList<>();
  private String instrument = "";
  private @Nullable Range<GaugePressure> instrumentPressure;
  private @Nullable Plant plant;

  private record Plant(
      Field row,
      String title,
      String customer,
      AirState outside,
      UnitSystem units,
      AirPrice price) {}

  private LeakFile(String file) {
    this.file = file;
  }

  /**
   * Reads a ledger.
   *
   * @param document a table
   * @return the ledger
   * @throws WrongFileException if a cell is missing, misspelt or refused
   */
  public static LeakJob read(Document document) throws WrongFileException {
    Refusal.requireNone(document);
    List<List<String>> rows = unguarded(document.content());
    Document plain =
        rows.isEmpty() ? document : new Document(document.name(), rows, document.shelf());
    List<String> columns = new ArrayList<>(TYPED);
    columns.addAll(COMPUTED);
    return new LeakFile(document.name()).read(Table.rows(plain, columns), rows);
  }

  /** The cells without the apostrophe that keeps a spreadsheet from computing them; none where this is no table. */
  private static List<List<String>> unguarded(Object content) {
    List<List<String>> rows = new ArrayList<>();
    if (content instanceof List<?> lines) {
      for (Object line : lines) {
        if (!(line instanceof List<?> cells)) {
          return List.of();
        }
        List<String> row = new ArrayList<>();
        for (Object cell : cells) {
          if (!(cell instanceof String text)) {
            return List.of();
          }
          boolean isGuarded =
              text.length() > 1 && text.startsWith("'") && "=+-@".indexOf(text.charAt(1)) >= 0;
          row.add(isGuarded ? text.substring(1) : text);
        }
        rows.add(row);
      }
    }
    return rows;
  }

  private LeakJob read(List<Field> fields, List<List<String>> rows) throws WrongFileException {
    for (Field row : fields) {
      if (row.field("record", String.join(", ", RECORDS))
          .text()
          .strip()
          .equalsIgnoreCase("relation")) {
        relation(row); // wherever it stands, it holds for all leaks
      }
    }
    for (Field row : fields) {
      String record = row.field("record", String.join(", ", RECORDS)).oneOf(RECORDS, word -> word);
      for (String column : COMPUTED) {
        row.find(column);
      }
      switch (record) {
        case "plant" -> plant(row);
        case "test" -> tests.add(row.build(() -> test(row)));
        case "leak" -> leaks.add(row.build(() -> leak(row)));
        default -> {} // a relation, read before
      }
      row.requireNothingElse();
    }
    if (plant == null) {
      throw new WrongFileException(
          file, "", "has no plant; type a row with plant under record first");
    }
    Plant known = plant;
    LeakLedger ledger = known.row.build(() -> new LeakLedger(known.price, leaks));
    return new LeakJob(
        known.title, known.customer, known.outside.pressure(), known.units, ledger, tests, rows);
  }

  private Plant known(Field row) throws WrongFileException {
    if (plant == null) {
      throw row.wrong("stands before the plant; type a row with plant under record first");
    }
    return plant;
  }

  private void plant(Field row) throws WrongFileException {
    Field title = row.field("name", "what to call the plant");
    row.find("medium"); // refused above unless it is compressed air
    if (plant != null) {
      throw title.wrong("is a second plant; keep one row with plant under record");
    }
    AbsolutePressure atmosphere =
        FlowFields.atmosphere(row.field("atmosphere", "an absolute pressure such as 1.013 bar(a)"));
    Field temperatureTold = row.field("temperature", "a temperature such as 20 °C");
    Temperature temperature =
        temperatureTold.one(Temperature::parse, "give the mean of the air in the line and around");
    FlowFields.requireWithin(
        temperatureTold, Range.exactly(temperature), COLDEST, HOTTEST, "that of air");
    Field hours = row.field("hours", "a whole number of hours in the year under pressure");
    int running = hours.wholeNumber();
    if (running > MOST_HOURS) {
      throw hours.wrong("must be in [0, " + MOST_HOURS + "] h, was " + running);
    }
    Field loadedTold =
        row.field("loadedPower", "the electric power while it delivers, such as 37 kW");
    Power loaded = loadedTold.as(Power::parse);
    if (!(loaded.watts() > 0.0)) {
      throw loadedTold.refused("it must be above 0 kW");
    }
    Field unloadedTold = row.field(
        "unloadedPower",
        "the electric power while it does not deliver, such as 8 to 10 kW, or 0 kW where it stops");
    Range<Power> unloaded = unloadedTold.range(Power::parse);
    if (unloaded.most().compareTo(loaded) > 0) {
      throw unloadedTold.refused(
          "it must be at most the loaded power, " + loadedTold.text().strip());
    }
    Field deliveryTold = row.field("delivery", "what it delivers while loaded, such as 210 scfm");
    FreeAirFlow delivery = deliveryTold.as(FreeAirFlow::parse);
    if (!(delivery.massFlow().kilogramsPerSecond() > 0.0)) {
      throw deliveryTold.refused("it must be above 0");
    }
    Money rate = PriceField.of(row.field("electricity", "the price of a kWh, such as 0.15 USD"));
    timing(row, Optional.empty()); // of the rows below
    gauge(row, Optional.empty());
    Optional<Field> units = row.find("units");
    UnitSystem system = units.isPresent()
        ? units.get().oneOf(List.of(UnitSystem.values()), UnitSystem::name)
        : UnitSystem.valueOf(row.field("atmosphere", "").text().contains("psi") ? "US" : "SI");
    plant = new Plant(
        row,
        title.text(),
        row.field("customer", "whose plant it is").text(),
        row.build(() -> AirState.of(atmosphere, temperature)),
        system,
        row.build(() -> new AirPrice(loaded, unloaded, delivery, Duration.ofHours(running), rate)));
  }

  /** By how much a time may be wrong: told in the row, or in that of the plant. */
  private static Optional<Duration> timing(Field row, Optional<Plant> plant)
      throws WrongFileException {
    Optional<Field> told = row.find("timing", TIMING);
    if (told.isEmpty() && plant.isPresent()) {
      told = plant.get().row.find("timing", TIMING);
    }
    return told.isPresent() ? Optional.of(time(told.get())) : Optional.empty();
  }

  private static Optional<PressureDrop> gauge(Field row, Optional<Plant> plant)
      throws WrongFileException {
    Optional<Field> told = row.find("gauge", GAUGE);
    if (told.isEmpty() && plant.isPresent()) {
      told = plant.get().row.find("gauge", GAUGE);
    }
    return told.isPresent() ? Optional.of(told.get().as(PressureDrop::parse)) : Optional.empty();
  }

  private Duration timing(Field row) throws WrongFileException {
    Optional<Duration> told = timing(row, Optional.of(known(row)));
    return told.isPresent()
        ? told.get()
        : time(row.field("timing", TIMING + "; or in the row of the plant"));
  }

  /** A pressure as it was read, and by how much that may be off. */
  private Range<GaugePressure> read(Field field, PressureDrop error) throws WrongFileException {
    GaugePressure shown = field.one(
        GaugePressure::parse,
        "give what the gauge showed, and by how much it may be wrong under gauge");
    return new Range<>(shown.minus(error), shown.plus(error));
  }

  private PressureDrop gauge(Field row) throws WrongFileException {
    Optional<PressureDrop> told = gauge(row, Optional.of(known(row)));
    return told.isPresent()
        ? told.get()
        : row.field("gauge", GAUGE + "; or in the row of the plant").as(PressureDrop::parse);
  }

  /** A time, of which 0 is one too. */
  private static Duration time(Field field) throws WrongFileException {
    return field.text().strip().matches("0(\\.0+)? ?(s|min|h)")
        ? Duration.ZERO
        : TimeField.of(field);
  }

  private void relation(Field row) throws WrongFileException {
    Field name = row.field("name", "which instrument, held how");
    Range<GaugePressure> pressure = row.field(
            "pressure", "the pressures at the leak for which it holds, such as 80 to 110 psig")
        .range(GaugePressure::parse);
    if (!instrument.isEmpty()
        && !(instrument.equals(name.text()) && pressure.equals(instrumentPressure))) {
      throw name.wrong("is a second relation; the rows of one have the same name and pressure");
    }
    instrument = name.text();
    instrumentPressure = pressure;
    double decibels =
        row.field("decibels", "what the instrument shows, such as 42").number();
    Range<FreeAirFlow> air = row.field("air", FLOW).range(FreeAirFlow::parse);
    points.add(new UltrasonicRelation.Point(decibels, air));
  }

  private LeakJob.Test test(Field row) throws WrongFileException {
    Plant known = known(row);
    String name = row.field("name", "what to call the test").text();
    Optional<LocalDate> day = day(row, "day");
    GaugePressure at = row.field(
            "at", "the gauge pressure at which the leaks were measured, such as 100 psig")
        .one(GaugePressure::parse, "give the usual one");
    AbsolutePressure around = known.outside.pressure();
    boolean isTimed = row.find("loaded").isPresent();
    if (isTimed == row.find("start").isPresent()) {
      throw row.wrong(
          "must have loaded, of load timing, or start, of a fall of pressure; fill one of"
              + " the two columns");
    }
    return new LeakJob.Test(
        name,
        day,
        isTimed
            ? LeakTest.of(cycling(row, known), around, at)
            : LeakTest.of(falling(row, known), around, at));
  }

  private LeakTest.Cycling cycling(Field row, Plant known) throws WrongFileException {
    PressureDrop error = gauge(row);
    Range<GaugePressure> cutIn = read(row.field("cutIn", Accepted.GAUGE), error);
    Range<GaugePressure> cutOut = read(row.field("cutOut", Accepted.GAUGE), error);
    Duration loaded = time(row.field("loaded", "the time it delivered, such as 6 min 20 s"));
    Duration unloaded = time(row.field("unloaded", "the time it did not deliver, such as 30 min"));
    Optional<Field> stopped = row.find("stopped");
    Duration idle = stopped.isPresent() ? unloaded.plus(time(stopped.get())) : unloaded;
    int cycles =
        row.field("cycles", "how many whole cycles were timed, such as 5").wholeNumber();
    Duration timing = timing(row);
    Optional<Field> told = row.find("delivery");
    Range<FreeAirFlow> delivery = told.isPresent()
        ? told.get().range(FreeAirFlow::parse)
        : Range.exactly(known.price.delivery());
    return new LeakTest.Cycling(
        loaded, idle, cycles, timing, delivery, new Range<>(cutIn.least(), cutOut.most()));
  }

  private LeakTest.Falling falling(Field row, Plant known) throws WrongFileException {
    PressureDrop error = gauge(row);
    Optional<Field> coldest = row.find("coldest");
    Optional<Field> walls = row.find("temperature");
    return new LeakTest.Falling(
        row.field("volume", "all that is closed in, receivers and pipes, such as 3 to 3.4 m3")
            .range(Volume::parse),
        read(row.field("start", Accepted.GAUGE), error),
        read(row.field("end", Accepted.GAUGE), error),
        time(row.field("time", "the time of the fall, such as 12 min")),
        timing(row),
        walls.isPresent()
            ? walls.get().one(Temperature::parse, "give the mean")
            : known.outside.temperature(),
        coldest.isPresent()
            ? Optional.of(coldest.get().least(Temperature::parse))
            : Optional.empty());
  }

  private static Optional<LocalDate> day(Field row, String column) throws WrongFileException {
    Optional<Field> told = row.find(column, DAY);
    return told.isPresent() ? Optional.of(told.get().typed(JobLabel::day)) : Optional.empty();
  }

  private Leak leak(Field row) throws WrongFileException {
    Plant known = known(row);
    Field tag = row.field("tag", "the number on the tag that hangs at it");
    String text = tag.text().strip();
    if (!tags.add(text)) {
      throw tag.wrong("was \"" + text + "\", which stands above; give each leak its own");
    }
    String place = row.field("place", "where it is").text();
    String what = row.field("what", "what leaks, such as hose clamp").text();
    LeakSize found = size(row, known);
    requireStandingOf(row, found, known);
    Optional<Field> cost = row.find("repairCost");
    Optional<Money> repair =
        cost.isPresent() ? Optional.of(PriceField.of(cost.get())) : Optional.empty();
    if (repair.isPresent()
        && !repair.get().currency().equals(known.price.perKilowattHour().currency())) {
      throw cost.get()
          .wrong("was \"" + cost.get().text() + "\"; give it in "
              + known.price.perKilowattHour().currency() + ", as the price of electricity");
    }
    Optional<LocalDate> checkedOn = day(row, "checked");
    Optional<Leak.Check> checked = Optional.empty();
    if (checkedOn.isPresent()) {
      Field told = row.field("left", "none, not measured, or " + FLOW);
      LeakSize left = left(told);
      requireStanding(told, left, known);
      checked = Optional.of(new Leak.Check(checkedOn.get(), left));
    } else {
      Optional<Field> left = row.find("left");
      if (left.isPresent()) {
        throw left.get().wrong("is told, but no day under checked; type the day of the check");
      }
    }
    return new Leak(text, place, what, found, repair, day(row, "repaired"), checked);
  }

  /** Refuses a row by the way in which its leak was measured. */
  private static void requireStandingOf(Field row, LeakSize found, Plant known)
      throws WrongFileException {
    for (String way : WAYS) {
      Optional<Field> told = row.find(way);
      if (told.isPresent()) {
        requireStanding(told.get(), found, known);
      }
    }
    Optional<Field> decibels = row.find("decibels");
    if (decibels.isPresent()) {
      requireStanding(decibels.get(), found, known);
    }
  }

  /** Refuses a leak that loses more at its pressure than the compressors deliver: that pressure would fall. */
  private static void requireStanding(Field told, LeakSize found, Plant known)
      throws WrongFileException {
    Optional<MassFlow> least = found.flow().map(Range::least);
    MassFlow delivery = known.price.delivery().massFlow();
    if (least.isPresent() && least.get().compareTo(delivery) > 0) {
      throw told.refused("such a leak loses " + said(least.get(), known.units)
          + " at least, more than the delivery of " + said(delivery, known.units)
          + ", so the pressure could not stand; check its size and its pressure. If several"
          + " compressors feed the line, give what all deliver together, and the powers of all");
    }
  }

  private static LeakSize left(Field field) throws WrongFileException {
    String word = field.text().strip();
    if (word.equalsIgnoreCase("none")) {
      return LeakSize.ofFlow(Range.exactly(FreeAirFlow.ofAnrLitresPerSecond(0.0)));
    }
    return word.equalsIgnoreCase("not measured")
        ? LeakSize.notMeasured()
        : LeakSize.ofFlow(field.range(FreeAirFlow::parse));
  }

  private LeakSize size(Field row, Plant known) throws WrongFileException {
    List<String> told = new ArrayList<>();
    for (String way : WAYS) {
      if (row.find(way).isPresent()) {
        told.add(way);
      }
    }
    if (told.size() > 1) {
      throw row.wrong("has " + String.join(" and ", told)
          + "; keep the one that was measured best, and leave the other cells empty");
    }
    if (told.isEmpty()
        && (row.find("edge").isPresent() || row.find("coefficient").isPresent())) {
      row.field("hole", HOLE); // the edge is that of a hole
    }
    Optional<Field> decibels = row.find("decibels");
    Optional<Field> pressure = row.find("pressure", Accepted.GAUGE);
    double reading = decibels.isPresent() ? decibels.get().number() : 0.0;
    Optional<Range<GaugePressure>> at = pressure.isPresent()
        ? Optional.of(pressure.get().range(GaugePressure::parse))
        : Optional.empty();
    if (told.isEmpty()) {
      return decibels.isEmpty()
          ? LeakSize.notMeasured()
          : LeakSize.ofUltrasonic(reading, at.isPresent() ? at.get() : needed(row), own(row));
    }
    return switch (told.get(0)) {
      case "hole" -> hole(row, at.isPresent() ? at.get() : needed(row), known.outside);
      case "bag" ->
        LeakSize.ofBag(
            row.field("bag", "the volume of the full bag, such as 60 L").range(Volume::parse),
            time(row.field("time", "the time to fill it, such as 25 s")),
            timing(row),
            known.outside);
      case "rotameter" -> rotameter(row, at.isPresent() ? at.get() : needed(row), known.outside);
      default -> LeakSize.ofFlow(row.field("air", FLOW).range(FreeAirFlow::parse));
    };
  }

  /** The pressure at the leak, where it must be told. */
  private static Range<GaugePressure> needed(Field row) throws WrongFileException {
    return row.field(
            "pressure", "the gauge pressure at the leak, not at the compressor, such as 90 psig")
        .range(GaugePressure::parse);
  }

  private Optional<UltrasonicRelation> own(Field row) throws WrongFileException {
    Range<GaugePressure> pressure = instrumentPressure;
    if (pressure == null) {
      return Optional.empty();
    }
    return Optional.of(row.build(() -> new UltrasonicRelation(instrument, pressure, points)));
  }

  private static LeakSize hole(Field row, Range<GaugePressure> at, AirState outside)
      throws WrongFileException {
    Field told = row.field("hole", HOLE);
    Range<Length> hole = told.range(Length::parse);
    if (!(hole.least().metres() > 0.0)) {
      throw told.refused("it must be above 0 mm");
    }
    if (!(at.least().pascals() > 0.0)) {
      throw row.field("pressure", Accepted.GAUGE)
          .refused("the gauge pressure in front of a hole must be above 0 bar(g), 0 psig");
    }
    Optional<Field> coefficient = row.find("coefficient");
    Optional<Field> edge = row.find("edge");
    if (coefficient.isPresent()) {
      if (edge.isPresent()) {
        throw edge.get().wrong("is told beside a coefficient; keep one of the two");
      }
      double factor = coefficient.get().number();
      return told.build(() -> LeakSize.ofHole(
          Orifice.of(hole.least(), factor), Orifice.of(hole.most(), factor), at, outside));
    }
    if (edge.isEmpty()) {
      return told.build(() -> LeakSize.ofHole(hole, at, outside));
    }
    OrificeEdge known = edge.get().oneOf(List.of(OrificeEdge.values()), OrificeEdge::label);
    return told.build(() -> LeakSize.ofHole(hole, known, at, outside));
  }

  private static LeakSize rotameter(Field row, Range<GaugePressure> at, AirState outside)
      throws WrongFileException {
    Range<FreeAirFlow> shown = row.field("rotameter", "what its scale shows, such as 4 to 4.5 scfm")
        .range(FreeAirFlow::parse);
    AbsolutePressure scale = row.field(
            "scalePressure", "the gauge pressure for which its scale is drawn, such as 0 psig")
        .one(GaugePressure::parse, "give the one on the scale")
        .absolute(outside.pressure());
    Optional<Field> scaleTemperature = row.find("scaleTemperature");
    Temperature drawn = scaleTemperature.isPresent()
        ? scaleTemperature.get().one(Temperature::parse, "give the one on the scale")
        : outside.temperature();
    if (!at.isExact()) {
      throw row.field("pressure", "")
          .wrong("must be one pressure beside a rotameter: that of the air in it");
    }
    return LeakSize.ofRotameter(
        shown, AirState.of(scale, drawn), outside.at(at.most().absolute(outside.pressure())));
  }

  /**
   * Writes a ledger with what was computed: the rows as they were filed, and behind the columns that people type those
   * that the library fills. Before they go into a spreadsheet, each cell must be kept from being computed there, as
   * {@code Disk.write} does.
   *
   * @param job the ledger
   * @return the rows, the heading first
   */
  public static List<List<String>> toRows(LeakJob job) {
    Map<String, Map<String, String>> computed = computed(job);
    List<List<String>> filed = job.rows();
    int first = 0;
    while (first < filed.size() && filed.get(first).stream().allMatch(String::isEmpty)) {
      first++;
    }
    List<String> heading = filed.get(first);
    List<Integer> kept = new ArrayList<>();
    for (int k = 0; k < heading.size(); k++) {
      if (!COMPUTED.contains(heading.get(k))) {
        kept.add(k);
      }
    }
    List<List<String>> out = new ArrayList<>();
    for (List<String> row : filed.subList(first, filed.size())) {
      if (row.stream().allMatch(String::isEmpty)) {
        continue;
      }
      List<String> cells = new ArrayList<>();
      kept.forEach(k -> cells.add(k < row.size() ? row.get(k) : ""));
      if (out.isEmpty()) {
        cells.addAll(COMPUTED);
      } else {
        boolean isLeak = cell(heading, row, "record").strip().equalsIgnoreCase("leak");
        Map<String, String> values =
            isLeak ? computed.getOrDefault(cell(heading, row, "tag").strip(), Map.of()) : Map.of();
        COMPUTED.forEach(column -> cells.add(values.getOrDefault(column, "")));
      }
      out.add(cells);
    }
    return out;
  }

  private static String cell(List<String> heading, List<String> row, String column) {
    int at = heading.indexOf(column);
    return at >= 0 && at < row.size() ? row.get(at) : "";
  }

  /** What is computed of each leak, by its tag. */
  private static Map<String, Map<String, String>> computed(LeakJob job) {
    Map<String, Map<String, String>> all = new HashMap<>();
    for (Leak leak : job.ledger().leaks()) {
      Map<String, String> cells = new HashMap<>();
      cells.put("state", leak.state().label());
      leak.flow()
          .ifPresentOrElse(
              flow -> {
                cells.put("leastAir", said(flow.least(), job.units()));
                cells.put("mostAir", said(flow.most(), job.units()));
              },
              () -> {
                cells.put("leastAir", "not known");
                cells.put("mostAir", "not known");
              });
      all.put(leak.tag(), cells);
    }
    for (LeakLedger.Entry entry : job.ledger().entries()) {
      Map<String, String> cells = all.getOrDefault(entry.leak().tag(), new HashMap<>());
      cells.put(
          "rank",
          entry.bestRank() == entry.worstRank()
              ? String.valueOf(entry.bestRank())
              : entry.bestRank() + " to " + entry.worstRank());
      entry.least().ifPresent(cost -> cells.put("leastCost", cost.money().format(2)));
      entry.most().ifPresent(cost -> cells.put("mostCost", cost.money().format(2)));
      entry.payback().ifPresent(payback -> cells.put("payback", payback.inWords()));
    }
    return all;
  }

  private static String said(MassFlow flow, UnitSystem units) {
    return units.say(
        FreeAirFlow.from(flow, units.either(ReferenceState.ANR, ReferenceState.SCFM_60F)));
  }
}
