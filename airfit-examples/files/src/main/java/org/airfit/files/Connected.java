package org.airfit.files;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Collectors;
import org.airfit.flow.CapacityRange;
import org.airfit.line.ConduitRange;
import org.airfit.plant.RegulatorCurve;
import org.airfit.plant.RegulatorRange;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.MassFlow;
import org.airfit.quantity.Range;
import org.airfit.run.Run;
import org.airfit.select.Part;
import org.airfit.select.RunNow;
import org.airfit.source.Source;
import org.airfit.working.UnitSystem;

/**
 * One thing of what is connected to an outlet, an item of the field {@code now} of a job, read by itself. A program that
 * judges millions of runs reads each hose and coupling that recurs once, and adds it to every run that has it.
 *
 * <p>This class is immutable and thread-safe.
 */
public final class Connected {

  /** How it is added to a run. */
  private interface Joining {
    /** With the worst that it can be. */
    Run to(Run run);

    /** As well as it is known. */
    RunNow to(RunNow run);
  }

  private record Line(String name, ConduitRange conduit) implements Joining {
    @Override
    public Run to(Run run) {
      return run.through(name, conduit.least());
    }

    @Override
    public RunNow to(RunNow run) {
      return run.through(name, conduit);
    }
  }

  private record Passage(String name, CapacityRange capacity) implements Joining {
    @Override
    public Run to(Run run) {
      return run.through(name, capacity.least());
    }

    @Override
    public RunNow to(RunNow run) {
      return run.through(name, capacity);
    }
  }

  private record Regulated(String name, RegulatorRange regulator, Range<GaugePressure> set)
      implements Joining {
    @Override
    public Run to(Run run) {
      return run.through(name, regulator.atWorst(set.least(), run.atmosphere()));
    }

    @Override
    public RunNow to(RunNow run) {
      return run.through(name, regulator, set);
    }
  }

  /** A plug: its loss is told with its socket. */
  private record WithoutLoss() implements Joining {
    @Override
    public Run to(Run run) {
      return run;
    }

    @Override
    public RunNow to(RunNow run) {
      return run;
    }
  }

  private final String name;
  private final Joining joining;
  private final boolean isExact;
  private final Optional<Range<GaugePressure>> set;
  private final Optional<Part> part;
  private final List<String> taken;
  private final List<String> assumed;
  private final Optional<RegulatorCurve> curve;

  private Connected(
      String name,
      Joining joining,
      boolean isExact,
      Optional<Range<GaugePressure>> set,
      Optional<Part> part,
      List<String> taken,
      List<String> assumed,
      Optional<RegulatorCurve> curve) {
    this.curve = curve;
    this.name = name;
    this.joining = joining;
    this.isExact = isExact;
    this.set = set;
    this.part = part;
    this.taken = taken;
    this.assumed = assumed;
  }

  private static Connected of(String name, ConduitRange conduit, Optional<Part> part) {
    return new Connected(
        name,
        new Line(name, conduit),
        conduit.isExact(),
        Optional.empty(),
        part,
        taken(conduit.isExact(), conduit.isTold(), conduit.assumption()),
        assumed(conduit),
        Optional.empty());
  }

  private static Connected of(String name, CapacityRange capacity, Optional<Part> part) {
    return new Connected(
        name,
        new Passage(name, capacity),
        capacity.isExact(),
        Optional.empty(),
        part,
        taken(capacity.isExact(), capacity.isTold(), capacity.assumption()),
        assumed(capacity),
        Optional.empty());
  }

  private static Connected of(
      String name, RegulatorRange regulator, Range<GaugePressure> set, Optional<Part> part) {
    List<String> taken = new ArrayList<>(taken(
        regulator.capacity().isExact(),
        regulator.capacity().isTold(),
        regulator.capacity().assumption()));
    if (!regulator.droop().isExact()) {
      taken.add("droop not told: from none to 1 bar (14.5 psi), common practice, no source");
    }
    if (!set.isExact()) {
      taken.add("its setting told as a range");
    }
    return new Connected(
        name,
        new Regulated(name, regulator, set),
        regulator.isExact() && set.isExact(),
        Optional.of(set),
        part,
        List.copyOf(taken),
        assumed(regulator.capacity()),
        regulator.curve());
  }

  /** What was taken of what is exact then. */
  private static List<String> assumed(CapacityRange capacity) {
    return capacity.isExact() && !capacity.isTold()
        ? List.of(capacity.assumption().toString())
        : List.of();
  }

  private static List<String> assumed(ConduitRange conduit) {
    return conduit.isExact() && !conduit.isTold()
        ? List.of(conduit.assumption().toString())
        : List.of();
  }

  private static List<String> taken(boolean isExact, boolean isTold, Source assumption) {
    return isExact ? List.of() : List.of(isTold ? "told as a range" : assumption.toString());
  }

  /**
   * Reads an item that stands alone.
   *
   * @param item the fields of the item
   * @param catalogue where the part stands that an item may name
   * @return what it tells
   * @throws WrongFileException if a field is missing, misspelt or refused
   */
  public static Connected read(Document item, ShopCatalogue catalogue) throws WrongFileException {
    Objects.requireNonNull(catalogue, "catalogue");
    Field root = Field.of(Objects.requireNonNull(item, "item"));
    Connected read = of(root, new PartsThere(catalogue, new ArrayList<>()));
    root.requireNothingElse();
    return read;
  }

  /** Reads an item of a list. */
  static Connected of(Field item, PartsThere parts) throws WrongFileException {
    return of(item, parts, new ArrayList<>());
  }

  /** Reads an item of a list, and keeps a word on what may be a slip. */
  static Connected of(Field item, PartsThere parts, List<String> remarks)
      throws WrongFileException {
    return item.build(() -> told(item, parts, remarks));
  }

  /** A part of the catalogue, a part with its capacity, or a hose or pipe. */
  private static Connected told(Field item, PartsThere parts, List<String> remarks)
      throws WrongFileException {
    Optional<Field> id = item.find("part");
    if (id.isPresent()) {
      return ofCatalogue(item, parts.ofCatalogue(id.get(), Part.class, "part"));
    }
    String name = item.field("name", "what to call it; or part, the id of a part of the catalogue")
        .text();
    Optional<Field> told = item.find("capacity");
    if (told.isEmpty()) {
      item.field(
          "length",
          "a length such as \"10 m\" of a hose or a pipe; or, of any other part, its capacity,"
              + " such as \"Cv 1.4\"");
      ConduitRange conduit = FlowFields.conduitRange(item);
      FlowFields.remarkOnBore(item, conduit, remarks);
      FlowFields.remarkOnSize(item, conduit, remarks);
      return of(name, conduit, Optional.empty());
    }
    CapacityRange capacity = FlowFields.capacityRange(told.get());
    if (item.find("set").isEmpty()) {
      return of(name, capacity, Optional.empty());
    }
    return of(name, PartFields.regulator(item, capacity), JobLine.set(item), Optional.empty());
  }

  private static Connected ofCatalogue(Field item, Part part) throws WrongFileException {
    String name = part.name();
    Optional<Part> there = Optional.of(part);
    if (part instanceof Part.Regulator regulator) {
      return of(name, regulator.range(), JobLine.set(item), there);
    }
    if (part.line().isPresent()) {
      return of(name, part.line().get(), there);
    }
    if (part.passage().isPresent()) {
      return of(name, part.passage().get(), there);
    }
    return new Connected(
        name,
        new WithoutLoss(),
        true,
        Optional.empty(),
        there,
        List.of(),
        List.of(),
        Optional.empty());
  }

  /** {@return what it is called in a run} */
  public String name() {
    return name;
  }

  /** {@return whether its loss is known exactly, whatever flows; where it is not, the worst of it is taken} */
  public boolean isExact() {
    return isExact;
  }

  /** {@return between which pressures what it is set to lies, if it is a regulator} */
  public Optional<Range<GaugePressure>> set() {
    return set;
  }

  /**
   * {@return what was taken for what is not told of it, each with its source; empty where it is known exactly, of a
   * regulator with a curve up to the end of that}
   */
  public List<String> taken() {
    return taken;
  }

  /**
   * Tells what was taken for what is not told of it where so much may flow.
   *
   * @param flow the most that flows
   * @return the same as {@link #taken()}, and what is taken behind the end of a regulator's curve
   */
  public List<String> takenUpTo(MassFlow flow) {
    Objects.requireNonNull(flow, "flow");
    if (curve.filter(drawn -> !drawn.tells(flow)).isEmpty()) {
      return taken;
    }
    List<String> all = new ArrayList<>(taken);
    all.add("behind the end of its curve not told: from its droop there to all that it is set to");
    return List.copyOf(all);
  }

  /**
   * {@return what was taken for what is not told, where that leaves no range, such as the temperature of a rating; of a
   * regulator that is set otherwise than its curve is drawn, what was taken of that}
   *
   * @param units the units of its numbers
   */
  public List<String> assumed(UnitSystem units) {
    List<String> all = new ArrayList<>(assumed);
    if (set.isPresent()) {
      Range<GaugePressure> told = set.get();
      curve
          .flatMap(drawn -> drawn
              .otherwiseSet(told.least(), units)
              .or(() -> drawn.otherwiseSet(told.most(), units)))
          .ifPresent(all::add);
    }
    return List.copyOf(all);
  }

  /**
   * Says what was taken for what is not told of what is connected, where that leaves no range.
   *
   * @param place the field that lists it, such as "now"
   * @param connected what is connected
   * @param units the units of the numbers
   * @return the sentence; empty where nothing was taken
   */
  public static Optional<String> takenForGranted(
      String place, List<Connected> connected, UnitSystem units) {
    Objects.requireNonNull(place, "place");
    String assumed = connected.stream()
        .filter(one -> !one.assumed(units).isEmpty())
        .map(one -> Printable.line(one.name) + " (" + String.join("; ", one.assumed(units)) + ")")
        .collect(Collectors.joining(", "));
    return assumed.isEmpty()
        ? Optional.empty()
        : Optional.of(place + ": taken for what is not told: " + assumed + ".");
  }

  /**
   * Says which of what is connected is not known exactly, and what was taken for what is not told of it.
   *
   * @param place the field that lists it, such as "now"
   * @param connected what is connected
   * @param flow the most that flows
   * @return the sentence; empty where all is known
   */
  public static Optional<String> notKnown(String place, List<Connected> connected, MassFlow flow) {
    Objects.requireNonNull(place, "place");
    String notKnown = connected.stream()
        .filter(one -> !one.takenUpTo(flow).isEmpty())
        .map(one -> Printable.line(one.name) + " (" + String.join("; ", one.takenUpTo(flow)) + ")")
        .collect(Collectors.joining(", "));
    return notKnown.isEmpty()
        ? Optional.empty()
        : Optional.of(place + ": not known exactly, and judged at both ends of what it may be: "
            + notKnown + ".");
  }

  /** The part of the catalogue that it is. */
  Optional<Part> part() {
    return part;
  }

  /**
   * Leads a run through it, with the worst that it can be.
   *
   * @param run what stands in front
   * @return the longer run; the same where it loses nothing by itself, such as a plug, whose socket tells its loss
   * @throws IllegalArgumentException if an element of the run has its name, or the run cannot lead through it
   */
  public Run addTo(Run run) {
    return joining.to(Objects.requireNonNull(run, "run"));
  }

  /**
   * Leads what is connected through it, as well as it is known.
   *
   * @param run what stands in front
   * @return the longer run; the same where it loses nothing by itself, such as a plug, whose socket tells its loss
   * @throws IllegalArgumentException if an element of the run has its name, or the run cannot lead through it
   */
  public RunNow addTo(RunNow run) {
    return joining.to(Objects.requireNonNull(run, "run"));
  }

  /** {@return the name} */
  @Override
  public String toString() {
    return name;
  }
}
