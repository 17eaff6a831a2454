package org.airfit.lesson;

import static org.airfit.lesson.Draw.text;

import java.util.List;

/**
 * Variants of gauges, days, water and the change of couplings (lessons 10 to 13), reckoned with the formulas of the
 * lessons.
 */
final class PlantVariants {

  private static final double ATMOSPHERE = 14.7;

  /** The saturation pressure of water [kPa], as steam tables print it. */
  private record Steam(int celsius, double kilopascals) {}

  private static final List<Steam> STEAM = List.of(
      new Steam(10, 1.228), new Steam(20, 2.339), new Steam(30, 4.247), new Steam(40, 7.384));

  /** What 1 mm² without loss passes [dm³/(s·bar)]. */
  private static final double NOZZLE = 0.1994;

  private PlantVariants() {}

  static Variant of(String id, Draw draw) {
    return switch (id) {
      case "10a" -> lost(id, draw);
      case "10b" -> gaugeClass(id, draw);
      case "10c" -> conductance(id, draw);
      case "10d" -> atRest(id, draw);
      case "11a" -> mean(id, draw);
      case "11b" -> receiver(id, draw);
      case "11c" -> loaded(id, draw);
      case "11d" -> artificial(id, draw);
      case "12a" -> humidity(id, draw);
      case "12b" -> drained(id, draw);
      case "12c" -> letOut(id, draw);
      case "12d" -> waterClass(id, draw);
      case "13a" -> ways(id, draw);
      case "13b" -> change(id, draw);
      case "13c" -> spare(id, draw);
      case "13d" -> bore(id, draw);
      default -> throw new IllegalArgumentException("no variants of " + id);
    };
  }

  private static Variant lost(String id, Draw draw) {
    double rest = draw.number(6.5, 7.5, 0.1);
    double off = draw.one(List.of(-0.3, -0.2, -0.1, 0.1, 0.2, 0.3));
    double first = rest - draw.number(0.1, 0.4, 0.1);
    double second = first + off - draw.number(0.5, 2.5, 0.1);
    return new Variant(
        id,
        text(
            "At rest gauge A at the supply shows %.1f bar and gauge B at the tool %.1f bar. While the tool runs, A"
                + " shows %.1f bar and B %.1f bar. How much pressure is lost between them?",
            rest, rest + off, first, second),
        text("%.1f bar", first - second + off),
        text("(%.1f − %.1f) − (%.1f − %.1f).", first, second, rest, rest + off));
  }

  private static Variant gaugeClass(String id, Draw draw) {
    double percent = draw.one(List.of(0.6, 1.0, 1.6, 2.5, 4.0));
    double top = draw.one(List.of(60.0, 100.0, 160.0, 200.0, 300.0));
    double shown = Math.rint(top * draw.number(0.2, 0.8, 0.1));
    return new Variant(
        id,
        text(
            "A gauge of class %.1f has a scale to %.0f psi. Its pointer stands at %.0f psi. By how many psi may it be"
                + " wrong?",
            percent, top, shown),
        text("%.2f psi", percent * top / 100.0),
        text("%.1f %% of the scale, %.0f psi, and not of the reading.", percent, top));
  }

  private static Variant conductance(String id, Draw draw) {
    double inlet = draw.number(6.5, 9.0, 0.1);
    double b = draw.number(0.20, 0.40, 0.05);
    double loss = Math.rint(inlet * draw.number(0.05, 0.30, 0.05) * 10.0) / 10.0;
    double flow = draw.number(5.0, 20.0, 0.5);
    double ratio = (inlet - loss) / inlet;
    double part = Math.sqrt(1.0 - Math.pow((ratio - b) / (1.0 - b), 2.0));
    return new Variant(
        id,
        text(
            "A coupling with b = %.2f has %.1f bar(a) in front of it and loses %.1f bar while %.1f L/s ANR of air at 20"
                + " °C pass. What is its C?",
            b, inlet, loss, flow),
        text("%.2f dm³/(s·bar)", flow / (inlet * part)),
        text(
            "√(1 − ((%.3f − %.2f)/%.2f)²) = %.3f; %.1f / (%.1f × %.3f).",
            ratio, b, 1.0 - b, part, flow, inlet, part));
  }

  private static Variant atRest(String id, Draw draw) {
    boolean running = draw.coin();
    double first = draw.number(6.8, 7.5, 0.1);
    double second = first - draw.number(0.5, 1.5, 0.1);
    return new Variant(
        id,
        text(
            "Two gauges of class 1, scale to 10 bar, stand on one line without leaks. %s A at the compressor shows %.1f"
                + " bar, B at the far end %.1f bar. Does this tell that a gauge is wrong?",
            running ? "The tool at the far end runs." : "Nothing runs, and every valve is open.",
            first,
            second),
        running ? "no: pressure is lost where air flows" : "yes: a gauge is wrong",
        running
            ? "While air flows, pressure is lost. Read both at rest as well."
            : "Where nothing flows, nothing is lost.");
  }

  private static Variant mean(String id, Draw draw) {
    double flow = draw.number(40.0, 200.0, 5.0);
    double seconds = draw.number(5.0, 40.0, 1.0);
    double minutes = draw.number(1.0, 15.0, 1.0);
    return new Variant(
        id,
        text(
            "A press draws %.0f L/s for %.0f s, once in %.0f minutes. What is its mean flow?",
            flow, seconds, minutes),
        text("%.2f L/s", flow * seconds / (60.0 * minutes)),
        text("%.0f × %.0f / %.0f.", flow, seconds, 60.0 * minutes));
  }

  private static Variant receiver(String id, Draw draw) {
    double delivered = draw.number(20.0, 300.0, 10.0);
    double taken = delivered + draw.number(20.0, 200.0, 10.0);
    double minutes = draw.number(0.5, 5.0, 0.5);
    double start = draw.number(90.0, 125.0, 5.0);
    double fall = draw.number(10.0, 30.0, 5.0);
    return new Variant(
        id,
        text(
            "A user takes %.0f scfm for %.1f minutes while the compressor delivers %.0f scfm. The pressure may fall"
                + " from %.0f to %.0f psig, and the atmosphere is 14.7 psia. How large must the receiver be?",
            taken, minutes, delivered, start, start - fall),
        text("%.1f ft³", minutes * (taken - delivered) * ATMOSPHERE / fall),
        text("%.1f × %.0f × 14.7 / %.0f.", minutes, taken - delivered, fall));
  }

  private static Variant loaded(String id, Draw draw) {
    double volume = draw.number(10.0, 150.0, 5.0);
    double band = draw.one(List.of(10.0, 15.0, 20.0));
    double capacity = draw.number(60.0, 200.0, 10.0);
    double demand = capacity * draw.number(0.2, 0.8, 0.1);
    return new Variant(
        id,
        text(
            "A compressor of %.0f scfm feeds a steady demand of %.0f scfm from a receiver of %.0f ft³. Its band is"
                + " %.0f psi wide, the atmosphere 14.7 psia. For how many seconds is it loaded in each cycle, and for"
                + " how many not?",
            capacity, demand, volume, band),
        text(
            "%.1f s loaded, %.1f s not",
            60.0 * volume * band / (ATMOSPHERE * (capacity - demand)),
            60.0 * volume * band / (ATMOSPHERE * demand)),
        text(
            "60 × %.0f × %.0f / (14.7 × %.0f), and the same over %.0f.",
            volume, band, capacity - demand, demand));
  }

  private static Variant artificial(String id, Draw draw) {
    double flow = draw.number(5.0, 40.0, 1.0);
    double need = draw.number(50.0, 85.0, 5.0);
    double header = need + draw.number(10.0, 40.0, 5.0);
    return new Variant(
        id,
        text(
            "An open blow nozzle, not regulated, takes %.0f scfm at %.0f psig. The header stands at %.0f psig,"
                + " atmosphere 14.7 psia. How much does it take, and how much of it is artificial demand?",
            flow, need, header),
        text(
            "%.1f scfm, %.1f scfm of it",
            flow * (header + ATMOSPHERE) / (need + ATMOSPHERE),
            flow * (header - need) / (need + ATMOSPHERE)),
        text("%.0f × %.1f / %.1f.", flow, header + ATMOSPHERE, need + ATMOSPHERE));
  }

  private static Variant humidity(String id, Draw draw) {
    Steam steam = draw.one(STEAM);
    double humid = draw.number(0.30, 0.95, 0.05);
    double vapour = humid * steam.kilopascals();
    return new Variant(
        id,
        text(
            "Air of %d °C has a relative humidity of %.0f %%. The saturation pressure there is %.3f kPa, the pressure"
                + " is 101.3 kPa. How many grams of water go with a kilogram of dry air?",
            steam.celsius(), 100.0 * humid, steam.kilopascals()),
        text("%.2f g/kg", 622.0 * vapour / (101.3 - vapour)),
        text("e = %.3f kPa; 622 × %.3f / (101.3 − %.3f).", vapour, vapour, vapour));
  }

  private static Variant drained(String id, Draw draw) {
    double air = draw.number(50.0, 400.0, 10.0);
    double in = draw.number(8.0, 25.0, 0.5);
    double out = in - draw.number(2.0, 7.0, 0.5);
    return new Variant(
        id,
        text(
            "Dry air flows at %.0f kg/h. Into a cooler it brings %.1f g of water for each kilogram, and it leaves with"
                + " %.1f g. How many litres does the drain get in a shift of 8 hours?",
            air, in, out),
        text("%.1f L", 8.0 * air * (in - out) / 1000.0),
        text("%.0f × (%.1f − %.1f) / 1000 × 8.", air, in, out));
  }

  private static Variant letOut(String id, Draw draw) {
    Steam steam = draw.one(STEAM);
    double line = draw.number(5.0, 12.0, 0.5);
    return new Variant(
        id,
        text(
            "Air is saturated in a line at %.1f bar(a) and %d °C, where the saturation pressure is %.3f kPa. It is let"
                + " out to 1.0 bar(a). Which vapour pressure has it there?",
            line, steam.celsius(), steam.kilopascals()),
        text("%.3f kPa", steam.kilopascals() / line),
        text("%.3f × 1.0 / %.1f.", steam.kilopascals(), line));
  }

  private static Variant waterClass(String id, Draw draw) {
    double fahrenheit = draw.number(34.0, 54.0, 1.0);
    double celsius = (fahrenheit - 32.0) / 1.8;
    String is = celsius <= 3.0
        ? "class 4"
        : celsius <= 7.0 ? "class 5" : celsius <= 10.0 ? "class 6" : "none of them";
    return new Variant(
        id,
        text(
            "The maker of a dryer warrants a pressure dew point of %.0f °F. Which class of water by ISO 8573-1 is it:"
                + " class 4 (up to 3 °C), class 5 (up to 7 °C), class 6 (up to 10 °C), or none of them?",
            fahrenheit),
        is,
        text("(%.0f − 32) / 1.8 = %.2f °C.", fahrenheit, celsius));
  }

  private static Variant ways(String id, Draw draw) {
    int plugs = (int) draw.number(3.0, 30.0, 1.0);
    int sockets = (int) draw.number(2.0, 20.0, 1.0);
    int right = (int) draw.number(2.0, 20.0, 1.0);
    return new Variant(
        id,
        text(
            "A shop has %d plugs of one profile, %d sockets for them, and %d sockets of another profile, in which those"
                + " plugs let go. In how many ways can a plug and a socket meet dangerously?",
            plugs, right, sockets),
        text("%d ways", plugs * sockets),
        text("%d × %d; the sockets that fit do not count.", plugs, sockets));
  }

  private static Variant change(String id, Draw draw) {
    int sockets = (int) draw.number(2.0, 20.0, 1.0);
    int plugs = (int) draw.number(3.0, 30.0, 1.0);
    double socket = draw.number(7.0, 18.0, 0.5);
    double plug = draw.number(1.5, 4.0, 0.25);
    return new Variant(
        id,
        text(
            "Keeping one profile means %d new sockets at %.2f EUR and %d new plugs at %.2f EUR. The work is 9.00 EUR"
                + " for a socket and 4.00 EUR for a plug. What does the change cost?",
            sockets, socket, plugs, plug),
        text("%.2f EUR", sockets * (socket + 9.0) + plugs * (plug + 4.0)),
        text("%d × %.2f + %d × %.2f.", sockets, socket + 9.0, plugs, plug + 4.0));
  }

  private static Variant spare(String id, Draw draw) {
    int pieces = (int) draw.number(10.0, 60.0, 5.0);
    double worn = draw.one(List.of(0.1, 0.2, 0.25, 0.5));
    int days = (int) draw.number(7.0, 42.0, 7.0);
    double mean = pieces * worn * days / 365.0;
    return new Variant(
        id,
        text(
            "%d plugs are in use. Of them %.0f %% wear out in a year, and new ones take %d days to come. Pieces fail one"
                + " by one. How large is the chance that one spare plug is not enough?",
            pieces, 100.0 * worn, days),
        text("%.1f %%", 100.0 * (1.0 - Math.exp(-mean) * (1.0 + mean))),
        text("The mean is %.3f; 1 − e^(−%.3f) × (1 + %.3f).", mean, mean, mean));
  }

  private static Variant bore(String id, Draw draw) {
    double bore = draw.number(4.0, 12.0, 0.5);
    double most = NOZZLE * Math.PI / 4.0 * bore * bore;
    double printed = Math.rint(10.0 * most * draw.one(List.of(0.6, 0.8, 1.3, 1.6))) / 10.0;
    return new Variant(
        id,
        text(
            "A list prints a coupling with a narrowest bore of %.1f mm and C = %.1f dm³/(s·bar). By 0.1994 for each mm²:"
                + " what is the largest C of this bore, and can both figures be true?",
            bore, printed),
        text("%.2f dm³/(s·bar): %s", most, printed <= most ? "yes" : "no"),
        text("0.1994 × π/4 × %.1f².", bore));
  }
}
