package org.airfit.select;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import org.airfit.joint.End;
import org.airfit.joint.HoseSize;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.Length;
import org.airfit.quantity.Range;
import org.airfit.working.UnitSystem;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What is said of a hose that stays and starves the tool; the judge is the same job with each size in its place. */
class GivenHosesTest {

  private static Requirement job(double litresPerSecond, double bar, Part.Hose... hoses) {
    return job(
        Range.exactly(FreeAirFlow.ofAnrLitresPerSecond(litresPerSecond)),
        Range.exactly(GaugePressure.ofBar(bar)),
        hoses);
  }

  private static Requirement job(
      Range<FreeAirFlow> air, Range<GaugePressure> needed, Part.Hose... hoses) {
    Slot.Hose first = Slot.hose("first", Length.ofMetres(1.0)).with(hoses[0]);
    return Requirement.forTool(air, needed)
        .toolInlet(End.parse("3/8 NPT female"))
        .toolRating(GaugePressure.ofBar(9.0))
        .supply(Shelf.SUPPLY, Shelf.ATMOSPHERE)
        .outlet(End.parse("3/8 NPT female"))
        .environment(Environment.INDOORS)
        .lubrication(Lubrication.DRY)
        .layout(Layout.of(
            hoses.length == 1
                ? List.of(first)
                : List.of(first, Slot.hose("second", Length.ofMetres(1.0)).with(hoses[1]))))
        .build();
  }

  private static Part.Hose hose(String id, double boreMm, double metres) {
    return Shelf.hose(
        PartFacts.of(id, id).withRating(GaugePressure.ofBar(16.0)).asExisting(), boreMm, metres);
  }

  private static Selection of(Requirement job) {
    return Selection.of(
        job, Catalogue.of(List.of(Shelf.adapter("joiner", "3/8 NPT female", "3/8 NPT female"))));
  }

  private static String toGive(Requirement job) {
    return of(job).fold(fitting -> "", nothing -> String.join(" ", nothing.toGive(UnitSystem.SI)));
  }

  private static boolean fits(double litresPerSecond, double bar, Part.Hose... hoses) {
    return of(job(litresPerSecond, bar, hoses)).fold(fitting -> true, nothing -> false);
  }

  @ParameterizedTest
  @CsvSource({"4.0, 5.0", "6.0, 6.0", "8.0, 6.5", "12.0, 6.5", "20.0, 6.0", "30.0, 5.0"})
  void the_first_size_that_would_do_is_told_with_what_the_narrower_ones_leave(
      double litresPerSecond, double bar) {
    Part.Hose old = hose("old hose", 5.0, 20.0);
    String said = toGive(job(litresPerSecond, bar, old));
    assertThat(said).contains(" What starves it is old hose, which is there and stays. With a");
    Optional<HoseSize> first = Optional.empty();
    for (HoseSize size : HoseSize.widerThan(Length.ofMillimetres(5.0), UnitSystem.SI)) {
      boolean isTold = said.contains("ith a " + size + " ");
      assertThat(isTold).as(size.toString()).isEqualTo(first.isEmpty());
      boolean does = fits(litresPerSecond, bar, hose("old hose", size.bore().millimetres(), 20.0));
      if (isTold) {
        String of = said.substring(said.indexOf("ith a " + size + " "));
        String alone = of.contains("; with") ? of.substring(0, of.indexOf("; with")) : of;
        assertThat(alone.contains("enough")).as(alone).isEqualTo(does);
      }
      first = first.isEmpty() && does ? Optional.of(size) : first;
    }
    assertThat(first).isPresent();
    assertThat(said).endsWith(": enough.");
  }

  /** Of what is known as a range the most air and the most pressure decide, not what would do at best. */
  @Test
  void the_size_that_is_told_does_at_worst() {
    Part.Hose old = hose("old hose", 5.0, 20.0);
    String atWorst = sizes(toGive(job(20.0, 6.5, old)));
    assertThat(atWorst)
        .isNotEqualTo(sizes(toGive(job(10.0, 6.5, old))))
        .isNotEqualTo(sizes(toGive(job(20.0, 2.0, old))));
    assertThat(sizes(toGive(job(
            new Range<>(
                FreeAirFlow.ofAnrLitresPerSecond(10.0), FreeAirFlow.ofAnrLitresPerSecond(20.0)),
            Range.exactly(GaugePressure.ofBar(6.5)),
            old))))
        .isEqualTo(atWorst);
    assertThat(sizes(toGive(job(
            Range.exactly(FreeAirFlow.ofAnrLitresPerSecond(20.0)),
            new Range<>(GaugePressure.ofBar(2.0), GaugePressure.ofBar(6.5)),
            old))))
        .isEqualTo(atWorst);
  }

  private static String sizes(String said) {
    return said.substring(said.indexOf(" With a "));
  }

  /** Either of two hoses alone does not do. */
  @Test
  void where_no_size_of_one_hose_alone_would_do_the_narrowest_is_told_as_not_all() {
    Part.Hose narrow = hose("narrow", 5.0, 20.0);
    Part.Hose longer = hose("long", 6.0, 40.0);
    double wide = HoseSize.all(UnitSystem.SI).get(4).bore().millimetres();
    assertThat(fits(8.0, 6.5, hose("narrow", wide, 20.0), longer)).isFalse();
    assertThat(fits(8.0, 6.5, narrow, hose("long", wide, 40.0))).isFalse();
    String said = toGive(job(8.0, 6.5, narrow, longer));
    assertThat(said)
        .contains(" It is not only ")
        .contains(", which is there and stays. With a ")
        .doesNotContain("What starves")
        .doesNotContain("enough");
  }

  /** What is too low before the hose is not mended by any hose. */
  @Test
  void nothing_is_said_of_a_hose_that_is_not_what_starves_the_tool() {
    assertThat(toGive(job(4.0, 7.5, hose("wide", 19.0, 1.0)))).doesNotContain("which is there");
  }

  @Test
  void a_hose_that_is_to_be_chosen_is_not_one_that_stays() {
    Requirement open = Requirement.forTool(
            FreeAirFlow.ofAnrLitresPerSecond(8.0), GaugePressure.ofBar(6.5))
        .toolInlet(End.parse("3/8 NPT female"))
        .supply(Shelf.SUPPLY, Shelf.ATMOSPHERE)
        .outlet(End.parse("3/8 NPT female"))
        .layout(Layout.of(List.of(Slot.hose("first", Length.ofMetres(1.0)))))
        .build();
    Selection found =
        Selection.of(open, Catalogue.of(List.of(Shelf.hose(Shelf.steel("for sale"), 5.0, 20.0))));
    assertThat(found.toString()).contains("NOT MET").doesNotContain("which is there");
  }
}
