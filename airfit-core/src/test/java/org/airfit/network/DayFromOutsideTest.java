package org.airfit.network;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.withinPercentage;

import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.airfit.Comparison;
import org.airfit.Rows;
import org.airfit.Rows.Row;
import org.airfit.flow.FlowCapacity;
import org.airfit.plant.PressureBand;
import org.airfit.plant.TimedCompressor;
import org.airfit.plant.WallHeat;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.MassFlow;
import org.airfit.quantity.Power;
import org.airfit.quantity.ReferenceState;
import org.airfit.quantity.SonicConductance;
import org.airfit.quantity.Temperature;
import org.airfit.quantity.Volume;
import org.airfit.quantity.VolumeFlowUnit;
import org.airfit.run.Run;
import org.airfit.run.ToolDemand;
import org.airfit.source.Source;
import org.hipparchus.ode.ODEState;
import org.hipparchus.ode.OrdinaryDifferentialEquation;
import org.hipparchus.ode.nonstiff.DormandPrince853Integrator;
import org.junit.jupiter.api.Test;

/** A plant in time against closed solutions, published examples, and integrations by others. */
class DayFromOutsideTest {

  private static final String CHAPTER = "Plant: air in time";
  private static final double R = 287.05287;
  private static final AbsolutePressure ATMOSPHERE = AbsolutePressure.ofBar(1.01325);
  private static final Temperature WARM = Temperature.ofKelvins(293.15);
  private static final Temperature COUNTED = Temperature.ofFahrenheit(60.0);

  /** So large that a day of these tests does not change its pressure by a millionth. */
  private static final Volume ENDLESS = Volume.ofCubicMetres(1.0e6);

  private static Stream<Row> rows(String table) {
    return Rows.of(DayFromOutsideTest.class, "/org/airfit/plant/" + table);
  }

  private static Duration seconds(double time) {
    return Duration.ofNanos(Math.round(1.0e9 * time));
  }

  private static Optional<Run> through(NozzleElement hole) {
    return Optional.of(
        Run.from(org.airfit.air.AirState.of(AbsolutePressure.ofBar(20.0), WARM), ATMOSPHERE)
            .through("hole", hole));
  }

  private static NozzleElement hole(Row row) {
    double d = 1.0e-3 * row.number("hole_mm");
    return new NozzleElement(row.number("cd") * 0.25 * Math.PI * d * d);
  }

  private static LineReceiver first(double cubicMetres, double barAbsolute) {
    return new LineReceiver(
        "tank",
        Optional.empty(),
        Volume.ofCubicMetres(cubicMetres),
        GaugePressure.ofBar(barAbsolute - 1.01325));
  }

  /** The pressure in the first receiver when the day ends [bar(a)]. It only falls, so that is its lowest. */
  private static double atEnd(DayResult result) {
    List<DayResult.Stretch> course = result.course();
    return course
        .get(course.size() - 1)
        .lowestAtCompressors()
        .absolute(ATMOSPHERE)
        .bar();
  }

  private static void bleeds(Row row, WallHeat walls, String time) {
    DayResult result = PlantDay.at(ATMOSPHERE, Temperature.ofKelvins(row.number("t1_K")))
        .lasting(seconds(row.number(time)))
        .walls(walls)
        .receiver(first(row.number("volume_m3"), row.number("p1_bar_abs")))
        .receiver(
            new LineReceiver("outside", through(hole(row)), ENDLESS, GaugePressure.ofPascals(0.0)))
        .build()
        .simulate();
    Comparison.of(
            CHAPTER,
            row.text("id") + ", a tank through a hole after " + row.text(time) + " s, " + walls,
            row.number("p2_bar_abs"),
            "bar",
            row.evidence("p2_bar_abs"))
        .isMetBy(
            atEnd(result), 2.0e-5 * row.number("p2_bar_abs"), "the error of the steps, 1e-7 each");
  }

  @Test
  void a_tank_bleeds_through_a_hole_as_the_closed_solutions_say() {
    rows("bleed_down.csv").forEach(row -> {
      bleeds(row, WallHeat.KEEPS, "time_isothermal_s");
      bleeds(row, WallHeat.NONE, "time_adiabatic_s");
    });
  }

  private static void fills(Row row, WallHeat walls, String time) {
    Volume volume = Volume.ofCubicMetres(row.number("volume_m3"));
    DayResult result = PlantDay.at(ATMOSPHERE, Temperature.ofKelvins(row.number("t_supply_K")))
        .lasting(seconds(row.number(time)))
        .walls(walls)
        .receiver(first(1.0e6, row.number("supply_bar_abs")))
        .receiver(new LineReceiver(
            "tank",
            through(hole(row)),
            volume,
            GaugePressure.ofBar(row.number("p1_bar_abs") - 1.01325)))
        .build()
        .simulate();
    Comparison.of(
            CHAPTER,
            row.text("id") + ", a tank filled through a hole for " + row.text(time) + " s, "
                + walls,
            row.number("p2_bar_abs"),
            "bar",
            row.evidence("p2_bar_abs"))
        .isMetBy(
            result.course().get(479).highest().absolute(ATMOSPHERE).bar(),
            2.0e-5 * row.number("p2_bar_abs"),
            "the error of the steps, 1e-7 each");
  }

  @Test
  void a_tank_fills_through_a_hole_as_the_closed_solutions_say() {
    rows("fill_orifice.csv").forEach(row -> {
      fills(row, WallHeat.KEEPS, "time_isothermal_s");
      fills(row, WallHeat.NONE, "time_adiabatic_s");
    });
  }

  private static FreeAirFlow cubicFeet(double flow, double psia) {
    ReferenceState here = ReferenceState.of(
        "site", COUNTED, AbsolutePressure.ofPsi(psia), 0.0, Source.derived("the site"));
    return FreeAirFlow.of(flow, VolumeFlowUnit.CUBIC_FOOT_PER_MINUTE, here);
  }

  private static TimedCompressor us(double flow, double psia, double cutIn, double cutOut) {
    return new TimedCompressor(
        "compressor",
        cubicFeet(flow, psia),
        Optional.of(new PressureBand(GaugePressure.ofPsi(cutIn), GaugePressure.ofPsi(cutOut))),
        Duration.ZERO,
        Duration.ZERO,
        Optional.empty(),
        Duration.ZERO,
        Power.ofKilowatts(18.0),
        Power.ofKilowatts(6.0),
        GaugePressure.ofPsi(100.0));
  }

  private static TimedUse always(FreeAirFlow flow, Optional<GaugePressure> need) {
    return new TimedUse(
        "shop", Optional.empty(), ToolDemand.fixed("shop", flow), need, DemandTimes.always());
  }

  /** Ten whole cycles from cut-out: half of their time is told by the table, and nothing is counted by us. */
  @Test
  void a_compressor_swings_in_the_times_of_the_table() {
    rows("cycle_times.csv").forEach(row -> {
      double psia = row.number("pa_psia");
      double band = row.number("band_psi");
      DayResult result = PlantDay.at(AbsolutePressure.ofPsi(psia), COUNTED)
          .lasting(seconds(10.0 * (row.number("load_s") + row.number("unload_s"))))
          .receiver(new LineReceiver(
              "receiver",
              Optional.empty(),
              Volume.ofUsGallons(row.number("volume_gal")),
              GaugePressure.ofPsi(90.0 + band)))
          .compressor(us(row.number("compressor_scfm"), psia, 90.0, 90.0 + band))
          .use(always(cubicFeet(row.number("demand_scfm"), psia), Optional.empty()))
          .build()
          .simulate();
      DayResult.CompressorDay did = result.compressors().get(0);
      assertThat(did.loads()).isEqualTo(10);
      Comparison.of(
              CHAPTER,
              row.text("id") + ", load time in a simulated day",
              row.number("load_s"),
              "s",
              row.evidence("load_s"))
          .isMetBy(
              1.0e-10 * did.loaded().toNanos(),
              2.0e-5 * row.number("load_s"),
              "six digits of the table, over ten cycles that begin anew");
    });
  }

  /** The compressor is called at once and never reaches cut-out; the rest of the time is spent below. */
  @Test
  void a_receiver_carries_a_demand_as_long_as_the_table_says() {
    rows("receiver_cases.csv").forEach(row -> {
      double psia = row.number("pa_psia");
      double time = row.number("time_s");
      double from = row.number("p1_psig");
      PlantDay.Builder plant = PlantDay.at(AbsolutePressure.ofPsi(psia), COUNTED)
          .lasting(seconds(2.0 * time))
          .receiver(new LineReceiver(
              "receiver",
              Optional.empty(),
              Volume.ofUsGallons(row.number("volume_gal")),
              GaugePressure.ofPsi(from)))
          .use(always(
              cubicFeet(row.number("demand_scfm"), psia),
              Optional.of(GaugePressure.ofPsi(row.number("p2_psig")))));
      if (row.number("compressor_scfm") > 0.0) {
        plant.compressor(us(row.number("compressor_scfm"), psia, from + 1.0, from + 2.0));
      }
      DayResult.UseDay shop = plant.build().simulate().uses().get(0);
      Comparison.of(
              CHAPTER,
              row.text("id") + ", how long a receiver carries a demand in a simulated day",
              time,
              "s",
              row.evidence("time_s"))
          .isMetBy(
              1.0e-9 * shop.runs().minus(shop.below()).toNanos(),
              1.0e-5 * time,
              "six digits of the table");
    });
  }

  private static double carried(
      double cubicFeetOfTank, double from, double to, double out, double in, double seconds) {
    PlantDay.Builder plant = PlantDay.at(AbsolutePressure.ofPsi(14.7), COUNTED)
        .lasting(seconds(2.0 * seconds))
        .receiver(new LineReceiver(
            "receiver",
            Optional.empty(),
            Volume.ofCubicFeet(cubicFeetOfTank),
            GaugePressure.ofPsi(from)))
        .use(always(cubicFeet(out, 14.7), Optional.of(GaugePressure.ofPsi(to))));
    if (in > 0.0) {
      plant.compressor(us(in, 14.7, from + 1.0, from + 2.0));
    }
    DayResult.UseDay shop = plant.build().simulate().uses().get(0);
    return 1.0e-9 * shop.runs().minus(shop.below()).toNanos();
  }

  /** The published volumes, asked the other way round: they carry the time for which they were reckoned. */
  @Test
  void published_receivers_carry_the_time_they_were_made_for() {
    Row esposito = worked("RC01"); // 20 scfm for 6 min, 100 to 80 psig: 659.7 US gal
    Row sullivan = worked("RC03"); // 10 ft³/min for 5 min, 125 to 100 psig: 29.4 ft³
    Row sheet = rows("receiver_published.csv")
        .filter(row -> row.text("id").equals("RP1"))
        .findFirst()
        .orElseThrow(); // 350 cfm, 250 cfm in, 5 min, 100 to 60 psig: 183.75 ft³
    double surge = Double.parseDouble(sheet.text("published_answer").split(";", -1)[0]);
    carries(
        esposito,
        carried(
            esposito.number("published_answer") * 231.0 / 1728.0, 100.0, 80.0, 20.0, 0.0, 360.0),
        360.0,
        0.053); // half of the last digit of the volume is 0.027 s, and its 7.48 US gal/ft³ another
    // 0.025 s
    carries(
        sullivan,
        carried(sullivan.number("published_answer"), 125.0, 100.0, 10.0, 0.0, 300.0),
        300.0,
        0.52); // 0.51 s
    carries(sheet, carried(surge, 100.0, 60.0, 350.0, 250.0, 300.0), 300.0, 0.01);
  }

  private static void carries(Row row, double ours, double made, double allowed) {
    Comparison.of(
            CHAPTER,
            row.text("id") + ", how long the published receiver carries what it was made for",
            made,
            "s",
            row.evidence("published_answer"))
        .isMetBy(
            ours,
            allowed,
            "half of the last digit of the volume, and of its gallons in a cubic foot");
  }

  private static Row worked(String id) {
    return rows("worked_examples.csv")
        .filter(row -> row.text("id").equals(id))
        .findFirst()
        .orElseThrow();
  }

  /**
   * Textbook example: a tyre of 1 ft³ at 50 psia and 70 °F loses its air through a hole of 0.0938 in; after 18.7 s the
   * flow is choked no more, at 0.472 of 27.8 psia above the atmosphere.
   */
  @Test
  void a_published_tyre_is_choked_no_more_after_its_published_time() {
    double d = 0.0938 * 0.0254;
    DayResult result = PlantDay.at(AbsolutePressure.ofPsi(14.7), Temperature.ofFahrenheit(70.0))
        .lasting(seconds(18.7))
        .receiver(new LineReceiver(
            "tyre", Optional.empty(), Volume.ofCubicFeet(1.0), GaugePressure.ofPsi(35.3)))
        .receiver(new LineReceiver(
            "outside",
            through(new NozzleElement(0.25 * Math.PI * d * d)),
            ENDLESS,
            GaugePressure.ofPascals(0.0)))
        .build()
        .simulate();
    Row row = rows("receiver_published.csv")
        .filter(each -> each.text("id").equals("RP7"))
        .findFirst()
        .orElseThrow();
    Comparison.of(
            CHAPTER,
            "RP7, pressure in a tyre after 18.7 s, when it is choked no more",
            Double.parseDouble(row.text("published_answer").split(" ", -1)[0]),
            "psig",
            row.evidence("published_answer"))
        .isMetBy(
            result.course().get(479).lowestAtCompressors().psi(),
            0.1,
            "half a digit of 13.1 psig, and half a digit of 18.7 s, in which it falls by 0.04 psi");
  }

  /** A leak on the header alone empties the receiver along e^(−t/τ), whatever the nozzle. */
  @Test
  void a_choked_leak_empties_a_receiver_exponentially() {
    double rated = 0.01;
    AbsolutePressure at = AbsolutePressure.ofBar(7.0);
    double tau = 7.0e5 * 2.0 / (R * 293.15 * rated);
    ToolDemand leak = ToolDemand.following(
        "leak", FreeAirFlow.from(MassFlow.ofKilogramsPerSecond(rated), ReferenceState.ANR), at);
    DayResult result = PlantDay.at(ATMOSPHERE, WARM)
        .lasting(seconds(tau))
        .receiver(first(2.0, 8.0))
        .use(new TimedUse("leak", Optional.empty(), leak, Optional.empty(), DemandTimes.always()))
        .build()
        .simulate();
    assertThat(atEnd(result)).isCloseTo(8.0 * Math.exp(-1.0), withinPercentage(1.0e-3));
    assertThat(result.balance().takenKilograms())
        .isCloseTo(8.0e5 * 2.0 / (R * 293.15) * (1.0 - Math.exp(-1.0)), withinPercentage(2.0e-3));
  }

  /** Per psi of more pressure an unregulated use takes so much more; the table was reckoned without us. */
  @Test
  void unregulated_uses_take_more_by_the_table_of_artificial_demand() {
    rows("artificial_demand.csv").filter(row -> row.number("p_psig") > 75.0).forEach(row -> {
      AbsolutePressure around = AbsolutePressure.ofPsi(row.number("pa_psia"));
      GaugePressure need = GaugePressure.ofPsi(75.0);
      ToolDemand blow = ToolDemand.following("blow", cubicFeet(10.0, 14.7), need.absolute(around));
      DayResult result = PlantDay.at(around, WARM)
          .lasting(Duration.ofSeconds(1))
          .receiver(new LineReceiver(
              "receiver", Optional.empty(), ENDLESS, GaugePressure.ofPsi(row.number("p_psig"))))
          .use(
              new TimedUse("blow", Optional.empty(), blow, Optional.of(need), DemandTimes.always()))
          .build()
          .simulate();
      Comparison.of(
              CHAPTER,
              row.text("p_psig") + " psig at " + row.text("pa_psia")
                  + " psia, change of an unregulated flow at 75 psig",
              row.number("flow_change_pct_to_75psig"),
              "%",
              row.evidence("flow_change_pct_to_75psig"))
          .isMetBy(
              -100.0 * result.tooMuchKilograms() / result.balance().takenKilograms(),
              row.halfDigit("flow_change_pct_to_75psig"),
              "half a digit of the table");
    });
  }

  /**
   * Two receivers, a part of ISO 6358 between them, a compressor that delivers, a leak and a fixed draw: the same
   * equations written anew and integrated by Hipparchus with 1e-12.
   */
  @Test
  void two_receivers_go_as_an_integrator_of_others_says() {
    FlowCapacity part = FlowCapacity.of(SonicConductance.ofCubicDecimetresPerSecondBar(6.0), 0.3);
    double made = 0.05;
    double drawn = 0.03;
    double leakAt7 = 0.004;
    TimedCompressor machine = new TimedCompressor(
        "c",
        FreeAirFlow.from(MassFlow.ofKilogramsPerSecond(made), ReferenceState.ANR),
        Optional.of(new PressureBand(GaugePressure.ofBar(20.0), GaugePressure.ofBar(30.0))),
        Duration.ZERO,
        Duration.ZERO,
        Optional.empty(),
        Duration.ZERO,
        Power.ofKilowatts(20.0),
        Power.ofKilowatts(5.0),
        GaugePressure.ofBar(7.0));
    DayResult result = PlantDay.at(ATMOSPHERE, WARM)
        .lasting(Duration.ofSeconds(200))
        .receiver(first(0.8, 7.5))
        .receiver(new LineReceiver(
            "dry",
            Optional.of(
                Run.from(org.airfit.air.AirState.of(AbsolutePressure.ofBar(9.0), WARM), ATMOSPHERE)
                    .through("dryer", part)),
            Volume.ofCubicMetres(1.5),
            GaugePressure.ofBar(5.5)))
        .compressor(machine)
        .use(always(
            FreeAirFlow.from(MassFlow.ofKilogramsPerSecond(drawn), ReferenceState.ANR),
            Optional.empty()))
        .use(new TimedUse(
            "leak",
            Optional.empty(),
            ToolDemand.following(
                "leak",
                FreeAirFlow.from(MassFlow.ofKilogramsPerSecond(leakAt7), ReferenceState.ANR),
                AbsolutePressure.ofBar(7.0)),
            Optional.empty(),
            DemandTimes.always()))
        .build()
        .simulate();
    double rho = ReferenceState.ANR.density().kilogramsPerCubicMetre();
    double c = 6.0e-8 * rho;
    double perPascal1 = R * 293.15 / 0.8;
    double perPascal2 = R * 293.15 / 1.5;
    OrdinaryDifferentialEquation equations = new OrdinaryDifferentialEquation() {
      @Override
      public int getDimension() {
        return 2;
      }

      @Override
      public double[] computeDerivatives(double t, double[] p) {
        double ratio = p[1] / p[0];
        double z = Math.max(0.0, (ratio - 0.3) / 0.7);
        double flow = c * p[0] * Math.sqrt(Math.max(0.0, 1.0 - z * z));
        return new double[] {
          perPascal1 * (made - flow), perPascal2 * (flow - drawn - leakAt7 * p[1] / 7.0e5)
        };
      }
    };
    double[] there = new DormandPrince853Integrator(1.0e-9, 10.0, 1.0e-6, 1.0e-12)
        .integrate(equations, new ODEState(0.0, new double[] {7.5e5, 6.51325e5}), 200.0)
        .getPrimaryState();
    DayResult.Stretch last = result.course().get(479);
    double first = last.highestAtCompressors().absolute(ATMOSPHERE).pascals();
    double header = last.highest().absolute(ATMOSPHERE).pascals();
    double firstLow = last.lowestAtCompressors().absolute(ATMOSPHERE).pascals();
    double headerLow = last.lowest().absolute(ATMOSPHERE).pascals();
    assertThat(Math.min(Math.abs(first - there[0]), Math.abs(firstLow - there[0])))
        .isLessThan(1.0e-5 * there[0]);
    assertThat(Math.min(Math.abs(header - there[1]), Math.abs(headerLow - there[1])))
        .isLessThan(1.0e-5 * there[1]);
  }
}
