package org.airfit.browser.probe;

import java.util.ArrayList;
import java.util.List;
import org.airfit.air.AirState;
import org.airfit.drawing.ThreadDrawing;
import org.airfit.flow.FlowCapacity;
import org.airfit.flow.Orifice;
import org.airfit.joint.Chain;
import org.airfit.joint.End;
import org.airfit.joint.Mating;
import org.airfit.line.Conduit;
import org.airfit.line.FrictionLaw;
import org.airfit.line.LossModel;
import org.airfit.line.LossModels;
import org.airfit.network.Network;
import org.airfit.plant.Supply;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.Length;
import org.airfit.quantity.LengthUnit;
import org.airfit.quantity.MassFlow;
import org.airfit.quantity.NominalThreadSize;
import org.airfit.quantity.QuantityFormatException;
import org.airfit.quantity.SonicConductance;
import org.airfit.quantity.Temperature;
import org.airfit.run.Run;
import org.airfit.run.RunResult;
import org.airfit.run.ToolDemand;
import org.airfit.thread.NptThread;
import org.airfit.thread.ThreadFamily;
import org.airfit.thread.ThreadIdentification;
import org.airfit.thread.ThreadReadings;
import org.airfit.working.UnitSystem;

/** What the trade asks, at random: lines, parts, runs, networks, ends, threads, typed quantities. */
final class Trade {

  private static final AbsolutePressure ATMOSPHERE = AbsolutePressure.STANDARD_ATMOSPHERE;

  private static final List<String> ENDS = List.of(
      "1/8 NPT male",
      "1/4 NPT male",
      "1/4 NPT female",
      "3/8 NPT male",
      "3/8 NPT female",
      "1/2 NPT male",
      "1/2 NPT female",
      "3/4 NPT female",
      "1 NPT male",
      "1/4 NPTF female",
      "1/2 NPTF male",
      "1/4 NPSM male",
      "R 1/4 male",
      "R 1/2 male",
      "Rc 1/4 female",
      "Rc 1/2 female",
      "Rp 1/2 female",
      "G 1/4 male",
      "G 1/4 female",
      "G 1/2 female",
      "G 3/8 port",
      "G 1/4 male with washer",
      "M5 male",
      "10-32 male",
      "1/4 in barb",
      "3/8 in barb",
      "10 mm barb",
      "1/4 in hose",
      "3/8 in hose",
      "10 mm hose",
      "8 mm push-in",
      "8 mm tube",
      "9/16-18 O-ring port",
      "37° flare 7/16-20 male",
      "45° flare 7/16-20 nut",
      "two-lug claw",
      "European claw",
      "garden hose male");

  private static final List<String> TYPED =
      List.of("%s bar", "%s bar(g)", "%s psig", "%s psi", "%s MPa", "%s kPa(g)", "%s kgf/cm²");

  private Trade() {}

  static void friction(Tape tape, int each) {
    Draw draw = new Draw(3);
    for (FrictionLaw law : FrictionLaw.values()) {
      tape.group("friction " + law);
      for (int i = 0; i < each; i++) {
        tape.number(law.factor(draw.over(10.0, 1.0e8), draw.over(1.0e-6, 0.04)).darcy());
      }
    }
  }

  private static Conduit pipe(Draw draw) {
    Length bore = Length.ofMillimetres(draw.over(4.0, 60.0));
    return Conduit.of(
            bore,
            Length.ofMetres(draw.over(0.3, 80.0)),
            Length.ofMetres(bore.metres() * draw.over(1.0e-6, 0.02)))
        .withFittings(draw.between(0.0, 6.0));
  }

  private static FlowCapacity part(Draw draw) {
    return FlowCapacity.of(
        SonicConductance.ofCubicDecimetresPerSecondBar(draw.over(0.5, 20.0)),
        draw.between(0.0, 0.6));
  }

  private static AirState supply(Draw draw) {
    return AirState.of(
        AbsolutePressure.ofBar(draw.between(2.0, 16.0)),
        Temperature.ofCelsius(draw.between(-10.0, 60.0)));
  }

  static void lines(Tape tape, int each) {
    Draw draw = new Draw(4);
    List<LossModel> models = new ArrayList<>(LossModels.all());
    for (FrictionLaw law : FrictionLaw.values()) {
      models.add(LossModels.fromReservoir(law));
    }
    for (LossModel model : models) {
      tape.group("line " + model);
      for (int i = 0; i < each; i++) {
        tell(
            tape,
            Run.from(supply(draw), ATMOSPHERE)
                .through("pipe", pipe(draw), model)
                .at(MassFlow.ofKilogramsPerSecond(draw.over(1.0e-5, 0.05))));
      }
    }
  }

  private static void tell(Tape tape, RunResult result) {
    if (result instanceof RunResult.Delivered delivered) {
      tape.number(delivered.atTool().pascals());
      tape.number(delivered.massFlow().kilogramsPerSecond());
    } else if (result instanceof RunResult.Starved starved) {
      tape.number(starved.inlet().pascals());
      tape.number(starved.largest().kilogramsPerSecond());
    }
  }

  static void parts(Tape tape, int each) {
    Draw draw = new Draw(5);
    tape.group("part");
    for (int i = 0; i < each; i++) {
      AirState inlet = supply(draw);
      AbsolutePressure outlet =
          AbsolutePressure.ofPascals(inlet.pressure().pascals() * draw.between(0.05, 0.999));
      tape.number(part(draw).flow(inlet, outlet).massFlow().kilogramsPerSecond());
      tape.number(Orifice.sharp(Length.ofMillimetres(draw.over(0.3, 20.0)))
          .flow(inlet, outlet)
          .massFlow()
          .kilogramsPerSecond());
    }
  }

  private static Run run(Draw draw) {
    Run run = Run.from(supply(draw), ATMOSPHERE);
    int parts = 1 + draw.below(5);
    for (int i = 0; i < parts; i++) {
      run = draw.below(2) == 0
          ? run.through("part " + i, part(draw))
          : run.through("pipe " + i, pipe(draw));
    }
    return run;
  }

  private static ToolDemand tool(Draw draw) {
    return ToolDemand.following(
        "tool",
        FreeAirFlow.ofAnrLitresPerSecond(draw.over(1.0, 40.0)),
        AbsolutePressure.ofBar(draw.between(4.0, 8.0)));
  }

  static void runs(Tape tape, int each, int workings) {
    Draw draw = new Draw(6);
    tape.group("run");
    for (int i = 0; i < each; i++) {
      Run run = run(draw);
      tell(tape, run.at(FreeAirFlow.ofAnrLitresPerSecond(draw.over(0.5, 40.0))));
      RunResult stands = run.balance(tool(draw));
      tell(tape, stands);
      if (i < workings) {
        for (UnitSystem units : UnitSystem.values()) {
          tape.text(stands.working(units).toText());
          tape.text(stands.working(units).toLatex());
        }
      }
    }
  }

  static void networks(Tape tape, int each) {
    Draw draw = new Draw(7);
    tape.group("network");
    for (int i = 0; i < each; i++) {
      tape.text(Network.at(ATMOSPHERE)
          .supply("compressor", Supply.fixed(supply(draw)))
          .line("header", "compressor", "a", pipe(draw))
          .line("left", "a", "b", pipe(draw))
          .line("right", "a", "c", pipe(draw))
          .line("across", "b", "c", pipe(draw))
          .part("coupling", "b", "d", part(draw))
          .tool("d", tool(draw))
          .tool("c", tool(draw))
          .build()
          .solve()
          .working(UnitSystem.SI)
          .toText());
    }
  }

  static void ends(Tape tape) {
    tape.group("ends");
    List<End> ends = ENDS.stream().map(End::parse).toList();
    for (End one : ends) {
      for (End other : ends) {
        tape.text(Mating.of(one, other).inWords());
        tape.text(Chain.between(one, other).toString());
      }
    }
  }

  static void threads(Tape tape, int each) {
    Draw draw = new Draw(8);
    tape.group("thread");
    for (int i = 0; i < each; i++) {
      Length first = Length.ofMillimetres(Math.rint(draw.between(500.0, 6000.0)) / 100.0);
      ThreadReadings readings =
          draw.below(2) == 0 ? ThreadReadings.ofMale(first) : ThreadReadings.ofFemale(first);
      int pitches = 5 + draw.below(4);
      double perInch = new double[] {28.0, 27.0, 19.0, 18.0, 14.0, 11.5, 11.0}[draw.below(7)];
      readings = readings.withPitches(
          Length.of(Math.rint(pitches * 2540.0 / perInch) / 2540.0, LengthUnit.INCH), pitches);
      ThreadIdentification answer = ThreadIdentification.of(readings);
      tape.text(answer.inWords(UnitSystem.SI));
      tape.text(answer.working(UnitSystem.US).toText());
      answer.candidates().stream()
          .mapToDouble(candidate -> candidate.probability())
          .filter(probability -> probability > 1.0e-3)
          .forEach(tape::number);
    }
  }

  static void drawings(Tape tape) {
    tape.group("drawing");
    for (NominalThreadSize size : ThreadFamily.NPT.sizes()) {
      tape.text(ThreadDrawing.of(NptThread.of(size)).svg());
    }
  }

  static void quantities(Tape tape, int each) {
    Draw draw = new Draw(9);
    tape.group("quantity");
    for (int i = 0; i < each; i++) {
      String number = String.valueOf(Math.rint(draw.over(1.0, 1.0e5)) / 100.0);
      typed(tape, TYPED.get(draw.below(TYPED.size())).replace("%s", number));
      tape.text(Length.parse(number + " mm").toString());
      tape.number(Temperature.parse(number + " °F").kelvins());
      tape.text(FreeAirFlow.parse(number + " scfm").toString());
    }
  }

  /** A text that is refused has its refusal compared. */
  private static void typed(Tape tape, String text) {
    try {
      GaugePressure pressure = GaugePressure.parse(text);
      tape.text(pressure.toString());
      tape.text(UnitSystem.US.say(pressure));
      tape.number(pressure.pascals());
    } catch (QuantityFormatException e) {
      tape.text(String.valueOf(e.getMessage()));
    }
  }
}
