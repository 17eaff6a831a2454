package org.airfit.select;

import java.util.ArrayList;
import java.util.List;
import org.airfit.run.RunResult;
import org.airfit.run.WiderHose;
import org.airfit.working.UnitSystem;

/**
 * Whether a hose that is there and stays is what starves a tool: with one of the next sizes in its place, and all
 * else as proposed, the tool has its pressure at worst. Each size is solved as a run of its own.
 */
final class GivenHoses {

  private GivenHoses() {}

  /** What is said of them, each sentence behind a blank; nothing where there is none that decides. */
  static String inWords(Assembly a, UnitSystem units) {
    List<String> enough = new ArrayList<>();
    List<String> notEnough = new ArrayList<>();
    for (Placed placed : a.hoses()) {
      if (isGiven(placed)) {
        String name = a.element(placed.position().name()).orElse("");
        List<WiderHose> tried = tried(a, name, units);
        if (!tried.isEmpty() && tried.get(tried.size() - 1).isEnough()) {
          enough.add(" What starves it is " + name + ", which is there and stays. "
              + WiderHose.inWords(tried, units));
        } else if (!tried.isEmpty() && isBottleneck(name, a.result())) {
          notEnough.add(" It is not only " + name + ", which is there and stays. "
              + WiderHose.inWords(tried, units));
        }
      }
    }
    return String.join("", enough.isEmpty() ? notEnough : enough);
  }

  private static boolean isGiven(Placed placed) {
    return placed.position().slot() instanceof Slot.Hose slot && slot.hose().isPresent();
  }

  private static List<WiderHose> tried(Assembly a, String name, UnitSystem units) {
    Requirement job = a.requirement();
    return WiderHose.tried(a.run(), name, job.demand().massFlow(), job.least(), units);
  }

  private static boolean isBottleneck(String name, RunResult result) {
    return result.fold(
        delivered -> delivered.bottleneck().name().equals(name),
        starved -> starved.element().equals(name));
  }
}
