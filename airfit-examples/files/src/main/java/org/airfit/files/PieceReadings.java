package org.airfit.files;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.airfit.measure.Instrument;
import org.airfit.measure.PartSpread;
import org.airfit.plug.Dimension;
import org.airfit.plug.KnownPiece;
import org.airfit.plug.KnownPlugs;
import org.airfit.quantity.Length;

/** The readings of the pieces of one profile of a set file, dimension by dimension. */
final class PieceReadings {

  private static final int MOST = 1000;

  private final String id;
  private final Instrument instrument;
  private final Map<Dimension, List<Length>> readings = new EnumMap<>(Dimension.class);

  private PieceReadings(String id, Instrument instrument) {
    this.id = id;
    this.instrument = instrument;
  }

  /** The readings of a profile, whose row or object may name the caliper. */
  static PieceReadings of(Field profile) throws WrongFileException {
    String id = profile.field("id", "a short name, unique in the set").text();
    Optional<Field> caliper = profile.find("caliper");
    return new PieceReadings(
        id,
        caliper.isPresent()
            ? caliper.get().oneOf(List.of(Instrument.values()), Instrument::label)
            : Instrument.DIGITAL_CALIPER);
  }

  /** Keeps the readings of a dimension: what they come to. */
  PartSpread keep(Field field, Dimension dimension) throws WrongFileException {
    List<Length> lengths = field.all(Length::parse);
    if (lengths.size() > MOST) {
      throw field.wrong("holds " + lengths.size() + " readings; type " + MOST
          + " at most, or count, mean and deviation");
    }
    readings.put(dimension, lengths);
    return field.build(() -> recordOf(List.of(dimension), lengths.size()).spread(dimension));
  }

  private KnownPlugs recordOf(List<Dimension> dimensions, int pieces) {
    KnownPlugs record = KnownPlugs.of(id, instrument);
    for (int i = 0; i < pieces; i++) {
      Map<Dimension, Length> sizes = new EnumMap<>(Dimension.class);
      for (Dimension dimension : dimensions) {
        sizes.put(dimension, readings.getOrDefault(dimension, List.of()).get(i));
      }
      record = record.with(new KnownPiece("no. " + (i + 1), sizes));
    }
    return record;
  }

  /** The record of the pieces, in the dimensions that were read on most of them; empty without readings. */
  Optional<KnownPlugs> record() {
    int most = readings.values().stream().mapToInt(List::size).max().orElse(0);
    List<Dimension> full = new ArrayList<>();
    readings.forEach((dimension, lengths) -> {
      if (lengths.size() == most) {
        full.add(dimension);
      }
    });
    return full.isEmpty() ? Optional.empty() : Optional.of(recordOf(full, most));
  }
}
