package org.airfit.files;

import java.util.ArrayList;
import java.util.List;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.MassFlow;
import org.airfit.select.Part;
import org.airfit.select.Requirement;
import org.airfit.select.RunNow;
import org.airfit.working.UnitSystem;

/** Reads what is connected to the outlet today, for the air that arrives now. */
final class NowFields {

  private final GaugePressure highest;
  private final MassFlow most;
  private final UnitSystem units;
  private final List<String> remarks;

  private NowFields(GaugePressure highest, MassFlow most, UnitSystem units, List<String> remarks) {
    this.highest = highest;
    this.most = most;
    this.units = units;
    this.remarks = remarks;
  }

  /** The run of today: the piping, then what is connected to its outlet, as well as it is known. */
  static RunNow run(
      Field list, ShopCatalogue catalogue, Requirement job, UnitSystem units, List<String> remarks)
      throws WrongFileException {
    MassFlow most = job.airAtOutlet().most().massFlow();
    return new NowFields(job.highest(), most, units, remarks)
        .through(list, catalogue, RunNow.of(job));
  }

  private RunNow through(Field list, ShopCatalogue catalogue, RunNow piping)
      throws WrongFileException {
    PartsThere parts = new PartsThere(catalogue, new ArrayList<>());
    List<Connected> connected = new ArrayList<>();
    RunNow run = piping;
    for (Field item : list.items()) {
      RunNow before = run;
      Connected next = Connected.of(item, parts, remarks);
      next.part().ifPresent(part -> remarkOnRating(item, part));
      run = item.build(() -> next.addTo(before));
      connected.add(next);
      item.requireNothingElse();
    }
    Connected.notKnown(list.place(), connected, most).ifPresent(remarks::add);
    Connected.takenForGranted(list.place(), connected, units).ifPresent(remarks::add);
    return run;
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
}
