package org.airfit.files;

import java.util.ArrayList;
import java.util.Optional;
import org.airfit.plant.RegulatorElement;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.Range;
import org.airfit.run.Run;
import org.airfit.select.Part;

/** Reads what is connected to the outlet today, for the air that arrives now. */
final class NowFields {

  private NowFields() {}

  /** The run of today: the piping, then what is connected to its outlet. */
  static Run run(Field list, ShopCatalogue catalogue, Run piping) throws WrongFileException {
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
  private static Run connected(Run run, Field item, PartsThere parts) throws WrongFileException {
    Optional<Field> id = item.find("part");
    if (id.isPresent()) {
      return through(run, item, parts.ofCatalogue(id.get(), Part.class, "part"));
    }
    String name = item.field("name", "what to call it; or part, the id of a part of the catalogue")
        .text();
    Optional<Field> capacity = item.find("capacity");
    if (capacity.isEmpty()) {
      return run.through(name, FlowFields.conduit(item));
    }
    Optional<Field> set = item.find("set");
    return set.isPresent()
        ? run.through(
            name,
            RegulatorElement.of(FlowFields.capacity(capacity.get()), set(item, run.atmosphere())))
        : run.through(name, FlowFields.capacity(capacity.get()));
  }

  private static AbsolutePressure set(Field item, AbsolutePressure atmosphere)
      throws WrongFileException {
    Range<GaugePressure> set = JobLine.set(item);
    if (!set.isExact()) {
      throw item.field("set", Accepted.GAUGE)
          .wrong("is a range; what is connected now is judged at one setting: give the lowest");
    }
    return set.least().absolute(atmosphere);
  }

  private static Run through(Run run, Field item, Part part) throws WrongFileException {
    String name = part.name();
    if (part instanceof Part.Socket socket) {
      return run.through(name, socket.capacity());
    }
    if (part instanceof Part.Hose hose) {
      return run.through(name, hose.conduit());
    }
    if (part instanceof Part.Adapter adapter) {
      return run.through(name, adapter.conduit());
    }
    if (part instanceof Part.Device device) {
      return run.through(name, device.capacity());
    }
    if (part instanceof Part.Regulator regulator) {
      RegulatorElement element =
          RegulatorElement.of(regulator.capacity(), set(item, run.atmosphere()));
      return run.through(
          name,
          regulator
              .atFlow()
              .map(flow -> element.withDroop(regulator.droop(), flow))
              .orElseGet(() -> element.withDroopAtAnyFlow(regulator.droop())));
    }
    return run; // a plug's loss is told with its socket
  }
}
