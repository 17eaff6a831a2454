package org.airfit.select;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.airfit.joint.End;
import org.airfit.line.Conduit;
import org.airfit.line.ConduitRange;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.HoseBore;
import org.airfit.quantity.Length;
import org.airfit.quantity.Money;
import org.airfit.quantity.PressureUnit;
import org.airfit.quantity.Range;
import org.airfit.source.Source;
import org.airfit.working.UnitSystem;
import org.junit.jupiter.api.Test;

/** Where what a regulator is set to decides alone, turning its knob does what dearer parts would. */
class SettingDecidesTest {

  private static Part.Hose hose(String id, double least, double most, String price) {
    PartFacts facts = Shelf.steel(id).withPrice(Money.parse(price));
    Conduit narrow =
        Conduit.of(Length.ofMillimetres(least), Length.ofMetres(10.0), Length.ofMillimetres(0.01));
    return new Part.Hose(
        facts,
        HoseBore.of(Length.ofMillimetres(10.0)),
        new ConduitRange(
            narrow, narrow.withBore(Length.ofMillimetres(most)), Source.fromMemory("invented")),
        End.parse("3/8 NPT female"),
        End.parse("3/8 NPT male"));
  }

  /** The regulator of the supply is set to 5 to 7 bar, the tool needs as many. */
  private static Proposal best(double needed, Part... hoses) {
    Requirement job = Shelf.cheapest(Requirement.forTool(
            FreeAirFlow.ofAnrLitresPerSecond(10.0), GaugePressure.ofBar(needed)))
        .toolRating(GaugePressure.ofBar(9.0))
        .toolInlet(End.parse("3/8 NPT female"))
        .highest(GaugePressure.ofBar(8.0))
        .regulated()
        .leastSetting(GaugePressure.ofBar(5.0))
        .layout(Layout.of(List.of(Slot.hose("hose", Length.ofMetres(10.0)))))
        .build();
    return Selection.of(job, Catalogue.of(List.of(hoses)))
        .fold(fitting -> fitting.best(), nothing -> nothing.closest().get(0));
  }

  private static double setting(Proposal p) {
    String told = p.doubts().stream()
        .filter(doubt -> doubt.what().startsWith("setting"))
        .findFirst()
        .orElseThrow()
        .enoughIf(UnitSystem.SI)
        .orElseThrow();
    return Range.parse(told.replace("at least ", ""), GaugePressure::parse)
        .least()
        .in(PressureUnit.BAR);
  }

  /** Tenths of what can arrive would put the wide hose first, whatever it costs. */
  @Test
  void the_cheap_part_comes_first_though_it_needs_a_higher_setting() {
    Part cheap = hose("narrow", 8.0, 8.0, "20 EUR");
    Part dear = hose("wide", 19.0, 19.0, "90 EUR");
    Proposal chosen = best(5.8, cheap, dear);
    assertThat(chosen.hose("hose").id()).isEqualTo("narrow");
    assertThat(setting(chosen)).isGreaterThan(setting(best(5.8, dear)) + 0.2);
  }

  /** What is not known of a part is no knob: it counts by tenths as ever. */
  @Test
  void a_part_that_is_not_known_still_counts_by_how_far_it_may_be_too_little() {
    Part cheap = hose("narrow", 8.0, 8.1, "20 EUR");
    Part dear = hose("wide", 19.0, 19.0, "90 EUR");
    assertThat(best(5.8, cheap, dear).hose("hose").id()).isEqualTo("wide");
  }

  /** An open question ranks below a met rule: what is enough at every setting comes first. */
  @Test
  void what_is_enough_at_every_setting_comes_before_what_needs_a_higher_one() {
    Part cheap = hose("narrow", 8.0, 8.0, "20 EUR");
    Part dear = hose("wide", 19.0, 19.0, "90 EUR");
    assertThat(best(4.9, cheap, dear).hose("hose").id()).isEqualTo("wide");
  }
}
