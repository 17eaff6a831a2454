package org.airfit.select;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.assertThatIllegalStateException;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.airfit.air.AirState;
import org.airfit.flow.FlowCapacity;
import org.airfit.joint.End;
import org.airfit.line.Conduit;
import org.airfit.line.ConduitRange;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.Length;
import org.airfit.quantity.Money;
import org.airfit.quantity.Range;
import org.airfit.quantity.SonicConductance;
import org.airfit.run.Run;
import org.airfit.working.UnitSystem;
import org.junit.jupiter.api.Test;

/** Several tools on one outlet. */
class SeveralToolsTest {

  private static final End FEMALE = End.parse("3/8 NPT female");
  private static final End MALE = End.parse("3/8 NPT male");
  private static final FlowCapacity WIDE = capacity(14.0);

  private static FlowCapacity capacity(double c) {
    return FlowCapacity.of(SonicConductance.ofCubicDecimetresPerSecondBar(c), 0.3);
  }

  private static Part.Splitter manifold(int outlets, double c) {
    return new Part.Splitter(
        Shelf.steel("manifold " + outlets).withPrice(Money.parse("30 EUR")),
        capacity(c),
        FEMALE,
        Collections.nCopies(outlets, FEMALE));
  }

  private static Part.Hose hose(String id, double boreMm) {
    return Shelf.hose(Shelf.steel(id).withPrice(Money.parse("20 EUR")), boreMm, 10.0);
  }

  private static ToolLine line(String tool, double litresPerSecond, double bar) {
    return ToolLine.to(
        tool,
        FreeAirFlow.ofAnrLitresPerSecond(litresPerSecond),
        GaugePressure.ofBar(bar),
        FEMALE,
        List.of(Slot.hose("hose to " + tool, Length.ofMetres(8.0))));
  }

  private static Requirement.Builder job(Layout layout) {
    return Requirement.forTools(layout)
        .supply(Shelf.SUPPLY, Shelf.ATMOSPHERE)
        .outlet(MALE)
        .environment(Environment.INDOORS)
        .lubrication(Lubrication.DRY);
  }

  private static Layout split(ToolLine... lines) {
    return Layout.of(List.of(Slot.splitter("manifold")), List.of(lines));
  }

  private static Proposal best(Requirement job, Part... parts) {
    return Selection.of(job, Catalogue.of(List.of(parts)))
        .fold(fitting -> fitting.best(), nothing -> nothing.nearest().get(0));
  }

  private static Finding air(Proposal proposal) {
    return proposal.findings().stream()
        .filter(finding -> finding.rule() == Rule.AIR_AT_TOOL)
        .findFirst()
        .orElseThrow();
  }

  private static double pascals(Run run, double litresPerSecond) {
    return run.arriving(FreeAirFlow.ofAnrLitresPerSecond(litresPerSecond))
        .orElseThrow()
        .pascals();
  }

  /** By hand: the manifold carries 6 + 6 + 4 L/s, each hose its own. */
  @Test
  void the_splitter_carries_the_air_of_all_and_each_line_its_own() {
    Proposal p = best(
        job(split(line("sander", 6.0, 5.0).alike(2), line("ratchet", 4.0, 5.0))).build(),
        manifold(3, 14.0),
        hose("hose", 9.5));
    double atManifold =
        pascals(Run.from(Shelf.SUPPLY, Shelf.ATMOSPHERE).through("manifold", WIDE), 16.0);
    AirState behind =
        Shelf.SUPPLY.at(GaugePressure.ofPascals(atManifold).absolute(Shelf.ATMOSPHERE));
    Conduit bore = hose("hose", 9.5).conduit();
    Run line = Run.from(behind, Shelf.ATMOSPHERE).through("hose", bore);
    List<Proposal> ways = p.toEachTool();
    assertThat(ways).hasSize(2);
    assertThat(Shelf.pascalsAtTool(ways.get(0))).isCloseTo(pascals(line, 6.0), within(1.0e-3));
    assertThat(Shelf.pascalsAtTool(ways.get(1))).isCloseTo(pascals(line, 4.0), within(1.0e-3));
    assertThat(Shelf.pascalsAtTool(p))
        .as("the one that has least to spare")
        .isEqualTo(Shelf.pascalsAtTool(ways.get(0)));
    assertThat(p.requirement().demand().massFlow().kilogramsPerSecond())
        .isCloseTo(
            FreeAirFlow.ofAnrLitresPerSecond(16.0).massFlow().kilogramsPerSecond(),
            within(1.0e-12));
  }

  /**
   * By hand: of the ratchet's line others take 3 L/s at a tee, so that the manifold carries 6 + 6 + 4 + 3 L/s and the
   * tee 4 + 3 L/s.
   */
  @Test
  void what_others_take_in_a_line_goes_through_all_that_stands_in_front_of_it() {
    ToolLine shared = line("ratchet", 4.0, 5.0);
    Slot.Splitter tee = Slot.splitter("tee")
        .sharedWith(Range.exactly(FreeAirFlow.ofAnrLitresPerSecond(3.0)))
        .with(manifold(2, 14.0));
    Proposal p = best(
        job(split(
                line("sander", 6.0, 5.0).alike(2),
                shared.with(List.of(tee, shared.slots().get(0)))))
            .build(),
        manifold(3, 14.0),
        hose("hose", 9.5),
        Shelf.adapter("nipple", "3/8 NPT male", "3/8 NPT male"));
    AirState behind = Shelf.SUPPLY.at(GaugePressure.ofPascals(
            pascals(Run.from(Shelf.SUPPLY, Shelf.ATMOSPHERE).through("manifold", WIDE), 19.0))
        .absolute(Shelf.ATMOSPHERE));
    assertThat(air(p).reason())
        .startsWith("All 3 tools at work at once, which is the worst case, take 16 L/s ANR. "
            + "Others take 3 L/s ANR at the same time. Lines 1 and 2, sander: The tool has ");
    Conduit bore = hose("hose", 9.5).conduit();
    List<Proposal> ways = p.toEachTool();
    Run sander = Run.from(behind, Shelf.ATMOSPHERE).through("hose", bore);
    assertThat(Shelf.pascalsAtTool(ways.get(0))).isCloseTo(pascals(sander, 6.0), within(1.0e-3));
    Run throughTee = Run.from(behind, Shelf.ATMOSPHERE).through("tee", WIDE);
    for (Joint joint : ways.get(1).joints()) {
      for (Part.Adapter adapter : joint.adapters()) {
        assertThat(joint.where()).isEqualTo("line 3, ratchet: splitter to splitter");
        throughTee = Run.from(behind, Shelf.ATMOSPHERE)
            .through("nipple", adapter.conduit())
            .through("tee", WIDE);
      }
    }
    AirState behindTee = Shelf.SUPPLY.at(
        GaugePressure.ofPascals(pascals(throughTee, 7.0)).absolute(Shelf.ATMOSPHERE));
    Run ratchet = Run.from(behindTee, Shelf.ATMOSPHERE).through("hose", bore);
    assertThat(Shelf.pascalsAtTool(ways.get(1))).isCloseTo(pascals(ratchet, 4.0), within(1.0e-3));
    assertThat(p.requirement().demand().massFlow().kilogramsPerSecond())
        .as("what the tools take, without the others")
        .isCloseTo(
            FreeAirFlow.ofAnrLitresPerSecond(16.0).massFlow().kilogramsPerSecond(),
            within(1.0e-12));
  }

  /** What the sander lacks is due to the others in the line of the ratchet: the search must see it too. */
  @Test
  void what_others_take_in_a_line_may_starve_another_line() {
    ToolLine shared = line("ratchet", 4.0, 3.0);
    Slot.Splitter tee = Slot.splitter("tee").with(manifold(2, 14.0));
    Part[] parts = {
      manifold(2, 6.0), hose("hose", 9.5), Shelf.adapter("nipple", "3/8 NPT male", "3/8 NPT male")
    };
    for (double others : new double[] {0.1, 12.0}) {
      Slot.Splitter taken = tee.sharedWith(Range.exactly(FreeAirFlow.ofAnrLitresPerSecond(others)));
      Requirement job = job(split(
              line("sander", 6.0, 6.5),
              shared.with(List.of(taken, shared.slots().get(0)))))
          .build();
      Selection found = Selection.of(job, Catalogue.of(List.of(parts)));
      assertThat(best(job, parts).fits()).isEqualTo(others < 1.0);
      assertThat(found instanceof Selection.Proposals).isEqualTo(others < 1.0);
    }
  }

  @Test
  void words_of_one_line_beside_others_tell_what_these_take() {
    Range<FreeAirFlow> others =
        new Range<>(FreeAirFlow.ofAnrLitresPerSecond(2.0), FreeAirFlow.ofAnrLitresPerSecond(5.0));
    Layout layout = Layout.of(
        List.of(Slot.splitter("manifold").sharedWith(others)), List.of(line("sander", 6.0, 5.0)));
    Proposal p = best(job(layout).build(), manifold(2, 14.0), hose("hose", 9.5));
    assertThat(air(p).reason())
        .startsWith("Others take 2 L/s ANR to 5 L/s ANR at the same time. The tool has ");
  }

  @Test
  void words_name_the_lines_and_say_that_all_work_at_once() {
    Proposal p = best(
        job(split(line("sander", 6.0, 5.0).alike(2), line("ratchet", 4.0, 5.0))).build(),
        manifold(3, 14.0),
        hose("hose", 9.5));
    assertThat(p.fits()).isTrue();
    assertThat(air(p).reason())
        .startsWith("All 3 tools at work at once, which is the worst case, take 16 L/s ANR. "
            + "Lines 1 and 2, sander: The tool has ")
        .contains(" Line 3, ratchet: The tool has ");
    assertThat(p.joints().stream().map(Joint::where))
        .containsExactly(
            "outlet to splitter",
            "lines 1 and 2, sander: splitter to hose",
            "lines 1 and 2, sander: hose to tool",
            "line 3, ratchet: splitter to hose",
            "line 3, ratchet: hose to tool");
    assertThat(p.working(UnitSystem.SI).toText()).contains("To the tool of line 3, ratchet:");
  }

  /** What is enough for each alone is too little for both at once: the narrow splitter is no answer. */
  @Test
  void what_is_enough_for_one_tool_at_a_time_is_judged_with_all_at_work() {
    Part.Splitter narrow = manifold(2, 1.8);
    ToolLine grinder = line("grinder", 7.0, 5.5);
    ToolLine sander = line("sander", 3.0, 5.0);
    for (ToolLine alone : List.of(grinder, sander)) {
      Requirement one = Requirement.forTool(
              alone.demandRange(), Range.exactly(GaugePressure.ofBar(5.5)))
          .toolInlet(FEMALE)
          .supply(Shelf.SUPPLY, Shelf.ATMOSPHERE)
          .outlet(MALE)
          .layout(Layout.of(List.of(
              Slot.inLine(
                  "splitter",
                  new Part.Device(
                      Shelf.steel("wye"), DeviceKind.OTHER, narrow.capacity(), FEMALE, FEMALE)),
              Slot.hose("hose", Length.ofMetres(8.0)))))
          .build();
      assertThat(air(best(one, hose("hose", 9.5))).outcome()).isEqualTo(RuleOutcome.MET);
    }
    Proposal both = best(job(split(grinder, sander)).build(), narrow, hose("hose", 9.5));
    assertThat(air(both).outcome()).isEqualTo(RuleOutcome.UNMET);
    assertThat(air(both).reason()).contains("Line 1, grinder: ", "Line 2, sander: ");
    Proposal wider =
        best(job(split(grinder, sander)).build(), narrow, hose("hose", 9.5), manifold(3, 14.0));
    assertThat(air(wider).outcome()).isEqualTo(RuleOutcome.MET);
  }

  @Test
  void parts_of_lines_alike_are_counted_and_paid_for_each_line() {
    Proposal p = best(
        job(split(line("sander", 3.0, 5.0).alike(3))).build(),
        manifold(4, 14.0),
        hose("hose", 9.5));
    assertThat(p.price()).contains(Money.parse("90 EUR"));
    assertThat(p.parts()).hasSize(4);
    BillOfMaterials bill = BillOfMaterials.of(p, Catalogue.of(List.of()));
    assertThat(bill.lines(BillLine.Kind.PART).stream().map(BillLine::quantity))
        .containsExactly(1, 3);
    assertThat(bill.lines(BillLine.Kind.SEALANT).get(0).reason())
        .startsWith("seals 7 taper threads");
    assertThat(bill.questions())
        .anyMatch(question -> question.startsWith("What closes the outlets of part manifold 4"));
  }

  @Test
  void slots_of_lines_are_slots_of_the_layout_too() {
    ToolLine sander = line("sander", 3.0, 5.0);
    Layout layout = split(sander, line("ratchet", 3.0, 5.0));
    assertThat(layout.allSlots().stream().map(Slot::name))
        .containsExactly("manifold", "hose to sander", "hose to ratchet");
    assertThat(layout.hasLubricator()).isFalse();
    Slot oiler = Slot.inLine("oiler", DeviceKind.LUBRICATOR);
    assertThat(split(sander.with(List.of(oiler)), line("ratchet", 3.0, 5.0)).hasLubricator())
        .isTrue();
  }

  @Test
  void a_splitter_with_too_few_outlets_is_no_choice() {
    Requirement job = job(split(line("sander", 3.0, 5.0).alike(3))).build();
    Selection found =
        Selection.of(job, Catalogue.of(List.of(manifold(2, 14.0), hose("hose", 9.5))));
    assertThat(found.<List<String>>fold(fitting -> List.of(), nothing -> nothing.toGive()))
        .containsExactly("The catalogue has no splitter with 3 outlets for manifold, those of lines"
            + " that are alike with the same end: add one.");
  }

  @Test
  void each_tool_has_its_own_limit() {
    Proposal p = best(
        job(split(
                line("sander", 3.0, 5.0).withToolRating(GaugePressure.ofBar(6.5)),
                line("ratchet", 3.0, 5.0).withToolRating(GaugePressure.ofBar(8.0))))
            .build(),
        manifold(2, 14.0),
        hose("hose", 9.5));
    Finding limit = p.findings().stream()
        .filter(finding -> finding.rule() == Rule.TOOL_RATED)
        .findFirst()
        .orElseThrow();
    assertThat(limit.outcome()).isEqualTo(RuleOutcome.UNMET);
    assertThat(limit.reason()).startsWith("Line 1, sander: ").doesNotContain("ratchet");
  }

  @Test
  void an_open_question_of_one_tool_does_not_hide_that_another_needs_the_regulator() {
    Proposal p = best(
        job(split(
                line("sander", 3.0, 5.0).withToolRating(GaugePressure.ofBar(7.5)),
                line("ratchet", 3.0, 5.0)))
            .highest(GaugePressure.ofBar(8.5))
            .regulated()
            .build(),
        manifold(2, 14.0),
        hose("hose", 9.5));
    Finding limit = p.findings().stream()
        .filter(finding -> finding.rule() == Rule.TOOL_RATED)
        .findFirst()
        .orElseThrow();
    assertThat(limit.outcome()).isEqualTo(RuleOutcome.OPEN);
    assertThat(limit.reason())
        .startsWith("Line 1, sander: The dead-end pressure at the tool is 7 bar(g) while the"
            + " regulator holds and 8.5 bar(g) if it fails, its maker allows 7.5 bar(g). A relief"
            + " valve behind the regulator")
        .contains(" Line 2, ratchet: Ask for the highest pressure");
    assertThat(air(p).reason())
        .startsWith("Both tools at work at once, which is the worst case, take 6 L/s ANR. ");
  }

  /** What others take is a range: the answer turns within it. */
  @Test
  void what_others_take_from_a_splitter_counts_and_may_be_a_range() {
    Slot.Splitter wye = Slot.splitter("wye")
        .with(manifold(2, 1.8))
        .sharedWith(new Range<>(
            FreeAirFlow.ofAnrLitresPerSecond(0.0), FreeAirFlow.ofAnrLitresPerSecond(3.0)));
    Requirement job = Requirement.forTool(
            FreeAirFlow.ofAnrLitresPerSecond(7.0), GaugePressure.ofBar(5.5))
        .toolInlet(FEMALE)
        .supply(Shelf.SUPPLY, Shelf.ATMOSPHERE)
        .outlet(MALE)
        .layout(Layout.of(List.of(wye, Slot.hose("hose", Length.ofMetres(8.0)))))
        .build();
    Proposal p = best(job, hose("hose", 9.5));
    assertThat(air(p).outcome()).isEqualTo(RuleOutcome.OPEN);
    assertThat(p.doubts().get(0).what()).isEqualTo("air that others take at the wye");
    String turns = p.doubts().get(0).enoughIf(UnitSystem.SI).orElseThrow();
    assertThat(turns).startsWith("at most ").endsWith(" L/s ANR");
    double most = Double.parseDouble(turns.replace("at most ", "").replace(" L/s ANR", ""));
    for (double others : List.of(most, most + 0.02)) {
      Run run = Run.from(Shelf.SUPPLY, Shelf.ATMOSPHERE)
          .through("wye", manifold(2, 1.8).capacity())
          .sharedWith(FreeAirFlow.ofAnrLitresPerSecond(others))
          .through("hose", hose("hose", 9.5).conduit());
      assertThat(pascals(run, 7.0) >= 550_000.0).isEqualTo(others == most);
    }
  }

  @Test
  void a_tool_of_which_it_depends_is_told_with_its_line() {
    ToolLine unsure = ToolLine.to(
        "sander",
        new Range<>(FreeAirFlow.ofAnrLitresPerSecond(4.0), FreeAirFlow.ofAnrLitresPerSecond(16.0)),
        Range.exactly(GaugePressure.ofBar(5.5)),
        FEMALE,
        List.of(Slot.hose("hose to sander", Length.ofMetres(8.0))));
    Proposal p = best(
        job(split(unsure, line("ratchet", 2.0, 4.0))).build(),
        manifold(2, 14.0),
        hose("hose", 6.0));
    assertThat(air(p).outcome()).isEqualTo(RuleOutcome.OPEN);
    assertThat(air(p).reason()).contains("Line 1, sander: It depends: ");
    assertThat(p.doubts().get(0).what()).isEqualTo("air the tool takes (line 1, sander)");
  }

  @Test
  void layouts_of_several_tools_are_checked_at_the_door() {
    ToolLine line = line("sander", 3.0, 5.0);
    Slot.Splitter splitter = Slot.splitter("manifold");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> Layout.of(List.of(Slot.coupling("outlet")), List.of(line.alike(2))))
        .withMessageContaining("must be a splitter");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> Layout.of(List.of(splitter), List.of(line)))
        .withMessageContaining("must be at least two, was one to sander");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> split(line, line))
        .withMessageContaining("\"hose to sander\" again");
    assertThatIllegalArgumentException()
        .isThrownBy(
            () -> Layout.of(List.of(splitter.with(manifold(2, 9.0))), List.of(line.alike(3))))
        .withMessageContaining("at least 3 outlets, one for every line, had 2");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> Requirement.forTools(Layout.of(List.of(splitter))))
        .withMessageContaining("must have lines");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> job(split(line.alike(2))).impactTool().build())
        .withMessageStartingWith("impact tool must not be told of a job of several tools");
    assertThatIllegalStateException()
        .isThrownBy(() -> job(split(line.alike(2))).build().toolInlet())
        .withMessageContaining("an inlet for each");
    assertThatIllegalArgumentException().isThrownBy(() -> line.alike(0));
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new Part.Splitter(Shelf.steel("s"), WIDE, FEMALE, List.of(FEMALE)))
        .withMessageContaining("at least two");
  }

  @Test
  void the_offers_count_every_line() {
    Offers offers = Offers.of(
        job(split(line("sander", 3.0, 5.0).alike(2))).build(),
        Catalogue.of(List.of(manifold(2, 14.0), hose("hose", 9.5))));
    assertThat(offers.offer(Offer.Aim.LEAST_NOW).orElseThrow().now())
        .contains(Money.parse("70 EUR"));
  }

  /** A pipe behind a regulator loses what a run through the same pipe loses. */
  @Test
  void piping_between_two_slots_counts_with_its_ends_and_is_not_bought() {
    Conduit pipe =
        Conduit.of(Length.ofMillimetres(12.0), Length.ofMetres(30.0), Length.ofMillimetres(0.05));
    List<Slot> slots = new ArrayList<>(List.of(
        Slot.pipe("pipe to the booth", ConduitRange.exactly(pipe), FEMALE, MALE),
        Slot.splitter("manifold")));
    Requirement job =
        job(Layout.of(slots, List.of(line("sander", 3.0, 5.0).alike(2)))).build();
    Proposal p = best(job, manifold(2, 14.0), hose("hose", 9.5));
    assertThat(p.fits()).isTrue();
    assertThat(p.price()).contains(Money.parse("70 EUR"));
    double behindPipe =
        pascals(Run.from(Shelf.SUPPLY, Shelf.ATMOSPHERE).through("pipe", pipe), 6.0);
    assertThat(p.toEachTool()
            .get(0)
            .result()
            .<Double>fold(
                delivered -> delivered.share("pipe to the booth").outlet().pascals(),
                starved -> 0.0))
        .isCloseTo(
            GaugePressure.ofPascals(behindPipe).absolute(Shelf.ATMOSPHERE).pascals(),
            within(1.0e-3));
    assertThat(p.open().stream().map(Finding::rule)).doesNotContain(Rule.PARTS_RATED);
  }

  /** A line is named once in each list, however many of its joints or parts the list has. */
  @Test
  void a_list_names_each_line_once() {
    Proposal p = best(
        job(split(line("sander", 6.0, 5.0).alike(2), line("ratchet", 4.0, 5.0))).build(),
        manifold(3, 14.0),
        hose("hose", 9.5));
    List<String> ways = p.toEachTool().stream()
        .map(way -> way.requirement().way().orElseThrow())
        .toList();
    String ends = p.findings().stream()
        .filter(finding -> finding.rule() == Rule.ENDS_MATE)
        .findFirst()
        .orElseThrow()
        .reason();
    String reaches = p.findings().stream()
        .filter(finding -> finding.rule() == Rule.HOSE_REACHES)
        .findFirst()
        .orElseThrow()
        .reason();
    assertThat(ways).hasSize(2);
    for (String list : List.of(ends, reaches)) {
      for (String way : ways) {
        String small = list.toLowerCase(java.util.Locale.ROOT);
        assertThat(small).containsOnlyOnce(way + ": ");
      }
    }
    assertThat(reaches)
        .isEqualTo("Lines 1 and 2, sander: 10 m of hose, 8 m needed; line 3, ratchet: 10 m of hose,"
            + " 8 m needed.");
    for (BillLine line : BillOfMaterials.of(p, Catalogue.of(List.of())).lines()) {
      for (String way : ways) {
        assertThat(line.reason().split(way + ": ", -1).length).isLessThanOrEqualTo(2);
      }
    }
  }

  /**
   * The drill takes four times the air of the saw through the same hose, and so gets less pressure. But it needs 2.6
   * bar less: the saw is worst off, and its run is told.
   */
  @Test
  void the_tool_that_has_least_to_spare_is_told_not_the_one_with_the_least_pressure() {
    Proposal p = best(
        job(split(line("drill", 12.0, 4.0), line("saw", 3.0, 6.6))).build(),
        manifold(2, 20.0),
        hose("hose", 9.5));
    double drill = Shelf.pascalsAtTool(p.toEachTool().get(0));
    double saw = Shelf.pascalsAtTool(p.toEachTool().get(1));
    assertThat(drill).isLessThan(saw);
    assertThat(drill - 4.0e5).isGreaterThan(saw - 6.6e5);
    assertThat(Shelf.pascalsAtTool(p)).isEqualTo(saw);
    assertThat(p.assembly().spareAtWorst()).isEqualTo(saw - 6.6e5);
  }

  /** The manifold's loss is told once, though the air of every line goes through it; a plug counts with its socket. */
  @Test
  void of_several_tools_the_losses_of_shared_parts_are_told_once() {
    ToolLine coupled = line("drill", 3.0, 4.0)
        .with(List.of(Slot.coupling("coupling"), Slot.hose("hose to drill", Length.ofMetres(8.0))));
    Proposal p = best(
        job(split(coupled, line("saw", 4.0, 4.0))).build(),
        manifold(2, 20.0),
        Shelf.socket(Shelf.steel("socket"), "finch", "3/8 NPT male", 9.0),
        Shelf.plug(Shelf.steel("plug"), "finch", "3/8 NPT female"),
        hose("hose", 9.5));
    Assembly a = p.assembly();
    assertThat(a.slotParts())
        .extracting(each -> each.part().id())
        .containsExactly("manifold 2", "socket", "plug", "hose", "hose");
    assertThat(a.losses())
        .extracting(loss -> loss.map(each -> each.name()).orElse("none"))
        .containsExactly(
            "part manifold 2", "coupling, part socket", "none", "part hose", "part hose");
    double drill = a.losses().get(0).orElseThrow().drop().pascals()
        + a.losses().get(1).orElseThrow().drop().pascals()
        + a.losses().get(3).orElseThrow().drop().pascals();
    assertThat(7.0e5 - drill).isCloseTo(Shelf.pascalsAtTool(p.toEachTool().get(0)), within(1.0e-3));
  }

  private static List<String> questions(Requirement job, Part.Splitter splitter) {
    return BillOfMaterials.of(best(job, splitter, hose("hose", 9.5)), Catalogue.of(List.of()))
        .questions();
  }

  @Test
  void only_outlets_that_no_line_uses_and_no_other_takes_air_from_are_asked_for() {
    Requirement two = job(split(line("drill", 3.0, 5.0), line("saw", 3.0, 5.0))).build();
    assertThat(questions(two, manifold(2, 20.0))).isEmpty();
    assertThat(questions(two, manifold(3, 20.0)))
        .containsExactly(
            "What closes the outlets of part manifold 3 that no line uses, 3/8 NPT female? A plug must go into"
                + " each, or more lines onto them.");
    Selection.Proposals three = (Selection.Proposals)
        Selection.of(two, Catalogue.of(List.of(manifold(3, 20.0), hose("hose", 9.5))));
    assertThat(three.best().leftOpen())
        .containsExactly("the outlets of part manifold 3 that no line uses");
    assertThat(three.whyBest())
        .endsWith(" Still open: what closes the outlets of part manifold 3 that no line uses.");
    assertThat(best(two, manifold(2, 20.0), hose("hose", 9.5)).leftOpen()).isEmpty();
    Slot.Splitter shared =
        Slot.splitter("manifold").sharedWith(Range.exactly(FreeAirFlow.ofAnrLitresPerSecond(2.0)));
    Layout others =
        Layout.of(List.of(shared), List.of(line("drill", 3.0, 5.0), line("saw", 3.0, 5.0)));
    assertThat(questions(job(others).build(), manifold(3, 20.0)))
        .as("others take air there")
        .isEmpty();
    assertThat(questions(job(others).build(), manifold(2, 20.0)))
        .as("the two lines take both outlets")
        .containsExactly(
            "Where do the others who draw air at part manifold 2 go on? The lines take all of its outlets: lead the"
                + " others off with a tee in front of it, or take a splitter with one outlet more.");
  }

  /**
   * By hand: a manifold with 3 adapters, and to each tool a hose with 3 adapters at either end: 4 + 17 x 7 = 123
   * pieces.
   */
  @Test
  void so_many_lines_alike_as_hold_no_more_than_127_pieces() {
    assertThat(split(line("sander", 0.1, 5.0).alike(17)).lines()).hasSize(1);
    assertThatIllegalArgumentException()
        .isThrownBy(() -> split(line("sander", 0.1, 5.0).alike(18)))
        .withMessageContaining("at most 127 pieces")
        .withMessageContaining("up to 130");
    assertThatIllegalArgumentException()
        .isThrownBy(
            () -> split(line("sander", 0.1, 5.0).alike(9), line("saw", 0.1, 5.0).alike(9)))
        .withMessageContaining("up to 130");
  }

  @Test
  void a_coupling_of_a_line_has_the_profile_of_one_on_its_way_only() {
    Slot.Coupling first = Slot.coupling("first");
    Slot.Coupling same = Slot.coupling("second").ofSameProfileAs("first");
    ToolLine drill = line("drill", 3.0, 5.0);
    ToolLine saw = line("saw", 3.0, 5.0).with(List.of(same));
    assertThat(Layout.of(List.of(first, Slot.splitter("manifold")), List.of(drill, saw))
            .lines())
        .hasSize(2);
    assertThatIllegalArgumentException()
        .isThrownBy(() -> split(drill.with(List.of(first)), saw))
        .withMessageContaining("must stand before it, was \"first\"");
  }

  @Test
  void a_line_tells_what_was_told_of_its_tool() {
    ToolLine plain = line("sander", 3.0, 5.0);
    assertThat(plain.leastRange()).isEqualTo(Range.exactly(GaugePressure.ofBar(5.0)));
    assertThat(plain.toolRating()).isEmpty();
    assertThat(plain.deadEnd()).isEmpty();
    assertThat(plain.isImpactTool()).isFalse();
    assertThat(plain.withImpactTool().isImpactTool()).isTrue();
    assertThat(plain.hasOwnWhipHose()).isFalse();
    assertThat(plain.withOwnWhipHose().hasOwnWhipHose()).isTrue();
    assertThat(plain.isBlowGun()).isFalse();
    assertThat(plain.withBlowGun().isBlowGun()).isTrue();
    assertThat(plain.withBlowGun().deadEnd()).isEmpty();
    assertThat(plain.withBlowGun(GaugePressure.ofBar(2.0)).deadEnd())
        .contains(GaugePressure.ofBar(2.0));
    assertThat(plain.isAutomaticFeed()).isFalse();
    assertThat(plain.withAutomaticFeed().isAutomaticFeed()).isTrue();
    assertThat(plain.isBlasting()).isFalse();
    assertThat(plain.withBlasting().isBlasting()).isTrue();
    assertThat(plain.isPainting()).isFalse();
    assertThat(plain.withPainting().isPainting()).isTrue();
    assertThat(plain.withToolRating(GaugePressure.ofBar(8.0)).toolRating())
        .contains(GaugePressure.ofBar(8.0));
    ToolLine split = ToolLine.toSplitter(
        List.of(Slot.splitter("manifold")), List.of(line("a", 3.0, 5.0), line("b", 3.0, 5.0)));
    assertThatIllegalStateException().isThrownBy(split::leastRange);
    assertThat(split.toolRating()).isEmpty();
  }
}
