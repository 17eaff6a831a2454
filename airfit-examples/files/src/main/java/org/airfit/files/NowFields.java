package org.airfit.files;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.airfit.quantity.GaugePressure;
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
      Connected next = Connected.of(item, parts);
      next.part().ifPresent(part -> remarkOnRating(item, part));
      run = item.build(() -> next.addTo(before));
      if (!next.isExact()) {
        notKnown.add(next.name());
      }
      item.requireNothingElse();
    }
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
