package org.airfit.files;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.airfit.measure.Instrument;
import org.airfit.plug.Dimension;
import org.airfit.plug.Identifier;
import org.airfit.plug.PlugReading;
import org.airfit.plug.SocketAnswer;
import org.airfit.quantity.Length;
import org.airfit.thread.ThreadReadings;

/** Reads what a job tells of the plug or socket on the counter. */
final class HandFields {

  private static final String AS_NEW = "as new";

  private HandFields() {}

  static AtHand of(Field hand, ShopCatalogue catalogue) throws WrongFileException {
    String where = hand.field("where", "where it comes from, in words").text();
    boolean socketOnly = hand.flag("socketOnly");
    List<PlugReading> readings = readings(hand);
    Optional<ThreadReadings> thread = ThreadField.in(hand);
    Length worn = worn(hand, catalogue);
    boolean nearCopies = !hand.flag("noNearCopies");
    Optional<SocketAnswer> socket = socket(hand, catalogue, socketOnly);
    hand.requireNothingElse();
    return new AtHand(where, readings, worn, nearCopies, thread, socket);
  }

  private static List<PlugReading> readings(Field hand) throws WrongFileException {
    Optional<Field> field = hand.find("readings");
    Optional<Field> told = hand.find("instrument"); // may stand there before anything was read
    if (told.isPresent()) {
      told.get().oneOf(List.of(Instrument.values()), Instrument::label);
    }
    if (field.isEmpty()) {
      return List.of();
    }
    Instrument instrument = hand.field(
            "instrument",
            "the caliper: "
                + String.join(
                    ", ",
                    List.of(Instrument.values()).stream().map(Instrument::label).toList()))
        .oneOf(List.of(Instrument.values()), Instrument::label);
    List<PlugReading> readings = new ArrayList<>();
    for (String label : field.get().names()) {
      Dimension dimension = ProfileFields.dimension(field.get(), label);
      Field reading = field.get().field(label, Accepted.LENGTH);
      List<Length> repeats =
          reading.isList() ? reading.all(Length::parse) : List.of(reading.as(Length::parse));
      if (repeats.isEmpty()) {
        throw reading.wrong("holds no reading; accepted: " + Accepted.LENGTH
            + ", or a list of repeats of one reading");
      }
      readings.add(reading.build(
          () -> PlugReading.of(dimension, instrument, repeats.toArray(new Length[0]))));
    }
    return readings;
  }

  /** How worn the plug may be: "as new", or the most that has gone; what is usual where nobody said. */
  private static Length worn(Field hand, ShopCatalogue catalogue) throws WrongFileException {
    Optional<Field> field = hand.find("worn");
    if (field.isEmpty()) {
      return Identifier.usualWear();
    }
    Field worn = field.get();
    Length allowance = worn.text().strip().equalsIgnoreCase(AS_NEW)
        ? Length.ofMetres(0.0)
        : worn.most(Length::parse);
    return worn.build(
        () -> Identifier.of(catalogue.profiles()).withWearAllowance(allowance).wearAllowance());
  }

  private static Optional<SocketAnswer> socket(
      Field hand, ShopCatalogue catalogue, boolean socketOnly) throws WrongFileException {
    Optional<Field> inUse = hand.find("inUse");
    if (!socketOnly) {
      if (inUse.isPresent()) {
        throw inUse.get().wrong("goes with socketOnly, true; leave it out where a plug is at hand");
      }
      return Optional.empty();
    }
    if (inUse.isEmpty()) {
      return Optional.of(SocketAnswer.alone());
    }
    Set<String> ids = new LinkedHashSet<>(inUse.get().words());
    return Optional.of(
        inUse.get().build(() -> SocketAnswer.alone(catalogue.profilesWithSockets(), ids)));
  }
}
