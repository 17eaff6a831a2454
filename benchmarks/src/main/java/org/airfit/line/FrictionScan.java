package org.airfit.line;

import java.util.OptionalInt;
import java.util.SplittableRandom;
import org.airfit.lesson.ProgramHelp;
import org.hipparchus.dfp.Dfp;
import org.hipparchus.dfp.DfpField;
import org.hipparchus.dfp.DfpMath;

/**
 * How far the friction factor lies from the root of Colebrook's equation, from Re 4·10³ to 10⁸ and of walls from smooth to
 * 0.05 of the bore: a hundred million points against Halley's method in doubles, and a hundred thousand of them against
 * forty digits of Hipparchus.
 *
 * <p>It lies in the package of what it measures, as {@code FrictionKernels} is not public.
 */
public final class FrictionScan {

  private static final String HELP = """
      FrictionScan, looks for the largest error of the friction factor (benchmarks/run scan starts it)

        java -cp airfit-benchmarks.jar org.airfit.line.FrictionScan

      It prints the largest differences from Halley's method and from forty digits, and where they are; a minute or
      two. It takes no words but these:
        --help, -h   prints this
        --version    prints the version
      Exit code 0: printed; 2: it was called with other words, which one line on the error output tells.
      """;

  private static final int POINTS = 100_000_000;
  private static final int EVERY = 1000;
  private static final int DIGITS = 40;
  private static final double LOWEST = Math.log10(4.0e3);
  private static final double HIGHEST = 8.0;

  private FrictionScan() {}

  /**
   * Prints the largest errors and where they are.
   *
   * @param args none
   */
  public static void main(String[] args) {
    OptionalInt answered = ProgramHelp.answered(args, 0, 0, HELP);
    if (answered.isPresent()) {
      System.exit(answered.getAsInt());
    }
    SplittableRandom random = new SplittableRandom(1);
    Worst doubles = new Worst();
    Worst digits = new Worst();
    DfpField field = new DfpField(DIGITS);
    for (int i = 0; i < POINTS; i++) {
      double re = Math.pow(10.0, random.nextDouble(LOWEST, HIGHEST));
      double rough = i % 16 == 0 ? 0.0 : Math.pow(10.0, random.nextDouble(-7.0, Math.log10(0.05)));
      double found = FrictionKernels.colebrook(re, rough);
      double halley = FrictionKernels.colebrookFromAfar(re, rough);
      doubles.see(Math.abs(found / halley - 1.0), re, rough);
      if (i % EVERY == 0) {
        digits.see(error(field, found, re, rough), re, rough);
      }
    }
    System.out.println(POINTS + " points against Halley's method: " + doubles);
    System.out.println(POINTS / EVERY + " points against " + DIGITS + " digits: " + digits);
  }

  /**
   * One step of Newton's method in many digits from the factor found, which leaves less than its square: in x = 1/√λ,
   * f = x + 2 log₁₀( (ε/D)/3.7 + 2.51 x/Re ).
   */
  private static double error(DfpField field, double found, double re, double rough) {
    Dfp x = field.newDfp(found).sqrt().reciprocal();
    Dfp slope = field.newDfp("2.51").divide(field.newDfp(re));
    Dfp inner = field.newDfp(rough).divide(field.newDfp("3.7")).add(slope.multiply(x));
    Dfp ten = DfpMath.log(field.newDfp(10));
    Dfp value = x.add(DfpMath.log(inner).multiply(2).divide(ten));
    Dfp rises = field.getOne().add(slope.multiply(2).divide(inner.multiply(ten)));
    // λ = 1/x², so that an error of x counts twice
    return Math.abs(2.0 * value.divide(rises).divide(x).toDouble());
  }

  /** The largest error and where it is. */
  private static final class Worst {

    private double error;
    private double re;
    private double rough;

    void see(double seen, double atRe, double atRough) {
      if (!(seen <= error)) {
        error = seen;
        re = atRe;
        rough = atRough;
      }
    }

    @Override
    public String toString() {
      return "largest error " + error + " at Re " + re + ", relative roughness " + rough;
    }
  }
}
