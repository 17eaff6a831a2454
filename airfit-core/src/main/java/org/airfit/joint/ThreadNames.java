package org.airfit.joint;

import java.util.List;
import java.util.Optional;
import org.airfit.thread.ForeignStandard;
import org.airfit.thread.ForeignThread;
import org.airfit.thread.Gender;
import org.airfit.thread.NamedThread;
import org.airfit.thread.ThreadDesignation;
import org.airfit.thread.ThreadForm;

/** Threads as the trade names them: 1/4 NPT, G 1/4, 9/16-18, M14x1.5, M5, without their gender. */
final class ThreadNames {

  /** Threads of small pneumatic parts; the metric ones are named without their pitch. */
  private static final List<String> SMALL = List.of("M5x0.8", "M6x1", "M7x1", "10-32 UNF");

  private ThreadNames() {}

  static String of(NamedThread thread) {
    if (thread instanceof ThreadDesignation pipe) {
      String symbol = pipe.family().symbol(pipe.gender());
      return pipe.family().form() == ThreadForm.FLAT_60
          ? pipe.size() + " " + symbol
          : symbol + " " + pipe.size();
    }
    String name = ((ForeignThread) thread).name();
    if (isSmall(thread) && name.startsWith("M")) {
      return name.substring(0, name.indexOf('x'));
    }
    return ((ForeignThread) thread).standard() == ForeignStandard.UNIFIED
        ? name.substring(0, name.indexOf(' '))
        : name;
  }

  /** Whether it is a thread of small pneumatic parts, which seal with a washer or ring on a flat face. */
  static boolean isSmall(NamedThread thread) {
    return thread instanceof ForeignThread foreign && SMALL.contains(foreign.name());
  }

  /** The unified thread of a diameter [in] with so many threads per inch, if it is known. */
  static Optional<ForeignThread> unified(double diameter, double threadsPerInch, Gender gender) {
    return ForeignThread.all(gender).stream()
        .filter(thread -> thread.standard() == ForeignStandard.UNIFIED)
        .filter(thread -> Math.abs(thread.threadsPerInch() - threadsPerInch) < 1.0e-9)
        .filter(thread -> diameter(thread) == diameter)
        .findFirst();
  }

  private static double diameter(ForeignThread thread) {
    String name = of(thread);
    return new EndScanner(name.substring(0, name.lastIndexOf('-')), "a diameter")
        .amount()
        .value();
  }
}
