package org.airfit.files;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.airfit.flow.FlowCapacity;
import org.airfit.line.Conduit;
import org.airfit.line.Wall;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.Length;
import org.airfit.quantity.PressureDrop;
import org.airfit.quantity.PressureUnit;
import org.airfit.quantity.SonicConductance;
import org.airfit.quantity.Temperature;

/**
 * The fields of what air goes through, alike in a job, a catalogue and a network: pipe, tube or hose, and flow
 * capacity.
 */
final class FlowFields {

  /**
   * The range of an atmosphere people work in [bar(a)]: our own choice, from the highest mountain (0.33 bar, from
   * memory) to the deepest works under compressed air (4.5 bar, from memory).
   */
  private static final double THINNEST = 0.3;

  private static final double DENSEST = 5.0;

  private FlowFields() {}

  /** The pressure around the shop: a vacuum or a pressure in a wrong unit is none. */
  static AbsolutePressure atmosphere(Field field) throws WrongFileException {
    AbsolutePressure atmosphere = field.as(AbsolutePressure::parse);
    if (atmosphere.bar() < THINNEST || atmosphere.bar() > DENSEST) {
      throw field.wrong("atmosphere must be in [" + THINNEST + ", " + DENSEST + "] bar(a), was "
          + atmosphere.inFull(PressureUnit.BAR)
          + "; check the unit: 1.013 bar(a) is usual at sea level");
    }
    return atmosphere;
  }

  /** The bore, length, roughness and fittings of a pipe, tube or hose. */
  static Conduit conduit(Field item) throws WrongFileException {
    Length bore = item.field("bore", Accepted.LENGTH).as(Length::parse);
    Length length =
        item.field("length", "a length such as \"10 m\" or \"25 ft\"").as(Length::parse);
    Optional<Field> wall = item.find("wall");
    Optional<Wall> madeOf = wall.isPresent()
        ? Optional.of(wall.get().oneOf(List.of(Wall.values()), FlowFields::word))
        : Optional.empty();
    Length roughness = madeOf.isPresent() && item.find("roughness").isEmpty()
        ? madeOf.get().roughness()
        : item.field(
                "roughness",
                "the roughness of the wall, such as \"0.045 mm\" for new steel pipe; or give the wall")
            .as(Length::parse);
    Optional<Field> fittings = item.find("fittings");
    double k = fittings.isPresent() ? fittings.get().number() : 0.0;
    Conduit conduit = item.build(() -> Conduit.of(bore, length, roughness).withFittings(k));
    return madeOf.map(conduit::withWall).orElse(conduit);
  }

  /** What a wall is called in a file, such as "smooth plastic". */
  private static String word(Wall wall) {
    return wall.name().toLowerCase(Locale.ROOT).replace('_', ' ');
  }

  /** A flow capacity, by its conductance or by a rating with its conditions. */
  static FlowCapacity capacity(Field field) throws WrongFileException {
    Optional<Field> conductance = field.find("conductance");
    FlowCapacity capacity = conductance.isPresent() ? ofConductance(field) : ofRating(field);
    field.requireNothingElse();
    return capacity;
  }

  /** A flow capacity by the conductance and ratio that stand among other fields. */
  static FlowCapacity ofConductance(Field field) throws WrongFileException {
    SonicConductance c = field
        .field("conductance", "a sonic conductance such as \"6.0 dm3/(s bar)\"")
        .as(SonicConductance::parse);
    double b = ratio(field);
    return field.build(() -> FlowCapacity.of(c, b));
  }

  private static FlowCapacity ofRating(Field field) throws WrongFileException {
    double b = ratio(field);
    FreeAirFlow rated = field
        .field("flow", "a free-air flow such as \"34 scfm\"; or give the conductance instead")
        .as(FreeAirFlow::parse);
    AbsolutePressure inlet = field
        .field("inlet", "the absolute pressure in front of the part, such as \"7.2 bar(a)\"")
        .as(AbsolutePressure::parse);
    PressureDrop drop = field
        .field("drop", "the pressure loss across the part, such as \"5 psi\"")
        .as(PressureDrop::parse);
    Temperature temperature = field
        .field("temperature", "the temperature of the rating, such as \"20 °C\"")
        .as(Temperature::parse);
    return field.build(() -> FlowCapacity.ofRatedFlow(rated, inlet, drop, temperature, b));
  }

  private static double ratio(Field field) throws WrongFileException {
    return field
        .field("criticalPressureRatio", "b of ISO 6358, a number such as 0.3")
        .number();
  }
}
