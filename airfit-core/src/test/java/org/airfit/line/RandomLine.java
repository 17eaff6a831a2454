package org.airfit.line;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.airfit.air.AirState;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.Length;
import org.airfit.quantity.MassFlow;
import org.airfit.quantity.Temperature;

/** One random line: shop lines mostly, and some that are far from them. */
record RandomLine(Conduit conduit, AirState inlet, AbsolutePressure outlet) {
  static RandomLine of(SplittableRandom random) {
    double bore = Math.pow(10.0, random.nextDouble(-3.3, -0.7));
    double length = bore * Math.pow(10.0, random.nextDouble(0.0, 5.0));
    double roughness = bore * 0.04 * Math.pow(random.nextDouble(), 6.0);
    double k = random.nextInt(3) == 0 ? random.nextDouble(0.0, 20.0) : 0.0;
    double pascals = Math.pow(10.0, random.nextDouble(5.0, 6.3));
    double share =
        random.nextInt(4) == 0 ? random.nextDouble() : Math.pow(10.0, random.nextDouble(-5.0, 0.0));
    return new RandomLine(
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

  /** As much flow as arrives in isothermal flow, by up to a factor of three less or more. */
  MassFlow flowAbout(SplittableRandom random) {
    return LossModels.isothermal()
        .flowFor(conduit, inlet, outlet)
        .massFlow()
        .times(Math.pow(10.0, random.nextDouble(-0.5, 0.5)));
  }

  /** All models to search with. */
  static List<LossModel> models() {
    List<LossModel> models = new ArrayList<>(LossModels.all());
    models.add(LossModels.fromReservoir(FrictionLaw.COLEBROOK));
    models.add(LossModels.of(PipeEquation.ISOTHERMAL, FrictionLaw.CHURCHILL_1977));
    return models;
  }
}
