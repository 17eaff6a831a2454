package org.airfit.line;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.airfit.air.AirState;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.Length;
import org.airfit.quantity.MassFlow;
import org.airfit.quantity.Temperature;
import org.airfit.source.Source;
import org.airfit.working.UnitSystem;
import org.airfit.working.Working;
import org.junit.jupiter.api.Test;

/** How often the searches ask, and that they find the last flow, bore or length that arrives. */
class LineSearchTest {

  private static final int AWAY_FROM_JUMPS = 15;
  private static final int ANYWHERE = 60;

  /** A model that counts how often it is asked, and notes whether Re 2300 or choking came near. */
  private static final class Counting implements LossModel {
    private final LossModel model;
    private int count;
    private boolean nearJump;

    Counting(LossModel model) {
      this.model = model;
    }

    @Override
    public LineLoss loss(Conduit conduit, MassFlow massFlow, AirState inlet) {
      count++;
      LineLoss loss = model.loss(conduit, massFlow, inlet);
      double reynolds = PipeElement.reynolds(
          massFlow.kilogramsPerSecond(),
          conduit.bore().metres(),
          inlet.viscosity().pascalSeconds());
      // a search that starts from a usual friction factor comes as near as a factor of three to a
      // jump that it has to
      // do with
      boolean nearTransition = reynolds > 2300.0 / 3.0 && reynolds < 3.0 * 2300.0;
      nearJump |= nearTransition;
      nearJump |= loss instanceof LineLoss.Choked;
      if (loss instanceof LineLoss.Flowing flowing) {
        nearJump |= flowing.outletMach() > 0.5
            || flowing.outlet().pressure().pascals()
                < 0.3 * flowing.inlet().pressure().pascals();
      }
      return loss;
    }

    @Override
    public Working working(LineLoss loss, UnitSystem units) {
      return model.working(loss, units);
    }

    @Override
    public String title() {
      return model.title();
    }

    @Override
    public String validity() {
      return model.validity();
    }

    @Override
    public String fitBasis() {
      return model.fitBasis();
    }

    @Override
    public String bias() {
      return model.bias();
    }

    @Override
    public Source source() {
      return model.source();
    }
  }

  private static List<LossModel> models() {
    List<LossModel> models = new ArrayList<>(LossModels.all());
    models.add(LossModels.fromReservoir(FrictionLaw.COLEBROOK));
    models.add(LossModels.of(PipeEquation.ISOTHERMAL, FrictionLaw.CHURCHILL_1977));
    return models;
  }

  /** One random line: shop lines mostly, and some that are far from them. */
  private record Line(Conduit conduit, AirState inlet, AbsolutePressure outlet) {
    static Line of(SplittableRandom random) {
      double bore = Math.pow(10.0, random.nextDouble(-3.3, -0.7));
      double length = bore * Math.pow(10.0, random.nextDouble(0.0, 5.0));
      double roughness = bore * 0.04 * Math.pow(random.nextDouble(), 6.0);
      double k = random.nextInt(3) == 0 ? random.nextDouble(0.0, 20.0) : 0.0;
      double pascals = Math.pow(10.0, random.nextDouble(5.0, 6.3));
      double share = random.nextInt(4) == 0
          ? random.nextDouble()
          : Math.pow(10.0, random.nextDouble(-5.0, 0.0));
      return new Line(
          Conduit.of(Length.ofMetres(bore), Length.ofMetres(length), Length.ofMetres(roughness))
              .withFittings(k),
          AirState.of(
              AbsolutePressure.ofPascals(pascals),
              Temperature.ofKelvins(random.nextDouble(250.0, 350.0))),
          AbsolutePressure.ofPascals(pascals * (1.0 - share)));
    }

    boolean arrives(LossModel model, Conduit conduit, double flow) {
      return model
          .loss(conduit, MassFlow.ofKilogramsPerSecond(flow), inlet)
          .fold(
              flowing ->
                  flowing.drop().pascals() <= inlet.pressure().dropTo(outlet).pascals(),
              choked -> false);
    }
  }

  private static void assertFewAsked(Counting model) {
    assertThat(model.count)
        .as(model.title())
        .isLessThanOrEqualTo(model.nearJump ? ANYWHERE : AWAY_FROM_JUMPS);
  }

  @Test
  void the_last_flow_that_arrives_is_found_in_few_steps() {
    SplittableRandom random = new SplittableRandom(7);
    int away = 0;
    for (int i = 0; i < 1_500; i++) {
      Line line = Line.of(random);
      for (LossModel each : models()) {
        Counting model = new Counting(each);
        LineSolution found = model.flowFor(line.conduit, line.inlet, line.outlet);
        assertFewAsked(model);
        away += model.nearJump ? 0 : 1;
        double flow = found.massFlow().kilogramsPerSecond();
        assertThat(line.arrives(each, line.conduit, flow * (1.0 - 1.0e-12))).isTrue();
        assertThat(line.arrives(each, line.conduit, flow * (1.0 + 1.0e-12))).isFalse();
      }
    }
    assertThat(away).as("cases away from jumps").isGreaterThan(5_000);
  }

  @Test
  void the_first_bore_that_arrives_is_found_in_few_steps() {
    SplittableRandom random = new SplittableRandom(8);
    int away = 0;
    for (int i = 0; i < 1_500; i++) {
      Line line = Line.of(random);
      double flow = LossModels.isothermal()
              .flowFor(line.conduit, line.inlet, line.outlet)
              .massFlow()
              .kilogramsPerSecond()
          * Math.pow(10.0, random.nextDouble(-0.5, 0.5));
      for (LossModel each : models()) {
        Counting model = new Counting(each);
        LineSolution found = model
            .boreFor(line.conduit, MassFlow.ofKilogramsPerSecond(flow), line.inlet, line.outlet)
            .orElse(null);
        assertFewAsked(model);
        away += model.nearJump ? 0 : 1;
        if (found == null) {
          assertThat(line.arrives(each, line.conduit.withBore(Length.ofMetres(10.0)), flow))
              .isFalse();
          continue;
        }
        double bore = found.conduit().bore().metres();
        Conduit wider = line.conduit.withBore(Length.ofMetres(bore * (1.0 + 1.0e-12)));
        assertThat(line.arrives(each, wider, flow)).isTrue();
        double narrower = bore * (1.0 - 1.0e-12);
        if (narrower
            > Math.max(1.0e-5, 20.0 * line.conduit.roughness().metres() * (1.0 + 1.0e-11))) {
          assertThat(line.arrives(each, line.conduit.withBore(Length.ofMetres(narrower)), flow))
              .isFalse();
        }
      }
    }
    assertThat(away).as("cases away from jumps").isGreaterThan(5_000);
  }

  @Test
  void the_last_length_that_arrives_is_found_in_few_steps() {
    SplittableRandom random = new SplittableRandom(9);
    int away = 0;
    for (int i = 0; i < 1_500; i++) {
      Line line = Line.of(random);
      double flow = LossModels.isothermal()
              .flowFor(line.conduit, line.inlet, line.outlet)
              .massFlow()
              .kilogramsPerSecond()
          * Math.pow(10.0, random.nextDouble(-0.5, 0.5));
      for (LossModel each : models()) {
        Counting model = new Counting(each);
        LineSolution found = model
            .lengthFor(line.conduit, MassFlow.ofKilogramsPerSecond(flow), line.inlet, line.outlet)
            .orElse(null);
        assertFewAsked(model);
        away += model.nearJump ? 0 : 1;
        if (found == null) {
          assertThat(line.arrives(each, line.conduit.withLength(Length.ofMetres(0.0)), flow))
              .isFalse();
          continue;
        }
        double length = found.conduit().length().metres();
        Conduit shorter = line.conduit.withLength(Length.ofMetres(length * (1.0 - 1.0e-12)));
        assertThat(line.arrives(each, shorter, flow)).isTrue();
        Conduit longer = line.conduit.withLength(Length.ofMetres(length * (1.0 + 1.0e-12)));
        assertThat(line.arrives(each, longer, flow)).isFalse();
      }
    }
    assertThat(away).as("cases away from jumps").isGreaterThan(5_000);
  }
}
