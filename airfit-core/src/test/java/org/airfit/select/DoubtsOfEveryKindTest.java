package org.airfit.select;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Set;
import java.util.function.DoubleFunction;
import org.airfit.flow.CapacityRange;
import org.airfit.flow.FlowCapacity;
import org.airfit.joint.End;
import org.airfit.line.Conduit;
import org.airfit.line.ConduitRange;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.HoseBore;
import org.airfit.quantity.Length;
import org.airfit.quantity.PressureDrop;
import org.airfit.quantity.Range;
import org.airfit.quantity.SonicConductance;
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
        .fold(Selection.Proposals::best, miss -> miss.nearest().get(0));
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
        "3 to 6 dm³/(s·bar)",
        c -> run(1.0, 1.0, socket(WIDE), hose(USUAL, USUAL), filter(c, c)),
        4.0,
        needed -> run(needed, needed, socket(WIDE), hose(USUAL, USUAL), filter(3.0, 6.0)));
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
        "2 to 4 dm³/(s·bar)",
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
}
