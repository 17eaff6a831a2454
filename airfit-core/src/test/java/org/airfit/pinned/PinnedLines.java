package org.airfit.pinned;

import java.util.ArrayList;
import java.util.List;
import org.airfit.air.AirState;
import org.airfit.line.BoreStep;
import org.airfit.line.Conduit;
import org.airfit.line.ConduitName;
import org.airfit.line.FittingList;
import org.airfit.line.FrictionLaw;
import org.airfit.line.LineFormula;
import org.airfit.line.LineLoss;
import org.airfit.line.LossModel;
import org.airfit.line.LossModels;
import org.airfit.line.PipeDuty;
import org.airfit.line.PipeFitting;
import org.airfit.line.Wall;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.Length;
import org.airfit.quantity.MassFlow;
import org.airfit.quantity.Temperature;

/** Pressure losses of hoses, pipes and fittings. */
final class PinnedLines {

  private static final String AREA = "line";
  private static final AirState INLET =
      AirState.of(AbsolutePressure.ofBar(7.0), Temperature.ofCelsius(20.0));

  private PinnedLines() {}

  static void ask(Pins pins) {
    friction(pins);
    losses(pins);
    fittings(pins);
    names(pins);
  }

  private static void friction(Pins pins) {
    for (FrictionLaw law : FrictionLaw.values()) {
      for (double reynolds : new double[] {1.0e4, 3.0e5}) {
        pins.ratio(
            AREA,
            "Darcy friction factor, " + law + ", at Re " + reynolds + ", ε/D 0.001",
            law.factor(reynolds, 0.001).darcy());
      }
    }
    pins.ratio(
        AREA,
        "Darcy friction factor at Re 1000",
        FrictionLaw.COLEBROOK.factor(1000.0, 0.001).darcy());
  }

  private static void losses(Pins pins) {
    Conduit hose =
        Conduit.of(Length.parse("3/8 in"), Length.parse("50 ft"), Wall.SMOOTH_RUBBER_HOSE);
    Conduit pipe = Conduit.of(Length.parse("1 in"), Length.ofMetres(60.0), Wall.COMMERCIAL_STEEL);
    List<LossModel> models = new ArrayList<>(LossModels.all());
    for (LineFormula formula : LineFormula.values()) {
      if (!models.contains(formula)) {
        models.add(formula);
      }
    }
    for (LossModel model : models) {
      loss(pins, model, hose, "a smooth rubber hose of 3/8 in, 50 ft", 0.012);
      loss(pins, model, pipe, "a steel pipe of 1 in, 60 m", 0.08);
    }
    LossModel usual = LossModels.isothermal();
    for (double bar : new double[] {6.5, 4.0, 1.0}) {
      pins.quantity(
          AREA,
          "Flow through a smooth rubber hose of 3/8 in, 50 ft, from 7 to " + bar + " bar(a)",
          usual.flowFor(hose, INLET, AbsolutePressure.ofBar(bar)).massFlow());
    }
    for (double flow : new double[] {0.02, 0.1}) {
      pins.quantity(
          AREA,
          "Bore of a steel pipe of 60 m that loses 0.2 of 7 bar(a) at " + flow + " kg/s",
          usual
              .boreFor(
                  pipe, MassFlow.ofKilogramsPerSecond(flow), INLET, AbsolutePressure.ofBar(6.8))
              .orElseThrow()
              .conduit()
              .bore());
      pins.quantity(
          AREA,
          "Length of a steel pipe of 1 in that loses 0.2 of 7 bar(a) at " + flow + " kg/s",
          usual
              .lengthFor(
                  pipe, MassFlow.ofKilogramsPerSecond(flow), INLET, AbsolutePressure.ofBar(6.8))
              .orElseThrow()
              .conduit()
              .length());
    }
    for (PipeDuty duty : PipeDuty.values()) {
      pins.quantity(
          AREA,
          "Least bore for 0.1 kg/s at 7 bar(a), 20 °C: " + duty.label(),
          duty.boreFor(MassFlow.ofKilogramsPerSecond(0.1), INLET));
    }
    for (Wall wall : Wall.values()) {
      pins.quantity(AREA, "Roughness of " + wall.label(), wall.roughness());
    }
  }

  private static void loss(Pins pins, LossModel model, Conduit conduit, String of, double flow) {
    LineLoss answer = model.loss(conduit, MassFlow.ofKilogramsPerSecond(flow), INLET);
    String at = " at " + flow + " kg/s in " + of + " from 7 bar(a), 20 °C, by " + model;
    if (answer instanceof LineLoss.Flowing flowing) {
      pins.quantity(AREA, "Pressure loss" + at, flowing.drop());
    } else if (answer instanceof LineLoss.Choked choked) {
      pins.quantity(AREA, "Largest flow, choked" + at, choked.largest());
    }
  }

  private static void fittings(Pins pins) {
    Length bore = Length.parse("1 in");
    for (PipeFitting.Method method : PipeFitting.Method.values()) {
      PipeFitting.all(method).stream().limit(8).forEach(fitting -> {
        if (method != PipeFitting.Method.THREE_K) {
          pins.ratio(
              AREA,
              "K in a bore of 1 in at Re 1e5 of " + fitting.name() + ", " + method,
              fitting.k(bore, bore, 1.0e5));
        }
      });
    }
    for (double wide : new double[] {15.0, 30.0}) {
      pins.ratio(
          AREA,
          "K of a step from 10 to " + wide + " mm",
          BoreStep.enlargement(Length.ofMillimetres(10.0), Length.ofMillimetres(wide))
              .k(Length.ofMillimetres(10.0)));
      pins.ratio(
          AREA,
          "K of a step from " + wide + " to 10 mm",
          BoreStep.contraction(Length.ofMillimetres(wide), Length.ofMillimetres(10.0))
              .k(Length.ofMillimetres(10.0)));
    }
    FittingList list = FittingList.parse("2 elbows, 1 ball valve");
    pins.ratio(AREA, "Least K of 2 elbows, 1 ball valve in 1 in", list.leastLoss(bore));
    pins.ratio(AREA, "Most K of 2 elbows, 1 ball valve in 1 in", list.mostLoss(bore));
  }

  private static void names(Pins pins) {
    for (String name : List.of("1/2 in steel pipe", "3/8 in rubber hose", "3/4 in copper tube")) {
      ConduitName conduit = ConduitName.parse(name);
      conduit.bore().ifPresent(bore -> {
        pins.quantity(AREA, "Least bore of " + name, bore.least());
        pins.quantity(AREA, "Most bore of " + name, bore.most());
      });
      pins.quantity(AREA, "Least roughness of " + name, conduit.roughness().least());
    }
  }
}
