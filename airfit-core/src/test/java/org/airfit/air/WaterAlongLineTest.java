package org.airfit.air;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.Size;
import org.airfit.Comparison;
import org.airfit.Pencil;
import org.airfit.Rows;
import org.airfit.Rows.Row;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.MassFlow;
import org.airfit.quantity.Range;
import org.airfit.quantity.Temperature;
import org.airfit.working.Completeness;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class WaterAlongLineTest {

  private static final String CHAPTER = "Air: water along a line";

  /** The tables weigh 8.34 lb to the gallon [kg]. */
  private static final double GALLON = 8.34 * 0.45359237;

  private static final AbsolutePressure LINE = AbsolutePressure.ofBar(8.0);

  private static WaterPlace place(String name, double least, double most, boolean isDrained) {
    return new WaterPlace(
        name,
        new Range<>(Temperature.ofCelsius(least), Temperature.ofCelsius(most)),
        Range.exactly(LINE),
        Optional.empty(),
        isDrained);
  }

  private static WaterPlace dryer(double celsius) {
    return new WaterPlace(
        "dryer",
        new Range<>(Temperature.ofCelsius(20.0), Temperature.ofCelsius(30.0)),
        Range.exactly(LINE),
        Optional.of(Temperature.ofCelsius(celsius)),
        false);
  }

  private static DewPoint intake(double celsius) {
    return new DewPoint(Temperature.ofCelsius(celsius), AbsolutePressure.ofBar(1.0));
  }

  private static WaterAlongLine line(WaterPlace... places) {
    return new WaterAlongLine(
        MassFlow.ofKilogramsPerSecond(0.1), intake(5.0), intake(25.0), List.of(places));
  }

  private static double water(MassFlow flow) {
    return flow.kilogramsPerSecond();
  }

  static Stream<Row> published() {
    return Rows.of(WaterAlongLineTest.class, "water_along_line_published.csv");
  }

  @ParameterizedTest
  @MethodSource("published")
  void printed_days_are_met(Row row) {
    AbsolutePressure around = AbsolutePressure.ofPsi(14.7);
    Range<AbsolutePressure> pressure =
        Range.exactly(AbsolutePressure.ofPsi(14.7 + row.number("p_line_psig")));
    DewPoint damp = DewPoint.of(
        AirState.of(around, Temperature.ofFahrenheit(row.number("t_intake_degF"))),
        row.number("rh"));
    Temperature cooled = Temperature.ofFahrenheit(row.number("t_cooler_out_degF"));
    Temperature next = Temperature.ofFahrenheit(row.number("t_next_degF"));
    WaterAlongLine line = new WaterAlongLine(
        FreeAirFlow.ofScfm60F(row.number("flow_scfm")).massFlow(),
        damp,
        damp,
        List.of(
            new WaterPlace("cooler", Range.exactly(cooled), pressure, Optional.empty(), true),
            new WaterPlace("next", Range.exactly(next), pressure, Optional.empty(), true)));
    double times = 3600.0 * row.number("hours") / GALLON;
    List<WaterAlongLine.AtPlace> course = line.warmDay();
    compare(row, "intake_gal", times * water(line.takenIn()));
    compare(row, "cooler_gal", times * water(course.get(0).drainedOff()));
    compare(row, "next_gal", times * water(course.get(1).drainedOff()));
  }

  private static void compare(Row row, String column, double ours) {
    if (row.has(column)) {
      Comparison.of(
              CHAPTER,
              row.text("id") + ", " + column,
              row.number(column),
              "gal",
              row.evidence(column))
          .isMetBy(
              ours,
              row.halfDigit(column) + 0.05 * row.number(column),
              "5 % and half a digit: rules of thumb of two digits, which do not say at what state"
                  + " a cfm is counted");
    }
  }

  /** Where every place drains, the older balance says the same. */
  @Test
  void a_line_that_drains_everywhere_is_the_water_balance() {
    WaterAlongLine line =
        line(place("cooler", 35.0, 35.0, true), dryer(3.0), place("pipe", -5.0, -5.0, true));
    WaterBalance balance = WaterBalance.ofDryAir(line.dryAir(), intake(25.0))
        .through("cooler", new DewPoint(Temperature.ofCelsius(35.0), LINE))
        .through("dryer", new DewPoint(Temperature.ofCelsius(3.0), LINE))
        .through("pipe", new DewPoint(Temperature.ofCelsius(-5.0), LINE));
    for (int i = 0; i < 3; i++) {
      assertThat(water(line.warmDay().get(i).drainedOff()))
          .isCloseTo(water(balance.stages().get(i).takenOut()), within(1.0e-15));
    }
    assertThat(line.warmDay().get(2).dewPoint().orElseThrow().temperature().celsius())
        .isCloseTo(-5.0, within(1.0e-9));
  }

  @Test
  void liquid_that_nothing_drains_goes_on_and_dries_up_where_it_is_warm() {
    WaterAlongLine line = line(
        place("cold pipe", 5.0, 5.0, false),
        place("warm pipe", 90.0, 90.0, true),
        place("end", 5.0, 5.0, true));
    List<WaterAlongLine.AtPlace> course = line.warmDay();
    assertThat(water(course.get(0).carriedOn())).isPositive();
    assertThat(water(course.get(0).drainedOff())).isZero();
    assertThat(water(course.get(1).liquid())).isZero();
    assertThat(water(course.get(1).vapour())).isEqualTo(water(line.takenIn()));
    assertThat(water(course.get(2).drainedOff())).isEqualTo(water(course.get(0).carriedOn()));
  }

  @Test
  void the_most_at_a_place_is_with_the_warmest_in_front_of_it_and_itself_at_its_coldest() {
    WaterAlongLine line = line(place("cooler", 20.0, 40.0, true), place("pipe", 0.0, 30.0, false));
    double most = water(line.most().get(1).most().liquid());
    WaterAlongLine worst = line(place("cooler", 40.0, 40.0, true), place("pipe", 0.0, 0.0, false));
    assertThat(most).isEqualTo(water(worst.warmDay().get(1).liquid()));
    assertThat(most)
        .isGreaterThan(water(line.warmDay().get(1).liquid()))
        .isGreaterThan(water(line.coldDay().get(1).liquid()));
    assertThat(line.most())
        .extracting(WaterAlongLine.AtMost::need)
        .containsExactly(DrainNeed.FITTED, DrainNeed.MISSING);
  }

  @Test
  void behind_a_dryer_water_comes_only_while_it_stands_still() {
    WaterAlongLine line = line(
        place("cooler", 30.0, 40.0, true),
        dryer(3.0),
        place("hall", 15.0, 30.0, false),
        place("attic", 50.0, 60.0, false));
    assertThat(line.most())
        .extracting(WaterAlongLine.AtMost::need)
        .containsExactly(
            DrainNeed.FITTED, DrainNeed.FITTED, DrainNeed.WITHOUT_DRYER, DrainNeed.NONE);
    assertThat(water(line.most().get(2).withoutDryer())).isPositive();
    assertThat(line.most().get(2).need().label())
        .isEqualTo("water comes only while the dryer stands still");
  }

  /** Behind the dryer the pressure falls by 1 bar, from 5 or from 8 bar: the dew point falls less at the higher one. */
  @Test
  void the_dampest_end_is_at_the_pressure_at_which_the_dew_point_falls_less() {
    Range<AbsolutePressure> before =
        new Range<>(AbsolutePressure.ofBar(5.0), AbsolutePressure.ofBar(8.0));
    Range<AbsolutePressure> behind =
        new Range<>(AbsolutePressure.ofBar(4.0), AbsolutePressure.ofBar(7.0));
    Range<Temperature> air = Range.exactly(Temperature.ofCelsius(30.0));
    WaterAlongLine line = line(
        new WaterPlace("dryer", air, before, Optional.of(Temperature.ofCelsius(10.0)), false),
        new WaterPlace("end", air, behind, Optional.empty(), false));
    DewPoint expected = new DewPoint(Temperature.ofCelsius(10.0), AbsolutePressure.ofBar(8.0))
        .at(AbsolutePressure.ofBar(7.0));
    assertThat(line.dampestEnd().orElseThrow().temperature().celsius())
        .isCloseTo(expected.temperature().celsius(), within(1.0e-9));
    assertThat(line(place("hot", 150.0, 150.0, false)).dampestEnd()).isPresent();
  }

  @Test
  void above_100_degrees_nothing_condenses() {
    WaterAlongLine line = line(place("discharge", 101.0, 180.0, false));
    assertThat(water(line.warmDay().get(0).liquid())).isZero();
    assertThat(water(line.coldDay().get(0).liquid())).isZero();
  }

  /** Water in is water out, whatever the places; the balance is summed here anew. */
  @Property
  void no_water_is_lost(
      @ForAll @Size(min = 1, max = 12) List<@DoubleRange(min = -60.0, max = 120.0) Double> celsius,
      @ForAll @DoubleRange(min = -20.0, max = 45.0) double damp,
      @ForAll @DoubleRange(min = 1.5, max = 15.0) double bar,
      @ForAll long drains) {
    List<WaterPlace> places = new ArrayList<>();
    for (int i = 0; i < celsius.size(); i++) {
      places.add(new WaterPlace(
          "place " + i,
          Range.exactly(Temperature.ofCelsius(celsius.get(i))),
          Range.exactly(AbsolutePressure.ofBar(bar)),
          i % 4 == 3 ? Optional.of(Temperature.ofCelsius(-20.0)) : Optional.empty(),
          ((drains >> i) & 1) == 1));
    }
    WaterAlongLine line =
        new WaterAlongLine(MassFlow.ofKilogramsPerSecond(0.2), intake(damp), intake(damp), places);
    for (List<WaterAlongLine.AtPlace> course : List.of(line.warmDay(), line.coldDay())) {
      WaterAlongLine.AtPlace end = course.get(course.size() - 1);
      double out = water(end.vapour()) + water(end.carriedOn());
      for (WaterAlongLine.AtPlace at : course) {
        out += water(at.drainedOff());
        assertThat(water(at.liquid())).isNotNegative();
      }
      assertThat(out).isCloseTo(water(line.takenIn()), within(1.0e-9 * water(line.takenIn())));
    }
    assertThat(line.most()).hasSameSizeAs(places);
  }

  @Test
  void doors_refuse_what_cannot_be() {
    WaterPlace pipe = place("pipe", 5.0, 10.0, true);
    assertThatIllegalArgumentException()
        .isThrownBy(() -> line())
        .withMessage("places along a line must be in [1, 20], were 0");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> line(pipe, pipe))
        .withMessageContaining("a name each");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new WaterAlongLine(
            MassFlow.ofKilogramsPerSecond(0.1), intake(25.0), intake(5.0), List.of(pipe)))
        .withMessageContaining("driest air");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> place("pipe", -101.0, 10.0, true))
        .withMessageContaining("[-100, 300] °C");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> place("pipe", 0.0, 301.0, true))
        .withMessageContaining("[-100, 300] °C");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> place(" ", 0.0, 1.0, true))
        .withMessageContaining("name of a place");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> dryer(101.0))
        .withMessageContaining("[-100, 100] °C");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new WaterPlace(
            "pipe",
            Range.exactly(Temperature.ofCelsius(1.0)),
            Range.exactly(AbsolutePressure.ofPascals(0.0)),
            Optional.empty(),
            true))
        .withMessageContaining("above 0 Pa(a)");
  }

  @Test
  void the_printed_numbers_give_the_printed_answer() {
    WaterAlongLine line = line(
        place("cooler", 25.0, 35.0, true),
        place("receiver", 20.0, 30.0, false),
        dryer(-40.0),
        place("pipe", 10.0, 20.0, false));
    Pencil.check(line);
    Completeness.check(line);
    Pencil.check(line(place("warm", 70.0, 90.0, false)));
    Pencil.check(line(place("end", 3.0, 4.0, false)));
  }
}
