package org.airfit.select;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import org.airfit.flow.FlowCapacity;
import org.airfit.joint.End;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.Length;
import org.airfit.quantity.Money;
import org.airfit.quantity.SonicConductance;
import org.junit.jupiter.api.Test;

/**
 * What a search sets aside at first it goes back for, although what that becomes lies beyond how far it has looked.
 *
 * <p>On a line of which nobody knows whether it is oiled, behind a hose comes a filter kept for dry air. Of hoses at
 * one price the widest sixteen are kept for dry air too: one question. The next sixteen are kept for oiled air, so that
 * they go with no filter. Two narrower ones are of a material nobody knows: with the filter, two questions. They are
 * what is set aside, nothing else is left to look at, and fewer than a whole list is found.
 */
class SetAsideTest {

  private static final End FEMALE = End.parse("3/8 NPT female");
  private static final int MANY = 16;

  private static PartFacts facts(String id) {
    return PartFacts.of(id, "part " + id)
        .withRating(GaugePressure.ofBar(16.0))
        .withPrice(Money.parse("10 EUR"));
  }

  private static PartFacts stainless(String id) {
    return facts(id).withMaterial(Material.STAINLESS_STEEL);
  }

  private static Part.Hose hose(PartFacts facts, double boreMm) {
    Part.Hose hose = Shelf.hose(facts, boreMm, 10.0);
    return new Part.Hose(hose.facts(), hose.bore(), hose.conduitRange(), FEMALE, hose.downstream());
  }

  private static Part.Device filter(PartFacts facts, End upstream) {
    return new Part.Device(
        facts,
        DeviceKind.FILTER,
        FlowCapacity.of(SonicConductance.ofCubicDecimetresPerSecondBar(9.0), 0.3),
        upstream,
        End.parse("3/8 NPT male"));
  }

  @Test
  void hoses_set_aside_are_listed_although_they_leave_more_questions_open() {
    List<Part> parts = new ArrayList<>();
    for (int i = 0; i < MANY; i++) {
      PartFacts dry = stainless("dry " + i).withLubrication(Lubrication.DRY);
      PartFacts oiled = stainless("oiled " + i).withLubrication(Lubrication.LUBRICATED);
      parts.add(hose(dry, 14.0 + 0.1 * i));
      parts.add(hose(oiled, 12.0 + 0.1 * i));
    }
    parts.add(hose(facts("unknown 1"), 11.1));
    parts.add(hose(facts("unknown 2"), 11.0));
    parts.add(filter(stainless("filter").withLubrication(Lubrication.DRY), FEMALE));
    parts.add(filter(stainless("filter that fits no hose"), End.parse("1 NPT female")));
    Requirement job = Requirement.forTool(
            FreeAirFlow.ofAnrLitresPerSecond(10.0), GaugePressure.ofBar(6.0))
        .toolInlet(FEMALE)
        .supply(Shelf.SUPPLY, Shelf.ATMOSPHERE)
        .outlet(End.parse("3/8 NPT male"))
        .environment(Environment.SALT_AIR)
        .objective(Objective.LOWEST_PRICE)
        .layout(Layout.of(List.of(
            Slot.hose("hose", Length.ofMetres(10.0)), Slot.inLine("filter", DeviceKind.FILTER))))
        .build();
    List<Proposal> listed = Selection.of(job, Catalogue.of(parts))
        .fold(Selection.Proposals::proposals, none -> List.of());
    assertThat(listed).hasSize(MANY + 2);
    assertThat(listed.subList(0, MANY)).extracting(Proposal::partQuestions).containsOnly(1);
    assertThat(listed.subList(MANY, MANY + 2))
        .extracting(proposal -> proposal.parts().get(0).id())
        .containsExactly("unknown 1", "unknown 2");
    assertThat(listed.get(MANY).partQuestions()).isEqualTo(2);
  }
}
