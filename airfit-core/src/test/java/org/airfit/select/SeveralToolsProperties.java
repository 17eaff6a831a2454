package org.airfit.select;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import net.jqwik.api.Assume;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;

/** Jobs of several tools on one outlet: the list is that of every combination. */
class SeveralToolsProperties {

  /** So many combinations of several tools can be built and judged in half a second. */
  private static final long MOST = 400L;

  private static List<Proposal> listed(Selection selection) {
    return selection.fold(Selection.Proposals::proposals, Selection.NothingFits::closest);
  }

  private static List<List<String>> ids(List<Proposal> proposals) {
    return proposals.stream()
        .map(proposal -> proposal.parts().stream().map(Part::id).toList())
        .toList();
  }

  static void check(Requirement job, Catalogue catalogue) {
    Selection found = Selection.of(job, catalogue);
    Assume.that(!listed(found).isEmpty());
    EveryCombination every = new EveryCombination(job, catalogue);
    Assume.that(every.isSmall(MOST));
    List<Proposal> known = every.best();
    assertThat(ids(listed(found))).as(job.layout().toString()).isEqualTo(ids(known));
    assertThat(found instanceof Selection.Proposals).isEqualTo(known.get(0).fits());
    for (int i = 0; i < known.size(); i++) {
      assertThat(listed(found).get(i).findings()).isEqualTo(known.get(i).findings());
      assertThat(listed(found).get(i).joints()).isEqualTo(known.get(i).joints());
      assertThat(Shelf.lines(listed(found).get(i))).isEqualTo(Shelf.lines(known.get(i)));
    }
  }

  @Property(tries = 25)
  void the_list_is_that_of_every_combination_of_all_lines(@ForAll long seed) {
    Jumble jumble = new Jumble(seed);
    Catalogue catalogue = Catalogue.of(jumble.partsWithSplitters());
    check(jumble.jobOfSeveralTools(), catalogue);
  }

  @Property(tries = 25)
  void the_list_is_that_of_every_combination_where_others_take_air(@ForAll long seed) {
    Jumble jumble = new Jumble(seed);
    Catalogue catalogue = Catalogue.of(jumble.partsWithSplitters());
    check(jumble.jobSharedWithOthers(), catalogue);
  }

  @Property(tries = 12)
  void the_list_is_that_of_every_combination_where_reaches_are_not_known(@ForAll long seed) {
    Jumble jumble = new Jumble(seed);
    Catalogue catalogue = Catalogue.of(jumble.partsWithSplitters());
    check(jumble.inDoubtOfReach(jumble.jobOfSeveralTools()), catalogue);
  }

  /** Every element a run of its own, the flows added up once more. */
  @Property(tries = 25)
  void every_tool_has_what_the_elements_leave_of_the_air_of_all_one_after_another(
      @ForAll long seed) {
    Jumble jumble = new Jumble(seed);
    Catalogue catalogue = Catalogue.of(jumble.partsWithSplitters());
    for (Proposal p : listed(Selection.of(jumble.jobOfSeveralTools(), catalogue))) {
      for (Proposal way : p.toEachTool()) {
        ToldOnceMore rules = new ToldOnceMore(way.requirement());
        assertThat(Shelf.pascalsAtTool(way)).isCloseTo(rules.atWorst(way), within(1.0e-3));
        assertThat(way.resultAtBest().<Double>fold(d -> d.atToolGauge().pascals(), starved -> -1.0))
            .isCloseTo(rules.atBest(way), within(1.0e-3));
      }
    }
  }

  @Property(tries = 25)
  void the_best_alone_is_the_first_of_the_list(@ForAll long seed) {
    Jumble jumble = new Jumble(seed);
    Catalogue catalogue = Catalogue.of(jumble.partsWithSplitters());
    Requirement job = jumble.jobOfSeveralTools();
    PartSearch alone = new PartSearch(job, catalogue, 1);
    Assume.that(alone.missing().isEmpty());
    Selection found = Selection.of(job, catalogue);
    List<Proposal> best = found instanceof Selection.Proposals ? alone.fitting() : alone.nearest();
    assertThat(ids(best)).isEqualTo(ids(listed(found)).subList(0, 1));
  }
}
