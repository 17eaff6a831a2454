package org.airfit.line;

import java.util.OptionalInt;
import java.util.SplittableRandom;
import org.airfit.air.AirState;
import org.airfit.lesson.ProgramHelp;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.Length;
import org.airfit.quantity.Temperature;

/**
 * Prints what {@code benchmarks/beside-python} compares: flows through a hose, with the state of the air and the pressure
 * that arrives, and at last how many nanoseconds one answer takes.
 *
 * <p>It lies in the package of what it measures, as {@code PipeElement} is not public.
 */
public final class HoseColumn {

  private static final String HELP = """
      HoseColumn, flows through a hose with the pressure that arrives, for benchmarks/beside-python

        java -cp airfit-benchmarks.jar org.airfit.line.HoseColumn

      It prints a fact on each line, the nanoseconds of an answer last. It takes no words but these:
        --help, -h   prints this
        --version    prints the version
      Exit code 0: printed; 2: it was called with other words, which one line on the error output tells.
      """;

  private static final int N = 2000;
  private static final int ROUNDS = 2000;
  private static final double BORE_MM = 9.5;
  private static final double METRES = 10.0;
  private static final double WALL_MM = 0.01;
  private static final double PASCALS = 8.0e5;
  private static final double KELVINS = 293.15;

  private HoseColumn() {}

  /**
   * Prints the column.
   *
   * @param args none
   */
  public static void main(String[] args) {
    OptionalInt answered = ProgramHelp.answered(args, 0, 0, HELP);
    if (answered.isPresent()) {
      System.exit(answered.getAsInt());
    }
    PipeElement hose = new PipeElement(
        PipeEquation.ISOTHERMAL,
        FrictionLaw.COLEBROOK,
        Conduit.of(
            Length.ofMillimetres(BORE_MM), Length.ofMetres(METRES), Length.ofMillimetres(WALL_MM)));
    double viscosity = AirState.of(
            AbsolutePressure.ofPascals(PASCALS), Temperature.ofKelvins(KELVINS))
        .viscosity()
        .pascalSeconds();
    double[] flows = new double[N];
    SplittableRandom random = new SplittableRandom(1);
    for (int i = 0; i < N; i++) {
      flows[i] = random.nextDouble(0.001, 0.015);
    }
    double least = Double.POSITIVE_INFINITY;
    double sum = 0.0;
    for (int round = 0; round < ROUNDS; round++) {
      long began = System.nanoTime();
      for (double flow : flows) {
        sum += hose.outlet(flow, PASCALS, KELVINS, viscosity);
      }
      least = Math.min(least, (System.nanoTime() - began) / (double) N);
    }
    System.out.println("bore " + BORE_MM / 1000.0);
    System.out.println("length " + METRES);
    System.out.println("wall " + WALL_MM / 1000.0);
    System.out.println("pascals " + PASCALS);
    System.out.println("density " + PASCALS / (AirState.GAS_CONSTANT * KELVINS));
    System.out.println("viscosity " + viscosity);
    for (double flow : flows) {
      System.out.println("flow " + flow + " " + hose.outlet(flow, PASCALS, KELVINS, viscosity));
    }
    System.out.println("nanoseconds " + least + " " + (sum > 0.0));
  }
}
