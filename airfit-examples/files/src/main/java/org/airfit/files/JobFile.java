package org.airfit.files;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import org.airfit.air.AirState;
import org.airfit.line.Conduit;
import org.airfit.measure.Instrument;
import org.airfit.plug.Dimension;
import org.airfit.plug.Identifier;
import org.airfit.plug.PlugReading;
import org.airfit.plug.SocketAnswer;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.Length;
import org.airfit.quantity.Temperature;
import org.airfit.run.Run;
import org.airfit.safety.Medium;
import org.airfit.safety.SafetyRules;
import org.airfit.select.Environment;
import org.airfit.select.Lubrication;
import org.airfit.select.Objective;
import org.airfit.select.Part;
import org.airfit.select.Requirement;
import org.airfit.thread.ThreadReadings;

/** What a job file says; docs/job-file.md has the fields. */
public final class JobFile {

  private static final String AS_NEW = "as new";

  private JobFile() {}

  /**
   * Reads a job and the catalogue it names.
   *
   * @param document a JSON file
   * @return the job
   * @throws WrongFileException if a field is missing, misspelt or refused, in the job or in the catalogue
   */
  public static Job read(Document document) throws WrongFileException {
    Field root = Field.of(document);
    return root.build(() -> read(root, document));
  }

  private static Job read(Field root, Document document) throws WrongFileException {
    String title = root.field("job", "the job in one line").text();
    String customer = root.field("customer", "whose job it is").text();
    String name = root.field("catalogue", "the path of a catalogue file, seen from this one")
        .text();
    ShopCatalogue catalogue = CatalogueFile.read(document.shelf().open(name));

    Field hand = root.field("atHand", "an object: the plug at hand and its readings");
    String where = hand.field("where", "where it comes from, in words").text();
    boolean socketOnly = hand.flag("socketOnly");
    List<PlugReading> readings = readings(hand);
    Optional<ThreadReadings> thread = ThreadField.in(hand);
    Length worn = worn(hand, catalogue);
    boolean nearCopies = !hand.flag("noNearCopies");
    Optional<SocketAnswer> socket = socket(hand, catalogue, socketOnly);
    hand.requireNothingElse();

    Field supplied = root.field("supply", "an object with pressure, temperature and atmosphere");
    AbsolutePressure atmosphere = FlowFields.atmosphere(
        supplied.field("atmosphere", "an absolute pressure such as \"1.013 bar(a)\""));
    GaugePressure pressure = supplied.field("pressure", Accepted.GAUGE).as(GaugePressure::parse);
    Temperature temperature =
        supplied.field("temperature", "a temperature such as \"20 °C\"").as(Temperature::parse);
    AirState supply = supplied.build(() -> AirState.of(pressure.absolute(atmosphere), temperature));

    List<String> remarks = new ArrayList<>();
    Field tool = root.field("tool", "an object with name, air, pressure and inlet");
    String toolName = tool.field("name", "what the tool is").text();
    Requirement.Builder requirement = requirement(tool, remarks);
    requirement.supply(supply, atmosphere);
    Optional<Field> highest = supplied.find("highest");
    if (highest.isPresent()) {
      requirement.highest(highest.get().as(GaugePressure::parse));
    }
    AirState lowest = lowest(supplied, supply, atmosphere, requirement);
    regulator(supplied, requirement);
    supplied.requireNothingElse();

    Run piping = supplied.build(() -> Run.from(lowest, atmosphere));
    for (Field pipe :
        root.field("pipes", "a list of pipes from the supply to the outlet").items()) {
      String called = pipe.field("name", "what to call the pipe").text();
      Conduit conduit = FlowFields.conduit(pipe);
      pipe.requireNothingElse();
      requirement.pipe(called, conduit);
      Run before = piping;
      piping = pipe.build(() -> before.through(called, conduit));
    }
    requirement.outlet(EndField.in(root.field("outlet", Accepted.END), remarks));
    requirement.reach(root.field("reach", "a length such as \"10 m\"").as(Length::parse));
    keep(root, catalogue, requirement);
    conditions(root, requirement);
    rules(root, document, requirement);
    Optional<Field> ranking = root.find("rankedBy");
    if (ranking.isPresent()) {
      requirement.objective(ranking
          .get()
          .oneOf(
              List.of(Objective.values()),
              order -> order.name().toLowerCase(Locale.ROOT).replace('_', ' ')));
    }
    Optional<Run> now = now(root, catalogue, piping);
    TypedUnits units = TypedUnits.in(root, document);
    root.requireNothingElse();
    Requirement asked = root.build(requirement::build);
    return new Job(
        title,
        customer,
        toolName,
        catalogue,
        where,
        readings,
        worn,
        nearCopies,
        thread,
        socket,
        supply,
        atmosphere,
        now,
        asked,
        remarks,
        units);
  }

  /** The air at which the flow is judged. */
  private static AirState lowest(
      Field supplied, AirState supply, AbsolutePressure atmosphere, Requirement.Builder requirement)
      throws WrongFileException {
    Optional<Field> lowest = supplied.find("lowest");
    if (lowest.isEmpty()) {
      return supply;
    }
    GaugePressure pressure = lowest.get().as(GaugePressure::parse);
    requirement.lowest(pressure);
    return lowest.get().build(() -> supply.at(pressure.absolute(atmosphere)));
  }

  private static void regulator(Field supplied, Requirement.Builder requirement)
      throws WrongFileException {
    boolean regulated = supplied.flag("regulated");
    Optional<Field> failed = supplied.find("ifRegulatorFails");
    if (failed.isPresent()) {
      requirement.regulated(failed.get().as(GaugePressure::parse));
    } else if (regulated) {
      requirement.regulated();
    }
  }

  /** The rules of a place, federal law if left out, and those of the works. */
  private static void rules(Field root, Document document, Requirement.Builder requirement)
      throws WrongFileException {
    Optional<Field> found = root.find("rules");
    if (found.isEmpty()) {
      return;
    }
    SafetyRules rules = RulesFile.of(found.get().find("place"), found.get().find("own"), document);
    found.get().requireNothingElse();
    requirement.rules(rules);
  }

  private static List<PlugReading> readings(Field hand) throws WrongFileException {
    Optional<Field> field = hand.find("readings");
    if (field.isEmpty()) {
      return List.of();
    }
    Instrument instrument = hand.field(
            "instrument",
            "the caliper: "
                + String.join(
                    ", ",
                    List.of(Instrument.values()).stream().map(Instrument::label).toList()))
        .oneOf(List.of(Instrument.values()), Instrument::label);
    List<PlugReading> readings = new ArrayList<>();
    for (String label : field.get().names()) {
      Dimension dimension = ProfileFields.dimension(field.get(), label);
      Field reading = field.get().field(label, Accepted.LENGTH);
      Length length = reading.as(Length::parse);
      readings.add(reading.build(() -> PlugReading.of(dimension, instrument, length)));
    }
    return readings;
  }

  /** How worn the plug may be: "as new", or the most that has gone; what is usual where nobody said. */
  private static Length worn(Field hand, ShopCatalogue catalogue) throws WrongFileException {
    Optional<Field> field = hand.find("worn");
    if (field.isEmpty()) {
      return Identifier.usualWear();
    }
    Field worn = field.get();
    Length allowance = worn.text().strip().equalsIgnoreCase(AS_NEW)
        ? Length.ofMetres(0.0)
        : worn.as(Length::parse);
    return worn.build(
        () -> Identifier.of(catalogue.profiles()).withWearAllowance(allowance).wearAllowance());
  }

  private static Optional<SocketAnswer> socket(
      Field hand, ShopCatalogue catalogue, boolean socketOnly) throws WrongFileException {
    Optional<Field> inUse = hand.find("inUse");
    if (!socketOnly) {
      if (inUse.isPresent()) {
        throw inUse.get().wrong("goes with socketOnly, true; leave it out where a plug is at hand");
      }
      return Optional.empty();
    }
    if (inUse.isEmpty()) {
      return Optional.of(SocketAnswer.alone());
    }
    Set<String> ids = new LinkedHashSet<>(inUse.get().words());
    return Optional.of(inUse.get().build(() -> SocketAnswer.alone(catalogue.profiles(), ids)));
  }

  private static Requirement.Builder requirement(Field tool, List<String> remarks)
      throws WrongFileException {
    FreeAirFlow air = tool.field("air", "a free-air flow such as \"34 scfm\" or \"16 L/s ANR\"")
        .as(FreeAirFlow::parse);
    Field least = tool.field("pressure", Accepted.GAUGE);
    GaugePressure pressure = least.as(GaugePressure::parse);
    Requirement.Builder requirement = least.build(() -> Requirement.forTool(air, pressure));
    requirement.toolInlet(EndField.in(tool.field("inlet", Accepted.END), remarks));
    Optional<Field> rating = tool.find("notAbove");
    if (rating.isPresent()) {
      GaugePressure highest = rating.get().as(GaugePressure::parse);
      rating.get().build(() -> requirement.toolRating(highest));
    }
    if (tool.flag("hammers")) {
      requirement.impactTool();
    }
    if (tool.flag("whipHose")) {
      requirement.whipHose();
    }
    if (tool.flag("feedsFasteners")) {
      requirement.automaticFeed();
    }
    if (tool.flag("blasts")) {
      requirement.blasting();
    }
    if (tool.flag("paints")) {
      requirement.painting();
    }
    boolean cleans = tool.flag("cleans");
    Optional<Field> blocked = tool.find("atBlockedNozzle");
    if (blocked.isPresent()) {
      GaugePressure deadEnd = blocked.get().as(GaugePressure::parse);
      blocked.get().build(() -> requirement.blowGun(deadEnd));
    } else if (cleans) {
      requirement.blowGun();
    }
    tool.requireNothingElse();
    return requirement;
  }

  private static void keep(Field root, ShopCatalogue catalogue, Requirement.Builder requirement)
      throws WrongFileException {
    Optional<Field> field = root.find("stays");
    if (field.isEmpty()) {
      return;
    }
    Optional<Field> socket = field.get().find("outletSocket");
    if (socket.isPresent()) {
      requirement.outletSocket(part(socket.get(), catalogue, Part.Socket.class, "socket"));
    }
    Optional<Field> plug = field.get().find("toolPlug");
    if (plug.isPresent()) {
      requirement.toolPlug(part(plug.get(), catalogue, Part.Plug.class, "plug"));
    }
    Optional<Field> hose = field.get().find("hose");
    if (hose.isPresent()) {
      requirement.hose(part(hose.get(), catalogue, Part.Hose.class, "hose"));
    }
    field.get().requireNothingElse();
  }

  private static <T extends Part> T part(
      Field field, ShopCatalogue catalogue, Class<T> kind, String word) throws WrongFileException {
    String id = field.text();
    Optional<Part> part = catalogue.parts().part(id).filter(kind::isInstance);
    if (part.isEmpty()) {
      List<String> ids = catalogue.parts().parts().stream()
          .filter(kind::isInstance)
          .map(Part::id)
          .toList();
      throw field.wrong("\"" + id + "\" is no " + word + " of the catalogue \"" + catalogue.name()
          + "\"; accepted: " + String.join(", ", ids));
    }
    return kind.cast(part.get());
  }

  private static void conditions(Field root, Requirement.Builder requirement)
      throws WrongFileException {
    Optional<Field> found = root.find("conditions");
    if (found.isEmpty()) {
      return;
    }
    Field field = found.get();
    Optional<Field> place = field.find("place");
    if (place.isPresent()) {
      requirement.environment(
          place.get().oneOf(List.of(Environment.values()), Environment::toString));
    }
    Optional<Field> air = field.find("air");
    if (air.isPresent()) {
      requirement.lubrication(
          air.get().oneOf(List.of(Lubrication.values()), Lubrication::toString));
    }
    Optional<Field> medium = field.find("medium");
    if (medium.isPresent()) {
      requirement.medium(medium.get().oneOf(List.of(Medium.values()), Medium::toString));
    }
    Optional<Field> marking = field.find("marking");
    if (marking.isPresent()) {
      requirement.marking(marking.get().text());
    }
    Optional<Field> profiles = field.find("profilesInUse");
    if (profiles.isPresent()) {
      requirement.profilesInUse(new LinkedHashSet<>(profiles.get().words()));
    }
    Optional<Field> coldest = field.find("coldest");
    if (coldest.isPresent()) {
      Temperature low = coldest.get().as(Temperature::parse);
      Field hottest = field.field("hottest", "the highest temperature, such as \"50 °C\"");
      Temperature high = hottest.as(Temperature::parse);
      hottest.build(() -> requirement.temperatures(low, high));
    }
    if (field.flag("dropped")) {
      requirement.dropped();
    }
    if (field.flag("dragged")) {
      requirement.dragged();
    }
    if (field.flag("vented")) {
      requirement.ventRequired();
    }
    field.requireNothingElse();
  }

  /** The run of today: the piping, then what is connected to its outlet. */
  private static Optional<Run> now(Field root, ShopCatalogue catalogue, Run piping)
      throws WrongFileException {
    Optional<Field> found = root.find("now");
    if (found.isEmpty()) {
      return Optional.empty();
    }
    Run run = piping;
    for (Field item : found.get().items()) {
      Run before = run;
      run = item.build(() -> connected(before, item, catalogue));
      item.requireNothingElse();
    }
    return Optional.of(run);
  }

  /** What is connected next: a part of the catalogue, a part with its capacity, or a hose or pipe. */
  private static Run connected(Run run, Field item, ShopCatalogue catalogue)
      throws WrongFileException {
    Optional<Field> id = item.find("part");
    if (id.isPresent()) {
      return through(run, part(id.get(), catalogue, Part.class, "part"));
    }
    String name = item.field("name", "what to call it; or part, the id of a part of the catalogue")
        .text();
    Optional<Field> capacity = item.find("capacity");
    return capacity.isPresent()
        ? run.through(name, FlowFields.capacity(capacity.get()))
        : run.through(name, FlowFields.conduit(item));
  }

  private static Run through(Run run, Part part) {
    if (part instanceof Part.Socket socket) {
      return run.through(socket.name(), socket.capacity());
    }
    if (part instanceof Part.Hose hose) {
      return run.through(hose.name(), hose.conduit());
    }
    if (part instanceof Part.Adapter adapter) {
      return run.through(adapter.name(), adapter.conduit());
    }
    return run; // a plug's loss is told with its socket
  }
}
