package org.airfit.files;

import java.util.ArrayList;
import java.util.Objects;
import java.util.Optional;
import org.airfit.flow.CapacityRange;
import org.airfit.flow.FlowCapacity;
import org.airfit.line.ConduitRange;
import org.airfit.plant.RegulatorElement;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.Range;
import org.airfit.run.Run;
import org.airfit.select.Part;

/**
 * One thing of what is connected to an outlet, an item of the field {@code now} of a job, read by itself. A program that
 * judges millions of runs reads each hose and coupling that recurs once, and adds it to every run that has it.
 *
 * <p>This class is immutable and thread-safe.
 */
public final class Connected {

  /** How it is added to a run; what is not known exactly with the worst that it can be. */
  private interface Joining {
    Run to(Run run);
  }

  private final String name;
  private final Joining joining;
  private final boolean isExact;
  private final Optional<GaugePressure> set;
  private final Optional<Part> part;

  private Connected(
      String name,
      Joining joining,
      boolean isExact,
      Optional<GaugePressure> set,
      Optional<Part> part) {
    this.name = name;
    this.joining = joining;
    this.isExact = isExact;
    this.set = set;
    this.part = part;
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
    return item.build(() -> told(item, parts));
  }

  /** A part of the catalogue, a part with its capacity, or a hose or pipe. */
  private static Connected told(Field item, PartsThere parts) throws WrongFileException {
    Optional<Field> id = item.find("part");
    if (id.isPresent()) {
      return ofCatalogue(item, parts.ofCatalogue(id.get(), Part.class, "part"));
    }
    String name = item.field("name", "what to call it; or part, the id of a part of the catalogue")
        .text();
    Optional<Field> capacity = item.find("capacity");
    if (capacity.isEmpty()) {
      ConduitRange conduit = FlowFields.conduitOfOneLength(item);
      return plain(name, run -> run.through(name, conduit.least()), conduit.isExact());
    }
    if (item.find("set").isEmpty()) {
      FlowCapacity told = FlowFields.capacity(capacity.get());
      return plain(name, run -> run.through(name, told), true);
    }
    FlowCapacity told = FlowFields.capacity(capacity.get());
    GaugePressure set = set(item);
    return new Connected(
        name,
        run -> run.through(name, RegulatorElement.of(told, set.absolute(run.atmosphere()))),
        true,
        Optional.of(set),
        Optional.empty());
  }

  private static Connected plain(String name, Joining joining, boolean isExact) {
    return new Connected(name, joining, isExact, Optional.empty(), Optional.empty());
  }

  private static Connected ofCatalogue(Field item, Part part) throws WrongFileException {
    String name = part.name();
    if (part instanceof Part.Socket socket) {
      return there(part, socket.capacityRange());
    }
    if (part instanceof Part.Hose hose) {
      ConduitRange conduit = hose.conduitRange();
      return there(part, run -> run.through(name, conduit.least()), conduit.isExact());
    }
    if (part instanceof Part.Adapter adapter) {
      return there(part, run -> run.through(name, adapter.conduit()), true);
    }
    if (part instanceof Part.Device device) {
      return there(part, device.capacityRange());
    }
    if (part instanceof Part.Regulator regulator) {
      GaugePressure set = set(item);
      return new Connected(
          name,
          run -> run.through(name, regulator.element(set, run.atmosphere())),
          regulator.capacityRange().isExact() && regulator.droopRange().isExact(),
          Optional.of(set),
          Optional.of(part));
    }
    return there(part, run -> run, true); // a plug's loss is told with its socket
  }

  private static Connected there(Part part, CapacityRange capacity) {
    return there(part, run -> run.through(part.name(), capacity.least()), capacity.isExact());
  }

  private static Connected there(Part part, Joining joining, boolean isExact) {
    return new Connected(part.name(), joining, isExact, Optional.empty(), Optional.of(part));
  }

  private static GaugePressure set(Field item) throws WrongFileException {
    Range<GaugePressure> set = JobLine.set(item);
    if (!set.isExact()) {
      throw item.field("set", Accepted.GAUGE)
          .wrong("is a range; what is connected now is judged at one setting: give the lowest");
    }
    return set.least();
  }

  /** {@return what it is called in a run} */
  public String name() {
    return name;
  }

  /** {@return whether its loss is known exactly; where it is not, the worst of it is taken} */
  public boolean isExact() {
    return isExact;
  }

  /** {@return what it is set to, if it is a regulator} */
  public Optional<GaugePressure> set() {
    return set;
  }

  /** The part of the catalogue that it is. */
  Optional<Part> part() {
    return part;
  }

  /**
   * Leads a run through it.
   *
   * @param run what stands in front
   * @return the longer run; the same where it loses nothing by itself, such as a plug, whose socket tells its loss
   * @throws IllegalArgumentException if an element of the run has its name, or the run cannot lead through it
   */
  public Run addTo(Run run) {
    return joining.to(Objects.requireNonNull(run, "run"));
  }

  /** {@return the name} */
  @Override
  public String toString() {
    return name;
  }
}
