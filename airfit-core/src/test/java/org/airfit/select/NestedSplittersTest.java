package org.airfit.select;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.assertThatIllegalStateException;
import static org.assertj.core.api.Assertions.assertThatNullPointerException;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.stream.IntStream;
import org.airfit.air.AirState;
import org.airfit.flow.FlowCapacity;
import org.airfit.joint.End;
import org.airfit.line.Conduit;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.Length;
import org.airfit.quantity.Money;
import org.airfit.quantity.PressureDrop;
import org.airfit.quantity.Range;
import org.airfit.quantity.ReferenceState;
import org.airfit.quantity.SonicConductance;
import org.airfit.run.Run;
import org.junit.jupiter.api.Test;

/** A splitter with lines behind a splitter with lines. */
class NestedSplittersTest {

  private static final End FEMALE = End.parse("3/8 NPT female");
  private static final End MALE = End.parse("3/8 NPT male");

  private static final Part.Regulator REGULATOR = new Part.Regulator(
      Shelf.steel("regulator"),
      capacity(9.0),
      PressureDrop.ofBar(0.2),
      FreeAirFlow.ofAnrLitresPerSecond(10.0),
      FEMALE,
      FEMALE);

  private static FlowCapacity capacity(double c) {
    return FlowCapacity.of(SonicConductance.ofCubicDecimetresPerSecondBar(c), 0.3);
  }

  private static Part.Splitter manifold(String id, int outlets, double c) {
    return new Part.Splitter(
        Shelf.steel(id).withPrice(Money.parse("30 EUR")),
        capacity(c),
        FEMALE,
        Collections.nCopies(outlets, FEMALE));
  }

  private static Part.Hose hose(String id, double boreMm) {
    return Shelf.hose(Shelf.steel(id).withPrice(Money.parse("20 EUR")), boreMm, 10.0);
  }

  private static ToolLine line(String tool, double litresPerSecond) {
    return ToolLine.to(
        tool,
        FreeAirFlow.ofAnrLitresPerSecond(litresPerSecond),
        GaugePressure.ofBar(4.0),
        FEMALE,
        List.of(Slot.hose("hose to " + tool, Length.ofMetres(8.0))));
  }

  private static final Slot.Hose TRUNK = Slot.hose("trunk", Length.ofMetres(9.0));
  private static final Slot.Splitter BENCH =
      Slot.splitter("bench manifold").with(manifold("small", 3, 9.0));

  /** A bench with two sanders and a ratchet, so many benches, and a grinder beside them. */
  private static Layout layout(int benches) {
    ToolLine bench = ToolLine.toSplitter(
        List.of(TRUNK, BENCH), List.of(line("sander", 3.0).alike(2), line("ratchet", 2.0)));
    return Layout.of(
        List.of(Slot.splitter("manifold").with(manifold("large", 4, 18.0))),
        List.of(bench.alike(benches), line("grinder", 5.0)));
  }

  private static Requirement.Builder job(Layout layout) {
    return Requirement.forTools(layout)
        .supply(Shelf.SUPPLY, Shelf.ATMOSPHERE)
        .outlet(MALE)
        .environment(Environment.INDOORS)
        .lubrication(Lubrication.DRY);
  }

  private static Proposal best(Requirement job, Part... parts) {
    return Selection.of(job, Catalogue.of(List.of(parts)))
        .fold(fitting -> fitting.best(), nothing -> nothing.nearest().get(0));
  }

  private static AirState behind(double litresPerSecond, Run through) {
    return Shelf.SUPPLY.at(
        GaugePressure.ofPascals(pascals(through, litresPerSecond)).absolute(Shelf.ATMOSPHERE));
  }

  private static double pascals(Run run, double litresPerSecond) {
    return run.arriving(FreeAirFlow.ofAnrLitresPerSecond(litresPerSecond))
        .orElseThrow()
        .pascals();
  }

  private static Run from(AirState air) {
    return Run.from(air, Shelf.ATMOSPHERE);
  }

  /**
   * By hand: with two benches the first manifold carries 2 (3 + 3 + 2) + 5 = 21 L/s, each trunk and the bench's manifold
   * 8 L/s, each hose behind it its own.
   */
  @Test
  void every_segment_carries_the_sum_of_all_tools_behind_it() {
    Proposal p = best(job(layout(2)).build(), hose("hose", 9.5));
    Conduit bore = hose("hose", 9.5).conduit();
    AirState atFirst = behind(21.0, from(Shelf.SUPPLY).through("large", capacity(18.0)));
    AirState atBench =
        behind(8.0, from(atFirst).through("trunk", bore).through("small", capacity(9.0)));
    List<Proposal> ways = p.toEachTool();
    assertThat(ways).hasSize(3);
    assertThat(Shelf.pascalsAtTool(ways.get(0)))
        .isCloseTo(pascals(from(atBench).through("hose", bore), 3.0), within(1.0e-3));
    assertThat(Shelf.pascalsAtTool(ways.get(1)))
        .isCloseTo(pascals(from(atBench).through("hose", bore), 2.0), within(1.0e-3));
    assertThat(Shelf.pascalsAtTool(ways.get(2)))
        .isCloseTo(pascals(from(atFirst).through("hose", bore), 5.0), within(1.0e-3));
    assertThat(litresPerSecond(p.requirement().demand())).isCloseTo(21.0, within(1.0e-9));
  }

  private static double litresPerSecond(FreeAirFlow flow) {
    return FreeAirFlow.from(
            flow.massFlow(), FreeAirFlow.ofAnrLitresPerSecond(1.0).reference())
        .litresPerSecond();
  }

  /** Each of two benches has somebody who takes 1 L/s at its manifold, and one more does at the first manifold. */
  @Test
  void what_others_take_counts_as_often_as_its_line_is_there() {
    Range<FreeAirFlow> one = Range.exactly(FreeAirFlow.ofAnrLitresPerSecond(1.0));
    Layout plain = layout(2);
    assertThat(job(plain).build().airOfOthers()).isEmpty();
    Layout shared = plain.replacing("bench manifold", BENCH.sharedWith(one));
    assertThat(litresOfOthers(shared)).isCloseTo(2.0, within(1.0e-9));
    Slot.Splitter first = (Slot.Splitter) shared.slot("manifold").orElseThrow();
    assertThat(litresOfOthers(shared.replacing("manifold", first.sharedWith(one))))
        .isCloseTo(3.0, within(1.0e-9));
  }

  private static double litresOfOthers(Layout layout) {
    return job(layout)
        .build()
        .airOfOthers()
        .orElseThrow()
        .most()
        .at(ReferenceState.ANR)
        .litresPerSecond();
  }

  /** Others take 3 L/s at the second: 4 + 3 + 2 + 1 L/s at the first, 3 + 2 + 1 at the second, 2 + 1 at the third. */
  @Test
  void segments_three_splitters_deep_carry_what_is_behind_them_and_what_others_take() {
    Slot.Splitter wye = Slot.splitter("wye").with(manifold("wye", 2, 9.0));
    ToolLine deepest = ToolLine.toSplitter(
        List.of(Slot.hose("deep trunk", Length.ofMetres(9.0)), wye),
        List.of(line("pin", 2.0), line("nail", 1.0)));
    ToolLine middle = ToolLine.toSplitter(
        List.of(TRUNK, BENCH.sharedWith(Range.exactly(FreeAirFlow.ofAnrLitresPerSecond(3.0)))),
        List.of(deepest));
    Layout layout = Layout.of(
        List.of(Slot.splitter("manifold").with(manifold("large", 4, 18.0))),
        List.of(line("grinder", 4.0), middle));
    Proposal p = best(job(layout).build(), hose("hose", 9.5));
    Conduit bore = hose("hose", 9.5).conduit();
    AirState first = behind(10.0, from(Shelf.SUPPLY).through("large", capacity(18.0)));
    AirState second =
        behind(6.0, from(first).through("trunk", bore).through("small", capacity(9.0)));
    AirState third = behind(3.0, from(second).through("trunk", bore).through("wye", capacity(9.0)));
    assertThat(Shelf.pascalsAtTool(p.toEachTool().get(1)))
        .isCloseTo(pascals(from(third).through("hose", bore), 2.0), within(1.0e-3));
    assertThat(Shelf.pascalsAtTool(p.toEachTool().get(2)))
        .isCloseTo(pascals(from(third).through("hose", bore), 1.0), within(1.0e-3));
    assertThat(p.joints().stream().map(Joint::where))
        .contains(
            "line to bench manifold: splitter to hose",
            "line to wye: hose to splitter",
            "line 3, nail: splitter to hose");
  }

  @Test
  void words_name_the_line_to_a_splitter_by_the_splitter_and_lines_to_tools_by_their_numbers() {
    Proposal p = best(job(layout(2)).build(), hose("hose", 9.5));
    assertThat(p.toEachTool().stream().flatMap(way -> way.requirement().way().stream()))
        .containsExactly("lines 1 to 4, sander", "lines 5 and 6, ratchet", "line 7, grinder");
    assertThat(p.joints().stream().map(Joint::where))
        .containsExactly(
            "outlet to splitter",
            "2 lines to bench manifold: splitter to hose",
            "2 lines to bench manifold: hose to splitter",
            "lines 1 to 4, sander: splitter to hose",
            "lines 1 to 4, sander: hose to tool",
            "lines 5 and 6, ratchet: splitter to hose",
            "lines 5 and 6, ratchet: hose to tool",
            "line 7, grinder: splitter to hose",
            "line 7, grinder: hose to tool");
    assertThat(p.of(Rule.HOSE_REACHES).reason())
        .startsWith("2 lines to bench manifold: 10 m of hose, 9 m needed; lines 1 to 4, sander: ");
    assertThat(p.of(Rule.AIR_AT_TOOL).reason())
        .startsWith("All 7 tools at work at once, which is the worst case, take 21 L/s ANR. ");
  }

  /** One large manifold, 2 benches of 30 EUR, and 2 trunks, 4 + 2 + 1 hoses of 20 EUR. */
  @Test
  void lines_alike_multiply_through_in_pieces_prices_and_bill() {
    Proposal p = best(job(layout(2)).build(), hose("hose", 9.5));
    assertThat(p.fits()).isTrue();
    assertThat(p.parts()).hasSize(1 + 2 + 2 + 4 + 2 + 1);
    assertThat(p.price()).contains(Money.parse("270 EUR"));
    BillOfMaterials bill = BillOfMaterials.of(p, Catalogue.of(List.of()));
    assertThat(bill.lines(BillLine.Kind.PART).stream().map(BillLine::quantity))
        .containsExactly(1, 9, 2);
    assertThat(bill.lines(BillLine.Kind.SEALANT).get(0).reason())
        .as("1 at the outlet, 2 each of 2 trunks, 2 each of 7 hoses")
        .startsWith("seals 19 taper threads");
    assertThat(bill.questions())
        .anyMatch(question -> question.startsWith("What closes the outlets of part large"))
        .noneMatch(question -> question.startsWith("What closes the outlets of part small"));
  }

  @Test
  void what_each_part_loses_stands_once_with_the_line_it_is_in() {
    Proposal p = best(job(layout(1)).build(), hose("hose", 9.5));
    List<Placed> parts = p.assembly().slotParts();
    assertThat(p.assembly().losses()).hasSameSizeAs(parts);
    int trunk = IntStream.range(0, parts.size())
        .filter(i -> parts.get(i).position().name().equals("trunk"))
        .findFirst()
        .orElseThrow();
    double lost = p.assembly().losses().get(trunk).orElseThrow().lost().pascals();
    AirState first = behind(13.0, from(Shelf.SUPPLY).through("large", capacity(18.0)));
    double behindTrunk = pascals(from(first).through("trunk", hose("hose", 9.5).conduit()), 8.0);
    assertThat(first.pressure().pascals() - Shelf.ATMOSPHERE.pascals() - lost)
        .isCloseTo(behindTrunk, within(1.0e-3));
  }

  /** A regulator in front of the second splitter holds for the tools behind it, and not for the one beside. */
  @Test
  void a_regulator_on_the_way_to_the_second_splitter_spares_the_tools_behind_it_only() {
    ToolLine bench = ToolLine.toSplitter(
        List.of(Slot.regulator("regulator", GaugePressure.ofBar(5.0)).with(REGULATOR), BENCH),
        List.of(
            line("sander", 3.0).withToolRating(GaugePressure.ofBar(6.0)),
            line("ratchet", 2.0).withToolRating(GaugePressure.ofBar(6.0))));
    Layout layout = Layout.of(
        List.of(Slot.splitter("manifold").with(manifold("large", 4, 18.0))),
        List.of(bench, line("grinder", 5.0).withToolRating(GaugePressure.ofBar(6.0))));
    List<Requirement> ways = job(layout).build().toEachTool();
    assertThat(ways.get(0).pressuresAtTool().whileRegulated()).contains(GaugePressure.ofBar(5.0));
    assertThat(ways.get(1).pressuresAtTool().whileRegulated()).contains(GaugePressure.ofBar(5.0));
    assertThat(ways.get(2).pressuresAtTool().whileRegulated()).isEmpty();
  }

  @Test
  void a_tool_behind_the_second_splitter_is_asked_about_and_told_by_its_line() {
    Interview talk = Interview.of(job(layout(2)).build(), Catalogue.of(List.of(hose("h", 9.5))));
    Subject ratchet = Subject.of(Topic.TOOL_RATING, "lines 5 and 6, ratchet");
    Requirement told = talk.with(ratchet, "7 bar(g)").requirement().orElseThrow();
    assertThat(told.toEachTool().get(0).toolRating()).isEmpty();
    assertThat(told.toEachTool().get(1).toolRating()).contains(GaugePressure.ofBar(7.0));
    assertThat(told.toEachTool().get(2).toolRating()).isEmpty();
    assertThat(told.layout().toolLines().stream().map(ToolLine::count)).containsExactly(4, 2, 1);
    Requirement farther =
        talk.with(Subject.of(Topic.REACH, "trunk"), "7 to 12 m").requirement().orElseThrow();
    assertThat(((Slot.Hose) farther.layout().slot("trunk").orElseThrow())
            .reachRange()
            .most())
        .isEqualTo(Length.ofMetres(12.0));
  }

  @Test
  @SuppressWarnings("NullAway") // what a caller without null checks could pass
  void a_line_to_a_splitter_names_the_argument_that_is_null() {
    assertThatNullPointerException()
        .isThrownBy(() -> ToolLine.toSplitter(null, List.of(line("pin", 1.0))))
        .withMessage("slots");
    assertThatNullPointerException()
        .isThrownBy(() -> ToolLine.toSplitter(List.of(BENCH), null))
        .withMessage("lines");
  }

  @Test
  void nested_layouts_are_checked_at_the_door() {
    assertThatIllegalArgumentException()
        .isThrownBy(
            () -> ToolLine.toSplitter(List.of(TRUNK), List.of(line("pin", 1.0).alike(2))))
        .withMessageContaining("must be a splitter, was trunk: hose");
    assertThatIllegalArgumentException()
        .isThrownBy(
            () -> ToolLine.toSplitter(List.of(), List.of(line("pin", 1.0).alike(2))))
        .withMessageContaining("must be a splitter, was none");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> ToolLine.toSplitter(List.of(BENCH), List.of()))
        .withMessageContaining("must be at least two, was none");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> ToolLine.toSplitter(List.of(BENCH), List.of(line("pin", 1.0))))
        .withMessageContaining("must be at least two, was one to pin");
    assertThatIllegalArgumentException()
        .isThrownBy(
            () -> ToolLine.toSplitter(List.of(BENCH), List.of(line("pin", 1.0).alike(4))))
        .withMessageContaining("bench manifold must have at least 4 outlets, one for every line");
    ToolLine bench =
        ToolLine.toSplitter(List.of(BENCH), List.of(line("pin", 1.0), line("nail", 1.0)));
    assertThatIllegalArgumentException()
        .isThrownBy(() -> Layout.of(List.of(Slot.splitter("manifold")), List.of(bench)))
        .withMessageContaining("must be at least two, was one to bench manifold");
    assertThatIllegalArgumentException()
        .isThrownBy(
            () -> Layout.of(List.of(Slot.splitter("bench manifold")), List.of(bench.alike(2))))
        .withMessageContaining("\"bench manifold\" again");
    assertThat(bench.tool()).isEmpty();
    assertThatIllegalStateException().isThrownBy(bench::inlet);
    assertThatIllegalStateException().isThrownBy(bench::demandRange);
    assertThatIllegalStateException().isThrownBy(bench::withImpactTool);
    assertThat(bench.alike(2))
        .isNotEqualTo(bench)
        .hasToString(
            "2 lines to bench manifold: bench manifold (line to pin: hose to pin; line to nail: hose to nail)");
    assertThat(bench.with(List.of(TRUNK, BENCH)).slots()).hasSize(2);
    assertThat(bench.with(List.of(TRUNK, BENCH)).lines()).isEqualTo(bench.lines());
  }

  /** A coupling of a line behind the second splitter may have the profile of one in front of the first. */
  @Test
  void a_coupling_behind_two_splitters_may_have_the_profile_of_one_in_front_of_them() {
    Slot.Coupling tied = Slot.coupling("at the pin").ofSameProfileAs("outlet");
    ToolLine bench = ToolLine.toSplitter(
        List.of(BENCH), List.of(line("pin", 1.0).with(List.of(tied)), line("nail", 1.0)));
    Slot.Splitter first = Slot.splitter("manifold");
    assertThat(Layout.of(List.of(Slot.coupling("outlet"), first), List.of(bench.alike(2)))
            .slot("at the pin"))
        .contains(tied);
    assertThatIllegalArgumentException()
        .isThrownBy(() -> Layout.of(List.of(first), List.of(bench.alike(2))))
        .withMessageContaining("coupling of which at the pin has the profile");
  }

  private static final Slot.InLine FUSE = Slot.inLine(
      "fuse",
      new Part.Device(Shelf.steel("fuse"), DeviceKind.HOSE_FUSE, capacity(18.0), FEMALE, MALE));

  private static List<String> fuses(Slot[] shared, Slot... toGrinder) {
    ToolLine bench = ToolLine.toSplitter(
        List.of(TRUNK, BENCH), List.of(line("sander", 3.0).alike(2), line("ratchet", 2.0)));
    ToolLine grinder = ToolLine.to(
        "grinder",
        FreeAirFlow.ofAnrLitresPerSecond(5.0),
        GaugePressure.ofBar(4.0),
        FEMALE,
        List.of(toGrinder));
    List<Slot> front = new ArrayList<>(List.of(shared));
    front.add(Slot.splitter("manifold").with(manifold("large", 4, 18.0)));
    Proposal best =
        best(job(Layout.of(front, List.of(bench.alike(2), grinder))).build(), hose("wide", 19.0));
    return BillOfMaterials.of(best, Catalogue.of(List.of(), List.of()))
        .lines(BillLine.Kind.HOSE_FUSE)
        .stream()
        .map(fuse -> fuse.quantity() + " x " + fuse.name())
        .toList();
  }

  /**
   * By hand: 29 CFR 1926.302(b)(7) wants a device at the source of supply or of the branch line. Two benches and a
   * grinder hang on hoses of 19 mm; the one in front of a trunk serves the hoses behind it.
   */
  @Test
  void every_large_hose_has_a_fuse_in_front_of_it() {
    Slot.Hose toGrinder = Slot.hose("hose to grinder", Length.ofMetres(8.0));
    Slot[] nothing = {};
    assertThat(fuses(nothing, toGrinder)).containsExactly("3 x hose fuse at the splitter");
    assertThat(fuses(nothing, FUSE, toGrinder)).containsExactly("2 x hose fuse at the splitter");
    assertThat(fuses(nothing, toGrinder, FUSE))
        .as("behind the hose it shuts nothing off")
        .containsExactly("3 x hose fuse at the splitter");
    assertThat(fuses(new Slot[] {FUSE}, toGrinder)).isEmpty();
    assertThat(fuses(new Slot[] {Slot.hose("main", Length.ofMetres(9.0))}, toGrinder))
        .as("one at the source serves all that follow")
        .containsExactly("1 x hose fuse at the source");
  }
}
