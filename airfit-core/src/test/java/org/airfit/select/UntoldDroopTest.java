package org.airfit.select;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.assertThatNullPointerException;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.airfit.flow.CapacityRange;
import org.airfit.flow.FlowCapacity;
import org.airfit.joint.End;
import org.airfit.plant.Regulator;
import org.airfit.plant.Supply;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.Length;
import org.airfit.quantity.PressureDrop;
import org.airfit.quantity.Range;
import org.airfit.quantity.SonicConductance;
import org.airfit.working.UnitSystem;
import org.junit.jupiter.api.Test;

/** A regulator of which nobody told the droop: all from none to 1 bar is judged, and asked for where it decides. */
class UntoldDroopTest {

  private static final End FEMALE = End.parse("3/8 NPT female");
  /** Of "up to 0.4 bar" and "more than 0.4 bar, up to 1 bar" the upper end. */
  private static final Pattern LAST_NUMBER = Pattern.compile("([0-9.]+) bar$");

  private static final Range<PressureDrop> NONE = Range.exactly(PressureDrop.ofBar(0.0));

  private static Part.Regulator regulator(Range<PressureDrop> droop) {
    return new Part.Regulator(
        Shelf.steel("holder"),
        RegulatorKind.REGULATOR,
        CapacityRange.exactly(
            FlowCapacity.of(SonicConductance.ofCubicDecimetresPerSecondBar(20.0), 0.3)),
        droop,
        Optional.empty(),
        FEMALE,
        FEMALE);
  }

  private static Selection chosen(double needed, Range<PressureDrop> droop) {
    List<Part> parts = new ArrayList<>(
        List.of(Shelf.hose(Shelf.steel("10 mm hose"), 9.5, 10.0), regulator(droop)));
    Requirement job = Requirement.forTool(
            FreeAirFlow.ofAnrLitresPerSecond(5.0), GaugePressure.ofBar(needed))
        .toolInlet(FEMALE)
        .supply(Shelf.SUPPLY, Shelf.ATMOSPHERE)
        .outlet(End.parse("3/8 NPT male"))
        .layout(Layout.of(List.of(
            Slot.regulator("regulator", GaugePressure.ofBar(6.0)),
            Slot.hose("hose", Length.ofMetres(8.0)))))
        .build();
    return Selection.of(job, Catalogue.of(parts));
  }

  private static Proposal best(Selection selection) {
    return selection.fold(
        fitting -> fitting.best(), nothing -> nothing.closest().get(0));
  }

  private static Finding air(Selection selection) {
    return best(selection).of(Rule.AIR_AT_TOOL);
  }

  private static double bar(Selection selection) {
    return Shelf.pascalsAtTool(best(selection)) / 1.0e5;
  }

  /** With 0.5 bar to spare of the 6 bar it is set to, it depends, and turns where the droop eats them. */
  @Test
  void where_the_droop_decides_it_is_asked_for() {
    Selection exact = chosen(5.5, NONE);
    Selection untold = chosen(5.5, Regulator.UNTOLD_DROOP);
    assertThat(air(exact).outcome()).isEqualTo(RuleOutcome.MET);
    assertThat(air(untold).outcome()).isEqualTo(RuleOutcome.OPEN);
    double spare = bar(exact) - 5.5;
    String turns = best(untold).doubts().get(0).enoughIf(UnitSystem.SI).orElseThrow();
    assertThat(turns).as("by the gauge at the flow of the job").endsWith(" bar at 5 L/s ANR");
    assertThat(Double.parseDouble(turns.replaceAll("at most | bar at .*", "")))
        .isCloseTo(spare, within(0.02));
    assertThat(air(untold).reason())
        .contains("It is enough if the droop of part holder is " + turns
            + " (nobody told it: 0 to 1 bar reckoned, common practice, no source): ask for it.");
  }

  @Test
  void where_it_is_enough_even_with_the_worst_it_is_met_and_says_so() {
    Selection untold = chosen(4.5, Regulator.UNTOLD_DROOP);
    assertThat(air(untold).outcome()).isEqualTo(RuleOutcome.MET);
    assertThat(air(untold).reason())
        .contains("at least")
        .contains(
            "It is enough whatever the droop of part holder is, which nobody told: up to 1 bar"
                + " are reckoned with (common practice, no source).");
    assertThat(air(chosen(4.5, NONE)).reason()).doesNotContain("droop");
    Range<PressureDrop> told = new Range<>(PressureDrop.ofBar(0.1), PressureDrop.ofBar(0.3));
    assertThat(air(chosen(4.5, told)).reason()).doesNotContain("droop");
    assertThat(air(chosen(5.5, told)).reason()).doesNotContain("nobody told");
  }

  /** By hand: 6 bar above 1 bar, less 0.4 bar, are 6.6 bar; what droops by more than it is set to leaves 1 bar. */
  @Test
  void what_a_regulator_does_is_told_at_its_most_droop() {
    Range<PressureDrop> some = new Range<>(PressureDrop.ofBar(0.1), PressureDrop.ofBar(0.4));
    for (double[] row : new double[][] {{6.0, 6.6e5}, {0.4, 1.0e5}, {0.3, 1.0e5}}) {
      assertThat(regulator(some)
              .element(GaugePressure.ofBar(row[0]), Shelf.ATMOSPHERE)
              .outlet(1.0e-4, 9.0e5, 293.15, 1.8e-5))
          .isCloseTo(row[1], within(1.0e-3));
    }
  }

  @Test
  @SuppressWarnings("NullAway") // what a caller without null checks could pass
  void a_regulator_names_the_droop_that_is_null() {
    assertThatNullPointerException().isThrownBy(() -> regulator(null)).withMessage("droopRange");
    Part.Regulator regulator = regulator(NONE);
    assertThatNullPointerException()
        .isThrownBy(() -> regulator.element(null, Shelf.ATMOSPHERE))
        .withMessage("set");
    assertThatNullPointerException()
        .isThrownBy(() -> regulator.element(GaugePressure.ofBar(6.0), null))
        .withMessage("atmosphere");
  }

  @Test
  void a_regulator_that_droops_by_all_it_is_set_to_holds_nothing() {
    Range<PressureDrop> all = new Range<>(PressureDrop.ofBar(0.0), PressureDrop.ofBar(9.0));
    assertThat(air(chosen(5.5, all)).reason()).contains("no air at all");
  }

  /** The same of the regulator of the supply, 7 bar above the atmosphere. */
  @Test
  void so_it_is_of_the_regulator_of_the_supply() {
    Requirement.Builder job = Shelf.job().highest(GaugePressure.ofBar(9.0)).regulated();
    Requirement untold = job.droop(Regulator.UNTOLD_DROOP).build();
    assertThat(untold.isExact()).isFalse();
    assertThat(GaugePressure.of(untold.toOutlet().supply().still().pressure(), Shelf.ATMOSPHERE)
            .pascals())
        .isCloseTo(6.0e5, within(1.0e-6));
    assertThat(untold.pressures().usual().pascals()).isCloseTo(7.0e5, within(1.0e-6));
    Finding air = air(Selection.of(untold, Catalogue.of(Shelf.parts())));
    assertThat(air.outcome()).isEqualTo(RuleOutcome.OPEN);
    assertThat(air.reason()).contains("droop of the regulator at the supply is at most");
    Requirement known = job.droop(NONE).build();
    assertThat(known.isExact()).isTrue();
    assertThat(air(Selection.of(known, Catalogue.of(Shelf.parts()))).outcome())
        .isEqualTo(RuleOutcome.MET);
  }

  @Test
  void a_droop_is_that_of_a_regulator_that_does_not_tell_its_own() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> Shelf.job().droop(NONE).build())
        .withMessageContaining("of a supply without one; say regulated() too");
    Supply told = new Regulator(
        Shelf.SUPPLY, FreeAirFlow.ofAnrLitresPerSecond(10.0), Shelf.SUPPLY.pressure());
    assertThatIllegalArgumentException()
        .isThrownBy(() -> Shelf.job()
            .supply(told, Shelf.ATMOSPHERE)
            .highest(GaugePressure.ofBar(9.0))
            .regulated()
            .droop(NONE)
            .build())
        .withMessageContaining("beside that of the supply; leave it out");
  }

  private static Requirement.Builder regulated() {
    return Shelf.job().highest(GaugePressure.ofBar(7.3)).regulated().droop(Regulator.UNTOLD_DROOP);
  }

  private static Interview about(Requirement.Builder job) {
    return Interview.of(job.build(), Catalogue.of(Shelf.parts()))
        .with(Topic.MEDIUM, "compressed air");
  }

  private static Question droopAsked(Interview talk) {
    return talk.questions().stream()
        .filter(question -> question.topic() == Topic.REGULATOR_DROOP)
        .findFirst()
        .orElseThrow();
  }

  /** Others take 3 L/s from a tee behind the regulator: the gauge behind it must be read at 5 + 3 L/s. */
  @Test
  void the_droop_that_is_enough_is_that_at_all_the_air_that_goes_through() {
    Part.Splitter tee = new Part.Splitter(
        Shelf.steel("tee"),
        CapacityRange.exactly(
            FlowCapacity.of(SonicConductance.ofCubicDecimetresPerSecondBar(20.0), 0.3)),
        FEMALE,
        List.of(FEMALE, FEMALE));
    Requirement job = Requirement.forTool(
            FreeAirFlow.ofAnrLitresPerSecond(5.0), GaugePressure.ofBar(5.3))
        .toolInlet(FEMALE)
        .supply(Shelf.SUPPLY, Shelf.ATMOSPHERE)
        .outlet(End.parse("3/8 NPT male"))
        .layout(Layout.of(List.of(
            Slot.regulator("regulator", GaugePressure.ofBar(6.0)),
            Slot.splitter("tee")
                .with(tee)
                .sharedWith(new Range<>(
                    FreeAirFlow.ofAnrLitresPerSecond(1.0), FreeAirFlow.ofAnrLitresPerSecond(3.0))),
            Slot.hose("hose", Length.ofMetres(8.0)))))
        .build();
    Selection chosen = Selection.of(
        job,
        Catalogue.of(List.of(
            Shelf.hose(Shelf.steel("10 mm hose"), 9.5, 10.0), regulator(Regulator.UNTOLD_DROOP))));
    assertThat(best(chosen).doubts())
        .filteredOn(doubt -> doubt.what().startsWith("droop"))
        .singleElement()
        .satisfies(doubt ->
            assertThat(doubt.enoughIf(UnitSystem.SI).orElseThrow()).endsWith(" bar at 8 L/s ANR"));
  }

  /** A regulator of the line that is there is asked about by its name, and its answer holds. */
  @Test
  void the_interview_asks_for_that_of_a_regulator_in_the_line() {
    Catalogue catalogue = Catalogue.of(List.of(Shelf.hose(Shelf.steel("10 mm hose"), 9.5, 10.0)));
    Slot.Regulated there = new Slot.Regulated(
        "at the bench",
        GaugePressure.ofBar(6.0),
        Optional.empty(),
        Optional.of(regulator(Regulator.UNTOLD_DROOP)));
    Interview talk = Interview.of(
            Requirement.forTool(FreeAirFlow.ofAnrLitresPerSecond(5.0), GaugePressure.ofBar(5.5))
                .toolInlet(FEMALE)
                .supply(Shelf.SUPPLY, Shelf.ATMOSPHERE)
                .outlet(End.parse("3/8 NPT male"))
                .layout(Layout.of(List.of(there, Slot.hose("hose", Length.ofMetres(8.0)))))
                .build(),
            catalogue)
        .with(Topic.MEDIUM, "compressed air");
    Subject subject = Subject.of(Topic.REGULATOR_DROOP, "at the bench");
    Question asked = talk.questions().stream()
        .filter(each -> each.subject().equals(subject))
        .findFirst()
        .orElseThrow();
    assertThat(asked.inWords()).startsWith("At the bench: By how much does the gauge");
    assertThat(asked.answers().get(0).toString())
        .startsWith("up to ")
        .contains("settled: Air at the tool");
    assertThat(asked.answers().get(1).toString()).contains("not met: Air at the tool");
    Interview told = talk.with(subject, "0.1 to 0.2 bar");
    Slot.Regulated drooping = (Slot.Regulated)
        told.requirement().orElseThrow().layout().slot("at the bench").orElseThrow();
    assertThat(drooping.regulator().orElseThrow().droopRange())
        .isEqualTo(Range.exactly(PressureDrop.ofBar(0.2)));
    assertThat(told.questions()).noneMatch(each -> each.subject().equals(subject));
    assertThat(talk.withUnknown(subject).subjectsNotKnown()).contains(subject);
    assertThatIllegalArgumentException()
        .isThrownBy(() -> talk.with(Subject.of(Topic.REGULATOR_DROOP, "hose"), "0.2 bar"))
        .withMessageContaining("regulator that is asked about must be one of the layout");
  }

  /** The interview asks for it where it decides; the answer turns where the air does. */
  @Test
  void the_interview_asks_for_it_where_it_decides() {
    Interview talk = about(regulated());
    Question asked = droopAsked(talk);
    assertThat(asked.answers()).hasSize(2);
    assertThat(asked.answers().get(0).toString())
        .startsWith("up to ")
        .contains("settled: Air at the tool");
    assertThat(asked.answers().get(1).toString()).startsWith("more than ").contains("nothing");
    Interview settled = talk.with(Topic.REGULATOR_DROOP, "0.1 to 0.2 bar");
    assertThat(settled.requirement().orElseThrow().toOutlet().supply().still().pressure())
        .isEqualTo(GaugePressure.ofBar(6.8).absolute(Shelf.ATMOSPHERE));
    assertThat(settled.questions())
        .noneMatch(question -> question.topic() == Topic.REGULATOR_DROOP);
  }

  /**
   * Where the regulator is set to is a range too, some droops are too much at any setting: whatever a customer tells
   * does what the span says that it lies in.
   */
  @Test
  void with_a_range_of_settings_every_droop_does_what_its_span_says() {
    Interview talk = about(regulated().leastSetting(GaugePressure.ofBar(6.5)));
    Question asked = droopAsked(talk);
    List<Double> ends = new ArrayList<>(List.of(-1.0));
    for (PossibleAnswer answer : asked.answers()) {
      Matcher last = LAST_NUMBER.matcher(answer.inWords());
      ends.add(last.find() ? Double.parseDouble(last.group(1)) : Double.NaN);
    }
    ends.set(ends.size() - 1, 1.0);
    assertThat(ends).isSorted();
    for (int i = 1; i < 50; i++) {
      double droop = 0.02 * i;
      int span = 0;
      while (droop > ends.get(span + 1)) {
        span++;
      }
      if (Math.min(Math.abs(droop - ends.get(span)), Math.abs(droop - ends.get(span + 1)))
          > 0.005) {
        assertThat(air(talk, droop + " bar"))
            .as(droop + " bar in " + asked.answers())
            .isEqualTo(air(talk, asked.answers().get(span).text()));
      }
    }
  }

  private static RuleOutcome air(Interview talk, String droop) {
    Interview told = talk.with(Topic.REGULATOR_DROOP, droop);
    return air(Selection.of(told.requirement().orElseThrow(), Catalogue.of(Shelf.parts())))
        .outcome();
  }
}
