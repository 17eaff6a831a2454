package org.airfit.files;

import java.time.Duration;
import java.util.List;
import java.util.Optional;
import org.airfit.air.AirState;
import org.airfit.air.Compression;
import org.airfit.plant.AirPlant;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.Money;
import org.airfit.quantity.ReferenceState;
import org.airfit.quantity.Temperature;
import org.airfit.quantity.VolumeFlowUnit;
import org.airfit.select.PlantYear;
import org.airfit.select.Requirement;

/** The figures of the customer's plant, by which parts are reckoned over a year. */
final class YearFields {

  /** Our own choice where a job does not tell: efficiencies of a small compressor and its motor. */
  private static final double COMPRESSOR = 0.75;

  private static final double MOTOR = 0.9;

  private static final Temperature INTAKE = Temperature.ofCelsius(20.0);

  private static final int MOST_HOURS = 8784;

  private YearFields() {}

  /** The year of a job; empty where it has none. What was assumed joins the remarks. */
  static Optional<PlantYear> in(Field root, Requirement job, List<String> remarks)
      throws WrongFileException {
    Optional<Field> told = root.find("year", "an object with hours, electricity and flow");
    if (told.isEmpty()) {
      return Optional.empty();
    }
    Field year = told.get();
    Field hours = year.field("hours", "a whole number of hours in the year");
    int running = hours.wholeNumber();
    if (running < 0 || running > MOST_HOURS) {
      throw hours.wrong("must be in [0, " + MOST_HOURS + "] h, was " + running);
    }
    Money rate =
        PriceField.of(year.field("electricity", "the price of a kWh, such as \"0.15 USD\""));
    FreeAirFlow flow = year.field("flow", "the mean flow over these hours, such as \"8 scfm\"")
        .as(FreeAirFlow::parse);
    Optional<Field> leak = year.find("leakPerJoint", "a flow such as \"0.02 scfm\"");
    FreeAirFlow leaks = leak.isPresent()
        ? leak.get().as(FreeAirFlow::parse)
        : FreeAirFlow.of(0.0, VolumeFlowUnit.LITRE_PER_SECOND, ReferenceState.ANR);
    Optional<Field> reaches = year.find("discharge", Accepted.GAUGE);
    AbsolutePressure atmosphere = job.toOutlet().atmosphere();
    GaugePressure discharge =
        reaches.isPresent() ? reaches.get().as(GaugePressure::parse) : job.highest();
    double compressor = efficiency(year, "compressorEfficiency", COMPRESSOR, remarks);
    double motor = efficiency(year, "motorEfficiency", MOTOR, remarks);
    year.requireNothingElse();
    AirPlant plant = year.build(() -> new AirPlant(
        Compression.adiabatic(AirState.of(atmosphere, INTAKE), discharge.absolute(atmosphere)),
        compressor,
        motor,
        Duration.ofHours(running),
        rate));
    return Optional.of(new PlantYear(plant, flow, leaks));
  }

  private static double efficiency(Field year, String name, double assumed, List<String> remarks)
      throws WrongFileException {
    Optional<Field> told = year.find(name, "a number such as " + assumed);
    if (told.isPresent()) {
      return told.get().number();
    }
    remarks.add("An efficiency of the " + (name.startsWith("motor") ? "motor" : "compressor")
        + " of " + assumed + " is assumed, as year." + name + " is not told.");
    return assumed;
  }
}
