package org.airfit.select;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.DoubleFunction;
import org.airfit.air.AirState;
import org.airfit.flow.CapacityRange;
import org.airfit.flow.FlowCapacity;
import org.airfit.joint.End;
import org.airfit.line.Conduit;
import org.airfit.line.ConduitRange;
import org.airfit.plant.Regulator;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.HoseBore;
import org.airfit.quantity.Length;
import org.airfit.quantity.Money;
import org.airfit.quantity.PressureDrop;
import org.airfit.quantity.Range;
import org.airfit.quantity.SonicConductance;
import org.airfit.quantity.Temperature;
import org.airfit.source.Source;
import org.airfit.working.UnitSystem;
import org.junit.jupiter.api.Test;

/**
 * Whatever is not known of a run is told with its two ends and with the value at which there is enough air. That value
 * is put in again as one that is known: with it there is enough, and with one a little worse there is not.
 */
class DoubtsOfEveryKindTest {

  private static final Source MADE_UP = Source.derived("made up");
  private static final String FEMALE = "3/8 NPT female";
  private static final String MALE = "3/8 NPT male";

  private static FlowCapacity capacity(double c, double b) {
    return FlowCapacity.of(SonicConductance.ofCubicDecimetresPerSecondBar(c), b);
  }

  private static CapacityRange range(double c, double mostC, double b, double mostB) {
    return new CapacityRange(capacity(c, b), capacity(mostC, mostB), MADE_UP);
  }

  private static Conduit conduit(double boreMm, double metres, double roughMm, double fittings) {
    return Conduit.of(
            Length.ofMillimetres(boreMm), Length.ofMetres(metres), Length.ofMillimetres(roughMm))
        .withFittings(fittings);
  }

  private static final Conduit USUAL = conduit(9.5, 10.0, 0.01, 0.5);

  private static Part.Hose hose(Conduit worst, Conduit best) {
    return new Part.Hose(
        Shelf.steel("hose"),
        HoseBore.of(Length.ofMillimetres(9.5)),
        new ConduitRange(worst, best, MADE_UP),
        End.parse(MALE),
        End.parse(MALE));
  }

  private static Part.Socket socket(CapacityRange range) {
    return new Part.Socket(Shelf.steel("socket"), Set.of("finch"), End.parse(FEMALE), range);
  }

  private static final CapacityRange WIDE = range(9.0, 9.0, 0.3, 0.3);

  /** A coupling and a hose behind what else is given, for 10 L/s and the pressure that is needed. */
  private static Proposal run(
      double leastBar, double mostBar, Part.Socket socket, Part.Hose hose, Slot... before) {
    return run(job(leastBar, mostBar, before), socket, hose);
  }

  private static Requirement.Builder job(double leastBar, double mostBar, Slot... before) {
    List<Slot> slots = new java.util.ArrayList<>(List.of(before));
    slots.add(Slot.coupling("outlet"));
    slots.add(Slot.hose("run", Length.ofMetres(10.0)));
    return Requirement.forTool(
            Range.exactly(FreeAirFlow.ofAnrLitresPerSecond(10.0)),
            new Range<>(GaugePressure.ofBar(leastBar), GaugePressure.ofBar(mostBar)))
        .toolRating(GaugePressure.ofBar(7.5))
        .toolInlet(End.parse(FEMALE))
        .supply(Shelf.SUPPLY, Shelf.ATMOSPHERE)
        .outlet(End.parse(MALE))
        .environment(Environment.INDOORS)
        .lubrication(Lubrication.DRY)
        .layout(Layout.of(slots));
  }

  private static Proposal run(Requirement.Builder job, Part.Socket socket, Part.Hose hose) {
    Part.Plug plug = Shelf.plug(Shelf.steel("plug"), "finch", FEMALE);
    return Selection.of(job.build(), Catalogue.of(List.of(socket, plug, hose)))
        .fold(Selection.Proposals::best, miss -> miss.closest().get(0));
  }

  private static double bar(Proposal proposal) {
    return Shelf.pascalsAtTool(proposal) / 1.0e5;
  }

  /**
   * Checks the one doubt of a job that needs what arrives with a value between the ends.
   *
   * @param known the run with a value that is known, for any pressure that is needed
   * @param between the value with which just enough arrives
   * @param ranged the run with the range, for a pressure that is needed
   */
  private static void check(
      String what,
      String si,
      String us,
      DoubleFunction<Proposal> known,
      double between,
      DoubleFunction<Proposal> ranged) {
    double needed = bar(known.apply(between));
    Proposal open = ranged.apply(needed);
    assertThat(open.open()).extracting(Finding::rule).containsExactly(Rule.AIR_AT_TOOL);
    assertThat(open.doubts()).hasSize(1);
    Doubt doubt = open.doubts().get(0);
    assertThat(doubt.what()).isEqualTo(what);
    assertThat(doubt.known(UnitSystem.SI)).isEqualTo(si);
    assertThat(doubt.known(UnitSystem.US)).isEqualTo(us);
    assertThat(doubt.settles()).isTrue();
    String told = doubt.enoughIf(UnitSystem.SI).orElseThrow();
    assertThat(doubt).hasToString(what + ": " + si + "; enough if " + told);
    double turning = Double.parseDouble(told.split(" ", -1)[2]);
    boolean isAtLeast = told.startsWith("at least ");
    assertThat(bar(known.apply(turning))).isGreaterThanOrEqualTo(needed - 1.0e-9);
    assertThat(bar(known.apply(turning * (isAtLeast ? 0.98 : 1.02)))).isLessThan(needed);
    assertThat(bar(known.apply(turning * (isAtLeast ? 1.02 : 0.98)))).isGreaterThan(needed);
  }

  @Test
  void the_bore_of_a_hose() {
    check(
        "bore of part hose",
        "8 to 9.5 mm",
        "0.315 to 0.374 in",
        bore -> {
          Conduit one = conduit(bore, 10.0, 0.01, 0.5);
          return run(1.0, 1.0, socket(WIDE), hose(one, one));
        },
        9.0,
        needed -> run(needed, needed, socket(WIDE), hose(conduit(8.0, 10.0, 0.01, 0.5), USUAL)));
  }

  @Test
  void the_roughness_of_a_hose() {
    check(
        "roughness of part hose",
        "0.01 to 0.2 mm",
        "0.000394 to 0.00787 in",
        rough -> {
          Conduit one = conduit(9.5, 10.0, rough, 0.5);
          return run(1.0, 1.0, socket(WIDE), hose(one, one));
        },
        0.1,
        needed -> run(needed, needed, socket(WIDE), hose(conduit(9.5, 10.0, 0.2, 0.5), USUAL)));
  }

  @Test
  void the_length_of_a_hose() {
    check(
        "length of part hose",
        "10 to 14 m",
        "32.8 to 45.9 ft",
        metres -> {
          Conduit one = conduit(9.5, metres, 0.01, 0.5);
          return run(1.0, 1.0, socket(WIDE), hose(one, one));
        },
        12.0,
        needed -> run(needed, needed, socket(WIDE), hose(conduit(9.5, 14.0, 0.01, 0.5), USUAL)));
  }

  @Test
  void the_fittings_of_a_hose() {
    check(
        "sum of loss coefficients K of part hose",
        "0.5 to 4",
        "0.5 to 4",
        fittings -> {
          Conduit one = conduit(9.5, 10.0, 0.01, fittings);
          return run(1.0, 1.0, socket(WIDE), hose(one, one));
        },
        2.0,
        needed -> run(needed, needed, socket(WIDE), hose(conduit(9.5, 10.0, 0.01, 4.0), USUAL)));
  }

  @Test
  void the_critical_ratio_of_a_socket() {
    check(
        "critical pressure ratio b of outlet coupling, part socket",
        "0.2 to 0.45",
        "0.2 to 0.45",
        b -> run(1.0, 1.0, socket(range(2.5, 2.5, b, b)), hose(USUAL, USUAL)),
        0.3,
        needed -> run(needed, needed, socket(range(2.5, 2.5, 0.2, 0.45)), hose(USUAL, USUAL)));
  }

  /** What the tool needs has a worst that arrives and a best: the answer turns at what arrives. */
  @Test
  void the_pressure_that_the_tool_needs() {
    double arrives = bar(run(1.0, 1.0, socket(WIDE), hose(USUAL, USUAL)));
    Doubt doubt = run(arrives - 0.5, arrives + 0.5, socket(WIDE), hose(USUAL, USUAL))
        .doubts()
        .get(0);
    assertThat(doubt.what()).isEqualTo("pressure the tool needs");
    assertThat(doubt.known(UnitSystem.SI)).endsWith(" bar(g)");
    assertThat(doubt.known(UnitSystem.US)).endsWith(" psig");
    String told = doubt.enoughIf(UnitSystem.SI).orElseThrow();
    assertThat(told).startsWith("at most ").endsWith(" bar(g)");
    double turning = Double.parseDouble(told.split(" ", -1)[2]);
    assertThat(turning).isLessThanOrEqualTo(arrives).isGreaterThan(arrives - 0.01);
  }

  @Test
  void a_pipe_in_front_of_the_outlet() {
    Conduit worst = conduit(12.0, 20.0, 0.05, 0.0);
    Conduit best = conduit(16.0, 20.0, 0.05, 0.0);
    check(
        "bore of old pipe",
        "12 to 16 mm",
        "0.472 to 0.63 in",
        bore -> run(
            job(1.0, 1.0).pipe("old pipe", conduit(bore, 20.0, 0.05, 0.0)),
            socket(WIDE),
            hose(USUAL, USUAL)),
        14.0,
        needed -> run(
            job(needed, needed).pipe("old pipe", new ConduitRange(worst, best, MADE_UP)),
            socket(WIDE),
            hose(USUAL, USUAL)));
  }

  private static Slot filter(double c, double mostC) {
    return Slot.inLine(
        "wall",
        new Part.Device(
            Shelf.steel("filter"),
            DeviceKind.FILTER,
            range(c, mostC, 0.3, 0.3),
            End.parse(FEMALE),
            End.parse(MALE)));
  }

  @Test
  void a_part_in_the_line_is_told_apart_from_the_socket_behind_it() {
    check(
        "conductance C of part filter",
        "3 to 6 dm³/(s·bar)",
        "3 to 6 dm³/(s·bar) (a Cv of 1.44 has the least of that, one of 2.88 the most)",
        c -> run(1.0, 1.0, socket(WIDE), hose(USUAL, USUAL), filter(c, c)),
        4.0,
        needed -> run(needed, needed, socket(WIDE), hose(USUAL, USUAL), filter(3.0, 6.0)));
  }

  /**
   * A rating tells one flow at one drop, and leaves C and b open together. Two parts of one C and two b pass different
   * flows: the C that is told to be enough is so with every b, and a little less is not with b 0.
   */
  @Test
  void a_conductance_that_is_told_to_be_enough_is_so_with_any_b() {
    CapacityRange rated = CapacityRange.ofRatedFlow(
        FreeAirFlow.ofAnrLitresPerSecond(6.0),
        GaugePressure.ofBar(7.0).absolute(Shelf.ATMOSPHERE),
        PressureDrop.ofBar(0.1),
        Temperature.ofCelsius(20.0));
    double worst = bar(through(1.0, CapacityRange.exactly(rated.least())));
    double best = bar(through(
        1.0,
        CapacityRange.exactly(capacity(
            rated.most().conductance().cubicDecimetresPerSecondBar(), CapacityRange.LEAST_B))));
    assertThat(best).isGreaterThan(worst);
    double needed = worst + 0.6 * (best - worst);
    Proposal open = through(needed, rated);
    assertThat(open.doubts()).hasSize(1);
    Doubt doubt = open.doubts().get(0);
    assertThat(doubt.what()).isEqualTo("conductance C of part filter, with any b");
    assertThat(doubt.knownBy(UnitSystem.SI)).startsWith("nobody told it: ");
    String told = doubt.enoughIf(UnitSystem.SI).orElseThrow();
    double enough = Double.parseDouble(told.substring("at least ".length(), told.indexOf(" dm³")));
    for (double b = 0.0; b <= 0.528; b += 0.066) {
      assertThat(bar(through(1.0, range(enough, enough, b, b))))
          .as("b %s", b)
          .isGreaterThanOrEqualTo(needed - 1.0e-9);
    }
    assertThat(bar(through(1.0, range(enough - 0.02, enough - 0.02, 0.0, 0.0)))).isLessThan(needed);
  }

  private static Proposal through(double neededBar, CapacityRange filter) {
    return run(
        neededBar,
        neededBar,
        socket(WIDE),
        hose(USUAL, USUAL),
        Slot.inLine(
            "wall",
            new Part.Device(
                Shelf.steel("filter"),
                DeviceKind.FILTER,
                filter,
                End.parse(FEMALE),
                End.parse(MALE))));
  }

  private static Slot regulator(double c, double mostC) {
    return Slot.regulator("wall", GaugePressure.ofBar(6.9))
        .with(new Part.Regulator(
            Shelf.steel("regulator"),
            range(c, mostC, 0.3, 0.3),
            PressureDrop.ofBar(0.0),
            FreeAirFlow.ofAnrLitresPerSecond(10.0),
            End.parse(FEMALE),
            End.parse(MALE)));
  }

  @Test
  void the_valve_of_a_regulator() {
    check(
        "conductance C of part regulator",
        "2 to 4 dm³/(s·bar)",
        "2 to 4 dm³/(s·bar) (a Cv of 0.96 has the least of that, one of 1.92 the most)",
        c -> run(1.0, 1.0, socket(WIDE), hose(USUAL, USUAL), regulator(c, c)),
        2.5,
        needed -> run(needed, needed, socket(WIDE), hose(USUAL, USUAL), regulator(2.0, 4.0)));
  }

  private static Slot set(double leastBar, double mostBar) {
    return ((Slot.Regulated) regulator(6.0, 6.0))
        .withSetRange(new Range<>(GaugePressure.ofBar(leastBar), GaugePressure.ofBar(mostBar)));
  }

  @Test
  void what_a_regulator_is_set_to() {
    check(
        "setting of part regulator",
        "6 to 6.6 bar(g)",
        "87 to 95.7 psig",
        bar -> run(1.0, 1.0, socket(WIDE), hose(USUAL, USUAL), set(bar, bar)),
        6.3,
        needed -> run(needed, needed, socket(WIDE), hose(USUAL, USUAL), set(6.0, 6.6)));
  }

  private static Slot drooping(Range<GaugePressure> set, double leastBar, double mostBar) {
    return Slot.regulator("wall", GaugePressure.ofBar(6.9))
        .with(new Part.Regulator(
            Shelf.steel("regulator"),
            RegulatorKind.REGULATOR,
            range(6.0, 6.0, 0.3, 0.3),
            new Range<>(PressureDrop.ofBar(leastBar), PressureDrop.ofBar(mostBar)),
            Optional.of(FreeAirFlow.ofAnrLitresPerSecond(10.0)),
            End.parse(FEMALE),
            End.parse(MALE)))
        .withSetRange(set);
  }

  /** Where the setting is not known either, the droop that is told to be enough is so at the lowest setting. */
  @Test
  void a_droop_that_is_told_to_be_enough_is_so_at_the_lowest_setting() {
    Range<GaugePressure> set = new Range<>(GaugePressure.ofBar(6.4), GaugePressure.ofBar(6.9));
    Range<GaugePressure> lowest = Range.exactly(GaugePressure.ofBar(6.4));
    double needed =
        bar(run(1.0, 1.0, socket(WIDE), hose(USUAL, USUAL), drooping(lowest, 0.2, 0.2)));
    Doubt doubt =
        run(needed, needed, socket(WIDE), hose(USUAL, USUAL), drooping(set, 0.0, 0.8))
            .doubts()
            .stream()
            .filter(each -> each.what().equals("droop of part regulator"))
            .findFirst()
            .orElseThrow();
    String told = doubt.enoughIf(UnitSystem.SI).orElseThrow();
    assertThat(Double.parseDouble(told.substring("at most ".length(), told.indexOf(" bar"))))
        .isBetween(0.198, 0.2);
  }

  private static Requirement.Builder suppliedAt(double bar, Requirement.Builder job) {
    return job.supply(
            Shelf.SUPPLY.at(GaugePressure.ofBar(bar).absolute(Shelf.ATMOSPHERE)), Shelf.ATMOSPHERE)
        .highest(GaugePressure.ofBar(10.0))
        .regulated();
  }

  /** The regulator that stands first of all is set somewhere in its range, and does not swing through it. */
  @Test
  void what_the_regulator_at_the_supply_is_set_to() {
    check(
        "setting of the regulator at the supply",
        "6 to 6.6 bar(g)",
        "87 to 95.7 psig",
        bar -> run(suppliedAt(bar, job(1.0, 1.0)), socket(WIDE), hose(USUAL, USUAL)),
        6.3,
        needed -> run(
            suppliedAt(6.6, job(needed, needed)).leastSetting(GaugePressure.ofBar(6.0)),
            socket(WIDE),
            hose(USUAL, USUAL)));
  }

  /** A supply of 6.2 bar(g) at least lets no setting above that help; a droop is lost at whatever setting. */
  @Test
  void a_setting_above_what_the_supply_falls_to_helps_nothing() {
    Requirement.Builder falling = suppliedAt(6.6, job(6.1, 6.1))
        .leastSetting(GaugePressure.ofBar(6.0))
        .lowest(GaugePressure.ofBar(6.2));
    Proposal all = run(falling, socket(WIDE), hose(USUAL, USUAL));
    assertThat(all.result())
        .isEqualTo(run(suppliedAt(6.0, job(6.1, 6.1)), socket(WIDE), hose(USUAL, USUAL))
            .result());
    assertThat(all.resultAtBest())
        .isEqualTo(run(suppliedAt(6.2, job(6.1, 6.1)), socket(WIDE), hose(USUAL, USUAL))
            .result());
  }

  /** By hand: 0.4 bar at 10 L/s, which is the flow of the job, so that 6.0 is held of 6.4, and 5.6 of 6.0. */
  @Test
  void a_regulator_at_the_supply_droops_at_every_setting_and_where_the_supply_falls() {
    AirState set = Shelf.SUPPLY.at(GaugePressure.ofBar(6.4).absolute(Shelf.ATMOSPHERE));
    Regulator drooping = new Regulator(
        set,
        FreeAirFlow.ofAnrLitresPerSecond(10.0),
        GaugePressure.ofBar(6.0).absolute(Shelf.ATMOSPHERE));
    Requirement job = job(1.0, 1.0)
        .supply(drooping, Shelf.ATMOSPHERE)
        .highest(GaugePressure.ofBar(10.0))
        .leastSetting(GaugePressure.ofBar(6.0))
        .regulated()
        .build();
    assertThat(outlet(job, Known.AT_WORST)).isCloseTo(5.6, within(1.0e-9));
    assertThat(outlet(job, Known.AT_BEST)).isCloseTo(6.0, within(1.0e-9));
    Requirement falls = job.toBuilder().lowest(GaugePressure.ofBar(6.2)).build();
    assertThat(outlet(falls, Known.AT_BEST))
        .as("the droop still counts")
        .isCloseTo(6.0, within(1.0e-9));
    Requirement low = job.toBuilder().lowest(GaugePressure.ofBar(5.8)).build();
    assertThat(outlet(low, Known.AT_WORST)).isCloseTo(5.6, within(1.0e-9));
    assertThat(outlet(low, Known.AT_BEST))
        .as("no more than stands in front")
        .isCloseTo(5.8, within(1.0e-9));
  }

  private static double outlet(Requirement job, Known known) {
    return GaugePressure.of(job.atOutlet(known).orElseThrow(), Shelf.ATMOSPHERE).bar();
  }

  @Test
  void a_setting_is_told_of_a_regulator_only() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> job(1.0, 1.0).leastSetting(GaugePressure.ofBar(6.0)).build())
        .withMessageContainingAll("least setting", "6 bar(g)", "regulated()");
  }

  /**
   * A search that took a setting for all that it can be would let a narrow hose pass that is enough at the highest
   * setting alone, before a wide one that is enough at every one.
   */
  @Test
  void the_search_takes_the_worst_of_a_setting_wherever_the_regulator_stands() {
    Part.Hose narrow = priced("narrow", 9.0, "1 EUR");
    Part.Hose wide = priced("wide", 12.7, "90 EUR");
    Part.Plug plug = Shelf.plug(Shelf.steel("plug"), "finch", FEMALE);
    Catalogue catalogue = Catalogue.of(List.of(socket(WIDE), plug, narrow, wide));
    double leastOfWide =
        bar(best(job(1.0, 1.0, set(6.0, 6.0)), Catalogue.of(List.of(socket(WIDE), plug, wide))));
    double needed = leastOfWide - 0.02;
    for (Requirement.Builder job : List.of(
        job(needed, needed, set(6.0, 6.6)),
        suppliedAt(6.6, job(needed, needed)).leastSetting(GaugePressure.ofBar(6.0)))) {
      Proposal best = best(job, catalogue);
      assertThat(best.hose("run").id()).isEqualTo("wide");
      assertThat(best.open()).isEmpty();
      assertThat(best(job, Catalogue.of(List.of(socket(WIDE), plug, narrow))).open())
          .as("the cheap one is enough at some settings only")
          .extracting(Finding::rule)
          .containsExactly(Rule.AIR_AT_TOOL);
    }
  }

  private static Part.Hose priced(String id, double boreMm, String price) {
    return new Part.Hose(
        Shelf.steel(id).withPrice(Money.parse(price)),
        HoseBore.of(Length.ofMillimetres(9.5)),
        ConduitRange.exactly(conduit(boreMm, 10.0, 0.01, 0.5)),
        End.parse(MALE),
        End.parse(MALE));
  }

  private static Proposal best(Requirement.Builder job, Catalogue catalogue) {
    return Selection.of(job.build(), catalogue)
        .fold(Selection.Proposals::best, miss -> miss.closest().get(0));
  }
}
