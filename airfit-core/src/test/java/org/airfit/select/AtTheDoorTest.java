package org.airfit.select;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.airfit.flow.FlowCapacity;
import org.airfit.joint.End;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.HoseBore;
import org.airfit.quantity.Length;
import org.airfit.quantity.Money;
import org.airfit.quantity.NominalThreadSize;
import org.airfit.quantity.PressureDrop;
import org.airfit.quantity.SonicConductance;
import org.airfit.quantity.Temperature;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What slots, parts and accessories take and refuse, just inside and outside their bounds, and how they read. */
class AtTheDoorTest {

  private static PartFacts facts(String id) {
    return PartFacts.of(id, id).withRating(GaugePressure.ofBar(16.0));
  }

  private static Part.Device device(String id, DeviceKind kind) {
    return new Part.Device(
        facts(id),
        kind,
        FlowCapacity.of(SonicConductance.ofCubicDecimetresPerSecondBar(9.0), 0.3),
        End.parse("3/8 NPT female"),
        End.parse("3/8 NPT female"));
  }

  private static Part.Regulator regulator(double flow) {
    return new Part.Regulator(
        facts("regulator"),
        FlowCapacity.of(SonicConductance.ofCubicDecimetresPerSecondBar(9.0), 0.3),
        PressureDrop.ofPascals(0.0),
        FreeAirFlow.ofAnrLitresPerSecond(flow),
        End.parse("3/8 NPT female"),
        End.parse("3/8 NPT female"));
  }

  @Test
  void slots_read_as_what_stands_there_or_shall() {
    Slot.Coupling coupling = Slot.coupling("tool");
    assertThat(coupling).hasToString("tool: coupling");
    assertThat(coupling
            .ofProfile("finch")
            .ofSameProfileAs("outlet")
            .withSocket(Shelf.socket(facts("S"), "finch", "3/8 NPT female", 9.0))
            .withPlug(Shelf.plug(facts("P"), "finch", "1/4 NPT male")))
        .hasToString(
            "tool: coupling of profile finch of the same profile as outlet, the socket is S, the plug"
                + " is P");
    Slot.Hose hose = Slot.hose("hose", Length.ofMetres(10.0));
    assertThat(hose).hasToString("hose: hose of at least 10 m");
    assertThat(hose.with(Shelf.hose(facts("H"), 9.5, 10.0)))
        .hasToString("hose: hose of at least 10 m, it is H");
    assertThat(Slot.whipHose("whip", Length.ofMetres(0.5)))
        .hasToString("whip: whip hose of at least 0.5 m");
    assertThat(Slot.regulator("bay", GaugePressure.ofBar(6.0))).hasToString("bay: set to 6 bar(g)");
    assertThat(Slot.inLine("wall", DeviceKind.NON_RETURN_VALVE))
        .hasToString("wall: non return valve");
    assertThat(Slot.inLine("wall", device("V", DeviceKind.SHUT_OFF_VALVE)))
        .hasToString("wall: shut off valve, it is V");
  }

  @Test
  void slots_refuse_names_kinds_and_pressures_that_cannot_be() {
    for (String blank : List.of("", " ")) {
      assertThatIllegalArgumentException()
          .isThrownBy(() -> Slot.coupling(blank))
          .withMessage("name of a slot must say which it is, was \"" + blank + "\"");
      assertThatIllegalArgumentException()
          .isThrownBy(() -> Slot.hose(blank, Length.ofMetres(1.0)))
          .withMessageStartingWith("name of a slot");
      assertThatIllegalArgumentException()
          .isThrownBy(() -> Slot.regulator(blank, GaugePressure.ofBar(6.0)))
          .withMessageStartingWith("name of a slot");
      assertThatIllegalArgumentException()
          .isThrownBy(() -> Slot.inLine(blank, DeviceKind.FILTER))
          .withMessageStartingWith("name of a slot");
    }
    assertThatIllegalArgumentException()
        .isThrownBy(() -> Slot.inLine("wall", DeviceKind.FILTER).with(device("V", DeviceKind.REEL)))
        .withMessage("device of wall must be of the kind filter, was V of the kind reel");
    Slot.Regulated set = Slot.regulator("bay", GaugePressure.ofBar(6.0));
    assertThat(set.failingAt(GaugePressure.ofBar(6.0)).ifFails())
        .as("at its set point")
        .contains(GaugePressure.ofBar(6.0));
    assertThatIllegalArgumentException()
        .isThrownBy(() -> set.failingAt(GaugePressure.ofBar(5.999)))
        .withMessage(
            "pressure behind bay when it fails must be at least the 6 bar(g) it is set to, was 5.999"
                + " bar(g); leave it out where its maker does not tell it");
    assertThat(Slot.regulator("bay", GaugePressure.ofPascals(1.0)).set())
        .isEqualTo(GaugePressure.ofPascals(1.0));
    assertThatIllegalArgumentException()
        .isThrownBy(() -> Slot.regulator("bay", GaugePressure.ofPascals(-1.0)))
        .withMessageStartingWith("set point of bay must be above 0 bar(g)");
  }

  @Test
  void a_layout_finds_its_slots_and_what_it_has() {
    Part.Socket there = Shelf.socket(facts("S"), "finch", "3/8 NPT female", 9.0);
    Layout layout = Layout.of(List.of(
        Slot.hose("first", Length.ofMetres(5.0)),
        Slot.coupling("second").withSocket(there),
        Slot.coupling("third")));
    assertThat(layout.firstSocket()).contains(there);
    assertThat(layout.slot("third")).contains(Slot.coupling("third"));
    assertThat(layout.slot("fourth")).isEqualTo(Optional.empty());
    assertThat(layout).hasToString("first, second, third");
    assertThat(Layout.of(List.of(Slot.coupling("third"), Slot.coupling("second").withSocket(there)))
            .firstSocket())
        .as("the first coupling has none")
        .isEqualTo(Optional.empty());
    assertThatIllegalArgumentException()
        .isThrownBy(() -> Layout.of(List.of(
            Slot.coupling("b"),
            Slot.coupling("a"),
            Slot.coupling("c").ofSameProfileAs("d"),
            Slot.coupling("d"))))
        .withMessage(
            "coupling of which c has the profile must stand before it, was \"d\"; name one of: a, b");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> Layout.of(List.of()))
        .withMessage(
            "slots of a layout must be at least one, were none; say Slot.coupling(…), Slot.hose(…)");
  }

  /** A slot of one piece takes four places with the three adapters in front of it, and three more come at the tool. */
  @Test
  void a_layout_of_as_many_pieces_as_can_be_summed_is_taken_and_of_more_is_not() {
    List<Slot> slots = new ArrayList<>();
    for (int i = 0; i < 31; i++) {
      slots.add(Slot.inLine("filter " + i, DeviceKind.FILTER));
    }
    assertThat(Layout.of(slots).slots()).as("31 × 4 + 3 = 127").hasSize(31);
    slots.set(0, Slot.coupling("coupling"));
    assertThatIllegalArgumentException()
        .as("a coupling is two pieces")
        .isThrownBy(() -> Layout.of(slots))
        .withMessage(
            "slots of a layout must hold at most 127 pieces with 3 adapters at every joint, were 31"
                + " slots with up to 128");
  }

  @Test
  void a_regulator_may_droop_by_nothing_and_at_some_flow() {
    assertThat(regulator(1.0).droop().pascals()).isZero();
    assertThatIllegalArgumentException()
        .isThrownBy(() -> regulator(0.0))
        .withMessageStartingWith("flow at which regulator regulator droops must be above 0, was ");
  }

  @ParameterizedTest
  @CsvSource({"15.9, false", "16, true", "18, true", "20, true", "20.1, false"})
  void a_clamp_holds_from_its_least_to_its_greatest_diameter(double millimetres, boolean holds) {
    Accessory.HoseClamp clamp = new Accessory.HoseClamp(
        facts("clamp"), Length.ofMillimetres(16.0), Length.ofMillimetres(20.0));
    assertThat(clamp.holds(Length.ofMillimetres(millimetres))).isEqualTo(holds);
  }

  @Test
  void a_clamp_of_one_diameter_is_taken_and_one_of_none_or_turned_round_is_not() {
    Length some = Length.ofMillimetres(16.0);
    assertThat(new Accessory.HoseClamp(facts("c"), some, some).holds(some)).isTrue();
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new Accessory.HoseClamp(facts("c"), Length.ofMillimetres(0.0), some))
        .withMessage(
            "outside diameters that c holds must be above 0 and in order, were 0 mm to 16 mm");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new Accessory.HoseClamp(facts("c"), some, Length.ofMillimetres(15.9)))
        .withMessageStartingWith("outside diameters that c holds must be above 0 and in order");
  }

  @ParameterizedTest
  @CsvSource({"3/8 in, false", "1/2 in, true", "5/8 in, true", "3/4 in, true", "1 in, false"})
  void a_restraint_is_for_hoses_from_its_smallest_to_its_largest(String bore, boolean isFor) {
    Accessory.WhipRestraint restraint = new Accessory.WhipRestraint(
        facts("whip"), HoseBore.parse("1/2 in"), HoseBore.parse("3/4 in"));
    assertThat(restraint.isFor(HoseBore.parse(bore))).isEqualTo(isFor);
  }

  @Test
  void a_restraint_for_one_size_is_taken() {
    HoseBore half = HoseBore.parse("1/2 in");
    assertThat(new Accessory.WhipRestraint(facts("whip"), half, half).isFor(half))
        .isTrue();
  }

  @Test
  void an_accessory_bears_the_id_and_the_name_of_its_facts() {
    Accessory tape =
        new Accessory.ThreadSealant(PartFacts.of("T-1", "white tape"), NominalThreadSize.TWO);
    assertThat(tape.id()).isEqualTo("T-1");
    assertThat(tape.name()).isEqualTo("white tape");
  }

  private static Accessory tape(String id, String name, String price) {
    PartFacts facts = PartFacts.of(id, name);
    return new Accessory.ThreadSealant(
        price.isEmpty() ? facts : facts.withPrice(Money.parse(price)), NominalThreadSize.TWO);
  }

  private static String taken(Accessory... tapes) {
    List<Part> parts = Shelf.parts();
    Proposal best = Selection.of(Shelf.job().build(), Catalogue.of(parts))
        .fold(Selection.Proposals::best, nothing -> nothing.closest().get(0));
    return BillOfMaterials.of(best, Catalogue.of(List.of(), List.of(tapes)))
        .lines(BillLine.Kind.SEALANT)
        .get(0)
        .id()
        .orElse("none");
  }

  @Test
  void of_accessories_the_cheapest_is_taken_of_those_the_first_by_name_and_of_those_by_id() {
    assertThat(taken(tape("1", "b", "2 EUR"), tape("2", "a", "3 EUR"))).isEqualTo("1");
    assertThat(taken(tape("1", "b", "2 EUR"), tape("2", "a", "2 EUR"))).isEqualTo("2");
    assertThat(taken(tape("2", "a", "2 EUR"), tape("1", "a", "2 EUR"))).isEqualTo("1");
    assertThat(taken(tape("1", "a", ""), tape("2", "b", "900 EUR")))
        .as("what has a price before what has none")
        .isEqualTo("2");
    assertThat(taken(tape("2", "b", "900 EUR"), tape("1", "a", ""))).isEqualTo("2");
    assertThat(taken()).isEqualTo("none");
  }

  @Test
  void an_accessory_goes_as_far_as_its_maker_allows() {
    Requirement job = Shelf.job()
        .temperatures(Temperature.ofCelsius(-5.0), Temperature.ofCelsius(50.0))
        .build();
    Proposal best = Selection.of(job, Catalogue.of(Shelf.parts()))
        .fold(Selection.Proposals::best, nothing -> nothing.closest().get(0));
    for (double[] allowed : new double[][] {{-5.0, 50.0, 1}, {-4.9, 50.0, 0}, {-5.0, 49.9, 0}}) {
      Accessory tape = new Accessory.ThreadSealant(
          PartFacts.of("t", "t")
              .withTemperatures(
                  Temperature.ofCelsius(allowed[0]), Temperature.ofCelsius(allowed[1])),
          NominalThreadSize.TWO);
      BillLine line = BillOfMaterials.of(best, Catalogue.of(List.of(), List.of(tape)))
          .lines(BillLine.Kind.SEALANT)
          .get(0);
      assertThat(line.facts().isPresent()).isEqualTo(allowed[2] == 1);
    }
  }

  @Test
  void facts_refuse_what_is_blank_and_what_is_out_of_range() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> PartFacts.of(" ", "x"))
        .withMessage("id of a part must not be blank, was \" \"");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> PartFacts.of("x", " "))
        .withMessage("name of part x must not be blank, was \" \"");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> facts("x").withCost(new Money(new BigDecimal("-0.0001"), "EUR")))
        .withMessage(
            "cost of part x must be in [0, 10^8) with at most 4 decimals, was -0.0001 EUR");
    Temperature same = Temperature.ofCelsius(20.0);
    assertThat(facts("x").withTemperatures(same, same).hottest()).contains(same);
    assertThat(facts("x").withOutsideDiameter(Length.ofMillimetres(0.1)).outsideDiameter())
        .contains(Length.ofMillimetres(0.1));
    assertThat(facts("x").withRating(GaugePressure.ofPascals(1.0)).rating())
        .contains(GaugePressure.ofPascals(1.0));
  }

  @Test
  void a_requirement_takes_its_bounds_and_refuses_what_lies_beyond() {
    Temperature same = Temperature.ofCelsius(20.0);
    assertThat(Shelf.job().temperatures(same, same).build().hottest()).contains(same);
    assertThat(Shelf.job().blowGun(GaugePressure.ofBar(0.0)).build().cleaningDeadEnd())
        .contains(GaugePressure.ofBar(0.0));
    assertThat(Shelf.job().toolRating(GaugePressure.ofPascals(1.0)).build().toolRating())
        .contains(GaugePressure.ofPascals(1.0));
    assertThat(
            Requirement.forTool(FreeAirFlow.ofAnrLitresPerSecond(1.0), GaugePressure.ofPascals(1.0))
                .toolInlet(End.parse("1/4 NPT female"))
                .supply(Shelf.SUPPLY, Shelf.ATMOSPHERE)
                .outlet(End.parse("3/8 NPT male"))
                .reach(Length.ofMetres(1.0))
                .build()
                .least())
        .isEqualTo(GaugePressure.ofPascals(1.0));
    assertThatIllegalArgumentException()
        .isThrownBy(() -> Shelf.job().marking(" "))
        .withMessage("marking must not be blank, was \" \"");
    assertThat(Shelf.job().extras(Set.of(Extra.HOOK, Extra.END_CAP)).build().extras())
        .containsExactlyInAnyOrder(Extra.HOOK, Extra.END_CAP);
    Requirement.Builder beside = Shelf.job().layout(Layout.ofHose(Length.ofMetres(1.0)));
    assertThatIllegalArgumentException()
        .isThrownBy(beside::build)
        .withMessage(
            "reach must not be told beside a layout, was told too; say it to a slot of the layout");
  }

  @Test
  void a_coupling_is_called_by_its_name_or_its_place() {
    Part.Socket socket = Shelf.socket(facts("S"), "finch", "3/8 NPT female", 9.0);
    Part.Plug plug = Shelf.plug(facts("P"), "finch", "3/8 NPT female");
    List<String> called = new ArrayList<>();
    for (String name : List.of(
        "outlet", "at the wall", "behind the reel", "wall coupling", "under the bench", "attic")) {
      Requirement job = Requirement.forTool(
              FreeAirFlow.ofAnrLitresPerSecond(5.0), GaugePressure.ofBar(5.0))
          .toolInlet(End.parse("3/8 NPT male"))
          .supply(Shelf.SUPPLY, Shelf.ATMOSPHERE)
          .outlet(End.parse("3/8 NPT male"))
          .layout(Layout.of(List.of(Slot.coupling(name))))
          .build();
      Proposal best = Selection.of(job, Catalogue.of(List.of(socket, plug)))
          .fold(Selection.Proposals::best, nothing -> nothing.closest().get(0));
      called.add(best.findings().get(0).reason());
    }
    assertThat(called)
        .containsExactly(
            "At the outlet coupling profile finch.",
            "At the coupling at the wall profile finch.",
            "At the coupling behind the reel profile finch.",
            "At the wall coupling profile finch.",
            "At the coupling under the bench profile finch.",
            "At the attic coupling profile finch.");
  }

  /** 5 to 40 °C is what a shop has: nobody needs to tell that, and of what is not told its bound stands. */
  @ParameterizedTest
  @CsvSource({
    "4.9, 4.9, 40, 4.9, 4.9",
    "5, , , , ",
    "40, , , , ",
    "40.1, 40.1, 40.1, 5, 40.1",
  })
  void of_a_temperature_that_is_not_told_the_bound_of_a_shop_stands(
      double told,
      @Nullable Double low,
      @Nullable Double high,
      @Nullable Double least,
      @Nullable Double most) {
    Requirement cold = Shelf.job().coldest(Temperature.ofCelsius(told)).build();
    assertThat(cold.coldest()).isEqualTo(Optional.ofNullable(low).map(Temperature::ofCelsius));
    assertThat(cold.hottest()).isEqualTo(Optional.ofNullable(high).map(Temperature::ofCelsius));
    Requirement hot = Shelf.job().hottest(Temperature.ofCelsius(told)).build();
    assertThat(hot.coldest()).isEqualTo(Optional.ofNullable(least).map(Temperature::ofCelsius));
    assertThat(hot.hottest()).isEqualTo(Optional.ofNullable(most).map(Temperature::ofCelsius));
  }
}
