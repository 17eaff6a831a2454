package org.airfit.files;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.airfit.flow.CapacityRange;
import org.airfit.flow.FlowCapacity;
import org.airfit.line.Conduit;
import org.airfit.line.ConduitRange;
import org.airfit.plant.RegulatorElement;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.Range;
import org.airfit.run.Run;
import org.airfit.select.Part;
import org.airfit.select.Requirement;
import org.airfit.working.UnitSystem;

/** Reads what is connected to the outlet today, for the air that arrives now. */
final class NowFields {

  /** What of the connected is not known exactly, by name. */
  private final Set<String> notKnown = new LinkedHashSet<>();

  private final GaugePressure highest;
  private final UnitSystem units;
  private final List<String> remarks;

  private NowFields(GaugePressure highest, UnitSystem units, List<String> remarks) {
    this.highest = highest;
    this.units = units;
    this.remarks = remarks;
  }

  /** The run of today: the piping, then what is connected to its outlet, at the worst of what is known of it. */
  static Run run(
      Field list, ShopCatalogue catalogue, Requirement job, UnitSystem units, List<String> remarks)
      throws WrongFileException {
    NowFields now = new NowFields(job.highest(), units, remarks);
    Run run = now.through(list, catalogue, job.toOutlet());
    if (!now.notKnown.isEmpty()) {
      remarks.add(list.place() + ": the worst is taken of what is not known exactly of "
          + now.notKnown.stream().map(Printable::line).collect(Collectors.joining(", ")) + ".");
    }
    return run;
  }

  private Run through(Field list, ShopCatalogue catalogue, Run piping) throws WrongFileException {
    PartsThere parts = new PartsThere(catalogue, new ArrayList<>());
    Run run = piping;
    for (Field item : list.items()) {
      Run before = run;
      run = item.build(() -> connected(before, item, parts));
      item.requireNothingElse();
    }
    return run;
  }

  /** What is connected next: a part of the catalogue, a part with its capacity, or a hose or pipe. */
  private Run connected(Run run, Field item, PartsThere parts) throws WrongFileException {
    Optional<Field> id = item.find("part");
    if (id.isPresent()) {
      Part part = parts.ofCatalogue(id.get(), Part.class, "part");
      remarkOnRating(item, part);
      return through(run, item, part);
    }
    String name = item.field("name", "what to call it; or part, the id of a part of the catalogue")
        .text();
    Optional<Field> capacity = item.find("capacity");
    if (capacity.isEmpty()) {
      return run.through(name, least(name, FlowFields.conduitOfOneLength(item)));
    }
    Optional<Field> set = item.find("set");
    return set.isPresent()
        ? run.through(
            name,
            RegulatorElement.of(
                FlowFields.capacity(capacity.get()), set(item).absolute(run.atmosphere())))
        : run.through(name, FlowFields.capacity(capacity.get()));
  }

  /** What is connected already may be too weak for what can occur: that is told, and not only how much arrives. */
  private void remarkOnRating(Field item, Part part) {
    part.facts()
        .rating()
        .filter(rating -> rating.compareTo(highest) < 0)
        .ifPresent(rating -> remarks.add(item.place() + ": " + Printable.line(part.name())
            + " is rated for " + units.sayBoth(rating) + ", and up to " + units.sayBoth(highest)
            + " can occur: take it out of use, or see to it that less can occur."));
  }

  private static GaugePressure set(Field item) throws WrongFileException {
    Range<GaugePressure> set = JobLine.set(item);
    if (!set.isExact()) {
      throw item.field("set", Accepted.GAUGE)
          .wrong("is a range; what is connected now is judged at one setting: give the lowest");
    }
    return set.least();
  }

  private Conduit least(String name, ConduitRange range) {
    if (!range.isExact()) {
      notKnown.add(name);
    }
    return range.least();
  }

  private FlowCapacity least(String name, CapacityRange range) {
    if (!range.isExact()) {
      notKnown.add(name);
    }
    return range.least();
  }

  private Run through(Run run, Field item, Part part) throws WrongFileException {
    String name = part.name();
    if (part instanceof Part.Socket socket) {
      return run.through(name, least(name, socket.capacityRange()));
    }
    if (part instanceof Part.Hose hose) {
      return run.through(name, least(name, hose.conduitRange()));
    }
    if (part instanceof Part.Adapter adapter) {
      return run.through(name, adapter.conduit());
    }
    if (part instanceof Part.Device device) {
      return run.through(name, least(name, device.capacityRange()));
    }
    if (part instanceof Part.Regulator regulator) {
      least(name, regulator.capacityRange());
      if (!regulator.droopRange().isExact()) {
        notKnown.add(name);
      }
      return run.through(name, regulator.element(set(item), run.atmosphere()));
    }
    return run; // a plug's loss is told with its socket
  }
}
