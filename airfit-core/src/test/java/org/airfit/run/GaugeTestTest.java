package org.airfit.run;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.assertj.core.api.Assertions.assertThatNullPointerException;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.airfit.Pencil;
import org.airfit.air.AirState;
import org.airfit.flow.FlowCapacity;
import org.airfit.line.Conduit;
import org.airfit.line.Wall;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.Length;
import org.airfit.quantity.PressureDrop;
import org.airfit.quantity.SonicConductance;
import org.airfit.quantity.Temperature;
import org.airfit.safety.Caution;
import org.airfit.working.Completeness;
import org.airfit.working.UnitSystem;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

class GaugeTestTest {

  private static final AbsolutePressure ATMOSPHERE = AbsolutePressure.ofBar(1.0);

  private static final PressureGauge A = gauge("A");
  private static final PressureGauge B = gauge("B");
  private static final ToolDemand GRINDER = ToolDemand.following(
      "grinder", FreeAirFlow.ofAnrLitresPerSecond(11.0), AbsolutePressure.ofBar(7.3));

  private static PressureGauge gauge(String name) {
    return PressureGauge.ofClass(
        name, GaugeClass.CLASS_1, GaugePressure.ofBar(10.0), PressureDrop.ofBar(0.05));
  }

  private static FlowCapacity part(double c) {
    return FlowCapacity.of(SonicConductance.ofCubicDecimetresPerSecondBar(c), 0.3);
  }

  private static Conduit hose(double mm) {
    return Conduit.of(Length.ofMillimetres(mm), Length.ofMetres(10.0), Wall.SMOOTH_RUBBER_HOSE);
  }

  private static Run run(double filter, double coupling, double boreMm) {
    return Run.from(
            AirState.of(AbsolutePressure.ofBar(8.0), Temperature.ofCelsius(20.0)), ATMOSPHERE)
        .through("filter", part(filter))
        .through("coupling", part(coupling))
        .through("hose", hose(boreMm));
  }

  private static final Run TOLD = run(9.0, 5.0, 9.5);

  /** What stands at the places of a run, by what it answers to its users. */
  private static double bar(Run run, String place, ToolState state) {
    if (state == ToolState.AT_REST) {
      return 7.0;
    }
    RunResult.Delivered delivered = (RunResult.Delivered) run.balance(GRINDER);
    int at = run.names().indexOf(place);
    return at < 0 ? 7.0 : delivered.shares().get(at).outlet().bar() - 1.0;
  }

  private static GaugeReading read(PressureGauge gauge, String place, ToolState state, double bar) {
    return new GaugeReading(gauge, place, state, GaugePressure.ofBar(0.05 * Math.rint(bar / 0.05)));
  }

  private static List<GaugeReading> readings(Run truth, double moreOfB, String... places) {
    List<GaugeReading> all = new ArrayList<>();
    for (int i = 0; i < places.length; i++) {
      for (ToolState state : ToolState.values()) {
        all.add(read(
            i == 0 ? A : B,
            places[i],
            state,
            bar(truth, places[i], state) + (i == 0 ? 0.0 : moreOfB)));
      }
    }
    return all;
  }

  @Test
  void a_hose_that_is_narrow_inside_is_named_with_its_bore() {
    Diagnosis found = GaugeTest.of(TOLD, GRINDER)
        .read(readings(run(9.0, 5.0, 7.0), 0.0, "supply", "filter", "coupling", "hose"));
    assertThat(found.verdict()).as("%s", found.explanations()).isEqualTo(DiagnosisVerdict.FOUND);
    Explanation culprit = found.culprit().orElseThrow();
    assertThat(culprit.suspect()).isEqualTo(Suspect.bore("hose"));
    FittedRange<Length> bore = culprit.bore().orElseThrow();
    assertThat(bore.best().millimetres()).isCloseTo(7.0, within(0.25));
    assertThat(bore.least().millimetres()).isBetween(6.4, 7.0);
    assertThat(bore.most().millimetres()).isBetween(7.0, 7.6);
    assertThat(found.next()).isEmpty();
    assertThat(found.inWords(UnitSystem.SI).get(0))
        .contains("hose, which is narrower inside than told", "7.0 mm", "fit it");
  }

  /** One of the readings while it runs is taken wrong by more and more: then no explanation fits, and none is named. */
  @ParameterizedTest
  @ValueSource(ints = {-12, -8, -5, 5, 8, 12})
  void a_culprit_that_the_readings_do_not_fit_is_not_named(int steps) {
    List<GaugeReading> readings =
        new ArrayList<>(readings(run(9.0, 5.0, 7.0), 0.0, "supply", "filter", "coupling", "hose"));
    readings.replaceAll(each -> each.place().equals("filter") && each.state() == ToolState.RUNNING
        ? read(B, "filter", ToolState.RUNNING, each.shown().bar() + 0.05 * steps)
        : each);
    Diagnosis found = GaugeTest.of(TOLD, GRINDER).read(readings);
    assertThat(found.verdict()).isIn(DiagnosisVerdict.NONE_FITS, DiagnosisVerdict.CONTRADICTED);
    assertThat(found.culprit()).isEmpty();
  }

  @Test
  void with_gauges_at_both_ends_alone_coupling_and_hose_cannot_be_told_apart() {
    GaugeTest test = GaugeTest.of(TOLD, GRINDER)
        .suspecting(List.of(Suspect.part("coupling"), Suspect.bore("hose")));
    Diagnosis found = test.read(readings(run(9.0, 5.0, 7.0), 0.0, "supply", "hose"));
    assertThat(found.verdict()).isEqualTo(DiagnosisVerdict.SEVERAL);
    assertThat(found.alike())
        .extracting(Explanation::suspect)
        .startsWith(
            found.explanations().get(0).suspect(), found.explanations().get(1).suspect())
        .contains(Suspect.part("coupling"), Suspect.bore("hose"));
    assertThat(found.alike().get(0).probability()).isLessThan(0.7);
    NextGaugeReading next = found.next().orElseThrow();
    assertThat(next.place()).isEqualTo("coupling");
    assertThat(next.state()).isEqualTo(ToolState.RUNNING);
    assertThat(next.expectedProbability()).isGreaterThan(0.85);
    // and it does
    List<GaugeReading> more = new ArrayList<>(readings(run(9.0, 5.0, 7.0), 0.0, "supply", "hose"));
    more.add(read(
        next.gauge(),
        next.place(),
        next.state(),
        bar(run(9.0, 5.0, 7.0), next.place(), next.state())));
    assertThat(test.read(more).culprit().orElseThrow().suspect()).isEqualTo(Suspect.bore("hose"));
  }

  @Test
  void where_all_is_as_told_nothing_is_named() {
    Diagnosis found = GaugeTest.of(TOLD, GRINDER)
        .read(readings(TOLD, 0.0, "supply", "filter", "coupling", "hose"));
    assertThat(found.verdict()).isEqualTo(DiagnosisVerdict.AS_TOLD);
    assertThat(found.culprit()).isEmpty();
    assertThat(found.inWords(UnitSystem.US).get(0)).contains("agree with what was told", "1.5 psi");
  }

  /** The offset of a gauge that is read twice cancels; that it is off shows at rest. */
  @Test
  void a_gauge_that_is_off_contradicts_the_other_at_rest_and_is_named() {
    Diagnosis found = GaugeTest.of(TOLD, GRINDER)
        .read(readings(TOLD, 0.8, "supply", "filter", "coupling", "hose"));
    assertThat(found.contradictions()).isNotEmpty();
    assertThat(found.contradictions().get(0).said(UnitSystem.SI))
        .contains(
            "At rest A at the supply and B behind filter should show one pressure", "0.8 bar");
    Explanation best = found.explanations().get(0);
    assertThat(best.suspect().kind()).isEqualTo(SuspectKind.GAUGE);
    // B was read behind A alone: a valve that sticks between them would look the same
    assertThat(found.verdict()).isEqualTo(DiagnosisVerdict.CONTRADICTED);
    List<GaugeReading> exchanged =
        new ArrayList<>(readings(TOLD, 0.8, "supply", "filter", "coupling", "hose"));
    exchanged.add(read(B, "supply", ToolState.AT_REST, 7.8));
    // and of two gauges that differ a third tells which one is wrong
    exchanged.add(read(gauge("C"), "supply", ToolState.AT_REST, 7.0));
    Diagnosis again = GaugeTest.of(TOLD, GRINDER).read(exchanged);
    assertThat(again.verdict()).isEqualTo(DiagnosisVerdict.FOUND);
    assertThat(again.inWords(UnitSystem.SI).get(0)).contains("B shows 0.8", "bar too much");
    assertThat(found.inWords(UnitSystem.SI).toString()).contains("a gauge is wrong");
  }

  @Test
  void pressure_that_rises_along_the_flow_is_told() {
    List<GaugeReading> readings =
        List.of(read(A, "supply", ToolState.RUNNING, 6.5), read(B, "hose", ToolState.RUNNING, 7.2));
    Diagnosis found = GaugeTest.of(TOLD, GRINDER).read(readings);
    assertThat(found.verdict()).isEqualTo(DiagnosisVerdict.CONTRADICTED);
    assertThat(found.contradictions().get(0).said(UnitSystem.SI))
        .contains("pressure rises along the flow by 0.7 bar");
    assertThat(found.culprit()).isEmpty();
  }

  /** Two faults at once that no single one can do: nothing is named. */
  @Test
  void what_no_single_fault_explains_is_told_as_that() {
    Diagnosis found = GaugeTest.of(TOLD, GRINDER)
        .read(readings(run(2.4, 5.0, 6.5), 0.0, "supply", "filter", "coupling", "hose"));
    assertThat(found.verdict()).isEqualTo(DiagnosisVerdict.NONE_FITS);
    assertThat(found.culprit()).isEmpty();
    assertThat(found.inWords(UnitSystem.SI).get(0)).contains("No single fault explains");
  }

  /** The filter was suspected, the coupling is it; between the two gauges nobody read. */
  @Test
  void what_nobody_suspected_is_not_taken_for_a_suspect() {
    Run truth = run(9.0, 2.2, 9.5);
    GaugeTest test = GaugeTest.of(TOLD, GRINDER).suspecting(List.of(Suspect.part("filter")));
    Diagnosis apart = test.read(readings(truth, 0.0, "supply", "filter", "coupling", "hose"));
    assertThat(apart.explanations().get(0).suspect()).isEqualTo(Suspect.part("coupling"));
    Diagnosis together = test.read(readings(truth, 0.0, "supply", "coupling", "hose"));
    assertThat(together.verdict()).isEqualTo(DiagnosisVerdict.SEVERAL);
    assertThat(together.alike())
        .extracting(Explanation::suspect)
        .containsExactly(Suspect.part("filter"), Suspect.part("coupling"));
  }

  @Test
  void the_capacity_of_an_unmarked_coupling_is_fitted() {
    Diagnosis found = GaugeTest.of(TOLD, GRINDER)
        .unmarked("coupling")
        .read(readings(run(9.0, 2.4, 9.5), 0.0, "supply", "filter", "coupling", "hose"));
    Explanation best = found.explanations().get(0);
    assertThat(best.suspect()).isEqualTo(Suspect.part("coupling"));
    FittedRange<SonicConductance> c = best.conductance().orElseThrow();
    assertThat(c.best().cubicDecimetresPerSecondBar()).isCloseTo(2.4, within(0.2));
    assertThat(c.least().cubicDecimetresPerSecondBar()).isBetween(1.7, 2.4);
    assertThat(found.verdict()).isEqualTo(DiagnosisVerdict.AS_TOLD);
    assertThat(found.inWords(UnitSystem.SI).get(0))
        .contains("All else is as told, and coupling has a C of 2.4 dm³/(s·bar)");
  }

  @Test
  void chances_add_up_to_one_and_none_is_printed_as_certain() {
    Diagnosis found = GaugeTest.of(TOLD, GRINDER)
        .read(readings(run(9.0, 5.0, 5.0), 0.0, "supply", "filter", "coupling", "hose"));
    assertThat(
            found.explanations().stream().mapToDouble(Explanation::probability).sum())
        .isCloseTo(1.0, within(1.0e-12));
    assertThat(found.explanations().get(0).toString()).contains("> 99.9 %");
    assertThat(found.inWords(UnitSystem.SI).toString()).doesNotContain("100 %");
    assertThat(found.explanations())
        .extracting(each -> each.suspect().kind())
        .contains(SuspectKind.OTHER, SuspectKind.NOTHING, SuspectKind.GAUGE);
  }

  @ParameterizedTest
  @EnumSource(UnitSystem.class)
  void the_working_can_be_done_with_a_pencil(UnitSystem units) {
    for (Run truth : List.of(TOLD, run(9.0, 5.0, 7.0), run(9.0, 3.4, 9.5))) {
      Diagnosis found =
          GaugeTest.of(TOLD, GRINDER).read(readings(truth, 0.05, "supply", "coupling", "hose"));
      Pencil.check(found.working(units));
      Completeness.check(found.working(units));
      assertThat(found.working(units).toText())
          .contains("Loss beyond what was told", "Standard deviation of a gauge", "our choice");
    }
  }

  @Test
  void the_cautions_begin_with_letting_the_pressure_out() {
    Diagnosis found =
        GaugeTest.of(TOLD, GRINDER).read(readings(TOLD, 0.0, "supply", "coupling", "hose"));
    assertThat(found.cautions())
        .extracting(Caution::title)
        .startsWith("Let the pressure out first")
        .contains("Never feel for a leak with a hand", "More pressure at the supply does not help");
  }

  @Test
  void what_cannot_be_a_reading_or_a_suspect_is_refused() {
    GaugeTest test = GaugeTest.of(TOLD, GRINDER);
    List<GaugeReading> rest = List.of(read(A, "supply", ToolState.AT_REST, 7.0));
    assertThatExceptionOfType(IllegalArgumentException.class)
        .isThrownBy(() -> test.read(rest))
        .withMessageContaining("while the tool runs");
    GaugeReading once = read(A, "hose", ToolState.RUNNING, 6.0);
    assertThatExceptionOfType(IllegalArgumentException.class)
        .isThrownBy(() -> test.read(List.of(once, once)))
        .withMessageContaining("give the mean");
    assertThatExceptionOfType(IllegalArgumentException.class)
        .isThrownBy(() -> test.read(List.of(read(A, "wall", ToolState.RUNNING, 6.0))))
        .withMessageContaining("[supply, filter, coupling, hose]")
        .withMessageContaining("\"wall\"");
    PressureGauge other = PressureGauge.ofClass(
        "A", GaugeClass.CLASS_4, GaugePressure.ofBar(10.0), PressureDrop.ofBar(0.1));
    assertThatExceptionOfType(IllegalArgumentException.class)
        .isThrownBy(() -> test.read(List.of(once, read(other, "filter", ToolState.RUNNING, 6.0))))
        .withMessageContaining("two called \"A\"");
    assertThatExceptionOfType(IllegalArgumentException.class)
        .isThrownBy(() -> test.suspecting(List.of(Suspect.bore("coupling"))))
        .withMessageContaining("was bore of coupling");
    assertThatExceptionOfType(IllegalArgumentException.class)
        .isThrownBy(() -> test.unmarked("supply"))
        .withMessageContaining("\"supply\"");
    assertThatExceptionOfType(IllegalArgumentException.class)
        .isThrownBy(() -> test.withLossKnownWithin("hose", 1.5))
        .withMessageContaining("[0, 1]");
    assertThatExceptionOfType(IllegalArgumentException.class)
        .isThrownBy(() -> read(A, "hose", ToolState.RUNNING, 10.5))
        .withMessageContaining("look at its scale");
  }

  @Test
  @SuppressWarnings("NullAway")
  void a_null_is_refused_by_its_name() {
    GaugeTest test = GaugeTest.of(TOLD, GRINDER);
    Map<String, Runnable> doors = Map.of(
        "run", () -> GaugeTest.of(null, GRINDER),
        "tool", () -> GaugeTest.of(TOLD, null),
        "suspects", () -> test.suspecting(null),
        "element", () -> test.unmarked(null),
        "holding", () -> test.withSupplyHolding(null),
        "readings", () -> test.read(null));
    doors.forEach(
        (name, door) -> assertThatNullPointerException().isThrownBy(door::run).withMessage(name));
  }

  /** What is known better, and a supply that holds better, leave less to other explanations. */
  @Test
  void a_loss_that_is_known_better_makes_a_firmer_answer() {
    List<GaugeReading> readings =
        readings(run(9.0, 2.4, 9.5), 0.0, "supply", "filter", "coupling", "hose");
    GaugeTest rough = GaugeTest.of(TOLD, GRINDER)
        .withLossKnownWithin("coupling", 0.5)
        .withToolAirKnownWithin(0.3);
    GaugeTest fine = GaugeTest.of(TOLD, GRINDER)
        .withLossKnownWithin("coupling", 0.02)
        .withToolAirKnownWithin(0.02)
        .withSupplyHolding(PressureDrop.ofBar(0.02));
    assertThat(chance(fine.read(readings), Suspect.part("coupling")))
        .isGreaterThan(0.9)
        .isGreaterThan(chance(rough.read(readings), Suspect.part("coupling")));
    assertThat(fine).isNotEqualTo(rough).isNotEqualTo(GaugeTest.of(TOLD, GRINDER));
    assertThat(GaugeTest.of(TOLD, GRINDER)).isEqualTo(GaugeTest.of(TOLD, GRINDER));
    assertThat(fine.read(readings))
        .isEqualTo(fine.read(readings))
        .hasSameHashCodeAs(fine.read(readings));
  }

  private static double chance(Diagnosis found, Suspect suspect) {
    return found.explanations().stream()
        .filter(each -> each.suspect().equals(suspect))
        .findFirst()
        .orElseThrow()
        .probability();
  }

  /** Two readings of one gauge at one pressure differ by friction and rounding alone. */
  @Test
  void what_a_gauge_has_wrong_in_both_readings_cancels() {
    double shared = A.covariance(7.0e5, 7.0e5);
    double apart = 2.0 * (shared + A.ownVariance()) - 2.0 * A.covariance(7.0e5, 7.0e5);
    assertThat(apart).isCloseTo(2.0 * A.ownVariance(), within(1.0e-6));
    // L = 0.1 bar: u² = L²/3; half of it, and a quarter times 0.7², is shared; d²/12 with d = 0.05
    // bar
    double square = 1.0e4 * 1.0e4 / 3.0;
    assertThat(shared).isCloseTo(square * (0.5 + 0.25 * 0.49), within(1.0));
    assertThat(A.ownVariance()).isCloseTo(0.25 * square + 5.0e3 * 5.0e3 / 12.0, within(1.0));
  }

  /** EN 837-1: 1.6 % of 10 bar are 0.16 bar, of 160 psi 2.56 psi. */
  @Test
  void a_class_tells_the_limit_of_error_of_a_scale() {
    assertThat(GaugeClass.parse("1,6").limitOfError(GaugePressure.ofBar(10.0)).bar())
        .isCloseTo(0.16, within(1.0e-12));
    assertThat(GaugeClass.parse("class 1.6")
            .limitOfError(GaugePressure.ofPsi(160.0))
            .psi())
        .isCloseTo(2.56, within(1.0e-12));
    for (GaugeClass each : GaugeClass.values()) {
      assertThat(GaugeClass.parse(each.toString())).isEqualTo(each);
    }
    assertThatExceptionOfType(IllegalArgumentException.class)
        .isThrownBy(() -> GaugeClass.parse("grade B"))
        .withMessageContaining("EN 837-1")
        .withMessageContaining("limit of error as a pressure");
  }
}
