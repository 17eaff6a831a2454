package org.airfit.select;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.assertThatNullPointerException;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.airfit.flow.FlowCapacity;
import org.airfit.joint.End;
import org.airfit.line.Wall;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.HoseBore;
import org.airfit.quantity.Length;
import org.airfit.quantity.Money;
import org.airfit.quantity.PressureDrop;
import org.airfit.quantity.Range;
import org.airfit.quantity.SonicConductance;
import org.airfit.run.ElementLoss;
import org.airfit.run.RunResult;
import org.airfit.safety.Caution;
import org.airfit.safety.SafetyRules;
import org.junit.jupiter.api.Test;

/** Jobs whose run is not that of most jobs. */
class LayoutTest {

  private static final Length TEN_METRES = Length.ofMetres(10.0);

  private static Part.Hose hose(String id, double metres) {
    return Shelf.of(Wall.SMOOTH_RUBBER_HOSE, Shelf.hose(Shelf.steel(id), 12.7, metres));
  }

  private static Part.Device filter(double c) {
    return new Part.Device(
        Shelf.steel("filter"),
        DeviceKind.FILTER,
        FlowCapacity.of(SonicConductance.ofCubicDecimetresPerSecondBar(c), 0.3),
        End.parse("3/8 NPT female"),
        End.parse("3/8 NPT female"));
  }

  private static Part.Adapter nipple() {
    return Shelf.adapter("nipple", "3/8 NPT male", "3/8 NPT male");
  }

  private static Requirement.Builder job(Slot... slots) {
    return Requirement.forTool(Shelf.job().build().demand(), Shelf.job().build().least())
        .toolRating(Shelf.job().build().toolRating().orElseThrow())
        .supply(Shelf.SUPPLY, Shelf.ATMOSPHERE)
        .outlet(End.parse("3/8 NPT male"))
        .toolInlet(End.parse("1/4 NPT female"))
        .environment(Environment.INDOORS)
        .lubrication(Lubrication.DRY)
        .layout(Layout.of(List.of(slots)));
  }

  private static Proposal best(Requirement job, List<? extends Part> parts) {
    Selection answer = Selection.of(job, Catalogue.of(parts));
    assertThat(answer).as(answer.toString()).isInstanceOf(Selection.Proposals.class);
    return ((Selection.Proposals) answer).best();
  }

  private static Finding of(Proposal proposal, Rule rule) {
    return proposal.findings().stream()
        .filter(finding -> finding.rule() == rule)
        .findFirst()
        .orElseThrow();
  }

  private static List<Part> parts(Part... more) {
    List<Part> parts = new ArrayList<>(Shelf.parts());
    parts.addAll(List.of(more));
    return parts;
  }

  @Test
  void the_layout_of_most_jobs_said_slot_by_slot_gives_the_same_as_its_reach() {
    Requirement bySlots = job(
            Slot.coupling("outlet"), Slot.hose("hose", TEN_METRES), Slot.coupling("tool"))
        .build();
    Requirement byReach = Shelf.job().build();
    assertThat(bySlots.layout()).isEqualTo(byReach.layout()).hasToString("outlet, hose, tool");
    assertThat(Shelf.lines(best(bySlots, Shelf.parts())))
        .isEqualTo(Shelf.lines(best(byReach, Shelf.parts())));
  }

  /** The whip hose stands between the coupling and the tool, so that the rule that asks for one is met by a part. */
  @Test
  void a_whip_hose_is_a_part_like_any_other_and_settles_its_rule() {
    Slot.Hose whip = Slot.whipHose("whip hose", Length.ofMetres(0.5));
    Part.Adapter reducer = Shelf.adapter("reducer", "3/8 NPT female", "1/4 NPT male");
    List<Part> stock = List.of(
        Shelf.socket(Shelf.steel("wide"), "finch", "3/8 NPT female", 9.0),
        Shelf.plug(Shelf.steel("plug"), "finch", "3/8 NPT female"),
        hose("long", 10.0),
        hose("short", 0.6),
        reducer);
    Proposal with = best(
        job(Slot.coupling("outlet"), Slot.hose("hose", TEN_METRES), Slot.coupling("tool"), whip)
            .impactTool()
            .build(),
        stock);
    assertThat(with.parts())
        .extracting(Part::id)
        .as("of two hoses of one bore the shorter keeps more of the air")
        .containsExactly("wide", "plug", "long", "wide", "plug", "short", "reducer");
    assertThat(of(with, Rule.WHIP_HOSE).outcome()).isEqualTo(RuleOutcome.MET);
    assertThat(of(with, Rule.HOSE_REACHES).reason())
        .isEqualTo("10 m of hose, 10 m needed; 0.6 m of whip hose, 0.5 m needed.");
    assertThat(with.joints())
        .extracting(Joint::where)
        .containsExactly(
            "outlet to socket",
            "plug to hose",
            "hose to socket",
            "plug to whip hose",
            "whip hose to tool");
    assertThat(with.requirement().hasWhipHose()).isTrue();
    assertThat(with.cautions()).extracting(Caution::title).doesNotContain("Whip hose");
    Proposal without = best(
        job(Slot.coupling("outlet"), Slot.hose("hose", TEN_METRES), Slot.coupling("tool"))
            .impactTool()
            .build(),
        parts(hose("rubber", 10.0)));
    assertThat(of(without, Rule.WHIP_HOSE).outcome()).isEqualTo(RuleOutcome.OPEN);
    assertThat(without.cautions()).extracting(Caution::title).contains("Whip hose");
  }

  @Test
  void what_stands_in_the_line_takes_its_share_of_the_pressure() {
    Slot[] slots = {
      Slot.inLine("filter at the wall", filter(6.0)),
      Slot.coupling("outlet"),
      Slot.hose("hose", TEN_METRES),
      Slot.coupling("tool")
    };
    Proposal proposal = best(job(slots).build(), parts(nipple()));
    assertThat(proposal.parts())
        .extracting(Part::id)
        .containsExactly(
            "filter", "nipple", "wide", "hose plug", "10 mm hose", "wide", "tool plug");
    assertThat(proposal.run().names())
        .containsExactly(
            "part filter",
            "part nipple",
            "outlet coupling, part wide",
            "part 10 mm hose",
            "tool coupling, part wide");
    assertThat(Shelf.lines(proposal).get(0).reason())
        .startsWith("filter in the line, pressure loss ");
    slots[0] = Slot.inLine("filter at the wall", filter(1.0));
    assertThat(Selection.of(job(slots).build(), Catalogue.of(parts(nipple()))))
        .as("a filter that chokes lets nothing fit")
        .isInstanceOf(Selection.NothingFits.class);
  }

  @Test
  void a_hose_may_go_straight_to_the_tool_and_couplings_have_profiles_of_their_own() {
    Proposal direct = best(
        job(Slot.coupling("outlet"), Slot.hose("hose", TEN_METRES)).build(),
        parts(Shelf.adapter("reducer", "3/8 NPT female", "1/4 NPT male")));
    assertThat(of(direct, Rule.PROFILE_MATES).reason())
        .isEqualTo("At the outlet coupling profile finch.");
    assertThat(direct.parts()).hasSize(4);
    Proposal two = best(
        job(
                Slot.coupling("outlet").ofProfile("finch"),
                Slot.hose("hose", TEN_METRES),
                Slot.coupling("tool").ofProfile("wren"))
            .build(),
        parts(
            Shelf.socket(Shelf.steel("wren socket"), "wren", "3/8 NPT female", 9.0),
            Shelf.plug(Shelf.steel("wren plug"), "wren", "1/4 NPT male")));
    assertThat(two.socket("outlet").profiles()).containsExactly("finch");
    assertThat(two.plug("tool").profile()).isEqualTo("wren");
    assertThat(of(two, Rule.PROFILE_MATES).reason())
        .isEqualTo("At the outlet coupling profile finch, at the tool coupling profile wren.");
  }

  @Test
  void two_regulators_are_told_as_two_and_a_nailer_is_judged_by_what_can_stand_at_it() {
    Requirement.Builder two = job(
            Slot.regulator("in the bay", GaugePressure.ofBar(6.7)),
            Slot.coupling("outlet"),
            Slot.hose("hose", TEN_METRES),
            Slot.coupling("tool"))
        .highest(GaugePressure.ofBar(9.0))
        .toolRating(GaugePressure.ofBar(7.5))
        .automaticFeed();
    List<Part> catalogue = parts(regulator("large", 12.0), hose("wide hose", 10.0));
    assertThat(best(two.regulated().build(), catalogue).findings())
        .extracting(Finding::reason)
        .anyMatch(reason -> reason.startsWith("The dead-end pressure at the tool is 6.7 bar(g)"
            + " while the regulators hold and 9 bar(g) if they fail,"))
        .anyMatch(reason -> reason.contains("A relief valve behind the last regulator,"));
    assertThat(best(two.regulated().build(), catalogue).findings())
        .extracting(Finding::toString)
        .anyMatch(line -> line.contains("met while the regulators hold."))
        .noneMatch(line -> line.contains("while the regulator holds"));
    Requirement told = job(
            Slot.regulator("in the bay", GaugePressure.ofBar(6.7))
                .failingAt(GaugePressure.ofBar(6.8)),
            Slot.coupling("outlet"),
            Slot.hose("hose", TEN_METRES),
            Slot.coupling("tool"))
        .highest(GaugePressure.ofBar(9.0))
        .automaticFeed()
        .build();
    // 100 psi are 6.895 bar
    assertThat(best(told, catalogue).cautions())
        .extracting(Caution::title)
        .doesNotContain("Muzzle contact safety");
  }

  /** Two regulators below the 6 bar that the tool needs: raising one of them alone helps nothing. */
  @Test
  void two_regulators_that_are_both_set_too_low_are_told_together() {
    Requirement job = job(
            Slot.regulator("in the bay", GaugePressure.ofBar(4.0)),
            Slot.regulator("at the bench", GaugePressure.ofBar(5.0)),
            Slot.coupling("outlet"),
            Slot.hose("hose", TEN_METRES),
            Slot.coupling("tool"))
        .build();
    Selection.NothingFits none = (Selection.NothingFits)
        Selection.of(job, Catalogue.of(parts(regulator("large", 12.0), nipple())));
    assertThat(of(none.closest().get(0), Rule.AIR_AT_TOOL).reason())
        .contains("Each of these regulators is set too low, so that all must be set higher:"
            + " in the bay 4 bar(g), at the bench 5 bar(g);");
  }

  @Test
  void a_coupling_that_is_named_by_its_place_is_the_coupling_there() {
    Proposal best = best(
        job(
                Slot.coupling("at the wall"),
                Slot.hose("hose", TEN_METRES),
                Slot.coupling("at the bench"))
            .build(),
        parts(nipple()));
    assertThat(best.findings().get(0).reason())
        .startsWith("At the coupling at the wall profile ")
        .contains(", at the coupling at the bench profile ");
    assertThat(best.result().fold(RunResult.Delivered::shares, RunResult.Starved::before))
        .extracting(ElementLoss::name)
        .contains("coupling at the wall, part wide", "coupling at the bench, part wide");
  }

  /** Whatever the trade calls a coupling, its name says it once. */
  @Test
  void a_coupling_whose_name_tells_that_it_is_one_is_not_called_a_coupling_again() {
    Proposal best = best(
        job(
                Slot.coupling("coupler at the wall"),
                Slot.hose("hose", TEN_METRES),
                Slot.coupling("Quick connect").ofSameProfileAs("coupler at the wall"))
            .build(),
        parts(nipple()));
    assertThat(best.findings().get(0).reason())
        .startsWith("At the coupler at the wall profile ")
        .contains(", at the Quick connect profile ");
  }

  private static Part.Regulator regulator(String id, double c) {
    return new Part.Regulator(
        Shelf.steel(id),
        FlowCapacity.of(SonicConductance.ofCubicDecimetresPerSecondBar(c), 0.3),
        PressureDrop.ofBar(0.2),
        FreeAirFlow.ofAnrLitresPerSecond(10.0),
        End.parse("3/8 NPT female"),
        End.parse("3/8 NPT male"));
  }

  /** 7 bar(g) in front, set to 6.7: at the 10 L/s of the tool it holds 6.5, and couplings and hose take their share. */
  @Test
  void a_regulator_of_the_run_keeps_the_tool_within_its_limit_as_long_as_it_holds() {
    Slot.Regulated regulated = Slot.regulator("regulator", GaugePressure.ofBar(6.7));
    Requirement.Builder job = job(
            regulated,
            Slot.coupling("outlet"),
            Slot.hose("hose", TEN_METRES),
            Slot.coupling("tool"))
        .highest(GaugePressure.ofBar(8.5));
    Proposal proposal = best(
        job.toolRating(GaugePressure.ofBar(6.7)).build(),
        parts(regulator("small", 2.5), regulator("large", 12.0), hose("wide hose", 10.0)));
    assertThat(proposal.parts()).extracting(Part::id).startsWith("large", "wide");
    assertThat(proposal.regulator("regulator").id()).isEqualTo("large");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> proposal.regulator("hose"))
        .withMessage("slot must name a regulator of the layout (regulator, outlet, hose, tool), was"
            + " \"hose\"");
    Finding tool = of(proposal, Rule.TOOL_RATED);
    assertThat(tool.outcome()).isEqualTo(RuleOutcome.MET_WHILE_REGULATED);
    assertThat(tool.reason()).contains("6.7 bar(g) while the regulator holds and 8.5 bar(g)");
    assertThat(proposal.cautions()).extracting(Caution::title).contains("If the regulator fails");
    double behind =
        proposal.result().<Double>fold(fed -> fed.atToolGauge().bar(), starved -> Double.NaN);
    assertThat(behind).isBetween(6.2, 6.5);
    assertThat(proposal.result().working().toText()).contains("It holds", "Droop");
    assertThat(of(proposal, Rule.PARTS_RATED).reason())
        .as("a regulator can fail open: parts behind it see what is in front")
        .startsWith("Up to 8.5 bar(g) can occur");
    Selection weaker = Selection.of(
        job.toolRating(GaugePressure.ofBar(6.6)).build(),
        Catalogue.of(parts(regulator("large", 12.0), hose("wide hose", 10.0))));
    assertThat(weaker).isInstanceOf(Selection.NothingFits.class);
    assertThat(weaker.toString()).contains("must be set to at most 6.6 bar(g)");
  }

  /**
   * A regulator set above what feeds it lets the supply's highest through: that is what the tool sees while it holds.
   */
  @Test
  void a_regulator_set_too_high_protects_nothing() {
    Requirement job = job(
            Slot.regulator("regulator", GaugePressure.ofBar(9.0)),
            Slot.coupling("outlet"),
            Slot.hose("hose", TEN_METRES),
            Slot.coupling("tool"))
        .highest(GaugePressure.ofBar(8.5))
        .build();
    assertThat(job.pressuresAtTool().whileRegulated()).contains(GaugePressure.ofBar(8.5));
    Selection answer = Selection.of(job, Catalogue.of(parts(regulator("large", 12.0))));
    assertThat(answer).isInstanceOf(Selection.NothingFits.class);
    assertThat(Selection.of(job, Catalogue.of(Shelf.parts())).toString())
        .contains("The catalogue has no regulator: add one.");
  }

  @Test
  void a_set_point_is_above_nothing() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> Slot.regulator("regulator", GaugePressure.ofBar(0.0)))
        .withMessage("set point of regulator must be above 0 bar(g), was 0 bar(g)");
    assertThat(Slot.regulator("regulator", GaugePressure.ofBar(6.0)).with(regulator("there", 6.0)))
        .hasToString("regulator: set to 6 bar(g), it is part there");
  }

  @Test
  void a_run_without_couplings_is_a_run_too() {
    Proposal bare = best(
        job(Slot.hose("hose", TEN_METRES)).dragged().build(),
        List.of(
            hose("long", 10.0),
            Shelf.adapter("reducer", "3/8 NPT female", "1/4 NPT male"),
            Shelf.adapter("socket", "3/8 NPT female", "3/8 NPT female")));
    assertThat(bare.parts()).extracting(Part::id).containsExactly("socket", "long", "reducer");
    for (Rule rule : List.of(Rule.PROFILE_MATES, Rule.SLEEVE_GUARDED)) {
      assertThat(of(bare, rule).outcome()).isEqualTo(RuleOutcome.DOES_NOT_APPLY);
    }
  }

  @Test
  void a_part_is_found_by_the_name_of_its_slot() {
    Proposal proposal = best(Shelf.job().build(), Shelf.parts());
    assertThat(proposal.socket("outlet").id()).isEqualTo("wide");
    assertThat(proposal.plug("tool").id()).isEqualTo("tool plug");
    assertThat(proposal.hose("hose").id()).isEqualTo("10 mm hose");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> proposal.hose("outlet"))
        .withMessage("slot must name a hose of the layout (outlet, hose, tool), was \"outlet\"");
  }

  @Test
  void a_layout_that_cannot_be_is_refused_with_what_to_do() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> Layout.of(List.of()))
        .withMessageContaining("at least one, were none");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> Layout.of(List.of(Slot.coupling("a"), Slot.hose("a", TEN_METRES))))
        .withMessage("names of slots must differ, was \"a\" again; say which, such as \"a 2\"");
    assertThatIllegalArgumentException().isThrownBy(() -> Slot.coupling(" "));
    assertThatIllegalArgumentException()
        .isThrownBy(() -> job(Slot.hose("hose", TEN_METRES)).reach(TEN_METRES).build())
        .withMessage(
            "reach must not be told beside a layout, was told too; say it to a slot of the layout");
    Layout named = Layout.ofHose(TEN_METRES);
    assertThat(named.slot("hose")).contains(Slot.hose("hose", TEN_METRES));
    assertThat(named.slot("reel")).isEqualTo(Optional.empty());
  }

  @Test
  void a_slot_is_replaced_in_a_line_too_and_all_else_stays() {
    Layout before = Layout.of(
        List.of(Slot.hose("first", TEN_METRES), Slot.splitter("tee")),
        List.of(ToolLine.to(
                "sander",
                Shelf.job().build().demand(),
                Shelf.job().build().least(),
                End.parse("1/4 NPT female"),
                List.of(Slot.coupling("wall"), Slot.hose("second", TEN_METRES)))
            .alike(2)));
    Slot.Hose longer = Slot.hose("second", Length.ofMetres(12.0));
    Layout after = before.replacing("second", longer);
    assertThat(after.slot("second")).contains(longer);
    assertThat(after.slot("first")).isEqualTo(before.slot("first"));
    assertThat(after.lines().get(0).count()).isEqualTo(2);
    assertThat(after.lines().get(0).slots().get(0)).isEqualTo(Slot.coupling("wall"));
    assertThat(after.replacing("second", Slot.hose("second", TEN_METRES))).isEqualTo(before);
    assertThatIllegalArgumentException()
        .isThrownBy(() -> before.replacing("third", longer))
        .withMessage(
            "name must be that of a slot of the layout (first, tee; 2 lines to sander: wall,"
                + " second), was \"third\"");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> before.lines().get(0).with(List.of()))
        .withMessageContaining("slots of the line to sander must be at least one");
  }

  @Test
  @SuppressWarnings("NullAway") // that is the point
  void a_hose_without_a_name_or_with_null_is_refused() {
    Range<Length> reach = Range.exactly(TEN_METRES);
    Optional<Length> most = Optional.empty();
    Optional<HoseBore> bore = Optional.empty();
    Optional<Part.Hose> there = Optional.empty();
    assertThatIllegalArgumentException()
        .isThrownBy(() -> Slot.hose(" ", reach))
        .withMessage("name of a slot must say which it is, was \" \"");
    assertThatNullPointerException()
        .isThrownBy(() -> Slot.hose("hose", (Range<Length>) null))
        .withMessage("reach");
    assertThatNullPointerException()
        .isThrownBy(() -> new Slot.Hose(null, reach, false, most, bore, there))
        .withMessage("name");
    assertThatNullPointerException()
        .isThrownBy(() -> new Slot.Hose("hose", null, false, most, bore, there))
        .withMessage("reachRange");
    assertThatNullPointerException()
        .isThrownBy(() -> new Slot.Hose("hose", reach, false, most, null, there))
        .withMessage("bore");
    assertThatNullPointerException()
        .isThrownBy(() -> new Slot.Hose("hose", reach, false, most, bore, null))
        .withMessage("hose");
    assertThatNullPointerException()
        .isThrownBy(() -> Slot.hose("hose", reach).ofBore(null))
        .withMessage("said");
  }

  @Test
  void a_hose_of_one_bore_takes_none_of_another() {
    Slot.Hose slot = Slot.hose("hose", TEN_METRES).ofBore(HoseBore.parse("9.5 mm"));
    List<Part> parts = List.of(
        Shelf.hose(Shelf.steel("cheap").withPrice(Money.parse("1 EUR")), 12.7, 10.0),
        Shelf.hose(Shelf.steel("dear").withPrice(Money.parse("9 EUR")), 9.5, 10.0));
    Requirement job = job(slot)
        .outlet(End.parse("3/8 NPT female"))
        .toolInlet(End.parse("3/8 NPT female"))
        .build();
    assertThat(best(job, parts).hose("hose").id()).isEqualTo("dear");
    assertThat(slot).hasToString("hose: hose of 9.5 mm bore and of at least 10 m");
    Selection none = Selection.of(job, Catalogue.of(parts.subList(0, 1)));
    assertThat(none.<List<String>>fold(fits -> List.of(), Selection.NothingFits::toGive))
        .containsExactly("The catalogue has no hose of 9.5 mm bore: add one.");
    Slot.Hose there = slot.with((Part.Hose) parts.get(0));
    assertThat(there.bore()).isEmpty();
    assertThatIllegalArgumentException()
        .isThrownBy(() -> there.ofBore(HoseBore.parse("9.5 mm")))
        .withMessage(
            "bore of hose must not be told beside the hose that is there, was 9.5 mm; leave"
                + " out one of the two");
  }

  private static Part.Device lubricator() {
    return new Part.Device(
        Shelf.steel("lubricator"),
        DeviceKind.LUBRICATOR,
        FlowCapacity.of(SonicConductance.ofCubicDecimetresPerSecondBar(9.0), 0.3),
        End.parse("3/8 NPT female"),
        End.parse("3/8 NPT female"));
  }

  private static Requirement.Builder oiled(Slot... more) {
    List<Slot> slots = new ArrayList<>(List.of(Slot.inLine("oiler", lubricator())));
    slots.addAll(List.of(more));
    return Requirement.forTool(Shelf.job().build().demand(), Shelf.job().build().least())
        .supply(Shelf.SUPPLY, Shelf.ATMOSPHERE)
        .outlet(End.parse("3/8 NPT male"))
        .toolInlet(End.parse("1/4 NPT female"))
        .environment(Environment.INDOORS)
        .layout(Layout.of(slots));
  }

  /** A filter that is kept for dry air belongs in front of the lubricator, and never behind it. */
  @Test
  void a_lubricator_oils_only_what_stands_behind_it() {
    Slot filter = Slot.inLine(
        "filter",
        new Part.Device(
            Shelf.steel("dry filter").withLubrication(Lubrication.DRY),
            DeviceKind.FILTER,
            FlowCapacity.of(SonicConductance.ofCubicDecimetresPerSecondBar(9.0), 0.3),
            End.parse("3/8 NPT female"),
            End.parse("3/8 NPT male")));
    Slot oiler = Slot.inLine("oiler", lubricator());
    for (boolean isInFront : new boolean[] {true, false}) {
      List<Slot> slots =
          new ArrayList<>(isInFront ? List.of(filter, oiler) : List.of(oiler, filter));
      slots.addAll(
          List.of(Slot.coupling("outlet"), Slot.hose("hose", TEN_METRES), Slot.coupling("tool")));
      Requirement job = oiled().layout(Layout.of(slots)).build();
      Selection found = Selection.of(job, Catalogue.of(parts(nipple())));
      Proposal shown =
          found.fold(fitting -> fitting.best(), nothing -> nothing.closest().get(0));
      Finding apart = of(shown, Rule.AIR_KEPT_APART);
      assertThat(apart.outcome()).isEqualTo(isInFront ? RuleOutcome.MET : RuleOutcome.UNMET);
      assertThat(apart.reason())
          .contains(
              isInFront
                  ? "In front of the lubricator may stand what is kept for dry air: part dry filter."
                  : "The line is lubricated, kept for the other kind: part dry filter.");
    }
  }

  /** Nobody need be asked whether the line has a lubricator where one stands in its layout. */
  @Test
  void a_lubricator_in_the_layout_oils_the_line() {
    Slot[] usual = {Slot.coupling("outlet"), Slot.hose("hose", TEN_METRES), Slot.coupling("tool")};
    Requirement job = oiled(usual).build();
    assertThat(job.lubrication()).contains(Lubrication.LUBRICATED);
    assertThat(of(best(job, parts(nipple())), Rule.AIR_KEPT_APART).outcome())
        .isEqualTo(RuleOutcome.MET);
    assertThat(JobFindings.of(oiled(usual).painting().build()).findings())
        .filteredOn(finding -> finding.rule() == Rule.SAFETY_RULES_ALLOW)
        .singleElement()
        .satisfies(finding -> {
          assertThat(finding.outcome()).isEqualTo(RuleOutcome.UNMET);
          assertThat(finding.reason()).contains("A lubricated line must not feed painting");
        });
    assertThatIllegalArgumentException()
        .isThrownBy(() -> oiled(usual).lubrication(Lubrication.DRY).build())
        .withMessageStartingWith("lubrication must be lubricated where a lubricator stands");
    assertThat(oiled(usual).lubrication(Lubrication.LUBRICATED).build()).isNotNull();
  }

  @Test
  void no_coupling_sits_on_a_percussion_tool_that_a_hose_goes_to() {
    Part.Adapter reducer = Shelf.adapter("reducer", "3/8 NPT female", "1/4 NPT male");
    Proposal direct = best(
        job(Slot.coupling("outlet"), Slot.hose("hose", TEN_METRES)).impactTool().build(),
        parts(hose("rubber", 10.0), reducer));
    assertThat(of(direct, Rule.WHIP_HOSE).outcome()).isEqualTo(RuleOutcome.MET);
    assertThat(titles(direct.cautions())).doesNotContain("Whip hose");
    assertThat(of(direct, Rule.WHIP_HOSE).reason())
        .isEqualTo("part rubber goes straight to the tool; no coupling sits on it.");
  }

  private static List<String> titles(List<Caution> cautions) {
    return cautions.stream().map(Caution::title).toList();
  }

  /** A caution that asks for a whip hose is not true beside a layout that has one. */
  @Test
  void cautions_speak_of_what_the_layout_has() {
    Slot[] usual = {Slot.coupling("outlet"), Slot.hose("hose", TEN_METRES), Slot.coupling("tool")};
    Slot[] withWhip = {
      usual[0], usual[1], usual[2], Slot.whipHose("whip hose", Length.ofMetres(0.5))
    };
    assertThat(titles(JobFindings.of(job(usual).impactTool().build()).cautions()))
        .contains("Whip hose", "Depressurise before uncoupling", "Whip restraint");
    assertThat(titles(JobFindings.of(job(withWhip).impactTool().build()).cautions()))
        .doesNotContain("Whip hose")
        .contains("Depressurise before uncoupling", "Whip restraint");
    assertThat(titles(JobFindings.of(job(usual[1]).build()).cautions()))
        .doesNotContain("Depressurise before uncoupling")
        .contains("Whip restraint");
    assertThat(titles(JobFindings.of(job(usual[0]).build()).cautions()))
        .contains("Depressurise before uncoupling")
        .doesNotContain("Whip restraint");
  }

  @Test
  void a_rule_against_quick_couplers_forbids_no_run_that_has_none() {
    SafetyRules own = SafetyRules.ofTable("""
        jurisdiction,citation,text,source,basis,asks,when
        Yard,rule 3,no quick couplers here,notice board,read,forbids,quick couplers
        """);
    Proposal bare = best(
        job(Slot.hose("hose", TEN_METRES)).rules(own).build(),
        List.of(
            hose("long", 10.0),
            Shelf.adapter("reducer", "3/8 NPT female", "1/4 NPT male"),
            Shelf.adapter("socket", "3/8 NPT female", "3/8 NPT female")));
    assertThat(of(bare, Rule.SAFETY_RULES_ALLOW).outcome()).isEqualTo(RuleOutcome.DOES_NOT_APPLY);
    Requirement coupled = job(
            Slot.coupling("outlet"), Slot.hose("hose", TEN_METRES), Slot.coupling("tool"))
        .rules(own)
        .build();
    assertThat(Selection.of(coupled, Catalogue.of(Shelf.parts())))
        .isInstanceOf(Selection.NothingFits.class);
  }

  /** Thirty-one hoses with three adapters at each of thirty-two joints are 127 pieces. */
  @Test
  void a_layout_holds_at_most_127_pieces() {
    assertThatCode(() -> Layout.of(hoses(31))).doesNotThrowAnyException();
    assertThatIllegalArgumentException()
        .isThrownBy(() -> Layout.of(hoses(32)))
        .withMessageContaining("at most 127 pieces with 3 adapters at every joint, were 32 slots");
  }

  private static List<Slot> hoses(int count) {
    return IntStream.range(0, count)
        .<Slot>mapToObj(i -> Slot.hose("hose " + i, TEN_METRES))
        .toList();
  }
}
