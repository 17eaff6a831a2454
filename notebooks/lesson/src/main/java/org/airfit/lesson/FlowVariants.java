package org.airfit.lesson;

import static org.airfit.lesson.Draw.text;

import java.util.List;

/** Variants of what air does in one part or one line (lessons 3, 4 and 5), with the formulas of the lessons. */
final class FlowVariants {

  private static final double ATMOSPHERE = 14.7;
  private static final double RANKINE = 459.67;
  private static final double GAS = 53.35;

  /** Grams in a litre of air at the reference state of ISO 8778. */
  private static final double REFERENCE_DENSITY = 1.185;

  private static final double REFERENCE_KELVINS = 293.15;

  private FlowVariants() {}

  static Variant of(String id, Draw draw) {
    return switch (id) {
      case "3a" -> absolute(id, draw);
      case "3b" -> choked(id, draw);
      case "3c" -> loss(id, draw);
      case "3d" -> twoSheets(id, draw);
      case "4a" -> density(id, draw);
      case "4b" -> squareLaw(id, draw);
      case "4c" -> table(id, draw);
      case "4d" -> corrected(id, draw);
      case "4e" -> colebrook(id, draw);
      case "5a" -> rule(id, draw);
      case "5b" -> machNumber(id, draw);
      case "5c" -> cut(id, draw);
      case "5d" -> nozzle(id, draw);
      default -> throw new IllegalArgumentException("no variants of " + id);
    };
  }

  private static Variant absolute(String id, Draw draw) {
    double gauge = draw.number(40.0, 150.0, 5.0);
    double atmosphere = draw.one(List.of(14.7, 14.7, 12.2, 13.7));
    return new Variant(
        id,
        text(
            "What is %.0f psig as an absolute pressure, if the atmosphere is %.1f psia?",
            gauge, atmosphere),
        text("%.1f psia", gauge + atmosphere),
        text("%.0f + %.1f.", gauge, atmosphere));
  }

  static double chokedFlow(double conductance, double bar, double celsius) {
    return conductance * bar * Math.sqrt(REFERENCE_KELVINS / (celsius + 273.15));
  }

  private static Variant choked(String id, Draw draw) {
    double conductance = draw.number(1.5, 9.0, 0.1);
    double bar = draw.number(4.0, 9.0, 0.1);
    double celsius = draw.number(0.0, 45.0, 5.0);
    return new Variant(
        id,
        text(
            "A part has C = %.1f dm³/(s·bar). The pressure at its inlet is %.1f bar(a) at %.0f °C. How many litres per"
                + " second (ANR) pass when it chokes?",
            conductance, bar, celsius),
        text("%.1f L/s ANR", chokedFlow(conductance, bar, celsius)),
        text(
            "q* = C · p1 · √(T0/T1) = %.1f × %.1f × √(293.15/%.2f).",
            conductance, bar, celsius + 273.15));
  }

  /** The pressure behind a part over the pressure before it, for a part of the choked flow. */
  static double pressureRatio(double b, double part) {
    return b + (1.0 - b) * Math.sqrt(1.0 - part * part);
  }

  private static Variant loss(String id, Draw draw) {
    double conductance = draw.number(2.0, 8.0, 0.1);
    double b = draw.number(0.20, 0.35, 0.01);
    double gauge = draw.number(70.0, 120.0, 5.0);
    double psia = gauge + ATMOSPHERE;
    double choked = chokedFlow(conductance, psia * 0.0689476, 20.0) * REFERENCE_DENSITY;
    double grams = Math.round(choked * draw.number(0.25, 0.80, 0.05) * 10.0) / 10.0;
    double ratio = pressureRatio(b, grams / choked);
    return new Variant(
        id,
        text(
            "What is the pressure loss of a part with C = %.1f dm³/(s·bar) and b = %.2f, if %.1f g/s flow from"
                + " %.0f psig"
                + " at 20 °C? (1 psi is 0.06895 bar; a litre ANR has 1.185 g.)",
            conductance, b, grams, gauge),
        text("%.1f psi", psia * (1.0 - ratio)),
        text(
            "Choked, %.1f g/s pass. %.1f/%.1f = %.3f, so p2/p1 = %.2f + %.2f √(1 − %.3f²) = %.4f, and the loss is"
                + " %.1f × %.4f.",
            choked,
            grams,
            choked,
            grams / choked,
            b,
            1.0 - b,
            grams / choked,
            ratio,
            psia,
            1.0 - ratio));
  }

  private static double factor(double b, double ratio) {
    double x = (ratio - b) / (1.0 - b);
    return Math.sqrt(1.0 - x * x);
  }

  private static Variant twoSheets(String id, Draw draw) {
    double b = draw.number(0.20, 0.30, 0.05);
    double gauge = draw.number(80.0, 100.0, 10.0);
    double large = draw.number(6.0, 12.0, 1.0);
    double small = draw.number(2.0, 4.0, 0.5);
    double psia = gauge + ATMOSPHERE;
    double one = factor(b, 1.0 - large / psia);
    double other = factor(b, 1.0 - small / psia);
    return new Variant(
        id,
        text(
            "Two couplers pass the same flow from %.0f psig. The first loses %.0f psi, the second %.1f psi. Both have"
                + " b = %.2f. How many times larger is the C of the second?",
            gauge, large, small, b),
        text("%.2f times", one / other),
        text(
            "√(1 − ((p2/p1 − b)/(1 − b))²) is %.3f for the first (p2/p1 = %.3f) and %.3f for the second (p2/p1 = %.3f)."
                + " Their ratio is that of the C. The short way √(%.0f/%.1f) = %.2f is also right.",
            one,
            1.0 - large / psia,
            other,
            1.0 - small / psia,
            large,
            small,
            Math.sqrt(large / small)));
  }

  static double densityOf(double gauge, double fahrenheit) {
    return (gauge + ATMOSPHERE) * 144.0 / (GAS * (fahrenheit + RANKINE));
  }

  private static Variant density(String id, Draw draw) {
    double gauge = draw.number(30.0, 150.0, 5.0);
    double fahrenheit = draw.number(30.0, 110.0, 10.0);
    return new Variant(
        id,
        text(
            "What is the density of air at %.0f psig and %.0f °F, if the atmosphere is 14.7 psia? R = 53.35"
                + " ft·lbf/(lb·°R).",
            gauge, fahrenheit),
        text("%.3f lb/ft³", densityOf(gauge, fahrenheit)),
        text("%.1f × 144 / (53.35 × %.2f).", gauge + ATMOSPHERE, fahrenheit + RANKINE));
  }

  private static Variant squareLaw(String id, Draw draw) {
    double loss = draw.number(1.0, 4.0, 0.1);
    double flow = draw.number(20.0, 60.0, 5.0);
    double other = flow * draw.one(List.of(0.5, 1.2, 1.4, 1.6, 1.8));
    return new Variant(
        id,
        text(
            "A pipe has a pressure loss of %.1f psi at %.0f scfm. What is its pressure loss at %.0f scfm, if the loss"
                + " grows with the square of the flow?",
            loss, flow, other),
        text("%.2f psi", loss * other * other / (flow * flow)),
        text("%.1f × (%.0f/%.0f)².", loss, other, flow));
  }

  private static Variant table(String id, Draw draw) {
    double printed = draw.number(0.2, 2.5, 0.01);
    double feet = draw.number(40.0, 400.0, 10.0);
    return new Variant(
        id,
        text(
            "A table prints %.2f psi for 100 ft of a pipe. What is the pressure loss of %.0f ft?",
            printed, feet),
        text("%.2f psi", printed * feet / 100.0),
        text("%.2f × %.0f/100.", printed, feet));
  }

  private static Variant corrected(String id, Draw draw) {
    double printed = draw.number(0.5, 3.0, 0.05);
    double feet = draw.number(30.0, 250.0, 5.0);
    double gauge = draw.number(50.0, 150.0, 5.0);
    double fahrenheit = draw.number(80.0, 120.0, 10.0);
    double loss =
        printed * feet / 100.0 * 114.7 / (gauge + ATMOSPHERE) * (fahrenheit + 460.0) / 520.0;
    return new Variant(
        id,
        text(
            "A table prints %.2f psi per 100 ft for 100 psig and 60 °F. Correct it for %.0f ft at %.0f psig and"
                + " %.0f °F.",
            printed, feet, gauge, fahrenheit),
        text("%.2f psi", loss),
        text(
            "%.2f × %.2f × 114.7/%.1f × %.0f/520.",
            printed, feet / 100.0, gauge + ATMOSPHERE, fahrenheit + 460.0));
  }

  static double round(double roughness, double reynolds, double friction) {
    double root = -2.0 * Math.log10(roughness / 3.7 + 2.51 / (reynolds * Math.sqrt(friction)));
    return 1.0 / (root * root);
  }

  private static Variant colebrook(String id, Draw draw) {
    double reynolds = draw.number(20_000.0, 300_000.0, 10_000.0);
    double roughness = draw.number(0.0005, 0.0040, 0.0001);
    double first = round(roughness, reynolds, 0.02);
    return new Variant(
        id,
        text(
            "Find the friction factor by two rounds of Colebrook's formula, beginning with λ = 0.02: Re = %.0f,"
                + " ε/D = %.4f.",
            reynolds, roughness),
        text("%.4f", round(roughness, reynolds, first)),
        text(
            "The first round gives %.4f, the second %.4f.",
            first, round(roughness, reynolds, first)));
  }

  private static Variant rule(String id, Draw draw) {
    double gauge = draw.number(70.0, 120.0, 5.0);
    double loss = draw.number(6.0, 24.0, 1.0);
    double part = 100.0 * loss / (gauge + ATMOSPHERE);
    return new Variant(
        id,
        text(
            "The simple formula gives a pressure loss of %.0f psi from %.0f psig. By how many percent is it too low, by"
                + " the rule of the lesson?",
            loss, gauge),
        text("%.1f %%", part / 2.0),
        text("%.0f/%.1f = %.1f %%, and half of it.", loss, gauge + ATMOSPHERE, part));
  }

  private static Variant machNumber(String id, Draw draw) {
    double gamma = draw.one(List.of(1.30, 1.33, 1.40, 1.67));
    return new Variant(
        id,
        text("At which Mach number does a line at one temperature choke, with γ = %.2f?", gamma),
        text("%.3f", 1.0 / Math.sqrt(gamma)),
        text("1/√%.2f.", gamma));
  }

  private static Variant cut(String id, Draw draw) {
    double flow = draw.number(8.0, 20.0, 0.5);
    double metres = draw.one(List.of(20.0, 24.0, 30.0, 40.0));
    double shorter = metres * draw.one(List.of(0.4, 0.5, 0.6, 0.75));
    double longest = flow * Math.sqrt(metres / shorter);
    return new Variant(
        id,
        text(
            "A long thin hose of %.0f m passes %.1f scfm with an open end. It is cut to %.0f m. How much air passes at"
                + " most, if friction along the hose is all that counts?",
            metres, flow, shorter),
        text("%.1f scfm", longest),
        text(
            "%.1f × √(%.0f/%.0f). In truth it is a little less, because the pressure that makes the air faster does not"
                + " fall with the length.",
            flow, metres, shorter));
  }

  private static Variant nozzle(String id, Draw draw) {
    double area = draw.number(0.2, 3.0, 0.1);
    double kilopascals = draw.number(300.0, 900.0, 50.0);
    double kelvins = draw.number(278.0, 308.0, 5.0);
    double behind = draw.number(100.0, 140.0, 10.0);
    return new Variant(
        id,
        text(
            "A nozzle has an area of %.1f cm². The air before it has %.0f kPa absolute and %.0f K; the pressure behind"
                + " it is %.0f kPa absolute. What is the mass flow? (Choked: 0.0404 A p0/√T0, in SI.)",
            area, kilopascals, kelvins, behind),
        text("%.4f kg/s", 0.0404 * area * 1.0e-4 * kilopascals * 1000.0 / Math.sqrt(kelvins)),
        text(
            "%.0f/%.0f = %.2f is below 0.528, so it chokes. 0.0404 × %.1f × 10⁻⁴ × %.0f 000 / √%.0f.",
            behind, kilopascals, behind / kilopascals, area, kilopascals, kelvins));
  }
}
