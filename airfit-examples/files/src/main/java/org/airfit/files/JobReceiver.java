package org.airfit.files;

import java.time.Duration;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.airfit.air.AirState;
import org.airfit.plant.ReceiverUse;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.Range;
import org.airfit.quantity.Volume;
import org.airfit.select.Requirement;

/**
 * The receiver from which the tool of a job draws now and then.
 *
 * @param volume how much air it holds, as it is printed on it
 * @param from the pressure in it when a draw begins
 * @param to the least pressure that it may fall to; empty where that is what the tool needs through its line
 * @param draws how long a draw lasts
 * @param every the time from the beginning of a draw to that of the next
 * @param compressor what the compressor delivers for the tool, without what others take; empty where that is not known
 */
public record JobReceiver(
    Volume volume,
    GaugePressure from,
    Optional<GaugePressure> to,
    Duration draws,
    Duration every,
    Optional<Range<FreeAirFlow>> compressor) {

  /**
   * Refuses what is null.
   *
   * @param volume how much air it holds
   * @param from the pressure in it when a draw begins
   * @param to the least pressure that it may fall to; empty where that is what the tool needs through its line
   * @param draws how long a draw lasts
   * @param every the time from the beginning of a draw to that of the next
   * @param compressor what the compressor delivers for the tool; empty where that is not known
   */
  public JobReceiver {
    Objects.requireNonNull(volume, "volume");
    Objects.requireNonNull(from, "from");
    Objects.requireNonNull(to, "to");
    Objects.requireNonNull(draws, "draws");
    Objects.requireNonNull(every, "every");
    Objects.requireNonNull(compressor, "compressor");
  }

  /** Reads the receiver of a job; empty where it has none. */
  static Optional<JobReceiver> in(Field root, Field supplied, AirState around, List<String> remarks)
      throws WrongFileException {
    Optional<Field> told = root.find(
        "receiver", "an object such as {\"volume\": \"80 US gal\", \"draws\": \"40 s\", …}");
    if (told.isEmpty()) {
      return Optional.empty();
    }
    Field field = told.get();
    Volume volume =
        field.field("volume", "a volume such as \"80 US gal\" or \"300 L\"").least(Volume::parse);
    Range<GaugePressure> stands = JobSupply.pressure(supplied);
    Optional<Field> begins = field.find("from", Accepted.GAUGE);
    GaugePressure from = begins.isPresent()
        ? begins.get().least(GaugePressure::parse)
        : stands.least(); // the worst: the compressor is just about to start
    if (begins.isPresent() && from.compareTo(stands.most()) > 0) {
      throw begins
          .get()
          .wrong("was " + begins.get().text().strip()
              + ", above supply.pressure, which the receiver never gets beyond");
    }
    Optional<Field> least = field.find("to", Accepted.GAUGE);
    Optional<GaugePressure> to =
        least.isPresent() ? Optional.of(least.get().most(GaugePressure::parse)) : Optional.empty();
    Duration draws =
        TimeField.of(field.field("draws", "how long the tool runs at a time, such as \"40 s\""));
    Duration every =
        TimeField.of(field.field("every", "the time from draw to draw, such as \"10 min\""));
    Optional<Field> flow = field.find("compressor", "a flow such as \"15 scfm\"");
    Optional<Range<FreeAirFlow>> compressor = flow.isPresent()
        ? Optional.of(AirField.readings(flow.get(), around, remarks))
        : Optional.empty();
    field.requireNothingElse();
    JobReceiver receiver = new JobReceiver(volume, from, to, draws, every, compressor);
    if (least.isPresent() && to.orElseThrow().compareTo(from) >= 0) {
      throw least
          .get()
          .wrong("was " + least.get().text().strip()
              + ", not below the pressure when a draw begins, "
              + (begins.isPresent()
                  ? begins.get().text().strip()
                  : "the cut-in of supply.pressure"));
    }
    if (every.compareTo(draws) <= 0) {
      throw field.wrong("draws " + field.field("draws", "").text().strip() + " at a time, every "
          + field.field("every", "").text().strip()
          + ": from draw to draw it must be longer than a draw");
    }
    if (!(volume.cubicMetres() > 0.0)) {
      throw field.wrong("has a volume of 0; give what is printed on it");
    }
    return Optional.of(receiver);
  }

  /**
   * Judges the receiver. What others take behind a splitter of the line is drawn with what the tool takes, which is the
   * worst case; what they take between two draws is not counted: {@link #compressor} is told without it.
   *
   * @param job what the tool needs
   * @param least the least pressure that the receiver may fall to, below {@link #from}
   * @return how long it carries the tool, and whether that does
   * @throws IllegalArgumentException if {@code least} is not below {@link #from}
   */
  public ReceiverUse use(Requirement job, GaugePressure least) {
    return use(job, least, job.airAtOutlet());
  }

  /**
   * Judges the receiver with another air than the job tells.
   *
   * @param job what the tool needs
   * @param least the least pressure that the receiver may fall to, below {@link #from}
   * @param drawn all the air that is drawn
   * @return how long it carries the tool, and whether that does
   * @throws IllegalArgumentException if {@code least} is not below {@link #from}
   */
  public ReceiverUse use(Requirement job, GaugePressure least, Range<FreeAirFlow> drawn) {
    return new ReceiverUse(
        volume,
        from,
        least,
        job.toOutlet().atmosphere(),
        job.toOutlet().stillAir().temperature(),
        drawn,
        compressor,
        draws,
        every);
  }
}
