package org.airfit.select;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.airfit.flow.FlowCapacity;
import org.airfit.joint.End;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.Length;
import org.airfit.quantity.Money;
import org.airfit.quantity.SonicConductance;
import org.junit.jupiter.api.Test;

/** What the answer to a question would change, told by what stands there before and after it. */
class ChangeInWordsTest {

  private static final End FEMALE = End.parse("3/8 NPT female");

  private static PartFacts priced(String id, String price) {
    return Shelf.steel(id).withPrice(Money.parse(price));
  }

  private static Part.Splitter manifold(String id, String price) {
    return new Part.Splitter(
        priced(id, price),
        FlowCapacity.of(SonicConductance.ofCubicDecimetresPerSecondBar(14.0), 0.3),
        FEMALE,
        Collections.nCopies(2, FEMALE));
  }

  private static Standing ofTwoTools(Part... parts) {
    ToolLine line = ToolLine.to(
            "drill",
            FreeAirFlow.ofAnrLitresPerSecond(3.0),
            GaugePressure.ofBar(5.0),
            FEMALE,
            List.of(Slot.hose("hose", Length.ofMetres(8.0))))
        .withToolRating(GaugePressure.ofBar(8.0));
    Requirement job = Requirement.forTools(
            Layout.of(List.of(Slot.splitter("manifold")), List.of(line.alike(2))))
        .supply(Shelf.SUPPLY, Shelf.ATMOSPHERE)
        .outlet(End.parse("3/8 NPT male"))
        .environment(Environment.INDOORS)
        .lubrication(Lubrication.DRY)
        .build();
    return Standing.of(job, Catalogue.of(List.of(parts)));
  }

  private static Part.Hose hose() {
    return Shelf.hose(priced("hose", "20 EUR"), 9.5, 10.0);
  }

  @Test
  void a_splitter_that_comes_for_another_is_named() {
    Standing cheap = ofTwoTools(manifold("old manifold", "30 EUR"), hose());
    Standing dear = ofTwoTools(manifold("new manifold", "42.50 EUR"), hose());
    assertThat(ChangeInWords.of(cheap, dear))
        .containsExactly(
            "part new manifold (new manifold) instead of part old manifold (old manifold)",
            "12.50 EUR more");
    assertThat(ChangeInWords.of(dear, cheap))
        .containsExactly(
            "part old manifold (old manifold) instead of part new manifold (new manifold)",
            "12.50 EUR less");
    assertThat(ChangeInWords.of(cheap, cheap)).isEmpty();
  }

  @Test
  void what_comes_where_nothing_was_is_told_with_its_price() {
    Standing none = ofTwoTools(hose());
    Standing some = ofTwoTools(manifold("manifold", "30 EUR"), hose());
    assertThat(none.shown()).isEmpty();
    List<String> words = ChangeInWords.of(none, some);
    assertThat(words).isEqualTo(ChangeInWords.of(some)).hasSize(2);
    assertThat(words.get(0)).isEqualTo(some.shown().orElseThrow().toString());
    assertThat(words.get(1)).contains("70.00 EUR");
    assertThat(ChangeInWords.of(some, none)).isEqualTo(none.missing()).isNotEmpty();
    assertThat(ChangeInWords.of(none, none)).isEmpty();
    assertThat(ChangeInWords.of(none)).isEqualTo(none.missing());
  }

  private static Standing ofOneTool(double bar, double reach) {
    List<Part> parts = new ArrayList<>(Shelf.parts());
    Requirement job = Requirement.forTool(
            FreeAirFlow.ofAnrLitresPerSecond(10.0), GaugePressure.ofBar(bar))
        .toolRating(GaugePressure.ofBar(7.5))
        .toolInlet(End.parse("1/4 NPT female"))
        .supply(Shelf.SUPPLY, Shelf.ATMOSPHERE)
        .outlet(End.parse("3/8 NPT male"))
        .reach(Length.ofMetres(reach))
        .environment(Environment.INDOORS)
        .lubrication(Lubrication.DRY)
        .build();
    return Standing.of(job, Catalogue.of(parts));
  }

  /** 6.2 bar are there with all parts in the run, 6.99 are not; the hose of 10 m does not reach 12. */
  @Test
  void what_fits_no_longer_or_again_is_told_by_its_rules() {
    Standing good = ofOneTool(6.2, 10.0);
    Standing weak = ofOneTool(6.99, 10.0);
    Standing weakAndShort = ofOneTool(6.99, 12.0);
    assertThat(good.isFitting()).isTrue();
    assertThat(weak.isFitting()).isFalse();
    String air = Rule.AIR_AT_TOOL.title();
    String reach = Rule.HOSE_REACHES.title();
    assertThat(ChangeInWords.of(good, weak))
        .containsExactly("nothing in the catalogue fits, not met: " + air);
    assertThat(ChangeInWords.of(weak, good))
        .containsExactly("there are parts that fit", "met then: " + air);
    assertThat(ChangeInWords.of(weak, weakAndShort)).containsExactly("not met: " + reach);
    assertThat(ChangeInWords.of(weakAndShort, weak)).containsExactly("met then: " + reach);
    assertThat(ChangeInWords.of(weak))
        .containsExactly("nothing in the catalogue fits, not met: " + air);
  }
}
