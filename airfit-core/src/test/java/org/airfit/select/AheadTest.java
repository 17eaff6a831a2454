package org.airfit.select;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Set;
import org.airfit.flow.FlowCapacity;
import org.airfit.joint.End;
import org.airfit.line.Conduit;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.Length;
import org.airfit.quantity.Money;
import org.airfit.quantity.PressureDrop;
import org.airfit.quantity.SonicConductance;
import org.airfit.quantity.Temperature;
import org.junit.jupiter.api.Test;

/**
 * What the search knows of the way that is left, on jobs small enough to name its cheapest parts and to reckon its
 * pressure by hand. A bound that is too low finds the same later; one that is too high would lose what fits.
 */
class AheadTest {

  private static final End FEMALE = End.parse("3/8 NPT female");
  private static final End MALE = End.parse("3/8 NPT male");

  /** What none of these parts joins. */
  private static final End STRANGE = End.parse("G 2 male");

  private static PartFacts priced(String id, String euros) {
    return Shelf.steel(id).withPrice(Money.parse(euros + " EUR"));
  }

  private static Requirement.Builder job(double bar, Slot... slots) {
    return Shelf.cheapest(
            Requirement.forTool(FreeAirFlow.ofAnrLitresPerSecond(10.0), GaugePressure.ofBar(bar))
                .toolInlet(End.parse("1/4 NPT female")))
        .layout(Layout.of(List.of(slots)));
  }

  private static Stock stock(Requirement.Builder job, List<? extends Part> parts) {
    return new Stock(job.build(), Catalogue.of(parts), Selection.LISTED);
  }

  private static Ahead ahead(
      Requirement.Builder job, Stock stock, int leg, boolean isWhole, Ahead... lines) {
    Leg there = stock.legs().get(leg);
    return new Ahead(
        there,
        stock.adapters(there, isWhole),
        new SearchAir(job.build(), Known.AT_BEST),
        new SearchAir(job.build(), Known.AT_WORST),
        isWhole,
        List.of(lines));
  }

  private static Ahead ahead(Requirement.Builder job, Stock stock, boolean isWhole) {
    return ahead(job, stock, 0, isWhole);
  }

  /** What parts cost together. */
  private static long cost(Part... parts) {
    long sum = 0L;
    for (Part part : parts) {
      sum += Objective.LOWEST_PRICE.cost(part.facts());
    }
    return sum;
  }

  private static final Part FINCH =
      Shelf.socket(priced("finch", "5"), "finch", "3/8 NPT female", 9.0);
  private static final Part WREN = Shelf.socket(priced("wren", "9"), "wren", "3/8 NPT female", 9.0);
  private static final Part FINCH_PLUG =
      Shelf.plug(priced("finch plug", "3"), "finch", "3/8 NPT female");
  private static final Part WREN_PLUG =
      Shelf.plug(priced("wren plug", "1"), "wren", "3/8 NPT female");
  private static final Part FINCH_TOOL =
      Shelf.plug(priced("finch tool", "2"), "finch", "1/4 NPT male");
  private static final Part WREN_TOOL =
      Shelf.plug(priced("wren tool", "6"), "wren", "1/4 NPT male");
  private static final Part HOSE = Shelf.hose(priced("hose", "20"), 9.5, 10.0);
  private static final Part LONG = Shelf.hose(priced("long", "30"), 9.5, 15.0);

  private static final List<Part> COUPLED =
      List.of(FINCH, WREN, FINCH_PLUG, WREN_PLUG, FINCH_TOOL, WREN_TOOL, HOSE, LONG);

  private static Requirement.Builder coupled() {
    return job(
        6.2,
        Slot.coupling("outlet"),
        Slot.hose("hose", Length.ofMetres(10.0)),
        Slot.coupling("tool"));
  }

  /** By hand: 5 + 3 of the finch are less than 9 + 1 of the wren, and at the tool 5 + 2 less than 9 + 6. */
  @Test
  void the_cheapest_way_on_is_that_of_the_cheapest_parts_that_go_together() {
    Stock stock = stock(coupled(), COUPLED);
    Ahead ahead = ahead(coupled(), stock, true);
    long atTool = cost(FINCH, FINCH_TOOL);
    assertThat(ahead.cost(0, stock.outlet()))
        .isEqualTo(cost(FINCH, FINCH_PLUG, HOSE) + atTool)
        .isEqualTo(ahead.cost(0, stock.outlet()));
    assertThat(ahead.cost(1, Set.of("finch"))).isEqualTo(cost(FINCH_PLUG, HOSE) + atTool);
    assertThat(ahead.cost(1, Set.of("wren"))).isEqualTo(cost(WREN_PLUG, HOSE) + atTool);
    assertThat(ahead.cost(1, Set.of("wren", "finch")))
        .as("a socket that takes both")
        .isEqualTo(cost(WREN_PLUG, HOSE) + atTool);
    assertThat(ahead.cost(1, Set.of("owl"))).as("no plug has it").isEqualTo(Ahead.NEVER);
  }

  /** By hand: with the wren alone, 9 + 1 at the outlet and 9 + 6 at the tool, though the finch is cheaper at both. */
  @Test
  void the_cheapest_way_on_of_some_profiles_takes_no_other() {
    Stock stock = stock(coupled(), COUPLED);
    Ahead ahead = ahead(coupled(), stock, true);
    assertThat(ahead.costsOf(Set.of("wren")).from(0, stock.outlet()))
        .isEqualTo(cost(WREN, WREN_PLUG, HOSE, WREN, WREN_TOOL));
    assertThat(ahead.costsOf(Set.of("wren", "finch")).from(0, stock.outlet()))
        .as("with both it is that of any")
        .isEqualTo(ahead.cost(0, stock.outlet()));
    assertThat(ahead.costsOf(Set.of("owl")).from(0, stock.outlet()))
        .as("no coupling has it")
        .isEqualTo(Ahead.NEVER);
  }

  /** By hand: 2 + 3 + 1 of three reducers are less than 10 of one; a fourth in a row is never put on. */
  @Test
  void adapters_are_counted_with_the_cheapest_row_of_them() {
    Requirement.Builder job =
        job(6.2, Slot.hose("hose", Length.ofMetres(10.0))).outlet(STRANGE).toolInlet(FEMALE);
    Part one = adapter("one", "10", "G 2 female", "3/8 NPT female");
    Part first = adapter("first", "2", "G 2 female", "G 1 female");
    Part second = adapter("second", "3", "G 1 male", "G 1/2 female");
    Part third = adapter("third", "1", "G 1/2 male", "3/8 NPT female");
    Part fourth = adapter("fourth", "0.50", "G 1/4 male", "3/8 NPT female");
    Part between = adapter("between", "0.10", "G 1/2 male", "G 1/4 female");
    Stock single = stock(job, List.of(HOSE, one));
    assertThat(ahead(job, single, true).cost(0, single.outlet())).isEqualTo(cost(one, HOSE));
    Stock both = stock(job, List.of(HOSE, one, first, second, third));
    assertThat(ahead(job, both, true).cost(0, both.outlet()))
        .isEqualTo(cost(first, second, third, HOSE));
    Stock four = stock(job, List.of(HOSE, first, second, between, fourth));
    assertThat(ahead(job, four, true).cost(0, four.outlet())).isEqualTo(Ahead.NEVER);
    assertThat(ahead(job, four, false).cost(0, four.outlet()))
        .as("where a joint may stay open, nothing joins it for nothing")
        .isEqualTo(cost(HOSE));
  }

  private static Part.Adapter adapter(String id, String euros, String one, String other) {
    return new Part.Adapter(
        priced(id, euros),
        End.parse(one),
        End.parse(other),
        Conduit.of(Length.ofMillimetres(9.0), Length.ofMillimetres(30.0), Length.ofMetres(0.0)));
  }

  @Test
  void an_adapter_at_the_tool_is_counted_too() {
    Requirement.Builder job = job(6.2, Slot.hose("hose", Length.ofMetres(10.0))).outlet(FEMALE);
    Part reducer = adapter("reducer", "4", "3/8 NPT female", "1/4 NPT male");
    Stock stock = stock(job, List.of(HOSE, reducer));
    Ahead ahead = ahead(job, stock, true);
    assertThat(ahead.cost(0, stock.outlet())).isEqualTo(cost(HOSE, reducer));
    assertThat(ahead.cost(1, stock.inRow().get(0).kept().get(0).far())).isEqualTo(cost(reducer));
  }

  /** By hand: 8 m of 10 lack a fifth, 8 m of 16 lack half; the shorter hoses lack more. */
  @Test
  void the_least_that_hoses_lack_is_summed_over_the_positions_that_are_left() {
    Requirement.Builder job = job(
        6.2, Slot.hose("first", Length.ofMetres(10.0)), Slot.hose("other", Length.ofMetres(16.0)));
    Stock stock = stock(
        job,
        List.of(
            Shelf.hose(priced("8 m", "30"), 9.5, 8.0), Shelf.hose(priced("4 m", "10"), 9.5, 4.0)));
    Ahead ahead = ahead(job, stock, false);
    assertThat(ahead.missedLength(0)).isEqualTo(700_000_000L);
    assertThat(ahead.missedLength(1)).isEqualTo(500_000_000L);
    assertThat(ahead.missedLength(2)).isZero();
  }

  private static Part.Device filter(String id, double c, double b) {
    return new Part.Device(
        priced(id, "10"),
        DeviceKind.FILTER,
        FlowCapacity.of(SonicConductance.ofCubicDecimetresPerSecondBar(c), b),
        FEMALE,
        MALE);
  }

  /** ISO 6358: q = C p1 sqrt(1 − ((r − b)/(1 − b))²), from the standard's equation solved for r = p2/p1. */
  private static double behind(double bar, double c, double b) {
    double share = 10.0 / (c * bar);
    return bar * (b + (1.0 - b) * Math.sqrt(1.0 - share * share));
  }

  /**
   * By hand: of 8 bar, the filter of C 2.4 and b 0.5 leaves 7.415, that of C 2.5 and b 0.2 only 7.143, and that of C
   * 1.5 still less; a second one of the same leaves 6.774, which is 5.774 of the 6.2 that the tool needs.
   */
  @Test
  void the_pressure_that_can_still_arrive_is_that_behind_the_widest_part_of_each_position() {
    Requirement.Builder job = job(
            6.2, Slot.inLine("first", DeviceKind.FILTER), Slot.inLine("second", DeviceKind.FILTER))
        .toolInlet(FEMALE);
    Ahead ahead = ahead(
        job,
        stock(job, List.of(filter("a", 2.5, 0.2), filter("b", 1.5, 0.2), filter("c", 2.4, 0.5))),
        true);
    double first = behind(8.0, 2.4, 0.5);
    double second = behind(first, 2.4, 0.5);
    assertThat(first).isCloseTo(7.415, within(0.001)).isGreaterThan(behind(8.0, 2.5, 0.2));
    assertThat(second).isCloseTo(6.774, within(0.001));
    double missing = 1.0e9 * (6.2 - (second - 1.0)) / 6.2;
    assertThat((double) ahead.missedAir(0, 8.0e5)).isCloseTo(missing, within(1.0e-4 * missing));
    double less = 1.0e9 * (6.2 - (behind(7.0, 2.4, 0.5) - 1.0)) / 6.2;
    assertThat((double) ahead.missedAir(1, 7.0e5))
        .as("from the second position on")
        .isCloseTo(less, within(1.0e-4 * less));
    assertThat(ahead.missedAir(0, 9.0e5)).as("enough").isZero();
  }

  /** What arrives is computed: of pressures that differ by less than that may round off, none misses anything. */
  @Test
  void at_the_tool_as_much_as_it_needs_is_enough_whatever_is_rounded_off() {
    Requirement.Builder job = job(6.2, Slot.inLine("filter", DeviceKind.FILTER));
    Ahead ahead = ahead(job, stock(job, List.of(filter("a", 9.0, 0.3))), true);
    assertThat(ahead.missedAir(1, 7.2e5)).isZero();
    assertThat(ahead.missedAir(1, 7.2e5 - SearchAir.NOISE_PASCALS / 2.0)).isZero();
    assertThat(ahead.missedAir(1, 7.2e5 - 10.0 * SearchAir.NOISE_PASCALS)).isPositive();
    assertThat((double) ahead.missedAir(1, 4.1e5)).as("half").isCloseTo(5.0e8, within(10.0));
    assertThat(ahead.missedAir(1, SearchAir.STARVED)).as("all").isEqualTo(Choice.WHOLE_MISS);
  }

  private static Part.Device lubricator(PartFacts facts) {
    return new Part.Device(
        facts,
        DeviceKind.LUBRICATOR,
        FlowCapacity.of(SonicConductance.ofCubicDecimetresPerSecondBar(9.0), 0.3),
        FEMALE,
        MALE);
  }

  @Test
  void a_rule_that_every_part_of_a_position_breaks_is_broken_whatever_is_chosen() {
    Requirement.Builder job = coupled().ventRequired();
    Part vented = new Part.Socket(
        priced("vented", "40").withVent(),
        Set.of("finch"),
        FEMALE,
        FlowCapacity.of(SonicConductance.ofCubicDecimetresPerSecondBar(9.0), 0.3));
    assertThat(Ahead.alwaysBroken(stock(job, COUPLED), false)).isEqualTo(Rule.VENTED.bit());
    List<Part> both = new ArrayList<>(COUPLED);
    both.add(vented);
    assertThat(Ahead.alwaysBroken(stock(job, both), false))
        .as("one that is vented may be chosen")
        .isZero();
    assertThat(Ahead.alwaysBroken(stock(job, COUPLED), true))
        .as("where nothing suits, nothing is told")
        .isZero();
  }

  @Test
  void a_question_that_every_part_of_a_position_leaves_open_is_open_whatever_is_chosen() {
    Requirement.Builder job = job(
            5.0, Slot.inLine("oil", DeviceKind.LUBRICATOR), Slot.hose("hose", Length.ofMetres(5.0)))
        .lubrication(Lubrication.LUBRICATED)
        .temperatures(Temperature.ofCelsius(-5.0), Temperature.ofCelsius(30.0));
    PartFacts told = priced("told", "50")
        .withTemperatures(Temperature.ofCelsius(-10.0), Temperature.ofCelsius(50.0));
    List<Part> untold = List.of(HOSE, lubricator(told));
    int open = Rule.TEMPERATURE_SUITS.bit();
    assertThat(Ahead.alwaysAsked(stock(job, untold), true)).isEqualTo(open);
    assertThat(Ahead.alwaysAsked(stock(job, untold), false))
        .as("where rules may be broken, a question may go with its rule")
        .isZero();
    PartFacts alsoTold = priced("told too", "60")
        .withTemperatures(Temperature.ofCelsius(-10.0), Temperature.ofCelsius(50.0));
    List<Part> both = List.of(HOSE, Shelf.hose(alsoTold, 9.5, 10.0), lubricator(told));
    assertThat(Ahead.alwaysAsked(stock(job, both), true))
        .as("a hose may be chosen of which it is known")
        .isZero();
  }

  private static final Part.Splitter MANIFOLD = new Part.Splitter(
      priced("manifold", "30"),
      FlowCapacity.of(SonicConductance.ofCubicDecimetresPerSecondBar(14.0), 0.3),
      FEMALE,
      Collections.nCopies(3, FEMALE));

  private static ToolLine line(String tool, double bar, double metres) {
    return ToolLine.to(
        tool,
        FreeAirFlow.ofAnrLitresPerSecond(3.0),
        GaugePressure.ofBar(bar),
        FEMALE,
        List.of(Slot.hose("hose to " + tool, Length.ofMetres(metres))));
  }

  private static Requirement.Builder ofTools() {
    return Shelf.cheapest(Requirement.forTools(Layout.of(
        List.of(Slot.splitter("manifold")),
        List.of(line("drill", 5.0, 8.0).alike(2), line("saw", 6.0, 20.0)))));
  }

  /**
   * By hand: both drills get the cheap hose, which counts twice, and the saw needs 20 m where the longest has 15: it
   * lacks a quarter.
   */
  @Test
  void behind_a_splitter_the_lines_are_counted_as_often_as_they_are_alike() {
    Requirement.Builder job = ofTools();
    Stock stock = stock(job, List.of(MANIFOLD, HOSE, LONG));
    Ahead drills = ahead(job, stock, 1, false);
    Ahead saw = ahead(job, stock, 2, false);
    Ahead shared = ahead(job, stock, 0, false, drills, saw);
    Candidate manifold = stock.inRow().get(0).kept().get(0);
    List<Integer> outlets = manifold.outlets();
    assertThat(drills.cost(0, outlets.get(0))).isEqualTo(cost(HOSE, HOSE));
    assertThat(saw.cost(0, outlets.get(1))).isEqualTo(cost(HOSE));
    assertThat(shared.cost(outlets, 0)).isEqualTo(cost(HOSE, HOSE, HOSE));
    assertThat(shared.cost(outlets, 1)).as("the saw's alone").isEqualTo(cost(HOSE));
    assertThat(shared.cost(outlets, 2)).isZero();
    assertThat(shared.cost(0, stock.outlet())).isEqualTo(cost(MANIFOLD, HOSE, HOSE, HOSE));
    assertThat(shared.cost(1, manifold.far()))
        .as("at the splitter the leg ends")
        .isZero();
    assertThat(saw.missedLength(0)).isEqualTo(250_000_000L);
    assertThat(drills.missedLength(0)).isZero();
    assertThat(shared.missedLength(0)).isEqualTo(250_000_000L);
    assertThat(shared.missedLength(1)).isEqualTo(250_000_000L);
  }

  /** By hand: at 4 bar(g) two drills lack a fifth each of 5 bar, and the saw a third of 6 bar. */
  @Test
  void behind_a_splitter_what_every_tool_misses_is_summed() {
    Requirement.Builder job = ofTools();
    Stock stock = stock(job, List.of(MANIFOLD, HOSE, LONG));
    Ahead drills = ahead(job, stock, 1, false);
    Ahead saw = ahead(job, stock, 2, false);
    Ahead shared = ahead(job, stock, 0, false, drills, saw);
    assertThat((double) drills.missedAir(1, 5.0e5)).isCloseTo(4.0e8, within(10.0));
    assertThat((double) saw.missedAir(1, 5.0e5)).isCloseTo(1.0e9 / 3.0, within(10.0));
    assertThat(shared.missedAir(1, 5.0e5))
        .as("behind the splitter, with what the hoses lose")
        .isEqualTo(drills.missedAir(0, 5.0e5) + saw.missedAir(0, 5.0e5))
        .isGreaterThan(733_333_333L);
  }

  /** A regulator of 5 bar(g) leaves 5 bar(g) at most, whatever stands in front of it. */
  @Test
  void what_a_regulator_holds_is_the_most_that_arrives_behind_it() {
    Requirement.Builder job = job(6.2, Slot.regulator("regulator", GaugePressure.ofBar(5.0)));
    Part regulator = new Part.Regulator(
        priced("regulator", "30"),
        FlowCapacity.of(SonicConductance.ofCubicDecimetresPerSecondBar(9.0), 0.3),
        PressureDrop.ofBar(0.0),
        FreeAirFlow.ofAnrLitresPerSecond(10.0),
        FEMALE,
        MALE);
    Ahead ahead = ahead(job, stock(job, List.of(regulator)), false);
    double missing = 1.0e9 * 1.2 / 6.2;
    assertThat((double) ahead.missedAir(0, 8.0e5)).isCloseTo(missing, within(10.0));
  }
}
