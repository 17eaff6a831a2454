package org.airfit.flow;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.assertThatNullPointerException;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import org.airfit.air.AirState;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.Area;
import org.airfit.quantity.BasicBodySize;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.PressureDrop;
import org.airfit.quantity.SonicConductance;
import org.airfit.quantity.Temperature;
import org.airfit.source.Source;
import org.junit.jupiter.api.Test;

class FlowTableTest {

  private static final Source SHEET = Source.demo("sheet of a filter");
  private static final AirState AIR =
      AirState.of(AbsolutePressure.ofBar(7.0), Temperature.ofKelvins(293.15));

  private static FlowLoss point(double litres, double bar) {
    return new FlowLoss(FreeAirFlow.ofAnrLitresPerSecond(litres), PressureDrop.ofBar(bar));
  }

  private static double outlet(FlowElement element, double litres, double bar, double kelvins) {
    double flow = FreeAirFlow.ofAnrLitresPerSecond(litres).massFlow().kilogramsPerSecond();
    return element.outlet(flow, 1.0e5 * bar, kelvins, 1.8e-5) / 1.0e5;
  }

  private static FlowTable of(FlowLoss... points) {
    return FlowElements.ofTable(AIR, List.of(points), SHEET);
  }

  @Test
  void the_points_are_met_and_between_them_the_drop_is_straight_in_the_square() {
    FlowTable filter = of(point(10.0, 0.1), point(20.0, 0.7));
    assertThat(outlet(filter, 0.0, 7.0, 293.15)).isEqualTo(7.0);
    assertThat(outlet(filter, 10.0, 7.0, 293.15)).isCloseTo(6.9, within(1.0e-12));
    assertThat(outlet(filter, 20.0, 7.0, 293.15)).isCloseTo(6.3, within(1.0e-12));
    assertThat(outlet(filter, 5.0, 7.0, 293.15)).isCloseTo(7.0 - 0.1 / 4.0, within(1.0e-12));
    // halfway in the square between 100 and 400
    assertThat(outlet(filter, Math.sqrt(250.0), 7.0, 293.15)).isCloseTo(6.6, within(1.0e-12));
    assertThat(outlet(filter, 20.0 * (1.0 + 1.0e-12), 7.0, 293.15)).isNaN();
  }

  @Test
  void at_another_inlet_the_ratio_is_that_of_the_same_flow_over_pressure_and_root_of_temperature() {
    FlowTable filter = of(point(10.0, 0.7));
    assertThat(outlet(filter, 5.0, 3.5, 293.15)).isCloseTo(3.15, within(1.0e-12));
    assertThat(outlet(filter, 10.0 / Math.sqrt(1.21), 7.0, 293.15 * 1.21))
        .isCloseTo(6.3, within(1.0e-12));
  }

  @Test
  @SuppressWarnings("NullAway") // what a caller without null checks could pass
  void a_sheet_that_cannot_be_is_refused() {
    assertThatIllegalArgumentException()
        .isThrownBy(FlowTableTest::of)
        .withMessage("points of a table must be at least 1, was 0");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> of(point(0.0, 0.0)))
        .withMessageStartingWith("flows of a table must rise from above 0");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> of(point(10.0, 0.1), point(10.0, 0.2)))
        .withMessageEndingWith("at point 2");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> of(point(10.0, 0.1), point(11.0, 0.0999)))
        .withMessageStartingWith("drops of a table must not fall as the flow rises");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> of(point(10.0, 7.0)))
        .withMessageStartingWith("drops of a table must be below the inlet pressure");
    assertThat(of(point(10.0, 0.1), point(11.0, 0.1), point(12.0, 6.999)).points())
        .hasSize(3);
    assertThatNullPointerException()
        .isThrownBy(() -> FlowElements.ofTable(AIR, List.of(point(1.0, 0.1)), null))
        .withMessage("source");
  }

  @Test
  void the_list_is_copied_and_tables_compare_by_value() {
    List<FlowLoss> points = new ArrayList<>(List.of(point(10.0, 0.1)));
    FlowTable table = FlowElements.ofTable(AIR, points, SHEET);
    points.add(point(20.0, 0.2));
    assertThat(table.points()).hasSize(1);
    assertThat(table)
        .isEqualTo(of(point(10.0, 0.1)))
        .hasSameHashCodeAs(of(point(10.0, 0.1)))
        .isNotEqualTo(of(point(10.0, 0.2)))
        .isNotEqualTo(FlowElements.ofTable(AIR, table.points(), Source.demo("other")));
    assertThat(table.inlet()).isEqualTo(AIR);
    assertThat(table.source()).isEqualTo(SHEET);
  }

  @Test
  void no_elements_in_a_row_leave_the_air_as_it_is() {
    FlowElement none = FlowElements.inSeries(List.of());
    assertThat(none.outlet(1.0, 7.0e5, 300.0, 1.8e-5)).isEqualTo(7.0e5);
    assertThat(none.largest(7.0e5, 300.0, 1.8e-5)).isInfinite();
    assertThatIllegalArgumentException()
        .isThrownBy(() -> FlowElements.entrance(Area.ofSquareMetres(0.0)))
        .withMessageStartingWith("section of an entrance must be above 0");
  }

  /** What nobody may put together by hand. */
  @Test
  void answers_whose_parts_do_not_belong_together_are_refused() {
    FlowCapacity small = FlowCapacity.of(SonicConductance.ofCubicDecimetresPerSecondBar(1.0), 0.3);
    FlowCapacity large = FlowCapacity.of(SonicConductance.ofCubicDecimetresPerSecondBar(1.1), 0.3);
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new CapacityRange(large, small, SHEET))
        .withMessageStartingWith("smallest capacity must be at most the largest");
    assertThat(new CapacityRange(small, small, SHEET).most()).isEqualTo(small);
    FreeAirFlow flow = FreeAirFlow.ofScfm60F(30.0);
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new BodySizeAdvice(flow, List.of(BasicBodySize.ONE_HALF)))
        .withMessageEndingWith("ask BodySizeAdvice.of(flow)");
    assertThat(new BodySizeAdvice(flow, List.of(BasicBodySize.ONE_QUARTER)))
        .isEqualTo(BodySizeAdvice.of(flow));
  }
}
