package org.airfit.browser.lessons;

import static org.airfit.browser.lessons.Numbers.form;
import static org.airfit.browser.lessons.Numbers.plain;

import java.time.Duration;
import java.util.List;
import org.airfit.air.AirState;
import org.airfit.air.Compression;
import org.airfit.flow.BleedDown;
import org.airfit.flow.LoadTiming;
import org.airfit.flow.Orifice;
import org.airfit.lesson.Bars;
import org.airfit.lesson.Plot;
import org.airfit.lesson.Table;
import org.airfit.plant.AirPlant;
import org.airfit.plant.YearlyCost;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.Length;
import org.airfit.quantity.MassFlow;
import org.airfit.quantity.Money;
import org.airfit.quantity.PressureDrop;
import org.airfit.quantity.ReferenceState;
import org.airfit.quantity.Temperature;
import org.airfit.quantity.Volume;

/** Leaks, pressure and money: leak, band of pressure, hours and price, what it costs in a year. */
final class Lesson8 {

  private static final AbsolutePressure ATMOSPHERE = AbsolutePressure.parse("1.013 bar(a)");

  private Lesson8() {}

  static List<Figure> figures() {
    return List.of(new Figure(
        "8-leaks",
        8,
        "Change the leak, the pressure and the price",
        List.of(
            Input.of("loaded", "loaded", Kind.SECONDS, "96 s", 1, 600, 1),
            Input.of("stopped", "stopped", Kind.SECONDS, "304 s", 1, 3600, 1),
            Input.of(
                "capacity",
                "capacity of the compressor",
                Kind.LITRES_PER_SECOND,
                "40 L/s ANR",
                1,
                400,
                1),
            Input.of("upper", "pressure that it holds", Kind.BAR_GAUGE, "7.4 bar(g)", 3, 13, 0.1),
            Input.of("lower", "lower pressure", Kind.BAR_GAUGE, "6.4 bar(g)", 1, 12.9, 0.1),
            Input.of(
                "volume", "volume of receiver and pipes", Kind.LITRES, "1500 L", 50, 10000, 10),
            Input.of("fall", "time of the fall", Kind.SECONDS, "165 s", 5, 3600, 1),
            Input.of("price", "price of one kWh", Kind.MONEY, "0.12 EUR", 0.01, 1, 0.01),
            Input.of(
                "hours", "hours under pressure in a year", Kind.HOURS, "8760 h", 100, 8760, 10)),
        "cell-06-0",
        Lesson8::show));
  }

  private static Duration seconds(Given given, String id) {
    return Duration.ofMillis(Math.round(1000 * given.number(id)));
  }

  private static void show(Given given, Shown shown) {
    AbsolutePressure full = given.gauge("upper").absolute(ATMOSPHERE);
    AbsolutePressure lower = given.gauge("lower").absolute(ATMOSPHERE);
    if (!(lower.bar() < full.bar())) {
      throw new IllegalArgumentException(
          "The lower pressure must be below the pressure that the compressor holds.");
    }
    Money price = Money.parse(given.text("price"));
    String money = price.currency();
    LoadTiming sunday =
        new LoadTiming(seconds(given, "loaded"), seconds(given, "stopped"), given.flow("capacity"));
    double leak = litres(sunday.leak().massFlow());
    shown.said(
        "cell-06-0",
        form(
            "The leaks take %.0f %% of the capacity of the compressor: %.1f L/s.",
            100 * sunday.share(), leak));
    shown.markdown("cell-06-1", () -> sunday.working().toMarkdown());

    BleedDown test = new BleedDown(
        Volume.parse(given.text("volume")),
        full,
        lower,
        seconds(given, "fall"),
        Temperature.ofCelsius(15));
    shown.markdown("cell-08-0", () -> test.working().toMarkdown());
    double mean = (full.bar() + lower.bar()) / 2;
    double bleed = litres(test.leak());
    double atFull = bleed * full.bar() / mean;
    shown.said(
        "bleed-compare-0",
        form("Bleed-down: %.1f L/s ANR on the mean, at %.2f bar(a).", bleed, mean),
        form(
            "At %.2f bar(a), in proportion to the absolute pressure: %.1f L/s.",
            full.bar(), atFull),
        form(
            "Load timing says %.1f L/s: the two differ by %.0f %%.",
            leak, 100 * (atFull / leak - 1)));

    Compression intake =
        Compression.adiabatic(AirState.of(ATMOSPHERE, Temperature.ofCelsius(20)), full);
    AirPlant plant = new AirPlant(
        intake, 0.75, 0.92, Duration.ofMinutes(Math.round(60 * given.number("hours"))), price);
    YearlyCost leaks = plant.ofFlow("the leaks", sunday.leak().massFlow());
    shown.said(
        "plant-code-0",
        form(
            "The leaks draw %.2f kW, %s: %.0f kWh or %.0f %s a year.",
            leaks.electric().kilowatts(),
            given.isLesson("hours")
                ? "day and night"
                : plain(given.number("hours")) + " hours in a year",
            leaks.energy().kilowattHours(),
            amount(leaks),
            money));
    shown.markdown("plant-code-1", () -> leaks.working().toMarkdown());

    holes(given, shown, plant, full, money);
    MassFlow leakAtLower = sunday.leak().massFlow().times(lower.bar() / full.bar());
    YearlyCost lessAir = plant.ofSetting("air that leaks no more", leakAtLower, lower, full);
    PressureDrop band =
        PressureDrop.ofBar(given.isLesson("upper", "lower") ? 1 : full.bar() - lower.bar());
    YearlyCost lessWork = plant.ofDrop("less work for the rest", leakAtLower, band);
    AirPlant working2000 = new AirPlant(intake, 0.75, 0.92, Duration.ofHours(2000), price);
    YearlyCost tools =
        working2000.ofDrop("tools", FreeAirFlow.ofAnrLitresPerSecond(20).massFlow(), band);
    String less = plain(full.bar() - lower.bar()) + " bar less";
    double rest = amount(plant.ofFlow("the rest", leakAtLower));
    Table saved = Table.of("what is saved in a year with " + less, money);
    saved.row(
        form("air that leaks no more: %.1f %% of the leaks", 100 * (1 - lower.bar() / full.bar())),
        form("%.0f", amount(lessAir)));
    saved.row(
        form(
            "less work for the air that still leaks: %.1f %% of it", 100 * amount(lessWork) / rest),
        form("%.0f", amount(lessWork)));
    saved.row("both, of the leaks", Math.round(amount(lessAir)) + Math.round(amount(lessWork)));
    saved.row("less work for 20 L/s of tools in 2000 working hours", form("%.0f", amount(tools)));
    shown.markdown("cell-14-0", () -> saved.toMarkdown());

    double now = amount(leaks);
    double loweredCost = Math.max(0, now - amount(lessAir) - amount(lessWork));
    Bars bars = Bars.of("Cost of the leaks", money + " per year", 0)
        .bar("now", now)
        .bar(less.startsWith("1 ") ? "1 bar less" : less, loweredCost)
        .bar("half of them repaired", now / 2)
        .bar("one sharp hole of 3 mm", yearly(plant, full, 3, 0.65));
    shown.svg("cell-16-0", () -> bars.svg());
    shown.svg("+cost", () -> bars.svg());
    shown.sum(form(
        "The leaks: %.1f L/s, %.0f %s a year. With %s: %.0f %s saved.",
        leak, now, money, less, now - loweredCost, money));
  }

  private static void holes(
      Given given, Shown shown, AirPlant plant, AbsolutePressure full, String money) {
    shown.svg(
        "cell-11-0",
        () -> Plot.of(
                "What one hole costs in a year, at " + plain(given.number("upper")) + " bar and "
                    + plain(given.number("price")) + " " + money + " per kWh",
                "diameter of the hole [mm]",
                "cost [" + money + " per year]")
            .curve("rounded edge, coefficient 0.97", 0.2, 6, d -> yearly(plant, full, d, 0.97))
            .curve("sharp edge, coefficient 0.65", 0.2, 6, d -> yearly(plant, full, d, 0.65))
            .fromZero()
            .svg());
    shown.said(
        "cell-12-0",
        form(
            "A sharp hole of 3 mm: %.0f %s a year; a rounded one: %.0f %s.",
            yearly(plant, full, 3, 0.65), money, yearly(plant, full, 3, 0.97), money));
  }

  private static double yearly(
      AirPlant plant, AbsolutePressure full, double millimetres, double cd) {
    AirState line = AirState.of(full, Temperature.ofCelsius(15));
    Orifice hole = Orifice.of(Length.ofMillimetres(millimetres), cd);
    return amount(plant.ofFlow("hole", hole.flow(line, ATMOSPHERE).massFlow()));
  }

  private static double amount(YearlyCost cost) {
    return cost.money().amount().doubleValue();
  }

  private static double litres(MassFlow flow) {
    return FreeAirFlow.from(flow, ReferenceState.ANR).litresPerSecond();
  }
}
