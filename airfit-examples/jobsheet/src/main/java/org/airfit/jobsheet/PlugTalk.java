package org.airfit.jobsheet;

import java.io.PrintStream;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import org.airfit.files.Job;
import org.airfit.files.WrongFileException;
import org.airfit.measure.Instrument;
import org.airfit.plug.Dimension;
import org.airfit.plug.Identification;
import org.airfit.plug.Identifier;
import org.airfit.plug.NextReading;
import org.airfit.plug.PlugVerdict;
import org.jspecify.annotations.Nullable;

/** Asks for the readings of a plug, one by one, the one that takes away most doubt first. */
final class PlugTalk {

  /** A reading that is expected to take away less doubt is not worth its time [bit]; our own choice. */
  private static final double WORTH_BITS = 0.01;

  private final JobReading reading;
  private final PrintStream out;
  private final Function<String, @Nullable String> prompted;

  PlugTalk(JobReading reading, PrintStream out, Function<String, @Nullable String> prompted) {
    this.reading = reading;
    this.out = out;
    this.prompted = prompted;
  }

  /** The file with the readings; the same where nothing can be measured. */
  InterviewFile read(InterviewFile start) throws WrongFileException {
    Lines lines = new Lines();
    lines.wrapped(
        "   ",
        "Then the plug tells it, if you have it and a caliper. Which caliper? An empty line: none.");
    List<Instrument> calipers = List.of(Instrument.values());
    for (int i = 0; i < calipers.size(); i++) {
      lines.line("   " + (i + 1) + "  " + calipers.get(i).label());
    }
    out.print(lines);
    Optional<Instrument> caliper = caliper(calipers);
    InterviewFile file = start;
    Set<Dimension> skipped = EnumSet.noneOf(Dimension.class);
    while (caliper.isPresent()) {
      Identification plug = plug(file, caliper.get());
      Optional<NextReading> next = worth(plug, skipped);
      if (next.isEmpty()) {
        say(plug.inWords());
        return file;
      }
      Dimension dimension = next.get().dimension();
      say(next.get().inWords());
      String typed = prompted.apply("mm or in > ");
      if (typed == null) {
        return file;
      }
      if (typed.isEmpty()) {
        skipped.add(dimension);
        continue;
      }
      file = with(file, caliper.get(), dimension, typed);
    }
    return file;
  }

  private Optional<Instrument> caliper(List<Instrument> calipers) {
    while (true) {
      String typed = prompted.apply("> ");
      if (typed == null || typed.isEmpty()) {
        return Optional.empty();
      }
      for (int i = 0; i < calipers.size(); i++) {
        if (typed.equals(String.valueOf(i + 1))
            || typed.equalsIgnoreCase(calipers.get(i).label())) {
          return Optional.of(calipers.get(i));
        }
      }
      say("\"" + typed + "\" is none of these; type its number");
    }
  }

  private Identification plug(InterviewFile file, Instrument caliper) throws WrongFileException {
    Job job = file.job(reading);
    return job.plug().isPresent()
        ? job.plug().get()
        : Identifier.of(job.catalogue().profiles()).withInstrument(caliper).identify(List.of());
  }

  /** The next reading, unless the plug is identified or no reading brings more. */
  private static Optional<NextReading> worth(Identification plug, Set<Dimension> skipped) {
    return plug.verdict() == PlugVerdict.IDENTIFIED
        ? Optional.empty()
        : plug.nextReadings().stream()
            .filter(next -> !skipped.contains(next.dimension()))
            .filter(next -> next.expectedDropBits() >= WORTH_BITS)
            .findFirst();
  }

  /** The file with a reading; the same where it cannot be read, which is told. */
  private InterviewFile with(
      InterviewFile file, Instrument caliper, Dimension dimension, String typed) {
    InterviewFile fuller = file.withReading(caliper.label(), dimension.label(), typed);
    try {
      fuller.job(reading);
      return fuller;
    } catch (WrongFileException refused) {
      say(String.valueOf(refused.getMessage()));
      return file;
    }
  }

  private void say(String text) {
    Lines lines = new Lines();
    lines.wrapped("   ", text);
    out.print(lines);
  }
}
