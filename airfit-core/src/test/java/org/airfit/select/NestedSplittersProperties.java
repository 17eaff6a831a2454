package org.airfit.select;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import net.jqwik.api.Assume;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.airfit.quantity.FreeAirFlow;

/** Jobs with splitters behind splitters: the list is that of every combination. */
class NestedSplittersProperties {

  private static Requirement job(Jumble jumble) {
    return jumble.jobOfNestedSplitters();
  }

  private static List<Proposal> listed(Selection selection) {
    return selection.fold(Selection.Proposals::proposals, Selection.NothingFits::closest);
  }

  @Property(tries = 16)
  void the_list_is_that_of_every_combination_of_all_lines(@ForAll long seed) {
    Jumble jumble = new Jumble(seed);
    Catalogue catalogue = Catalogue.of(jumble.partsWithSplitters());
    SeveralToolsProperties.check(job(jumble), catalogue);
  }

  @Property(tries = 8)
  void the_list_is_that_of_every_combination_where_reaches_are_not_known(@ForAll long seed) {
    Jumble jumble = new Jumble(seed);
    Catalogue catalogue = Catalogue.of(jumble.partsWithSplitters());
    SeveralToolsProperties.check(jumble.inDoubtOfReach(job(jumble)), catalogue);
  }

  /** What flows in front of the first splitter, added up once more from the tools on: the same on the way to each. */
  @Property(tries = 30)
  void the_first_splitter_carries_what_all_lines_behind_it_draw(@ForAll long seed) {
    Requirement job = job(new Jumble(seed));
    double all = drawn(job.layout().lines()) + others(job.layout().slots());
    for (Requirement way : job.toEachTool()) {
      double flow =
          kilogramsPerSecond(way.demandRange().most()) + others(way.layout().slots());
      assertThat(flow).as(job.layout().toString()).isCloseTo(all, within(1.0e-12));
    }
  }

  private static double drawn(List<ToolLine> lines) {
    double sum = 0.0;
    for (ToolLine line : lines) {
      double one = line.lines().isEmpty()
          ? kilogramsPerSecond(line.demandRange().most())
          : drawn(line.lines());
      sum += line.count() * (one + others(line.slots()));
    }
    return sum;
  }

  private static double others(List<Slot> slots) {
    return slots.stream().mapToDouble(NestedSplittersProperties::others).sum();
  }

  private static double others(Slot slot) {
    return slot instanceof Slot.Splitter splitter
        ? splitter.others().map(air -> kilogramsPerSecond(air.most())).orElse(0.0)
        : 0.0;
  }

  private static double kilogramsPerSecond(FreeAirFlow air) {
    return air.massFlow().kilogramsPerSecond();
  }

  @Property(tries = 16)
  void the_best_alone_is_the_first_of_the_list(@ForAll long seed) {
    Jumble jumble = new Jumble(seed);
    Catalogue catalogue = Catalogue.of(jumble.partsWithSplitters());
    Requirement job = job(jumble);
    PartSearch alone = new PartSearch(job, catalogue, 1);
    Assume.that(alone.missing().isEmpty());
    Selection found = Selection.of(job, catalogue);
    List<Proposal> best = found instanceof Selection.Proposals ? alone.fitting() : alone.nearest();
    assertThat(best.get(0).parts().stream().map(Part::id).toList())
        .isEqualTo(listed(found).get(0).parts().stream().map(Part::id).toList());
  }
}
