package org.airfit.files;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.airfit.air.AirState;
import org.airfit.flow.CapacityRange;
import org.airfit.joint.HoseSize;
import org.airfit.line.Conduit;
import org.airfit.line.ConduitRange;
import org.airfit.line.PipeDuty;
import org.airfit.network.Network;
import org.airfit.plant.Regulator;
import org.airfit.plant.RegulatorCurve;
import org.airfit.plant.RegulatorElement;
import org.airfit.plant.Supply;
import org.airfit.plant.SupplyRange;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.Length;
import org.airfit.quantity.PressureDrop;
import org.airfit.quantity.Temperature;
import org.airfit.run.ToolDemand;
import org.airfit.safety.Situation;
import org.airfit.working.UnitSystem;
import org.jspecify.annotations.Nullable;

/** What a network file says, a table; docs/network-file.md has the columns. */
public final class NetworkFile {

  /** A bore is that of a hose by its size where they differ by less than this [mm]: a rounded inch. */
  private static final double SAME_HOSE_MM = 0.06;

  private static final List<String> COLUMNS = List.of(
      "record",
      "name",
      "from",
      "to",
      "bore",
      "length",
      "roughness",
      "fittings",
      "serves",
      "capacity",
      "conductance",
      "criticalPressureRatio",
      "cracking",
      "set",
      "droop",
      "droopAt",
      "curve",
      "tool",
      "air",
      "needs",
      "follows",
      "use",
      "pressure",
      "cutIn",
      "cutOut",
      "units",
      "temperature",
      "nonReturnValve",
      "atmosphere",
      "customer",
      "medium",
      "wall",
      "highest",
      "lubricated",
      "rulesPlace",
      "rulesOwn",
      "onHose",
      "hoseBore",
      "hammers",
      "whipHose",
      "feedsFasteners",
      "paints",
      "blasts",
      "cleans",
      "atBlockedNozzle");

  private static final List<String> RECORDS =
      List.of("network", "supply", "pipe", "part", "check valve", "regulator", "drop", "leak");

  private final String file;
  private final Map<String, Object> files = new LinkedHashMap<>();
  private final Document document;
  private final List<NetworkJob.Branch> branches = new ArrayList<>();
  private final List<NetworkJob.Drop> drops = new ArrayList<>();
  private final Set<String> junctions = new HashSet<>();
  private final Map<String, String> supplyNames = new HashMap<>();
  private final List<Field> leaving = new ArrayList<>();
  private final List<NetworkJob.Leak> leaks = new ArrayList<>();
  private @Nullable Head head;
  private final Set<String> names = new HashSet<>();
  private @Nullable AirState first;
  private @Nullable GaugePressure highest;
  private @Nullable UnitSystem typed; // as the first pressure of a supply is

  private record Head(
      String title,
      String customer,
      AbsolutePressure atmosphere,
      Temperature temperature,
      Optional<UnitSystem> units,
      Network.Builder builder) {}

  private NetworkFile(Document document) {
    this.file = document.name();
    this.document = AsFiled.noting(document, files);
  }

  /**
   * Reads a network.
   *
   * @param document a table
   * @return the network
   * @throws WrongFileException if a cell is missing, misspelt or refused
   */
  public static NetworkJob read(Document document) throws WrongFileException {
    Refusal.requireNone(document);
    return new NetworkFile(document).read(Table.rows(document, COLUMNS));
  }

  private NetworkJob read(List<Field> rows) throws WrongFileException {
    for (Field row : rows) {
      row.build(() -> {
        add(row);
        return row;
      });
      row.requireNothingElse();
    }
    Head known = head(file);
    if (first == null) {
      throw new WrongFileException(file, "", "has no supply; add a row with supply under record");
    }
    if (drops.isEmpty()) {
      throw new WrongFileException(file, "", "has no drop; add a row with drop under record");
    }
    for (Field from : leaving) {
      if (!junctions.contains(from.text())) {
        throw from.wrong("was \"" + from.text()
            + "\", to which no supply, pipe or part leads; type a junction of another row");
      }
    }
    GaugePressure usual = GaugePressure.of(first.pressure(), known.atmosphere);
    GaugePressure most = highest != null && highest.compareTo(usual) > 0 ? highest : usual;
    known.builder.highest(most);
    AirState supplied = first;
    // after the tools of the drops, whose order is that of the drops
    leaks.forEach(leak -> known.builder.tool(
        leak.junction(),
        ToolDemand.following(leak.name(), leak.air(), leak.at().absolute(known.atmosphere))));
    return Field.ofFile(file).build(() -> job(known, supplied, most));
  }

  private NetworkJob job(Head known, AirState supplied, GaugePressure most) {
    return new NetworkJob(
        known.title,
        known.customer,
        known.atmosphere,
        supplied,
        most,
        known.builder.build(),
        branches,
        drops,
        leaks,
        supplyNames,
        known.units.orElse(typed == null ? UnitSystem.SI : typed),
        Optional.of(new AsFiled(document.content(), files)));
  }

  private Head head(String place) throws WrongFileException {
    if (head == null) {
      throw new WrongFileException(
          place, "", "begins without a network; type a row with network under record first");
    }
    return head;
  }

  private void add(Field row) throws WrongFileException {
    String record = row.field("record", String.join(", ", RECORDS)).oneOf(RECORDS, word -> word);
    switch (record) {
      case "network" -> network(row);
      case "supply" -> supply(row);
      case "pipe" -> pipe(row);
      case "part" -> part(row);
      case "check valve" -> checkValve(row);
      case "regulator" -> regulator(row);
      case "leak" -> leak(row);
      default -> drop(row);
    }
  }

  private void network(Field row) throws WrongFileException {
    Field title = row.field("name", "what to call the network");
    row.find("medium"); // refused above unless it is compressed air
    if (head != null) {
      throw title.wrong("is a second network; keep one row with network under record");
    }
    AbsolutePressure atmosphere =
        FlowFields.atmosphere(row.field("atmosphere", "an absolute pressure such as 1.013 bar(a)"));
    Optional<Field> units = row.find("units");
    Situation.Builder line = Situation.describe().quickCouplers();
    if (row.flag("lubricated")) {
      line.lubricatedLine();
    }
    head = new Head(
        title.text(),
        row.field("customer", "whose network it is").text(),
        atmosphere,
        row.field("temperature", "a temperature such as 20 °C").most(Temperature::parse),
        units.isEmpty()
            ? Optional.empty()
            : Optional.of(units.get().oneOf(List.of(UnitSystem.values()), UnitSystem::name)),
        Network.at(atmosphere)
            .situation(line.build())
            .rules(RulesFile.of(row.find("rulesPlace"), row.find("rulesOwn"), document)));
  }

  private void supply(Field row) throws WrongFileException {
    Head known = head(file);
    row.find("medium"); // refused above unless it is compressed air
    Optional<Field> name = row.find("name"); // for people; the junction is what counts
    String to = row.field("to", "the junction it feeds").text();
    if (name.isPresent()) {
      supplyNames.put(to, name.get().text().strip());
    }
    Optional<Field> cutOut = row.find("cutOut");
    // flow has what a compressor holds at least; the rules take what it holds at most
    Field told = row.field(cutOut.isPresent() ? "cutIn" : "pressure", Accepted.GAUGE);
    GaugePressure pressure = cutOut.isPresent()
        ? told.least(GaugePressure::parse)
        : told.one(
            GaugePressure::parse,
            "give the pressures at which it starts and stops under cutIn and cutOut");
    typed = typed == null ? UnitSystem.valueOf(told.text().contains("psi") ? "US" : "SI") : typed;
    AirState air = AirState.of(pressure.absolute(known.atmosphere), known.temperature);
    if (cutOut.isPresent()) {
      highest(cutOut.get(), pressure);
    }
    Optional<Field> most = row.find("highest");
    if (most.isPresent()) {
      highest(most.get(), pressure);
    }
    Optional<Field> valve = row.find("nonReturnValve");
    if (valve.isEmpty() || valve.get().yes()) {
      known.builder.supply(to, Supply.fixed(air));
    } else {
      known.builder.supplyWithoutNonReturnValve(to, Supply.fixed(air));
    }
    junctions.add(to);
    first = first == null || air.pressure().compareTo(first.pressure()) > 0 ? air : first;
  }

  /** The highest of all supplies counts; one whose cut-out is lower does not lower it. */
  private void highest(Field field, GaugePressure usual) throws WrongFileException {
    GaugePressure pressure = field.most(GaugePressure::parse);
    field.build(() -> SupplyRange.of(usual).withHighest(pressure));
    highest = highest == null || pressure.compareTo(highest) > 0 ? pressure : highest;
  }

  private void pipe(Field row) throws WrongFileException {
    String name = name(row, "pipe");
    ConduitRange told = FlowFields.conduitOfOneLength(row);
    Conduit conduit = told.least();
    Optional<Field> serves = row.find("serves");
    PipeDuty duty = PipeDuty.DISTRIBUTION;
    if (serves.isPresent()) {
      duty = serves.get().oneOf(List.of(PipeDuty.values()), NetworkFile::word);
    }
    head(file).builder.line(name, from(row), to(row), conduit);
    branches.add(NetworkJob.Branch.ofPipe(name, duty, told));
  }

  private static String word(PipeDuty duty) {
    return switch (duty) {
      case ROOM_HEADER -> "header";
      case DISTRIBUTION -> "main";
      case BRANCH -> "branch";
    };
  }

  private String from(Field row) throws WrongFileException {
    Field from = row.field("from", "the junction at one end");
    leaving.add(from);
    return from.text();
  }

  private String to(Field row) throws WrongFileException {
    String to = row.field("to", "the junction at the other end").text();
    junctions.add(to);
    return to;
  }

  private void part(Field row) throws WrongFileException {
    String name = name(row, "part");
    CapacityRange capacity = FlowFields.rangeOfRow(row);
    head(file).builder.part(name, from(row), to(row), capacity.least());
    branches.add(NetworkJob.Branch.ofPart(name, capacity));
  }

  private void checkValve(Field row) throws WrongFileException {
    String name = name(row, "check valve");
    CapacityRange valve = FlowFields.rangeOfRow(row);
    Optional<Field> cracking = row.find("cracking");
    if (cracking.isPresent()) {
      PressureDrop opens = cracking.get().most(PressureDrop::parse);
      CapacityRange rated = valve;
      valve = cracking
          .get()
          .build(() -> CapacityRange.spanning(
              List.of(
                  rated.least().withCrackingPressure(opens),
                  rated.most().withCrackingPressure(opens)),
              rated.assumption()));
    }
    head(file).builder.checkValve(name, from(row), to(row), valve.least());
    branches.add(NetworkJob.Branch.ofPart(name, valve));
  }

  private void regulator(Field row) throws WrongFileException {
    Head known = head(file);
    String name = name(row, "regulator");
    CapacityRange valve = FlowFields.rangeOfRow(row);
    GaugePressure set = row.field("set", Accepted.GAUGE).least(GaugePressure::parse);
    RegulatorElement regulator = RegulatorElement.of(valve.least(), set.absolute(known.atmosphere));
    Optional<RegulatorCurve> curve = CurveField.in(row, "droopAt");
    if (curve.isPresent()) {
      // behind its end the most that it tells counts; the sheet says where that is so
      PressureDrop most =
          PressureDrop.ofPascals(Math.min(curve.get().most().pascals(), set.pascals()));
      RegulatorElement plain = regulator;
      regulator = row.build(() -> plain.withCurve(curve.get(), most));
    } else if (row.find("droop").isPresent() || row.find("droopAt").isPresent()) {
      PressureDrop droop = row.field("droop", "by how much less it holds at droopAt, such as 6 psi")
          .most(PressureDrop::parse);
      JobLine.requireDroopBelow(row, droop, set);
      FreeAirFlow flow = row.field(
              "droopAt", "the free-air flow at which it droops, such as 20 scfm")
          .least(FreeAirFlow::parse);
      regulator = regulator.withDroop(droop, flow);
    } else {
      double most = Regulator.UNTOLD_DROOP.most().pascals();
      regulator =
          regulator.withDroopAtAnyFlow(PressureDrop.ofPascals(Math.min(most, set.pascals())));
    }
    known.builder.regulator(name, from(row), to(row), regulator);
    branches.add(NetworkJob.Branch.ofRegulator(name, regulator, valve));
  }

  private void leak(Field row) throws WrongFileException {
    String name = row.field("name", "what to call the leak").text();
    leaks.add(new NetworkJob.Leak(
        name,
        from(row),
        row.field("air", "the free air that escapes, such as 6 scfm").most(FreeAirFlow::parse),
        row.field("pressure", "the gauge pressure at which it was measured, such as 100 psig")
            .least(GaugePressure::parse)));
  }

  private void drop(Field row) throws WrongFileException {
    Network.Builder builder = head(file).builder;
    String name = name(row, "drop");
    ConduitRange told = FlowFields.conduitOfOneLength(row);
    Conduit conduit = told.least();
    String from = from(row);
    boolean coupled =
        row.find("conductance").isPresent() || row.find("capacity").isPresent();
    String end = coupled ? name + ", end of the pipe" : name;
    builder.line(name, from, end, conduit);
    branches.add(
        isHose(row, conduit)
            ? NetworkJob.Branch.ofHose(name, told)
            : NetworkJob.Branch.ofPipe(name, PipeDuty.BRANCH, told));
    if (coupled) {
      String coupling = "coupling of " + name;
      CapacityRange capacity = FlowFields.rangeOfRow(row);
      builder.part(coupling, end, name, capacity.least());
      branches.add(NetworkJob.Branch.ofPart(coupling, capacity));
    }
    String tool = row.field("tool", "what stands at the drop").text();
    FreeAirFlow air =
        row.field("air", "a free-air flow such as 34 scfm or 16 L/s ANR").most(FreeAirFlow::parse);
    GaugePressure needs = row.field("needs", Accepted.GAUGE).most(GaugePressure::parse);
    Optional<Field> follows = row.find("follows");
    boolean following = follows.isEmpty() || follows.get().yes();
    Optional<Field> share = row.find("use");
    double use = share.isPresent() ? share(share.get()) : 1.0;
    AbsolutePressure rated = needs.absolute(head(file).atmosphere);
    ToolDemand demand =
        following ? ToolDemand.following(tool, air, rated) : ToolDemand.fixed(tool, air);
    builder.tool(name, demand.withDuty(use), work(row));
    drops.add(new NetworkJob.Drop(name, tool, needs, use));
  }

  /**
   * Whether a drop is a hose: its wall says so, or the tool hangs on a hose and the bore is that of one. The last
   * is our choice.
   */
  private static boolean isHose(Field row, Conduit conduit) throws WrongFileException {
    Optional<Field> words = row.find("wall");
    if (words.isPresent() && words.get().text().toLowerCase(Locale.ROOT).contains("hose")) {
      return true;
    }
    return row.flag("onHose")
        && Stream.of(UnitSystem.values())
            .flatMap(system -> HoseSize.all(system).stream())
            .anyMatch(size ->
                Math.abs(size.bore().millimetres() - conduit.bore().millimetres()) < SAME_HOSE_MM);
  }

  private static double share(Field use) throws WrongFileException {
    double share = use.number();
    if (!(share >= 0.0 && share <= 1.0)) {
      throw use.wrong(
          "must be in [0, 1], the share of the time that the tool runs, such as 0.5; was " + share);
    }
    return share;
  }

  /** What a branch is called; no two of a network are called alike. */
  private String name(Field row, String what) throws WrongFileException {
    Field name = row.field("name", "what to call the " + what);
    if (!names.add(name.text().strip())) {
      throw name.wrong("must differ from the others, was \"" + name.text().strip() + "\" again");
    }
    return name.text();
  }

  /** What the tool does, with the names that a job file has for it. */
  private static Situation work(Field row) throws WrongFileException {
    Situation.Builder work = Situation.describe();
    if (row.flag("onHose")) {
      work.toolOnHose();
    }
    Optional<Field> hose = row.find("hoseBore");
    if (hose.isPresent()) {
      work.toolOnHose(hose.get().as(Length::parse));
    }
    if (row.flag("hammers")) {
      work.impactTool();
    }
    if (row.flag("whipHose")) {
      work.whipHose();
    }
    if (row.flag("feedsFasteners")) {
      work.automaticFeed();
    }
    if (row.flag("paints")) {
      work.painting();
    }
    if (row.flag("blasts")) {
      work.blasting();
    }
    if (row.flag("lubricated")) {
      work.lubricatedLine();
    }
    boolean cleans = row.flag("cleans");
    Optional<Field> blocked = row.find("atBlockedNozzle");
    if (blocked.isPresent()) {
      work.cleaning(blocked.get().as(GaugePressure::parse));
    } else if (cleans) {
      work.cleaning();
    }
    return work.build();
  }
}
