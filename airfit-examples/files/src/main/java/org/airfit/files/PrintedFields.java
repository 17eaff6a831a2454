package org.airfit.files;

import java.util.Optional;
import org.airfit.air.AirState;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.Length;
import org.airfit.quantity.Temperature;
import org.airfit.quantity.ValveCoefficient;
import org.airfit.select.ListedPart;
import org.airfit.select.Part;

/** The figures that a price list prints beside those by which a part is judged; a job does not use them. */
final class PrintedFields {

  private static final String PRINTED = "printed";

  /** Air of a rating has this temperature unless told: our own choice, as for ratings. */
  private static final Temperature SHOP = Temperature.ofCelsius(20.0);

  private PrintedFields() {}

  /** The part with the figures that stand beside it. */
  static ListedPart beside(Part part, Field item) throws WrongFileException {
    Optional<Field> printed =
        item.find(PRINTED, "an object such as {\"coefficient\": \"1.4 Cv\", \"bore\": \"7 mm\"}");
    if (printed.isEmpty()) {
      return ListedPart.of(part);
    }
    Field field = printed.get();
    Optional<ValveCoefficient> kv =
        field.find("coefficient", "such as \"1.4 Cv\" or \"1.2 Kv\"", ValveCoefficient::parse);
    Optional<Length> bore = field.find("bore", Accepted.LENGTH, Length::parse);
    Optional<ListedPart.FullFlow> flow = fullFlow(field);
    field.requireNothingElse();
    return field.build(() -> new ListedPart(part, kv, bore, flow));
  }

  private static Optional<ListedPart.FullFlow> fullFlow(Field printed) throws WrongFileException {
    Optional<Field> told = printed.find("fullFlow", "a free-air flow such as \"60 scfm\"");
    if (told.isEmpty()) {
      for (String with : new String[] {"at", "temperature"}) {
        Optional<Field> alone = printed.find(with);
        if (alone.isPresent()) {
          throw alone.get().wrong("is told without fullFlow; give that too, or leave it out");
        }
      }
      return Optional.empty();
    }
    FreeAirFlow flow = told.get().as(FreeAirFlow::parse);
    GaugePressure at = printed
        .field("at", "the gauge pressure in front of the part, such as \"100 psig\"")
        .as(GaugePressure::parse);
    Optional<Field> warm = printed.find("temperature");
    Temperature temperature = warm.isPresent() ? warm.get().as(Temperature::parse) : SHOP;
    return Optional.of(told.get()
        .build(() -> new ListedPart.FullFlow(
            flow, AirState.of(at.absolute(AbsolutePressure.STANDARD_ATMOSPHERE), temperature))));
  }
}
