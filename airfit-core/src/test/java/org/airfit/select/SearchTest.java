package org.airfit.select;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.function.Function;
import org.airfit.quantity.GaugePressure;
import org.junit.jupiter.api.Test;

/**
 * The search against every combination, on the same small random jobs in every run; the properties draw new ones. Jobs
 * of more combinations than a moment builds are passed over: how many are left is held too.
 */
class SearchTest {

  private static final long MOST = 100L;

  private static List<Proposal> listed(Selection selection) {
    return selection.fold(Selection.Proposals::proposals, Selection.NothingFits::closest);
  }

  private static List<List<String>> ids(List<Proposal> proposals) {
    return proposals.stream()
        .map(proposal -> proposal.parts().stream().map(Part::id).toList())
        .toList();
  }

  /** Whether a job was small enough to be held against every combination. */
  private static boolean isSame(Requirement job, Catalogue catalogue) {
    Selection found = Selection.of(job, catalogue);
    EveryCombination every = new EveryCombination(job, catalogue);
    if (!every.isSmall(MOST) || listed(found).isEmpty()) {
      return false;
    }
    List<Proposal> known = every.best();
    assertThat(ids(listed(found))).as(job.layout().toString()).isEqualTo(ids(known));
    assertThat(found instanceof Selection.Proposals).isEqualTo(known.get(0).fits());
    for (int i = 0; i < known.size(); i++) {
      assertThat(Shelf.pascalsAtTool(listed(found).get(i)))
          .isEqualTo(Shelf.pascalsAtTool(known.get(i)));
      assertThat(listed(found).get(i).joints()).isEqualTo(known.get(i).joints());
    }
    PartSearch alone = new PartSearch(job, catalogue, 1);
    assertThat(ids(known.get(0).fits() ? alone.fitting() : alone.nearest()))
        .as("the best alone")
        .isEqualTo(ids(known.subList(0, 1)));
    return true;
  }

  /** Holds jobs against every combination until so many were small enough. */
  private static void check(
      int wanted, Function<Jumble, Requirement> job, Function<Jumble, List<? extends Part>> parts) {
    int same = 0;
    for (long seed = 1L; same < wanted; seed++) {
      assertThat(seed).as("jobs drawn").isLessThan(20L * wanted);
      Jumble jumble = new Jumble(seed);
      Catalogue catalogue = Catalogue.of(parts.apply(jumble));
      same += isSame(job.apply(jumble), catalogue) ? 1 : 0;
    }
  }

  @Test
  void jobs_at_the_counter() {
    check(25, jumble -> jumble.job().build(), Jumble::parts);
  }

  @Test
  void jobs_of_any_layout() {
    check(25, Jumble::jobOfAnyLayout, Jumble::parts);
  }

  @Test
  void jobs_of_several_tools() {
    check(12, Jumble::jobOfSeveralTools, Jumble::partsWithSplitters);
  }

  @Test
  void jobs_shared_with_others() {
    check(8, Jumble::jobSharedWithOthers, Jumble::partsWithSplitters);
  }

  /** Parts that were judged once are the same for tools that need more: as if all were judged again. */
  @Test
  void what_was_judged_serves_a_tool_that_needs_more() {
    int found = 0;
    for (long seed = 1L; seed <= 40L; seed++) {
      Jumble jumble = new Jumble(seed);
      boolean isSplit = seed % 2L == 0L;
      Catalogue catalogue = Catalogue.of(isSplit ? jumble.partsWithSplitters() : jumble.parts());
      Requirement job = isSplit ? jumble.jobOfSeveralTools() : jumble.jobOfAnyLayout();
      Requirement more =
          job.needing(GaugePressure.ofPascals(job.leastRange().most().pascals() + 1.0e3));
      List<Proposal> again = new PartSearch(more, catalogue, 8).fitting();
      assertThat(new PartSearch(job, catalogue, 20).needing(more, 8).fitting())
          .as("seed %d", seed)
          .isEqualTo(again);
      found += again.size();
    }
    assertThat(found).isGreaterThan(20);
  }

  /** In this job a hose of the first line may be too short, which nobody asks any more as one of the second line is. */
  @Test
  void a_question_that_a_later_line_settles_puts_nothing_behind() {
    Jumble jumble = new Jumble(-25620L);
    Catalogue catalogue = Catalogue.of(jumble.partsWithSplitters());
    SeveralToolsProperties.check(jumble.inDoubtOfReach(jumble.jobOfSeveralTools()), catalogue);
  }
}
