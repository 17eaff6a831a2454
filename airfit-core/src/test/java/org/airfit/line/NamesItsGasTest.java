package org.airfit.line;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.airfit.air.AirState;
import org.airfit.flow.FannoFlow;
import org.airfit.flow.FlowCapacity;
import org.airfit.flow.IsentropicFlow;
import org.airfit.flow.IsothermalFlow;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.Length;
import org.airfit.quantity.MassFlow;
import org.airfit.quantity.SonicConductance;
import org.airfit.quantity.Temperature;
import org.airfit.working.UnitSystem;
import org.airfit.working.Worked;
import org.junit.jupiter.api.Test;

/** The working of a formula names its gas: it is air, and nothing else may be read into it. */
class NamesItsGasTest {

  private static final AirState AIR =
      AirState.of(AbsolutePressure.ofBar(8.0), Temperature.ofCelsius(20.0));
  private static final Conduit PIPE =
      Conduit.of(Length.ofMillimetres(12.0), Length.ofMetres(20.0), Wall.COMMERCIAL_STEEL);

  private static String title(Worked worked, UnitSystem units) {
    return worked.working(units).toText().split("\n", 2)[0].toLowerCase(Locale.ROOT);
  }

  @Test
  void every_working_of_a_flow_says_that_it_is_air() {
    FlowCapacity part = FlowCapacity.of(SonicConductance.ofCubicDecimetresPerSecondBar(3.0), 0.3);
    MassFlow some = MassFlow.ofKilogramsPerSecond(0.01);
    MassFlow much = MassFlow.ofKilogramsPerSecond(1.0);
    List<Worked> all = new ArrayList<>(List.of(
        part.passage(some, AIR),
        part.passage(much, AIR),
        IsentropicFlow.atMach(0.5),
        FannoFlow.atMach(0.5),
        IsothermalFlow.atMach(0.5)));
    for (LossModel model : LossModels.all()) {
      all.add(model.loss(PIPE, some, AIR));
      all.add(model.loss(PIPE, much, AIR));
    }
    for (LineFormula formula : LineFormula.values()) {
      all.add(formula.loss(PIPE, some, AIR));
      all.add(formula.loss(PIPE, much, AIR));
    }
    for (Worked worked : all) {
      assertThat(title(worked, UnitSystem.SI)).matches(".*\\bair\\b.*");
      assertThat(title(worked, UnitSystem.US)).matches(".*\\bair\\b.*");
    }
  }
}
