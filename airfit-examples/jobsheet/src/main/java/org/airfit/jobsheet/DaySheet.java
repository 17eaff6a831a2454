package org.airfit.jobsheet;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.airfit.files.DayJob;
import org.airfit.network.DayChange;
import org.airfit.network.DayResult;
import org.airfit.network.PlantDay;
import org.airfit.plant.WallHeat;

/**
 * What a day of a plant comes to, as it is, with no heat from the walls of its receivers, with the air of its recordings
 * bunched, and with something changed.
 *
 * @param job the plant and its users
 * @param day the day at one temperature
 * @param cold the day with no heat from the walls
 * @param bunched the day with the air of recordings bunched; empty where nothing was recorded in averages
 * @param changes what was changed, and the day gone through again
 * @param changesCold the same with no heat from the walls, each beside its own
 */
public record DaySheet(
    DayJob job,
    DayResult day,
    DayResult cold,
    Optional<DayResult> bunched,
    List<DayChange> changes,
    List<DayResult> changesCold) {

  /** Copies the lists; refuses what is null. */
  public DaySheet {
    Objects.requireNonNull(job, "job");
    Objects.requireNonNull(day, "day");
    Objects.requireNonNull(cold, "cold");
    Objects.requireNonNull(bunched, "bunched");
    changes = List.copyOf(changes);
    changesCold = List.copyOf(changesCold);
  }

  /**
   * Answers a day.
   *
   * @param job the plant and its users
   * @return the answers
   */
  public static DaySheet of(DayJob job) {
    Objects.requireNonNull(job, "job");
    PlantDay plant = job.day();
    List<DayChange> changes = new ArrayList<>();
    Optional<DayChange> receiver = DayChange.largerReceiver(plant);
    receiver.ifPresent(changes::add);
    // where the day is short now, a regulator is asked for only with what helps
    PlantDay enough = receiver.map(DayChange::day).orElse(plant);
    DayChange.regulatedHeader(enough).ifPresent(changes::add);
    DayChange.movedBands(plant).ifPresent(changes::add);
    return new DaySheet(
        job,
        plant.simulate(),
        plant.withWalls(WallHeat.NONE).simulate(),
        plant.hasAverages() ? Optional.of(plant.bunched().simulate()) : Optional.empty(),
        changes,
        changes.stream()
            .map(change -> change.day().withWalls(WallHeat.NONE).simulate())
            .toList());
  }

  /** A moment of the day as a clock shows it, with a day added where it is the day after. */
  String clock(Duration since) {
    long seconds = job.begins().plus(since).plusMillis(500).toMillis() / 1000;
    long days = seconds / 86_400;
    return two(seconds / 3600 % 24) + ":" + two(seconds / 60 % 60) + ":" + two(seconds % 60)
        + (days == 0 ? "" : " (day " + (days + 1) + ")");
  }

  private static String two(long number) {
    return (number < 10 ? "0" : "") + number;
  }
}
