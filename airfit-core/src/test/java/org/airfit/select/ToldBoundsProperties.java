package org.airfit.select;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import net.jqwik.api.Example;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.ShrinkingMode;
import org.airfit.joint.End;
import org.airfit.plant.Regulator;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.Length;
import org.airfit.quantity.Range;
import org.airfit.working.UnitSystem;

/** Who types a bound that is told gets what is told of it, in whatever units. */
class ToldBoundsProperties {

  /** "7 bar(g) or more", "up to 8 bar(g)", "more than 8 bar(g)", "less than 9 bar(g)", "just 30 psig". */
  private static final Pattern FROM = Pattern.compile("^(-?[0-9.]+) (\\S+(?: ANR)?) or more");

  private static final Pattern ABOVE = Pattern.compile("^more than (-?[0-9.]+) ([^,]+)");
  private static final Pattern TO = Pattern.compile("up to (-?[0-9.]+) (.+)$");
  private static final Pattern BELOW = Pattern.compile("less than (-?[0-9.]+) (.+)$");
  private static final Pattern JUST = Pattern.compile("^just (-?[0-9.]+) (.+)$");

  /** Less than the ninth digit of a pressure, and more than a double rounds. */
  private static final BigDecimal A_LITTLE = new BigDecimal("1e-6");

  /** What a customer may type: the bounds that belong to an answer, and what is a little within those that do not. */
  private static List<String> typed(String words) {
    List<String> typed = new ArrayList<>();
    add(typed, JUST, words, BigDecimal.ZERO);
    add(typed, FROM, words, BigDecimal.ZERO);
    add(typed, TO, words, BigDecimal.ZERO);
    add(typed, ABOVE, words, A_LITTLE);
    add(typed, BELOW, words, A_LITTLE.negate());
    return typed;
  }

  private static void add(List<String> typed, Pattern bound, String words, BigDecimal off) {
    Matcher found = bound.matcher(words);
    if (found.find()) {
      typed.add(new BigDecimal(found.group(1)).add(off).toPlainString() + " " + found.group(2));
    }
  }

  /** Holds every bound of every question; how many there were. */
  private static int hold(Interview talk, Catalogue catalogue, UnitSystem units) {
    int held = 0;
    for (Question question : talk.questions(units)) {
      for (PossibleAnswer answer : question.answers()) {
        if (!question.topic().isAmount()) {
          continue;
        }
        Standing told = standing(talk, question.subject(), answer.text(), catalogue);
        for (String typed : typed(answer.inWords())) {
          Standing after = standing(talk, question.subject(), typed, catalogue);
          assertThat(after.told())
              .as("%s told \"%s\", typed \"%s\"", question, answer, typed)
              .isEqualTo(told.told());
          assertThat(after.isFitting()).as(question + " " + typed).isEqualTo(told.isFitting());
          if (!goesByTheValue(question.topic())) {
            assertThat(after.parts()).as(question + " " + typed).isEqualTo(told.parts());
            assertThat(after.warnings()).as(question + " " + typed).isEqualTo(told.warnings());
          }
          held++;
        }
      }
    }
    return held;
  }

  /** Whether other parts may be proposed at other values that are told together. */
  private static boolean goesByTheValue(Topic topic) {
    return switch (topic) {
      case DUTY, EXACT_AIR, EXACT_PRESSURE, SETTING, HOSE_BORE, HOSE_LENGTH, AIR_OF_OTHERS -> true;
      default -> false;
    };
  }

  private static Standing standing(
      Interview talk, Subject subject, String answer, Catalogue catalogue) {
    return Standing.of(talk.with(subject, answer).requirement().orElseThrow(), catalogue);
  }

  private static Interview talk(Requirement.Builder job, Catalogue catalogue) {
    return Interview.of(job.build(), catalogue).with(Topic.MEDIUM, "compressed air");
  }

  @Property(tries = 4, shrinking = ShrinkingMode.OFF)
  void who_types_a_bound_gets_what_is_told_of_it(@ForAll long seed) {
    Jumble jumble = new Jumble(seed);
    Catalogue catalogue = Catalogue.of(jumble.parts());
    Interview talk = talk(jumble.job(), catalogue);
    hold(talk, catalogue, UnitSystem.US);
    hold(talk, catalogue, UnitSystem.SI);
  }

  /** Parts are rated for 16 bar(g), which is 232.06 psig: to the nearest that is 232.1 psig, and breaks them. */
  @Example
  void a_relief_valve_that_changes_nothing_is_told_no_higher_than_it_may_open() {
    Catalogue catalogue = Catalogue.of(Shelf.parts());
    Interview talk = talk(
        Shelf.job()
            .inFront(new Range<>(GaugePressure.ofBar(7.2), GaugePressure.ofBar(7.4)))
            .regulated(),
        catalogue);
    Question asked = talk.questions(UnitSystem.US).stream()
        .filter(each -> each.topic() == Topic.RELIEF_VALVE)
        .findFirst()
        .orElseThrow();
    assertThat(asked.answers())
        .extracting(PossibleAnswer::inWords)
        .anyMatch(words -> words.endsWith("up to 232 psig"))
        .anyMatch(words -> words.startsWith("more than 232.1 psig"));
    assertThat(hold(talk, catalogue, UnitSystem.US)).isGreaterThan(3);
  }

  /** Where the run decides: the air, the pressure needed, a setting, a droop, and a reach. */
  @Example
  void so_it_is_where_the_run_decides() {
    Catalogue catalogue = Catalogue.of(Shelf.parts());
    Range<FreeAirFlow> air = new Range<>(FreeAirFlow.ofScfm60F(8.0), FreeAirFlow.ofScfm60F(40.0));
    Range<GaugePressure> needed = new Range<>(GaugePressure.ofPsi(80.0), GaugePressure.ofPsi(99.0));
    int held = 0;
    for (UnitSystem units : UnitSystem.values()) {
      held +=
          hold(talk(of(air, Range.exactly(GaugePressure.ofBar(6.2))), catalogue), catalogue, units);
      held += hold(talk(of(Range.exactly(air.least()), needed), catalogue), catalogue, units);
      held += hold(
          talk(
              Shelf.job()
                  .highest(GaugePressure.ofBar(7.3))
                  .regulated()
                  .leastSetting(GaugePressure.ofBar(6.3)),
              catalogue),
          catalogue,
          units);
      held += hold(
          talk(
              Shelf.job()
                  .highest(GaugePressure.ofBar(9.0))
                  .regulated()
                  .droop(Regulator.UNTOLD_DROOP),
              catalogue),
          catalogue,
          units);
      held += hold(
          talk(
              Shelf.job().reach(new Range<>(Length.ofMetres(6.0), Length.ofMetres(15.0))),
              catalogue),
          catalogue,
          units);
    }
    assertThat(held).isGreaterThan(40);
  }

  private static Requirement.Builder of(Range<FreeAirFlow> air, Range<GaugePressure> needed) {
    return Requirement.forTool(air, needed)
        .toolInlet(End.parse("1/4 NPT female"))
        .supply(Shelf.SUPPLY, Shelf.ATMOSPHERE)
        .outlet(End.parse("3/8 NPT male"))
        .reach(Length.ofMetres(10.0));
  }

  /** A setting that a tool must not have above what its maker allows, in units that it was not told in. */
  @Example
  void what_must_not_be_exceeded_is_told_no_higher_than_it_is() {
    for (double pascals = 4.83e5; pascals < 4.93e5; pascals += 137.0) {
      GaugePressure rating = GaugePressure.ofPascals(pascals);
      Doubt doubt = new Doubt(
              "setting of reg",
              new Doubt.Told("4 to 6 bar(g)", Optional.of("at least 4.5 bar(g)")),
              new Doubt.Told("60 to 90 psig", Optional.of("at least 66 psig")),
              Doubt.Basis.TOLD)
          .upTo(rating, true);
      for (UnitSystem units : UnitSystem.values()) {
        String told = doubt.enoughIf(units).orElseThrow().replaceFirst(".* at most ", "");
        assertThat(GaugePressure.parse(told)).as(told).isLessThanOrEqualTo(rating);
      }
    }
  }
}
