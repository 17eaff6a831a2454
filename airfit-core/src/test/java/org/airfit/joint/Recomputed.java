package org.airfit.joint;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.airfit.quantity.Length;
import org.airfit.thread.BsppThread;
import org.airfit.thread.BsptThread;
import org.airfit.thread.NpsmThread;
import org.airfit.thread.NptThread;
import org.airfit.thread.RpThread;
import org.airfit.thread.ThreadForm;

/**
 * Everything a printed table of threads and pipe may hold, computed again, so that a printed value can be judged
 * without knowing what is wrong with it.
 */
final class Recomputed {

  private static final Map<String, Double> VALUES = new LinkedHashMap<>();

  static {
    for (NptThread npt : NptThread.all()) {
      String size = "NPT " + npt.size().label() + " ";
      inches(size + "D", npt.pipeDiameter());
      inches(size + "E0", npt.pitchDiameterAtSmallEnd());
      inches(size + "E1", npt.pitchDiameterAtHandTight());
      inches(size + "E5", npt.pitchDiameterAtFullCrests());
      inches(size + "L1", npt.handTightLength());
      inches(size + "L2", npt.effectiveLength());
      inches(size + "L4", npt.overallLength());
      inches(size + "L5", npt.fullCrestLength());
      inches(size + "V", npt.vanishLength());
      inches(size + "L1+L3", npt.handTightLength().plus(npt.wrenchLength()));
      Engagement.of(npt)
          .workshopMakeUp()
          .ifPresent(length -> inches(size + "workshop make-up", length));
      inches(size + "greatest flat", npt.crestFlat().most());
      millimetres(size + "D", npt.pipeDiameter());
    }
    for (NpsmThread npsm : NpsmThread.all()) {
      String size = "NPSM " + npsm.size().label() + " ";
      inches(size + "greatest male major", npsm.maleMajorDiameter().most());
      millimetres(size + "greatest male major", npsm.maleMajorDiameter().most());
    }
    for (BsppThread g : BsppThread.all()) {
      String size = "G " + g.size().label() + " ";
      millimetres(size + "major diameter", g.majorDiameter());
      millimetres(size + "pitch diameter", g.pitchDiameter());
      millimetres(size + "least female minor", g.femaleMinorDiameter().least());
      millimetres(size + "pitch", g.pitch());
      VALUES.put(size + "25.4/n mm", 25.4 / g.threadsPerInch());
      VALUES.put(
          size + "r mm",
          ThreadForm.ROUND_55.crestRadiusOverPitch().orElseThrow() * g.pitch().millimetres());
    }
    for (RpThread rp : RpThread.all()) {
      String size = "Rp " + rp.size().label() + " ";
      millimetres(size + "tolerance", rp.diameterTolerance());
      millimetres(size + "least minor", rp.minorDiameter().least());
    }
    for (BsptThread r : BsptThread.all()) {
      String size = "Rc " + r.size().label() + " ";
      millimetres(size + "least useful length", r.leastFemaleUsefulLength());
      r.pipeDiameterJis().ifPresent(length -> millimetres(size + "pipe of JIS", length));
      r.pipeDiameterEn10255().ifPresent(length -> millimetres(size + "pipe of EN 10255", length));
    }
    for (ThreadForm form : ThreadForm.values()) {
      String name = form.flankAngleDegrees() + "° form ";
      VALUES.put(name + "H/p", form.sharpHeightOverPitch());
      VALUES.put(name + "taper H/p", form.taperSharpHeightOverPitch());
    }
    for (Tube pipe : Tube.all(Tube.Kind.STEEL_PIPE)) {
      millimetres("pipe " + pipe.type() + " " + pipe.name() + " bore", pipe.bore());
    }
    for (Tube pipe : Tube.all(Tube.Kind.STEEL_PIPE_METRIC)) {
      millimetres(
          "pipe " + pipe.type() + " " + pipe.name() + " bore of the metric table", pipe.bore());
    }
    for (Tube copper : Tube.all(Tube.Kind.COPPER_TUBE)) {
      VALUES.put(
          "copper " + copper.type() + " " + copper.name() + " bore area in2",
          copper.boreArea().squareInches());
    }
  }

  private Recomputed() {}

  private static void inches(String what, Length length) {
    VALUES.put(what + " in", length.inches());
  }

  private static void millimetres(String what, Length length) {
    VALUES.put(what + " mm", length.millimetres());
  }

  /**
   * Judges a printed value.
   *
   * @param what the series, size and quantity it claims to be, with its unit
   * @param printed the value
   * @param half half a unit of its last digit
   * @return "right", or "last digit" where it is off by at most one unit of it, or the quantities of any size that are
   *     printed so, or "wrong"
   */
  static List<String> judge(String what, double printed, double half) {
    Double ours = VALUES.get(what);
    if (ours == null) {
      throw new IllegalArgumentException("nothing is computed for " + what);
    }
    double off = Math.abs(ours - printed);
    if (off <= half) {
      return List.of("right");
    }
    // a cell of the same row or of the same column explains a value better than a slip of the last
    // digit
    List<String> others = new ArrayList<>();
    String unit = what.substring(what.lastIndexOf(' '));
    VALUES.forEach((other, value) -> {
      boolean near = other.endsWith(unit)
          && (size(other).equals(size(what)) || quantity(other).equals(quantity(what)));
      if (near && Math.abs(value - printed) <= half) {
        others.add(other);
      }
    });
    if (!others.isEmpty()) {
      return others;
    }
    return List.of(off <= 2.0 * half ? "last digit" : "wrong");
  }

  private static final Pattern SIZE = Pattern.compile(" (\\d(?:[-/]\\d+(?:/\\d+)?)?) ");

  private static String size(String what) {
    Matcher size = SIZE.matcher(what);
    return size.find() ? size.group(1) : "";
  }

  private static String quantity(String what) {
    Matcher size = SIZE.matcher(what);
    return size.find() ? what.substring(size.end()) : what;
  }
}
