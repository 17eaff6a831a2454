package org.airfit.lesson;

import static org.airfit.lesson.Draw.text;

import java.util.List;

/** Variants of runs, parts lists and leaks (lessons 6, 7 and 8), reckoned with the formulas of the lessons. */
final class ShopVariants {

  private static final double ATMOSPHERE = 14.7;

  /** The leak through a hole: ft³/min over in² and psia, at 530 °R and counted there at 14.7 psia. */
  private static final double HOLE = 18.51;

  private ShopVariants() {}

  static Variant of(String id, Draw draw) {
    return switch (id) {
      case "6a" -> arrives(id, draw);
      case "6b" -> faster(id, draw);
      case "6c" -> otherHose(id, draw);
      case "6d" -> gain(id, draw);
      case "7a" -> pieces(id, draw);
      case "7b" -> enough(id, draw);
      case "7c" -> deadEnd(id, draw);
      case "7d" -> bores(id, draw);
      case "8a" -> share(id, draw);
      case "8b" -> bleedDown(id, draw);
      case "8c" -> holes(id, draw);
      case "8d" -> leak(id, draw);
      default -> throw new IllegalArgumentException("no variants of " + id);
    };
  }

  /** The run of lesson 6 with other numbers: pipe, coupling, hose, coupling. */
  record Run(double supply, double pipe, double hose, double choked, double b, double flow) {

    static Run drawn(Draw draw) {
      return new Run(
          draw.number(105.0, 135.0, 1.0),
          draw.number(0.10, 0.40, 0.01),
          draw.number(2.0, 9.0, 0.1),
          draw.number(0.45, 0.80, 0.01),
          draw.number(0.20, 0.30, 0.01),
          draw.number(10.0, 20.0, 1.0));
    }

    /** Behind a pipe or hose [psia]. */
    double line(double before, double resistance) {
      return Math.sqrt(before * before - resistance * flow * flow);
    }

    /** Behind a coupling [psia]. */
    double coupling(double before) {
      double part = flow / (choked * before);
      return before - before * (1.0 - b) * (1.0 - Math.sqrt(1.0 - part * part));
    }

    String told() {
      return text(
          "A run in psia and scfm: supply %.0f psia; pipe K = %.2f; coupling; hose K = %.1f; the same coupling"
              + " again. For a"
              + " pipe or hose p2² = p1² − K q². For each coupling b = %.2f and q* = %.2f p1.",
          supply, pipe, hose, b, choked);
    }
  }

  private static Variant arrives(String id, Draw draw) {
    Run run = Run.drawn(draw);
    double one = run.line(run.supply(), run.pipe());
    double two = run.coupling(one);
    double three = run.line(two, run.hose());
    double tool = run.coupling(three);
    return new Variant(
        id,
        run.told()
            + text(" Which gauge pressure arrives at a tool that takes %.0f scfm?", run.flow()),
        text("%.1f psig", tool - ATMOSPHERE),
        text(
            "Pipe %.1f, coupling %.1f, hose %.1f, coupling %.1f psia; minus 14.7.",
            one, two, three, tool));
  }

  private static Variant faster(String id, Draw draw) {
    double first = draw.number(105.0, 130.0, 1.0);
    double second = draw.number(70.0, 100.0, 1.0);
    return new Variant(
        id,
        text(
            "The same air goes through two like couplings. Before the first there are %.0f psia, before the second"
                + " %.0f psia. How many times as fast does the air go through the second?",
            first, second),
        text("%.2f times", first / second),
        text(
            "The same pounds take %.0f/%.0f times the room, through the same hole.",
            first, second));
  }

  private static Variant otherHose(String id, Draw draw) {
    Run old = Run.drawn(draw);
    double wide = Math.round(10.0 * old.hose() * draw.number(0.2, 0.6, 0.05)) / 10.0;
    double before = old.coupling(old.line(old.supply(), old.pipe()));
    double behind = old.line(before, wide);
    return new Variant(
        id,
        old.told()
            + text(
                " The hose is changed for one of K = %.1f. Which gauge pressure arrives now, at %.0f scfm?",
                wide, old.flow()),
        text("%.1f psig", old.coupling(behind) - ATMOSPHERE),
        text(
            "Before the hose %.1f psia, as with the old one; behind the new hose %.1f, behind the coupling %.1f psia;"
                + " minus 14.7.",
            before, behind, old.coupling(behind)));
  }

  private static Variant gain(String id, Draw draw) {
    Run run = Run.drawn(draw);
    double pipe = run.line(run.supply(), run.pipe());
    double with = run.coupling(run.line(run.coupling(pipe), run.hose()));
    double without = run.coupling(run.line(pipe, run.hose()));
    return new Variant(
        id,
        run.told()
            + text(
                " How much pressure would a tool of %.0f scfm gain, if the coupling before the hose had no loss?",
                run.flow()),
        text("%.1f psi", without - with),
        text(
            "With it %.1f psia arrive, without it %.1f psia. The coupling itself loses %.1f psi only.",
            with, without, pipe - run.coupling(pipe)));
  }

  private static Variant pieces(String id, Draw draw) {
    boolean outlet = draw.coin();
    boolean tool = draw.coin();
    int count = 5 + (outlet ? 1 : 0) + (tool ? 1 : 0);
    return new Variant(
        id,
        text(
            "An outlet is 1/2 NPT female. The sockets on the shelf have %s. The hose has 3/8 NPT male on both"
                + " ends, and a"
                + " plug and a socket for it are there. The tool is %s NPT female, and the plug for it has 1/4"
                + " NPT male."
                + " Nipples and bushings of all sizes are there. How many pieces does the job need?",
            outlet ? "3/8 NPT female" : "1/2 NPT male", tool ? "3/8" : "1/4"),
        text("%d pieces", count),
        "Socket at the outlet, plug, hose, socket, plug of the tool: five."
            + (outlet ? " A nipple 1/2 × 3/8 at the outlet." : "")
            + (tool ? " A bushing 3/8 × 1/4 at the tool." : ""));
  }

  private static Variant enough(String id, Draw draw) {
    double gauge = draw.number(100.0, 120.0, 1.0);
    double loss = draw.number(3.0, 7.0, 0.5);
    double factor = draw.one(List.of(1.5, 2.0, 2.5));
    double grown = loss * factor * factor;
    return new Variant(
        id,
        text(
            "Parts lose %.1f psi at 20 scfm, and the supply has %.0f psig. A tool needs %.0f scfm at 90 psig. Which"
                + " pressure arrives, if the loss grows with the square of the flow? Is the rule \"air at the"
                + " tool\" met?",
            loss, gauge, 20.0 * factor),
        text("%.1f psig: %s", gauge - grown, gauge - grown >= 90.0 ? "met" : "not met"),
        text("%.1f × %.1f² = %.1f psi are lost.", loss, factor, grown));
  }

  private static Variant deadEnd(String id, Draw draw) {
    double bar = draw.number(6.0, 10.0, 0.1);
    double allowed = draw.one(List.of(90.0, 100.0, 110.0, 120.0));
    double psi = bar / 0.0689476;
    return new Variant(
        id,
        text(
            "A supply may reach %.1f bar(g). The maker of a tool allows %.0f psig. Is the tool over-pressured when it"
                + " takes no air? By how much, or how much is left? (1 bar is 14.50 psi.)",
            bar, allowed),
        text(
            "%s by %.1f psi",
            psi > allowed ? "over-pressured" : "below the limit", Math.abs(psi - allowed)),
        text("%.1f × 14.50 = %.1f psig stand at the tool when nothing flows.", bar, psi));
  }

  private static Variant bores(String id, Draw draw) {
    double narrow = draw.number(6.0, 18.0, 0.1);
    double wide = narrow + draw.number(0.4, 1.5, 0.1);
    return new Variant(
        id,
        text(
            "A hose may have a bore of %.1f to %.1f mm. How many times larger is the pressure loss of the"
                + " narrowest than"
                + " that of the widest?",
            narrow, wide),
        text("%.2f times", Math.pow(wide / narrow, 5.0)),
        text("(%.1f/%.1f)⁵.", wide, narrow));
  }

  private static Variant share(String id, Draw draw) {
    double loaded = draw.number(30.0, 150.0, 1.0);
    double stopped = draw.number(150.0, 500.0, 1.0);
    double capacity = draw.number(40.0, 200.0, 5.0);
    double part = loaded / (loaded + stopped);
    return new Variant(
        id,
        text(
            "With no tool in use a compressor of %.0f scfm runs loaded for %.0f s and stops for %.0f s. Which"
                + " share of its"
                + " capacity leaks, and how many scfm is that?",
            capacity, loaded, stopped),
        text("%.0f %%, %.1f scfm", 100.0 * part, part * capacity),
        text("%.0f / (%.0f + %.0f) = %.3f; times %.0f.", loaded, loaded, stopped, part, capacity));
  }

  private static Variant bleedDown(String id, Draw draw) {
    double volume = draw.number(20.0, 700.0, 10.0);
    double high = draw.number(80.0, 120.0, 5.0);
    double fall = draw.number(5.0, 25.0, 5.0);
    double minutes = draw.number(3.0, 20.0, 0.5);
    return new Variant(
        id,
        text(
            "A receiver and its lines hold %.0f ft³. Shut off from the compressor, the pressure falls from %.0f to %.0f"
                + " psig in %.1f minutes. How much air leaks, counted at 14.7 psia and at the temperature of the air?",
            volume, high, high - fall, minutes),
        text("%.1f scfm", volume * fall / (minutes * ATMOSPHERE)),
        text("V (p1 − p2) / (t p0) = %.0f × %.0f / (%.1f × 14.7).", volume, fall, minutes));
  }

  private static Variant holes(String id, Draw draw) {
    double small = draw.number(0.5, 2.5, 0.5);
    double large = small * draw.one(List.of(1.5, 2.0, 3.0, 4.0));
    return new Variant(
        id,
        text(
            "How many times as much air leaks from a hole of %.2f mm as from a hole of %.1f mm?",
            large, small),
        text("%.2f times", large * large / (small * small)),
        text("(%.2f/%.1f)²: the leak grows with the area.", large, small));
  }

  private static Variant leak(String id, Draw draw) {
    int thirtySeconds = draw.one(List.of(1, 2, 3, 4, 6, 8));
    double inches = thirtySeconds / 32.0;
    double gauge = draw.number(60.0, 150.0, 5.0);
    double coefficient = draw.one(List.of(0.61, 0.97, 1.00));
    double area = Math.PI / 4.0 * inches * inches;
    return new Variant(
        id,
        text(
            "A line at %.0f psig and 530 °R has a hole of %.4f in, with a coefficient of %.2f. How many cubic feet of free"
                + " air (530 °R, 14.7 psia) leak per minute? By q = 18.51 · Cd · A · p1.",
            gauge, inches, coefficient),
        text("%.2f cfm", HOLE * coefficient * area * (gauge + ATMOSPHERE)),
        text(
            "A = π/4 × %.4f² = %.6f in²; 18.51 × %.2f × A × %.1f.",
            inches, area, coefficient, gauge + ATMOSPHERE));
  }
}
