package org.airfit.select;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.util.List;
import org.airfit.joint.End;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.Length;
import org.airfit.quantity.LengthUnit;
import org.airfit.quantity.Money;
import org.airfit.working.UnitSystem;
import org.junit.jupiter.api.Test;

/** A whip hose is short: the long hoses of a catalogue are none, however cheap. */
class ShortWhipHoseTest {

  private static final End FEMALE = End.parse("3/8 NPT female");

  private static Part.Hose hose(String id, double metres, String price) {
    return Shelf.hose(Shelf.steel(id).withPrice(Money.parse(price)), 12.7, metres);
  }

  private static final Part.Hose SHORT = hose("short", 1.0, "30 EUR");
  private static final Part.Hose TEN_FEET = hose("ten feet", 3.048, "20 EUR");
  private static final Part.Hose LONG = hose("long", 60.0, "1 EUR");

  private static final Slot.Hose WHIP = Slot.whipHose("whip hose", Length.of(2.0, LengthUnit.FOOT));

  private static Selection select(Slot.Hose slot, Part.Hose... hoses) {
    Requirement job = Shelf.cheapest(
            Requirement.forTool(FreeAirFlow.ofAnrLitresPerSecond(5.0), GaugePressure.ofBar(6.0))
                .toolInlet(FEMALE))
        .outlet(FEMALE)
        .layout(Layout.of(List.of(slot)))
        .build();
    return Selection.of(job, Catalogue.of(List.of(hoses)));
  }

  private static Proposal best(Slot.Hose slot, Part.Hose... hoses) {
    return ((Selection.Proposals) select(slot, hoses)).best();
  }

  private static String said(Proposal proposal, UnitSystem units) {
    return proposal.findings(units).stream()
        .filter(finding -> finding.rule() == Rule.HOSE_SHORT_ENOUGH)
        .findFirst()
        .orElseThrow()
        .toString();
  }

  @Test
  void a_long_hose_is_no_whip_hose_though_it_is_cheap_and_wide() {
    Proposal best = best(WHIP, LONG, SHORT);
    assertThat(best.hose("whip hose")).isEqualTo(SHORT);
    assertThat(said(best, UnitSystem.SI))
        .isEqualTo(
            "Hose is short enough: met. 1 m of whip hose, and a whip hose is at most 3.05 m long"
                + " (common practice, no source).");
    assertThat(said(best, UnitSystem.US)).contains("at most 10 ft");
  }

  @Test
  void of_another_hose_that_may_be_ten_feet_long_no_practice_of_whip_hoses_is_told() {
    Slot.Hose inlet = Slot.hose("inlet hose", Length.of(2.0, LengthUnit.FOOT))
        .ofAtMost(Length.of(10.0, LengthUnit.FOOT));
    assertThat(said(best(inlet, SHORT), UnitSystem.US))
        .isEqualTo("Hose is short enough: met. 3.28 ft of hose, at most 10 ft wanted.");
  }

  @Test
  void where_all_hoses_are_long_the_sheet_says_so() {
    Selection.NothingFits none = (Selection.NothingFits) select(WHIP, LONG);
    assertThat(none.toGive())
        .containsExactly(
            "Hose is short enough: NOT MET. 60 m of whip hose, and a whip hose is at most 3.05 m"
                + " long (common practice, no source): too long.");
  }

  @Test
  void ten_feet_are_short_and_more_is_not() {
    assertThat(best(WHIP, LONG, TEN_FEET).hose("whip hose")).isEqualTo(TEN_FEET);
    assertThat(select(WHIP, hose("a little more", 3.05, "5 EUR")))
        .isInstanceOf(Selection.NothingFits.class);
  }

  @Test
  void what_is_told_counts_before_what_is_usual() {
    Slot.Hose shorter = WHIP.ofAtMost(Length.ofMetres(2.0));
    assertThat(best(shorter, LONG, TEN_FEET, SHORT).hose("whip hose")).isEqualTo(SHORT);
    assertThat(said(best(shorter, SHORT), UnitSystem.SI)).endsWith("at most 2 m wanted.");
    assertThat(best(WHIP.ofAtMost(Length.ofMetres(100.0)), LONG).hose("whip hose"))
        .isEqualTo(LONG);
    assertThat(shorter).hasToString("whip hose: whip hose of at least 0.6096 m and at most 2 m");
  }

  /** One that must reach farther than whip hoses do is as long as it must be. */
  @Test
  void a_reach_that_is_longer_than_a_whip_hose_counts() {
    Slot.Hose far = Slot.whipHose("whip hose", Length.ofMetres(5.0));
    assertThat(far.longest()).contains(Length.ofMetres(5.0));
    assertThat(best(far, hose("five", 5.0, "9 EUR"), LONG).hose("whip hose").id())
        .isEqualTo("five");
  }

  @Test
  void any_other_hose_may_be_long_and_one_that_is_there_is_what_it_is() {
    Slot.Hose hose = Slot.hose("hose", Length.ofMetres(0.5));
    assertThat(hose.longest()).isEmpty();
    assertThat(best(hose, LONG, SHORT).hose("hose")).isEqualTo(LONG);
    assertThat(said(best(hose, LONG), UnitSystem.SI)).contains("does not apply");
    assertThat(best(hose.ofAtMost(Length.ofMetres(2.0)), LONG, SHORT).hose("hose"))
        .isEqualTo(SHORT);
    assertThat(WHIP.with(LONG).longest()).isEmpty();
    assertThat(best(WHIP.with(LONG)).hose("whip hose")).isEqualTo(LONG);
  }

  @Test
  void a_limit_below_the_reach_or_of_a_hose_that_is_there_is_refused() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> WHIP.ofAtMost(Length.ofMetres(0.5)))
        .withMessageContainingAll("length at most of whip hose", "0.6096", "0.5");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> WHIP.with(SHORT).ofAtMost(Length.ofMetres(2.0)))
        .withMessageContainingAll("beside the hose that is there", "leave out one of the two");
  }

  /** By hand: 3 ft of 20 ft lack 17/20; 25 ft are too long by 1/24, and 40 ft by 16/24. */
  @Test
  void of_hoses_none_of_which_does_the_one_that_misses_least_comes_first() {
    Slot.Hose slot = Slot.hose("hose", Length.of(20.0, LengthUnit.FOOT))
        .ofAtMost(Length.of(24.0, LengthUnit.FOOT));
    Part.Hose three = hose("three feet", 3 * 0.3048, "1 EUR");
    Part.Hose twentyFive = hose("twenty-five feet", 25 * 0.3048, "30 EUR");
    Part.Hose forty = hose("forty feet", 40 * 0.3048, "20 EUR");
    Selection.NothingFits none = (Selection.NothingFits) select(slot, three, twentyFive, forty);
    assertThat(none.closest())
        .extracting(proposal -> proposal.hose("hose"))
        .containsExactly(twentyFive, forty, three);
    Part.Hose nineteen = hose("nineteen and a half feet", 19.5 * 0.3048, "40 EUR");
    assertThat(((Selection.NothingFits) select(slot, three, twentyFive, nineteen))
            .closest()
            .get(0)
            .hose("hose"))
        .isEqualTo(nineteen);
  }
}
