package org.airfit.network;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.assertThatNullPointerException;

import java.util.List;
import java.util.Optional;
import java.util.function.UnaryOperator;
import org.airfit.air.AirState;
import org.airfit.joint.End;
import org.airfit.line.Conduit;
import org.airfit.line.Wall;
import org.airfit.plant.Compressor;
import org.airfit.plant.Regulator;
import org.airfit.plant.Supply;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.Length;
import org.airfit.quantity.Temperature;
import org.airfit.quantity.Volume;
import org.airfit.run.ToolDemand;
import org.airfit.safety.Caution;
import org.airfit.safety.Judgement;
import org.airfit.safety.Ruling;
import org.airfit.safety.SafetyRules;
import org.airfit.safety.Situation;
import org.airfit.select.JobFindings;
import org.airfit.select.Lubrication;
import org.airfit.select.Requirement;
import org.junit.jupiter.api.Test;

/** What the tools of a network do is judged by the rules that judge a job, and told with the name of the tool. */
class WorkInNetworksTest {

  private static final AbsolutePressure ATMOSPHERE = AbsolutePressure.STANDARD_ATMOSPHERE;
  private static final FreeAirFlow FLOW = FreeAirFlow.ofScfm60F(10.0);
  private static final String DEFERENCE = "Before anyone connects this";

  private static AirState psig(double psi) {
    return AirState.of(GaugePressure.ofPsi(psi).absolute(ATMOSPHERE), Temperature.ofCelsius(20.0));
  }

  private static ToolDemand tool(String name) {
    return ToolDemand.fixed(name, FLOW);
  }

  private static Network.Builder shop() {
    return Network.at(ATMOSPHERE)
        .supply("main", Supply.fixed(psig(120.0)))
        .line("north", "main", "bay", pipe(Wall.COMMERCIAL_STEEL))
        .line("south", "main", "booth", pipe(Wall.COMMERCIAL_STEEL));
  }

  private static Conduit pipe(Wall wall) {
    return Conduit.of(Length.ofMillimetres(20.0), Length.ofMetres(10.0), wall);
  }

  private static NetworkResult.Solved solved(Network.Builder builder) {
    return (NetworkResult.Solved) builder.build().solve();
  }

  private static List<String> titles(List<Caution> cautions) {
    return cautions.stream().map(Caution::title).toList();
  }

  private static Situation work(UnaryOperator<Situation.Builder> known) {
    return known.apply(Situation.describe()).build();
  }

  private static Requirement job(UnaryOperator<Requirement.Builder> told) {
    return told.apply(Requirement.forTool(FLOW, GaugePressure.ofPsi(90.0))
            .supply(psig(120.0), ATMOSPHERE)
            .outlet(End.parse("1/2 NPT female"))
            .toolInlet(End.parse("1/4 NPT female"))
            .reach(Length.ofMetres(5.0)))
        .build();
  }

  /** The same work, told of a job and of a tool on the same line with the same couplers, has the same warnings. */
  private static void haveTheSameWarnings(
      UnaryOperator<Requirement.Builder> ofJob, UnaryOperator<Situation.Builder> ofTool) {
    Requirement job = job(ofJob);
    ToolFlow inNetwork = solved(shop()
            .rules(job.rules())
            .situation(work(Situation.Builder::quickCouplers))
            .tool("bay", tool("tool"), work(known -> ofTool.apply(known.toolOnHose()))))
        .tools()
        .get(0);
    List<Caution> cautions = JobFindings.of(job).cautions();
    assertThat(inNetwork.cautions()).isEqualTo(cautions);
    assertThat(cautions).hasSizeGreaterThan(1);
  }

  @Test
  void a_network_warns_of_the_same_work_as_a_job() {
    haveTheSameWarnings(told -> told, known -> known);
    haveTheSameWarnings(Requirement.Builder::painting, Situation.Builder::painting);
    haveTheSameWarnings(Requirement.Builder::blasting, Situation.Builder::blasting);
    haveTheSameWarnings(Requirement.Builder::impactTool, Situation.Builder::impactTool);
    haveTheSameWarnings(
        told -> told.impactTool().whipHose(), known -> known.impactTool().whipHose());
    haveTheSameWarnings(Requirement.Builder::automaticFeed, Situation.Builder::automaticFeed);
    haveTheSameWarnings(Requirement.Builder::blowGun, Situation.Builder::cleaning);
    haveTheSameWarnings(
        told -> told.blowGun(GaugePressure.ofPsi(29.0)),
        known -> known.cleaning(GaugePressure.ofPsi(29.0)));
    haveTheSameWarnings(
        told -> told.painting().lubrication(Lubrication.LUBRICATED),
        known -> known.painting().lubricatedLine());
    haveTheSameWarnings(
        told -> told.rules(SafetyRules.bundled().in("GB")).blowGun(), known -> known.cleaning());
  }

  @Test
  void each_warning_names_the_tools_that_it_speaks_of_and_codes_and_makers_come_last() {
    NetworkResult.Solved result = solved(shop()
        .situation(work(Situation.Builder::quickCouplers))
        .tool("booth", tool("spray gun"), work(Situation.Builder::painting))
        .tool("bay", tool("chisel"), work(Situation.Builder::impactTool))
        .tool("main", tool("riveting hammer"), work(Situation.Builder::impactTool))
        .tool("main", tool("drill")));
    assertThat(titles(result.cautions()))
        .containsExactly(
            Caution.MORE_SUPPLY_PRESSURE.title(),
            "Depressurise before uncoupling",
            "Retainer on percussion tools (chisel at bay; riveting hammer at main)",
            "Whip hose (chisel at bay; riveting hammer at main)",
            "Oil in a paint line (spray gun at booth)",
            DEFERENCE);
    assertThat(titles(result.tools().get(1).cautions()))
        .containsExactly(
            "Depressurise before uncoupling",
            "Retainer on percussion tools",
            "Whip hose",
            DEFERENCE);
    assertThat(titles(result.tools().get(3).cautions()))
        .containsExactly("Depressurise before uncoupling", DEFERENCE);
  }

  @Test
  void blasting_asks_for_a_dead_man_valve_and_air_for_the_hood() {
    List<Caution> cautions = solved(
            shop().tool("bay", tool("blast pot"), work(Situation.Builder::blasting)))
        .cautions();
    assertThat(cautions)
        .filteredOn(caution -> caution.title().equals("Blasting nozzle (blast pot at bay)"))
        .singleElement()
        .satisfies(caution -> {
          assertThat(caution.text()).contains("dead-man valve");
          assertThat(caution.source().citation()).isEqualTo("29 CFR 1910.244(b)");
        });
    assertThat(titles(cautions)).contains("Air for a blaster's hood (blast pot at bay)");
  }

  /** 29 CFR 1926.302(b)(7): more than 1/2 in inside diameter. */
  @Test
  void a_wide_hose_at_a_tool_asks_for_protection_against_its_failure() {
    NetworkResult.Solved result = solved(shop()
        .tool("bay", tool("a"), work(known -> known.toolOnHose(Length.ofInches(0.5))))
        .tool("booth", tool("b"), work(known -> known.toolOnHose(Length.ofInches(0.51)))));
    assertThat(titles(result.cautions()))
        .contains("Hose failure protection (b at booth)", "Connection restraint (every tool)");
  }

  @Test
  void what_is_told_of_the_whole_line_holds_for_every_tool_and_is_told_once() {
    NetworkResult.Solved result = solved(shop()
        .situation(work(known -> known.lubricatedLine().hoseInMine(Length.ofInches(1.0))))
        .tool("bay", tool("drill"))
        .tool("booth", tool("spray gun"), work(Situation.Builder::painting)));
    assertThat(titles(result.cautions()))
        .containsOnlyOnce(
            "Hose restraint (surface coal mines)", "Master air valve (metal and nonmetal mines)")
        .contains("Oiled air to a paint gun (spray gun at booth)")
        .noneMatch(title -> title.contains("drill"));
    assertThat(result.tools().get(0).rulings())
        .extracting(Ruling::judgement)
        .doesNotContain(Judgement.NOT_ALLOWED);
    assertThat(result.tools().get(1).rulings())
        .filteredOn(ruling -> ruling.judgement() == Judgement.NOT_ALLOWED)
        .extracting(ruling -> ruling.rule().title())
        .containsExactly("Oiled air to a paint gun");
  }

  private static SafetyRules own(String quantity, String limit) {
    return SafetyRules.ofTable("""
        jurisdiction,citation,text,title,quantity,operator,limit,unit,asks,when,source,basis
        Tern Creek yard,rule 9,not on this line,Yard rule,%s,%s,forbids,blasting,notice board,read
        """.formatted(quantity, limit));
  }

  @Test
  void a_rule_of_the_works_that_forbids_is_told_for_a_network_as_for_a_job() {
    SafetyRules noBlasting = SafetyRules.usFederal().with(own("", ",,"));
    NetworkResult.Solved result = solved(shop()
        .rules(noBlasting)
        .tool("bay", tool("blast pot"), work(Situation.Builder::blasting))
        .tool("booth", tool("drill")));
    assertThat(titles(result.cautions())).contains("Yard rule (blast pot at bay)");
    assertThat(titles(
            JobFindings.of(job(told -> told.blasting().rules(noBlasting))).cautions()))
        .contains("Yard rule");
    assertThat(result.cautions())
        .last()
        .satisfies(caution -> assertThat(caution.text())
            .contains("It was judged by rules of US federal law, Tern Creek yard"));
    Network without = shop()
        .rules(SafetyRules.usFederal())
        .tool("bay", tool("blast pot"), work(Situation.Builder::blasting))
        .build();
    assertThat(titles(without.solve().cautions())).noneMatch(title -> title.contains("Yard"));
    assertThat(without.rules()).isEqualTo(SafetyRules.usFederal());
    assertThat(without)
        .isNotEqualTo(shop()
            .rules(noBlasting)
            .tool("bay", tool("blast pot"), work(Situation.Builder::blasting))
            .build());
  }

  /** Whether a rule that forbids more than some psi in the line forbids the work. */
  private static boolean forbidden(Network.Builder builder, double psi) {
    return solved(builder
            .rules(own("line pressure", "<=," + psi + ",psi"))
            .tool("bay", tool("blast pot"), work(Situation.Builder::blasting)))
        .tools()
        .get(0)
        .rulings()
        .stream()
        .anyMatch(ruling -> ruling.judgement() == Judgement.NOT_ALLOWED);
  }

  @Test
  void the_highest_pressure_of_any_supply_is_judged() {
    assertThat(forbidden(shop(), 119.9)).isTrue();
    assertThat(forbidden(shop(), 120.1)).isFalse();
    assertThat(forbidden(shop().supply("booth", Supply.fixed(psig(110.0))), 120.1))
        .isFalse();
    assertThat(forbidden(shop().supply("booth", Supply.fixed(psig(130.0))), 129.9))
        .isTrue();
    assertThat(forbidden(shop().highest(GaugePressure.ofPsi(150.0)), 149.9)).isTrue();
    assertThat(forbidden(shop().highest(GaugePressure.ofPsi(150.0)), 150.1)).isFalse();
    assertThatIllegalArgumentException()
        .isThrownBy(() -> shop().highest(GaugePressure.ofPsi(119.0)).build())
        .withMessageContaining("highest");
  }

  @Test
  void a_compressor_is_judged_at_its_cut_out_and_a_regulator_failed_open() {
    Compressor compressor = new Compressor(
        List.of(
            new Compressor.Point(psig(60.0).pressure(), FreeAirFlow.ofScfm60F(90.0)),
            new Compressor.Point(psig(160.0).pressure(), FreeAirFlow.ofScfm60F(80.0))),
        psig(90.0).pressure(),
        psig(140.0).pressure(),
        Volume.ofLitres(500.0),
        Temperature.ofCelsius(20.0));
    assertThat(forbidden(shop().supply("booth", compressor), 139.9)).isTrue();
    assertThat(forbidden(shop().supply("booth", compressor), 140.1)).isFalse();
    Regulator held = new Regulator(
        psig(100.0),
        FreeAirFlow.ofScfm60F(50.0),
        psig(95.0).pressure(),
        Optional.of(psig(170.0).pressure()));
    assertThat(forbidden(shop().supply("booth", held), 169.9)).isTrue();
    assertThat(forbidden(shop().supply("booth", held), 170.1)).isFalse();
  }

  @Test
  void behind_a_regulator_of_which_nothing_is_known_work_is_not_judged_by_a_guess() {
    Regulator regulator =
        new Regulator(psig(100.0), FreeAirFlow.ofScfm60F(50.0), psig(95.0).pressure());
    assertThat(
            shop().supply("booth", regulator).tool("bay", tool("drill")).build().solve())
        .isInstanceOf(NetworkResult.Solved.class);
    assertThatIllegalArgumentException()
        .isThrownBy(() -> shop()
            .supply("booth", regulator)
            .tool("bay", tool("gun"), work(Situation.Builder::cleaning))
            .build())
        .withMessage("pressure in front of the regulator at booth must be told where the work is"
            + " judged, was missing; say highest(…), or give it to the regulator");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> shop()
            .supply("booth", regulator)
            .situation(work(Situation.Builder::quickCouplers))
            .build())
        .withMessageStartingWith("pressure in front of the regulator at booth");
    assertThat(
            forbidden(shop().supply("booth", regulator).highest(GaugePressure.ofPsi(150.0)), 149.9))
        .isTrue();
  }

  @Test
  void a_compressor_that_cuts_in_below_the_atmosphere_is_refused() {
    Compressor vacuum = new Compressor(
        List.of(
            new Compressor.Point(AbsolutePressure.ofBar(0.5), FreeAirFlow.ofScfm60F(90.0)),
            new Compressor.Point(AbsolutePressure.ofBar(9.0), FreeAirFlow.ofScfm60F(80.0))),
        AbsolutePressure.ofBar(0.9),
        AbsolutePressure.ofBar(8.0),
        Volume.ofLitres(500.0),
        Temperature.ofCelsius(20.0));
    assertThatIllegalArgumentException().isThrownBy(() -> shop().supply("booth", vacuum));
  }

  /** A nailer is judged at the pressure of the compressor that is fitted, not at that of the one taken away. */
  @Test
  void another_supply_feeds_the_network_and_the_work_is_judged_by_its_pressure() {
    Situation nailer = work(Situation.Builder::automaticFeed);
    Network weak = Network.at(ATMOSPHERE)
        .supply("main", Supply.fixed(psig(95.0)))
        .line("south", "main", "booth", pipe(Wall.COMMERCIAL_STEEL))
        .tool("booth", tool("nailer"), nailer)
        .build();
    GaugePressure cutOut = GaugePressure.ofPsi(125.0);
    Network strong = weak.replacing("main", Supply.fixed(psig(110.0)), cutOut);
    assertThat(strong)
        .isEqualTo(Network.at(ATMOSPHERE)
            .supply("main", Supply.fixed(psig(110.0)))
            .highest(cutOut)
            .line("south", "main", "booth", pipe(Wall.COMMERCIAL_STEEL))
            .tool("booth", tool("nailer"), nailer)
            .build());
    assertThat(strong.supplies().get("main")).isEqualTo(Supply.fixed(psig(110.0)));
    String muzzle = "Muzzle contact safety (nailer at booth)";
    assertThat(titles(weak.solve().cautions())).doesNotContain(muzzle);
    assertThat(titles(strong.solve().cautions())).contains(muzzle);
    assertThatIllegalArgumentException()
        .isThrownBy(() -> weak.replacing("booth", Supply.fixed(psig(110.0)), cutOut))
        .withMessage("node must be that of a supply of this network, was \"booth\"");
    assertThatIllegalArgumentException()
        .isThrownBy(
            () -> weak.replacing("main", Supply.fixed(psig(110.0)), GaugePressure.ofPsi(109.0)));
  }

  @Test
  void a_network_that_is_not_solved_has_its_warnings_all_the_same() {
    NetworkResult none = shop()
        .tool("island", tool("blast pot"), work(Situation.Builder::blasting))
        .build()
        .solve();
    assertThat(none).isInstanceOf(NetworkResult.NoSolution.class);
    assertThat(titles(none.cautions()))
        .contains("Blasting nozzle (blast pot at island)")
        .endsWith(DEFERENCE);
    assertThat(none)
        .isNotEqualTo(shop().tool("island", tool("blast pot")).build().solve());
  }

  @Test
  @SuppressWarnings("NullAway") // what a caller without null checks could pass
  void null_is_refused_by_name() {
    Network.Builder builder = shop();
    assertThatNullPointerException()
        .isThrownBy(() -> builder.tool("bay", tool("drill"), null))
        .withMessage("work");
    assertThatNullPointerException().isThrownBy(() -> builder.situation(null)).withMessage("known");
    assertThatNullPointerException().isThrownBy(() -> builder.rules(null)).withMessage("judging");
    assertThatNullPointerException()
        .isThrownBy(() -> builder.highest(null))
        .withMessage("pressure");
    assertThatNullPointerException()
        .isThrownBy(() -> Situation.describe().build().with(null))
        .withMessage("more");
  }
}
